"""Two hundred lessons of all skills, laid out on both papers: nothing overlaps, nothing is cut.

This looks at the drawings of the pages. That a PDF has everything where its drawing has it is
shown for some of them in `test_sheet_on_paper.py`.
"""

from __future__ import annotations

import itertools
import random

import pytest

from manipulatives.drawings.shapes import MM_PER_POINT, Box, Drawing, Text
from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.settings import ClassSettings, settled
from manipulatives.lessons.strands.sums.columns.methods import METHODS
from manipulatives.outputs.sheet.layout.paper import PAPERS
from manipulatives.outputs.sheet.printed_sheet import KINDS
from manipulatives.outputs.sheet.rounds import tasks_by_round
from manipulatives.outputs.sheet.script import script_pages
from manipulatives.outputs.sheet.sheet import pages_of
from support.paper import box_of, crossing, inside, some_lessons

# Half an inch, which is what is commonly kept free.
LEAST_MARGIN = 12.7
APART = ("box", "choice", "space", "sheet", "mat", "ring")
HOLDING = ("box", "choice", "cell")
LESSONS = 200
PARTS = 10


def told(page, paper, least):
    """Everything that is wrong on a page."""
    boxes = [box_of(shape) for shape in page.shapes]
    free = LEAST_MARGIN, LEAST_MARGIN, paper.width - LEAST_MARGIN, paper.height - LEAST_MARGIN
    wrong = [
        f"in the margin: {s}"
        for s, b in zip(page.shapes, boxes, strict=True)
        if not inside(b, free)
    ]
    words = [(s, b) for s, b in zip(page.shapes, boxes, strict=True) if isinstance(s, Text)]
    wrong += [f"too small: {s}" for s, _ in words if s.size < least - 1e-6]
    wrong += [
        f"text on text: {one.text!r}, {other.text!r}"
        for (one, b1), (other, b2) in overlapping(words)
        if crossing(b1, b2, 0.05)
    ]
    whole = [(s, b) for s, b in zip(page.shapes, boxes, strict=True) if s.role in APART]
    wrong += [
        f"box on box: {one}, {other}"
        for (one, b1), (other, b2) in overlapping(whole)
        # Neighbouring boxes for digits share an edge.
        if crossing(b1, b2, 0.5)
    ]
    holding = [(s, b) for s, b in zip(page.shapes, boxes, strict=True) if s.role in HOLDING]
    wrong += [
        f"out of its box: {word.text!r}"
        for word, b1 in words
        for box, b2 in holding
        if isinstance(box, Box) and crossing(b1, b2, 0.3) and not inside(b1, b2, 0.3)
    ]
    return wrong


def overlapping(things):
    """Pairs that may overlap: only what begins before the other ends, from top to bottom."""
    lying = sorted(things, key=lambda thing: thing[1][1])
    for at, one in enumerate(lying):
        for other in itertools.takewhile(lambda it: it[1][1] < one[1][3], lying[at + 1 :]):  # noqa: B023
            yield one, other


def page_of(*shapes):
    return Drawing(PAPERS["a4"].width, PAPERS["a4"].height, shapes)


@pytest.mark.parametrize(
    ("page", "wrong"),
    [
        (page_of(Text((12, 50), "5", 5)), "in the margin"),
        (page_of(Text((20, 290), "5", 5)), "in the margin"),
        (page_of(Text((50, 50), "5", 4)), "too small"),
        (page_of(Text((50, 50), "58", 5), Text((54, 51), "7", 5)), "text on text"),
        (
            page_of(Box((50, 50), 9, 9, role="box"), Box((58, 58), 9, 9, role="choice")),
            "box on box",
        ),
        (page_of(Box((50, 50), 9, 9, role="choice"), Text((52, 57), "five", 6)), "out of its box"),
    ],
)
def test_what_is_wrong_on_a_page_is_found(page, wrong):
    [found] = told(page, PAPERS["a4"], 12 * MM_PER_POINT)
    assert found.startswith(wrong)


@pytest.mark.parametrize("part", range(PARTS))
def test_nothing_overlaps_or_leaves_the_margins(part):
    chance = random.Random(part)  # noqa: S311 - which pages are looked at is no secret
    for lesson in some_lessons(LESSONS // PARTS, seed=part):
        settings = ClassSettings(method=chance.choice(METHODS))
        for name, paper in PAPERS.items():
            kind, large = chance.choice(KINDS), chance.random() < 0.4
            whole = settled(lesson, settings)
            address = chance.choice(("", "https://school.example/a-lesson.html"))
            version = chance.choice("ABC")
            pages = pages_of(
                whole, tasks_by_round(whole, settings, version), kind=kind, large_print=large,
                paper=name, address=address, version=version,
            )  # fmt: skip
            for page in pages:
                found = told(page, paper, (18 if large else 12) * MM_PER_POINT)
                assert not found, (lesson.to_data(), kind, large, name, found[:3])


@pytest.mark.parametrize("part", range(2))
def test_scripts_stay_inside_the_paper_too(part):
    for lesson in some_lessons(12, seed=100 + part):
        whole = settled(lesson, ClassSettings(count_aloud=5))
        for name, paper in PAPERS.items():
            for page in script_pages(whole, ClassSettings(), paper=name):
                assert not told(page, paper, 12 * MM_PER_POINT)


def test_all_skills_are_among_the_lessons():
    met = {
        each.skill
        for part in range(PARTS)
        for lesson in some_lessons(LESSONS // PARTS, seed=part)
        for each in lesson.rounds
    }
    assert met == set(SKILLS)
