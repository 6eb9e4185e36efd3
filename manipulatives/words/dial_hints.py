"""The hint for hands of a clock in positions that no real clock could show."""

from __future__ import annotations

from manipulatives.maths.time.day import HALF_DAY, HALF_HOUR, HOUR
from manipulatives.maths.time.dial import Dial, check_dial, hour_passed, lag_of


def why_no_time(dial: Dial) -> str | None:
    """Return what is wrong with the hour hand in one sentence, or None when a clock can show it.

    The minute hand is taken as it stands, and the nearest place that fits it is named.

    Raises:
        ValueError: no dial.

    Example:
        >>> why_no_time({"hour": 240, "minute": 35, "half": "am"})
        'The short hand belongs between 3 and 4, nearer 4.'
        >>> why_no_time({"hour": 285, "minute": 35, "half": "am"})
        'The short hand belongs a little further back.'
    """
    hands = check_dial(dial)
    lag = lag_of(hands)
    if lag == 0:
        return None
    place = _place((hands["hour"] - lag) % HALF_DAY)
    if place == _place(hands["hour"]):
        place = "a little further back" if lag > 0 else "a little further on"
    return f"The short hand belongs {place}."


def _place(reading: int) -> str:
    """Return where the hour hand stands, in the words of a lesson."""
    passed, coming = hour_passed(reading), hour_passed(reading + HOUR)
    past = reading % HOUR
    if past == 0:
        return f"exactly on the {passed}"
    if past == HALF_HOUR:
        return f"halfway between {passed} and {coming}"
    return f"between {passed} and {coming}, nearer {passed if past < HALF_HOUR else coming}"
