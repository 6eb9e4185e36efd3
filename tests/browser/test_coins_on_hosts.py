"""The coin tray where it is met: on a page from disk and on a served board with its kernel."""

from __future__ import annotations

import nbformat
import pytest
from browser.lesson_page import lesson_page
from browser.test_coins import PURSE, Table
from nbformat.v4 import new_code_cell, new_notebook

from manipulatives.widgets.coins import CoinTray
from manipulatives.widgets.round.children import MANIPULATIVES
from support.server import serving

PROGRAM = """
import ipywidgets
from manipulatives.widgets.coins import CoinTray

tray = CoinTray("25", panel=False, trade=True)
heard = ipywidgets.Label("Python counts 25")
tray.on_change(lambda tray: setattr(heard, "value", f"Python counts {tray.total}"))
ipywidgets.VBox([heard, tray])
"""


class Hosted(Table):
    """A coin tray on a host, whose model a test does not see."""

    @property
    def tray(self):
        """The tray, as far as its facts tell."""
        raise NotImplementedError

    def coin_at(self, index):
        """Where on the page a coin of the tray is."""
        box = self.page.get_by_role("option").nth(index).bounding_box()
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def use_to_its_end(table):
    """Drag, tap, use keys, trade, line up, undo."""
    table.drag(table.slot(1), table.spot(1000, 900))
    assert table.kinds == "25 10"
    table.page.mouse.click(*table.slot(1))
    table.page.mouse.click(*table.spot(400, 900))
    assert table.kinds == "25 10 10"
    table.page.locator(PURSE).first.focus()
    table.page.keyboard.press("3")
    assert table.kinds == "25 10 10 5"
    table.page.wait_for_timeout(400)
    for index in (1, 2, 3):
        table.page.mouse.click(*table.coin_at(index))
    table.page.locator(".coins-offer").click()
    assert table.kinds == "25 25"
    table.press("Line up")
    table.page.wait_for_timeout(400)
    table.drag(table.coin_at(0), table.slot(3))
    assert table.kinds == "25"
    table.press("Undo")
    assert table.kinds == "25 25"


def test_it_is_used_to_its_end_on_a_page_from_disk(quiet_page, tmp_path, monkeypatch):
    monkeypatch.setitem(MANIPULATIVES, "CoinTray", CoinTray)
    address = lesson_page(
        tmp_path, "## Coins", 'CoinTray("25", panel=False, trade=True)', title="Market day"
    )
    assert address.startswith("file:")
    quiet_page.goto(address)
    quiet_page.locator(".kit-coins").wait_for()
    use_to_its_end(Hosted(quiet_page))


@pytest.fixture(scope="module")
def served(tmp_path_factory):
    folder = tmp_path_factory.mktemp("Penny Cross")
    nbformat.write(new_notebook(cells=[new_code_cell(PROGRAM)]), folder / "coins.ipynb")
    with serving(folder) as server:
        yield server


def test_it_is_used_to_its_end_on_a_served_board_and_python_follows(quiet_page, served):
    quiet_page.goto(served.address)
    quiet_page.goto(f"{served.base}board/coins")
    quiet_page.get_by_role("button", name="Run it", exact=True).click()
    quiet_page.locator(".kit-coins").wait_for(timeout=60_000)
    table = Hosted(quiet_page)
    quiet_page.wait_for_timeout(500)
    use_to_its_end(table)
    quiet_page.get_by_text("Python counts 50").wait_for()
