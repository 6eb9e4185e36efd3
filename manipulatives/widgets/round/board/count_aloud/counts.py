"""The numbers that a class counts aloud at the end of a round, while the board is wiped."""

from __future__ import annotations

DOZEN, TEN, HUNDRED = 12, 10, 100
TO_HUNDRED = (5, 10)


def counts_by(by: int) -> list[int]:
    """Return the count in steps of a number.

    Fives and tens lead to a hundred. Others are counted twelve times, as far as tables go, and
    large ones ten times (both common practice).

    Args:
        by: 1 to 100.

    Example:
        >>> counts_by(25)
        [25, 50, 75, 100, 125, 150, 175, 200, 225, 250]
    """
    times = HUNDRED // by if by in TO_HUNDRED else DOZEN if by <= DOZEN else TEN
    return [by * time for time in range(1, times + 1)]
