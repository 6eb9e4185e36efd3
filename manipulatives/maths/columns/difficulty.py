"""The difficulty of a written sum: where it carries, and where and across which zeros it borrows.

Of the 8100 sums of two two-digit numbers 1980 have no carry, 3735 one and 2385 two. By Kummer's
theorem (1852) the number of carries is the difference between the digit sums of both numbers and
that of their sum, divided by nine; the tests compare both.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from manipulatives.maths.columns.written_sum import ADD, BASE, NAMES, check_numbers, digits_of


@dataclass(frozen=True)
class Difficulty:
    """The difficulty of a sum.

    Attributes:
        places: the columns that are regrouped, by name, the ones first: those that come to ten or
            more, or whose upper digit is not enough.
        zeros: the longest run of zeros that a subtraction regroups through.
        new_place: whether an addition carries into a column where no number has a digit.
        blanks: whether the numbers have different lengths.
        equal: how many columns of a subtraction have equal digits as they are taken.

    Example:
        >>> difficulty("-", [402, 178]).places, difficulty("-", [402, 178]).zeros
        (('ones', 'tens'), 1)
    """

    places: tuple[str, ...]
    zeros: int
    new_place: bool
    blanks: bool
    equal: int

    @property
    def regroupings(self) -> int:
        """How many columns are regrouped."""
        return len(self.places)


def difficulty(operation: str, numbers: Sequence[int]) -> Difficulty:
    """Return the difficulty of a sum.

    Args:
        operation: "+" or "-".
        numbers: two to four to be added, or two, the second taken away from the first.

    Raises:
        ValueError: such a sum cannot be written here.

    Example:
        >>> difficulty("+", [47, 58])
        Difficulty(places=('ones', 'tens'), zeros=0, new_place=True, blanks=False, equal=0)
    """
    checked = check_numbers(operation, numbers)
    lengths = [len(str(number)) for number in checked]
    blanks = len(set(lengths)) > 1
    if operation == ADD:
        amounts = carries(checked)
        places = tuple(NAMES[column] for column, amount in enumerate(amounts) if amount)
        new_place = len(str(sum(checked))) > max(lengths)
        return Difficulty(places, 0, new_place, blanks, 0)
    upper, lower = checked
    taken, zeros = borrows(upper, lower)
    places = tuple(NAMES[column] for column, took in enumerate(taken) if took)
    final = upper_rewritten(upper, lower)
    now = [
        marks[-1] if marks else digit for marks, digit in zip(final, digits_of(upper), strict=True)
    ]
    equal = sum(one == other for one, other in zip(now, digits_of(lower), strict=False))
    return Difficulty(places, zeros, False, blanks, equal)


def carries(numbers: Sequence[int]) -> list[int]:
    """Return the carry of each column to the next, the ones first.

    Example:
        >>> carries([47, 58]), carries([99, 99, 99, 99])
        ([1, 1], [3, 3])
    """
    amounts = []
    carried = 0
    for column in range(max(len(str(number)) for number in numbers)):
        digits = sum(number // BASE**column % BASE for number in numbers)
        carried = (digits + carried) // BASE
        amounts.append(carried)
    return amounts


def borrows(upper: int, lower: int) -> tuple[list[bool], int]:
    """Return which columns borrow from the next, and across how many zeros.

    A zero that is skipped counts as borrowing too, because it passes one on, as in Kummer's count.

    Example:
        >>> borrows(402, 178), borrows(9002, 733)
        (([True, True, False], 1), ([True, True, True, False], 2))
    """
    taken, zeros, run, owed = [], 0, 0, 0
    for column, digit in enumerate(digits_of(upper)):
        # Borrowing skips zeros until a digit that is not zero.
        run = run + 1 if owed and not digit else 0
        zeros = max(zeros, run)
        short = digit - owed < lower // BASE**column % BASE
        taken.append(short)
        owed = int(short)
    return taken, zeros


def upper_rewritten(upper: int, lower: int) -> list[list[int]]:
    """Return the values that each digit of the upper number takes in turn, the ones first.

    Example:
        >>> upper_rewritten(402, 178)
        [[12], [10, 9], [3]]
    """
    now = digits_of(upper)
    marks: list[list[int]] = [[] for _ in now]
    for column in range(len(now)):
        if now[column] >= lower // BASE**column % BASE:
            continue
        source = next(place for place in range(column + 1, len(now)) if now[place])
        for place in range(source, column, -1):
            now[place] -= 1
            now[place - 1] += BASE
            marks[place].append(now[place])
            marks[place - 1].append(now[place - 1])
    return marks
