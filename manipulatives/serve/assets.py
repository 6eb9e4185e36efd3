"""Style sheets and scripts of what is served, with the kit's font; they stand in each page."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from manipulatives.data.font import font_face_css
from manipulatives.outputs.page.page import HERE as PAGE
from manipulatives.widgets.assemble import SHARED_STYLES, assemble, stylesheet

HERE = Path(__file__).parent


@cache
def shelf_style() -> str:
    """The style sheet of the shelf and its sentences."""
    return _inline(font_face_css() + stylesheet(*SHARED_STYLES, HERE / "pages" / "shelf.css"))


@cache
def shelf_script() -> str:
    """The script of the shelf, which also works without it."""
    return _inline(assemble(HERE / "pages" / "shelf.js"))


@cache
def board_style() -> str:
    """The style sheet of a board: that of a page, and what only a board has."""
    sheets = (PAGE / "page.css", PAGE / "session" / "session.css", HERE / "board" / "board.css")
    return _inline(font_face_css() + stylesheet(*SHARED_STYLES, *sheets))


@cache
def board_script() -> str:
    """The script of a board: that of a teacher's page, and the check of its kernel."""
    return _inline(assemble(HERE / "board" / "board.js"))


def _inline(text: str) -> str:
    """Return text that cannot end the <style> or <script> that it stands in."""
    return text.replace("</", "<\\/")
