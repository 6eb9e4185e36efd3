"""A lesson's page in a file, made from a few cells as a teacher would write them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.outputs.page import page_of
from manipulatives.outputs.page.saved import unpacked
from support.chromium import reload, visit

if TYPE_CHECKING:
    from pathlib import Path

    from playwright.sync_api import Page


def lesson_page(folder: Path, *cells: str, title: str = "Market day") -> str:
    """Make the page of a lesson and return its address.

    Args:
        folder: where the file goes, and whose class settings hold.
        cells: Markdown where one begins with "#" or ends with a full stop, else a call.
        title: of the lesson.
    """
    made = [new_markdown_cell(f"# {title}")]
    for cell in cells:
        words = cell.startswith("#") or cell.endswith(".")
        made.append(new_markdown_cell(cell) if words else new_code_cell(cell))
    file = folder / "lesson.html"
    file.write_text(page_of(new_notebook(cells=made), folder=folder), "utf-8")
    return file.as_uri()


class RoundOnPage:
    """The round on a page, as a teacher or a pupil meets it."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.root = page.locator(".kit-round:visible")

    def open(self, address):
        """Go to a page and wait for the manipulative."""
        visit(self.page, address)
        self.root.locator(".kit-manipulative").wait_for()
        return self

    def again(self):
        """Load the page again, with what it kept."""
        reload(self.page)
        self.root.locator(".kit-manipulative").wait_for()
        return self

    @property
    def tasks(self):
        """The tasks as the page carries them: of its only round."""
        saved = unpacked(self.page.locator("#kit-saved").text_content())
        [tasks] = [
            {**saved["kinds"][model["kind"]]["usual"], **model.get("own", {})}["tasks"]
            for model in saved["models"].values()
            if saved["kinds"][model["kind"]]["name"] == "BoardRound"
        ]
        return tasks

    @property
    def phase(self):
        """One of ask, work, show and check."""
        return self.root.get_attribute("data-phase")

    @property
    def task(self):
        """Which question is shown, counted from 0."""
        return int(self.root.locator(".round-count").inner_text().split()[1]) - 1

    @property
    def next(self):
        """The button that goes on."""
        return self.root.locator(".round-next")

    @property
    def verdict(self):
        """What is said to the answer."""
        return self.root.locator(".round-verdict span").inner_text()

    def said(self, part):
        """The words in a part that is seen, or None."""
        shown = self.root.locator(f".round-{part}:visible")
        return shown.inner_text() if shown.count() else None

    def look(self):
        """Everything that can be seen of it, hands and all."""
        return self.root.evaluate(
            """(root) => [
                root.dataset.phase,
                root.innerText,
                root.querySelector(".round-typed").value,
                JSON.stringify(root.querySelector(".kit-manipulative").facts()),
                [...root.querySelectorAll(".clock-sector, .clock-arc")]
                  .map((part) => [part.getAttribute("d"), part.checkVisibility()].join()).join(),
            ]"""
        )

    def write(self, text):
        """Press the keys of the keypad."""
        for letter in text:
            self.root.locator(f'[data-key="{letter}"]').click()

    def check(self):
        """Press Check."""
        self.root.locator(".round-check").click()

    def facts(self):
        """What is true of the manipulative."""
        return self.root.locator(".kit-manipulative").evaluate("(root) => root.facts()")
