"""Works out the steps and mistakes of clock tasks again, from their numbers and the hands alone.

An opinion apart from the kit's: hands are read by their angles, times are reckoned with datetime
and written out with num2words, and nothing of the kit is used. Where a number is not so, it raises
AssertionError.
"""

from __future__ import annotations

import datetime as dt

from num2words import num2words

from support.sentences import numbers_said

NEXT = {**{hour: hour + 1 for hour in range(1, 12)}, 12: 1}
DAY = dt.datetime(2026, 3, 2, tzinfo=dt.UTC)


def degrees(dial):
    """The angles of the hands: half a degree a minute of the hour hand, six of the minute hand."""
    return dial["hour"] / 2, dial["minute"] * 6


def numeral_passed(dial):
    """The numeral that the short hand points at or has passed last: 30 degrees lie between two."""
    return int(degrees(dial)[0] // 30) or 12


def words_of(hour, past, vocabulary):
    """A time in words: minutes after the hour in "us", past and to in "uk"."""
    said = num2words
    if past == 0:
        return f"{said(hour)} o'clock"
    if vocabulary == "us":
        return f"{said(hour)} {'oh ' if past < 10 else ''}{said(past)}"
    if past == 30:
        return f"half past {said(hour)}"
    minutes, word, whose = (past, "past", hour) if past < 30 else (60 - past, "to", NEXT[hour])
    return f"{'quarter' if minutes == 15 else said(minutes)} {word} {said(whose)}"


class ClockOracle:
    """Follows the steps of one task; `dial` is where the hands are after the step that is read."""

    def __init__(self, dial, vocabulary):
        self.begun = self.before = self.dial = dial
        self.vocabulary, self.moved = vocabulary, 0
        self.done = []

    def follow(self, step):
        """Check one step."""
        self.before, self.dial = self.dial, step.show.get("dial", self.dial)
        self.step, self.said = step, numbers_said(step.say)
        numbers = dict(step.numbers)
        act = numbers.pop("act")
        getattr(self, f"_{act}")(**numbers)
        self.done.append(act)

    @property
    def hour(self):
        """The numeral that the short hand has passed now."""
        return numeral_passed(self.dial)

    @property
    def past(self):
        """The minutes that the long hand shows now."""
        return self.dial["minute"]

    def _hour(self, numeral, place):
        assert numeral == self.hour
        assert (place == "on") == (degrees(self.dial)[0] % 30 == 0)
        assert self.step.chant == f"{numeral}"
        # Between two numerals a sentence may name either, or both.
        between = {numeral, NEXT[numeral]} if place == "past" else {numeral}
        assert self.said
        assert self.said <= between
        # Which of them it is, is a matter of the side on which the hand is, half way or not.
        along = degrees(self.dial)[0] % 30
        if "half way from" in self.step.say:
            assert along == 15
            assert self.said == between
        elif "more than half way to" in self.step.say:
            assert 15 < along < 25
            assert self.said == {NEXT[numeral]}
        elif "little way past" in self.step.say:
            assert 0 < along < 15
            assert self.said == {numeral}
        elif NEXT[numeral] in self.said:
            assert along >= 25
        else:
            assert along < 25

    def _minutes(self, numeral, minutes):
        assert minutes == self.past
        assert degrees(self.dial)[1] == numeral % 12 * 30
        assert minutes in {0, 15, 30, 45}
        parts = {0: "12", 15: "a quarter of the way round", 30: "half", 45: "a quarter of the way"}
        assert parts[minutes] in self.step.say
        assert ("to go" in self.step.say) == (minutes == 45)
        assert self.said <= {numeral}

    def _count(self, by, to, counted, numeral, **begin):
        assert begin == {"from": 0}
        assert by == 5
        assert counted == list(range(5, to + 1, 5))
        assert self.step.chant == ", ".join(map(str, counted))
        if numeral == 12:
            assert to + self.past == 60
            assert self.said == {12, to}
        else:
            assert to == self.past == numeral * 5
            assert numeral in self.said
            assert self.said <= {numeral, to}

    def _write(self, hour, minutes):
        self._is(hour, minutes)
        words = words_of(hour, minutes, self.vocabulary)
        assert self.step.answer == f"{hour}:{minutes:02}"
        assert self.step.say == f"It is {words}. We write {self.step.answer}."
        assert self.step.chant == words

    def _say(self, hour, minutes):
        # It is said before the hands are moved: what it means is checked with the last step.
        self.promised = hour, minutes
        before, _, after = self.step.say.lower().rstrip(".").partition(" is ")
        assert before == words_of(hour, minutes, self.vocabulary)
        assert numbers_said(after) == {hour, minutes}

    def _read(self, hour, minutes):
        self._is(hour, minutes)
        assert getattr(self, "promised", (hour, minutes)) == (hour, minutes)
        words = words_of(hour, minutes, self.vocabulary)
        assert words in self.step.say
        assert self.step.chant == words

    def _start(self, hour, minutes, numeral):
        assert self.dial == self.begun
        self._is(hour, minutes)
        assert minutes == numeral % 12 * 5
        assert self.said == {hour, minutes, numeral}

    def _move(self, by, moved, numeral, hour):
        self.moved += by
        assert moved == abs(self.moved)
        # The hands went round together by five minutes, which are two and a half degrees.
        assert (self.dial["hour"] - self.before["hour"]) % 720 == by % 720
        assert (self.past - self.before["minute"]) % 60 == by % 60
        assert self.past == numeral % 12 * 5
        assert hour == (self.hour if numeral_passed(self.before) != self.hour else None)
        assert self.step.chant == f"{moved}"
        assert self.said == {numeral, moved} | ({hour} if hour else set())
        assert self.step.say.startswith("On" if by > 0 else "Back")

    def _is(self, hour, minutes):
        assert (hour, minutes) == (self.hour, self.past)


def clock_of(reading):
    """The hour and minutes of a reading of a dial."""
    at = DAY + dt.timedelta(minutes=reading)
    return at.hour % 12, at.minute


def _hours_taken(reading):
    hour, past = clock_of(reading)
    return {
        "nearest": round(hour + past / 60) % 12,
        "next": (hour + 1) % 12,
        "long hand": past // 5,
        "kept": hour,
    }


def _minutes_taken(reading):
    hour, past = clock_of(reading)
    return {
        "short hand": 5 * hour,
        "backwards": -past % 60,
        "numeral": past // 5 or 12,
        "named numeral": past * 5,
        "none": 0,
    }


def wrong_of(numbers):
    """Run the procedure of a mistake and return what comes out."""
    does = {key: value for key, value in numbers.items() if key not in {"act", "wrong"}}
    if numbers["act"] == "move":
        return _moved(does.pop("start"), does.pop("by"), **does)
    reading = does.pop("at")
    hour, past = clock_of(reading)
    if does == {"short hand": "on its numeral"}:
        return {"hour": 60 * hour, "minute": past, "half": "am"}
    taken = does.pop("hour", None)
    minutes = does.pop("minutes", None)
    assert not does
    hour = hour if taken is None else _hours_taken(reading)[taken]
    past = past if minutes is None else _minutes_taken(reading)[minutes]
    if isinstance(numbers["wrong"], dict):
        return {"hour": 60 * hour, "minute": past, "half": "am"}
    return 60 * hour + past


def _moved(start, by, *, direction=None, hour=None, start_counted=False):
    way = 1 if by > 0 else -1
    if direction is not None:
        assert direction == ("back" if by > 0 else "on")
        way = -way
    steps = abs(by) // 5 - (1 if start_counted else 0)
    end = DAY + dt.timedelta(minutes=start + way * 5 * steps)
    reading = end.hour % 12 * 60 + end.minute
    return start // 60 * 60 + end.minute if hour == "kept" else reading
