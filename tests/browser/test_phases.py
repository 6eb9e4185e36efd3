"""Every phase of a round of every strand, and both stages of a pupil's first question, checked."""

from __future__ import annotations

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.settings import ClassSettings
from manipulatives.notebook.writing import notebook_of
from manipulatives.outputs.page import page_of
from support.accessibility import faults
from support.chromium import visit
from support.overflow import LEAVING

# Of every strand, so that each manipulative and each way of answering is among them.
CHOSEN = [
    "counting.on_in_fives",
    "counting.odd_even",
    "place_value.expanded_form",
    "place_value.compare",
    "addition.two_digit",
    "subtraction.stories_compare",
    "shapes.draw_shape",
    "shapes.mirror_lines",
    "money.make_amount",
    "money.name_coins",
    "time.read_five_minutes",
    "time.set_hands",
]
MOST_PRESSES = 60
PHASES = {"ask", "show", "check", "wipe"}


def opened(page, folder, skill, **given):
    """Open a lesson of one round and wait until it is there."""
    lesson = Lesson("Market day", seed=7, rounds=(Round(skill, seed=23, tasks=2, count_aloud=50),))
    file = folder / "lesson.html"
    file.write_text(page_of(notebook_of(lesson), settings=ClassSettings(), **given), "utf-8")
    visit(page, file.as_uri())
    page.locator("main:not([aria-busy])").wait_for(state="attached")


def test_every_strand_is_among_them():
    assert {SKILLS[skill].strand for skill in CHOSEN} == {one.strand for one in SKILLS.values()}
    assert {SKILLS[skill].manipulative for skill in CHOSEN} == {
        one.manipulative for one in SKILLS.values()
    }


@pytest.mark.parametrize("skill", CHOSEN)
@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.usefixtures("screen")
def test_nothing_is_found_on_any_phase(quiet_page, tmp_path, skill):
    opened(quiet_page, tmp_path, skill)
    seen = set()
    for _ in range(MOST_PRESSES):
        round_ = quiet_page.locator(".kit-round:visible")
        phase = round_.get_attribute("data-phase") if round_.count() else "title"
        if phase not in seen:
            seen.add(phase)
            assert faults(quiet_page) == [], phase
            assert quiet_page.evaluate(LEAVING) == [], phase
        if phase == "wipe":
            break
        quiet_page.keyboard.press("PageDown")
    assert seen >= PHASES


@pytest.mark.parametrize("skill", CHOSEN)
@pytest.mark.screens("tablet", "phone")
@pytest.mark.usefixtures("screen")
def test_nothing_is_found_where_a_pupil_begins(quiet_page, tmp_path, skill):
    opened(quiet_page, tmp_path, skill, audience="pupils")
    quiet_page.get_by_role("button", name="Start", exact=True).tap()
    onward = quiet_page.locator(".kit-round:visible .round-next")
    onward.wait_for()
    while onward.is_visible() and onward.inner_text() != "My turn":
        onward.tap()
    assert faults(quiet_page) == []
    onward.tap()
    quiet_page.locator(".kit-round:visible[data-stage='try']").wait_for()
    assert faults(quiet_page) == []
    assert quiet_page.evaluate(LEAVING) == []
