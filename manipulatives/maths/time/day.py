"""Times of day in minutes, which all modules about clock times use.

A *time* is a whole number of minutes since midnight, from 0 to 1439.
"""

from __future__ import annotations

from typing import TypeGuard

HOUR = 60
HALF_HOUR = HOUR // 2
HALF_DAY = 12 * HOUR
DAY = 2 * HALF_DAY


def is_whole(number: object, below: int) -> TypeGuard[int]:
    """Return whether something is a whole number from 0 up; True and 1.0 are not.

    Args:
        number: anything.
        below: the first number that is too large.

    Example:
        >>> is_whole(59, HOUR), is_whole(60, HOUR), is_whole(True, HOUR)
        (True, False, False)
    """
    return isinstance(number, int) and not isinstance(number, bool) and 0 <= number < below


def check_time(minute: object) -> int:
    """Check a time and return it.

    Raises:
        ValueError: it is no whole number from 0 to 1439.

    Example:
        >>> check_time(275)
        275
    """
    if is_whole(minute, DAY):
        return minute
    raise ValueError(
        f"A time is a whole number of minutes since midnight, from 0 to {DAY - 1}, "
        f"not {minute!r}; 4:35 in the morning is 275."
    )


def later(minute: int, by: int) -> int:
    """Return the time this many minutes later, past midnight on the next day.

    Raises:
        ValueError: no time of day, or a number of minutes below 0.

    Example:
        >>> later(23 * HOUR + 50, 25)
        15
    """
    return (check_time(minute) + check_minutes(by)) % DAY


def earlier(minute: int, by: int) -> int:
    """Return the time this many minutes earlier, before midnight on the day before.

    Raises:
        ValueError: no time of day, or a number of minutes below 0.

    Example:
        >>> earlier(13 * HOUR + 10, 25)
        765
    """
    return (check_time(minute) - check_minutes(by)) % DAY


def duration(start: int, end: int) -> int:
    """Return the minutes from one time to the next occurrence of another, 0 to 1439.

    Raises:
        ValueError: no time of day.

    Example:
        >>> duration(23 * HOUR + 20, 45)
        85
    """
    return (check_time(end) - check_time(start)) % DAY


def check_minutes(minutes: object) -> int:
    """Check a number of minutes and return it.

    Raises:
        ValueError: it is no whole number from 0 up.

    Example:
        >>> check_minutes(85)
        85
    """
    if isinstance(minutes, int) and not isinstance(minutes, bool) and minutes >= 0:
        return minutes
    raise ValueError(f"A number of minutes is a whole number from 0 up, not {minutes!r}.")
