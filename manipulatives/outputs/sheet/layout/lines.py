"""Text wrapped into lines by measured width."""

from __future__ import annotations

import re

from manipulatives.drawings.shapes import Drawing, Shape, Text
from manipulatives.outputs.sheet.pdf.letters import printable, text_width

PITCH = 1.35
"""From one line to the next, as a share of the size of the type."""

BASE = 1.0
"""From the top of a line to its baseline, as a share of the size of the type."""


_NEW_SENTENCE = re.compile(r"(?<=[.?!]) (?=[A-Z0-9])")


def wrapped(
    text: str, size: float, width: float, *, most: int = 3, sentences: bool = False
) -> list[str]:
    """Return the text wrapped into lines.

    Args:
        text: the text.
        size: the size of its type in millimetres.
        width: the width of the lines in millimetres.
        most: how many lines there may be; a text that is too long ends in an ellipsis.
        sentences: whether every sentence begins a line, which helps slow readers.
    """
    parts = _NEW_SENTENCE.split(printable(text)) if sentences else [printable(text)]
    lines = [line for part in parts for line in _wrap(part, size, width)]
    if len(lines) > most:
        return [*lines[: most - 1], _with_ellipsis(lines[most - 1], size, width)]
    return lines


def paragraph(
    text: str,
    size: float,
    width: float,
    *,
    colour: str = "ink",
    most: int = 3,
    sentences: bool = False,
) -> Drawing:
    """Return the text as a drawing of this width, as high as its lines need.

    Args:
        text: the text.
        size: the size of its type in millimetres.
        width: the width of the drawing in millimetres.
        colour: token of the letters.
        most: how many lines there may be.
        sentences: whether every sentence begins a line.
    """
    lines = wrapped(text, size, width, most=most, sentences=sentences)
    shapes: list[Shape] = [
        Text((0, (number * PITCH + BASE) * size), line, size, colour=colour)
        for number, line in enumerate(lines)
    ]
    return Drawing(width, len(lines) * PITCH * size, tuple(shapes))


def _wrap(text: str, size: float, width: float) -> list[str]:
    lines = [""]
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}".strip()
        if text_width(longer, size) <= width:
            lines[-1] = longer
        elif lines[-1]:
            lines += _split_word(word, size, width)
        else:
            lines = _split_word(word, size, width)
    return lines


def _split_word(word: str, size: float, width: float) -> list[str]:
    # A word that is wider than the line is split after any letter.
    pieces = [""]
    for letter in word:
        if pieces[-1] and text_width(pieces[-1] + letter, size) > width:
            pieces.append("")
        pieces[-1] += letter
    return pieces


def _with_ellipsis(line: str, size: float, width: float) -> str:
    while line and text_width(f"{line}…", size) > width:
        line = line[:-1].rstrip()
    return f"{line}…"
