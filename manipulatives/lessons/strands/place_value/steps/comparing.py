"""The steps in which two numbers are compared, or the greatest or smallest of three is found."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from manipulatives.lessons.tasks.task import Step
from manipulatives.maths.number.mats import compared
from manipulatives.maths.number.place_value import PLACES, fewest

IN_WORDS = {"<": "is less than", "=": "is equal to", ">": "is greater than"}
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
    """Return the trait that puts two numbers on a mat each.

    Example:
        >>> [blocks["tens"] for blocks in two_mats(20, 35)["mat"]]
        [2, 3]
    """
    return {"mat": [fewest(one), fewest(other)]}


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
    chosen = pick(first, second)
    last = pick(chosen, third)
    return (
        *comparing_steps(first, second),
        Step(
            say=f"Keep {chosen} and compare it with {third}.",
            chant=f"{chosen} and {third}",
            show={**two_mats(chosen, third), "result": False},
            numbers={"act": "keep", "number": chosen, "with": third},
        ),
        *comparing_steps(chosen, third),
        Step(
            say=f"{last} is the {wanted}.",
            chant=f"{last}",
            answer=f"{last}",
            numbers={"act": "end", "number": last, "which": wanted},
        ),
    )
