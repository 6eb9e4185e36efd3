"""The cells of a counting chart: the number of each, and which of them are hidden.

A chart begins in its upper left corner with its first number and goes on to the right, row by row.
"""

from __future__ import annotations

from collections.abc import Iterable

from manipulatives.data import table
from manipulatives.maths.number.counting import check_range, is_among

WIDTHS = range(2, 21)
PATTERNS = ("none", "thirds", "cross", "patch", "counts", "all")
_CELLS = table("hidden_cells")


def check_width(width: object) -> int:
    """Check the width of a chart and return it.

    Raises:
        ValueError: it is no whole number from 2 to 20.

    Example:
        >>> check_width(10)
        10
    """
    if is_among(width, WIDTHS[0], WIDTHS[-1]):
        return width
    raise ValueError(
        f"A chart is {WIDTHS[0]} to {WIDTHS[-1]} numbers wide, not {width!r}; 10 is usual."
    )


def rows_of(first: int, last: int, width: int) -> list[list[int]]:
    """Return the numbers of a chart, row by row; the last row may be shorter.

    Example:
        >>> rows_of(1, 12, 5)
        [[1, 2, 3, 4, 5], [6, 7, 8, 9, 10], [11, 12]]
    """
    return [
        list(range(begin, min(begin + width, last + 1))) for begin in range(first, last + 1, width)
    ]


def every_third(first: int, last: int) -> list[int]:
    """Return the third number of a chart and every third from there.

    Example:
        >>> every_third(1, 10)
        [3, 6, 9]
    """
    return list(range(first + 2, last + 1, 3))


def cross(first: int, last: int, width: int, middle: int | None = None) -> list[int]:
    """Return the numbers of a cross whose arms are two cells long.

    Args:
        first: the first number of the chart.
        last: its last number.
        width: how many numbers a row has.
        middle: the number in the middle of the cross; None for the middle of the chart.

    Example:
        >>> cross(1, 100, 10, 45)
        [25, 35, 43, 44, 45, 46, 47, 55, 65]
    """
    return _shape(_CELLS["cross"], first, last, width, middle)


def patch(first: int, last: int, width: int, middle: int | None = None) -> list[int]:
    """Return the numbers of a ragged patch, as if it were torn out of the chart.

    Args:
        first: the first number of the chart.
        last: its last number.
        width: how many numbers a row has.
        middle: the number in the middle of the patch; None for the middle of the chart.

    Example:
        >>> patch(1, 100, 10, 45)
        [34, 35, 36, 43, 44, 45, 46, 54, 55, 56, 57]
    """
    return _shape(_CELLS["patch"], first, last, width, middle)


def check_hidden(hidden: object, first: int, last: int) -> str | list[int]:
    """Check the cells to hide, a pattern by name or numbers of the chart, and return them in order.

    Raises:
        ValueError: it is neither.

    Example:
        >>> check_hidden([45, 44], 1, 100)
        [44, 45]
    """
    if isinstance(hidden, str) and hidden in PATTERNS:
        return hidden
    if isinstance(hidden, (list, tuple)) and all(
        is_among(number, first, last) for number in hidden
    ):
        return sorted(set(hidden))
    names = ", ".join(PATTERNS)
    raise ValueError(
        f"Hidden is one of {names}, or a list of numbers from {first} to {last}, not {hidden!r}."
    )


def hidden_numbers(
    hidden: str | Iterable[int], first: int, last: int, width: int, counts: Iterable[int]
) -> list[int]:
    """Return the numbers that are hidden, in order.

    Args:
        hidden: a name of `PATTERNS`, or the numbers themselves.
        first: the first number of the chart.
        last: its last number.
        width: how many numbers a row has.
        counts: the numbers of the count, which "counts" hides.

    Example:
        >>> hidden_numbers("counts", 1, 20, 10, [15, 10, 5])
        [5, 10, 15]
    """
    if not isinstance(hidden, str):
        return sorted(hidden)
    if hidden == "cross":
        return cross(first, last, width)
    if hidden == "patch":
        return patch(first, last, width)
    patterns = {
        "none": (),
        "thirds": every_third(first, last),
        "counts": sorted(counts),
        "all": range(first, last + 1),
    }
    return list(patterns[hidden])


def _shape(
    shape: Iterable[tuple[int, int]], first: int, last: int, width: int, middle: int | None
) -> list[int]:
    check_range(first, last)
    if middle is None:
        row, column = (last - first) // width // 2, min(width - 1, last - first) // 2
    else:
        row, column = divmod(middle - first, width)
    numbers = [
        first + (row + down) * width + column + right
        for down, right in shape
        if 0 <= column + right < width and row + down >= 0
    ]
    return sorted(number for number in numbers if first <= number <= last)
