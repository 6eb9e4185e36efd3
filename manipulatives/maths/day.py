"""The minutes of a day: what everything about clock times counts in and agrees on.

A *time* is a whole number of minutes since midnight, from 0 to 1439.
"""

from __future__ import annotations

from typing import TypeGuard

HOUR = 60
HALF_HOUR = HOUR // 2
HALF_DAY = 12 * HOUR
DAY = 2 * HALF_DAY

VOCABULARIES = ("us", "uk")
_HALVES = {"us": ("a.m.", "p.m."), "uk": ("am", "pm")}


def is_whole(number: object, below: int) -> TypeGuard[int]:
    """Return whether something is a whole number from 0 up; True and 1.0 are none.

    Args:
        number: anything.
        below: the first number that is too large.

    Example:
        >>> is_whole(59, HOUR), is_whole(60, HOUR), is_whole(True, HOUR)
        (True, False, False)
    """
    return isinstance(number, int) and not isinstance(number, bool) and 0 <= number < below


def check_time(minute: object) -> int:
    """Return the time that was given, if it is one.

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


def check_vocabulary(vocabulary: object) -> str:
    """Return the vocabulary that was given, if the kit speaks it.

    Raises:
        ValueError: it is neither "us" nor "uk".

    Example:
        >>> check_vocabulary("uk")
        'uk'
    """
    if isinstance(vocabulary, str) and vocabulary in VOCABULARIES:
        return vocabulary
    raise ValueError(f'The vocabulary is "us" or "uk", not {vocabulary!r}.')


def half_name(minute: int, vocabulary: str = "us") -> str:
    """Return the half of the day that a time belongs to, as it is written.

    Noon and midnight are called by name: "12 a.m." and "12 p.m." are wrong and should not be
    used (National Institute of Standards and Technology, *Frequently asked questions on time*).

    Raises:
        ValueError: no time of day, or no vocabulary of the kit.

    Example:
        >>> half_name(995), half_name(995, "uk"), half_name(720)
        ('p.m.', 'pm', 'noon')
    """
    late, reading = divmod(check_time(minute), HALF_DAY)
    names = _HALVES[check_vocabulary(vocabulary)] if reading else ("midnight", "noon")
    return names[late]
