"""What holds for the tasks of every skill, whatever it is about."""

from __future__ import annotations

import json
import re
from itertools import pairwise

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS, options_at
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.strands import STRANDS
from manipulatives.lessons.tasks.facts import facts_by_manipulative
from manipulatives.lessons.tasks.make import GENERATORS, make_tasks
from manipulatives.lessons.tasks.playing import facts_of, is_solved, mistake_made, play_steps
from manipulatives.lessons.tasks.predicates import holds, spell_out
from manipulatives.lessons.tasks.task import Task
from support.seeds import SEEDS

MOST_WORDS = 10


@pytest.fixture(params=SKILLS, scope="module")
def many(request):
    """A skill's name, and a task of each of many seeds."""
    skill = request.param
    return skill, [make_tasks(skill, seed=seed, count=1, twins=0)[0] for seed in range(SEEDS)]


def test_many_seeds_make_tasks_whose_steps_end_in_the_goal(many):
    _, tasks = many
    for task in tasks:
        end = play_steps(task)
        assert is_solved(task, end), (task.prompt, task.answer, spell_out(task.goal))
        assert not is_solved(task, facts_of(task.manipulative, task.start)), task.prompt
        for mistake in task.mistakes:
            assert not holds(mistake.when, end), (task.prompt, mistake.rule)


def test_the_answer_meets_the_goal_and_a_named_mistake_is_found(many):
    _, tasks = many
    for task in tasks:
        if task.ask["by"] == "manipulative":
            continue
        assert is_solved(task, {"answer": task.answer})
        if task.ask["by"] == "choice":
            assert task.answer in task.ask["choices"]
        for mistake in task.mistakes:
            assert mistake_made(task, {"answer": mistake.answer}) == mistake, task.prompt


def test_pupils_read_at_most_ten_words_in_a_sentence(many):
    _, tasks = many
    for task in tasks:
        for text in (task.prompt, *task.parts, *(mistake.pupil for mistake in task.mistakes)):
            for sentence in re.split(r"(?<=[.?!]) ", text):
                assert 1 <= len(sentence.split()) <= MOST_WORDS, sentence
        for step in task.steps:
            for sentence in re.split(r"(?<=[.?!:]) ", step.say):
                # The signs of a sum are read, but they are no words.
                words = [word for word in sentence.split() if any(map(str.isalnum, word))]
                assert len(words) <= MOST_WORDS, sentence


def test_a_task_comes_back_from_json_to_the_byte(many):
    skill, _ = many
    for seed in range(10):
        for task in make_tasks(skill, seed=seed, count=2):
            text = json.dumps(task.to_data())
            again = Task.from_data(json.loads(text))
            assert again == task
            assert json.dumps(again.to_data()) == text


def test_a_round_repeats_no_task_and_every_task_has_its_twins(many):
    skill, _ = many
    count = SKILLS[skill].tasks
    for seed in range(20):
        tasks = make_tasks(skill, seed=seed, count=count)
        questions = [question(task) for task in tasks]
        assert len({*questions}) == count
        for task in tasks:
            twins = [question(twin) for twin in task.twins]
            assert len(set(twins)) == len(twins)
            assert question(task) not in twins
            assert len(twins) == 3 or family(skill) <= 3
            assert all(twin.twins == () for twin in task.twins)


def question(task):
    """What is asked: for a picture it is what the picture shows."""
    return json.dumps([task.prompt, task.start, task.goal], sort_keys=True)


def family(skill):
    """How many tasks there are of a kind: for a few skills fewer than four."""
    items = GENERATORS[skill].items({**options_at(skill, {}, 0), "currency": "usd"})
    kinds = [GENERATORS[skill].kind(item) for item in items[:200]]
    return min(kinds.count(kind) for kind in set(kinds)) if len(items) <= 200 else len(items)


@pytest.mark.parametrize("skill", SKILLS)
def test_easy_ones_come_first_where_that_is_wanted(skill):
    for seed in range(5):
        tasks = make_tasks(
            skill, seed=seed, count=SKILLS[skill].tasks, options={"order": "easy first"}, twins=0
        )
        assert len({question(task) for task in tasks}) == SKILLS[skill].tasks


@pytest.mark.parametrize("skill", SKILLS)
def test_neighbours_are_of_different_kinds_where_that_is_wanted(skill):
    generator = GENERATORS[skill]
    items = generator.items({**options_at(skill, {}, 0), "currency": "usd"})
    kinds = {
        generator.kind(items[place]) for place in range(0, len(items), max(1, len(items) // 300))
    }
    wish = {"seed": 3, "count": 4, "options": {"order": "mixed"}, "twins": 0}
    if len(kinds) == 1:
        with pytest.raises(LessonProblem, match=r"^order: "):
            make_tasks(skill, **wish)
    else:
        tasks = make_tasks(skill, **wish)
        assert all(question(one) != question(other) for one, other in pairwise(tasks))


def test_builds_on_names_skills_and_never_goes_round():
    done = set()
    for skill in SKILLS.values():
        assert set(skill.builds_on) <= set(SKILLS), skill.id
    left = dict(SKILLS)
    while left:
        ready = [name for name, skill in left.items() if set(skill.builds_on) <= done]
        assert ready, sorted(left)
        done.update(ready)
        for name in ready:
            del left[name]


def test_there_are_about_sixty_skills_or_more_over_all_strands_and_manipulatives():
    assert len(SKILLS) >= 60
    strands = {skill.strand for skill in SKILLS.values()}
    manipulatives = {skill.manipulative for skill in SKILLS.values()}
    assert strands == set(STRANDS)
    assert manipulatives == set(facts_by_manipulative())
    assert len(strands) >= 7
    assert len(manipulatives) >= 6
