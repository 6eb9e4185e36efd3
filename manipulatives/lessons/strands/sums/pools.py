"""All sums of a wanted difficulty, listed digit by digit, without trying sums that do not fit.

What is hard about a sum is defined by `maths.columns.difficulty`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from manipulatives.lessons.tasks.pools import Lazy, Moves, Walks

BASE, TWENTY = 10, 20
DIGITS = range(BASE)


@dataclass(frozen=True)
class Column:
    """What is to happen in one column of a sum; None for either.

    Attributes:
        regroups: whether it is regrouped: carried out of, or its upper digit is not enough.
        through: whether the regrouping passes through a zero here: in a subtraction a zero of the
            upper number, in an addition one of the answer, which the opposite subtraction meets.
        equal: whether the digits of a subtraction are equal when they are taken, so 0 is left.
    """

    regroups: bool | None = None
    through: bool | None = None
    equal: bool | None = None


FREE = Column()
PLAIN, REGROUPED = Column(regroups=False), Column(regroups=True)
ADDING: Mapping[str, tuple[Column, ...]] = {
    "none": (),
    "ones": (REGROUPED,),
    "tens": (PLAIN, REGROUPED),
    "both": (REGROUPED, REGROUPED),
    "zero": (REGROUPED, Column(regroups=True, through=True)),
}
"""How sums are regrouped: in no place, the ones or the tens only, both, or on through a zero."""
TAKING: Mapping[str, tuple[Column, ...]] = {
    **ADDING,
    "both": (REGROUPED, Column(regroups=True, through=False)),
}
"""The same of subtractions, where both places are regrouped without a zero between."""


@cache
def facts_20(regroup: str, *, zero: bool, teens: bool) -> tuple[tuple[int, int], ...]:
    """Return the facts of addition within twenty.

    Args:
        regroup: "any"; "none" or "ones", whether ten ones come together.
        zero: whether a number may be zero.
        teens: whether one number is 10 or more, instead of both of one digit.

    Example:
        >>> len(facts_20("any", zero=True, teens=False))
        100
        >>> len(facts_20("ones", zero=False, teens=False))
        45
    """
    least = 0 if zero else 1
    largest = TWENTY - least if teens else BASE - 1
    pairs = (
        (a, b)
        for a in range(least, largest + 1)
        for b in range(least, largest + 1)
        if not teens or (max(a, b) >= BASE and a + b <= TWENTY)
    )
    ones = {"any": (False, True), "none": (False,), "ones": (True,)}[regroup]
    return tuple((a, b) for a, b in pairs if (a % BASE + b % BASE >= BASE) in ones)


@cache
def additions(
    lengths: tuple[int, ...], regroup: str = "any", most: int | None = None
) -> Lazy[tuple[int, ...]]:
    """Return all sums of numbers with so many digits that are regrouped in the wanted way.

    Args:
        lengths: how many digits each number has; one of one digit is 1 to 9.
        regroup: "any", or one of `ADDING`. A place that is regrouped carries, be it 1 or more.
        most: the largest answer; None for any.

    Raises:
        KeyError: there is no such way.

    Example:
        >>> tens = additions((2, 2), "tens")
        >>> len(tens), tens[0], tens[-1]
        (2475, (10, 90), (99, 90))
    """
    columns = _columns(ADDING, regroup, max(lengths))
    limit = BASE ** (max(lengths) + 1) - 1 if most is None else most
    choices = []
    for place, wanted in enumerate(columns):
        allborrowed = [_digits(place, length) for length in lengths]
        choices += [_summand(digits) for digits in allborrowed[:-1]]
        choices.append(_last_summand(allborrowed[-1], wanted, limit // BASE**place % BASE))

    def fits(state: tuple[int, int, bool]) -> bool:
        carry, _, below = state
        front = limit // BASE ** len(columns)
        return carry < front or (carry == front and below)

    return Walks(choices, (0, 0, True), fits, _numbers(len(lengths)))


@cache
def subtractions(
    lengths: tuple[int, int], regroup: str = "any", equal: str = "any", *, nothing: bool = False
) -> Lazy[tuple[int, ...]]:
    """Return all subtractions of numbers with so many digits, regrouped in the wanted way.

    Args:
        lengths: how many digits the upper and the lower number have; one of one digit is 1 to 9.
        regroup: "any", or one of `TAKING`.
        equal: the place that has equal digits when they are taken, "ones", "tens" or "some".
        nothing: whether nothing may be left.

    Raises:
        KeyError: there is no such way.

    Example:
        >>> ones = subtractions((2, 2), "ones")
        >>> len(ones), ones[0], ones[-1]
        (1620, (20, 11), (98, 89))
    """
    columns = list(_columns(TAKING, regroup, lengths[0]))
    for place, name in enumerate(("ones", "tens")):
        if equal == name:
            columns[place] = Column(columns[place].regroups, columns[place].through, equal=True)
    choices: list[Callable[[Any], Moves]] = []
    for place, wanted in enumerate(columns):
        upper, lower = (_digits(place, length) for length in lengths)
        choices.append(_upper(upper))
        choices.append(_lower(lower, wanted, beyond=place >= lengths[1]))

    def fits(state: tuple[int, int, bool, bool]) -> bool:
        borrowed, _, left, same = state
        return not borrowed and (left or nothing) and (same or equal != "some")

    return Walks(choices, (0, 0, False, False), fits, _numbers(len(lengths)))


def _columns(ways: Mapping[str, tuple[Column, ...]], regroup: str, count: int) -> list[Column]:
    if regroup == "any":
        return [FREE] * count
    wanted = ways[regroup]
    # A place that is not there cannot be regrouped, so nothing is found.
    return [*wanted, *[PLAIN] * (count - len(wanted))] if len(wanted) <= count else [_NEVER] * count


_NEVER = Column(regroups=False, through=True)


def _digits(place: int, length: int) -> range:
    """Return what a number of so many digits may have in a place."""
    if place >= length:
        return range(1)
    return range(1, BASE) if place == length - 1 else DIGITS


def _numbers(count: int) -> Callable[[Sequence[int]], tuple[int, ...]]:
    def made(way: Sequence[int]) -> tuple[int, ...]:
        return tuple(
            sum(digit * BASE**place for place, digit in enumerate(way[number::count]))
            for number in range(count)
        )

    return made


def _summand(digits: range) -> Callable[[Any], Moves]:
    """Return the choices of a digit that is added before the last of its column.

    The state is the carry into the column, the sum of its digits so far, and whether the answer up
    to here is within the digits of the limit.
    """

    def moves(state: tuple[int, int, bool]) -> Moves:
        carry, so_far, below = state
        return [(digit, (carry, so_far + digit, below)) for digit in digits]

    return moves


def _last_summand(digits: range, wanted: Column, limit: int) -> Callable[[Any], Moves]:
    def moves(state: tuple[int, int, bool]) -> Moves:
        carry, so_far, below = state
        for digit in digits:
            out, written = divmod(carry + so_far + digit, BASE)
            through = carry > 0 and written == 0
            if _is(wanted.regroups, out > 0) and _is(wanted.through, through):
                yield digit, (out, 0, written < limit or (written == limit and below))

    return moves


def _upper(digits: range) -> Callable[[Any], Moves]:
    """Return the choices of the upper digit of a column.

    The state is the 1 that was borrowed from the column, or 0, its upper digit, and whether
    anything is left and any digits were equal so far.
    """

    def moves(state: tuple[int, int, bool, bool]) -> Moves:
        borrowed, _, left, same = state
        return [(digit, (borrowed, digit, left, same)) for digit in digits]

    return moves


def _lower(digits: range, wanted: Column, *, beyond: bool) -> Callable[[Any], Moves]:
    def moves(state: tuple[int, int, bool, bool]) -> Moves:
        borrowed, upper, left, same = state
        for digit in digits:
            short = upper - borrowed < digit
            rest = (upper - borrowed - digit) % BASE
            through = borrowed > 0 and upper == 0
            equal = rest == 0 and not beyond
            if (
                _is(wanted.regroups, short)
                and _is(wanted.through, through)
                and _is(wanted.equal, equal)
            ):
                yield digit, (int(short), 0, left or rest > 0, same or equal)

    return moves


def _is(wanted: bool | None, there: bool) -> bool:  # noqa: FBT001 - two answers are compared
    return wanted is None or wanted == there
