"""Every widget and every phase of a round, by a checker from outside, in a real browser."""

from __future__ import annotations

import nbformat
import pytest
from browser.harness import open_widget

from manipulatives import (
    Clock,
    CoinTray,
    ColumnBoard,
    CountingChart,
    PlaceValueBlocks,
    PolygonDrawer,
)
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.notebook.writing import notebook_of
from manipulatives.outputs.page import page_of
from manipulatives.widgets.polygon.polygon import READINGS
from support.accessibility import faults
from support.chromium import resize
from support.files import ROOT
from support.screens import SCREENS

SHOWN = {
    "digital": True,
    "words": True,
    "minute_numbers": True,
    "sector": True,
    "arc": True,
    "half_day": True,
}
MARKED = {"counted": [5, 10], "tapped": 12, "written": {}}
WRITTEN = {"counted": [], "tapped": None, "written": {"44": "44", "45": "54"}}
CROSSED = {"points": [[1, 1], [7, 7], [7, 1], [1, 7]], "closed": False}
EVERYTHING = list(READINGS)
WIDGETS = {
    "a clock": lambda: Clock(time="4:35"),
    "a clock with everything shown": lambda: Clock(time="4:35", **SHOWN),
    "a clock set wrongly": lambda: Clock(
        dial={"hour": 240, "minute": 35, "half": "am"}, mode="free", words=True
    ),
    "coins": lambda: CoinTray("25 10 10 5 1 1", trade=True, names=True, counts=True),
    "coins with a trade on offer": lambda: CoinTray("10 10 5", trade=True, panel=False),
    "coins to name": lambda: CoinTray(
        "25 10 5 1", purse=[], worths=False, movable=False, ring="10", panel=False
    ),
    "pounds and pence": lambda: CoinTray("200 50 20 2", currency="gbp", writing="decimal"),
    "blocks": lambda: PlaceValueBlocks(
        mat=[{"thousands": 1, "tens": 12, "ones": 15}],
        places=4,
        numeral=True,
        expanded=True,
        zeros=True,
        words=True,
        equation=True,
    ),
    "blocks that were traded": lambda: PlaceValueBlocks(
        mat=[{"tens": 2, "ones": 15}], equation=True, panel=False
    ),
    "two mats": lambda: PlaceValueBlocks([345, 287], numeral=True, panel=False),
    "more blocks than lie apart": lambda: PlaceValueBlocks(
        mat=[{"tens": 23, "ones": 157}], places=2, panel=False
    ),
    "blocks to read": lambda: PlaceValueBlocks(47, places=2, movable=False, panel=False),
    "a shape": lambda: PolygonDrawer("hexagon", show=EVERYTHING, count="vertices"),
    "ready shapes": lambda: PolygonDrawer("star"),
    "a shape to cut": lambda: PolygonDrawer("rectangle", tool="cut", show=["shares"]),
    "papers": lambda: PolygonDrawer("triangle", grid="triangle"),
    "a crossing side": lambda: PolygonDrawer(CROSSED, grid="plain", panel=False),
    "a shape to follow": lambda: PolygonDrawer(guide="pentagon", follow=True, panel=False),
    "a shape to read": lambda: PolygonDrawer(
        "half circle", movable=False, buttons=False, show=["sides"], panel=False
    ),
    "a chart": lambda: CountingChart(step=5, chart=MARKED, line=True, hidden="thirds"),
    "a chart that is wiped": lambda: CountingChart(
        step=5, chart=MARKED, mode="wipe", beat=60, panel=False
    ),
    "a chart to write on": lambda: CountingChart(
        1, 120, mode="write", hidden="patch", chart=WRITTEN, panel=False
    ),
    "a sum to write": lambda: ColumnBoard("347 + 285"),
    "a sum that was checked": lambda: ColumnBoard(
        sum={"operation": "-", "numbers": [402, 178], "answer": [4, 3, 2]}, panel=False
    ),
    "a sum that is shown": lambda: ColumnBoard("402 - 178", mode="show", step=5, panel=False),
    "a sum in parts": lambda: ColumnBoard(
        "347 + 285", mode="show", method="expanded columns", step=4, panel=False
    ),
    "a sum in jumps": lambda: ColumnBoard(
        "83 - 47", mode="show", method="number line jumps", step=4
    ),
    "a sum to read": lambda: ColumnBoard("47 + 38", writable=False, buttons=False, panel=False),
}
# What is pressed before the checker looks: a button, or as many things of a kind.
PRESSED = {
    "coins with a trade on offer": ("option", 3),
    "blocks that were traded": ("button", "10 ones become 1 ten"),
    "ready shapes": ("button", "Shapes"),
    "a shape to cut": ("button", "Cut"),
    "papers": ("button", "Paper"),
    "a shape to follow": ("button", "Next stroke"),
    "a sum that was checked": ("button", "Check"),
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


@pytest.mark.parametrize("name", WIDGETS)
def test_nothing_is_found_on_a_widget_on_any_screen(quiet_page, name):
    open_widget(quiet_page, WIDGETS[name]())
    match PRESSED.get(name):
        case role, int(many):
            for place in range(many):
                quiet_page.get_by_role(role).nth(place).click()
        case role, label:
            quiet_page.get_by_role(role, name=label, exact=True).click()
    for screen in SCREENS.values():
        resize(quiet_page, screen.width, screen.height)
        assert faults(quiet_page) == [], screen.name


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("stage", range(len(LESSON.rounds)))
def test_nothing_is_found_in_any_phase_of_a_round(quiet_page, stage):
    quiet_page.set_content(page_of(notebook_of(LESSON)))
    quiet_page.locator(".session-pips button").nth(stage).dispatch_event("click")
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


@pytest.mark.parametrize("guide", ["standards", "pages-for-pupils"])
def test_nothing_is_found_on_a_guide_and_nothing_leaves_a_small_screen(quiet_page, guide):
    read = nbformat.read(ROOT / "notebooks" / "guide" / f"{guide}.ipynb", as_version=4)
    quiet_page.set_content(page_of(read))
    for width, height in ((1920, 1080), (1024, 768), (360, 740), (320, 640)):
        resize(quiet_page, width, height)
        assert quiet_page.evaluate("document.scrollingElement.scrollWidth") == width
        assert faults(quiet_page) == []


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
