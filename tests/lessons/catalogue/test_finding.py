from __future__ import annotations

import pytest

from manipulatives.lessons.catalogue.finding import AGES, skills_found, strands
from manipulatives.lessons.catalogue.skills import SKILLS


def ids(*given, **named):
    return [skill.id for skill in skills_found(*given, **named)]


def test_without_a_wish_everything_is_found():
    assert ids() == [*SKILLS]


def test_all_words_have_to_be_there_in_any_order():
    assert ids("half HOUR") == ids("hour half") == ["time.read_half"]
    assert ids("no such thing") == []


@pytest.mark.parametrize("text", ["2.MD.C.7", "2.MD.7", "CCSS 2.MD.C.7"])
def test_a_standard_is_found_in_any_common_spelling(text):
    wanted = [one for one, skill in SKILLS.items() if "CCSS 2.MD.C.7" in skill.standards]
    assert wanted
    assert ids(text) == wanted


def test_a_standard_of_england_is_found_by_its_place():
    assert set(ids("Y1 measurement 6")) == {
        one for one, skill in SKILLS.items() if "England Y1 measurement 6" in skill.standards
    }


@pytest.mark.parametrize("strand", strands().values())
def test_a_strand_holds_its_own_skills(strand):
    assert ids(strand=strand) == [one for one in SKILLS if one.startswith(f"{strand}.")]


@pytest.mark.parametrize("age", AGES.values())
def test_every_age_has_something_and_no_age_has_all(age):
    assert 0 < len(ids(age=age)) < len(SKILLS)


def test_every_skill_is_for_some_age():
    assert {one for age in AGES.values() for one in ids(age=age)} == {*SKILLS}
