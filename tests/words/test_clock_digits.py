from __future__ import annotations

import re
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.time.day import DAY, HALF_DAY, HOUR, duration, earlier, later
from manipulatives.maths.vocabulary import check_vocabulary
from manipulatives.words.clock_digits import duration_in_words, half_name, in_digits, parse_time

MIDNIGHT = datetime(2026, 3, 2, tzinfo=UTC)
TIMES = st.integers(0, DAY - 1)
MINUTES = st.integers(0, 10 * DAY)


def on_a_day(minute):
    return MIDNIGHT + timedelta(minutes=minute)


def test_an_hour_has_sixty_minutes_and_a_day_twenty_four_hours():
    # Department for Education, National curriculum in England: mathematics, Year 2, measurement.
    assert HOUR == 60
    assert DAY == 24 * HOUR


@pytest.mark.parametrize(
    ("text", "minute"),
    [
        ("4:35", 275),
        ("04:35", 275),
        ("4:35 am", 275),
        ("4:35 pm", 995),
        ("4:35 p.m.", 995),
        ("4:35pm", 995),
        ("4:35 PM", 995),
        ("  4:35  P.M. ", 995),
        ("16:35", 995),
        ("0:05", 5),
        ("00:00", 0),
        ("12:00", 720),
        ("12:35", 755),
        ("12:35 a.m.", 35),
        ("12:35 p.m.", 755),
        ("23:59", 1439),
        ("noon", 720),
        ("Noon", 720),
        ("midnight", 0),
        ("12:00 noon", 720),
        ("12:00 midnight", 0),
        # Common practice; the kit itself writes neither.
        ("12:00 p.m.", 720),
        ("12:00 a.m.", 0),
    ],
)
def test_a_time_is_read_as_it_is_written(text, minute):
    assert parse_time(text) == minute


@pytest.mark.parametrize(
    ("text", "remedy"),
    [
        ("", "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight."),
        ("four", "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight."),
        ("4.35", "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight."),
        ("4:5", "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight."),
        ("4:35:00", "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight."),
        ("-4:35", "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight."),
        ("004:35", "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight."),
        ("٤:٣٥", "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight."),
        ("4:35 noon", "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight."),
        (275, "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight."),
        (None, "Write it like 4:35, 16:35, 4:35 p.m., noon or midnight."),
        ("4:60", "The minutes go from 00 to 59."),
        ("4:75 pm", "The minutes go from 00 to 59."),
        ("24:00", "The hours go from 0 to 23."),
        ("16:35 pm", "With a.m. or p.m. the hours go from 1 to 12."),
        ("0:35 am", "With a.m. or p.m. the hours go from 1 to 12."),
    ],
)
def test_what_is_no_time_is_refused_with_what_to_write_instead(text, remedy):
    with pytest.raises(ValueError, match=f"{re.escape(repr(text))} is no time of day") as refused:
        parse_time(text)
    assert str(refused.value).endswith(remedy)


@given(TIMES)
def test_a_time_is_read_as_the_standard_library_reads_it(minute):
    moment = on_a_day(minute)
    assert parse_time(moment.strftime("%H:%M")) == minute
    assert parse_time(moment.strftime("%I:%M %p")) == minute


@given(TIMES)
def test_the_digits_are_those_that_the_standard_library_writes(minute):
    digits = on_a_day(minute).strftime("%I:%M").removeprefix("0")
    assert in_digits(minute) == in_digits(minute, "uk") == digits
    if minute % HALF_DAY:
        half = on_a_day(minute).strftime("%p").lower()
        assert in_digits(minute, "uk", half_day=True) == f"{digits} {half}"
        assert in_digits(minute, half_day=True) == f"{digits} {half[0]}.{half[1]}."


@given(TIMES, st.sampled_from(["us", "uk"]))
def test_digits_with_their_half_of_the_day_lead_back_to_the_time(minute, vocabulary):
    assert parse_time(in_digits(minute, vocabulary, half_day=True)) == minute


@pytest.mark.parametrize("vocabulary", ["us", "uk"])
def test_noon_and_midnight_are_neither_before_noon_nor_after_it(vocabulary):
    # National Institute of Standards and Technology, Frequently asked questions: "the terms
    # 12 a.m. and 12 p.m. are wrong and should not be used".
    assert in_digits(720, vocabulary, half_day=True) == "12:00 noon"
    assert in_digits(0, vocabulary, half_day=True) == "12:00 midnight"
    # The minute after noon is past noon all the same.
    assert half_name(721, vocabulary).startswith("p")
    assert half_name(1, vocabulary).startswith("a")


def test_two_hundred_and_eighty_eight_five_minute_times_are_written_differently():
    # Common Core State Standards, 2.MD.C.7: to the nearest five minutes, using a.m. and p.m.
    assert len({in_digits(minute, half_day=True) for minute in range(0, DAY, 5)}) == 288
    assert len({in_digits(minute) for minute in range(0, DAY, 5)}) == 144


@given(TIMES, MINUTES)
def test_later_and_earlier_are_what_the_calendar_says(minute, by):
    after = on_a_day(minute) + timedelta(minutes=by)
    before = on_a_day(minute) - timedelta(minutes=by)
    assert later(minute, by) == after.hour * 60 + after.minute
    assert earlier(minute, by) == before.hour * 60 + before.minute


@given(TIMES, MINUTES)
def test_earlier_takes_back_what_later_did(minute, by):
    assert earlier(later(minute, by), by) == minute


@pytest.mark.parametrize(
    ("start", "end", "words"),
    [
        ("11:20 am", "12:45 pm", "1 hour 25 minutes"),
        ("11:20 pm", "12:45 am", "1 hour 25 minutes"),
        ("9:00 am", "11:00 am", "2 hours"),
        ("9:00 am", "10:00 am", "1 hour"),
        ("9:59 am", "10:00 am", "1 minute"),
        ("11:59 pm", "midnight", "1 minute"),
        ("noon", "noon", "0 minutes"),
        ("12:01 am", "midnight", "23 hours 59 minutes"),
    ],
)
def test_a_duration_runs_on_across_noon_and_midnight(start, end, words):
    assert duration_in_words(duration(parse_time(start), parse_time(end))) == words


@given(TIMES, TIMES)
def test_a_duration_is_the_difference_of_two_moments_at_most_a_day_apart(start, end):
    opening, closing = on_a_day(start), on_a_day(end)
    if closing < opening:
        closing += timedelta(days=1)
    assert timedelta(minutes=duration(start, end)) == closing - opening
    assert later(start, duration(start, end)) == end


@given(MINUTES)
def test_the_words_of_a_duration_add_up_to_it(minutes):
    said = {
        unit.removesuffix("s"): int(count)
        for count, unit in re.findall(r"(\d+) (\w+)", duration_in_words(minutes))
    }
    assert timedelta(hours=said.get("hour", 0), minutes=said.get("minute", 0)) == timedelta(
        minutes=minutes
    )
    assert said.get("minute", 0) < 60


@given(MINUTES)
def test_one_is_singular_and_nothing_else_is(minutes):
    for count, unit in re.findall(r"(\d+) (\w+)", duration_in_words(minutes)):
        assert unit.endswith("s") == (count != "1")


@pytest.mark.parametrize("minute", [-1, 1440, 275.0, "4:35", None, True])
@pytest.mark.parametrize(
    "use",
    [in_digits, half_name, lambda minute: later(minute, 5), lambda minute: duration(0, minute)],
)
def test_a_number_outside_the_day_is_no_time(use, minute):
    with pytest.raises(ValueError, match=r"from 0 to 1439, not .*; 4:35 in the morning is 275\."):
        use(minute)


@pytest.mark.parametrize("minutes", [-1, 2.5, "5", None, True])
@pytest.mark.parametrize(
    "use", [duration_in_words, lambda by: later(275, by), lambda by: earlier(275, by)]
)
def test_a_number_of_minutes_is_whole_and_not_negative(use, minutes):
    with pytest.raises(ValueError, match=r"a whole number from 0 up, not"):
        use(minutes)


@pytest.mark.parametrize("vocabulary", ["US", "", None, ["us"], "en"])
def test_there_are_two_vocabularies(vocabulary):
    with pytest.raises(ValueError, match=r'The vocabulary is "us" or "uk", not '):
        check_vocabulary(vocabulary)
    with pytest.raises(ValueError, match=r'The vocabulary is "us" or "uk", not '):
        in_digits(275, vocabulary)
