"""The timer of a round, as the browser works it out; times are milliseconds."""

from __future__ import annotations

import pytest

TIMER = "round/core/state/timer.js"
STRETCH = "round/board/state/stretch.js"
NOON = 1_767_265_200_000
FULL = {"mode": "shown", "allowed": 60, "used": 0, "since": None, "held": False}


def after(js, *moves, timer=FULL):
    """A timer after moves such as ("run", 0): what is done, and how many seconds after noon."""
    for name, *given in moves:
        *values, seconds = given
        module = STRETCH if name in ("pause", "stretch") else TIMER
        [timer] = js(module, name, [[timer, *values, NOON + seconds * 1000]])
    return timer


def left(js, timer, seconds):
    [milliseconds] = js(TIMER, "left", [[timer, NOON + seconds * 1000]])
    return milliseconds / 1000


def test_it_begins_full_and_at_rest(js):
    assert js(TIMER, "fullTimer", [[60, "shown"]]) == [FULL]
    assert left(js, FULL, 1000) == 60


@pytest.mark.parametrize(("seconds", "over"), [(0, 60), (1, 59), (59.5, 0.5), (60, 0), (900, 0)])
def test_it_counts_while_it_runs_and_never_below_nothing(js, seconds, over):
    assert left(js, after(js, ("run", 0)), seconds) == over


def test_time_at_rest_does_not_count(js):
    resting = after(js, ("run", 0), ("rest", 20))
    assert left(js, resting, 500) == 40
    assert left(js, after(js, ("run", 500), timer=resting), 510) == 30


def test_paused_by_hand_is_told_from_resting(js):
    assert after(js, ("run", 0), ("rest", 5))["held"] is False
    assert after(js, ("run", 0), ("pause", 5))["held"] is True
    assert after(js, ("run", 0), ("pause", 5), ("run", 9))["held"] is False


@pytest.mark.parametrize("moves", [(), (("run", 0),), (("run", 0), ("rest", 10))])
def test_stretching_adds_fifteen_seconds_whatever_it_does(js, moves):
    before = after(js, *moves)
    longer = after(js, ("stretch", 12), timer=before)
    assert left(js, longer, 12) - left(js, before, 12) == 15
    assert (longer["since"] is None) == (before["since"] is None)


def test_stretched_after_its_end_it_runs_on_with_the_whole_of_it(js):
    out = after(js, ("run", 0), ("rest", 61))
    assert left(js, out, 300) == 0
    longer = after(js, ("stretch", 300), timer=out)
    assert left(js, longer, 300) == 15
    assert left(js, longer, 304) == 11
    # The same when nobody noticed its end.
    assert left(js, after(js, ("run", 0), ("stretch", 300)), 300) == 15


def test_used_up_or_off_it_cannot_be_started(js):
    assert js(TIMER, "waiting", [[FULL]]) == [True]
    out = after(js, ("run", 0), ("rest", 60))
    off = after(js, ("show", "off", 0))
    running = after(js, ("run", 0))
    assert js(TIMER, "waiting", [[out], [off], [running]]) == [False] * 3
    assert after(js, ("run", 70), timer=out) == out
    assert after(js, ("run", 70), timer=off) == off


def test_hidden_it_runs_on_and_off_it_rests(js):
    running = after(js, ("run", 0))
    assert left(js, after(js, ("show", "hidden", 10), timer=running), 20) == 40
    assert left(js, after(js, ("show", "off", 10), timer=running), 20) == 50


def test_a_clock_that_is_set_back_gives_no_time(js):
    assert left(js, after(js, ("run", 100)), 0) == 60


@pytest.mark.parametrize(
    ("data", "fine"),
    [
        (FULL, True),
        ({**FULL, "since": NOON}, True),
        ({}, False),
        (None, False),
        ("60", False),
        ({**FULL, "mode": "loud"}, False),
        ({**FULL, "allowed": "60"}, False),
        ({**FULL, "used": -1}, False),
        ({**FULL, "since": "noon"}, False),
    ],
)
def test_only_a_timer_is_taken_for_one(js, data, fine):
    assert js(TIMER, "timerOf", [[data]]) == [data if fine else None]


def test_time_is_said_in_digits_and_words(js):
    times = [0, 1, 999, 1000, 1001, 59_999, 60_000, 61_000, 125_000, 3_600_000]
    calls = [[time] for time in times]
    assert js(TIMER, "inDigits", calls) == [
        "0:00", "0:01", "0:01", "0:01", "0:02", "1:00", "1:00", "1:01", "2:05", "60:00",
    ]  # fmt: skip
    assert js(TIMER, "inWords", calls) == [
        "no time", "1 second", "1 second", "1 second", "2 seconds", "1 minute", "1 minute",
        "1 minute 1 second", "2 minutes 5 seconds", "60 minutes",
    ]  # fmt: skip
