"""Tasks of whole tens and hundreds, worked out with blocks on two mats."""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.strands.sums.acts import regrouped, worked_out
from manipulatives.lessons.strands.sums.tasks import Found, answer_step, prompt_of, typed_task
from manipulatives.lessons.tasks.generator import Request
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.maths.columns.written_sum import ADD, MINUS
from manipulatives.maths.number.place_names import some

TEN = 10
PLACES = {10: "tens", 100: "hundreds"}
ABOVE = {"tens": "hundreds", "hundreds": "thousands"}


def blocks_task(request: Request, operation: str, found: Found) -> Task:
    """Return the task of two numbers that are whole tens, or whole hundreds.

    Args:
        request: its item are the two numbers; its option `of` says of what they are multiples.
        operation: "+" or "-".
        found: what can be foreseen to go wrong.
    """
    adding, of = operation == ADD, request.options["of"]
    place = PLACES[of]
    counts = [number // of for number in request.item]
    first, second = counts
    count = first + second if adding else first - second
    answer = count * of
    start: dict[str, Any] = {
        "mat": mats({place: first}, {place: second} if adding else {}),
        "pair": "add" if adding else "take",
        "result": False,
        "digits": False,
    }
    if of > TEN:
        start["places"] = 4
    steps = [
        Step(
            say=f"{number} is {some(each, place)}.",
            chant=some(each, place),
            numbers={"act": "part", "part": number, "place": place, "digit": each},
        )
        for number, each in zip(request.item, counts, strict=True)
    ]
    sign = "+" if adding else MINUS
    show = mats({place: count}, {} if adding else {place: second})
    say = f"{some(first, place)} {sign} {some(second, place)}."
    numbers = worked_out(operation, counts, place=place)
    steps.append(Step(say, some(count, place), {"mat": show}, numbers=numbers))
    if count >= TEN:
        steps.append(_full_ten(place, count))
    return typed_task(
        request,
        kind="through ten" if count >= TEN else place,
        prompt=prompt_of(operation, request.item),
        answer=answer,
        manipulative="PlaceValueBlocks",
        start=start,
        steps=(*steps, answer_step(operation, request.item, answer, request.vocabulary)),
        found=found,
    )


def _full_ten(place: str, count: int) -> Step:
    """Return the step in which ten of a place become one of the next larger place."""
    above, rest = ABOVE[place], count % TEN
    return Step(
        say=f"{some(TEN, place)} are {some(1, above)}.",
        chant=f"{some(1, above)} and {some(rest, place)}" if rest else some(1, above),
        show={"mat": mats({above: 1, place: rest}, {})},
        numbers=regrouped(place, above, count=TEN, left=rest, gives=1, now=1),
    )


def mats(first: dict[str, int], second: dict[str, int]) -> list[dict[str, int]]:
    """Return two mats with blocks on them, no place left out.

    Example:
        >>> mats({"tens": 3}, {})[0]
        {'thousands': 0, 'hundreds': 0, 'tens': 3, 'ones': 0}
    """
    none = {"thousands": 0, "hundreds": 0, "tens": 0, "ones": 0}
    return [{**none, **first}, {**none, **second}]
