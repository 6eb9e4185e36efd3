from __future__ import annotations

import functools
import json
import os
import subprocess
import sys
from collections import Counter
from itertools import pairwise, product

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks import make
from manipulatives.lessons.tasks.make import check_count
from manipulatives.lessons.tasks.playing import facts_of, is_solved, mistake_made, play_steps
from manipulatives.lessons.tasks.predicates import holds, spell_out
from manipulatives.lessons.tasks.task import Task
from support.evenness import chi_squared, too_uneven

# Twins have tests of their own.
make_tasks = functools.partial(make.make_tasks, twins=0)
TIME = [skill.id for skill in SKILLS.values() if skill.strand == "time"]
# Every skill of time with every combination of its options, in both vocabularies; of the many
# numbers of minutes to move by the least, one that often brings a new hour, and the most. Other
# strands have tests of their own, and all skills meet in test_all_skills.py.
WAYS = [
    (skill.id, vocabulary, options)
    for skill in map(SKILLS.get, TIME)
    for vocabulary in ("us", "uk")
    for values in product(*skill.options.values())
    if (options := dict(zip(skill.options, values, strict=True))).get("by", 5) in {5, 35, 60}
]

# What was first made with seed 90213.
KEPT = {
    "time.read_hour": "12:00 7:00 2:00 8:00",
    "time.read_half": "10:30 6:30 7:30 11:30",
    "time.read_quarter": "3:45 4:45 10:45 8:45",
    "time.read_five_minutes": "2:00 9:25 8:05 7:35",
    "time.set_hands": "1:35 10:15 11:45 11:10",
    "time.later": "4:30 7:30 6:50 5:25",
    "time.earlier": "2:40 8:30 12:30 3:05",
}


def way_name(way):
    skill, vocabulary, options = way
    return " ".join([skill, vocabulary, *(f"{name}={value}" for name, value in options.items())])


@pytest.fixture(params=WAYS, ids=way_name, scope="module")
def tasks(request):
    """Rounds of many seeds, the first with everything that there is to ask."""
    skill, vocabulary, options = request.param

    def make(seed, count):
        return make_tasks(skill, seed=seed, count=count, vocabulary=vocabulary, options=options)

    every = 12 if skill.startswith("time.read_h") else 24 if "quarter" in skill else 144
    every = 720 // options["step"] if "step" in options else every
    return [*make(0, every), *(task for seed in range(1, 11) for task in make(seed, 5))]


def test_playing_the_steps_ends_in_the_goal(tasks):
    for task in tasks:
        assert is_solved(task, play_steps(task)), (task.answer, spell_out(task.goal))


def test_the_start_is_not_the_goal(tasks):
    for task in tasks:
        assert not is_solved(task, facts_of(task.manipulative, task.start))


def test_no_foreseen_mistake_is_true_of_the_right_answer(tasks):
    for task in tasks:
        solved = play_steps(task)
        for mistake in task.mistakes:
            assert not holds(mistake.when, solved), (task.answer, mistake.rule)


def test_the_answer_meets_the_goal_and_a_named_mistake_is_found(tasks):
    for task in tasks:
        if task.ask["by"] == "manipulative":
            continue
        assert is_solved(task, {"answer": task.answer})
        for mistake in task.mistakes:
            assert mistake_made(task, {"answer": mistake.answer}) == mistake


def test_choices_differ_and_hold_the_answer_and_foreseen_mistakes_only(tasks):
    for task in tasks:
        if task.ask["by"] != "choice":
            continue
        choices = task.ask["choices"]
        foreseen = {mistake.answer for mistake in task.mistakes}
        assert len(set(choices)) == len(choices)
        assert task.answer in choices
        assert {*choices} - {task.answer} <= foreseen
        assert len(choices) == min(4, 1 + len(foreseen))


def test_pupils_read_at_most_ten_words_at_a_time(tasks):
    for task in tasks:
        sentences = [task.prompt, task.spoken, *(mistake.pupil for mistake in task.mistakes)]
        for step in task.steps:
            sentences += [sentence for sentence in step.say.split(". ") if sentence]
        for sentence in sentences:
            assert 1 <= len(sentence.split()) <= 10, sentence
        assert task.prompt.rstrip()[-1] in ".?"


def test_no_two_tasks_of_a_round_ask_the_same(tasks):
    def asked(task):
        return json.dumps([task.goal, task.start["dial"] if task.kind != "set" else 0])

    whole = len(tasks) - 50
    assert len({asked(task) for task in tasks[:whole]}) == whole
    for first in range(whole, len(tasks), 5):
        assert len({asked(task) for task in tasks[first : first + 5]}) == 5


def test_neighbouring_stories_have_different_scenes(tasks):
    whole = len(tasks) - 50
    scenes = [" ".join(task.prompt.split()[:2]) for task in tasks[whole : whole + 5]]
    assert len(set(scenes)) >= 2
    prompts = [task.prompt for task in tasks[whole : whole + 5]]
    assert all(one != other for one, other in pairwise(prompts))


def test_a_task_comes_back_from_json_to_the_byte(tasks):
    for task in tasks:
        text = json.dumps(task.to_data())
        again = Task.from_data(json.loads(text))
        assert again == task
        assert json.dumps(again.to_data()) == text


def test_the_same_seed_gives_the_same_bytes_in_another_process():
    code = (
        "import json; from manipulatives.lessons.tasks.make import make_tasks; "
        "from manipulatives.lessons.catalogue.skills import SKILLS; "
        "print(json.dumps([task.to_data() for skill in SKILLS for seed in range(5) "
        "for task in make_tasks(skill, seed=seed, count=3, vocabulary='uk')]))"
    )
    texts = {
        subprocess.run(
            [sys.executable, "-c", code],
            env={**os.environ, "PYTHONHASHSEED": hash_seed},
            capture_output=True,
            check=True,
        ).stdout
        for hash_seed in ("0", "1", "20260302")
    }
    assert len(texts) == 1
    assert len(json.loads(texts.pop())) == 5 * 3 * len(SKILLS)


@pytest.mark.parametrize(("skill", "answers"), KEPT.items(), ids=KEPT)
def test_the_tasks_of_a_seed_never_change(skill, answers):
    """Printed sheets lie in drawers: a change here gives every saved lesson other numbers."""
    asked = [task.answer for task in make_tasks(skill, seed=90213, count=4)]
    assert asked == answers.split()


def test_more_tasks_only_add_to_fewer():
    """Twins are not asked in the round, so that they depend on all of it."""
    for skill in SKILLS:
        most = len(make_tasks(skill, seed=7, count=SKILLS[skill].tasks))
        more, fewer = (make_tasks(skill, seed=7, count=many) for many in (most, most - 2))
        assert more[: most - 2] == fewer


def test_neither_vocabulary_nor_the_way_of_answering_changes_what_is_asked():
    for skill in TIME:
        us = make_tasks(skill, seed=7, count=10)
        uk = make_tasks(skill, seed=7, count=10, vocabulary="uk")
        assert [task.answer for task in us] == [task.answer for task in uk]
        if "answer" in SKILLS[skill].options:
            other = {"answer": SKILLS[skill].options["answer"][1]}
            others = make_tasks(skill, seed=7, count=10, options=other)
            assert [task.answer for task in us] == [task.answer for task in others]


@pytest.mark.parametrize(
    ("skill", "options", "most"),
    [
        ("time.read_hour", {}, 12),
        ("time.read_half", {}, 12),
        ("time.read_quarter", {}, 24),
        ("time.read_five_minutes", {}, 144),
        ("time.set_hands", {}, 144),
        ("time.set_hands", {"step": 15}, 48),
        ("time.set_hands", {"step": 30}, 24),
        ("time.set_hands", {"step": 60}, 12),
        ("time.later", {"by": 60}, 144),
        ("time.earlier", {}, 144),
    ],
)
def test_more_tasks_than_exist_are_refused(skill, options, most):
    """A dial has 144 five-minute times: 12 hours of 12."""
    assert len(make_tasks(skill, seed=1, count=most, options=options)) == most
    says = f"^{skill} has only {most} different tasks with these options, not {most + 1}; ask for "
    with pytest.raises(LessonProblem, match=says):
        make_tasks(skill, seed=1, count=most + 1, options=options)


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        ({"skill": "time.read_year"}, "there is no skill 'time.read_year'"),
        ({"seed": -1}, "seed: -1 is not allowed"),
        ({"seed": "90213"}, "seed: '90213' is not allowed"),
        ({"count": -1}, "count: -1 is not allowed"),
        ({"count": 2.0}, "count: 2.0 is not allowed"),
        ({"options": {"answer": "voice"}}, "answer: 'voice' is not allowed"),
        ({"vocabulary": "en"}, 'The vocabulary is "us" or "uk"'),
    ],
)
def test_a_request_that_cannot_be_met_is_refused(asked, says):
    with pytest.raises(ValueError, match=f"^{says}"):
        make_tasks(**{"skill": "time.read_hour", "seed": 1, "count": 1, **asked})


def test_no_task_may_be_asked_for():
    assert make_tasks("time.read_hour", seed=1, count=0) == []
    assert check_count("time.read_hour", 0) == 0


CLOCK = [f"{hour}:{past:02}" for hour in range(1, 13) for past in range(0, 60, 5)]


@pytest.mark.parametrize(
    ("skill", "options", "cells"),
    [
        ("time.read_hour", {}, [time for time in CLOCK if time.endswith(":00")]),
        ("time.read_half", {}, [time for time in CLOCK if time.endswith(":30")]),
        ("time.read_quarter", {}, [time for time in CLOCK if time.endswith((":15", ":45"))]),
        ("time.read_five_minutes", {}, CLOCK),
        ("time.set_hands", {}, CLOCK),
        ("time.later", {"by": 35}, CLOCK),
        ("time.earlier", {"by": 35}, CLOCK),
    ],
)
def test_every_time_is_as_likely_as_the_others(skill, options, cells):
    seeds = 400 if skill == "time.set_hands" else 600
    counts = Counter(
        task.answer
        for seed in range(seeds)
        for task in make_tasks(skill, seed=seed, count=3, options=options)
    )
    assert chi_squared(counts, cells) < too_uneven(cells)


def test_the_right_choice_stands_anywhere():
    places = Counter(
        task.ask["choices"].index(task.answer)
        for seed in range(400)
        for task in make_tasks(
            "time.read_quarter", seed=seed, count=3, options={"answer": "choice"}
        )
    )
    assert chi_squared(places, range(4)) < too_uneven(range(4))


def test_the_check_of_evenness_can_fail():
    fair = Counter(dict.fromkeys(CLOCK, 12))
    assert chi_squared(fair, CLOCK) == 0
    late = Counter(
        task.answer
        for seed in range(600)
        for task in make_tasks("time.read_five_minutes", seed=seed, count=3)
        if not task.answer.startswith("12:")
    )
    assert chi_squared(late, CLOCK) > too_uneven(CLOCK)


def test_the_bound_of_evenness_agrees_with_printed_tables():
    """Chi-squared of 23 and 143 degrees: 56.0 to 58.0 and 211 to 213 at one in ten thousand."""
    assert 53 < too_uneven(range(24)) < 61
    assert 205 < too_uneven(range(144)) < 215
