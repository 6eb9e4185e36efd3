from __future__ import annotations

import re
from collections import defaultdict

import pytest

from manipulatives.lessons.strands.rules import RULES
from manipulatives.lessons.strands.time.mistakes import rules as mistakes
from manipulatives.lessons.strands.time.mistakes.rules import READING, nearest_hour
from manipulatives.lessons.tasks.rule import may_have
from manipulatives.maths.time.angles import hand_angles
from manipulatives.words.clock_digits import in_digits, parse_time
from support.cases import cases

CASES = cases("time_mistakes")
FIVES = range(0, 720, 5)


def reading_rule(name):
    return next(rule for rule in READING if rule.id == name)


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case['rule']} at {case['time']}")
def test_a_clock_is_misread_as_the_rule_says(case):
    """The examples at 1:50, 4:10, 4:30 and 3:00 were worked by hand from the rules' wording.

    That 1:50 is read 2:50, 7:5x as 8:5x and 3:00 as 12:15, and quarter past for quarter to, is
    what teachers report.
    """
    wrong = reading_rule(case["rule"]).wrong(parse_time(case["time"]) % 720)
    assert (None if wrong is None else in_digits(wrong)) == case["read_as"]


@pytest.mark.parametrize(
    ("rule", "count"),
    [
        ("nearest_hour", 60),
        ("next_hour", 132),
        ("swapped_hands", 132),
        ("numeral_as_minutes", 144),
        ("past_to_mirror", 120),
        ("hour_only", 132),
    ],
)
def test_an_error_shows_at_as_many_of_the_144_times_as_counted(rule, count):
    """Of 12 times in an hour 5 are past half, 11 past the hour, 10 neither on it nor half past."""
    wrong = [reading_rule(rule).wrong(reading) for reading in FIVES]
    assert sum(one is not None for one in wrong) == count


def test_counting_half_past_as_nearest_adds_twelve_times():
    shown = [nearest_hour(reading, from_half=True) for reading in FIVES]
    assert sum(one is not None for one in shown) == 72


def test_the_hands_can_be_swapped_unnoticed_at_twelve_times():
    silent = [in_digits(time) for time in FIVES if mistakes.swapped_hands(time) is None]
    expected = "12:00 1:05 2:10 3:15 4:20 5:25 6:30 7:35 8:40 9:45 10:50 11:55"
    assert silent == expected.split()


def test_no_rule_gives_the_right_reading_or_no_reading():
    for reading in FIVES:
        for rule in READING:
            wrong = rule.wrong(reading)
            assert wrong is None or (wrong != reading and 0 <= wrong < 720), (rule.id, reading)


def test_two_rules_give_one_answer_only_where_they_must():
    """nearest_hour is next_hour after half past; past_to_mirror is numeral_as_minutes at :50."""
    together = defaultdict(list)
    for reading in FIVES:
        by_answer = defaultdict(list)
        for rule in READING:
            by_answer[rule.wrong(reading)].append(rule.id)
        by_answer.pop(None, None)
        for ids in by_answer.values():
            if len(ids) > 1:
                together[tuple(ids)].append(reading)
    assert together == {
        ("nearest_hour", "next_hour"): [reading for reading in FIVES if reading % 60 > 30],
        ("past_to_mirror", "numeral_as_minutes"): [r for r in FIVES if r % 60 == 50],
    }


def test_swapping_or_mirroring_twice_is_right_again():
    for rule in (mistakes.swapped_hands, mistakes.past_to_mirror):
        for reading in FIVES:
            wrong = rule(reading)
            assert wrong is None or rule(wrong) == reading


def test_a_static_hour_hand_stays_at_its_numeral_whenever_there_are_minutes():
    """It stands at 30h degrees where 30h + m/2 is right; in half degrees, 60h."""
    for reading in FIVES:
        hands = mistakes.static_hour_hand(reading)
        hour, past = divmod(reading, 60)
        if past == 0:
            assert hands is None
        else:
            assert hands == {"hour": 60 * hour, "minute": past, "half": "am"}
            right, minute_hand = hand_angles(reading)
            assert right - hands["hour"] / 2 == past / 2
            assert minute_hand == hands["minute"] * 6


def test_hands_set_swapped_point_where_the_other_belongs():
    for reading in FIVES:
        hands = mistakes.set_swapped(reading)
        if hands is None:
            assert mistakes.swapped_hands(reading) is None
            continue
        numeral_of_hour, numeral_of_minutes = reading // 60, reading % 60 // 5
        assert (hands["hour"] // 60, hands["minute"] // 5) == (numeral_of_minutes, numeral_of_hour)


def test_the_number_named_like_the_minutes_can_be_mistaken_at_five_and_ten_past():
    shown = {r % 60: mistakes.set_numeral(r) for r in FIVES if mistakes.set_numeral(r) is not None}
    assert {past: wrong % 60 for past, wrong in shown.items()} == {5: 25, 10: 50}


@pytest.mark.parametrize(
    ("start", "by", "wrong_way", "counted", "not_moved"),
    [
        ("4:35", 20, "4:15", "4:50", None),
        ("4:35", 25, "4:10", "4:55", "4:00"),
        ("4:35", 40, "3:55", "5:10", "4:15"),
        ("4:35", -20, "4:55", "4:20", None),
        ("4:10", -20, "4:30", "3:55", "4:50"),
        ("11:50", 15, "11:35", "12:00", "11:05"),
        ("12:05", -10, "12:15", "12:00", "12:55"),
        ("4:35", 60, "3:35", "5:30", "4:35"),
    ],
)
def test_moving_on_or_back_goes_wrong_as_the_rule_says(start, by, wrong_way, counted, not_moved):
    reading = parse_time(start) % 720
    assert in_digits(mistakes.wrong_way(reading, by)) == wrong_way
    assert in_digits(mistakes.counted_the_start(reading, by)) == counted
    hour_kept = mistakes.hour_not_moved(reading, by)
    assert (None if hour_kept is None else in_digits(hour_kept)) == not_moved


@pytest.mark.parametrize("reading", [-5, 720, 3, True, 4.0, "4:35", None])
def test_what_is_no_reading_in_fives_is_refused(reading):
    for rule in READING:
        with pytest.raises(ValueError, match="from 0 to 715 in steps of 5"):
            rule.wrong(reading)


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_every_rule_speaks_kindly_and_modestly(rule):
    for vocabulary in ("us", "uk"):
        said = rule.for_pupil(vocabulary)
        assert all(len(part.split()) <= 10 for part in re.split(r"(?<=[.?!]) ", said))
        assert not {"wrong", "mistake", "bad", "stupid"} & set(said.lower().split())
    assert rule.for_teacher.startswith("May have ")
    assert rule.for_teacher.endswith(".")


@pytest.mark.parametrize("rule", mistakes.RULES, ids=lambda rule: rule.id)
def test_a_rule_speaks_kindly_to_the_pupil_and_modestly_to_the_teacher(rule):
    for vocabulary in ("us", "uk"):
        sentence = rule.for_pupil(vocabulary)
        assert 1 <= len(sentence.split()) <= 10
        assert sentence[0].isupper()
        assert sentence[-1] in ".?"
        assert sum(sentence.count(mark) for mark in ".?!") == 1
        assert not {"wrong", "no", "not", "mistake", "bad"} & set(sentence.lower().split())
    assert rule.for_teacher.startswith("May have ")
    assert rule.for_teacher.endswith(".")


def test_every_rule_has_a_name_of_its_own():
    assert len(mistakes.RULES) == 15
    assert all(name == rule.id for name, rule in RULES.items())


def test_several_rules_are_told_to_the_teacher_as_alternatives():
    told = may_have(RULES["nearest_hour"], RULES["next_hour"])
    assert told.count("May have") == 1
    assert ", or " in told
    assert told.count(".") == 1
