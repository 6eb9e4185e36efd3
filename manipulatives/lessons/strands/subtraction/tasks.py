"""Tasks of the subtraction strand: facts, whole tens, written sums and missing parts."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import cache
from typing import Any

from manipulatives.lessons.strands.stories.tasks import COMPARE, TAKE_FROM
from manipulatives.lessons.strands.subtraction.mistakes import found_in
from manipulatives.lessons.strands.sums.blocks import blocks_task
from manipulatives.lessons.strands.sums.facts import taking_steps, tens_less_steps
from manipulatives.lessons.strands.sums.in_columns import (
    taking_difficulty,
    taking_kind,
    written_task,
)
from manipulatives.lessons.strands.sums.line import line, line_end
from manipulatives.lessons.strands.sums.missing import MISSING_PART
from manipulatives.lessons.strands.sums.pools import facts_20, subtractions
from manipulatives.lessons.strands.sums.tasks import prompt_of, sum_reader, typed_task
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.pools import Lazy
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.maths.columns.written_sum import SUBTRACT

TEN, TWENTY, HUNDRED = 10, 20, 100
Options = Mapping[str, Any]
Pair = tuple[int, ...]


def _fact(
    kind: Callable[[Pair], str], steps: Callable[[Request], tuple[Step, ...]]
) -> Callable[[Request], Task]:
    def task(request: Request) -> Task:
        upper, lower = request.item
        return typed_task(
            request,
            kind=kind(request.item),
            prompt=prompt_of(SUBTRACT, request.item),
            say=f"Take {lower} away from {upper}.",
            answer=upper - lower,
            manipulative="CountingChart",
            start=line(line_end(upper), upper, back=True),
            steps=steps(request),
            found=found_in(request.item),
        )

    return task


def fact_kind(numbers: Pair) -> str:
    """Return of which kind a fact is.

    Example:
        >>> fact_kind((13, 5)), fact_kind((13, 0)), fact_kind((9, 4)), fact_kind((17, 4))
        ('through ten', 'with zero', 'up to ten', 'over ten')
    """
    upper, lower = numbers
    if lower in (0, upper):
        return "with zero"
    if upper <= TEN:
        return "up to ten"
    return "over ten" if upper - lower > TEN else "through ten"


@cache
def _facts_10(to: int, *, zero: bool) -> tuple[Pair, ...]:
    least = 0 if zero else 1
    return tuple(
        (upper, lower)
        for upper in range(least, to + 1)
        for lower in range(least, upper - least + 1)
    )


@cache
def _facts_20(regroup: str, *, zero: bool, teens: bool) -> tuple[Pair, ...]:
    """Each of the facts of addition, turned round: what both make, less the second number."""
    facts = facts_20(regroup, zero=zero, teens=teens)
    return tuple((first + second, second) for first, second in facts)


@cache
def _tens(of: int) -> tuple[Pair, ...]:
    return tuple((a * of, b * of) for a in range(2, TEN + 1) for b in range(1, a))


@cache
def _tens_less() -> tuple[Pair, ...]:
    return tuple((a, b) for a in range(TEN, HUNDRED) if a % TEN for b in range(TEN, a + 1, TEN))


@cache
def _equal_digits(digits: int, place: str) -> Lazy[Pair]:
    return subtractions((digits, digits), "any", place)


def _written(
    items: Callable[[Options], Lazy[Pair]], lengths: Sequence[tuple[int, int]], such_as: str
) -> TaskGenerator:
    def fits(numbers: Pair) -> bool:
        upper, lower = numbers
        return (len(str(upper)), len(str(lower))) in lengths

    return TaskGenerator(
        items=items,
        task=lambda request: written_task(request, SUBTRACT, found_in(request.item)),
        kind=taking_kind,
        difficulty=taking_difficulty,
        read=sum_reader(SUBTRACT, fits, such_as),
    )


def _of_facts(items: Callable[[Options], Sequence[Pair]], such_as: str, most: int) -> TaskGenerator:
    return TaskGenerator(
        items=items,
        task=_fact(fact_kind, taking_steps),
        kind=fact_kind,
        difficulty=max,
        read=sum_reader(SUBTRACT, lambda numbers: numbers[0] <= most, such_as),
    )


def _blocks(request: Request) -> Task:
    return blocks_task(request, SUBTRACT, found_in(request.item))


GENERATORS: dict[str, TaskGenerator] = {
    "subtraction.facts_10": _of_facts(
        lambda options: _facts_10(options["to"], zero=options["zero"]), "8 - 3", TEN
    ),
    "subtraction.facts_20": _of_facts(
        lambda options: _facts_20(options["regroup"], zero=options["zero"], teens=options["teens"]),
        "13 - 5",
        TWENTY,
    ),
    "subtraction.tens": TaskGenerator(
        items=lambda options: _tens(options["of"]), task=_blocks, difficulty=max
    ),
    "subtraction.two_digit_tens": TaskGenerator(
        items=lambda _: _tens_less(),
        task=_fact(lambda _: "tens less", tens_less_steps),
        difficulty=max,
    ),
    "subtraction.two_digit_one_digit": _written(
        lambda options: subtractions((2, 1), options["regroup"]), [(2, 1)], "63 - 9"
    ),
    "subtraction.two_digit": _written(
        lambda options: subtractions((2, 2), options["regroup"]), [(2, 2)], "63 - 29"
    ),
    "subtraction.three_digit": _written(
        lambda options: subtractions((3, options["second"]), options["regroup"]),
        [(3, 3), (3, 2), (3, 1)],
        "402 - 178",
    ),
    "subtraction.equal_digits": _written(
        lambda options: _equal_digits(options["digits"], options["place"]),
        [(2, 2), (3, 3)],
        "83 - 43",
    ),
    "subtraction.missing_part": MISSING_PART,
    "subtraction.stories_take_from": TAKE_FROM,
    "subtraction.stories_compare": COMPARE,
}
