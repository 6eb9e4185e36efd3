"""Tasks about even and odd numbers."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any

from manipulatives.lessons.strands.counting.charts import counted
from manipulatives.lessons.strands.counting.mistakes.foreseen import (
    deciding_mistakes,
    next_mistakes,
)
from manipulatives.lessons.strands.counting.steps import TEN, deciding_steps, next_parity_steps
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.parity import PARITIES, next_of, parity

DECIDE = "decide"


@cache
def _items_to(to: int, which: str) -> tuple[tuple[str, int], ...]:
    return tuple(
        (kind, number)
        for kind in (DECIDE, *PARITIES)
        for number in range(to + 1)
        if which in ("any", DECIDE if kind == DECIDE else "next")
        and (kind == DECIDE or next_of(number, kind) <= to)
    )


def _items(options: Mapping[str, Any]) -> Sequence[tuple[str, int]]:
    return _items_to(options["to"], options["which"])


def _task(request: Request) -> Task:
    kind, number = request.item
    return _decide(request, number) if kind == DECIDE else _next(request, number, kind)


def _decide(request: Request, number: int) -> Task:
    right = parity(number)
    ends = _rows(number, number)
    return Task(
        skill=request.skill,
        kind=DECIDE,
        prompt=f"Is {number} even or odd?",
        say=f"Is {number} even or odd? Think of counting in twos.",
        manipulative="CountingChart",
        start=_chart(ends),
        ask={"by": "choice", "choices": list(PARITIES)},
        goal=["=", "answer", right],
        answer=right,
        spoken=right,
        steps=deciding_steps(number, _evens(ends)),
        mistakes=deciding_mistakes(number, request.vocabulary),
    )


def _next(request: Request, number: int, wanted: str) -> Task:
    right = next_of(number, wanted)
    ends = _rows(number, right)
    prompt = f"Which {wanted} number comes next after {number}?"
    return Task(
        skill=request.skill,
        kind=wanted,
        prompt=prompt,
        say=f"{prompt} Think of counting in twos.",
        manipulative="CountingChart",
        start=_chart(ends),
        **typed_number(right, request.vocabulary),
        steps=next_parity_steps(number, wanted, _evens(ends)),
        mistakes=next_mistakes(number, wanted, request.vocabulary),
    )


def _rows(low: int, high: int) -> dict[str, int]:
    """Return the ends of the rows from 0 to 9, 10 to 19 and so on that numbers stand in."""
    return {"first": low // TEN * TEN, "last": high // TEN * TEN + TEN - 1}


def _chart(ends: dict[str, int]) -> dict[str, Any]:
    return {**ends, "step": 2, "buttons": False}


def _evens(ends: dict[str, int]) -> dict[str, Any]:
    return counted(range(ends["first"], ends["last"], 2))


GENERATORS = {
    "counting.odd_even": TaskGenerator(
        items=_items, task=_task, kind=lambda item: item[0], difficulty=lambda item: item[1]
    ),
}
