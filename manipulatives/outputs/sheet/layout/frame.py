"""The head of the sheet, the headings of rounds, and the feet of pages."""

from __future__ import annotations

from manipulatives.drawings.shapes import Drawing, Line, Paint, Shape, Text
from manipulatives.outputs.sheet.layout.blanks import LINE, RIGHT
from manipulatives.outputs.sheet.layout.chip import chip
from manipulatives.outputs.sheet.layout.lines import paragraph, wrapped
from manipulatives.outputs.sheet.layout.paper import Size
from manipulatives.outputs.sheet.layout.qr import qr_drawing
from manipulatives.outputs.sheet.pdf.letters import text_width

RULER = 100.0
"""Length of the line that shows whether the printer scaled the page, in millimetres."""

RULER_NOTE = "Is this line 100 mm long? If not, print at actual size."

SCAN_NOTE = "Scan to do it on a screen."

NAME_SHARE = 0.62
"""The share of the line for the name; the rest is for the date."""

DIVIDER = Paint(stroke="line", width=0.5)


def head(
    title: str, size: Size, width: float, *, mark: str = "", address: str = "", names: bool = True
) -> Drawing:
    """Return the head of the first page: title, name and date, ruler and QR code.

    Args:
        title: the lesson's title.
        size: the sizes of the sheet.
        width: the width between the margins in millimetres.
        mark: a word beside the title ("Answers"); empty for none.
        address: of the lesson's page, for a QR code; empty for none.
        names: whether there are lines for name and date.
    """
    marked = chip(mark, size, paint=RIGHT) if mark else Drawing(0, 0)
    words = paragraph(title, size.title, width - marked.width - size.text, most=2)
    line = words.height + size.writing if names else words.height
    shapes: list[Shape] = [*words.shapes, *marked.at(width - marked.width, 0.1 * size.title)]
    if names:
        shapes += _to_fill_in("Name", 0, NAME_SHARE * width - size.text, line, size)
        shapes += _to_fill_in("Date", NAME_SHARE * width, width, line, size)
    below = line + 1.5 * size.text if names else line + 0.5 * size.text
    code = _qr_with_note(address, size, width - RULER - size.text) if address else Drawing(0, 0)
    ruler = _ruler(size, width - code.width - size.text if address else width)
    shapes += [*ruler.at(0, below), *code.at(width - code.width, below)]
    return Drawing(width, below + max(ruler.height, code.height), tuple(shapes))


def _qr_with_note(address: str, size: Size, room: float) -> Drawing:
    code = qr_drawing(address)
    gap = 0.5 * size.note
    note = paragraph(SCAN_NOTE, size.note, room - code.width - gap, colour="quiet", most=5)
    height = max(code.height, note.height)
    left = room - code.width
    return Drawing(room, height, (*note.shapes, *code.at(left, 0)))


def _to_fill_in(label: str, start: float, end: float, line: float, size: Size) -> list[Shape]:
    begin = start + text_width(label, size.text) + 0.5 * size.text
    return [
        Text((start, line), label, size.text, colour="quiet"),
        Line((begin, line), (end, line), LINE, "writing"),
    ]


def _ruler(size: Size, width: float) -> Drawing:
    paint = Paint(stroke="ink", width=0.3)
    tall = 3.0
    marks = [
        Line((10 * mark, tall), (10 * mark, 0 if mark % 5 == 0 else tall / 2), paint)
        for mark in range(11)
    ]
    note = paragraph(RULER_NOTE, size.note, max(width, RULER), colour="quiet")
    shapes = (Line((0, tall), (RULER, tall), paint, "ruler"), *marks, *note.at(0, tall + 1))
    return Drawing(width, tall + 1 + note.height, shapes)


def heading(title: str, text: str, size: Size, width: float) -> Drawing:
    """Return the heading of a round, and what to do in it.

    Args:
        title: the heading.
        text: what all tasks ask, and what to do.
        size: the sizes of the sheet.
        width: the width between the margins in millimetres.
    """
    name = paragraph(title, size.heading, width, most=2)
    words = paragraph(text, size.text, width) if text else Drawing(width, 0)
    top = 0.6 * size.text
    shapes = (
        Line((0, 0), (width, 0), DIVIDER),
        *name.at(0, top),
        *words.at(0, top + name.height),
    )
    return Drawing(width, top + name.height + words.height, shapes)


def foot(note: str, page: int, pages: int, size: Size, width: float) -> Drawing:
    """Return the foot of a page, with free space above it.

    Args:
        note: names the sheet.
        page: the number of the page.
        pages: how many pages there are.
        size: the sizes of the sheet.
        width: the width between the margins in millimetres.
    """
    number = f"Page {page} of {pages}"
    room = width - text_width(number, size.note) - 2 * size.note
    (left,) = wrapped(note, size.note, room, most=1)
    # Letters that reach below the line (g, p, y) stay above the margin too.
    height = 2.6 * size.note
    base = height - 0.3 * size.note
    words = (
        Text((0, base), left, size.note, colour="quiet"),
        Text((width, base), number, size.note, "end", colour="quiet"),
    )
    return Drawing(width, height, words)
