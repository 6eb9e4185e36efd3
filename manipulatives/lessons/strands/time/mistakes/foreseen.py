"""What can be foreseen to go wrong with a clock task, as predicates on its facts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.lessons.strands.time.mistakes import rules as mistakes
from manipulatives.lessons.tasks.foreseen import done_with, foreseen, mistake
from manipulatives.maths.time.day import HALF_DAY, HOUR
from manipulatives.words.clock_digits import in_digits

if TYPE_CHECKING:
    from collections.abc import Iterable

    from manipulatives.lessons.strands.time.mistakes.rules import OnMove
    from manipulatives.lessons.tasks.predicates import Predicate
    from manipulatives.lessons.tasks.task import Mistake

# How far a finger may leave the hour hand from its place: 7 minutes of it, 3.5 degrees.
TOLERANCE = 7


def shows(reading: int) -> Predicate:
    """Return the predicate that the hands show a reading, as well as a finger can put them.

    Example:
        >>> shows(275)
        ['and', ['=', 'meant', 275], ['>=', 'lag', -7], ['<=', 'lag', 7]]
    """
    return ["and", ["=", "meant", reading], [">=", "lag", -TOLERANCE], ["<=", "lag", TOLERANCE]]


def answers(reading: int) -> Predicate:
    """Return the predicate that a reading was written down.

    Example:
        >>> answers(275)
        ['=', 'answer', '4:35']
    """
    return ["=", "answer", in_digits(reading)]


def reading_mistakes(reading: int, vocabulary: str) -> tuple[Mistake, ...]:
    """Return the foreseen wrong readings of a dial, each once.

    Example:
        >>> [mistake.answer for mistake in reading_mistakes(240, "us")]
        ['12:20', '4:12']
    """
    found = [(rule, rule.wrong(reading)) for rule in mistakes.READING]
    numbers = done_with("read", at=reading)
    return foreseen(found, vocabulary, named=in_digits, when=answers, numbers=numbers)


def moving_mistakes(start: int, by: int, vocabulary: str, *, hands: bool) -> tuple[Mistake, ...]:
    """Return the foreseen wrong answers to "what time is it so much later?", each once.

    Args:
        start: the reading to start from.
        by: minutes later, or earlier if below 0.
        vocabulary: "us" or "uk".
        hands: the answer is given with geared hands, which move the hour by themselves.

    Example:
        >>> [mistake.answer for mistake in moving_mistakes(275, 40, "us", hands=False)]
        ['3:55', '4:15', '5:10']
    """
    rules: Iterable[OnMove] = mistakes.LATER if by > 0 else mistakes.EARLIER
    found = [
        (rule, rule.wrong(start, by))
        for rule in rules
        if not (hands and rule.wrong is mistakes.hour_not_moved)
    ]
    numbers = done_with("move", start=start, by=by)
    when = shows if hands else answers
    return foreseen(found, vocabulary, named=in_digits, when=when, numbers=numbers)


def setting_mistakes(reading: int, vocabulary: str, *, geared: bool) -> tuple[Mistake, ...]:
    """Return the foreseen wrong ways to set the hands to a reading.

    Args:
        reading: what is to be set.
        vocabulary: "us" or "uk".
        geared: the hour hand goes with the minute hand and cannot stay behind.

    Example:
        >>> [mistake.rule for mistake in setting_mistakes(275, "us", geared=False)]
        ['static_hour_hand', 'set_swapped', 'set_next_hour', 'set_mirror']
    """
    by_place = [] if geared else [(mistakes.STATIC_HOUR_HAND, _static(reading))]
    by_place.append((mistakes.SET_SWAPPED, _swapped(reading)))
    found = [(rule, rule.wrong(reading)) for rule in mistakes.SETTING]
    set_as = done_with("set", at=reading)
    return (
        *(
            mistake([rule], when, vocabulary, numbers=set_as(rule, rule.wrong(reading)))
            for rule, when in by_place
            if when
        ),
        *foreseen(found, vocabulary, named=in_digits, when=shows, numbers=set_as),
    )


def _static(reading: int) -> Predicate | None:
    hands = mistakes.static_hour_hand(reading)
    # Shortly after the hour the hand on its numeral is still near enough to be right.
    if hands is None or hands["minute"] <= TOLERANCE:
        return None
    last = min(hands["hour"] + TOLERANCE, reading - TOLERANCE - 1)
    return [
        "and",
        ["=", "minute_hand", hands["minute"]],
        _hour_hand_between(hands["hour"] - TOLERANCE, last),
    ]


def _swapped(reading: int) -> Predicate | None:
    hands = mistakes.set_swapped(reading)
    if hands is None:
        return None
    # On the numeral or past it, as long as it is not at the next.
    last = hands["hour"] + HOUR - TOLERANCE - 1
    return [
        "and",
        ["=", "minute_hand", hands["minute"]],
        _hour_hand_between(hands["hour"] - TOLERANCE, last),
    ]


def _hour_hand_between(first: int, last: int) -> Predicate:
    """Return the predicate that the hour hand is in a part of its round, which may hold the 12."""
    low, high = first % HALF_DAY, last % HALF_DAY
    return ["and" if low <= high else "or", [">=", "hour_hand", low], ["<=", "hour_hand", high]]
