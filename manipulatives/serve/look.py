"""The dress of what is served: the kit's font, colours and code, sent along with each page."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from manipulatives.data import TOKENS
from manipulatives.outputs.font import font_face_css
from manipulatives.outputs.page.page import HERE as PAGE
from manipulatives.widgets.assemble import assemble, stylesheet
from manipulatives.widgets.manipulative import HERE as WIDGETS

HERE = Path(__file__).parent
_SHARED = (TOKENS, WIDGETS / "shared" / "shared.css")


@cache
def shelf_style() -> str:
    """The style sheet of the shelf and its sentences."""
    return _harmless(font_face_css() + stylesheet(*_SHARED, HERE / "pages" / "shelf.css"))


@cache
def shelf_script() -> str:
    """The code of the shelf, which works without it too."""
    return _harmless(assemble(HERE / "pages" / "shelf.js"))


@cache
def board_style() -> str:
    """The style sheet of a board: that of a page, and what only a board has."""
    sheets = (PAGE / "page.css", PAGE / "session.css", HERE / "board" / "board.css")
    return _harmless(font_face_css() + stylesheet(*_SHARED, *sheets))


@cache
def board_script() -> str:
    """The code of a board: that of a page that teaches, and the watch over its kernel."""
    return _harmless(assemble(HERE / "board" / "board.js"))


def _harmless(text: str) -> str:
    """Return text that cannot end the element it stands in."""
    return text.replace("</", "<\\/")
