"""The manipulatives where they are met: on a page from disk, and on a served board with a kernel.

Each is used to its end by mouse, by finger, by tap and tap, and by keys, one after the other in one
lesson: a page and a board are opened once for all of them.
"""

from __future__ import annotations

import contextlib
import re

import nbformat
import pytest
from browser import test_blocks, test_chart, test_coins, test_columns, test_polygon
from browser.lesson_page import lesson_page
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from support.chromium import keep_inside
from support.screens import SCREENS
from support.server import serving

CALLS = {
    "coins": 'CoinTray("25", panel=False, trade=True)',
    "blocks": 'PlaceValueBlocks(mat=[{"tens": 2, "ones": 15}], panel=False)',
    "polygon": 'PolygonDrawer(panel=False, guide="rectangle", follow=True)',
    "chart": "CountingChart(1, 20, step=5, panel=False)",
    "columns": 'ColumnBoard("47 + 38", panel=False)',
}
READINGS = {
    "coins": "total",
    "blocks": "number",
    "polygon": "name",
    "chart": "counted",
    "columns": "answer",
}
# A round makes a lesson of what would be one long page.
ROUND = 'play("time.read_hour", tasks=1, seed=7)'
PROGRAM = """
import ipywidgets
from manipulatives import *


def heard(widget, reading):
    label = ipywidgets.Label("Python has heard nothing")
    widget.on_change(lambda it: setattr(label, "value", f"Python reads {getattr(it, reading)}"))
    return ipywidgets.VBox([label, widget])
"""


class OnHost:
    """What somebody does who has only the screen: no model, and other widgets on the page."""

    page = None

    def facts_of(self, name):
        """What is true of a manipulative."""
        return self.page.evaluate(f"document.querySelector('.kit-{name}').facts()")

    def tap(self, *spots):
        """Tap spots on the page with a finger, one after the other."""
        for spot in spots:
            self.page.touchscreen.tap(*spot)

    def middle(self, locator):
        """Where on the page something is, once it lies still."""
        self.page.wait_for_function(test_blocks.STILL)
        box = locator.bounding_box()
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


class Coins(OnHost, test_coins.Table):
    """A coin tray on a host."""

    def use(self):
        """Put coins down in four ways, trade three for one, line up, take one back, undo."""
        self.drag(self.slot(1), self.spot(1000, 900))
        assert self.kinds == "25 10"
        self.swipe(self.slot(1), self.spot(400, 900))
        assert self.kinds == "25 10 10"
        self.tap(self.slot(2), self.spot(700, 500))
        assert self.kinds == "25 10 10 5"
        self.page.locator(test_coins.PURSE).first.focus()
        self.page.keyboard.press("4")
        assert self.kinds == "25 10 10 5 1"
        for place in (1, 2, 3):
            self.tap(self.middle(self.option(place)))
        self.page.locator(".coins-offer").click()
        assert self.kinds == "25 25 1"
        self.press("Line up")
        self.swipe(self.middle(self.option(0)), self.slot(3))
        assert self.kinds == "25 1"
        self.press("Undo")
        assert self.kinds == "25 25 1"
        return 51


class Blocks(OnHost, test_blocks.Table):
    """A mat of blocks on a host."""

    @property
    def now(self):
        """How many tens and ones there are."""
        facts = self.facts_of("blocks")
        return facts["tens"], facts["ones"]

    def use(self):
        """Put a ten in, ring ten ones, break a ten, trade by keys, take a one away, undo."""
        self.drag(self.source("tens"), self.free("tens"))
        assert self.now == (3, 15)
        self.settle()
        start, *way = self.round("ones", range(10))
        self.swipe(start, *way)
        assert self.now == (4, 5)
        self.settle()
        self.tap(self.block("tens"), self.free("ones"))
        assert self.now == (3, 15)
        self.column("ones").focus()
        self.page.keyboard.press("Shift+ArrowLeft")
        assert self.now == (4, 5)
        self.page.keyboard.press("ArrowUp")
        assert self.now == (4, 6)
        self.settle()
        self.swipe(self.block("ones"), self.source("ones"))
        self.press("Undo")
        assert self.now == (4, 6)
        return 46


class Shapes(OnHost, test_polygon.Drawer):
    """A polygon drawer on a host."""

    def tap(self, *points):
        """Tap points of the paper with a finger."""
        test_polygon.Drawer.tap(self, *points)

    def use(self):
        """Follow a guide, drag, tap, pull out a side, use keys, clear, draw, undo."""
        for _ in range(5):
            self.press("Next stroke")
        assert self.facts["name"] == "rectangle"
        assert self.facts["traced"] is True
        self.drag(self.spot([7, 2]), self.spot([5, 2]))
        assert self.facts["name"] == "trapezoid"
        self.tap([1, 2], [3, 2])
        assert self.facts["mirror_lines"] == 1
        self.swipe(self.plus(0), self.spot([4, 1]))
        assert self.facts["name"] == "pentagon"
        self.handle(1).focus()
        self.keys("Delete")
        assert self.facts["sides"] == 4
        self.press("Clear")
        self.click([1, 1], [5, 1])
        self.tap([5, 5], [1, 1])
        assert self.facts["right_angles"] == 1
        self.press("Undo")
        assert self.facts["closed"] is False
        self.focus_pen()
        self.keys("Home", "Enter")
        assert self.facts["closed"] is True
        return "triangle"


class Chart(OnHost, test_chart.Board):
    """A counting chart on a host."""

    def cell(self, number):
        """The cell of a number; this chart begins with 1."""
        return self.page.locator(".chart-cell").nth(number - 1)

    @property
    def last(self):
        """The number counted last."""
        return self.facts["at"]

    def use(self):
        """Count on by mouse, finger, key and button; take back by a tap; undo."""
        self.cell(5).click()
        assert self.last == 5
        self.tap(self.middle(self.cell(10)))
        assert self.last == 10
        self.stand_on(15)
        self.keys("Enter")
        assert self.last == 15
        self.press("Count next")
        assert self.facts["finished"] is True
        self.tap(self.middle(self.cell(20)))
        assert self.last == 15
        self.keys("Backspace")
        assert self.last == 10
        self.press("Undo")
        assert self.last == 15
        return [5, 10, 15]


class Columns(OnHost, test_columns.Board):
    """A column board on a host."""

    def touch(self, button):
        """Tap a button with a finger."""
        test_columns.Board.tap(self, button)

    def use(self):
        """Write a wrong sum by mouse, finger and keys, have it checked, and put it right."""
        self.square("Answer, ones").click()
        self.press("5")
        self.tap(self.middle(self.square("Answer, tens")))
        self.touch("7")
        self.square("Answer, tens").focus()
        self.type("ArrowUp", "ArrowUp", "ArrowUp", "1")
        assert self.facts["marks_right"] is True
        self.press("Check")
        assert self.square("Answer, tens: 7, look once more").count() == 1
        self.square("Answer, tens").tap()
        self.type("8")
        self.press("Check")
        assert self.facts["done"] is True
        self.press("Undo")
        assert self.facts["answer"] == 75
        self.square("Answer, tens").focus()
        self.type("Backspace", "8")
        assert self.facts["done"] is True
        return 85


KINDS = {
    "coins": Coins,
    "blocks": Blocks,
    "polygon": Shapes,
    "chart": Chart,
    "columns": Columns,
}


@contextlib.contextmanager
def tablet(browser):
    """A page on a screen for mouse and finger, kept open for several tests, that stays quiet."""
    screen, noise = SCREENS["tablet"], []
    context = browser.new_context(
        viewport={"width": screen.width, "height": screen.height},
        has_touch=True,
        service_workers="block",
    )
    context.set_default_timeout(15_000)
    keep_inside(context, noise)
    yield context.new_page()
    context.close()
    assert not noise, "The page was to stay quiet, but " + "; ".join(noise)


@pytest.fixture(scope="module")
def disk(browser, tmp_path_factory):
    """The lesson on a page from disk."""
    cells = [cell for name, call in CALLS.items() for cell in (f"## {name}", call)]
    address = lesson_page(tmp_path_factory.mktemp("Penny Cross"), *cells, "## Clock", ROUND)
    assert address.startswith("file:")
    with tablet(browser) as page:
        page.goto(address)
        yield page


@pytest.fixture(scope="module")
def board(browser, tmp_path_factory):
    """The same lesson on a served board, where Python says what it reads."""
    cells = [new_markdown_cell("# Market day"), new_code_cell(PROGRAM)]
    for name, call in CALLS.items():
        cells.append(new_markdown_cell(f"## {name}"))
        cells.append(new_code_cell(f"heard({call}, {READINGS[name]!r})"))
    cells += [new_markdown_cell("## Clock"), new_code_cell(ROUND)]
    folder = tmp_path_factory.mktemp("Penny Cross")
    nbformat.write(new_notebook(cells=cells), folder / "lesson.ipynb")
    with serving(folder) as server, tablet(browser) as page:
        page.goto(server.address)
        page.goto(f"{server.base}board/lesson")
        page.get_by_role("button", name="Run it", exact=True).click()
        page.locator(".kit-columns").wait_for(state="attached", timeout=60_000)
        yield page


def turn_to(page, name):
    """Go on in the lesson until a manipulative is seen."""
    seen = page.locator(f".kit-{name}")
    seen.wait_for(state="attached")
    for _ in CALLS:
        if seen.is_visible():
            return
        page.keyboard.press("PageDown")
    assert seen.is_visible()


@pytest.mark.parametrize("name", CALLS)
def test_it_is_used_to_its_end_on_a_page_from_disk(disk, name):
    turn_to(disk, name)
    KINDS[name](disk).use()


@pytest.mark.parametrize("name", CALLS)
def test_it_is_used_to_its_end_on_a_served_board_and_python_follows(board, name):
    turn_to(board, name)
    reading = KINDS[name](board).use()
    board.get_by_text(re.compile(rf"^Python reads {re.escape(str(reading))}$")).wait_for()
