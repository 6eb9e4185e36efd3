"""A written sum on squared paper: digits, marks, and the blocks that stand for them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from manipulatives.data import table
from manipulatives.drawings.block_rows import SIZES
from manipulatives.drawings.blocks import SHORT, block_shapes
from manipulatives.drawings.shapes import (
    Box,
    Drawing,
    Line,
    Paint,
    Point,
    Shape,
    Text,
    centred,
)
from manipulatives.maths.columns.blocks import blocks_of
from manipulatives.maths.columns.written_sum import ADD, LINE, PARTS, Sum, check_sum, in_signs
from manipulatives.maths.number.place_value import PLACES

SQUARE = 10.0
"""The side of a square in millimetres, unless another is asked for."""

TYPE, MARK, HEAD = 0.62, 0.36, 0.5
"""Size of digits and marks, and height of the headings, as shares of a square."""

_PARTS_WIDE, _PARTS_TYPE = 1.75, 0.5
_STRIP = table("blocks")["strip"]
_PITCH: dict[str, float] = _STRIP["pitch"]
_COLUMN, _MOST = _STRIP["column"], _STRIP["most"]
_GAP, _ROW = 3.0, 13.0
_UNIT = 0.9
_BELOW = PLACES[::-1]
_EDGE = 0.4
_APART = 0.42
_RULES = Paint(stroke="line", width=0.2)


def columns_drawing(
    sum_: object,
    *,
    headings: bool = True,
    marks: bool = True,
    blocks: bool = False,
    below: bool = False,
    square: float = SQUARE,
    least_type: float = 0.0,
) -> Drawing:
    """Return a sum on squared paper.

    Args:
        sum_: the sum, with what is written to it.
        headings: whether the columns are named.
        marks: whether there is a row of squares for marks.
        blocks: whether the blocks stand to its right; there are none for ten thousands.
        below: whether carry marks stand below the answer.
        square: the side of a square in millimetres.
        least_type: smallest type allowed, in millimetres.

    Raises:
        ValueError: if it is no sum.

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> columns_drawing(new_sum("+", [47, 38])).description
        '47 + 38'
    """
    checked = check_sum(sum_)
    sheet = _Sheet(checked, square, headings=headings, marks=marks, below=below, least=least_type)
    shapes = list(sheet.drawn())
    width, height = sheet.width, sheet.height
    if blocks:
        strip = _Strip(checked, height, least_type or 0.4 * square)
        shapes += [shape.moved(width + square / 2, 0) for shape in strip.drawn()]
        width += square / 2 + strip.width
    return Drawing(width, height, tuple(shapes), "A written sum", in_signs(checked))


class _Sheet:
    """The squares and their content."""

    def __init__(
        self, sum_: Sum, square: float, *, headings: bool, marks: bool, below: bool, least: float
    ) -> None:
        self.sum = sum_
        self.square = square
        self.least = least
        self.across = max(len(str(number)) for number in sum_["numbers"]) + 1
        self.parts = sum_["form"] == PARTS
        self.wide = square * (_PARTS_WIDE if self.parts else 1.0)
        self.head = HEAD * square if headings else 0.0
        adding = sum_["operation"] == ADD
        marked = marks and sum_["form"] != LINE and not (adding and self.parts)
        under = adding and below
        self.rows = [
            *(["marks"] if marked and not under else []),
            *(str(index) for index in range(len(sum_["numbers"]))),
            *(["parts"] if self.parts else []),
            "answer",
            *(["marks"] if marked and under else []),
        ]
        self.width = self.across * self.wide
        self.height = self.head + len(self.rows) * square

    def drawn(self) -> Iterator[Shape]:
        edge = Paint("sheet", "edge", _EDGE)
        wide, high = self.width - _EDGE, self.height - _EDGE
        yield Box((_EDGE / 2, _EDGE / 2), wide, high, 0, edge, "sheet")
        for at in range(1, self.across):
            yield Line((at * self.wide, 0), (at * self.wide, self.height), _RULES, "rule")
        for at in range(len(self.rows)):
            top = self.head + at * self.square
            yield Line((0, top), (self.width, top), _RULES, "rule")
        if self.head:
            yield from self._headings()
        yield from self._sum_line()
        for at, row in enumerate(self.rows):
            for column in range(self.across):
                middle = self._middle(column, at)
                if row == "marks":
                    yield from self._marks(column, middle)
                elif row in {"parts", "answer"}:
                    yield from self._written(row, column, middle)
                else:
                    yield from self._digit(int(row), column, middle)

    def _middle(self, column: int, row: int) -> Point:
        x = (self.across - 1 - column + 0.5) * self.wide
        return x, self.head + (row + 0.5) * self.square

    def _headings(self) -> Iterator[Shape]:
        size = max(self.least, 0.5 * self.head)
        for column in range(min(self.across, len(self.sum["answer"]))):
            place = _BELOW[min(column, 3)]
            text = SHORT[place if column < len(_BELOW) else "ten thousands"]
            middle = self._middle(column, 0)[0], self.head / 2
            yield centred(middle, text, size, colour=place, role="heading")

    def _sum_line(self) -> Iterator[Shape]:
        row = self.rows.index("parts" if self.parts else "answer")
        top = self.head + row * self.square
        ink = Paint(stroke="ink", width=0.06 * self.square)
        yield Line((0, top), (self.width, top), ink, "sum_line")

    @property
    def size(self) -> float:
        return max(self.least, (_PARTS_TYPE if self.parts else TYPE) * self.square)

    def _digit(self, index: int, column: int, middle: Point) -> Iterator[Shape]:
        text = str(self.sum["numbers"][index])
        if column < len(text):
            worth = int(text[-1 - column]) * (10**column if self.parts else 1)
            yield centred(middle, str(worth), self.size, role="digit")
            adding = self.sum["operation"] == ADD
            if not adding and index == 0 and self.sum["marks"][column]:
                yield self._cross(middle, self.size, len(str(worth)))
            if self.parts and column + 1 < len(text):
                yield self._plus(column, middle)
        elif index == len(self.sum["numbers"]) - 1 and column == self.across - 1:
            sign = "+" if self.sum["operation"] == ADD else "\u2212"
            yield centred(middle, sign, self.size, colour="quiet", role="sign")

    def _plus(self, column: int, middle: Point) -> Shape:
        left = (self.across - 1 - column) * self.wide, middle[1]
        size = max(self.least, 0.7 * self.size)
        return centred(left, "+", size, colour="quiet", halo=0.4, role="plus")

    def _written(self, row: str, column: int, middle: Point) -> Iterator[Shape]:
        values = self.sum["parts"] if row == "parts" else self.sum["answer"]
        value = values[column] if column < len(values) else None
        if value is not None:
            yield centred(middle, str(value), self.size, colour="move", role=row)
            if row == "parts" and any(part is not None for part in values[column + 1 :]):
                yield self._plus(column, middle)

    def _marks(self, column: int, middle: Point) -> Iterator[Shape]:
        marks = self.sum["marks"][column] if column < len(self.sum["marks"]) else []
        size = max(self.least, MARK * self.square)
        for at, mark in enumerate(marks):
            place = middle[0] + (at - (len(marks) - 1) / 2) * _APART * self.wide, middle[1]
            yield centred(place, str(mark), size, colour="move", role="mark")
            if at < len(marks) - 1:
                yield self._cross(place, size, len(str(mark)))

    def _cross(self, middle: Point, size: float, letters: int) -> Shape:
        half, rise = 0.32 * size * letters, 0.34 * size
        x, y = middle
        ink = Paint(stroke="ink", width=0.07 * size, round=True)
        return Line((x - half, y + rise), (x + half, y - rise), ink, "cross")


@dataclass(frozen=True)
class _Strip:
    """The blocks of each row of a sum, one row below the other."""

    sum: Sum
    height: float
    type: float

    @property
    def rows(self) -> dict[str, list[int]]:
        rows = blocks_of(self.sum)
        if self.sum["form"] == PARTS:
            # There are no carries where the parts are written.
            rows.pop("carried", None)
        return rows

    @property
    def unit(self) -> float:
        return min(_UNIT, self.height / len(self.rows) / _ROW)

    @property
    def rooms(self) -> list[float]:
        """How broad the blocks of each place lie, in units, the ones first."""
        rooms = []
        for column, place in enumerate(_BELOW[: len(self.sum["answer"])]):
            most = max(min(row[column], _MOST) for row in self.rows.values())
            rooms.append(_breadth(place, most) + _GAP if most else 0.0)
        return rooms

    @property
    def label(self) -> float:
        return 4.4 * self.type

    @property
    def width(self) -> float:
        return self.label + sum(self.rooms) * self.unit

    def drawn(self) -> Iterator[Shape]:
        high = self.height / len(self.rows)
        for at, (role, counts) in enumerate(self.rows.items()):
            top = at * high
            if role in {"answer", "parts", "taken", "rest"}:
                ink = Paint(stroke="ink", width=0.3)
                yield Line((0, top), (self.width, top), ink, "sum_line")
            base = 0.0, top + high / 2 + 0.35 * self.type
            yield Text(base, self._name(role), self.type, colour="quiet", role="name")
            right = self.width
            for column, room in enumerate(self.rooms):
                right -= room * self.unit
                yield from self._heap(column, counts[column], (right, top + 0.04 * high))

    def _name(self, role: str) -> str:
        names = {
            "carried": "Carried",
            "parts": "Parts",
            "answer": "Answer",
            "left": "Left",
            "taken": "Taken",
            "here": "Here",
            "rest": "To go",
        }
        return names.get(role) or str(self.sum["numbers"][int(role) - 1])

    def _heap(self, column: int, count: int, corner: Point) -> Iterator[Shape]:
        place = _BELOW[column]
        for index in range(min(count, _MOST)):
            down = index % _COLUMN if place == "ones" else 0
            along = index // _COLUMN if place == "ones" else index
            x = corner[0] + (along * _PITCH[place] + _GAP / 2) * self.unit
            y = corner[1] + down * _PITCH[place] * self.unit
            yield from block_shapes(place, (x, y), self.unit)


def _breadth(place: str, count: int) -> float:
    across = -(-count // _COLUMN) if place == "ones" else count
    return SIZES[place][0] + (across - 1) * _PITCH[place]
