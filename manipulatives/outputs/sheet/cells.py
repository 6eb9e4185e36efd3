"""Tasks on paper: number, picture and prompt, and where the answer goes."""

from __future__ import annotations

from collections.abc import Sequence

from manipulatives.drawings.shapes import (
    DIGIT_HEIGHT,
    Box,
    Circle,
    Drawing,
    Line,
    Paint,
    Shape,
    Text,
    centred,
)
from manipulatives.lessons.task import Task
from manipulatives.outputs.sheet.lines import PITCH, broken, paragraph
from manipulatives.outputs.sheet.paper import Size
from manipulatives.outputs.sheet.pdf import text_width
from manipulatives.outputs.sheet.pictures import picture_of

GAP = 4.0
"""Between prompt, picture and answer, in millimetres."""

COLUMN_GAP = 8.0

RINGED = 100
"""Numbers below this fit into a ring."""

LINE = Paint(stroke="ink", width=0.4)
GUIDE = Paint(stroke="edge", width=0.25, dashes=(1.0, 1.5))
OUTLINE = Paint(stroke="edge", width=0.35)
RIGHT = Paint(fill="move-soft", stroke="move", width=0.8)


def rows_of(
    tasks: Sequence[tuple[int, Task]], size: Size, width: float, *, prompts: bool, key: bool
) -> list[Drawing]:
    """Return the tasks of a round, one drawing a row.

    Sheet and key are laid out alike.

    Args:
        tasks: the tasks with their numbers.
        size: the sizes of the sheet.
        width: the width of a row in millimetres.
        prompts: whether each has its own prompt; if not, the heading says what to do.
        key: whether the answers are given.
    """
    pictures = [_numbered(number, picture_of(task, size, key=key), size) for number, task in tasks]
    needed = max(picture.width for picture in pictures) + GAP + size.prompt
    columns = max(1, min(size.columns, int((width + COLUMN_GAP) / (needed + COLUMN_GAP))))
    across = (width - COLUMN_GAP * (columns - 1)) / columns
    cells = [
        _cell(picture, task, size, across, prompts=prompts, key=key)
        for picture, (_, task) in zip(pictures, tasks, strict=True)
    ]
    starts = range(0, len(cells), columns)
    return [_row(cells[start : start + columns], across, width) for start in starts]


def _row(cells: Sequence[Drawing], across: float, width: float) -> Drawing:
    shapes: list[Shape] = []
    for column, cell in enumerate(cells):
        shapes += cell.at(column * (across + COLUMN_GAP), 0)
    return Drawing(width, max(cell.height for cell in cells), tuple(shapes))


def _numbered(number: int, picture: Drawing, size: Size) -> Drawing:
    # A clock is round: its top left corner is free.
    if number < RINGED:
        radius = 0.72 * size.note
        badge: tuple[Shape, ...] = (
            Circle((radius, radius), radius, OUTLINE, "ring"),
            centred((radius, radius), str(number), size.note, role="number"),
        )
    else:
        badge = (Text((0, DIGIT_HEIGHT * size.note), str(number), size.note, role="number"),)
    return Drawing(picture.width, picture.height, (*badge, *picture.shapes))


def _cell(
    picture: Drawing, task: Task, size: Size, width: float, *, prompts: bool, key: bool
) -> Drawing:
    left = picture.width + GAP
    if width - left < size.prompt:
        return _stacked(picture, task, size, width, prompts=prompts, key=key)
    beside = width - left
    prompt = _prompt(task, size, beside) if prompts else Drawing(beside, 0)
    answer = _answer(task, size, beside, key=key)
    height = max(picture.height, prompt.height + GAP + answer.height)
    shapes = (*picture.shapes, *prompt.at(left, 0), *answer.at(left, height - answer.height))
    return Drawing(width, height, shapes)


def _stacked(
    picture: Drawing, task: Task, size: Size, width: float, *, prompts: bool, key: bool
) -> Drawing:
    """A task whose picture is too wide for text beside it: prompt above, answer below."""
    prompt = _prompt(task, size, width) if prompts else Drawing(width, 0)
    answer = _answer(task, size, width, key=key)
    picture_from = prompt.height + GAP / 2
    answer_from = picture_from + picture.height + GAP
    shapes = (
        *prompt.shapes,
        *picture.at(0, picture_from),
        *answer.at(0, answer_from),
    )
    return Drawing(width, answer_from + answer.height, shapes)


def _prompt(task: Task, size: Size, width: float) -> Drawing:
    return paragraph(task.prompt, size.text, width, most=6, sentences=True)


def _answer(task: Task, size: Size, width: float, *, key: bool) -> Drawing:
    """The place for the answer, or the answer; as high in the sheet as in the key."""
    if task.ask["by"] == "choice":
        return _choices(task, size, width, key=key)
    given = _given(task, size, width)
    if task.ask["by"] == "manipulative":
        # The pupil's answer is the picture; the key also says it in writing.
        return given if key else Drawing(width, given.height)
    height = max(size.writing, given.height)
    if key:
        return Drawing(width, height, given.at(0, height - given.height))
    # A line above and one below: beginners keep their writing to size best between two
    # (Reidlinger, Candler & Neville 2012, first graders).
    top, across = height - size.writing, min(width, 1.5 * size.picture)
    lines = (
        Line((0, top), (across, top), GUIDE, "guide"),
        Line((0, height), (across, height), LINE, "writing"),
    )
    return Drawing(width, height, lines)


def _given(task: Task, size: Size, width: float) -> Drawing:
    """The answer of a key: boxed, and how it is said."""
    box = chip(task.answer, size, paint=RIGHT)
    beside = box.width + 0.6 * size.text
    if beside + text_width(task.spoken, size.note) <= width:
        spoken = paragraph(task.spoken, size.note, width - beside, colour="quiet")
        down = (box.height - spoken.height) / 2
        return Drawing(width, box.height, (*box.shapes, *spoken.at(beside, down)))
    spoken = paragraph(task.spoken, size.note, width, colour="quiet")
    height = box.height + GAP / 4 + spoken.height
    return Drawing(width, height, (*box.shapes, *spoken.at(0, height - spoken.height)))


def _choices(task: Task, size: Size, width: float, *, key: bool) -> Drawing:
    choices: list[str] = task.ask["choices"]
    gap = 0.45 * size.text
    widest = max(chip(choice, size).width for choice in choices)
    most = max(1, int((width + gap) / (widest + gap)))
    rows = -(-len(choices) // most)
    columns = -(-len(choices) // rows)
    across = min(2 * widest, (width - gap * (columns - 1)) / columns)
    shapes: list[Shape] = []
    top = 0.0
    for start in range(0, len(choices), columns):
        row = [
            chip(choice, size, across, RIGHT if key and choice == task.answer else OUTLINE)
            for choice in choices[start : start + columns]
        ]
        for column, box in enumerate(row):
            shapes += box.at(column * (across + gap), top)
        top += max(box.height for box in row) + gap
    return Drawing(width, top - gap, tuple(shapes))


def chip(text: str, size: Size, width: float | None = None, paint: Paint = OUTLINE) -> Drawing:
    """Return text in a box.

    Args:
        text: the text.
        size: the sizes of the sheet.
        width: how wide the box is in millimetres, None for as wide as the text needs.
        paint: the look of the box.
    """
    edge = 0.45 * size.text
    if width is None:
        width = text_width(text, size.text) + 2 * edge
    # A hair more, so that text measured for the box is not broken by rounding.
    lines = broken(text, size.text, width - 2 * edge + 0.01)
    height = (len(lines) - 1) * PITCH * size.text + 2 * size.text
    box = Box((0, 0), width, height, 0.5 * size.text, paint, "choice")
    words = tuple(
        Text((width / 2, (1.35 + row * PITCH) * size.text), line, size.text, "middle")
        for row, line in enumerate(lines)
    )
    return Drawing(width, height, (box, *words))
