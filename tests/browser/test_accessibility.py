"""Every widget and every phase of a round, by a checker from outside, in a real browser."""

from __future__ import annotations

import pytest
from browser.harness import open_widget

from manipulatives import Clock
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.outputs.notebook import notebook_of
from manipulatives.outputs.page import page_of
from support.accessibility import faults

SCREENS = pytest.mark.screens("board", "tablet", "phone")

SHOWN = {
    "digital": True,
    "words": True,
    "minute_numbers": True,
    "sector": True,
    "arc": True,
    "half_day": True,
}
WIDGETS = {
    "a clock": lambda: Clock(time="4:35"),
    "a clock with everything shown": lambda: Clock(time="4:35", **SHOWN),
    "a clock set wrongly": lambda: Clock(
        dial={"hour": 240, "minute": 35, "half": "am"}, mode="free", words=True
    ),
}

LESSON = Lesson(
    "Market clock",
    seed=7,
    rounds=(
        Round("time.read_five_minutes", seed=11, tasks=2, seconds=60),
        Round("time.read_half", seed=12, tasks=2, options={"answer": "choice"}),
        Round("time.set_hands", seed=13, tasks=2),
    ),
)


@SCREENS
@pytest.mark.parametrize("make", WIDGETS.values(), ids=WIDGETS)
def test_nothing_is_found_on_a_widget(quiet_page, make):
    open_widget(quiet_page, make())
    assert faults(quiet_page) == []


@SCREENS
@pytest.mark.parametrize("stage", range(len(LESSON.rounds)))
def test_nothing_is_found_in_any_phase_of_a_round(quiet_page, stage):
    quiet_page.set_content(page_of(notebook_of(LESSON)))
    quiet_page.locator(".session-pips button").nth(stage).click()
    root = quiet_page.locator(".kit-round").nth(stage)
    root.wait_for()
    seen = set()
    for _ in range(12):
        phase = root.get_attribute("data-phase")
        if phase not in seen:
            seen.add(phase)
            assert faults(quiet_page) == [], phase
        if phase == "check":
            break
        quiet_page.keyboard.press("PageDown")
    assert {"ask", "show", "check"} <= seen


def test_a_page_with_faults_is_found_out(quiet_page):
    quiet_page.set_content(
        """<!doctype html><html lang="en"><title>Broken on purpose</title><main>
        <div role="slider" tabindex="0" style="width: 44px; height: 44px"></div>
        <p style="color: #bbb; background: #fff">Pale words</p>
        <button style="width: 10px; height: 10px; padding: 0">a</button>
        <button style="width: 10px; height: 10px; padding: 0">b</button>
        </main></html>"""
    )
    rules = {fault.split()[0] for fault in faults(quiet_page)}
    assert {"aria-input-field-name", "color-contrast", "target-size"} <= rules
