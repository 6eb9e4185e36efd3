from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words

from manipulatives.maths.time.day import DAY, HALF_DAY
from manipulatives.words.clock import accepted_words, in_words
from manipulatives.words.clock_digits import in_digits
from support.cases import cases

CASES = cases("times")
STYLES = ("digital", "relative")
VOCABULARIES = ("us", "uk")
TIMES = st.integers(0, DAY - 1)

# What a class says with the minute hand on each numeral, from the 12 on. Half past: Common Core
# 1.MD.B.3 and England's Year 1; quarter past and quarter to: England's Year 2; the rest is
# common practice.
RELATIVE = (
    "{hour} o'clock",
    "five past {hour}",
    "ten past {hour}",
    "quarter past {hour}",
    "twenty past {hour}",
    "twenty-five past {hour}",
    "half past {hour}",
    "twenty-five to {next}",
    "twenty to {next}",
    "quarter to {next}",
    "ten to {next}",
    "five to {next}",
)
DIGITAL = (
    "{hour} o'clock",
    "{hour} oh five",
    "{hour} ten",
    "{hour} fifteen",
    "{hour} twenty",
    "{hour} twenty-five",
    "{hour} thirty",
    "{hour} thirty-five",
    "{hour} forty",
    "{hour} forty-five",
    "{hour} fifty",
    "{hour} fifty-five",
)
# Common practice: the readings of one numeral that several classrooms would use.
ALSO_RIGHT = {
    245: ["four oh five", "five past four", "five after four", "five minutes past four"],
    255: ["quarter past four", "a quarter past four", "quarter after four", "fifteen past four"],
    270: ["four thirty", "half past four", "thirty minutes past four"],
    275: ["twenty-five to five", "twenty-five minutes to five", "twenty-five of five"],
    277: ["four thirty-seven", "twenty-three minutes to five"],
    285: ["four forty-five", "quarter to five", "a quarter to five", "quarter of five"],
    290: ["ten to five", "ten till five", "ten before five", "ten minutes to five"],
    455: ["seven thirty-five", "twenty-five to eight"],
    705: ["eleven forty-five", "quarter to twelve", "quarter to noon"],
    720: ["twelve o'clock", "noon", "twelve noon"],
    0: ["twelve o'clock", "midnight", "twelve midnight"],
    750: ["twelve thirty", "half past twelve", "half past noon"],
    1435: ["five to twelve", "five to midnight"],
}
NOT_RIGHT = {
    275: [
        "twenty-five to four",
        "twenty-five past five",
        "five thirty-five",
        "thirty-five to five",
    ],
    285: ["quarter to four", "quarter past four", "quarter past five"],
    245: ["four five", "five to four"],
    270: ["half four", "half to five", "half past five"],
    720: ["midnight"],
    0: ["noon"],
    725: ["five past midnight"],
    60: ["noon", "midnight"],
}


def numeral(hour):
    return num2words((hour - 1) % 12 + 1)


@pytest.mark.parametrize("case", CASES, ids=lambda case: str(case["minute"]))
def test_a_time_is_written_and_spoken_as_in_the_cases(case):
    minute = case["minute"]
    for vocabulary in VOCABULARIES:
        whole = case[vocabulary]
        assert in_digits(minute, vocabulary) == case["digits"]
        assert in_digits(minute, vocabulary, half_day=True) == whole["digits"]
        for style in STYLES:
            assert in_words(minute, vocabulary, style) == case[style]
            assert in_words(minute, vocabulary, style, half_day=True) == whole[style]


@pytest.mark.parametrize("vocabulary", VOCABULARIES)
@pytest.mark.parametrize(("style", "phrases"), [("digital", DIGITAL), ("relative", RELATIVE)])
def test_all_144_five_minute_readings_are_said_numeral_by_numeral(vocabulary, style, phrases):
    derived = {
        60 * hour + 5 * step: phrase.format(hour=numeral(hour), next=numeral(hour + 1))
        for hour in range(12)
        for step, phrase in enumerate(phrases)
    }
    assert len(derived) == 144
    assert {minute: in_words(minute, vocabulary, style) for minute in derived} == derived


@given(TIMES, st.sampled_from(VOCABULARIES))
def test_digital_words_are_the_digits_one_number_after_the_other(minute, vocabulary):
    hour, past = in_digits(minute).split(":")
    oh = "oh " if past.startswith("0") else ""
    said = f"{num2words(int(hour))} {oh}{num2words(int(past))}" if int(past) else None
    assert in_words(minute, vocabulary, "digital") == (said or f"{num2words(int(hour))} o'clock")


@given(TIMES, st.sampled_from(VOCABULARIES))
def test_relative_words_lead_back_to_the_time(minute, vocabulary):
    """Read the words with num2words' own numbers, and let datetime go to or from the hour."""
    numbers = {num2words(number): number for number in range(1, 60)}
    numbers |= {"quarter": 15, "half": 30}
    words = in_words(minute, vocabulary, "relative").replace(" minutes", "").replace(" minute", "")
    midnight = datetime(2026, 3, 2, tzinfo=UTC)
    match words.split(" "):
        case [hour, "o'clock"]:
            moment = midnight + timedelta(hours=numbers[hour])
        case [count, "past", hour]:
            moment = midnight + timedelta(hours=numbers[hour], minutes=numbers[count])
            assert numbers[count] <= 30
        case [count, "to", hour]:
            moment = midnight + timedelta(hours=numbers[hour], minutes=-numbers[count])
            assert numbers[count] < 30
    assert (moment.hour % 12, moment.minute) == (minute // 60 % 12, minute % 60)


@given(TIMES)
def test_us_says_the_digits_and_uk_says_past_and_to(minute):
    assert in_words(minute) == in_words(minute, "us") == in_words(minute, "us", "digital")
    assert in_words(minute, "uk") == in_words(minute, "uk", "relative")


@given(st.integers(0, HALF_DAY - 1), st.sampled_from(VOCABULARIES), st.sampled_from(STYLES))
def test_only_the_half_of_the_day_distinguishes_morning_and_afternoon(reading, vocabulary, style):
    morning, evening = (
        in_words(minute, vocabulary, style) for minute in (reading, reading + HALF_DAY)
    )
    assert morning == evening
    morning, evening = (
        in_words(minute, vocabulary, style, half_day=True)
        for minute in (reading, reading + HALF_DAY)
    )
    assert morning != evening


@pytest.mark.parametrize("vocabulary", VOCABULARIES)
@pytest.mark.parametrize("style", STYLES)
def test_every_minute_of_the_day_is_said_in_words_of_its_own(vocabulary, style):
    said = {in_words(minute, vocabulary, style, half_day=True) for minute in range(DAY)}
    assert len(said) == DAY


@given(TIMES, st.sampled_from(VOCABULARIES), st.sampled_from(STYLES))
def test_what_the_kit_says_is_accepted(minute, vocabulary, style):
    assert in_words(minute, vocabulary, style) in accepted_words(minute)


@pytest.mark.parametrize("minute", ALSO_RIGHT)
def test_other_right_readings_are_accepted(minute):
    assert set(ALSO_RIGHT[minute]) <= set(accepted_words(minute))


@pytest.mark.parametrize("minute", NOT_RIGHT)
def test_wrong_readings_are_not_accepted(minute):
    assert not set(NOT_RIGHT[minute]) & set(accepted_words(minute))


def test_no_words_are_right_for_two_times_of_a_half_day():
    for start in (0, HALF_DAY):
        readings = [accepted_words(minute) for minute in range(start, start + HALF_DAY)]
        assert all(len(set(words)) == len(words) for words in readings)
        assert len({word for words in readings for word in words}) == sum(map(len, readings))


def test_noon_and_midnight_share_nothing_but_twelve():
    for reading in range(HALF_DAY):
        shared = set(accepted_words(reading)) & set(accepted_words(reading + HALF_DAY))
        assert not any("noon" in words or "midnight" in words for words in shared)
        assert in_words(reading, "uk", "relative") in shared


@pytest.mark.parametrize("style", ["", "Digital", "analog", 1])
def test_there_are_two_styles(style):
    with pytest.raises(ValueError, match=r'The style is "digital" or "relative", not '):
        in_words(275, "us", style)


def test_words_need_a_time_and_a_vocabulary():
    with pytest.raises(ValueError, match="from 0 to 1439, not 1440"):
        in_words(1440)
    with pytest.raises(ValueError, match="from 0 to 1439, not -5"):
        accepted_words(-5)
    with pytest.raises(ValueError, match=r'is "us" or "uk", not .fr'):
        in_words(275, "fr")
