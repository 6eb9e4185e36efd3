"""Counting in steps through a range of numbers."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import TypeGuard

LARGEST = 10_000
MOST_NUMBERS = 1001
LARGEST_STEP = 1000
DIRECTIONS = ("forward", "back")


def is_among(number: object, least: int, most: int) -> TypeGuard[int]:
    """Return whether something is a whole number in a range; True and 1.0 are not.

    Example:
        >>> is_among(5, 1, 10), is_among(11, 1, 10), is_among(True, 1, 10)
        (True, False, False)
    """
    return isinstance(number, int) and not isinstance(number, bool) and least <= number <= most


def check_range(first: object, last: object) -> tuple[int, int]:
    """Check a range for counting and return it.

    Args:
        first: the smallest number.
        last: the largest number.

    Raises:
        ValueError: no whole numbers from 0 to 10 000, not in order, or more than 1001 of them.

    Example:
        >>> check_range(1, 120)
        (1, 120)
    """
    if not is_among(first, 0, LARGEST):
        raise ValueError(f"The first number is whole, from 0 to {LARGEST}, not {first!r}.")
    if not is_among(last, 0, LARGEST):
        raise ValueError(f"The last number is whole, from 0 to {LARGEST}, not {last!r}.")
    if not first < last < first + MOST_NUMBERS:
        raise ValueError(
            f"The last number is 1 to {MOST_NUMBERS - 1} more than the first, "
            f"but these are {first} and {last}."
        )
    return first, last


def check_step(step: object) -> int:
    """Check a step for counting and return it.

    Raises:
        ValueError: it is no whole number from 1 to 1000.

    Example:
        >>> check_step(5)
        5
    """
    if is_among(step, 1, LARGEST_STEP):
        return step
    raise ValueError(
        f"A step is a whole number from 1 to {LARGEST_STEP}, not {step!r}; "
        'to count back, say direction="back".'
    )


def check_start(start: object, first: int, last: int) -> int | None:
    """Check the start of a count and return it; None for the first multiple of the step.

    Raises:
        ValueError: it is neither None nor a number of the range.

    Example:
        >>> check_start(35, 1, 100)
        35
    """
    if start is None:
        return None
    if is_among(start, first, last):
        return start
    raise ValueError(f"The start is a number from {first} to {last} or None, not {start!r}.")


def beginning(
    first: int, last: int, step: int, start: int | None = None, direction: str = "forward"
) -> int:
    """Return the number that a count begins with.

    Without a start it is the multiple of the step that comes first on the way, or the end of
    the range when there is none.

    Example:
        >>> beginning(1, 100, 5), beginning(1, 98, 5, direction="back"), beginning(1, 100, 5, 3)
        (5, 95, 3)
    """
    if start is not None:
        return start
    if direction == "back":
        multiple = last // step * step
        return multiple if multiple >= first else last
    multiple = -(-first // step) * step
    return multiple if multiple <= last else first


def count_of(
    first: int, last: int, step: int, start: int | None = None, direction: str = "forward"
) -> list[int]:
    """Return the numbers of a count, in the order in which they are said.

    Args:
        first: the smallest number of the range.
        last: its largest number.
        step: from each number to the next.
        start: where it begins; see `beginning` for None.
        direction: "forward" or "back".

    Example:
        >>> count_of(1, 20, 5), count_of(1, 20, 5, 18, "back")
        ([5, 10, 15, 20], [18, 13, 8, 3])
    """
    begin = beginning(first, last, step, start, direction)
    if direction == "back":
        return list(range(begin, first - 1, -step))
    return list(range(begin, last + 1, step))


def hops(numbers: Sequence[int]) -> list[tuple[int, int]]:
    """Return the hops on the number line from each number said to the next.

    Example:
        >>> hops([5, 10, 15])
        [(5, 10), (10, 15)]
    """
    return list(pairwise(numbers))
