"""What stands around the tasks: the head of the sheet, headings of rounds, feet of pages."""

from __future__ import annotations

from collections.abc import Sequence

from manipulatives.drawings.shapes import Drawing, Line, Paint, Shape, Text
from manipulatives.lessons.task import Task
from manipulatives.outputs.sheet.cells import LINE, RIGHT, chip
from manipulatives.outputs.sheet.lines import broken, paragraph
from manipulatives.outputs.sheet.paper import Size
from manipulatives.outputs.sheet.pdf import text_width
from manipulatives.outputs.sheet.pictures import orders

RULER = 100.0
"""Length of the line that shows whether the printer kept the size, in millimetres."""

RULER_NOTE = "Is this line 100 mm long? If not, print at actual size."

NAME_SHARE = 0.62
"""How much of the line is for the name and how much for the date."""

DIVIDER = Paint(stroke="line", width=0.5)


def head(title: str, size: Size, width: float, *, key: bool) -> Drawing:
    """Return the head of the first page: title, name and date, and the ruler.

    Args:
        title: the lesson's title.
        size: the sizes of the sheet.
        width: the width between the margins in millimetres.
        key: whether this is the key; it bears a mark.
    """
    mark = chip("Answers", size, paint=RIGHT)
    words = paragraph(title, size.title, width - mark.width - size.text, most=2)
    line = words.height + size.writing
    ruler = _ruler(size, width)
    ruler_from = line + 1.5 * size.text
    shapes: tuple[Shape, ...] = (
        *words.shapes,
        *(mark.at(width - mark.width, 0.1 * size.title) if key else ()),
        *_to_fill_in("Name", 0, NAME_SHARE * width - size.text, line, size),
        *_to_fill_in("Date", NAME_SHARE * width, width, line, size),
        *ruler.at(0, ruler_from),
    )
    return Drawing(width, ruler_from + ruler.height, shapes)


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
    note = paragraph(RULER_NOTE, size.note, width, colour="quiet")
    shapes = (Line((0, tall), (RULER, tall), paint, "ruler"), *marks, *note.at(0, tall + 1))
    return Drawing(width, tall + 1 + note.height, shapes)


def heading(
    title: str, tasks: Sequence[Task], size: Size, width: float, *, prompt: bool
) -> Drawing:
    """Return the heading of a round, and what to do in it.

    Args:
        title: the heading.
        tasks: the tasks of the round.
        size: the sizes of the sheet.
        width: the width between the margins in millimetres.
        prompt: whether the tasks share one prompt, which is then said here.
    """
    todo = dict.fromkeys(_todo(task) for task in tasks)
    said = " ".join([tasks[0].prompt, *todo] if prompt else todo)
    name = paragraph(title, size.heading, width, most=2)
    words = paragraph(said, size.text, width)
    top = 0.6 * size.text
    shapes = (
        Line((0, 0), (width, 0), DIVIDER),
        *name.at(0, top),
        *words.at(0, top + name.height),
    )
    return Drawing(width, top + name.height + words.height, shapes)


def _todo(task: Task) -> str:
    match task.ask:
        case {"by": "choice"}:
            return "Circle the right answer."
        case {"by": "keypad", "form": "time"}:
            return "Write the time on the line."
        case {"by": "keypad"}:
            return "Write the number on the line."
        case _:
            return orders(task)


def foot(note: str, page: int, pages: int, size: Size, width: float) -> Drawing:
    """Return the foot of a page, with free space above it.

    Args:
        note: what the sheet is.
        page: the number of the page.
        pages: how many pages there are.
        size: the sizes of the sheet.
        width: the width between the margins in millimetres.
    """
    number = f"Page {page} of {pages}"
    room = width - text_width(number, size.note) - 2 * size.note
    (left,) = broken(note, size.note, room, most=1)
    # What hangs below the line (g, p, y) stays above the margin too.
    height = 2.6 * size.note
    base = height - 0.3 * size.note
    words = (
        Text((0, base), left, size.note, colour="quiet"),
        Text((width, base), number, size.note, "end", colour="quiet"),
    )
    return Drawing(width, height, words)
