"""Foreseeable errors of telling even and odd numbers apart, as pure functions.

That the first digit decides instead of the last is common knowledge of teachers; the rules are
our exact statements, from no published table.
"""

from __future__ import annotations

from collections.abc import Callable

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.tasks.rule import Rule, rules_in
from manipulatives.maths.number.parity import next_of, parity


def parity_of_tens(number: int) -> str | None:
    """Return what is said when the first digit decides, and not the ones.

    Example:
        >>> parity_of_tens(34), parity_of_tens(24)
        ('odd', None)
    """
    first = parity(int(str(number)[0]))
    return None if first == parity(number) else first


def parity_mixed_up(number: int) -> str:
    """Return what is said when the words even and odd change places.

    Example:
        >>> parity_mixed_up(34)
        'odd'
    """
    return parity(number + 1)


def one_on(number: int, wanted: str) -> int | None:
    """Return the next number, where the next even or odd one was wanted.

    Example:
        >>> one_on(14, "even"), one_on(13, "even")
        (15, None)
    """
    return _unless(next_of(number, wanted), number + 1)


def two_on(number: int, wanted: str) -> int | None:
    """Return the number two on, where the next even or odd one was wanted.

    Example:
        >>> two_on(13, "even"), two_on(14, "even")
        (15, None)
    """
    return _unless(next_of(number, wanted), number + 2)


def one_before(number: int, wanted: str) -> int | None:
    """Return the even or odd number before, where the next one was wanted.

    Example:
        >>> one_before(14, "even"), one_before(13, "even"), one_before(0, "even")
        (12, 12, None)
    """
    before = number - 1 - (parity(number - 1) != wanted)
    return before if before >= 0 else None


def _unless(right: int, wrong: int) -> int | None:
    return None if wrong == right else wrong


OnParity = Rule[Callable[[int], str | None]]
OnNext = Rule[Callable[[int, str], int | None]]

# In each table: where several rules lead to one answer, the first of them names it.
DECIDING: tuple[OnParity, ...] = rules_in(FOLDER / "counting", parity_of_tens, parity_mixed_up)
NEXT: tuple[OnNext, ...] = rules_in(
    FOLDER / "counting", parity_one_on=one_on, parity_two_on=two_on, parity_before=one_before
)
