"""Every standard of the areas is skills_by_standard by a skill, or it is said why not."""

from __future__ import annotations

import pytest

from manipulatives.lessons.catalogue.coverage import coverage_table, skills_by_standard
from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.catalogue.standards import STANDARDS, standards_like
from manipulatives.lessons.problem import LessonProblem

# The codes of the Common Core in these areas, by cluster (NGA Center and CCSSO, 2010).
COMMON_CORE = {
    "K.CC": "A.1 A.2 A.3 B.4a B.4b B.4c B.5 C.6 C.7",
    "K.OA": "A.1 A.2 A.3 A.4 A.5",
    "K.NBT": "A.1",
    "K.G": "A.1 A.2 A.3 B.4 B.5 B.6",
    "1.OA": "A.1 A.2 B.3 B.4 C.5 C.6 D.7 D.8",
    "1.NBT": "A.1 B.2a B.2b B.2c B.3 C.4 C.5 C.6",
    "1.MD": "B.3",
    "1.G": "A.1 A.2 A.3",
    "2.OA": "A.1 B.2 C.3 C.4",
    "2.NBT": "A.1a A.1b A.2 A.3 A.4 B.5 B.6 B.7 B.8 B.9",
    "2.MD": "C.7 C.8",
    "2.G": "A.1 A.2 A.3",
}
# How many statutory statements an area of England's programmes of study has.
ENGLAND = {
    "Y1 number": 5,
    "Y1 addition and subtraction": 4,
    "Y1 multiplication": 1,
    "Y1 fractions": 2,
    "Y1 measurement": 6,
    "Y1 shape": 2,
    "Y1 position": 1,
    "Y2 number": 6,
    "Y2 addition and subtraction": 5,
    "Y2 multiplication": 4,
    "Y2 fractions": 2,
    "Y2 measurement": 8,
    "Y2 shape": 4,
    "Y2 position": 2,
}
# Of later years, met in passing.
LATER = {"CCSS 3.MD.A.1"}


def test_the_table_has_every_standard_of_the_areas():
    common = [
        f"CCSS {area}.{code}" for area, codes in COMMON_CORE.items() for code in codes.split()
    ]
    england = [
        f"England {area} {number}"
        for area, many in ENGLAND.items()
        for number in range(1, many + 1)
    ]
    assert list(STANDARDS) == [*common, *england]


@pytest.mark.parametrize("standard", STANDARDS)
def test_a_standard_is_served_or_the_reason_is_listed(standard):
    assert bool(skills_by_standard()[standard]) != bool(STANDARDS[standard].why_not)


def test_skills_name_standards_that_there_are():
    named = {standard for skill in SKILLS.values() for standard in skill.standards}
    assert named - set(STANDARDS) == LATER & named


def test_the_table_names_each_standard_once():
    lines = coverage_table().splitlines()[2:]
    assert [line.split(" | ")[0].strip("| ") for line in lines] == list(STANDARDS)
    assert all(("`" in line) != (" none: " in line) for line in lines)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("2.NBT.A.1", ["CCSS 2.NBT.A.1a", "CCSS 2.NBT.A.1b"]),
        ("2.nbt.1b", ["CCSS 2.NBT.A.1b"]),
        ("CCSS 2.NBT.A.1.b", ["CCSS 2.NBT.A.1b"]),
        ("K.OA.4", ["CCSS K.OA.A.4"]),
        ("y2 position", ["England Y2 position 1", "England Y2 position 2"]),
        ("2.MD", ["CCSS 2.MD.C.7", "CCSS 2.MD.C.8"]),
    ],
)
def test_a_standard_is_found_however_it_is_spelt(text, found):
    assert standards_like(text) == found


@pytest.mark.parametrize("text", ["2.MD.99", "Latin"])
def test_an_unknown_standard_is_reported(text):
    with pytest.raises(LessonProblem, match=r"there is no standard like"):
        standards_like(text)
