"""What the folder of every strand has, so that the kit finds its skills, tasks and mistakes."""

from __future__ import annotations

import tomllib
from importlib import import_module

import pytest

from manipulatives.lessons.strands import FOLDER, STRANDS
from manipulatives.lessons.strands.rules import RULES
from manipulatives.lessons.tasks.make import GENERATORS

PACKAGE = "manipulatives.lessons.strands"


@pytest.mark.parametrize("strand", STRANDS)
def test_every_skill_of_a_strand_has_a_generator_there_and_the_other_way_round(strand):
    skills = tomllib.loads((FOLDER / strand / "skills.toml").read_text("utf-8"))
    assert set(import_module(f"{PACKAGE}.{strand}.tasks").GENERATORS) == set(skills)
    assert set(skills) <= set(GENERATORS)


@pytest.mark.parametrize(
    "path", sorted(FOLDER.glob("*/mistakes.toml")), ids=lambda p: p.parent.name
)
def test_every_sentence_about_a_mistake_belongs_to_a_rule_of_its_strand(path):
    ids = [rule.id for rule in import_module(f"{PACKAGE}.{path.parent.name}.mistakes").RULES]
    assert sorted(ids) == sorted(tomllib.loads(path.read_text("utf-8")))
    assert set(ids) <= set(RULES)


def test_no_folder_that_has_skills_is_left_out_of_the_list():
    assert {path.parent.name for path in FOLDER.glob("*/skills.toml")} == set(STRANDS)
