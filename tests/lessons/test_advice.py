from __future__ import annotations

import datetime as dt

from manipulatives.lessons.advice import came_before, length_in_words, warnings_about
from manipulatives.lessons.lesson import Lesson, Round

HOUR, HALF, QUARTER = "time.read_hour", "time.read_half", "time.read_quarter"
FIVES = "counting.on_in_fives"


def lesson(*skills, date=None, **of_each):
    rounds = tuple(Round(skill, seed=100 + place, **of_each) for place, skill in enumerate(skills))
    return Lesson("Market day", seed=1, rounds=rounds, date=date)


def about(*given, **named):
    return [each.about for each in warnings_about(*given, **named)]


def test_a_lesson_with_a_review_in_good_order_is_left_in_peace():
    assert about(lesson(HOUR, FIVES, HALF)) == []


def test_a_lesson_without_rounds_says_what_to_do():
    assert about(lesson()) == ["empty"]


def test_skills_build_on_others_through_others():
    assert HOUR in came_before(QUARTER)
    assert QUARTER not in came_before(HOUR)


def test_a_skill_before_what_it_builds_on_is_named_with_both_places():
    found = [each for each in warnings_about(lesson(QUARTER, FIVES, HOUR)) if each.about == "order"]
    assert len(found) == 1
    assert "Round 1" in found[0].sentence
    assert "Move round 3 before it." in found[0].sentence


def test_neighbours_that_are_worked_the_same_way_are_reported():
    assert about(lesson(HOUR, HALF)) == ["strategy"]
    assert about(lesson(HOUR, HOUR)) == ["strategy"]
    assert "strategy" not in about(lesson(HOUR, FIVES, HALF))


def test_a_session_that_is_too_long_says_by_how_much():
    long = lesson(HOUR, FIVES, HALF, seconds=400)
    found = warnings_about(long, minutes=15)
    assert [each.about for each in found] == ["time"]
    assert "20 min, 5 min more" in found[0].sentence
    assert about(long, minutes=20) == []


def test_a_lesson_without_review_gets_a_suggestion():
    found = warnings_about(lesson(QUARTER))
    assert [each.about for each in found] == ["review"]
    assert "Read to the half hour" in found[0].sentence


def test_a_skill_taught_on_an_earlier_day_comes_back_as_a_review():
    monday, tuesday = dt.date(2026, 3, 2), dt.date(2026, 3, 3)
    earlier = lesson(QUARTER, date=monday)
    assert about(lesson(QUARTER, date=tuesday), others=[earlier]) == []
    # A later day is no review, and neither is a day without a date.
    assert about(lesson(QUARTER, date=monday), others=[lesson(QUARTER, date=tuesday)]) == ["review"]
    assert about(lesson(QUARTER, date=monday), others=[lesson(QUARTER)]) == ["review"]


def test_the_latest_lesson_is_what_could_come_back():
    days = [lesson(HOUR, date=dt.date(2026, 3, 2)), lesson(FIVES, date=dt.date(2026, 3, 3))]
    today = lesson(QUARTER, date=dt.date(2026, 3, 4))
    [found] = warnings_about(today, others=days)
    assert "Count on in fives" in found.sentence


def test_two_rounds_with_the_same_numbers_are_reported():
    same = (Round(HOUR, seed=5), Round(FIVES, seed=6), Round(HOUR, seed=5))
    [found] = warnings_about(Lesson("Market day", seed=1, rounds=same), minutes=60)[-1:]
    assert found.about == "copy"
    assert "Round 3 asks the same as round 1." in found.sentence


def test_lengths_of_time_are_written_in_words():
    assert [length_in_words(seconds) for seconds in (5, 60, 95)] == ["5 s", "1 min", "1 min 35 s"]
