"""How blocks lie in their columns: in rows that can be counted.

Ones lie in fives and tens, tens in fives, hundreds and thousands fanned out in fives. The browser
lays blocks in the same way. Lengths are in units, the side of a one, unless they are said to be
millimetres; a spot is the top left corner of a block.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from manipulatives.data import table
from manipulatives.drawings.shapes import Point
from manipulatives.maths.number.place_value import Blocks

_ROWS = table("block_rows")

SIZES: Mapping[str, Point] = {
    place: (float(size["wide"]), float(size["high"]))
    for place, size in table("blocks")["sizes"].items()
}
"""Width and height of each block. A thousand is seen a little from above and from the right."""

PITCH: float = _ROWS["pitch"]
ONES: Mapping[str, float] = _ROWS["ones"]
TENS: Mapping[str, float] = _ROWS["tens"]
STRIPS: Mapping[str, float] = {place: _ROWS["fan"][place] for place in ("thousands", "hundreds")}
CLEAR: float = _ROWS["fan"]["clear"]
FAN_FIVE: float = _ROWS["fan"]["five"]
LENGTHS: Sequence[int] = _ROWS["fan"]["lengths"]
ROOM: Mapping[str, Sequence[int]] = _ROWS["room"]
MOST: int = _ROWS["most"]
LOOSE: int = _ROWS["loose"]
BOX_SIZES: Sequence[int] = _ROWS["sizes"]
BOX: Mapping[str, float] = _ROWS["box"]
BOX_ROWS: Sequence[int] = _ROWS["box"]["rows"]
SHARE = 1 / 12
"""A unit is no more than this of a column's height: a ten would fit."""


@dataclass(frozen=True)
class Plan:
    """An arrangement of the blocks of one column.

    Attributes:
        strip: the least visible part of a block in a fan; 0 where none covers another.
        wide: returns the width of all rows from the visible part of each block in a fan.
        high: their height.
        open: returns the visible part of each block in a fan, for the width and height of a room.
        spot: returns the place of a block, counted from 0, for the visible part of each.
    """

    strip: float
    wide: Callable[[float], float]
    high: Callable[[float], float]
    open: Callable[[float, float], float]
    spot: Callable[[int, float], Point]

    def unit(self, width: float, height: float) -> float:
        """Return the largest unit with which it fits into a room."""
        return min(width / self.wide(self.strip), height / self.high(self.strip))


class Laid(NamedTuple):
    """A plan in its column.

    Attributes:
        plan: how the blocks lie.
        strip: how far its fan is open.
        left: how far from the left it begins, in millimetres.
    """

    plan: Plan
    strip: float
    left: float


@dataclass(frozen=True)
class Layout:
    """The arrangement of the blocks of all columns.

    Attributes:
        unit: the side of a one in millimetres.
        boxed: whether most blocks of a full column are in boxes.
        columns: the plan of each place.
    """

    unit: float
    boxed: bool
    columns: dict[str, Laid] = field(default_factory=dict)

    def spots(self, place: str, count: int, above: float) -> list[Point]:
        """Return where the blocks lie that are in no box, in millimetres from the column's corner.

        Args:
            place: the column.
            count: how many blocks it holds.
            above: how high the boxes over them are.
        """
        plan, strip, left = self.columns[place]
        loose = loose_of(count) if self.boxed else count
        places = (plan.spot(index, strip) for index in range(loose))
        return [(left + x * self.unit, above + y * self.unit) for x, y in places]


class Boxes(NamedTuple):
    """Boxes with the same number of blocks in each.

    Attributes:
        size: how many blocks are in each.
        line: how far down the foot of their line of type is, in millimetres.
        spots: their top left corners, in millimetres from the column's corner.
    """

    size: int
    line: float
    spots: list[Point]


def plans_for(place: str, most: int) -> list[Plan]:
    """Return the arrangements for this many blocks. Of two that fit the first is better.

    Args:
        place: their place.
        most: how many there is room for.
    """
    if place == "ones":
        return _ones(most)
    if place == "tens":
        return _tens(most)
    return [
        _fan(place, most, min(length, most), across=across)
        for length in LENGTHS
        for across in (False, True)
    ]


def _ones(most: int) -> list[Plan]:
    tens = math.ceil(most / 10)

    def plan(stacks: int) -> Plan:
        deep = math.ceil(tens / stacks)

        def spot(index: int) -> Point:
            ten, one = divmod(index, 10)
            across = ONES["stack"] * (ten // deep) + PITCH * (one % 5)
            return across, ONES["group"] * (ten % deep) + PITCH * (one // 5)

        return _closed(
            ONES["stack"] * (stacks - 1) + 4 * PITCH + 1,
            ONES["group"] * (deep - 1) + PITCH + 1,
            spot,
        )

    return [plan(stacks) for stacks in range(1, tens + 1)]


def _tens(most: int) -> list[Plan]:
    fives = math.ceil(most / 5)

    def left(five: int) -> float:
        return TENS["five"] * five + TENS["pair"] * (five // 2)

    def plan(across: int) -> Plan:
        def spot(index: int) -> Point:
            row, five = divmod(index // 5, across)
            return left(five) + PITCH * (index % 5), TENS["row"] * row

        high = TENS["row"] * math.ceil(fives / across) - 1
        return _closed(left(across - 1) + 4 * PITCH + 1, high, spot)

    return [plan(across) for across in (2, 1, *range(4, fives + 1, 2))]


def _closed(wide: float, high: float, spot: Callable[[int], Point]) -> Plan:
    return Plan(
        0.0, lambda _: wide, lambda _: high, lambda _, __: 0.0, lambda index, _: spot(index)
    )


def _fan(place: str, most: int, length: int, *, across: bool) -> Plan:
    size, strip = SIZES[place][0], STRIPS[place]
    apart = size + CLEAR

    def along(index: int, seen: float) -> float:
        return seen * index + FAN_FIVE * (index // 5)

    def long(seen: float) -> float:
        return along(length - 1, seen) + size

    def deep(_: float) -> float:
        return apart * math.ceil(most / length) - CLEAR

    def opened(wide: float, high: float) -> float:
        free = (wide if across else high) - long(0)
        return min(apart, max(strip, free / (length - 1))) if length > 1 else apart

    def spot(index: int, seen: float) -> Point:
        far, aside = along(index % length, seen), apart * (index // length)
        return (far, aside) if across else (aside, far)

    wide, high = (long, deep) if across else (deep, long)
    return Plan(strip, wide, high, opened, spot)


def lay(
    mat: Sequence[Blocks],
    columns: Sequence[str],
    width: float,
    height: float,
    type_size: float,
    *,
    least: float = 0.0,
) -> Layout:
    """Lay the blocks of all mats, whose columns are of one size.

    Args:
        mat: one mat or two.
        columns: the places that there are columns for, the largest first.
        width: the width of a column in millimetres.
        height: its height.
        type_size: the size of the type that boxes are labelled in.
        least: the smallest unit that blocks are drawn with; smaller ones are put in boxes.
    """
    pieces = sum(sum(blocks.values()) for blocks in mat)
    if pieces <= MOST:
        apart = _fit(mat, columns, width, height, type_size, boxed=False)
        if apart.unit >= least:
            return apart
    return _fit(mat, columns, width, height, type_size, boxed=True)


def _fit(
    mat: Sequence[Blocks],
    columns: Sequence[str],
    width: float,
    height: float,
    type_size: float,
    *,
    boxed: bool,
) -> Layout:
    rooms = {}
    for place in columns:
        counts = [blocks[place] for blocks in mat]
        loose = max(loose_of(count) if boxed else count for count in counts)
        heights = [boxes_in(count, width, height, type_size).high for count in counts]
        above = max(heights) if boxed else 0
        most = next((room for room in ROOM[place] if room >= loose), loose)
        rooms[place] = (max(height - above, type_size), plans_for(place, most))
    unit = height * SHARE
    for high, plans in rooms.values():
        unit = min(unit, max(plan.unit(width, high) for plan in plans))
    laid = {}
    for place, (high, plans) in rooms.items():
        # A little smaller, so that rounding does not reject the plan that gave this unit.
        fitting = [plan for plan in plans if plan.unit(width, high) > unit * 0.9999]
        strips = [plan.open(width / unit, high / unit) for plan in fitting]
        strip = max(strips)
        plan = fitting[strips.index(strip)]
        laid[place] = Laid(plan, strip, (width - plan.wide(strip) * unit) / 2)
    return Layout(unit, boxed, laid)


def loose_of(count: int) -> int:
    """Return how many blocks of a full column stay out of the boxes.

    Example:
        >>> loose_of(20), loose_of(21), loose_of(345)
        (20, 11, 15)
    """
    return count if count <= 2 * LOOSE else LOOSE + count % LOOSE


def boxes_of(count: int) -> list[tuple[int, int]]:
    """Return the boxes of a full column, the largest first: how many blocks in each, how many.

    Example:
        >>> boxes_of(345)
        [(100, 3), (10, 3)]
    """
    rest = count - loose_of(count)
    boxes = []
    for size in BOX_SIZES:
        many, rest = divmod(rest, size)
        if many:
            boxes.append((size, many))
    return boxes


class BoxRows(NamedTuple):
    """The arrangement of the boxes of a full column.

    Attributes:
        row: how many stand in a row.
        side: how large each is, in millimetres.
        high: how high they are with a line of type over each size.
    """

    row: int
    side: float
    high: float


def boxes_in(count: int, width: float, height: float, type_size: float) -> BoxRows:
    """Return the arrangement of the boxes of a full column.

    They stand in rows of five, or of ten where they would take too much of the height.
    """
    boxes = boxes_of(count)
    found = []
    for row in BOX_ROWS:
        side = min(BOX["most"] * type_size, width / ((row - 1) * BOX["pitch"] + 1))
        rows = sum(math.ceil(many / row) for _, many in boxes)
        lines = (BOX["foot"] + BOX["line"] * len(boxes)) * type_size
        found.append(BoxRows(row, side, lines + BOX["pitch"] * side * rows))
    five, ten = found
    return ten if five.high > BOX["share"] * height else five


def box_spots(count: int, width: float, height: float, type_size: float) -> list[Boxes]:
    """Return where the boxes of a full column stand."""
    row, side, _ = boxes_in(count, width, height, type_size)
    step = BOX["pitch"] * side
    left = (width - (row - 1) * step - side) / 2
    top = 0.0
    found = []
    for size, many in boxes_of(count):
        line = top + type_size
        top += BOX["line"] * type_size
        spots = [(left + step * (at % row), top + step * (at // row)) for at in range(many)]
        found.append(Boxes(size, line, spots))
        top += step * math.ceil(many / row)
    return found
