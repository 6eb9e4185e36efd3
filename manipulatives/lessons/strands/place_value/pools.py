"""The numbers, pairs and triples that tasks of place value ask about, by their options."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import accumulate, combinations, permutations
from math import comb

from manipulatives.lessons.tasks.pools import Joined, Lazy

TEN = 10
HUNDRED = 100
# The smallest number of a skill, by its largest number.
LEAST = {10: 1, 20: 1, HUNDRED: TEN, 1000: HUNDRED}
UNITS = {"ones": 1, "tens": TEN, "hundreds": HUNDRED}


def zeros_of(number: int) -> str:
    """Return which places of a number are empty: "none", "ones", "tens" or "both".

    Example:
        >>> [zeros_of(number) for number in (345, 340, 305, 300, 40, 7)]
        ['none', 'ones', 'tens', 'both', 'ones', 'none']
    """
    ones, tens = number % TEN == 0, number >= HUNDRED and number // TEN % TEN == 0
    return "both" if ones and tens else "ones" if ones else "tens" if tens else "none"


@cache
def numbers(to: int, zeros: str = "any", parts: int = 1) -> tuple[int, ...]:
    """Return the numbers up to a limit in which exactly the wanted places are empty.

    Args:
        to: 20 for 1 to 20, 100 for 10 to 100, 1000 for 100 to 1000.
        zeros: "any", or what `zeros_of` returns.
        parts: the least number of digits that are not 0.

    Example:
        >>> len(numbers(100)), numbers(100, "ones")[:3], numbers(100, "tens")
        (91, (10, 20, 30), ())
    """
    return tuple(
        number
        for number in range(LEAST[to], to + 1)
        if zeros in ("any", zeros_of(number)) and _parts(number) >= parts
    )


@cache
def digits_in_place(to: int, place: str) -> tuple[tuple[str, int], ...]:
    """Return places with numbers whose digit there is not 0 and is in no other place.

    Example:
        >>> digits_in_place(100, "tens")[:3]
        (('tens', 10), ('tens', 12), ('tens', 13))
    """
    return tuple(
        (name, number)
        for name, unit in UNITS.items()
        for number in numbers(to)
        if place in ("any", name)
        and number >= max(unit, TEN)
        and (digit := str(number // unit % TEN)) != "0"
        and str(number).count(digit) == 1
        and number < to
    )


class Pairs(Lazy[tuple[int, int]]):
    """All pairs of a number of one range and a number of another, for several pairs of ranges.

    Example:
        >>> pairs = Pairs([(range(3), range(10, 12)), (range(5, 6), range(1))])
        >>> len(pairs), pairs[1], pairs[6], (5, 0) in pairs
        (7, (0, 11), (5, 0), True)
    """

    def __init__(self, blocks: Sequence[tuple[range, range]]) -> None:
        self._blocks = blocks
        self._ends = list(accumulate(len(one) * len(other) for one, other in blocks))

    def __len__(self) -> int:
        return self._ends[-1] if self._ends else 0

    def __contains__(self, item: object) -> bool:
        match item:
            case (first, second):
                return any(first in one and second in other for one, other in self._blocks)
        return False

    def _at(self, index: int) -> tuple[int, int]:
        place = bisect_right(self._ends, index)
        one, other = self._blocks[place]
        first, second = divmod(index - (self._ends[place - 1] if place else 0), len(other))
        return one[first], other[second]


class Triples(Lazy[tuple[int, int, int]]):
    """All sets of three numbers of a range, each in rising order.

    Example:
        >>> triples = Triples(range(1, 6))
        >>> len(triples), triples[0], triples[9]
        (10, (1, 2, 3), (3, 4, 5))
    """

    def __init__(self, among: range) -> None:
        self._among = among

    def __len__(self) -> int:
        return comb(len(self._among), 3)

    def _at(self, index: int) -> tuple[int, int, int]:
        # The index in the combinatorial number system: one binomial coefficient for each number.
        high = _largest(len(self._among), 3, index)
        index -= comb(high, 3)
        middle = _largest(high, 2, index)
        low = index - comb(middle, 2)
        return self._among[low], self._among[middle], self._among[high]


@cache
def pairs(to: int, decides: str) -> Sequence[tuple[int, int]]:
    """Return the pairs of numbers in which a place decides: the largest place that differs.

    Args:
        to: 10, 20, 100 or 1000; the numbers go from 1 to it.
        decides: "any", "hundreds", "tens", "ones", or "equal".

    Example:
        >>> len(pairs(100, "any")), len(pairs(20, "equal")), len(pairs(20, "ones"))
        (10000, 20, 162)
    """
    every = range(1, to + 1)
    if decides == "any":
        return Pairs([(every, every)])
    if decides == "equal":
        return Pairs([(range(one, one + 1), range(one, one + 1)) for one in every])
    unit = UNITS[decides]
    blocks = []
    for whole in _cut(every, unit * TEN):
        parts = list(_cut(whole, unit))
        blocks += list(permutations(parts, 2))
    return Pairs(blocks)


@cache
def triples(to: int, like: str) -> Sequence[tuple[int, int, int]]:
    """Return sets of three different numbers, each in rising order.

    Args:
        to: 20, 100 or 1000; see `numbers`.
        like: "any"; "hundreds" or "tens", where all three have the same ones of that place and
            above; "digits", where all three have the same three digits in another order.

    Example:
        >>> len(triples(20, "any")), len(triples(1000, "digits")), len(triples(100, "digits"))
        (1140, 1680, 0)
    """
    every = range(LEAST[to], to + 1)
    if like == "any":
        return Triples(every)
    if like == "digits":
        return _of_same_digits() if to > HUNDRED else ()
    unit = UNITS[like]
    return Joined(Triples(part) for part in _cut(every, unit) if part[0] >= unit)


@cache
def _of_same_digits() -> tuple[tuple[int, int, int], ...]:
    return tuple(
        (one, two, three)
        for digits in combinations(range(1, TEN), 3)
        for one, two, three in combinations(
            [HUNDRED * a + TEN * b + c for a, b, c in permutations(digits)], 3
        )
    )


def _cut(numbers_: range, unit: int) -> Iterator[range]:
    """Yield the parts of a range between whole multiples of a unit."""
    for begin in range(numbers_.start // unit * unit, numbers_.stop, unit):
        yield range(max(begin, numbers_.start), min(begin + unit, numbers_.stop))


def _largest(below: int, size: int, index: int) -> int:
    """Return the largest number n for which n things have at most `index` sets of `size` things."""
    return bisect_right(range(below), index, key=lambda many: comb(many, size)) - 1


def _parts(number: int) -> int:
    return sum(digit != "0" for digit in str(number))
