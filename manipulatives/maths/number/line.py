"""The piece of a number line that is shown: its ends, its marks and its numbers."""

from __future__ import annotations

from collections.abc import Sequence

SHORT = 21
_LEAST_PAGE = 20
_STEPS_A_PAGE = 5
_MOST_MARKS = 60
_MOST_APART = 10
_APART = (1, 2, 5, 10, 20, 50, 100, 200, 500)


def piece(first: int, last: int, step: int, counted: Sequence[int], coming: int) -> tuple[int, int]:
    """Return the first and the last number of the piece that shows the last hop.

    A short line is shown completely. A longer one is cut into pages of twenty numbers or five hops.
    A piece is a page with one hop more at both ends, so that each hop is complete on some piece.

    Args:
        first: the smallest number of the whole line.
        last: its largest number.
        step: the length of a hop.
        counted: the numbers counted so far.
        coming: the number with which the count begins.

    Example:
        >>> piece(1, 100, 5, [], 5), piece(1, 100, 5, [5, 10, 15, 20, 25, 30], 5)
        ((1, 30), (20, 55))

        Numbers that were marked, not counted, may have hops shorter than the step:

        >>> piece(0, 1000, 999, [400, 500, 600], 0)
        (400, 1000)
    """
    if last - first < SHORT:
        return first, last
    here = counted[-1] if counted else coming
    before = counted[-2] if len(counted) > 1 else here
    hop = min(step, abs(here - before) or step)
    page = max(_LEAST_PAGE, _STEPS_A_PAGE * hop)
    low = min(before, here) // page * page
    return max(first, low - hop), min(last, low + page + hop)


def marks_apart(low: int, high: int) -> int:
    """Return the distance between marks of a piece: 1, or 10 or 100 where it is long.

    Example:
        >>> marks_apart(0, 30), marks_apart(0, 600)
        (1, 10)
    """
    apart = 1
    while (high - low) // apart > _MOST_MARKS:
        apart *= 10
    return apart


def numbers_apart(low: int, high: int, length: float, room: float, step: int = 1) -> int:
    """Return the distance between the numbers written below a piece, so that none overlap.

    It is the step where that is 1, 2, 5 or 10 and the numbers have room.

    Args:
        low: the first number of the piece.
        high: its last number.
        length: how long the piece is.
        room: the width of the widest number, in the unit of `length`.
        step: the length of a hop.

    Example:
        >>> numbers_apart(0, 20, 400, 30), numbers_apart(0, 20, 400, 30, 5)
        (2, 5)
    """
    each = length / (high - low)
    if step <= _MOST_APART and step in _APART and step * each >= room:
        return step
    return next((apart for apart in _APART if apart * each >= room), _APART[-1])
