from __future__ import annotations

import math
import re
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.time.angles import (
    angle_between,
    hand_angles,
    hours_with_angle,
    reading_of,
)
from manipulatives.words.clock_digits import parse_time

INSTANTS = st.fractions(0, 1440, max_denominator=11 * 60)


@pytest.mark.parametrize(
    ("time", "angle"),
    # Computed by hand from |30 h - 5.5 m|, the smaller of it and what is left of a full turn.
    [
        ("3:00", 90),
        ("3:15", 7.5),
        ("3:30", 75),
        ("6:00", 180),
        ("6:30", 15),
        ("9:45", 22.5),
        ("12:30", 165),
        ("2:45", 172.5),
        ("10:10", 115),
        ("1:50", 115),
        ("8:20", 130),
        ("11:55", 27.5),
        ("12:00", 0),
    ],
)
def test_the_hands_make_the_angle_that_the_rule_gives(time, angle):
    assert angle_between(parse_time(time)) == angle


@pytest.mark.parametrize(
    ("time", "hour", "minute"),
    # Computed by hand: 30 degrees an hour and half a degree a minute, six degrees a minute.
    [
        ("12:00", 0, 0),
        ("3:00", 90, 0),
        ("4:35", 137.5, 210),
        ("6:30", 195, 180),
        ("16:35", 137.5, 210),
    ],
)
def test_each_hand_is_where_its_speed_brings_it(time, hour, minute):
    assert hand_angles(parse_time(time)) == (hour, minute)


@given(INSTANTS)
def test_the_angle_between_is_the_one_that_the_directions_enclose(minute):
    """A second opinion from trigonometry: the scalar product of the two directions."""
    hour_hand, minute_hand = (math.radians(angle) for angle in hand_angles(minute))
    cosine = math.cos(hour_hand) * math.cos(minute_hand) + math.sin(hour_hand) * math.sin(
        minute_hand
    )
    # acos is blunt near 0 and 180 degrees: an error of 1e-16 there is one of 1e-6 degrees.
    enclosed = math.degrees(math.acos(max(-1.0, min(1.0, cosine))))
    assert math.isclose(angle_between(minute), enclosed, abs_tol=1e-5)


@given(INSTANTS, st.fractions(0, 1440, max_denominator=60))
def test_the_minute_hand_turns_twelve_times_as_fast_as_the_hour_hand(start, by):
    (hour, minute), (hour_after, minute_after) = hand_angles(start), hand_angles(start + by)
    assert (minute_after - minute - 12 * (hour_after - hour)) % 360 == 0
    assert (hour_after - hour - by / 2) % 360 == 0


@given(st.integers(0, 22), st.sampled_from([0, 59]))
def test_an_hour_later_only_the_hour_hand_has_moved_by_one_numeral(hour, past):
    before, after = hand_angles(60 * hour + past), hand_angles(60 * (hour + 1) + past)
    assert (after[0] - before[0]) % 360 == 30
    assert after[1] == before[1]


@given(INSTANTS)
def test_two_hands_lead_back_to_their_time(minute):
    assert reading_of(*hand_angles(minute)) == minute % 720


@given(st.fractions(-720, 720, max_denominator=60), st.fractions(-720, 720, max_denominator=60))
def test_hands_that_are_not_geared_are_refused_with_where_the_minute_hand_belongs(hour, minute):
    if (12 * hour - minute) % 360 == 0:
        assert hand_angles(reading_of(hour, minute)) == (hour % 360, minute % 360)
        return
    with pytest.raises(ValueError, match=r"^No clock shows an hour hand at ") as refused:
        reading_of(hour, minute)
    belongs = Fraction(re.search(r"belongs at (\S+)\.$", str(refused.value))[1])
    assert hand_angles(reading_of(hour, belongs))[1] == belongs


def test_the_hands_coincide_22_times_a_day_twelve_elevenths_of_an_hour_apart():
    # Computed in closed form: 12 k / 11 hours.
    assert hours_with_angle(0) == [Fraction(12 * k, 11) for k in range(22)]


def test_the_hands_are_opposite_22_times_a_day():
    # Computed in closed form: 6/11 + 12 k / 11 hours.
    assert hours_with_angle(180) == [Fraction(6 + 12 * k, 11) for k in range(22)]


def test_the_hands_make_a_right_angle_44_times_a_day():
    # Computed in closed form: 3/11 or 9/11 of an hour after each coincidence.
    instants = [Fraction(12 * k + rest, 11) for k in range(22) for rest in (3, 9)]
    assert hours_with_angle(90) == instants


def test_the_coincidences_of_a_half_day_are_these_to_the_second():
    # Computed by hand, whole seconds: the rest is a number of elevenths.
    clock = (
        "12:00:00 1:05:27 2:10:54 3:16:21 4:21:49 5:27:16 6:32:43 7:38:10 8:43:38 9:49:05 10:54:32"
    )
    for instant, digits in zip(hours_with_angle(0), clock.split(), strict=False):
        seconds = int(instant * 3600)
        hour = seconds // 3600 or 12
        assert f"{hour}:{seconds // 60 % 60:02}:{seconds % 60:02}" == digits


@pytest.mark.parametrize(
    ("angle", "times"), [(0, {0, 720}), (180, {360, 1080}), (90, {180, 540, 900, 1260})]
)
def test_few_of_these_instants_are_whole_minutes(angle, times):
    # Computed: only 12:00 for coinciding hands, 6:00 for opposite ones, 3:00 and 9:00 for a
    # right angle.
    whole = {60 * hour for hour in hours_with_angle(angle) if (60 * hour).denominator == 1}
    assert whole == times
    assert whole == {minute for minute in range(1440) if angle_between(minute) == angle}


@given(st.fractions(0, 180, max_denominator=60))
def test_at_each_instant_the_hands_make_the_angle_asked_for(angle):
    instants = hours_with_angle(angle)
    assert instants == sorted(set(instants))
    assert all(0 <= instant < 24 for instant in instants)
    assert all(angle_between(60 * instant) == angle for instant in instants)


@given(st.fractions(1, 179, max_denominator=60))
def test_no_instant_is_left_out(angle):
    """A count by walking through the day.

    In 30/11 of a minute the minute hand gains exactly 15 degrees, so such steps from midnight
    meet every coincidence and every opposition, and from one to the next the angle only rises
    or only falls.
    """
    steps = [angle_between(Fraction(step, 11)) for step in range(0, 1440 * 11 + 1, 30)]
    reached = sum(
        min(one, other) < angle < max(one, other) for one, other in pairwise(steps)
    ) + sum(step == angle for step in steps[:-1])
    assert len(hours_with_angle(angle)) == reached == 44


def test_at_five_minute_times_the_hands_are_together_at_twelve_only():
    # Computed; the smallest angle otherwise is 2.5 degrees, at 1:05 and 10:55.
    angles = {minute: angle_between(minute) for minute in range(0, 720, 5)}
    assert [minute for minute, angle in angles.items() if angle == 0] == [0]
    least = min(angle for angle in angles.values() if angle > 0)
    assert least == Fraction(5, 2)
    assert [minute for minute, angle in angles.items() if angle == least] == [65, 655]


@pytest.mark.parametrize("angle", [-1, 181, Fraction(361, 2)])
def test_hands_are_never_more_than_half_a_turn_apart(angle):
    with pytest.raises(ValueError, match=rf"from 0 to 180 degrees, not {re.escape(str(angle))}\."):
        hours_with_angle(angle)
