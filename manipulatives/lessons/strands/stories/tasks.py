"""Tasks of one-step stories, of every published situation and place of the unknown."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any

from manipulatives.lessons.strands.stories.mistakes import parts_mistakes, story_mistakes
from manipulatives.lessons.strands.stories.steps import put_together_steps, story_steps
from manipulatives.lessons.strands.stories.texts import scene, story_text
from manipulatives.lessons.strands.sums.blocks import mats
from manipulatives.lessons.strands.sums.line import line
from manipulatives.lessons.strands.sums.tasks import equation, typed_task
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.pools import Joined, Labelled
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.columns.written_sum import ADD
from manipulatives.maths.number.words import number_in_words

Item = tuple[str, str, int, int]
"""The unknown, the wording or "", and both numbers as `texts.story_text` has them."""

UNKNOWNS = {
    "add to": ("result", "change", "start"),
    "take from": ("result", "change", "start"),
    "put together": ("total", "addend", "both"),
    "compare": ("difference", "bigger", "smaller"),
}
"""The situations, and what may be unknown in each."""
WORDINGS = ("more", "fewer")


def shown_and_answer(
    situation: str, unknown: str, numbers: tuple[int, int]
) -> tuple[int, int, int]:
    """Return the two numbers in the text of a story, in their order, and the right answer.

    Example:
        >>> shown_and_answer("add to", "change", (8, 5))
        (8, 13, 5)
        >>> shown_and_answer("compare", "bigger", (13, 8))
        (8, 5, 13)
    """
    one, other = numbers
    both = one + other if situation in ("add to", "put together") else one - other
    return {
        ("add to", "result"): (one, other, both),
        ("add to", "change"): (one, both, other),
        ("add to", "start"): (other, both, one),
        ("take from", "result"): (one, other, both),
        ("take from", "change"): (one, both, other),
        ("take from", "start"): (other, both, one),
        ("put together", "total"): (one, other, both),
        ("put together", "addend"): (both, one, other),
        ("compare", "difference"): (one, other, both),
        ("compare", "bigger"): (other, both, one),
        ("compare", "smaller"): (one, both, other),
    }[situation, unknown]


def _task(situation: str, request: Request) -> Task:
    unknown, wording, *pair = request.item
    numbers = (pair[0], pair[1])
    first, second, answer = shown_and_answer(situation, unknown, numbers)
    to = request.options["to"]
    blocks = situation == "put together"
    return typed_task(
        request,
        kind=_kind(request.item),
        prompt=story_text(situation, unknown, wording, numbers, scene(request.turn)),
        answer=answer,
        manipulative="PlaceValueBlocks" if blocks else "CountingChart",
        start=_two_mats() if blocks else line(to),
        steps=story_steps(situation, request.item, request.method, request.vocabulary),
        found=story_mistakes(unknown, wording, (first, second), answer),
    )


def _put_together(request: Request) -> Task:
    return _both(request) if request.item[0] == "both" else _task("put together", request)


def _both(request: Request) -> Task:
    """Both parts are unknown: any two that make the whole are right, none of them empty."""
    whole = request.item[2]
    part = 1 + request.chance.below(whole - 1)
    numbers = (part, whole - part)
    return Task(
        skill=request.skill,
        kind=_kind(request.item),
        prompt=story_text("put together", "both", "", numbers, scene(request.turn)),
        say="Put all of them on the two mats. There are many right ways.",
        manipulative="PlaceValueBlocks",
        start=_two_mats(),
        ask={"by": "manipulative"},
        goal=["and", ["=", "sum", whole], [">", "number", 0], [">", "second_number", 0]],
        answer=equation(ADD, numbers).removesuffix("."),
        spoken=f"{number_in_words(part)} and {number_in_words(whole - part)}",
        steps=put_together_steps("both", numbers, request.method, request.vocabulary),
        mistakes=parts_mistakes(whole, request.vocabulary),
    )


def _two_mats() -> dict[str, Any]:
    return {"mat": mats({}, {}), "places": 2, "pair": "add", "result": False, "digits": False}


@cache
def _sums_to(most: int) -> tuple[tuple[int, int], ...]:
    return tuple((a, b) for a in range(1, most) for b in range(1, most - a + 1))


@cache
def _differences_to(most: int) -> tuple[tuple[int, int], ...]:
    return tuple((a, b) for a in range(2, most + 1) for b in range(1, a))


@cache
def _pool(situation: str, unknown: str, wording: str, to: int) -> Sequence[Item]:
    unknowns = UNKNOWNS[situation] if unknown == "any" else (unknown,)
    wordings: tuple[str, ...] = ("",)
    if situation == "compare":
        wordings = WORDINGS if wording == "any" else (wording,)
    families = [
        Labelled(one, Labelled(how, _numbers(situation, one, to)))
        for one in unknowns
        for how in wordings
    ]
    return Joined(families)


def _numbers(situation: str, unknown: str, to: int) -> Sequence[tuple[int, int]]:
    if unknown == "both":
        return [(whole, 0) for whole in range(2, to + 1)]
    return _sums_to(to) if situation in ("add to", "put together") else _differences_to(to)


def _items(situation: str, options: Mapping[str, Any]) -> Sequence[Item]:
    return _pool(situation, options["unknown"], options.get("wording", ""), options["to"])


def _kind(item: Item) -> str:
    unknown, wording, *_ = item
    return f"{unknown} unknown{f', {wording}' if wording else ''}"


def _difficulty(item: Item) -> tuple[int, int]:
    unknown, wording, first, second = item
    order = (*UNKNOWNS["add to"], *UNKNOWNS["put together"], *UNKNOWNS["compare"])
    return order.index(unknown), max(first, second) + (wording == "fewer")


def _generator(situation: str) -> TaskGenerator:
    together = situation == "put together"
    return TaskGenerator(
        items=lambda options: _items(situation, options),
        task=_put_together if together else lambda request: _task(situation, request),
        kind=_kind,
        difficulty=_difficulty,
    )


ADD_TO = _generator("add to")
PUT_TOGETHER = _generator("put together")
TAKE_FROM = _generator("take from")
COMPARE = _generator("compare")
