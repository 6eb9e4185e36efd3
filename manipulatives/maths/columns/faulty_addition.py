"""The result of a written addition when one or two of its steps go wrong.

The right procedure adds each column from the ones to the left, writes the ones of the total and
carries its tens to the next column; the last column is written whole. A `Fault` says which of
these steps a pupil does in another way, so that two of them can be combined.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from manipulatives.maths.columns.written_sum import BASE, LARGEST, MOST_NUMBERS, digits_of

Columns = list[list[int]]


class Total(NamedTuple):
    """What a column adds up to, and where it stands.

    Attributes:
        total: the digits of the column and what was carried to it.
        carried: what was carried to it.
        next_digits: how many digits the next column has.
    """

    total: int
    carried: int
    next_digits: int


@dataclass(frozen=True, kw_only=True)
class Fault:
    """The steps of an addition that are done in another way; None for those done right.

    Attributes:
        lay: puts the numbers into columns, the ones first, each with the digits that are written.
        add: adds the digits of a column, or returns None to go on as usual.
        split: what is written under a column and what is carried on; never asked of the last.
        from_left: begins with the column on the left and carries to the right.
        whole: returns the result of the whole sum, without columns.
    """

    lay: Callable[[Sequence[int]], Columns | None] | None = None
    add: Callable[[list[int]], int | None] | None = None
    split: Callable[[Total], tuple[int, int] | None] | None = None
    from_left: bool = False
    whole: Callable[[Sequence[int]], int] | None = None


class Procedure:
    """A way to add: the right one, or with faults.

    If two faults change the same step, the last one is used.

    Args:
        faults: the steps that are done in another way.

    Example:
        >>> Procedure().answer(47, 38, 6)
        91
    """

    def __init__(self, *faults: Fault) -> None:
        last_first = faults[::-1]
        self._lays = [each.lay for each in last_first if each.lay]
        self._adds = [each.add for each in last_first if each.add]
        self._splits = [each.split for each in last_first if each.split]
        self._wholes = [each.whole for each in last_first if each.whole]
        self._from_left = any(each.from_left for each in faults)

    def answer(self, *addends: int) -> int:
        """Return the result.

        Args:
            addends: two to four numbers from 0 to 9999.

        Raises:
            ValueError: they cannot be added here.

        Example:
            >>> Procedure(Fault(whole=max)).answer(47, 38)
            47
        """
        if not 2 <= len(addends) <= MOST_NUMBERS or not all(  # noqa: PLR2004 - what a sum needs
            type(each) is int and 0 <= each <= LARGEST for each in addends
        ):
            raise ValueError(
                f"An addition here has 2 to {MOST_NUMBERS} whole numbers from 0 to {LARGEST}, "
                f"not {', '.join(map(repr, addends)) or 'none'}."
            )
        for whole in self._wholes:
            return whole(addends)
        columns = next(filter(None, (lay(addends) for lay in self._lays)), None)
        columns = columns or in_columns(addends)
        if self._from_left:
            columns.reverse()
        parts: list[int] = []
        carried = 0
        last = len(columns) - 1
        for at, digits in enumerate(columns):
            total = self._added(digits) + carried
            if at == last:
                parts.append(total)
            else:
                part, carried = self._split(Total(total, carried, len(columns[at + 1])))
                parts.append(part)
        # Concatenate the parts, because a part may have more than one digit.
        return int("".join(map(str, parts if self._from_left else parts[::-1])))

    def _added(self, digits: list[int]) -> int:
        for add in self._adds:
            added = add(digits)
            if added is not None:
                return added
        return sum(digits)

    def _split(self, column: Total) -> tuple[int, int]:
        for split in self._splits:
            done = split(column)
            if done is not None:
                return done
        return column.total % BASE, column.total // BASE


@lru_cache(maxsize=2000)
def _digits(number: int) -> tuple[int, ...]:
    return tuple(digits_of(number))


def in_columns(addends: Sequence[int]) -> Columns:
    """Return the digits that are written in each column, the ones first.

    Example:
        >>> in_columns([47, 8])
        [[7, 8], [4]]
    """
    columns: Columns = [[] for _ in range(len(str(max(addends))))]
    for each in addends:
        for column, digit in zip(columns, _digits(each), strict=False):
            column.append(digit)
    return columns
