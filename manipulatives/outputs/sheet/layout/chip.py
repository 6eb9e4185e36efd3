"""Text in a box with round ends: a choice, an answer, a mark."""

from __future__ import annotations

from manipulatives.drawings.shapes import Box, Drawing, Paint, Text
from manipulatives.outputs.sheet.layout.blanks import OUTLINE
from manipulatives.outputs.sheet.layout.lines import PITCH, wrapped
from manipulatives.outputs.sheet.layout.paper import Size
from manipulatives.outputs.sheet.pdf.letters import text_width


def chip(text: str, size: Size, width: float | None = None, paint: Paint = OUTLINE) -> Drawing:
    """Return text in a box with round ends, like a ring drawn around it.

    Args:
        text: the text.
        size: the sizes of the sheet.
        width: how wide the box is in millimetres, None for as wide as the text needs.
        paint: the look of the box.
    """
    edge = 0.45 * size.text
    if width is None:
        width = chip_width(text, size)
    # A little more, so that rounding does not wrap text that was measured for the box.
    lines = wrapped(text, size.text, width - 2 * edge + 0.01)
    height = (len(lines) - 1) * PITCH * size.text + 2 * size.text
    box = Box((0, 0), width, height, 0.5 * size.text, paint, "choice")
    words = tuple(
        Text((width / 2, (1.35 + at * PITCH) * size.text), line, size.text, "middle")
        for at, line in enumerate(lines)
    )
    return Drawing(width, height, (box, *words))


def chip_width(text: str, size: Size) -> float:
    """Return how wide a box with round ends is around a line of text, in millimetres.

    Args:
        text: the text.
        size: the sizes of the sheet.
    """
    return text_width(text, size.text) + 0.9 * size.text
