"""The ready lessons of a first week: their pages, and one of them taught with a clicker."""

from __future__ import annotations

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.lesson import Lesson
from manipulatives.notebook.reading import lesson_of, notebook_at
from manipulatives.outputs.page import page_of_file
from support.chromium import visit
from support.files import ROOT

DAYS = sorted((ROOT / "notebooks").glob("week-*.ipynb"))
MOST_BYTES = 400_000
MOST_PRESSES = 500
LONGEST_COUNT = 25


def lesson_at(path) -> Lesson:
    return lesson_of(notebook_at(path), title=path.stem)


@pytest.mark.parametrize("path", DAYS, ids=lambda path: path.stem)
def test_a_day_is_about_fifteen_minutes_over_all_strands_and_its_page_is_small(path):
    lesson = lesson_at(path)
    strands = {SKILLS[one.skill].strand for one in lesson.rounds}
    assert strands == {skill.strand for skill in SKILLS.values()}
    minutes = sum(one.seconds for one in lesson.rounds) / 60
    assert 14 <= minutes <= 16
    assert len(page_of_file(path).encode()) < MOST_BYTES


def test_the_week_has_five_days_without_a_round_twice():
    lessons = [lesson_at(path) for path in DAYS]
    assert len(lessons) == 5
    seeds = [one.seed for lesson in lessons for one in lesson.rounds]
    assert len(set(seeds)) == len(seeds)


def test_a_whole_session_is_taught_with_four_keys_and_no_mouse(quiet_page, tmp_path):
    path = DAYS[0]
    file = tmp_path / "monday.html"
    file.write_text(page_of_file(path), "utf-8")
    visit(quiet_page, file.as_uri())
    quiet_page.locator("main:not([aria-busy])").wait_for(state="attached")
    keys = quiet_page.keyboard
    seen: dict[str, list[str]] = {}
    still = 0
    for _ in range(MOST_PRESSES):
        root = quiet_page.locator(".kit-round:visible")
        name = root.get_attribute("aria-label") if root.count() else ""
        phase = root.get_attribute("data-phase") if root.count() else "title"
        phases = seen.setdefault(name, [])
        if phase not in phases:
            phases.append(phase)
            if phase == "ask" and root.count():
                # The answers are looked at and hidden again; the timer is off, so F5 does nothing.
                keys.press("b")
                assert root.get_attribute("data-phase") == "check"
                keys.press("b")
                keys.press("F5")
                assert root.get_attribute("data-phase") == "ask"
        before = quiet_page.evaluate("document.body.innerText")
        keys.press("PageDown")
        # While the class counts aloud the words stay; after the last question they stay for good.
        still = still + 1 if quiet_page.evaluate("document.body.innerText") == before else 0
        if still > LONGEST_COUNT:
            break
    lesson = lesson_at(path)
    assert len([name for name in seen if name]) == len(lesson.rounds)
    for one in lesson.rounds:
        phases = seen[one.title or SKILLS[one.skill].name]
        assert [phase for phase in phases if phase != "wipe"] == ["ask", "show", "check"]
        assert ("wipe" in phases) == bool(one.count_aloud)
    keys.press("PageUp")
    assert quiet_page.locator(".kit-round:visible").get_attribute("data-phase") in (
        "show",
        "check",
    )
