"""The layout of a task on paper: number, picture, prompt and place for the answer."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Self

from manipulatives.drawings.shapes import DIGIT_HEIGHT, Circle, Drawing, Shape, Text, centred
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.columns.written_sum import LINE
from manipulatives.outputs.sheet.layout.blanks import OUTLINE
from manipulatives.outputs.sheet.layout.lines import paragraph, wrapped
from manipulatives.outputs.sheet.layout.paper import Size
from manipulatives.outputs.sheet.tasks.answers import answer_of, least_width
from manipulatives.outputs.sheet.tasks.printed import Manner, Printed
from manipulatives.outputs.sheet.tasks.printers import printed_task
from manipulatives.outputs.sheet.tasks.words import lead_of

GAP = 4.0
"""Between prompt, picture and answer, in millimetres."""

COLUMN_GAP = 8.0

_ONE_LINE = 1.2
_NUMBER = re.compile("[0-9]+")

RINGED = 100
"""Numbers below this fit into a ring."""

MOST_LINES = 5
"""A prompt that needs more lines gets a wider place."""


@dataclass(frozen=True)
class Cell:
    """One task that is to be printed.

    Attributes:
        number: of the task on the sheet.
        task: the task.
        printed: its printed parts.
        manner: how its round is printed.
    """

    number: int
    task: Task
    printed: Printed
    manner: Manner

    @property
    def size(self) -> Size:
        """The sizes of the sheet."""
        return self.manner.size

    @property
    def prompt(self) -> str:
        """What is asked, in words."""
        return self.printed.prompt

    @property
    def left(self) -> float:
        """The distance from the left edge of the cell to the task, beside its number."""
        return 0.0 if self.printed.corner else _beside_number(self.number, self.size)

    def without_prompt(self) -> Self:
        """Return the same task without its prompt, which the heading has."""
        return replace(self, printed=replace(self.printed, prompt=""))

    def with_given(self) -> Self:
        """Return the same task with the given drawing above its own picture."""
        given, picture = self.printed.given, self.printed.picture
        if given is None:
            return self
        shown = picture or Drawing(0, 0)
        below = given.height + GAP / 2
        both = Drawing(
            max(given.width, shown.width),
            below + shown.height,
            (*given.shapes, *shown.at(0, below)),
        )
        return replace(self, printed=replace(self.printed, picture=both, given=None))


def cells_of(
    tasks: Sequence[tuple[int, Task]],
    size: Size,
    width: float,
    *,
    key: bool,
    vocabulary: str,
) -> list[Cell]:
    """Return the tasks of a round, ready to be printed.

    Args:
        tasks: the tasks with their numbers.
        size: the sizes of the sheet.
        width: the width between the margins in millimetres.
        key: whether the answers are given.
        vocabulary: "us" or "uk".
    """
    # The answer to a sum on a number line goes into boxes, too.
    typed = [
        task.answer
        for _, task in tasks
        if task.ask.get("form") == "number" or task.start.get("sum", {}).get("form") == LINE
    ]
    numbers = [number for _, task in tasks for number in _NUMBER.findall(task.prompt)]
    last = max(number for number, _ in tasks)
    manner = Manner(
        size=size,
        key=key,
        room=width - _beside_number(last, size),
        digits=max(map(len, typed), default=1),
        longest=max(map(len, [*typed, *numbers]), default=1),
        lead=max((lead_of(task, size) for _, task in tasks), default=0.0),
        vocabulary=vocabulary,
    )
    return [Cell(number, task, printed_task(task, manner), manner) for number, task in tasks]


def rows_of(cells: Sequence[Cell], width: float) -> list[Drawing]:
    """Return the rows of tasks of a round as drawings, with the same layout in sheet and key.

    Args:
        cells: the tasks.
        width: the width of a row in millimetres.
    """
    columns = columns_for(cells, width)
    across = _across(width, columns)
    beside = all(_goes_beside(cell, across - cell.left) for cell in cells)
    drawn = [drawing_of(cell, across, beside=beside) for cell in cells]
    starts = range(0, len(drawn), columns)
    return [_row(drawn[start : start + columns], across, width) for start in starts]


def columns_for(cells: Sequence[Cell], width: float) -> int:
    """Return how many tasks of a round lie side by side.

    Args:
        cells: the tasks.
        width: the width of a row in millimetres.
    """
    size = cells[0].size
    short = all(cell.printed.short and not cell.prompt for cell in cells)
    most = size.short if short else size.columns
    fitting = (
        columns
        for columns in range(most, 1, -1)
        if all(fits(cell, _across(width, columns)) for cell in cells)
    )
    return next(fitting, 1)


def drawing_of(cell: Cell, width: float, *, beside: bool | None = None) -> Drawing:
    """Return a task with its number as a drawing of this width.

    Args:
        cell: the task.
        width: its width in millimetres.
        beside: whether text and answer stand beside the picture; None where there is room.
    """
    left = cell.left
    if beside is None:
        beside = _goes_beside(cell, width - left)
    body = _body(cell, width - left, beside=beside)
    high = cell.printed.picture.height if cell.printed.picture and not cell.prompt else 0.0
    line = cell.printed.short and high <= _ONE_LINE * cell.size.box
    shapes = (*_badge(cell, high if line else 0.0), *body.at(left, 0))
    return Drawing(width, max(body.height, _badge_height(cell)), shapes)


def _across(width: float, columns: int) -> float:
    return (width - COLUMN_GAP * (columns - 1)) / columns


def _row(cells: Sequence[Drawing], across: float, width: float) -> Drawing:
    shapes: list[Shape] = []
    for column, cell in enumerate(cells):
        shapes += cell.at(column * (across + COLUMN_GAP), 0)
    return Drawing(width, max(cell.height for cell in cells), tuple(shapes))


def fits(cell: Cell, width: float) -> bool:
    """Return whether a task fits into a width and is easy to read there.

    Args:
        cell: the task.
        width: the width in millimetres.
    """
    room = width - cell.left
    least = least_width(cell.task, cell.printed, cell.manner)
    picture = cell.printed.picture
    if picture and cell.printed.corner:
        # Text and answer go beside a clock, so the width must be enough for both.
        return room >= picture.width + GAP + _least_beside(cell)
    if room < max(picture.width if picture else 0.0, least):
        return False
    lines = wrapped(cell.prompt, cell.size.text, room, most=9, sentences=True)
    return not cell.prompt or len(lines) <= MOST_LINES


def _beside_number(number: int, size: Size) -> float:
    """Return the width that the number of a task needs."""
    return (2.1 if number < RINGED else 2.6) * size.note


def _badge_height(cell: Cell) -> float:
    return 1.44 * cell.size.note


def _badge(cell: Cell, height: float) -> tuple[Shape, ...]:
    """Return the number of a task, at the top or in the middle of a line of this height."""
    note = cell.size.note
    radius = 0.72 * note
    down = max(radius, height / 2)
    text = str(cell.number)
    if cell.number < RINGED:
        return (
            Circle((radius, down), radius, OUTLINE, "ring"),
            centred((radius, down), text, note, role="number"),
        )
    return (Text((0, down + DIGIT_HEIGHT * note / 2), text, note, role="number"),)


def _goes_beside(cell: Cell, width: float) -> bool:
    """Whether there is room for text and answer beside the picture."""
    picture = cell.printed.picture
    if picture is None:
        return True
    asks = cell.prompt or cell.printed.answer != "picture"
    return bool(asks) and width - picture.width - GAP >= _least_beside(cell)


def _least_beside(cell: Cell) -> float:
    least = least_width(cell.task, cell.printed, cell.manner)
    words = cell.prompt or cell.printed.answer not in ("boxes", "choices")
    return max(cell.size.prompt, least) if words else least


def _body(cell: Cell, width: float, *, beside: bool) -> Drawing:
    picture = cell.printed.picture
    if picture is None:
        return _without_picture(cell, width)
    if not beside:
        return _stacked(cell, picture, width)
    room = width - picture.width - GAP
    prompt = _prompt(cell, room)
    answer = answer_of(cell.task, cell.printed, cell.manner, room)
    gap = GAP if prompt.height else 0.0
    height = max(picture.height, prompt.height + gap + answer.height)
    # Beside a clock the answer is at the bottom; beside other pictures it follows the question.
    low = height - answer.height
    down = low if cell.printed.corner else prompt.height + gap
    if not cell.prompt and not cell.printed.corner:
        down = low / 2
    left = picture.width + GAP
    shapes = (*picture.shapes, *prompt.at(left, 0), *answer.at(left, down))
    return Drawing(width, height, shapes)


def _without_picture(cell: Cell, width: float) -> Drawing:
    """Return a task without a picture: the answer below the prompt."""
    prompt = _prompt(cell, width)
    answer = answer_of(cell.task, cell.printed, cell.manner, width)
    gap = GAP if cell.printed.answer in ("line", "parts") else GAP / 2
    below = prompt.height + gap if prompt.height else 0.0
    shapes = (*prompt.shapes, *answer.at(0, below))
    return Drawing(width, below + answer.height, shapes)


def _stacked(cell: Cell, picture: Drawing, width: float) -> Drawing:
    """Return a task with its prompt above the picture and its answer below it."""
    prompt = _prompt(cell, width)
    answer = answer_of(cell.task, cell.printed, cell.manner, width)
    picture_from = prompt.height + (GAP / 2 if prompt.height else 0)
    answer_from = picture_from + picture.height + (GAP if answer.height else 0)
    shapes = (
        *prompt.shapes,
        *picture.at(0, picture_from),
        *answer.at(0, answer_from),
    )
    return Drawing(width, answer_from + answer.height, shapes)


def _prompt(cell: Cell, width: float) -> Drawing:
    if not cell.prompt:
        return Drawing(width, 0)
    return paragraph(cell.prompt, cell.size.text, width, most=9, sentences=True)
