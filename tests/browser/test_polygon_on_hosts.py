"""The polygon drawer where it is met: on a page from disk, and on a served board with a kernel."""

from __future__ import annotations

import nbformat
import pytest
from browser.lesson_page import lesson_page
from browser.test_polygon import Desk
from nbformat.v4 import new_code_cell, new_notebook

from manipulatives.widgets.polygon import PolygonDrawer
from manipulatives.widgets.round.children import MANIPULATIVES
from support.server import serving

CELL = 'PolygonDrawer(panel=False, guide="rectangle", follow=True)'
PROGRAM = """
import ipywidgets
from manipulatives.widgets.polygon import PolygonDrawer

drawer = PolygonDrawer(panel=False, guide="rectangle", follow=True)
heard = ipywidgets.Label("Python has nothing")
drawer.on_change(lambda drawer: setattr(heard, "value", f"Python has a {drawer.name}"))
ipywidgets.VBox([heard, drawer])
"""


def use_to_its_end(desk):
    """Follow a guide, drag, tap, pull out a side, use keys, clear, draw, undo."""
    for _ in range(5):
        desk.press("Next stroke")
    assert desk.facts["name"] == "rectangle"
    assert desk.facts["traced"] is True
    desk.drag(desk.spot([7, 2]), desk.spot([5, 2]))
    assert desk.facts["name"] == "trapezoid"
    desk.click([1, 2], [3, 2])
    assert desk.facts["mirror_lines"] == 1
    desk.drag(desk.plus(0), desk.spot([4, 1]))
    assert desk.facts["name"] == "pentagon"
    desk.handle(1).focus()
    desk.keys("Delete")
    assert desk.facts["sides"] == 4
    desk.press("Clear")
    desk.click([1, 1], [5, 1], [5, 5], [1, 1])
    assert desk.facts["right_angles"] == 1
    desk.press("Undo")
    assert desk.facts["closed"] is False
    desk.press("Undo")
    assert desk.facts["points"] == 2


def test_it_is_used_to_its_end_on_a_page_from_disk(quiet_page, tmp_path, monkeypatch):
    monkeypatch.setitem(MANIPULATIVES, "PolygonDrawer", PolygonDrawer)
    address = lesson_page(tmp_path, "## Shapes", CELL, title="Market day")
    assert address.startswith("file:")
    quiet_page.goto(address)
    quiet_page.locator(".kit-polygon").wait_for()
    use_to_its_end(Desk(quiet_page))


@pytest.mark.screens("phone")
def test_it_is_drawn_on_with_a_finger_on_a_page_from_disk(quiet_page, tmp_path, monkeypatch):
    monkeypatch.setitem(MANIPULATIVES, "PolygonDrawer", PolygonDrawer)
    quiet_page.goto(lesson_page(tmp_path, "## Shapes", "PolygonDrawer(panel=False)"))
    quiet_page.locator(".kit-polygon").wait_for()
    desk = Desk(quiet_page)
    desk.tap([2, 2], [6, 2], [6, 6], [2, 2])
    assert desk.facts["name"] == "triangle"
    desk.swipe(desk.spot([6, 6]), desk.spot([4, 6]))
    assert desk.facts["equal_sides"] == 2


@pytest.fixture(scope="module")
def served(tmp_path_factory):
    folder = tmp_path_factory.mktemp("Penny Cross")
    nbformat.write(new_notebook(cells=[new_code_cell(PROGRAM)]), folder / "shapes.ipynb")
    with serving(folder) as server:
        yield server


def test_it_is_used_to_its_end_on_a_served_board_and_python_follows(quiet_page, served):
    quiet_page.goto(served.address)
    quiet_page.goto(f"{served.base}board/shapes")
    quiet_page.get_by_role("button", name="Run it", exact=True).click()
    quiet_page.locator(".kit-polygon").wait_for(timeout=60_000)
    quiet_page.wait_for_timeout(500)
    desk = Desk(quiet_page)
    desk.press("Next stroke")
    quiet_page.get_by_text("Python has a None").wait_for()
    desk.press("Undo")
    use_to_its_end(desk)
    desk.click([1, 5], [1, 1])
    quiet_page.get_by_text("Python has a triangle").wait_for()
