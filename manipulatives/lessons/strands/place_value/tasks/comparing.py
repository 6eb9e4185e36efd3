"""Tasks that compare two numbers, or look for the greatest or the smallest of three."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache
from typing import Any

from manipulatives.lessons.strands.place_value.mistakes.comparing import COMPARING, ORDERING
from manipulatives.lessons.strands.place_value.pools import pairs, triples
from manipulatives.lessons.strands.place_value.steps.comparing import (
    comparing_steps,
    ordering_steps,
    two_mats,
)
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.pools import Joined, Labelled
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.number.mats import compared
from manipulatives.maths.number.words import number_in_words

SIGNS = ("<", "=", ">")
ENDS = ("greatest", "smallest")


def _start(one: int, other: int, largest: int) -> dict[str, Any]:
    return {
        **two_mats(one, other),
        "places": max(2, len(str(largest))),
        "pair": "compare",
        "result": False,
        "movable": False,
        "digits": False,
        "trades": "none",
        "buttons": False,
    }


def _pair_items(options: Mapping[str, Any]) -> Sequence[tuple[int, int]]:
    return pairs(options["to"], options["decides"])


def _compare(request: Request) -> Task:
    one, other = request.item
    sign = compared(one, other)
    steps = comparing_steps(one, other)
    last = steps[-1]
    found = [(rule, rule.wrong(one, other)) for rule in COMPARING]
    prompt = f"Which sign belongs here? {one} _ {other}."
    return Task(
        skill=request.skill,
        kind=sign,
        prompt=prompt,
        say=f"Which sign belongs between {one} and {other}? Look at the largest place first.",
        manipulative="PlaceValueBlocks",
        start=_start(one, other, max(one, other)),
        ask={"by": "choice", "choices": list(SIGNS)},
        goal=["=", "answer", sign],
        answer=sign,
        spoken=last.chant,
        steps=(*steps[:-1], replace(last, answer=sign)),
        mistakes=foreseen(
            found,
            request.vocabulary,
            right=sign,
            numbers=done_with("compare", numbers=[one, other]),
        ),
    )


@cache
def _three(to: int, which: str, like: str) -> Sequence[Any]:
    family = triples(to, like)
    return Joined(Labelled(end, family) for end in ENDS if which in ("any", end))


def _three_items(options: Mapping[str, Any]) -> Sequence[Any]:
    return _three(options["to"], options["which"], options["like"])


def _order(request: Request) -> Task:
    wanted, *three = request.item
    row = request.chance.shuffled(three)
    pick = max if wanted == "greatest" else min
    right = pick(row)
    found = [(rule, rule.wrong(row, wanted)) for rule in ORDERING]
    prompt = f"Which number is the {wanted}? {', '.join(map(str, row))}."
    return Task(
        skill=request.skill,
        kind=wanted,
        prompt=prompt,
        say=f"{prompt} Compare two of them first.",
        manipulative="PlaceValueBlocks",
        start=_start(row[0], row[1], max(row)),
        ask={"by": "choice", "choices": [f"{number}" for number in row]},
        goal=["=", "answer", f"{right}"],
        answer=f"{right}",
        spoken=number_in_words(right, request.vocabulary),
        steps=ordering_steps(row, wanted),
        mistakes=foreseen(
            found,
            request.vocabulary,
            right=right,
            numbers=done_with("order", numbers=row, which=wanted),
        ),
    )


def _difficulty_of_pair(pair: tuple[int, int]) -> tuple[int, int]:
    """Return how long the numbers are, then how far from each other."""
    one, other = pair
    return len(str(max(one, other))), -abs(one - other)


GENERATORS = {
    "place_value.compare": TaskGenerator(
        items=_pair_items,
        task=_compare,
        kind=lambda pair: compared(*pair),
        difficulty=_difficulty_of_pair,
    ),
    "place_value.order": TaskGenerator(
        items=_three_items,
        task=_order,
        kind=lambda item: item[0],
        difficulty=lambda item: max(item[1:]),
    ),
}
