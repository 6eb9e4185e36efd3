"""The place for an answer, or in a key the answer; both have the same height."""

from __future__ import annotations

import re

from manipulatives.drawings.shapes import Drawing, Shape
from manipulatives.lessons.tasks.task import Task
from manipulatives.outputs.sheet.layout.blanks import (
    OUTLINE,
    RIGHT,
    Blank,
    boxes,
    row,
    writing_line,
)
from manipulatives.outputs.sheet.layout.chip import chip, chip_width
from manipulatives.outputs.sheet.layout.lines import paragraph
from manipulatives.outputs.sheet.layout.paper import Size
from manipulatives.outputs.sheet.pdf.letters import text_width
from manipulatives.outputs.sheet.tasks.printed import Manner, Printed

GAP = 1.0
LONGEST_LINE = 66.0
"""The longest line for an answer in millimetres; that of a story may be longer."""

STORY_LINE = 120.0
_WORDS = 1.6
_APART = 0.45
_ABREAST = {3: 3, 4: 2}
"""By the number of choices: how many are side by side at least, so that rows are equally long."""


def answer_of(task: Task, printed: Printed, manner: Manner, width: float) -> Drawing:
    """Return the place for an answer, or the answer.

    Args:
        task: the task.
        printed: its printed parts.
        manner: how its round is printed.
        width: how wide it may be in millimetres.
    """
    match printed.answer:
        case "choices":
            return _choices(task, manner, width)
        case "line":
            return _line(task, printed, manner, width)
        case "boxes":
            blank = Blank(manner.digits, task.answer)
            return boxes(blank, manner.size, key=manner.key)
        case "parts":
            return _parts(task, manner)
        case "picture and words":
            # The pupil answers in the picture; the key also prints the answer in words.
            given = _given(task, manner.size, width)
            return given if manner.key else Drawing(width, given.height)
        case _:
            return Drawing(width, 0)


def least_width(task: Task, printed: Printed, manner: Manner) -> float:
    """Return how wide the place for an answer is at least.

    Args:
        task: the task.
        printed: its printed parts.
        manner: how its round is printed.
    """
    match printed.answer:
        case "choices":
            choices = task.ask["choices"]
            widest = max(chip(choice, manner.size).width for choice in choices)
            abreast = _ABREAST.get(len(choices), 1)
            return abreast * widest + (abreast - 1) * _APART * manner.size.text
        case "boxes":
            return manner.digits * manner.size.box
        case "parts":
            return _parts(task, manner).width
        case _:
            return 0.0


def _line(task: Task, printed: Printed, manner: Manner, width: float) -> Drawing:
    size = manner.size
    given = _given(task, size, width)
    height = max(size.writing, given.height)
    if manner.key:
        return Drawing(width, height, given.at(0, height - given.height))
    longest = STORY_LINE if printed.picture is None else LONGEST_LINE
    line = writing_line(size, min(width, longest))
    return Drawing(width, height, line.at(0, height - line.height))


def _parts(task: Task, manner: Manner) -> Drawing:
    """Return the parts of a number, with a box for each digit where every digit has its part."""
    size = manner.size
    parts = task.answer.split(" + ")
    number = max(re.findall("[0-9]+", task.prompt), key=len, default="")
    if len(parts) == len(number) and [len(part) for part in parts] == [*range(len(parts), 0, -1)]:
        pieces: list[str | Blank] = []
        for part in parts:
            pieces += ["+"] * bool(pieces) + [Blank(len(part), part)]
        return row(pieces, size, key=manner.key)
    room = (len(number) * (len(number) + 1) / 2 + len(number) - 1) * size.box
    if manner.key:
        given = chip(task.answer, size, paint=RIGHT)
        height = max(size.writing, given.height)
        return Drawing(max(room, given.width), height, given.at(0, height - given.height))
    line = writing_line(size, room)
    height = max(size.writing, chip(task.answer, size).height)
    return Drawing(room, height, line.at(0, height - line.height))


def _given(task: Task, size: Size, width: float) -> Drawing:
    """Return the answer of a key in a box, and how it is spoken."""
    box = chip(task.answer, size, min(width, chip_width(task.answer, size)), RIGHT)
    if task.spoken == task.answer:
        return box
    beside = box.width + 0.6 * size.text
    if beside + text_width(task.spoken, size.note) <= width:
        spoken = paragraph(task.spoken, size.note, width - beside, colour="quiet")
        down = (box.height - spoken.height) / 2
        return Drawing(width, box.height, (*box.shapes, *spoken.at(beside, down)))
    spoken = paragraph(task.spoken, size.note, width, colour="quiet")
    height = box.height + GAP + spoken.height
    return Drawing(width, height, (*box.shapes, *spoken.at(0, height - spoken.height)))


def _choices(task: Task, manner: Manner, width: float) -> Drawing:
    choices: list[str] = task.ask["choices"]
    size = manner.size
    gap = _APART * size.text
    widest = min(width, max(chip_width(choice, size) for choice in choices))
    most = max(1, int((width + gap) / (widest + gap)))
    rows = -(-len(choices) // most)
    columns = -(-len(choices) // rows)
    across = min(max(widest, _WORDS * size.box), (width - gap * (columns - 1)) / columns)
    shapes: list[Shape] = []
    top = 0.0
    for start in range(0, len(choices), columns):
        chips = [
            chip(choice, size, across, RIGHT if manner.key and choice == task.answer else OUTLINE)
            for choice in choices[start : start + columns]
        ]
        for column, box in enumerate(chips):
            shapes += box.at(column * (across + gap), top)
        top += max(box.height for box in chips) + gap
    return Drawing(columns * (across + gap) - gap, top - gap, tuple(shapes))
