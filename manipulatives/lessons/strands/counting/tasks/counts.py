"""Tasks of the counting strand: on and back in steps, before and after, more and less."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any

from manipulatives.lessons.strands.counting.charts import blank_chart, ends_around, tapping_chart
from manipulatives.lessons.strands.counting.mistakes.counts import STEPS, crosses
from manipulatives.lessons.strands.counting.mistakes.foreseen import (
    step_mistakes,
    tapping_mistakes,
)
from manipulatives.lessons.strands.counting.steps import (
    HUNDRED,
    NAMES,
    TEN,
    between_steps,
    counting_say,
    listed,
    next_steps,
    step_steps,
    tapping_steps,
)
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.predicates import Predicate
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.words import number_in_words

THOUSAND = 1000
ON_CHART = {"by": "manipulative"}
# So many numbers of a count are given before the next one is asked for.
SAID = 3
MOST_HOPS = 5
UNITS = {"any": 0, "ten": TEN, "hundred": HUNDRED}
IN_WORDS = {1: "one", TEN: "ten", HUNDRED: "one hundred"}


def reached(number: int) -> Predicate:
    """Return the predicate that numbers were tapped in step up to a number, or down to it.

    Example:
        >>> reached(60)
        ['and', ['=', 'in_step', True], ['=', 'at', 60]]
    """
    return ["and", ["=", "in_step", True], ["=", "at", number]]


@cache
def _begins(by: int, to: int, start: str, unit: int) -> tuple[int, ...]:
    """Return the first numbers of all counts that have three numbers and one to ask for."""
    return tuple(
        first
        for first in range(to + 1)
        if 0 <= first + SAID * by <= to
        and (start == "any" or first % by == 0)
        and (not unit or crosses(first + (SAID - 1) * by, by, unit))
    )


def _counts(by: int) -> TaskGenerator:
    """Return the generator of tasks that count in steps; below 0 they go back."""

    def items(options: Mapping[str, Any]) -> Sequence[int]:
        to, start = options.get("to", THOUSAND), options.get("start", "any")
        return _begins(by, to, start, UNITS[options.get("crosses", "any")])

    def task(request: Request) -> Task:
        to = request.options.get("to", THOUSAND)
        if request.options["ask"] == "count":
            return _tapped(request, by, to)
        return _typed(request, by, to)

    return TaskGenerator(
        items=items, task=task, difficulty=lambda first: max(first, first + SAID * by)
    )


def _typed(request: Request, by: int, to: int) -> Task:
    said = [request.item + by * place for place in range(SAID)]
    right = said[-1] + by
    ends = ends_around(min(*said, right), max(*said, right), to)
    return Task(
        skill=request.skill,
        kind="on" if by > 0 else "back",
        prompt=f"What comes next? {listed(said)}.",
        say=f"{counting_say(said, by)} What comes next?",
        manipulative="CountingChart",
        start=blank_chart(said, ends),
        **typed_number(right, request.vocabulary),
        steps=next_steps(said, by),
        mistakes=step_mistakes(said[-1], by, request.vocabulary),
    )


def _tapped(request: Request, by: int, to: int) -> Task:
    start = request.item
    hops = min(MOST_HOPS, (to - start if by > 0 else start) // abs(by))
    numbers = [start + by * hop for hop in range(hops + 1)]
    name = NAMES[abs(by)]
    prompt = f"Count {'on' if by > 0 else 'back'} in {name} from {start} to {numbers[-1]}."
    return _by_tapping(request, prompt, numbers, by=by, to=to, kind="on" if by > 0 else "back")


def _by_tapping(
    request: Request, prompt: str, numbers: Sequence[int], *, by: int, to: int, kind: str
) -> Task:
    ends = ends_around(min(numbers), max(numbers), to)
    return Task(
        skill=request.skill,
        kind=kind,
        prompt=prompt,
        say=f"{prompt} Tap on the chart; {numbers[0]} is lit already.",
        manipulative="CountingChart",
        start=tapping_chart(numbers[0], by, ends),
        ask=dict(ON_CHART),
        goal=reached(numbers[-1]),
        answer=f"{numbers[-1]}",
        spoken=number_in_words(numbers[-1], request.vocabulary),
        steps=tapping_steps(numbers, by),
        mistakes=tapping_mistakes(numbers, by, ends, request.vocabulary),
    )


@cache
def _more_and_less(step: int, to: int, which: str, unit: int) -> tuple[tuple[str, int], ...]:
    """Return the numbers for which one more or one less step is asked, each with the word."""
    ways = [("more", step), ("less", -step)]
    return tuple(
        (word, at)
        for word, by in ways
        for at in range(1, to + 1)
        if which in ("any", word) and 0 <= at + by <= to and (not unit or crosses(at, by, unit))
    )


def _more_or_less(step: int) -> TaskGenerator:
    """Return the generator of tasks about one, ten or a hundred more or less."""

    def items(options: Mapping[str, Any]) -> Sequence[tuple[str, int]]:
        unit = UNITS[options.get("crosses", "any")]
        return _more_and_less(step, options.get("to", THOUSAND), options["which"], unit)

    def task(request: Request) -> Task:
        word, at = request.item
        by = step if word == "more" else -step
        to = request.options.get("to", THOUSAND)
        amount = f"{IN_WORDS[step]} {word} than {at}"
        if request.options["answer"] == "chart":
            prompt = f"Tap the number that is {amount}."
            return _by_tapping(request, prompt, [at, at + by], by=by, to=to, kind=word)
        steps = step_steps(at, by)
        prompt = f"What is {amount}?"
        return _about_one(request, prompt, [at], kind=word, by=by, to=to, steps=steps)

    return TaskGenerator(
        items=items, task=task, kind=lambda item: item[0], difficulty=lambda item: item[1]
    )


@cache
def _neighbours(to: int, which: str, unit: int) -> tuple[tuple[str, int], ...]:
    """Return the numbers that are asked for, each with "before", "after" or "between"."""
    return tuple(
        (kind, number)
        for kind, first, last in (("before", 0, to - 1), ("after", 1, to), ("between", 1, to - 1))
        for number in range(first, last + 1)
        if which in ("any", kind) and (not unit or _is_crossed(kind, number, unit))
    )


def _is_crossed(kind: str, number: int, unit: int) -> bool:
    """Return whether a number is in another ten, or hundred, than the number in its prompt."""
    return crosses(number + 1, -1, unit) if kind == "before" else crosses(number - 1, 1, unit)


def _before_after(request: Request) -> Task:
    kind, number = request.item
    to = request.options["to"]
    if kind == "between":
        low, high = number - 1, number + 1
        prompt = f"Which number comes between {low} and {high}?"
        steps = between_steps(low, high)
        return _about_one(request, prompt, [low, high], kind=kind, by=1, to=to, steps=steps, at=low)
    by = -1 if kind == "before" else 1
    prompt = f"Which number comes just {kind} {number - by}?"
    steps = step_steps(number - by, by)
    return _about_one(request, prompt, [number - by], kind=kind, by=by, to=to, steps=steps)


def _about_one(
    request: Request,
    prompt: str,
    shown: Sequence[int],
    *,
    kind: str,
    by: int,
    to: int,
    steps: tuple[Step, ...],
    at: int | None = None,
) -> Task:
    """Return a task whose answer is typed and lies one step from a number.

    Args:
        request: what the task is about.
        prompt: what is asked.
        shown: the numbers that are shown on the chart.
        kind: the kind of the task.
        by: the step; below 0 it goes back.
        to: the largest number of the skill.
        steps: the worked answer.
        at: where the step begins; None for the last number that is shown.
    """
    begin = shown[-1] if at is None else at
    right = begin + by
    ends = ends_around(min(*shown, right), max(*shown, right), to)
    return Task(
        skill=request.skill,
        kind=kind,
        prompt=prompt,
        say=prompt,
        manipulative="CountingChart",
        start=blank_chart(shown, ends),
        **typed_number(right, request.vocabulary),
        steps=steps,
        mistakes=step_mistakes(begin, by, request.vocabulary, STEPS),
    )


def _neighbour_items(options: Mapping[str, Any]) -> Sequence[tuple[str, int]]:
    return _neighbours(options["to"], options["which"], UNITS[options["crosses"]])


GENERATORS = {
    **{f"counting.on_in_{name}": _counts(by) for by, name in NAMES.items()},
    **{f"counting.back_in_{name}": _counts(-by) for by, name in NAMES.items()},
    "counting.before_after": TaskGenerator(
        items=_neighbour_items,
        task=_before_after,
        kind=lambda item: item[0],
        difficulty=lambda item: item[1],
    ),
    "counting.one_more_less": _more_or_less(1),
    "counting.ten_more_less": _more_or_less(TEN),
    "counting.hundred_more_less": _more_or_less(HUNDRED),
}
