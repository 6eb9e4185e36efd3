"""Tasks of the addition strand: facts, whole tens, written sums and missing addends."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import cache
from typing import Any

from manipulatives.lessons.strands.addition.mistakes.columns import found_in
from manipulatives.lessons.strands.addition.tasks.equals import TRUE_OR_FALSE
from manipulatives.lessons.strands.stories.tasks import ADD_TO, PUT_TOGETHER
from manipulatives.lessons.strands.sums.blocks import blocks_task
from manipulatives.lessons.strands.sums.facts import (
    adding_steps,
    doubling_steps,
    several_steps,
    tens_more_steps,
)
from manipulatives.lessons.strands.sums.in_columns import (
    adding_difficulty,
    adding_kind,
    written_task,
)
from manipulatives.lessons.strands.sums.line import line, line_end
from manipulatives.lessons.strands.sums.missing import MAKE_TEN, MISSING_ADDEND
from manipulatives.lessons.strands.sums.pools import additions, facts_20
from manipulatives.lessons.strands.sums.tasks import prompt_of, sum_reader, typed_task
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.pools import Lazy
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.maths.columns.written_sum import ADD

TEN, TWENTY, HUNDRED = 10, 20, 100
Options = Mapping[str, Any]
Numbers = tuple[int, ...]


def _fact(
    kind: Callable[[Numbers], str], steps: Callable[[Request], tuple[Step, ...]]
) -> Callable[[Request], Task]:
    def task(request: Request) -> Task:
        numbers = request.item
        return typed_task(
            request,
            kind=kind(numbers),
            prompt=prompt_of(ADD, numbers),
            answer=sum(numbers),
            manipulative="CountingChart",
            start=line(line_end(sum(numbers)), _begin(numbers)),
            steps=steps(request),
            found=found_in(numbers),
        )

    return task


def _begin(numbers: Numbers) -> int | None:
    """Return where counting on begins; of three numbers and of doubles anywhere."""
    first, *others = numbers
    if len(others) > 1 or others[0] == first:
        return None
    return first if others[0] % TEN == 0 and sum(numbers) > TWENTY else max(numbers)


def fact_kind(numbers: Numbers) -> str:
    """Return of which kind a fact is.

    Example:
        >>> fact_kind((8, 5)), fact_kind((8, 0)), fact_kind((2, 5))
        ('over ten', 'with zero', 'up to ten')
    """
    if 0 in numbers:
        return "with zero"
    return "over ten" if sum(numbers) > TEN else "up to ten"


@cache
def _facts_10(to: int, *, zero: bool) -> tuple[Numbers, ...]:
    least = 0 if zero else 1
    return tuple((a, b) for a in range(least, to + 1) for b in range(least, to - a + 1))


@cache
def _doubles(to: int, over: int, *, near: bool) -> tuple[Numbers, ...]:
    step = TEN if to > TWENTY else 1
    numbers = range(step, to // 2 + 1, step)
    pairs = (
        [pair for a in numbers for pair in ((a, a + step), (a + step, a))]
        if near
        else [(a, a) for a in numbers]
    )
    return tuple(pair for pair in pairs if over < sum(pair) <= to)


@cache
def _tens(of: int) -> tuple[Numbers, ...]:
    return tuple((a * of, b * of) for a in range(1, TEN) for b in range(1, TEN - a + 1))


@cache
def _tens_more() -> tuple[Numbers, ...]:
    return tuple(
        (a, b) for a in range(TEN, HUNDRED) if a % TEN for b in range(TEN, HUNDRED - a, TEN)
    )


@cache
def _three(to: int, ten: str) -> tuple[Numbers, ...]:
    ones = range(1, TEN)
    triples = ((a, b, c) for a in ones for b in ones for c in ones if a + b + c <= to)
    wanted = {"any": (False, True), "yes": (True,), "no": (False,)}[ten]
    return tuple((a, b, c) for a, b, c in triples if (TEN in (a + b, a + c, b + c)) in wanted)


def _written(items: Callable[[Options], Lazy[Numbers]], lengths: Sequence[Sequence[int]],
             such_as: str) -> TaskGenerator:  # fmt: skip
    def fits(numbers: Numbers) -> bool:
        return [len(str(number)) for number in numbers] in [list(each) for each in lengths]

    return TaskGenerator(
        items=items,
        task=lambda request: written_task(request, ADD, found_in(request.item)),
        kind=adding_kind,
        difficulty=adding_difficulty,
        read=sum_reader(ADD, fits, such_as),
    )


def _of_facts(
    items: Callable[[Options], Sequence[Numbers]], such_as: str, most: int
) -> TaskGenerator:
    return TaskGenerator(
        items=items,
        task=_fact(fact_kind, adding_steps),
        kind=fact_kind,
        difficulty=sum,
        read=sum_reader(ADD, lambda numbers: len(numbers) == 2 and sum(numbers) <= most, such_as),  # noqa: PLR2004 - a fact
    )


def _doubles_kind(numbers: Numbers) -> str:
    return "double" if len(set(numbers)) == 1 else "near double"


def _three_kind(numbers: Numbers) -> str:
    a, b, c = numbers
    return "with ten" if TEN in (a + b, a + c, b + c) else "without ten"


def _tens_more_kind(_: Numbers) -> str:
    return "tens more"


def _blocks(request: Request) -> Task:
    return blocks_task(request, ADD, found_in(request.item))


GENERATORS: dict[str, TaskGenerator] = {
    "addition.facts_10": _of_facts(
        lambda options: _facts_10(options["to"], zero=options["zero"]), "3 + 5", TEN
    ),
    "addition.facts_20": _of_facts(
        lambda options: facts_20(options["regroup"], zero=options["zero"], teens=options["teens"]),
        "8 + 5",
        TWENTY,
    ),
    "addition.make_ten": MAKE_TEN,
    "addition.doubles": TaskGenerator(
        items=lambda options: _doubles(options["to"], options["over"], near=options["near"]),
        task=_fact(_doubles_kind, doubling_steps),
        kind=_doubles_kind,
        difficulty=sum,
    ),
    "addition.tens": TaskGenerator(
        items=lambda options: _tens(options["of"]), task=_blocks, difficulty=sum
    ),
    "addition.two_digit_tens": TaskGenerator(
        items=lambda _: _tens_more(), task=_fact(_tens_more_kind, tens_more_steps), difficulty=sum
    ),
    "addition.two_digit_one_digit": _written(
        lambda options: additions((2, 1), options["regroup"], options["to"]), [(2, 1)], "58 + 7"
    ),
    "addition.two_digit": _written(
        lambda options: additions((2, 2), options["regroup"], options["to"]), [(2, 2)], "58 + 37"
    ),
    "addition.three_digit": _written(
        lambda options: additions((3, options["second"]), options["regroup"], options["to"]),
        [(3, 3), (3, 2), (3, 1)],
        "358 + 237",
    ),
    "addition.three_numbers": TaskGenerator(
        items=lambda options: _three(options["to"], options["ten"]),
        task=_fact(_three_kind, several_steps),
        kind=_three_kind,
        difficulty=sum,
    ),
    "addition.several": _written(
        lambda options: additions((2,) * options["count"], options["regroup"]),
        [(2, 2, 2), (2, 2, 2, 2)],
        "12 + 34 + 56",
    ),
    "addition.missing_addend": MISSING_ADDEND,
    "addition.true_or_false": TRUE_OR_FALSE,
    "addition.stories_add_to": ADD_TO,
    "addition.stories_put_together": PUT_TOGETHER,
}
