"""Foreseeable errors of counting in steps, as pure functions.

That a count goes wrong where a new ten or hundred begins, and that tens counted from between two
full tens slip onto the full ones, is common knowledge of teachers; the rules are our exact
statements, from no published table.

In every rule of counting, `at` is the number said last and `by` is the step: below 0, it goes back.
"""

from __future__ import annotations

from collections.abc import Callable

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.tasks.rule import Rule, rules_in

TEN = 10
HUNDRED = 100


def crosses(at: int, by: int, unit: int) -> bool:
    """Return whether a step leads into another ten, or another hundred.

    Args:
        at: the number said last.
        by: the step.
        unit: 10 or 100.

    Example:
        >>> crosses(39, 1, 10), crosses(40, -1, 10), crosses(38, 1, 10)
        (True, True, False)
    """
    return at // unit != (at + by) // unit


def skipped_decade(at: int, by: int) -> int | None:
    """Return what is said when a whole ten is left out where a new one begins.

    Returns:
        The wrong number, or None where the error does not show; so do all rules below.

    Example:
        >>> skipped_decade(39, 1), skipped_decade(40, -1), skipped_decade(38, 1)
        (50, 29, None)
    """
    if abs(by) >= TEN or not crosses(at, by, TEN):
        return None
    return _checked(at, by, at + by + (TEN if by > 0 else -TEN))


def stayed_in_decade(at: int, by: int) -> int | None:
    """Return what is said when the ones start anew and the ten stays as it was.

    Example:
        >>> stayed_in_decade(39, 1), stayed_in_decade(40, -1), stayed_in_decade(38, 1)
        (30, 49, None)
    """
    if abs(by) >= TEN or not crosses(at, by, TEN):
        return None
    return _checked(at, by, at // TEN * TEN + (at + by) % TEN)


def went_to_hundreds(at: int, by: int) -> int | None:
    """Return what is said when hundreds are counted from a full hundred on.

    So too after a hundred and nine, where the next ten has no name of its own.

    Example:
        >>> went_to_hundreds(100, 10), went_to_hundreds(109, 1), went_to_hundreds(90, 10)
        (200, 200, None)
    """
    full = at >= HUNDRED and at % HUNDRED in ({0, 9} if by == 1 else {0})
    if not full or not 0 < by < HUNDRED:
        return None
    return _checked(at, by, (at // HUNDRED + 1) * HUNDRED)


def counted_in_ones(at: int, by: int) -> int | None:
    """Return what is said when the count goes on in ones.

    Example:
        >>> counted_in_ones(35, 5), counted_in_ones(35, -5), counted_in_ones(35, 1)
        (36, 34, None)
    """
    return _checked(at, by, at + _way(by))


def counted_in_tens(at: int, by: int) -> int | None:
    """Return what is said when the count goes on in tens.

    Example:
        >>> counted_in_tens(35, 5), counted_in_tens(340, 100), counted_in_tens(35, 2)
        (45, 350, None)
    """
    return _checked(at, by, at + TEN * _way(by)) if abs(by) in {5, HUNDRED} else None


def to_next_full(at: int, by: int) -> int | None:
    """Return what is said when a count from between two multiples slips onto the next one.

    Example:
        >>> to_next_full(34, 10), to_next_full(34, -10), to_next_full(40, 10)
        (40, 30, None)
    """
    step = abs(by)
    if step == 1 or at % step == 0:
        return None
    return _checked(at, by, at // step * step + (step if by > 0 else 0))


def started_over(at: int, by: int) -> int | None:
    """Return what is said when the count begins anew with the step.

    Example:
        >>> started_over(35, 5), started_over(35, -5), started_over(0, 5)
        (5, None, None)
    """
    return _checked(at, by, by) if by > 0 else None


def said_the_start(at: int, by: int) -> int | None:
    """Return where a step ends when its first one is said before moving.

    Example:
        >>> said_the_start(35, 5), said_the_start(39, 1), said_the_start(35, -5)
        (39, 39, 31)
    """
    return _checked(at, by, at + by - _way(by))


def one_beyond(at: int, by: int) -> int | None:
    """Return where a step ends that is one too long.

    Example:
        >>> one_beyond(35, 5), one_beyond(35, -5)
        (41, 29)
    """
    return _checked(at, by, at + by + _way(by))


def counted_other_way(at: int, by: int) -> int | None:
    """Return what is said when the count goes the other way.

    Example:
        >>> counted_other_way(35, 5), counted_other_way(35, -5), counted_other_way(3, 5)
        (30, 40, None)
    """
    return _checked(at, by, at - by)


def ten_beside(at: int, by: int) -> int | None:
    """Return what is written when one more than nine ones is ten, put beside the tens.

    Example:
        >>> ten_beside(39, 1), ten_beside(38, 1)
        (310, None)
    """
    return (at // TEN) * HUNDRED + TEN if by == 1 and at > TEN and at % TEN == TEN - 1 else None


def one_missed(number: int) -> int | None:
    """Return how many are counted when one of them is passed over.

    Example:
        >>> one_missed(14), one_missed(1)
        (13, None)
    """
    return number - 1 if number > 1 else None


def one_counted_twice(number: int) -> int | None:
    """Return how many are counted when one of them is counted twice.

    Example:
        >>> one_counted_twice(14)
        15
    """
    return number + 1


def _way(by: int) -> int:
    return 1 if by > 0 else -1


def _checked(at: int, by: int, wrong: int) -> int | None:
    return _unless(at + by, wrong) if wrong >= 0 else None


def _unless(right: int, wrong: int) -> int | None:
    return None if wrong == right else wrong


OnCount = Rule[Callable[[int, int], int | None]]
OnNumber = Rule[Callable[[int], int | None]]

# Where several rules lead to one answer, the first of them names it.
COUNTS: tuple[OnCount, ...] = rules_in(
    FOLDER / "counting",
    skipped_decade,
    stayed_in_decade,
    went_to_hundreds,
    counted_other_way,
    to_next_full,
    counted_in_ones,
    counted_in_tens,
    started_over,
    said_the_start,
    one_beyond,
    ten_beside,
)
# Only a count of several numbers can begin again.
STEPS = tuple(rule for rule in COUNTS if rule.wrong is not started_over)

MISCOUNTS: tuple[OnNumber, ...] = rules_in(FOLDER / "counting", one_missed, one_counted_twice)
