"""The dress of what is served: the kit's font, colours and code, sent along with each page."""

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
    return _harmless(font_face_css() + stylesheet(*SHARED_STYLES, HERE / "pages" / "shelf.css"))


@cache
def shelf_script() -> str:
    """The code of the shelf, which works without it too."""
    return _harmless(assemble(HERE / "pages" / "shelf.js"))


@cache
def board_style() -> str:
    """The style sheet of a board: that of a page, and what only a board has."""
    sheets = (PAGE / "page.css", PAGE / "session" / "session.css", HERE / "board" / "board.css")
    return _harmless(font_face_css() + stylesheet(*SHARED_STYLES, *sheets))


@cache
def board_script() -> str:
    """The code of a board: that of a page that teaches, and the watch over its kernel."""
    return _harmless(assemble(HERE / "board" / "board.js"))


def _harmless(text: str) -> str:
    """Return text that cannot end the element it stands in."""
    return text.replace("</", "<\\/")
