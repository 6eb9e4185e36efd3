"""Tasks about a rectangle in rows and columns of squares: how many squares there are."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from itertools import accumulate
from typing import Any, NamedTuple

from manipulatives.lessons.strands.shapes.mistakes.angles import SQUARES
from manipulatives.lessons.strands.shapes.paper import found, to_look_at
from manipulatives.lessons.strands.shapes.pools.polygons import Drawn
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.words import number_in_words
from manipulatives.maths.shapes.data import Cut
from manipulatives.maths.shapes.papers import SPACES

# Arrays of these ages have up to five rows and five columns (Common Core 2.OA.C.4).
MOST = 5
SIZES = (1, 2)


class Rows(NamedTuple):
    """A rectangle in rows of squares.

    Attributes:
        rows: how many rows.
        columns: how many squares a row has.
        size: how many spaces a square is wide.

    Example:
        >>> Rows(2, 3, 1).columns
        3
    """

    rows: int
    columns: int
    size: int


@cache
def _every() -> tuple[Rows, ...]:
    return tuple(
        Rows(rows, columns, size)
        for rows in range(2, MOST + 1)
        for columns in range(2, MOST + 1)
        for size in SIZES
        if size * max(rows, columns) <= SPACES
    )


def in_rows(_: Mapping[str, Any]) -> tuple[Rows, ...]:
    """Return the rectangles that there are.

    Example:
        >>> len(in_rows({}))
        25
    """
    return _every()


def difficulty_of_rows(item: Rows) -> int:
    """Return how hard a rectangle is: by its squares.

    Example:
        >>> difficulty_of_rows(Rows(2, 3, 1))
        6
    """
    return item.rows * item.columns


def count_squares(request: Request) -> Task:
    """Make a task that asks how many squares a rectangle is made of."""
    item: Rows = request.item
    rows, columns, size = item
    wide, high = size * columns, size * rows
    left, top = (SPACES - wide) // 2, (SPACES - high) // 2
    right, low = left + wide, top + high
    one = Drawn("rectangle", "square", ((left, top), (right, top), (right, low), (left, low)))
    upright: list[Cut] = [[[x, top], [x, low]] for x in range(left + size, right, size)]
    level: list[Cut] = [[[left, y], [right, y]] for y in range(top + size, low, size)]
    start = to_look_at(one, request.vocabulary)
    start["shape"]["cuts"] = [*upright, *level]
    counted = [*accumulate([columns] * rows)]
    many, figures = rows * columns, ", ".join(map(str, counted))
    words = f"{number_in_words(many)} squares"
    return Task(
        skill=request.skill,
        kind="rows",
        prompt="How many squares are there?",
        say="How many squares are there? Count one row, then row by row.",
        manipulative="PolygonDrawer",
        start=start,
        **typed_number(many, request.vocabulary, spoken=words),
        steps=(
            Step(
                say=f"Each row has {columns} squares.",
                chant=f"{columns}",
                numbers=found("squares in a row", columns),
            ),
            Step(
                say=f"Count row by row: {figures}.",
                chant=figures,
                numbers={
                    "act": "count",
                    "what": "squares",
                    "from": 0,
                    "by": columns,
                    "to": many,
                    "counted": counted,
                },
            ),
            Step(
                say=f"{' + '.join([str(columns)] * rows)} = {many}.",
                chant=words,
                show={"show": ["shares"]},
                answer=f"{many}",
                numbers={"act": "add", "terms": [columns] * rows, "total": many},
            ),
        ),
        mistakes=foreseen(
            [(rule, rule.wrong(rows, columns)) for rule in SQUARES],
            request.vocabulary,
            right=many,
            numbers=done_with("count", what="squares", rows=rows, columns=columns),
        ),
    )


GENERATORS = {
    "shapes.rows_columns": TaskGenerator(
        items=in_rows, task=count_squares, difficulty=difficulty_of_rows
    ),
}
