"""Foreseeable errors of reading, setting and moving the hands of a clock, as pure functions.

The errors of reading, and the hour hand left on its numeral in setting, are those that studies of
clock reading describe: Williams 2012 (*Image schemas in clock-reading*, Journal of the Learning
Sciences 21:216-246), Burny, Valcke & Desoete 2011 (Journal of Learning Disabilities), Earnest
2018 (the last from memory). The rules are our exact statements of them. Those of counting on and
back are common practice of arithmetic, from no published table.

What a wrong answer suggests is a possibility, not a diagnosis: one item is weak evidence.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.tasks.rule import Rule, rule_in, rules_in
from manipulatives.maths.time.day import HALF_DAY, HALF_HOUR, HOUR, is_whole
from manipulatives.maths.time.dial import Dial

FIVE = 5


def nearest_hour(reading: int, *, from_half: bool = False) -> int | None:
    """Return what is read when the hour is the numeral nearest to the short hand.

    Args:
        reading: of a dial, 0 to 719, in steps of five.
        from_half: at half past, when both numerals are as near, take the one to come.

    Returns:
        The wrong reading, or None where the error does not show; so do all rules below.

    Raises:
        ValueError: no reading of a dial in steps of five; so do all rules below.

    Example:
        >>> nearest_hour(110), nearest_hour(250)
        (170, None)
    """
    past = _check(reading) % HOUR
    goes_wrong = past >= HALF_HOUR if from_half else past > HALF_HOUR
    return (reading + HOUR) % HALF_DAY if goes_wrong else None


def next_hour(reading: int) -> int | None:
    """Return what is read when the hour is the numeral that the short hand goes to.

    Example:
        >>> next_hour(250), next_hour(240)
        (310, None)
    """
    return (reading + HOUR) % HALF_DAY if _check(reading) % HOUR else None


def swapped_hands(reading: int) -> int | None:
    """Return what is read when the long hand is taken for the hour and the short for the minutes.

    The short hand then counts five minutes for each numeral up to the last it has passed.

    Example:
        >>> swapped_hands(250), swapped_hands(65)
        (140, None)
    """
    hour, past = divmod(_check(reading), HOUR)
    return _unless(reading, past // FIVE * HOUR + hour * FIVE)


def past_to_mirror(reading: int) -> int | None:
    """Return what is read when the minutes are counted from the 12 the other way round.

    Example:
        >>> past_to_mirror(250), past_to_mirror(270)
        (290, None)
    """
    hour, past = divmod(_check(reading), HOUR)
    return _unless(reading, hour * HOUR + (HOUR - past) % HOUR)


def numeral_as_minutes(reading: int) -> int:
    """Return what is read when the numeral at the long hand is taken for the minutes.

    It shows at every time: on the hour the long hand is at the 12.

    Example:
        >>> numeral_as_minutes(250), numeral_as_minutes(180)
        (242, 192)
    """
    hour, past = divmod(_check(reading), HOUR)
    return hour * HOUR + (past // FIVE or 12)


def hour_only(reading: int) -> int | None:
    """Return what is read when the minutes are left out.

    Example:
        >>> hour_only(250), hour_only(240)
        (240, None)
    """
    return _unless(reading, _check(reading) // HOUR * HOUR)


def static_hour_hand(reading: int) -> Dial | None:
    """Return how the hands are set when the hour hand is left on its numeral.

    Example:
        >>> static_hour_hand(275)
        {'hour': 240, 'minute': 35, 'half': 'am'}
    """
    hour, past = divmod(_check(reading), HOUR)
    return Dial(hour=hour * HOUR, minute=past, half="am") if past else None


def set_swapped(reading: int) -> Dial | None:
    """Return how the hands are set when each is put where the other belongs.

    Example:
        >>> set_swapped(275), set_swapped(65)
        ({'hour': 420, 'minute': 20, 'half': 'am'}, None)
    """
    hour, past = divmod(_check(reading), HOUR)
    if swapped_hands(reading) is None:
        return None
    return Dial(hour=past // FIVE * HOUR, minute=hour * FIVE, half="am")


def set_numeral(reading: int) -> int | None:
    """Return what is set when the long hand goes to the numeral that is named like the minutes.

    Example:
        >>> set_numeral(250), set_numeral(275)
        (290, None)
    """
    hour, past = divmod(_check(reading), HOUR)
    return hour * HOUR + past * FIVE if 0 < past < 12 else None  # noqa: PLR2004 - numerals


def wrong_way(start: int, by: int) -> int:
    """Return where the hands end when they are moved the other way.

    Args:
        start: the reading of the dial they start from, 0 to 719, in steps of five.
        by: minutes later, or earlier if below 0, in steps of five; so in the rules below.

    Example:
        >>> wrong_way(275, 20), wrong_way(275, -20)
        (255, 295)
    """
    return (_check(start) - by) % HALF_DAY


def counted_the_start(start: int, by: int) -> int:
    """Return where the count ends when the first five is said before the hand has moved.

    Example:
        >>> counted_the_start(275, 20), counted_the_start(275, -20)
        (290, 260)
    """
    return (_check(start) + by + (-FIVE if by > 0 else FIVE)) % HALF_DAY


def hour_not_moved(start: int, by: int) -> int | None:
    """Return what is said when the minutes go past the 12 and the hour stays as it was.

    Example:
        >>> hour_not_moved(275, 40), hour_not_moved(275, 20)
        (255, None)
    """
    end = (_check(start) + by) % HALF_DAY
    return _unless(end, start // HOUR * HOUR + end % HOUR)


def _check(reading: int) -> int:
    if is_whole(reading, HALF_DAY) and reading % FIVE == 0:
        return reading
    raise ValueError(
        f"A reading here is a whole number of minutes from 0 to {HALF_DAY - FIVE} in steps of "
        f"{FIVE}, not {reading!r}."
    )


def _unless(right: int, wrong: int) -> int | None:
    return None if wrong == right else wrong


OnReading = Rule[Callable[[int], int | None]]
OnHands = Rule[Callable[[int], Dial | None]]
OnMove = Rule[Callable[[int, int], int | None]]

# In each table: where several rules lead to one answer, the first of them names it.
READING: tuple[OnReading, ...] = rules_in(
    FOLDER / "time",
    nearest_hour,
    next_hour,
    swapped_hands,
    past_to_mirror,
    numeral_as_minutes,
    hour_only,
)

STATIC_HOUR_HAND: OnHands = rule_in(FOLDER / "time", "static_hour_hand", static_hour_hand)
SET_SWAPPED: OnHands = rule_in(FOLDER / "time", "set_swapped", set_swapped)
SETTING: tuple[OnReading, ...] = rules_in(
    FOLDER / "time", set_next_hour=next_hour, set_mirror=past_to_mirror, set_numeral=set_numeral
)

WENT_EARLIER: OnMove = rule_in(FOLDER / "time", "went_earlier", wrong_way)
WENT_LATER: OnMove = rule_in(FOLDER / "time", "went_later", wrong_way)
MOVING: tuple[OnMove, ...] = rules_in(FOLDER / "time", hour_not_moved, counted_the_start)

LATER = (WENT_EARLIER, *MOVING)
EARLIER = (WENT_LATER, *MOVING)

_ALL: tuple[Rule[Any], ...] = (*READING, STATIC_HOUR_HAND, SET_SWAPPED, *SETTING, *LATER, *EARLIER)
RULES = tuple({rule.id: rule for rule in _ALL}.values())
