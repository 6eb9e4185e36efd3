"""What is asked, said and shown about clocks is right; worked out afresh from angles and dates."""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import replace
from functools import cache
from itertools import pairwise

import pytest

from manipulatives.lessons.tasks.make import GENERATORS, make_tasks
from manipulatives.lessons.tasks.playing import facts_of, is_solved, mistake_made
from manipulatives.lessons.tasks.predicates import holds
from manipulatives.words.clock import in_words
from manipulatives.words.clock_digits import in_digits, parse_time
from support.oracles.time import ClockOracle, wrong_of

CASES = {
    "4:00": "hour", "4:05": "past", "4:15": "past", "4:25": "past", "4:30": "half", "4:35": "to",
    "4:45": "to", "4:55": "to",
}  # fmt: skip
NOTHING_SHOWN = {"digital": False, "words": False, "sector": False, "arc": False}


@cache
def all_reading(vocabulary="us"):
    return make_tasks("time.read_five_minutes", seed=0, count=144, vocabulary=vocabulary)


@cache
def all_setting(vocabulary="us", **options):
    count = 720 // options.get("step", 5)
    return make_tasks("time.set_hands", seed=0, count=count, vocabulary=vocabulary, options=options)


def reading_at(time, vocabulary="us"):
    return next(task for task in all_reading(vocabulary) if task.answer == time)


def setting_at(time, vocabulary="us", **options):
    return next(task for task in all_setting(vocabulary, **options) if task.answer == time)


def said(task):
    return [step.say for step in task.steps]


def seen_by_angle(dial):
    """Read a dial as a person does: which numeral is passed, and how far round the long hand is."""
    numeral = int(dial["hour"] / 2 // 30)
    return f"{numeral or 12}:{dial['minute']:02}"


def test_the_answer_is_what_the_hands_show():
    for task in all_reading():
        assert task.answer == seen_by_angle(task.start["dial"])


def test_what_is_asked_is_never_shown():
    skills = ("time.read_hour", "time.read_half", "time.read_quarter", "time.read_five_minutes")
    for skill in (*skills, "time.set_hands", "time.later", "time.earlier"):
        for task in make_tasks(skill, seed=3, count=10):
            assert task.start.items() >= NOTHING_SHOWN.items()
            assert task.answer not in task.prompt or task.kind == "set"
    for task in all_setting(given="words"):
        assert task.answer not in task.prompt
        assert task.spoken in task.prompt


def test_a_clock_that_is_read_stands_still_and_others_can_be_moved():
    assert not reading_at("4:35").start["movable"]
    for skill in ("time.set_hands", "time.later", "time.earlier"):
        [task] = make_tasks(skill, seed=1, count=1)
        assert task.start["movable"]
        assert task.start["buttons"]


def test_reading_begins_with_the_hour_that_was_passed_even_when_the_next_is_near():
    for task in all_reading():
        hour, past = task.answer.split(":")
        first = task.steps[0]
        assert first.say.startswith("Short hand first: ")
        assert first.chant == hour
        following = str(int(hour) % 12 + 1)
        if past == "00":
            assert f"points at the {hour}." in first.say
        elif past >= "50":
            assert f"has not reached the {following}. The hour is still {hour}." in first.say
        else:
            assert f"has passed the {hour}." in first.say
        if hour == "12" and past not in {"00", "50", "55"}:
            assert first.say.endswith("The hour is 12.")


def test_then_the_long_hand_is_counted_round_in_fives_and_the_time_is_said():
    for task in all_reading():
        past = int(task.answer.split(":")[1])
        second, last = task.steps[1], task.steps[-1]
        if past in {0, 30}:
            assert second.chant == ("thirty" if past else "o'clock")
        else:
            assert second.chant == ", ".join(str(five) for five in range(5, past + 1, 5))
            assert second.say.endswith(f"count in fives to the {past // 5}.")
        assert [step.answer for step in task.steps[:-1]] == [None] * (len(task.steps) - 1)
        assert last.answer == task.answer
        assert last.chant == task.spoken == in_words(parse_time(task.answer))


def test_the_part_of_the_dial_that_is_spoken_of_is_shown():
    for task in all_reading():
        shows = [step.show for step in task.steps]
        if task.answer.endswith(":00"):
            assert shows == [{}, {}, {"words": True}]
        else:
            assert shows == [{"sector": True}, {"sector": False, "arc": True}, {"words": True}]


@pytest.mark.parametrize(
    ("time", "steps"),
    [
        ("4:00", ["Short hand first: it points at the 4.", "Long hand next: it points at the 12.",
                  "It is four o'clock. We write 4:00."]),
        ("4:15", ["Short hand first: it has passed the 4.",
                  "Long hand next: a quarter of the way round.",
                  "It is quarter past four. We write 4:15."]),
        ("4:30", ["Short hand first: it has passed the 4.",
                  "Long hand next: half way round, at the 6.",
                  "It is half past four. We write 4:30."]),
        ("4:35", ["Short hand first: it has passed the 4.",
                  "Long hand next: count in fives to the 7.",
                  "Count on to the 12: 25 minutes to go.",
                  "It is twenty-five to five. We write 4:35."]),
        ("4:45", ["Short hand first: it has passed the 4.",
                  "Long hand next: a quarter of the way to go.",
                  "It is quarter to five. We write 4:45."]),
        ("12:55", ["Short hand first: it has not reached the 1. The hour is still 12.",
                   "Long hand next: count in fives to the 11.",
                   "Count on to the 12: 5 minutes to go.",
                   "It is five to one. We write 12:55."]),
    ],
)  # fmt: skip
def test_past_and_to_are_worked_in_the_uk_vocabulary(time, steps):
    assert said(reading_at(time, "uk")) == steps


def test_a_mistake_of_past_and_to_is_named_in_the_words_of_the_vocabulary():
    for vocabulary, words in (("us", "Count from the 12"), ("uk", "is it past or to?")):
        task = reading_at("4:10", vocabulary)
        assert words in mistake_made(task, {"answer": "4:50"}).pupil


def test_a_wrong_answer_that_several_rules_lead_to_is_told_as_several():
    mistake = mistake_made(reading_at("4:50"), {"answer": "5:50"})
    assert mistake.rule == "nearest_hour"
    assert mistake.teacher.count(", or ") == 1


def test_where_few_mistakes_are_foreseen_there_are_fewer_choices():
    tasks = make_tasks("time.read_hour", seed=0, count=12, options={"answer": "choice"})
    sizes = {task.answer: len(task.ask["choices"]) for task in tasks}
    assert sizes.pop("12:00") == 2
    assert set(sizes.values()) == {3}


def test_the_long_hand_is_set_first_and_then_the_short_one():
    for task in all_setting():
        dial = dict(task.start["dial"])
        target = parse_time(task.answer) % 720
        hands = [step.show["dial"] for step in task.steps if "dial" in step.show]
        assert [one["minute"] for one in hands] == [target % 60] * 2
        assert hands[0]["hour"] in {dial["hour"], dial["hour"] // 60 * 60 + target % 60}
        assert hands[1]["hour"] == target
        assert said(task)[0].startswith("Long hand first: ")
        assert said(task)[1].startswith("Short hand next: ")


def test_geared_hands_are_never_shown_where_no_clock_could_have_them():
    for task in all_setting(hands="geared"):
        dials = [task.start["dial"], *(s.show["dial"] for s in task.steps if "dial" in s.show)]
        assert all(dial["hour"] % 60 == dial["minute"] for dial in dials)


@pytest.mark.parametrize(
    ("time", "place"),
    [
        ("4:00", "it points straight at the 4."),
        ("12:05", "a little way past the 12."),
        ("4:25", "a little way past the 4."),
        ("12:30", "half way from 12 to 1."),
        ("4:35", "more than half way to the 5."),
        ("12:55", "just before the 1."),
    ],
)
def test_the_short_hand_goes_the_right_way_past_its_number(time, place):
    assert f"Short hand next: {place}" in said(setting_at(time))


def test_a_time_given_as_minutes_to_is_turned_into_minutes_past():
    task = setting_at("12:35", "uk", given="words")
    assert task.prompt.endswith(" at twenty-five to one. Set the clock.")
    assert said(task)[0] == "Twenty-five to one is 35 minutes past twelve."
    assert said(setting_at("12:35", "uk"))[0].startswith("Long hand first")


def test_what_was_not_given_is_shown_at_the_end():
    assert setting_at("4:35").steps[-1].show == {"words": True}
    assert setting_at("4:35", given="words").steps[-1].show == {"digital": True}


def test_hands_are_right_within_a_fingers_tolerance_and_no_further():
    """3.5 degrees of the hour hand are 7 of its minutes."""
    task = setting_at("4:35")
    for off in range(-30, 30):
        dial = {"hour": 275 + off, "minute": 35, "half": "am"}
        assert is_solved(task, facts_of("Clock", {"dial": dial})) is (abs(off) <= 7)


def test_no_foreseen_mistake_is_true_of_hands_within_the_tolerance():
    for hands in ("free", "geared"):
        for task in all_setting(hands=hands):
            target = parse_time(task.answer) % 720
            for off in range(-7, 8):
                dial = {"hour": (target + off) % 720, "minute": target % 60, "half": "am"}
                facts = facts_of("Clock", {"dial": dial})
                assert is_solved(task, facts)
                assert not any(holds(mistake.when, facts) for mistake in task.mistakes)


@pytest.mark.parametrize(
    ("time", "hour", "minute", "rule"),
    [
        ("4:35", 240, 35, "static_hour_hand"),
        ("4:35", 247, 35, "static_hour_hand"),
        ("4:10", 240, 10, "static_hour_hand"),
        ("12:20", 0, 20, "static_hour_hand"),
        ("12:20", 715, 20, "static_hour_hand"),
        ("4:05", 240, 5, None),
        ("4:05", 236, 5, None),
        ("4:35", 260, 35, None),
        ("4:35", 420, 20, "set_swapped"),
        ("4:35", 440, 20, "set_swapped"),
        ("4:00", 0, 20, "set_swapped"),
        ("4:00", 716, 20, "set_swapped"),
        ("4:00", 20, 20, "set_swapped"),
        ("4:35", 335, 35, "set_next_hour"),
        ("12:35", 95, 35, "set_next_hour"),
        ("4:35", 265, 25, "set_mirror"),
        ("4:10", 290, 50, "set_mirror"),
        ("4:05", 265, 25, "set_numeral"),
        ("4:35", 120, 35, None),
    ],
)
def test_wrongly_set_hands_suggest_what_may_have_happened(time, hour, minute, rule):
    task = setting_at(time)
    dial = {"hour": hour, "minute": minute, "half": "am"}
    mistake = mistake_made(task, facts_of("Clock", {"dial": dial}))
    assert (mistake.rule if mistake else None) == rule


def test_geared_hands_cannot_leave_the_hour_hand_behind():
    rules = {mistake.rule for task in all_setting(hands="geared") for mistake in task.mistakes}
    assert "static_hour_hand" not in rules
    assert "set_swapped" in rules


def test_hands_to_be_set_start_elsewhere_and_not_in_a_mistake():
    for hands in ("free", "geared"):
        for task in all_setting(hands=hands):
            dial, target = task.start["dial"], parse_time(task.answer) % 720
            assert dial["hour"] // 60 != target // 60
            assert dial["minute"] != target % 60
            assert mistake_made(task, facts_of("Clock", task.start)) is None


@pytest.mark.parametrize("step", [15, 30, 60])
def test_only_times_of_the_step_are_set(step):
    assert {int(task.answer[-2:]) for task in all_setting(step=step)} == set(range(0, 60, step))


@pytest.mark.parametrize("by", range(5, 65, 5))
@pytest.mark.parametrize("skill", ["time.later", "time.earlier"])
@pytest.mark.parametrize("answer", ["keypad", "hands"])
def test_later_and_earlier_agree_with_the_calendar(skill, by, answer):
    sign = 1 if skill == "time.later" else -1
    for task in make_tasks(skill, seed=0, count=144, options={"by": by, "answer": answer}):
        start = task.start["dial"]
        hours = start["hour"] // 60 + (12 if start["half"] == "pm" else 0)
        begin = dt.datetime(2026, 3, 2, hours, start["minute"], tzinfo=dt.UTC)
        end = begin + sign * dt.timedelta(minutes=by)
        assert task.answer == f"{end:%I:%M}".lstrip("0")
        shown = [step.show["dial"] for step in task.steps if "dial" in step.show]
        assert shown[0] == start
        moments = [begin + sign * dt.timedelta(minutes=m) for m in range(0, by + 5, 5)]
        assert [(dial["minute"], dial["half"]) for dial in shown] == [
            (moment.minute, f"{moment:%p}".lower()) for moment in moments
        ]
        counted = [step.chant for step in task.steps[1:-1]]
        assert counted == [str(five) for five in range(5, by + 1, 5)]
        assert re.search(rf"\b{by} minutes\b", task.prompt)


def test_a_new_hour_is_said_when_the_long_hand_brings_it():
    for skill in ("time.later", "time.earlier"):
        for task in make_tasks(skill, seed=0, count=144, options={"by": 60}):
            new = [step for step in task.steps if "Now the hour is" in step.say]
            assert len(new) == 1
            at = 0 if skill == "time.later" else 55
            assert new[0].show["dial"]["minute"] == at
            hour = new[0].show["dial"]["hour"] // 60 or 12
            assert new[0].say.endswith(f"Now the hour is {hour}.")


def test_the_hour_that_was_not_moved_is_foreseen_when_typed_and_impossible_with_gears():
    for answer, foreseen in (("keypad", True), ("hands", False)):
        tasks = make_tasks("time.later", seed=0, count=144, options={"by": 40, "answer": answer})
        rules = {mistake.rule for task in tasks for mistake in task.mistakes}
        assert ("hour_not_moved" in rules) is foreseen
        assert {"went_earlier", "counted_the_start"} <= rules


def test_the_town_is_up_when_something_happens():
    for task in all_reading():
        dial = task.start["dial"]
        minute = dial["hour"] + (720 if dial["half"] == "pm" else 0)
        assert 7 * 60 <= minute < 19 * 60
        assert in_digits(minute) == task.answer


READ = ("time.read_hour", "time.read_half", "time.read_quarter", "time.read_five_minutes")
EVERY_WAY = [
    *((skill, {}) for skill in READ),
    *(("time.set_hands", {"given": given}) for given in ("digits", "words")),
    *((skill, {"by": by}) for skill in ("time.later", "time.earlier") for by in (5, 35, 60)),
]


@pytest.mark.parametrize("vocabulary", ["us", "uk"])
@pytest.mark.parametrize(("skill", "options"), EVERY_WAY)
def test_every_step_is_true_of_the_hands(skill, options, vocabulary):
    """Of each skill all times that it has: 12, 24 or 144."""
    every = len(GENERATORS[skill].items({"step": 5}))
    tasks = make_tasks(skill, seed=0, count=every, vocabulary=vocabulary, options=options, twins=0)
    for task in tasks:
        oracle = ClockOracle(task.start["dial"], vocabulary)
        for step in task.steps:
            oracle.follow(step)
        assert len(oracle.done) == len(task.steps) >= 2


@pytest.mark.parametrize(("skill", "options"), EVERY_WAY)
def test_the_procedure_of_a_mistake_leads_to_its_answer(skill, options):
    every = len(GENERATORS[skill].items({"step": 5}))
    hands = {"answer": "hands"} if "by" in options else {}
    for more in ({}, hands):
        for task in make_tasks(skill, seed=0, count=every, options={**options, **more}, twins=0):
            for mistake in task.mistakes:
                wrong = mistake.numbers["wrong"]
                assert wrong_of(mistake.numbers) == wrong, (task.prompt, mistake.rule)
                if mistake.answer is not None:
                    assert mistake.answer == f"{wrong // 60 or 12}:{wrong % 60:02}"
                dial = wrong
                if isinstance(wrong, int):
                    dial = {"hour": wrong, "minute": wrong % 60, "half": "am"}
                facts = {**facts_of("Clock", {"dial": dial}), "answer": mistake.answer}
                assert holds(mistake.when, facts), (task.prompt, mistake.rule)


@pytest.mark.parametrize(
    "change",
    [
        {"numeral": 5},
        {"place": "on"},
        {"to": 30},
        {"counted": [5, 10, 15, 20, 25, 30]},
        {"minutes": 30},
        {"hour": 5},
    ],
    ids=str,
)
def test_the_oracle_refuses_what_is_not_so(change):
    [task] = make_tasks("time.read_five_minutes", seed=0, count=1, instead=["4:35"], twins=0)
    changed = 0
    for step in task.steps:
        if step.numbers.keys() >= change.keys():
            wrong = replace(step, numbers={**step.numbers, **change})
            with pytest.raises(AssertionError):
                ClockOracle(task.start["dial"], "us").follow(wrong)
            changed += 1
        ClockOracle(task.start["dial"], "us").follow(step)
        with pytest.raises(AssertionError):
            ClockOracle(task.start["dial"], "us").follow(replace(step, say="It is 11 past 1."))
    assert changed


def test_times_of_a_kind_share_the_half_that_the_long_hand_is_in():
    kinds = {
        time: GENERATORS["time.read_five_minutes"].kind(parse_time(time) % 720) for time in CASES
    }
    assert kinds == CASES


def test_mixed_times_change_their_kind_from_one_to_the_next():
    kind = GENERATORS["time.read_five_minutes"].kind
    for seed in range(50):
        tasks = make_tasks(
            "time.read_five_minutes", seed=seed, count=5, options={"order": "mixed"}, twins=0
        )
        kinds = [kind(parse_time(task.answer) % 720) for task in tasks]
        assert all(one != other for one, other in pairwise(kinds))


def test_twins_of_a_time_are_of_its_kind():
    kind = GENERATORS["time.read_five_minutes"].kind
    for task in make_tasks("time.read_five_minutes", seed=5, count=12):
        kinds = {kind(parse_time(one.answer) % 720) for one in (task, *task.twins)}
        assert len(kinds) == 1
        assert len({one.answer for one in (task, *task.twins)}) == 4


def test_easy_times_come_first_where_that_is_wanted():
    """Hour, half hour, quarter hour, five minutes: Boulton-Lewis, Wilss and Mutch, 1997."""
    rank = {0: 0, 30: 1, 15: 2, 45: 2}
    for seed in range(50):
        tasks = make_tasks(
            "time.read_five_minutes", seed=seed, count=5, options={"order": "easy first"}, twins=0
        )
        ranks = [rank.get(int(task.answer[-2:]), 3) for task in tasks]
        assert ranks == sorted(ranks)
