"""Foreseeable errors of comparing numbers and putting them in order.

That the last digit decides, or the first in whatever place, or how many blocks there are, is
common knowledge of teachers; the rules are our exact statements, from no published table.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.strands.place_value.mistakes.digits import digit_sum
from manipulatives.lessons.tasks.rule import Rule, rules_in
from manipulatives.maths.number.mats import compared

TEN = 10
TURNED = {"<": ">", ">": "<"}


def by_last_digit(one: int, other: int) -> str | None:
    """Return the sign when the last digits are compared.

    Example:
        >>> by_last_digit(341, 287), by_last_digit(345, 283)
        ('<', None)
    """
    return _sign(one, other, one % TEN, other % TEN)


def by_first_digit(one: int, other: int) -> str | None:
    """Return the sign when the first digits are compared, whatever they are worth.

    Example:
        >>> by_first_digit(105, 98), by_first_digit(345, 354), by_first_digit(345, 287)
        ('<', '=', None)
    """
    return _sign(one, other, int(str(one)[0]), int(str(other)[0]))


def by_digit_sum(one: int, other: int) -> str | None:
    """Return the sign when the digits, or the blocks, are added up and compared.

    Example:
        >>> by_digit_sum(301, 287), by_digit_sum(345, 354), by_digit_sum(345, 201)
        ('<', '=', None)
    """
    return _sign(one, other, digit_sum(one), digit_sum(other))


def sign_turned(one: int, other: int) -> str | None:
    """Return the opposite sign; equal numbers have none.

    Example:
        >>> sign_turned(345, 287), sign_turned(35, 35)
        ('<', None)
    """
    return TURNED.get(compared(one, other))


def most_by_last_digit(numbers: Sequence[int], wanted: str) -> int | None:
    """Return the number taken when the last digits decide.

    Args:
        numbers: three different numbers.
        wanted: "greatest" or "smallest".

    Example:
        >>> most_by_last_digit([345, 354, 271], "greatest")
        345
    """
    return _most(numbers, wanted, lambda number: number % TEN)


def most_by_first_digit(numbers: Sequence[int], wanted: str) -> int | None:
    """Return the number taken when the first digits decide, whatever they are worth.

    Example:
        >>> most_by_first_digit([98, 345, 271], "greatest")
        98
    """
    return _most(numbers, wanted, lambda number: int(str(number)[0]))


def most_by_digit_sum(numbers: Sequence[int], wanted: str) -> int | None:
    """Return the number taken when the sums of digits decide.

    Example:
        >>> most_by_digit_sum([300, 289, 210], "greatest")
        289
    """
    return _most(numbers, wanted, digit_sum)


def other_end(numbers: Sequence[int], wanted: str) -> int | None:
    """Return the smallest number where the greatest was wanted, and the other way round.

    Example:
        >>> other_end([345, 354, 271], "greatest")
        271
    """
    return min(numbers) if wanted == "greatest" else max(numbers)


def _most(numbers: Sequence[int], wanted: str, key: Callable[[int], int]) -> int | None:
    end = max if wanted == "greatest" else min
    best = end(map(key, numbers))
    at_best = [number for number in numbers if key(number) == best]
    # With a tie, the rule does not say which number is taken.
    return _unless(end(numbers), at_best[0]) if len(at_best) == 1 else None


def _sign(one: int, other: int, by_one: int, by_other: int) -> str | None:
    sign = compared(by_one, by_other)
    return None if sign == compared(one, other) else sign


def _unless(right: int, wrong: int) -> int | None:
    return None if wrong == right else wrong


OnPair = Rule[Callable[[int, int], str | None]]
OnThree = Rule[Callable[[Sequence[int], str], int | None]]

# In each table: where several rules lead to one answer, the first of them names it.
COMPARING: tuple[OnPair, ...] = rules_in(
    FOLDER / "place_value",
    compared_last_digits=by_last_digit,
    compared_first_digits=by_first_digit,
    compared_digit_sums=by_digit_sum,
    sign_turned=sign_turned,
)
ORDERING: tuple[OnThree, ...] = rules_in(
    FOLDER / "place_value",
    ordered_by_last_digit=most_by_last_digit,
    ordered_by_first_digit=most_by_first_digit,
    ordered_by_digit_sum=most_by_digit_sum,
    other_end=other_end,
)
