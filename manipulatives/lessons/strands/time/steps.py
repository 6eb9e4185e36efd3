"""The worked steps of the time strand, said and shown one after the other.

Reading begins with the short hand: the number it points at, or the last one it has passed. Then
the long hand: round from the 12 in fives. Setting begins with the long hand, and the short hand
goes the right way past its number. Later and earlier move the long hand round in fives.

The numbers of a step are one of these acts:

* `hour`: the `place` of the short hand, "on" or "past" the `numeral` that is the hour;
* `minutes`: the long hand is at a `numeral`, which stands for so many `minutes`;
* `count`: `counted` in fives (`by`) `from` 0 `to` the minutes at a `numeral`, or left to the 12;
* `write`, `read` and `say`: the `hour` and `minutes` that are written down, shown, or said anew;
* `start` and `move`: the long hand is at a `numeral`, `moved` by so many minutes in all, and the
  hour is the new `hour` now, or None where it stays.
"""

from __future__ import annotations

from manipulatives.lessons.tasks.task import Numbers, Step
from manipulatives.maths.time.day import HOUR, earlier, later
from manipulatives.maths.time.dial import Dial, count_in_fives, dial_at, hour_passed
from manipulatives.words.clock import in_words
from manipulatives.words.clock_digits import in_digits

FIVE = 5
QUARTER = HOUR // 4
HALF = HOUR // 2
CLOSE = HOUR - 2 * FIVE


def reading_steps(minute: int, vocabulary: str) -> tuple[Step, ...]:
    """Return how a time is read from the hands.

    Args:
        minute: the time, in minutes since midnight.
        vocabulary: "us" or "uk".

    Example:
        >>> for step in reading_steps(275, "us"):
        ...     print(step.say)
        Short hand first: it has passed the 4.
        Long hand next: count in fives to the 7.
        It is four thirty-five. We write 4:35.
    """
    return (
        _read_hour(minute),
        *_read_minutes(minute, vocabulary),
        _written_down(minute, vocabulary),
    )


def _read_hour(minute: int) -> Step:
    hour, past = hour_passed(minute), minute % HOUR
    if past == 0:
        say = f"Short hand first: it points at the {hour}."
        return Step(say=say, chant=f"{hour}", numbers=_hour(minute))
    if past >= CLOSE:
        say = (
            f"Short hand first: it has not reached the {_coming(minute)}. The hour is still {hour}."
        )
    elif hour == 12:  # noqa: PLR2004 - the numeral
        say = "Short hand first: it has passed the 12. The hour is 12."
    else:
        say = f"Short hand first: it has passed the {hour}."
    return Step(say=say, chant=f"{hour}", show={"sector": True}, numbers=_hour(minute))


def _hour(minute: int) -> Numbers:
    place = "past" if minute % HOUR else "on"
    return {"act": "hour", "numeral": hour_passed(minute), "place": place}


def _read_minutes(minute: int, vocabulary: str) -> list[Step]:
    past, relative = minute % HOUR, vocabulary == "uk"
    show = {"sector": False, "arc": True}
    numbers = _minutes(minute)
    if past == 0:
        say = "Long hand next: it points at the 12."
        return [Step(say=say, chant="o'clock", numbers=numbers)]
    if past == HALF:
        say = "Long hand next: half way round, at the 6."
        chant = "half past" if relative else "thirty"
        return [Step(say=say, chant=chant, show=show, numbers=numbers)]
    if relative and past == QUARTER:
        say = "Long hand next: a quarter of the way round."
        return [Step(say=say, chant="quarter past", show=show, numbers=numbers)]
    if relative and past == HOUR - QUARTER:
        say = "Long hand next: a quarter of the way to go."
        return [Step(say=say, chant="quarter to", show=show, numbers=numbers)]
    say = f"Long hand next: count in fives to the {past // FIVE}."
    steps = [Step(say=say, chant=_fives(past), show=show, numbers=_count(past, past // FIVE))]
    if relative and past > HALF:
        left = HOUR - past
        say = f"Count on to the 12: {left} minutes to go."
        steps.append(Step(say=say, chant=_fives(left), numbers=_count(left, 12)))
    return steps


def _minutes(minute: int) -> Numbers:
    return {"act": "minutes", "numeral": _numeral(minute), "minutes": minute % HOUR}


def _count(minutes: int, numeral: int) -> Numbers:
    counted = count_in_fives(minutes)
    return {
        "act": "count",
        "from": 0,
        "by": FIVE,
        "to": minutes,
        "counted": counted,
        "numeral": numeral,
    }


def _time(act: str, minute: int) -> Numbers:
    return {"act": act, "hour": hour_passed(minute), "minutes": minute % HOUR}


def _written_down(minute: int, vocabulary: str) -> Step:
    words, digits = in_words(minute, vocabulary), in_digits(minute)
    say = f"It is {words}. We write {digits}."
    numbers = _time("write", minute)
    return Step(say=say, chant=words, show={"words": True}, answer=digits, numbers=numbers)


def setting_steps(start: Dial, minute: int, vocabulary: str, *, given: str) -> tuple[Step, ...]:
    """Return how the hands are set to a time.

    Args:
        start: where the hands stand; when a clock could show it, so it can after every step.
        minute: the time to set, in minutes since midnight.
        vocabulary: "us" or "uk".
        given: the time is given in "digits" or "words"; the last step shows it in the other.

    Example:
        >>> for step in setting_steps({"hour": 70, "minute": 10, "half": "am"}, 275, "us",
        ...                           given="digits"):
        ...     print(step.say)
        Long hand first: count 35 in fives to the 7.
        Short hand next: more than half way to the 5.
        The clock shows four thirty-five.
    """
    words, past = in_words(minute, vocabulary), minute % HOUR
    geared = start["hour"] % HOUR == start["minute"]
    hour_hand = start["hour"] // HOUR * HOUR + past if geared else start["hour"]
    turned = Dial(hour=hour_hand, minute=past, half=start["half"])
    steps = []
    if given == "words" and vocabulary == "uk" and past > HALF:
        hour = in_words(minute - past, vocabulary).removesuffix(" o'clock")
        say = f"{words[:1].upper()}{words[1:]} is {past} minutes past {hour}."
        steps.append(Step(say=say, show={"dial": dict(start)}, numbers=_time("say", minute)))
    numbers = _minutes(minute)
    if past == 0:
        say, chant = "Long hand first: it points straight at the 12.", "o'clock"
    elif past == HALF:
        say, chant = "Long hand first: half way round, to the 6.", "half way"
    else:
        say = f"Long hand first: count {past} in fives to the {past // FIVE}."
        chant, numbers = _fives(past), _count(past, past // FIVE)
    show = {"dial": dict(turned), "arc": past > 0}
    steps.append(Step(say=say, chant=chant, show=show, numbers=numbers))
    show = {"dial": dict(dial_at(minute)), "arc": False, "sector": past > 0}
    say, chant = _set_hour(minute), f"{hour_passed(minute)}"
    steps.append(Step(say=say, chant=chant, show=show, numbers=_hour(minute)))
    show = {"words" if given == "digits" else "digital": True}
    say, numbers = f"The clock shows {words}.", _time("read", minute)
    steps.append(Step(say=say, chant=words, show=show, numbers=numbers))
    return tuple(steps)


def _set_hour(minute: int) -> str:
    hour, coming, past = hour_passed(minute), _coming(minute), minute % HOUR
    if past == 0:
        return f"Short hand next: it points straight at the {hour}."
    if past < HALF:
        return f"Short hand next: a little way past the {hour}."
    if past == HALF:
        return f"Short hand next: half way from {hour} to {coming}."
    if past < CLOSE:
        return f"Short hand next: more than half way to the {coming}."
    return f"Short hand next: just before the {coming}."


def moving_steps(start: int, by: int, vocabulary: str) -> tuple[Step, ...]:
    """Return how the time some minutes later or earlier is found.

    Args:
        start: the time to start from, in minutes since midnight.
        by: minutes later, or earlier if below 0, in steps of five.
        vocabulary: "us" or "uk".

    Example:
        >>> for step in moving_steps(290, 10, "us"):
        ...     print(step.say)
        Start at 4:50: the long hand is at the 10.
        On to the 11: 5 minutes.
        On to the 12: 10 minutes. Now the hour is 5.
        It is five o'clock. We write 5:00.
    """
    move, word = (later, "On") if by > 0 else (earlier, "Back")
    say = f"Start at {in_digits(start)}: the long hand is at the {_numeral(start)}."
    numbers = {**_time("start", start), "numeral": _numeral(start)}
    steps = [Step(say=say, show={"dial": dict(dial_at(start))}, numbers=numbers)]
    before = start
    for count in range(FIVE, abs(by) + FIVE, FIVE):
        now = move(start, count)
        say = f"{word} to the {_numeral(now)}: {count} minutes."
        hour = hour_passed(now) if hour_passed(now) != hour_passed(before) else None
        if hour is not None:
            say += f" Now the hour is {hour}."
        numbers = {
            "act": "move",
            "by": FIVE if by > 0 else -FIVE,
            "moved": count,
            "numeral": _numeral(now),
            "hour": hour,
        }
        show = {"dial": dict(dial_at(now))}
        steps.append(Step(say=say, chant=f"{count}", show=show, numbers=numbers))
        before = now
    return (*steps, _written_down(before, vocabulary))


def _numeral(minute: int) -> int:
    return minute % HOUR // FIVE or 12


def _coming(minute: int) -> int:
    return hour_passed(later(minute, HOUR))


def _fives(count: int) -> str:
    return ", ".join(map(str, count_in_fives(count)))
