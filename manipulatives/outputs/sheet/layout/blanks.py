"""Places to write: lines, boxes for digits, rows of numbers and sums."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from manipulatives.drawings.shapes import Box, Circle, Drawing, Line, Paint, Shape, centred
from manipulatives.outputs.sheet.layout.paper import Size
from manipulatives.outputs.sheet.pdf.letters import text_width

LINE = Paint(stroke="ink", width=0.4)
GUIDE = Paint(stroke="edge", width=0.25, dashes=(1.0, 1.5))
OUTLINE = Paint(stroke="edge", width=0.35)
TO_WRITE = Paint(fill="sheet", stroke="ink", width=0.4)
RIGHT = Paint(fill="move-soft", stroke="move", width=0.8)

BETWEEN = 0.35
"""Between the parts of a row, as a share of the size of its type."""

CELL = 0.62
"""How wide a cell of a number row is for each digit, as a share of a digit's box."""


@dataclass(frozen=True)
class Blank:
    """A place for a number in a row.

    Attributes:
        digits: how many boxes there are.
        answer: what a key writes into them; its last digit into the last box.
    """

    digits: int
    answer: str


@dataclass(frozen=True)
class Sign:
    """A place for <, = or > in a row.

    Attributes:
        answer: what a key writes into it.
    """

    answer: str


Part = str | Blank | Sign


def writing_line(size: Size, width: float) -> Drawing:
    """Return a line to write on, with one above it.

    Beginners control the size of their writing best between two lines (Reidlinger, Candler &
    Neville 2012, first graders).

    Args:
        size: the sizes of the sheet.
        width: how long it is in millimetres.
    """
    lines = (
        Line((0, 0), (width, 0), GUIDE, "guide"),
        Line((0, size.writing), (width, size.writing), LINE, "writing"),
    )
    return Drawing(width, size.writing, lines)


def boxes(blank: Blank, size: Size, *, key: bool) -> Drawing:
    """Return a box for each digit of a number, filled in for a key.

    Args:
        blank: the place for the number.
        size: the sizes of the sheet.
        key: whether the answer is written in.
    """
    side = size.box
    shapes: list[Shape] = []
    written = blank.answer.rjust(blank.digits) if key else ""
    for at in range(blank.digits):
        shapes.append(Box((at * side, 0), side, side, 0, TO_WRITE, "box"))
        if written[at : at + 1].strip():
            middle = (at + 0.5) * side, side / 2
            shapes.append(centred(middle, written[at], size.sum, colour="move", role="answer"))
    return Drawing(blank.digits * side, side, tuple(shapes))


def row(parts: Sequence[Part], size: Size, *, key: bool) -> Drawing:
    """Return a sum or another row of parts in one line, with boxes to write in.

    Args:
        parts: its parts, from left to right.
        size: the sizes of the sheet.
        key: whether the answers are written in.

    Example:
        >>> from manipulatives.outputs.sheet.layout.paper import STANDARD
        >>> made = row(["8 + 5 =", Blank(2, "13")], STANDARD, key=True)
        >>> [shape.text for shape in made.shapes if shape.role in ("said", "answer")]
        ['8 + 5 =', '1', '3']
    """
    shapes: list[Shape] = []
    left = 0.0
    for part in parts:
        if shapes:
            left += BETWEEN * size.sum
        drawn = _part(part, size, key=key)
        shapes += drawn.at(left, 0)
        left += drawn.width
    return Drawing(left, size.box, tuple(shapes))


def _part(part: Part, size: Size, *, key: bool) -> Drawing:
    if isinstance(part, Blank):
        return boxes(part, size, key=key)
    middle = size.box / 2
    if isinstance(part, Sign):
        shapes: list[Shape] = [Circle((middle, middle), middle, TO_WRITE, "box")]
        if key:
            sign = centred((middle, middle), part.answer, size.sum, colour="move", role="answer")
            shapes.append(sign)
        return Drawing(size.box, size.box, tuple(shapes))
    width = text_width(part, size.sum)
    return Drawing(width, size.box, (centred((width / 2, middle), part, size.sum, role="said"),))


def number_row(numbers: Sequence[str | Blank], digits: int, size: Size, *, key: bool) -> Drawing:
    """Return numbers in a row of cells, some of them empty to be written in.

    Args:
        numbers: the numbers, or places for them.
        digits: how many digits each has room for.
        size: the sizes of the sheet.
        key: whether the empty ones are filled in.
    """
    wide, high = max(1.1, CELL * digits + 0.1) * size.box, size.box
    shapes: list[Shape] = []
    for at, one in enumerate(numbers):
        given = isinstance(one, str)
        corner, middle = (at * wide, 0.0), ((at + 0.5) * wide, high / 2)
        shapes.append(Box(corner, wide, high, 0, OUTLINE if given else TO_WRITE, "cell"))
        if given:
            shapes.append(centred(middle, str(one), size.sum, role="said"))
        elif key:
            answer = one.answer if isinstance(one, Blank) else ""
            shapes.append(centred(middle, answer, size.sum, colour="move", role="answer"))
    # Draw the empty cells last, so that their edges cover those of their neighbours.
    shapes.sort(key=lambda shape: isinstance(shape, Box) and shape.paint is TO_WRITE)
    return Drawing(wide * len(numbers), high, tuple(_texts_last(shapes)))


def _texts_last(shapes: Sequence[Shape]) -> list[Shape]:
    return sorted(shapes, key=lambda shape: not isinstance(shape, Box))
