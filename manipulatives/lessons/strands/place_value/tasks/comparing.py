"""Tasks that compare two numbers, or look for the greatest or the smallest of three."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache
from typing import Any

from manipulatives.lessons.strands.place_value.mistakes.comparing import COMPARING, ORDERING
from manipulatives.lessons.strands.place_value.pools import pairs, triples
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.pools import Joined, Labelled
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.maths.number.mats import compared
from manipulatives.maths.number.place_value import PLACES, fewest
from manipulatives.maths.number.words import number_in_words

SIGNS = ("<", "=", ">")
IN_WORDS = {"<": "is less than", "=": "is equal to", ">": "is greater than"}
ENDS = ("greatest", "smallest")
TEN = 10


def comparing_steps(one: int, other: int) -> list[Step]:
    """Return how two numbers are compared: the largest place first, until one differs.

    Example:
        >>> for step in comparing_steps(345, 354):
        ...     print(step.say)
        Hundreds: 3 and 3 are equal.
        Tens: 4 is less than 5.
        345 < 354.
    """
    longest = len(str(max(one, other)))
    steps = []
    for at in range(longest - 1, -1, -1):
        first, second = one // TEN**at % TEN, other // TEN**at % TEN
        place = PLACES[len(PLACES) - 1 - at]
        numbers = {
            "act": "compare",
            "place": place,
            "digits": [first, second],
            "sign": compared(first, second),
        }
        title = place.capitalize()
        if first != second:
            words = f"{first} is {'less' if first < second else 'more'} than {second}"
            steps.append(Step(say=f"{title}: {words}.", chant=words, numbers=numbers))
            break
        say = f"{title}: {first} and {second} are equal."
        steps.append(Step(say=say, chant="equal", numbers=numbers))
    sign = compared(one, other)
    last = Step(
        say=f"{one} {sign} {other}.",
        chant=f"{one} {IN_WORDS[sign]} {other}",
        show={"result": True},
        numbers={"act": "compare", "numbers": [one, other], "sign": sign},
    )
    return [*steps, last]


def two_mats(one: int, other: int) -> dict[str, Any]:
    """Return the trait that lays two numbers out to be compared.

    Example:
        >>> [blocks["tens"] for blocks in two_mats(20, 35)["mat"]]
        [2, 3]
    """
    return {"mat": [fewest(one), fewest(other)]}


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


def ordering_steps(row: Sequence[int], wanted: str) -> tuple[Step, ...]:
    """Return how the greatest, or the smallest, of three numbers is found.

    Example:
        >>> for step in ordering_steps([45, 54, 27], "greatest"):
        ...     print(step.say)
        Tens: 4 is less than 5.
        45 < 54.
        Keep 54 and compare it with 27.
        Tens: 5 is more than 2.
        54 > 27.
        54 is the greatest.
    """
    first, second, third = row
    pick = max if wanted == "greatest" else min
    kept = pick(first, second)
    last = pick(kept, third)
    return (
        *comparing_steps(first, second),
        Step(
            say=f"Keep {kept} and compare it with {third}.",
            chant=f"{kept} and {third}",
            show={**two_mats(kept, third), "result": False},
            numbers={"act": "keep", "number": kept, "with": third},
        ),
        *comparing_steps(kept, third),
        Step(
            say=f"{last} is the {wanted}.",
            chant=f"{last}",
            answer=f"{last}",
            numbers={"act": "end", "number": last, "which": wanted},
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
