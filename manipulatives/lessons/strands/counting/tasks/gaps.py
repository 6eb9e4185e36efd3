"""Tasks about numbers that are missing, from a count or on a chart."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any

from manipulatives.lessons.strands.counting.charts import blank_chart, ends_around
from manipulatives.lessons.strands.counting.mistakes.foreseen import step_mistakes
from manipulatives.lessons.strands.counting.steps import TEN, gap_steps, listed, writing_steps
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Task
from manipulatives.lessons.tasks.typed import typed_number

# So many numbers has a count of which one, but not the first or the last, is left out.
LONG = 4
GAPS = range(1, LONG - 1)
WAYS = {"on": 1, "back": -1}


@cache
def _gaps(step: int, to: int, way: str, start: str) -> tuple[tuple[str, int, int], ...]:
    """Return all counts, each as its way, its first number and the place of its gap."""
    return tuple(
        (word, first, gap)
        for word, sign in WAYS.items()
        for first in range(to + 1)
        for gap in GAPS
        if way in ("any", word)
        and 0 <= first + sign * step * (LONG - 1) <= to
        and (start == "any" or first % step == 0)
    )


@cache
def _middles(step: int, to: int, way: str, start: str) -> tuple[tuple[str, int, int], ...]:
    """Return one count for each set of blanks: on a chart, the blanks are all that differs."""
    found = {
        tuple(_blanks(first + WAYS[word] * step * gap, to)): (word, first, gap)
        for word, first, gap in _gaps(step, to, way, start)
    }
    return tuple(found.values())


def _ends(middle: int, to: int) -> dict[str, int]:
    return ends_around(max(middle - TEN, 1), min(middle + TEN, to), to)


def _blanks(middle: int, to: int) -> list[int]:
    """Return a number and its neighbours above and below on the chart."""
    ends = _ends(middle, to)
    column = (middle - TEN, middle, middle + TEN)
    return [number for number in column if ends["first"] <= number <= ends["last"]]


def _items(options: Mapping[str, Any]) -> Sequence[tuple[str, int, int]]:
    family = _middles if options["ask"] == "chart" else _gaps
    return family(options["step"], options["to"], options["way"], options["start"])


def _missing(request: Request) -> Task:
    way, first, gap = request.item
    by = WAYS[way] * request.options["step"]
    numbers = [first + by * place for place in range(LONG)]
    if request.options["ask"] == "chart":
        return _written(request, numbers[gap])
    right, to = numbers[gap], request.options["to"]
    row = ", ".join("_" if place == gap else f"{one}" for place, one in enumerate(numbers))
    shown = [one for one in numbers if one != right]
    return Task(
        skill=request.skill,
        kind=way,
        prompt=f"Which number is missing? {row}.",
        say=f"Which number is missing? {row.replace('_', 'something')}.",
        manipulative="CountingChart",
        start=blank_chart(shown, ends_around(min(numbers), max(numbers), to)),
        **typed_number(right, request.vocabulary),
        steps=gap_steps(numbers, gap, by),
        mistakes=step_mistakes(numbers[gap - 1], by, request.vocabulary),
    )


def _written(request: Request, middle: int) -> Task:
    """Return the task to write a number and those above and below it into the chart."""
    to = request.options["to"]
    ends, blanks = _ends(middle, to), _blanks(middle, to)
    several = len(blanks) > 1
    return Task(
        skill=request.skill,
        kind=request.item[0],
        prompt=f"Write the missing number{'s' if several else ''}.",
        say="Write what is missing. Look at the numbers beside, above and below.",
        manipulative="CountingChart",
        start={**ends, "mode": "write", "hidden": blanks, "buttons": False},
        ask={"by": "manipulative"},
        goal=["=", "finished", True],
        answer=listed(blanks),
        spoken=listed(blanks),
        steps=writing_steps(blanks, ends["first"]),
    )


GENERATORS = {
    "counting.missing_numbers": TaskGenerator(
        items=_items, task=_missing, kind=lambda item: item[0], difficulty=lambda item: item[1]
    ),
}
