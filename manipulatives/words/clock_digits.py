"""Times of day in digits, written and read, and durations in hours and minutes.

A *time* is a whole number of minutes since midnight, from 0 to 1439.
"""

from __future__ import annotations

import re

from manipulatives.maths.time.day import DAY, HALF_DAY, HOUR, check_minutes, check_time
from manipulatives.maths.vocabulary import check_vocabulary

_HALVES = {"us": ("a.m.", "p.m."), "uk": ("am", "pm")}
_NAMED = {"midnight": 0, "12:00 midnight": 0, "noon": HALF_DAY, "12:00 noon": HALF_DAY}
_WRITTEN = re.compile(r"([0-9]{1,2}):([0-9]{2})(?: ?([ap])(?:m|\.m\.))?")


def parse_time(text: str) -> int:
    """Return the time that was written.

    Without a.m. or p.m. the hours are those of a whole day: 4:35 is in the morning. 12:00 p.m.
    is taken for noon and 12:00 a.m. for midnight (common practice; the kit writes neither).

    Args:
        text: such as "4:35", "04:35", "16:35", "4:35 pm", "4:35 p.m.", "noon" or "midnight".

    Raises:
        ValueError: it is no time of day.

    Example:
        >>> parse_time("4:35"), parse_time("4:35 p.m."), parse_time("noon")
        (275, 995, 720)
    """
    words = " ".join(str(text).lower().split())
    if words in _NAMED:
        return _NAMED[words]
    written = _WRITTEN.fullmatch(words)
    if written is None:
        raise _no_time(text, "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight.")
    hour, past, half = int(written[1]), int(written[2]), written[3]
    if past >= HOUR:
        raise _no_time(text, "The minutes go from 00 to 59.")
    if half is None:
        if hour >= DAY // HOUR:
            raise _no_time(text, "The hours go from 0 to 23.")
        return hour * HOUR + past
    if not 1 <= hour <= HALF_DAY // HOUR:
        raise _no_time(text, "With a.m. or p.m. the hours go from 1 to 12.")
    return hour * HOUR % HALF_DAY + past + (HALF_DAY if half == "p" else 0)


def _no_time(text: object, remedy: str) -> ValueError:
    return ValueError(f"{text!r} is no time of day. {remedy}")


def in_digits(minute: int, vocabulary: str = "us", *, half_day: bool = False) -> str:
    """Return a time as a twelve-hour clock writes it.

    Args:
        minute: the time, in minutes since midnight; a dial reading will do.
        vocabulary: "us" or "uk"; they differ in how they write a.m. and p.m.
        half_day: write a.m. or p.m. too, or noon or midnight after 12:00.

    Raises:
        ValueError: no time of day, or no vocabulary of the kit.

    Example:
        >>> in_digits(995), in_digits(995, half_day=True), in_digits(995, "uk", half_day=True)
        ('4:35', '4:35 p.m.', '4:35 pm')
    """
    name = half_name(minute, vocabulary)
    hour, past = divmod(minute, HOUR)
    digits = f"{hour % 12 or 12}:{past:02}"
    return f"{digits} {name}" if half_day else digits


def duration_in_words(minutes: int) -> str:
    """Return a number of minutes in hours and minutes.

    Raises:
        ValueError: it is no whole number from 0 up.

    Example:
        >>> duration_in_words(85), duration_in_words(120), duration_in_words(1)
        ('1 hour 25 minutes', '2 hours', '1 minute')
    """
    hours, rest = divmod(check_minutes(minutes), HOUR)
    parts = [_counted(hours, "hour")] if hours else []
    if rest or not hours:
        parts.append(_counted(rest, "minute"))
    return " ".join(parts)


def _counted(number: int, unit: str) -> str:
    return f"{number} {unit}" if number == 1 else f"{number} {unit}s"


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
