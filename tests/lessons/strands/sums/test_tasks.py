"""What is asked, said and shown of sums and stories is right; worked out again by oracles."""

from __future__ import annotations

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.strands.sums.columns.methods import METHODS
from support.seeds import SEEDS
from support.sum_tasks import (
    check,
    check_mistakes,
    check_steps,
    each_of_many_seeds,
    made,
    of_many_seeds,
    solve,
    way_name,
    ways,
)

WAYS = [*ways("addition"), *ways("subtraction")]
ALL = list(dict.fromkeys(skill for skill, _ in WAYS))
WRITTEN = [skill for skill in ALL if SKILLS[skill].manipulative == "ColumnBoard"]
STORIES = [skill for skill in ALL if "stories" in skill]
# The ways of hopping: by ones, or landing on a full ten.
HOPPING = [("counting on", "us"), ("bridging ten", "uk")]


@pytest.mark.parametrize("vocabulary", ["us", "uk"])
@pytest.mark.parametrize("skill", ALL)
def test_tasks_of_many_seeds_are_sound(skill, vocabulary):
    tasks = of_many_seeds(skill, vocabulary)
    assert len(tasks) == SEEDS
    for task in tasks:
        check(task)
        assert task.skill == skill
        assert task.manipulative == SKILLS[skill].manipulative


@pytest.mark.parametrize("skill", [skill for skill in ALL if skill not in STORIES])
def test_the_answer_is_what_trying_finds(skill):
    for task in of_many_seeds(skill):
        assert task.answer == solve(task.prompt)


@pytest.mark.parametrize(("method", "vocabulary"), HOPPING)
@pytest.mark.parametrize("skill", [skill for skill in ALL if skill not in WRITTEN])
def test_every_step_with_hops_and_blocks_is_true(skill, method, vocabulary):
    for task in each_of_many_seeds(skill, vocabulary, method):
        check_steps(task, vocabulary, method)


@pytest.mark.parametrize("vocabulary", ["us", "uk"])
@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("skill", WRITTEN)
def test_every_step_of_written_sums_is_true(skill, method, vocabulary):
    for task in each_of_many_seeds(skill, vocabulary, method):
        check_steps(task, vocabulary, method)


@pytest.mark.parametrize("skill", ALL)
def test_the_procedure_of_a_mistake_leads_to_its_answer(skill):
    for task in of_many_seeds(skill):
        check_mistakes(task)


@pytest.mark.parametrize("way", WAYS, ids=way_name)
def test_steps_and_mistakes_are_true_with_every_option(way):
    skill, options = way
    for task in made(skill, options, seed=11, count=4):
        check_steps(task)
        check_mistakes(task)
