"""The hands of a clock: their positions, the time they show, and positions that show none.

A **dial** says where both hands stand: `hour` is the hour hand in minutes of its own half day
(0 to 719, half a degree each), `minute` the minute hand (0 to 59, six degrees each), `half` is
"am" or "pm". On a clock the hands are geared together: while the hour hand goes from one numeral
to the next, the minute hand goes once around.
"""

from __future__ import annotations

from typing import Literal, TypedDict

from manipulatives.maths.time.day import HALF_DAY, HALF_HOUR, HOUR, check_time, is_whole


class Dial(TypedDict):
    """Where the hands of a clock stand; a plain dict, as it is stored and sent."""

    hour: int
    minute: int
    half: Literal["am", "pm"]


def check_dial(dial: object) -> Dial:
    """Check a dial and return a copy of it.

    Positions that no real clock could show are allowed.

    Raises:
        ValueError: something is missing, out of range or too much.

    Example:
        >>> check_dial({"hour": 275, "minute": 35, "half": "am"})["minute"]
        35
    """
    match dial:
        case {"hour": hour, "minute": minute, "half": "am" | "pm" as half, **rest} if (
            not rest and is_whole(hour, HALF_DAY) and is_whole(minute, HOUR)
        ):
            return Dial(hour=hour, minute=minute, half=half)
    raise ValueError(
        f'A dial is {{"hour": 0 to {HALF_DAY - 1}, "minute": 0 to {HOUR - 1}, '
        f'"half": "am" or "pm"}} in whole numbers, not {dial!r}.'
    )


def dial_at(minute: int) -> Dial:
    """Return where the hands stand at a time.

    Raises:
        ValueError: no time of day.

    Example:
        >>> dial_at(995)
        {'hour': 275, 'minute': 35, 'half': 'pm'}
    """
    late, reading = divmod(check_time(minute), HALF_DAY)
    return Dial(hour=reading, minute=reading % HOUR, half="pm" if late else "am")


def time_shown(dial: Dial) -> int | None:
    """Return the time that a dial shows, or None for positions that no real clock could show.

    Raises:
        ValueError: no dial.

    Example:
        >>> time_shown({"hour": 275, "minute": 35, "half": "pm"})
        995
    """
    hands = check_dial(dial)
    if lag_of(hands) != 0:
        return None
    return hands["hour"] + (HALF_DAY if hands["half"] == "pm" else 0)


def dial_facts(dial: Dial) -> dict[str, int | str | None]:
    """Return the facts of a dial, for goals and foreseen mistakes.

    Returns:
        `minutes`: the time shown, 0 to 719, or None if no real clock could show it;
        `hour_hand`, `minute_hand` and `half`: the dial itself;
        `meant`: of the times that the minute hand allows, the one whose hour hand is nearest;
        `lag`: how far the hour hand is ahead of that (+) or behind it (-), in half degrees,
        -30 to 29. A hand halfway between two such times counts as behind the later one: at
        half past four a hand left on the 4 has stayed behind.

    Raises:
        ValueError: no dial.

    Example:
        >>> facts = dial_facts({"hour": 240, "minute": 30, "half": "am"})
        >>> facts["minutes"], facts["meant"], facts["lag"]
        (None, 270, -30)
    """
    hands = check_dial(dial)
    lag = lag_of(hands)
    return {
        "minutes": hands["hour"] if lag == 0 else None,
        "hour_hand": hands["hour"],
        "minute_hand": hands["minute"],
        "half": hands["half"],
        "meant": (hands["hour"] - lag) % HALF_DAY,
        "lag": lag,
    }


def lag_of(hands: Dial) -> int:
    """Return how far the hour hand is ahead (+) or behind (-), in half degrees, -30 to 29.

    Example:
        >>> lag_of({"hour": 278, "minute": 35, "half": "am"})
        3
    """
    return (hands["hour"] - hands["minute"] + HALF_HOUR) % HOUR - HALF_HOUR


def hour_passed(minute: int) -> int:
    """Return the numeral, 1 to 12, that the hour hand has reached or passed last.

    Raises:
        ValueError: no time of day.

    Example:
        >>> hour_passed(275), hour_passed(30)
        (4, 12)
    """
    return check_time(minute) // HOUR % 12 or 12


def count_in_fives(minute: int) -> list[int]:
    """Return what the class counts aloud from the 12 to the minute hand.

    Between two numerals the count ends at the last one passed.

    Raises:
        ValueError: no time of day.

    Example:
        >>> count_in_fives(275)
        [5, 10, 15, 20, 25, 30, 35]
    """
    past = check_time(minute) % HOUR
    return list(range(5, past + 1, 5))
