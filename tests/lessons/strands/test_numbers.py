"""What holds for the numbers of all steps and mistakes, whichever the strand."""

from __future__ import annotations

import re
from importlib import import_module
from importlib.util import find_spec
from itertools import pairwise

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.tasks.make import make_tasks
from support.seeds import SEEDS

PACKAGE = "manipulatives.lessons.strands"
# Addition and subtraction share the modules that say their steps.
SHARED = ("sums", "stories", "stories.steps")


def listed_by(strand):
    """The acts and fields that a strand lists in the docstring of its steps, or of its package."""
    modules = [strand, f"{strand}.steps"]
    if strand in ("addition", "subtraction"):
        modules += SHARED
    docstrings = [
        import_module(f"{PACKAGE}.{module}").__doc__ or ""
        for module in modules
        if find_spec(f"{PACKAGE}.{module}")
    ]
    return set(re.findall(r"`([a-z_ ]+)`", " ".join(docstrings)))


@pytest.mark.parametrize("skill", SKILLS)
def test_a_strand_lists_the_acts_and_fields_of_its_steps(skill):
    listed = listed_by(SKILLS[skill].strand)
    for seed in range(SEEDS // 5):
        for task in make_tasks(skill, seed=seed, count=1, twins=0):
            for numbers in filter(None, (step.numbers for step in task.steps)):
                assert {numbers["act"], *numbers} - {"act"} <= listed, numbers


@pytest.mark.parametrize("skill", SKILLS)
def test_every_count_goes_by_its_step_from_where_it_starts_to_where_it_ends(skill):
    for seed in range(SEEDS // 5):
        for task in make_tasks(skill, seed=seed, count=1, twins=0):
            for numbers in (step.numbers for step in task.steps):
                if numbers.get("act") == "count" and "to" in numbers:
                    counted, by = numbers["counted"], numbers["by"]
                    assert counted[-1] == numbers["to"]
                    assert counted[0] - numbers["from"] in (0, by)
                    assert all(after - before == by for before, after in pairwise(counted))


@pytest.mark.parametrize("skill", SKILLS)
def test_a_mistake_with_an_answer_says_the_act_and_what_comes_out(skill):
    for seed in range(SEEDS // 5):
        for task in make_tasks(skill, seed=seed, count=1, twins=0):
            for numbers in (mistake.numbers for mistake in task.mistakes if mistake.answer):
                assert not numbers or numbers.keys() >= {"act", "wrong"}
