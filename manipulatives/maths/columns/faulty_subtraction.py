"""The result of a written subtraction when one or two of its steps go wrong.

The right procedure goes from the ones to the left. A column whose upper digit is too small takes
one from the next column and gains ten. Borrowing skips zeros, which become 9, until a digit that is
not zero. A `Fault` says which of these steps a pupil does in another way.
Faults are small functions on the digits, so two of them can be combined in one sum.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from manipulatives.maths.columns.written_sum import BASE, digits_of

MOST_DIGITS = 9
_TOO_LARGE = BASE**MOST_DIGITS
_ZEROS = (0,) * MOST_DIGITS


@lru_cache(maxsize=2000)
def _digits(number: int) -> tuple[int, ...]:
    return tuple(digits_of(number))


class CannotGoOnError(Exception):
    """A fault has led to a state in which it is unknown what a pupil would write."""


@dataclass(slots=True)
class Paper:
    """The digits of a sum while it is worked, the ones first.

    Attributes:
        upper: the current upper digits.
        printed: the original upper digits.
        lower: the current lower digits, 0 where none is.
        reach: how many lower digits are written.
        columns: how many columns are worked.
        took: whether any column has taken from the next.
    """

    upper: list[int]
    printed: tuple[int, ...]
    lower: list[int]
    reach: int
    columns: int
    took: bool = False


Prepare = Callable[[Paper], None]
Write = Callable[[Paper, int], int | None]
Take = Callable[["Procedure", Paper, int], bool]


@dataclass(frozen=True, kw_only=True)
class Fault:
    """The steps of a subtraction that are done in another way; None for those done right.

    Attributes:
        prepare: changes the digits before the first column.
        write: returns the digit of a column without taking, or None to go on as usual.
        take: takes one from this column for the one before; returns False to go on as usual.
        gain: returns the value of a column after it has gained, or None to go on as usual.
        always_takes: once a column has taken, every later one does, needed or not.
        whole: returns the result of the whole sum, without columns.
    """

    prepare: Prepare | None = None
    write: Write | None = None
    take: Take | None = None
    gain: Write | None = None
    always_takes: bool = False
    whole: Callable[[int, int], int] | None = None


class Procedure:
    """A way to subtract: the right one, or with faults.

    If two faults change the same step, the last one is used.

    Args:
        faults: the steps that are done in another way.

    Example:
        >>> Procedure().answer(402, 178)
        224
    """

    def __init__(self, *faults: Fault) -> None:
        last_first = faults[::-1]
        self._prepares = [each.prepare for each in faults if each.prepare]
        self._writes = [each.write for each in last_first if each.write]
        self._takes = [each.take for each in last_first if each.take]
        self._gains = [each.gain for each in last_first if each.gain]
        self._wholes = [each.whole for each in last_first if each.whole]
        self._always_takes = any(each.always_takes for each in faults)

    def answer(self, top: int, bottom: int) -> int | None:
        """Return the result, or None where it is unknown what a pupil would write.

        Args:
            top: the upper number, up to nine digits.
            bottom: the lower number, not larger than the upper.

        Raises:
            ValueError: they cannot be subtracted here.

        Example:
            >>> Procedure(Fault(whole=lambda top, bottom: top + bottom)).answer(32, 15)
            47
        """
        if not (type(top) is type(bottom) is int and 0 <= bottom <= top < _TOO_LARGE):
            raise ValueError(
                f"A subtraction here has a whole number of at most {MOST_DIGITS} digits and one "
                f"from 0 that is not larger below it, not {top!r} and {bottom!r}."
            )
        for whole in self._wholes:
            return whole(top, bottom)
        printed, written = _digits(top), _digits(bottom)
        width, reach = len(printed), len(written)
        lower = [*written, *_ZEROS[reach:width]]
        paper = Paper([*printed], printed, lower, reach, width)
        for prepare in self._prepares:
            prepare(paper)
        answer, worth = 0, 1
        try:
            for at in range(paper.columns):
                digit = self._column(paper, at)
                if digit < 0 or (digit >= BASE and at < paper.columns - 1):
                    return None
                answer += digit * worth
                worth *= BASE
        except CannotGoOnError:
            return None
        return answer

    def _column(self, paper: Paper, at: int) -> int:
        for write in self._writes:
            written = write(paper, at)
            if written is not None:
                return written
        upper, lower = paper.upper[at], paper.lower[at]
        if upper < lower:
            self.take(paper, at + 1)
            paper.took = True
            for gain in self._gains:
                gained = gain(paper, at)
                if gained is not None:
                    return gained - lower
            return upper + BASE - lower
        if paper.took and self._always_takes and at + 1 < len(paper.upper):
            self.take(paper, at + 1)
        return upper - lower

    def take(self, paper: Paper, at: int) -> None:
        """Take one from a column for the one before it.

        Raises:
            CannotGoOnError: there is no such column.
        """
        if at >= len(paper.upper):
            raise CannotGoOnError
        for take in self._takes:
            if take(self, paper, at):
                return
        take_one(self, paper, at)


def take_one(way: Procedure, paper: Paper, at: int) -> bool:
    """Take one correctly: a zero first takes one from its own next column and becomes 9."""
    if paper.upper[at] == 0:
        paper.upper[at] = BASE - 1
        way.take(paper, at + 1)
    else:
        paper.upper[at] -= 1
    return True
