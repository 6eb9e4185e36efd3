"""Even and odd numbers."""

from __future__ import annotations

EVEN, ODD = "even", "odd"
PARITIES = (EVEN, ODD)


def parity(number: int) -> str:
    """Return whether a number is "even" or "odd".

    Example:
        >>> parity(14), parity(0), parity(15)
        ('even', 'even', 'odd')
    """
    return PARITIES[number % 2]


def next_of(number: int, wanted: str) -> int:
    """Return the next even, or the next odd, number.

    Example:
        >>> next_of(14, "even"), next_of(14, "odd")
        (16, 15)
    """
    return number + 1 + (parity(number + 1) != wanted)
