"""Clock times in words, in two vocabularies and two styles.

*Digital* words read the digits from left to right: four thirty-five, four oh five. *Relative*
words count the minutes past an hour or, after half past, to the next one: twenty-five to five.
That is common practice in both vocabularies; half past, quarter past and quarter to are the
words of the programmes of study for England (Department for Education, 2013, Years 1 and 2).
"""

from __future__ import annotations

from manipulatives.data import table
from manipulatives.maths.time.day import HALF_HOUR, HOUR, check_time
from manipulatives.maths.vocabulary import check_vocabulary
from manipulatives.words.clock_digits import half_name

STYLES = ("digital", "relative")
_USUAL_STYLE = {"us": "digital", "uk": "relative"}

_SMALL: list[str] = table("number_words")["small"]
_TENS: list[str] = table("number_words")["tens"]
_PARTS = {15: ("quarter", "a quarter"), 30: ("half",)}
_WAYS = {"past": ("past", "after"), "to": ("to", "of", "till", "before")}


def in_words(
    minute: int, vocabulary: str = "us", style: str | None = None, *, half_day: bool = False
) -> str:
    """Return a time in words.

    Args:
        minute: the time, in minutes since midnight; a dial reading will do.
        vocabulary: "us" or "uk".
        style: "digital" or "relative"; None for digital in "us" and relative in "uk".
        half_day: say a.m. or p.m. too, and noon and midnight by name.

    Raises:
        ValueError: no time of day, or no vocabulary or style of the kit.

    Example:
        >>> in_words(275), in_words(275, "uk")
        ('four thirty-five', 'twenty-five to five')
        >>> in_words(995, "uk", half_day=True), in_words(715, "uk", half_day=True)
        ('twenty-five to five pm', 'five to noon')
    """
    usual = _USUAL_STYLE[check_vocabulary(vocabulary)]
    if style not in (None, *STYLES):
        raise ValueError(f'The style is "digital" or "relative", not {style!r}.')
    if check_time(minute) % HOUR and (style or usual) == "digital":
        words = _digital(minute)
    else:
        count, way, hour = _relative(minute)
        lead = f"{_counts(count)[0]} {way} " if count else ""
        if half_day and hour % 12 == 0:
            return lead + _name_of_twelve(hour)
        words = lead + _hour(hour)
        if not lead and not half_day:
            words += " o'clock"
    return f"{words} {half_name(minute, vocabulary)}" if half_day else words


def accepted_words(minute: int) -> tuple[str, ...]:
    """Return every reading of a time that is right in either vocabulary, without a.m. and p.m.

    The words of the kit are among them, the digital ones first. "Half four" is not: it
    means 4:30 to some and 3:30 to others.

    Raises:
        ValueError: no time of day.

    Example:
        >>> accepted_words(285)[:4]
        ('four forty-five', 'quarter to five', 'quarter of five', 'quarter till five')
        >>> accepted_words(720)
        ("twelve o'clock", 'noon', 'twelve noon')
    """
    count, way, hour = _relative(check_time(minute))
    names = [_name_of_twelve(hour)] if hour % 12 == 0 else []
    if count == 0:
        return (f"{_hour(hour)} o'clock", *names, *(f"twelve {name}" for name in names))
    return (
        _digital(minute),
        *(
            f"{counted} {said} {named}"
            for counted in _counts(count)
            for said in _WAYS[way]
            for named in (_hour(hour), *names)
        ),
    )


def _digital(minute: int) -> str:
    hour, past = divmod(minute, HOUR)
    return f"{_hour(hour)} {'' if past // 10 else 'oh '}{_number(past)}"


def _relative(minute: int) -> tuple[int, str, int]:
    """Return how many minutes, past or to, and which hour of the day: 24 is its end."""
    hour, past = divmod(minute, HOUR)
    return (past, "past", hour) if past <= HALF_HOUR else (HOUR - past, "to", hour + 1)


def _counts(count: int) -> tuple[str, ...]:
    """Return the ways to say how many minutes past or to; the kit's own first."""
    number = _number(count)
    minutes = f"{number} minute{'s' if count > 1 else ''}"
    shorter = (number, minutes) if count % 5 == 0 else (minutes, number)
    return (*_PARTS.get(count, ()), *shorter)


def _hour(hour: int) -> str:
    return _number(hour % 12 or 12)


def _name_of_twelve(hour: int) -> str:
    return "midnight" if hour % 24 == 0 else "noon"


def _number(number: int) -> str:
    """Return a number below sixty in words."""
    if number < len(_SMALL):
        return _SMALL[number]
    tens, ones = divmod(number, 10)
    return f"{_TENS[tens]}-{_SMALL[ones]}" if ones else _TENS[tens]
