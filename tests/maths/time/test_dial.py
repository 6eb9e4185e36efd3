from __future__ import annotations

import re
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.time.day import DAY
from manipulatives.maths.time.dial import (
    check_dial,
    count_in_fives,
    dial_at,
    dial_facts,
    hour_passed,
    time_shown,
)
from manipulatives.words.dial_hints import why_no_time
from support.cases import cases

CASES = cases("dials")
TIMES = st.integers(0, DAY - 1)
DIALS = st.fixed_dictionaries(
    {
        "hour": st.integers(0, 719),
        "minute": st.integers(0, 59),
        "half": st.sampled_from(["am", "pm"]),
    }
)


def half_turns(reading, other):
    """The way from one place of the hour hand to another, in half degrees, the shorter way."""
    return min((reading - other) % 720, (other - reading) % 720)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["about"])
def test_the_facts_of_a_dial_are_those_of_the_cases(case):
    assert dial_facts(case["dial"]) == case["facts"]
    assert why_no_time(case["dial"]) == case["why"]


@given(TIMES)
def test_the_dial_of_a_time_shows_that_time(minute):
    dial = dial_at(minute)
    assert time_shown(dial) == minute
    assert why_no_time(dial) is None
    facts = dial_facts(dial)
    assert facts["minutes"] == facts["meant"] == facts["hour_hand"] == minute % 720
    assert facts["minute_hand"] == minute % 60
    assert facts["lag"] == 0
    assert facts["half"] == ("am" if minute < 720 else "pm")


def test_a_dial_can_show_720_readings_and_144_of_them_in_fives():
    # Common Core State Standards, 2.MD.C.7, nearest five minutes; the counts are computed.
    shown = [
        hour
        for hour, minute in product(range(720), range(60))
        if dial_facts({"hour": hour, "minute": minute, "half": "am"})["minutes"] is not None
    ]
    assert shown == list(range(720))
    assert sum(reading % 5 == 0 for reading in shown) == 144


@given(DIALS)
def test_the_time_meant_is_the_nearest_that_the_minute_hand_allows(dial):
    facts = dial_facts(dial)
    allowed = range(dial["minute"], 720, 60)
    assert facts["meant"] in allowed
    way = half_turns(facts["meant"], dial["hour"])
    assert way == min(half_turns(reading, dial["hour"]) for reading in allowed)
    assert way == abs(facts["lag"])
    assert (facts["meant"] + facts["lag"]) % 720 == dial["hour"]
    assert (facts["minutes"] is None) == (facts["lag"] != 0) == (time_shown(dial) is None)


@given(st.integers(0, 719))
def test_a_hand_halfway_between_two_times_has_stayed_behind(hour):
    facts = dial_facts({"hour": hour, "minute": (hour + 30) % 60, "half": "am"})
    assert facts["lag"] == -30
    assert facts["meant"] == (hour + 30) % 720


@given(DIALS)
def test_the_hint_for_an_impossible_dial_says_where_the_short_hand_belongs(dial):
    why = why_no_time(dial)
    facts = dial_facts(dial)
    if facts["minutes"] is not None:
        assert why is None
        return
    hour, past = facts["meant"] // 60 or 12, facts["meant"] % 60
    coming = hour % 12 + 1
    assert why.startswith("The short hand belongs ")
    if "a little" in why:
        # It stands in the right place already, only not exactly.
        assert 0 < abs(facts["lag"]) < 30
        assert facts["meant"] // 60 == dial["hour"] // 60
        assert why.endswith("back." if facts["lag"] > 0 else "on.")
    elif past == 0:
        assert why.endswith(f" exactly on the {hour}.")
    elif past == 30:
        assert why.endswith(f" halfway between {hour} and {coming}.")
    else:
        nearer = hour if past < 30 else coming
        assert why.endswith(f" between {hour} and {coming}, nearer {nearer}.")


@given(DIALS)
def test_the_sentence_is_short_enough_for_a_beginning_reader(dial):
    assert len((why_no_time(dial) or "").split()) <= 10


@given(DIALS)
def test_going_where_the_sentence_says_is_a_move(dial):
    """A place that is named is never the place where the hand stands."""
    why = why_no_time(dial) or ""
    between = re.search(r"between (\d+) and \d+, nearer (\d+)", why)
    if between:
        low, nearer = int(between[1]), int(between[2])
        first = low % 12 * 60 + (1 if nearer == low else 31)
        assert dial["hour"] not in range(first, first + 29)


@pytest.mark.parametrize(
    ("minute", "hour"),
    [(0, 12), (30, 12), (59, 12), (60, 1), (275, 4), (299, 4), (300, 5), (719, 11), (720, 12)],
)
def test_the_hour_hand_passes_a_numeral_on_the_hour(minute, hour):
    assert hour_passed(minute) == hour


@given(TIMES)
def test_the_numeral_passed_is_the_hour_of_a_twelve_hour_clock(minute):
    assert hour_passed(minute) in range(1, 13)
    assert hour_passed(minute) % 12 == minute // 60 % 12


@pytest.mark.parametrize(
    ("minute", "counted"),
    [
        (240, []),
        (244, []),
        (245, [5]),
        (275, [5, 10, 15, 20, 25, 30, 35]),
        (279, [5, 10, 15, 20, 25, 30, 35]),
        (295, [5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55]),
    ],
)
def test_the_count_in_fives_ends_at_the_last_numeral_passed(minute, counted):
    assert count_in_fives(minute) == counted


@given(TIMES)
def test_the_count_has_one_number_for_each_numeral_from_the_1(minute):
    counted = count_in_fives(minute)
    assert len(counted) == minute % 60 // 5
    assert all(number == 5 * numeral for numeral, number in enumerate(counted, start=1))


@pytest.mark.parametrize(
    "dial",
    [
        None,
        275,
        "4:35",
        [275, 35, "am"],
        {},
        {"hour": 275, "minute": 35},
        {"hour": 275, "minute": 35, "half": "noon"},
        {"hour": 275, "minute": 35, "half": None},
        {"hour": 720, "minute": 0, "half": "am"},
        {"hour": -1, "minute": 59, "half": "am"},
        {"hour": 275, "minute": 60, "half": "am"},
        {"hour": 275.0, "minute": 35, "half": "am"},
        {"hour": True, "minute": 1, "half": "am"},
        {"hour": "275", "minute": 35, "half": "am"},
        {"hour": 275, "minute": 35, "half": "am", "second": 0},
    ],
)
@pytest.mark.parametrize("use", [check_dial, dial_facts, time_shown, why_no_time])
def test_what_is_no_dial_is_refused(use, dial):
    with pytest.raises(ValueError, match=r"A dial is .* in whole numbers, not ") as refused:
        use(dial)
    assert str(refused.value).endswith(f"not {dial!r}.")


def test_a_checked_dial_is_a_copy():
    given_dial = {"hour": 275, "minute": 35, "half": "am"}
    checked = check_dial(given_dial)
    assert checked == given_dial
    assert checked is not given_dial


@pytest.mark.parametrize("use", [dial_at, hour_passed, count_in_fives])
def test_a_dial_needs_a_time_of_day(use):
    with pytest.raises(ValueError, match="from 0 to 1439, not 1440"):
        use(1440)
