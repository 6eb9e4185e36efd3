# ruff: noqa: D102 - each method is named after the sentence that it understands
"""Reads the worked steps of clock tasks as a pupil would who looks at the hands after every word.

An opinion apart from the kit's: it reads the hands by their angles, writes numbers out with
num2words, and uses nothing of the kit. Where a step says what is not so, it raises AssertionError.
"""

from __future__ import annotations

import re

from num2words import num2words

NEXT = {**{hour: hour + 1 for hour in range(1, 12)}, 12: 1}


def numeral_passed(dial):
    """The numeral that the short hand points at or has passed last: 30 degrees lie between two."""
    return int(dial["hour"] / 2 // 30) or 12


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


def fives(chant):
    return [int(five) for five in chant.split(", ")]


class ClockReader:
    """Follows the steps of one task about a clock.

    `before` and `dial` are the hands before and after the step that is read; `begun` is where they
    were when the task began.
    """

    def __init__(self, dial, vocabulary):
        self.begun = self.before = self.dial = dial
        self.vocabulary, self.counted = vocabulary, 0
        self.read = []

    def follow(self, say, chant, show):
        self.before, self.dial = self.dial, show.get("dial", self.dial)
        self.chant = chant
        for pattern, handler in FORMS:
            match = re.fullmatch(pattern, say)
            if match:
                handler(self, *match.groups())
                self.read.append(handler.__name__)
                return
        raise AssertionError(f"What does {say!r} mean?")

    @property
    def hour(self):
        return numeral_passed(self.dial)

    @property
    def past(self):
        return self.dial["minute"]

    def points(self, hour):
        assert (self.hour, self.past) == (int(hour), 0)
        assert self.chant == hour

    def has_not_reached(self, coming, hour):
        assert self.past >= 50
        assert (self.hour, NEXT[self.hour]) == (int(hour), int(coming))
        assert self.chant == hour

    def has_passed(self, hour, again=None):
        assert self.past
        assert self.hour == int(hour)
        assert again in (None, hour)
        assert self.chant == hour

    def at_the_twelve(self):
        assert self.past == 0

    def at_the_six(self):
        assert self.past == 30

    def quarter_round(self, word):
        assert self.past == {"of the way round": 15, "of the way to go": 45}[word]

    def in_fives_to(self, numeral):
        assert self.past == 5 * int(numeral)
        assert fives(self.chant) == list(range(5, self.past + 1, 5))

    def to_go(self, minutes):
        assert self.past + int(minutes) == 60
        assert fives(self.chant) == list(range(5, int(minutes) + 1, 5))

    def written(self, words, hour, past):
        assert (self.hour, self.past) == (int(hour), int(past))
        assert words == words_of(self.hour, self.past, self.vocabulary)
        assert self.chant == words

    def is_minutes_past(self, words, minutes, hour):
        # It is said before the hands are moved: what it means is checked with the last step.
        self.promised = words.lower(), int(minutes), hour

    def long_to_twelve(self):
        assert self.past == 0

    def long_half_round(self):
        assert self.past == 30

    def count_in_fives(self, minutes, numeral):
        assert self.past == int(minutes) == 5 * int(numeral)
        assert fives(self.chant) == list(range(5, self.past + 1, 5))

    def short_straight(self, hour):
        assert (self.hour, self.past) == (int(hour), 0)
        assert self.dial["hour"] % 60 == 0

    def short_little_past(self, hour):
        assert 0 < self.dial["hour"] % 60 < 30
        assert self.hour == int(hour)

    def short_half_way(self, hour, coming):
        assert self.dial["hour"] % 60 == 30
        assert (self.hour, NEXT[self.hour]) == (int(hour), int(coming))

    def short_more_than_half(self, coming):
        assert 30 < self.dial["hour"] % 60 < 50
        assert NEXT[self.hour] == int(coming)

    def short_just_before(self, coming):
        assert self.dial["hour"] % 60 >= 50
        assert NEXT[self.hour] == int(coming)

    def shows(self, words):
        assert words == words_of(self.hour, self.past, self.vocabulary)
        if hasattr(self, "promised"):
            said, minutes, hour = self.promised
            assert said == words
            assert (minutes, hour) == (self.past, num2words(self.hour))

    def starts(self, hour, past, numeral):
        assert self.dial == self.begun
        assert (self.hour, self.past) == (int(hour), int(past))
        assert self.past % 60 == int(numeral) % 12 * 5

    def moved(self, word, numeral, minutes, hour=None):
        self.counted += 5
        assert int(minutes) == self.counted
        # The hands went round together by five minutes, which are two and a half degrees.
        step = 5 if word == "On" else -5
        assert (self.dial["hour"] - self.before["hour"]) % 720 == step % 720
        assert (self.past - self.before["minute"]) % 60 == step % 60
        assert self.past == int(numeral) % 12 * 5
        new = numeral_passed(self.before) != self.hour
        assert new == (hour is not None)
        assert hour is None or int(hour) == self.hour


FORMS = [
    (r"Short hand first: it points at the (\d+)\.", ClockReader.points),
    (
        r"Short hand first: it has not reached the (\d+)\. The hour is still (\d+)\.",
        ClockReader.has_not_reached,
    ),
    (
        r"Short hand first: it has passed the (\d+)\.(?: The hour is (\d+)\.)?",
        ClockReader.has_passed,
    ),
    (r"Long hand next: it points at the 12\.", ClockReader.at_the_twelve),
    (r"Long hand next: half way round, at the 6\.", ClockReader.at_the_six),
    (r"Long hand next: a quarter (of the way round|of the way to go)\.", ClockReader.quarter_round),
    (r"Long hand next: count in fives to the (\d+)\.", ClockReader.in_fives_to),
    (r"Count on to the 12: (\d+) minutes to go\.", ClockReader.to_go),
    (r"It is (.+)\. We write (\d+):(\d\d)\.", ClockReader.written),
    (r"(.+) is (\d+) minutes past (\w+)\.", ClockReader.is_minutes_past),
    (r"Long hand first: it points straight at the 12\.", ClockReader.long_to_twelve),
    (r"Long hand first: half way round, to the 6\.", ClockReader.long_half_round),
    (r"Long hand first: count (\d+) in fives to the (\d+)\.", ClockReader.count_in_fives),
    (r"Short hand next: it points straight at the (\d+)\.", ClockReader.short_straight),
    (r"Short hand next: a little way past the (\d+)\.", ClockReader.short_little_past),
    (r"Short hand next: half way from (\d+) to (\d+)\.", ClockReader.short_half_way),
    (r"Short hand next: more than half way to the (\d+)\.", ClockReader.short_more_than_half),
    (r"Short hand next: just before the (\d+)\.", ClockReader.short_just_before),
    (r"The clock shows (.+)\.", ClockReader.shows),
    (r"Start at (\d+):(\d\d): the long hand is at the (\d+)\.", ClockReader.starts),
    (
        r"(On|Back) to the (\d+): (\d+) minutes\.(?: Now the hour is (\d+)\.)?",
        ClockReader.moved,
    ),
]
