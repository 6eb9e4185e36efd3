"""Place value blocks: one mat or two, with their columns, blocks and digits."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from manipulatives.data import table
from manipulatives.drawings.block_rows import (
    SIZES,
    Layout,
    box_spots,
    boxes_in,
    lay,
)
from manipulatives.drawings.shapes import (
    Box,
    Drawing,
    Line,
    Paint,
    Point,
    Polygon,
    Shape,
    Text,
    centred,
)
from manipulatives.maths.number.mats import check_mat
from manipulatives.maths.number.place_names import counted
from manipulatives.maths.number.place_value import BASE, PLACES, Blocks, check_places

_WORDS = table("place_words")
NAMES: dict[str, list[str]] = _WORDS["mats"]
HEADS: dict[str, str] = _WORDS["heads"]
SHORT: dict[str, str] = _WORDS["short"]
"""Headings where there is little room."""

BLOCK: dict[str, float] = table("blocks")
"""Proportions of the blocks as shares of the side of a one."""

TYPE_SHARE = 1 / 15
"""The default size of the type, as a share of the drawing's height."""

LETTER = 0.6
"""The width of a heading for each letter, as a share of the size of its type (estimated)."""

_OUTLINE, _INSIDE, _THINNEST = 0.09, 0.04, 0.12
_TINT, _SIDE_TINT = 0.14, 0.34


def blocks_drawing(
    mat: Sequence[Blocks],
    *,
    places: int = 3,
    digits: bool = True,
    headings: bool = True,
    blocks: bool = True,
    pair: str = "compare",
    width: float = 120.0,
    height: float = 70.0,
    least_type: float = 0.0,
) -> Drawing:
    """Return a mat with blocks, or two beside each other.

    Its description counts the blocks of each place but does not give the number.

    Args:
        mat: one mat or two.
        places: how many columns there are, 1 to 4, the ones first; larger blocks have columns too.
        digits: whether the count of each column is written below it.
        headings: whether the columns are named.
        blocks: whether there are blocks; without them it is a mat to draw or to lay blocks on.
        pair: what two mats are for: "compare", "add" or "take".
        width: the width of the drawing in millimetres.
        height: its height.
        least_type: smallest type allowed, in millimetres.

    Raises:
        ValueError: if `mat` is no mat, or there are no such places or no such pair.

    Example:
        >>> blocks_drawing([{"tens": 2, "ones": 15}]).description
        '2 tens, 15 ones.'
    """
    checked = check_mat(mat)
    first = next((at for at, place in enumerate(PLACES) if any(b[place] for b in checked)), 3)
    columns = PLACES[min(first, len(PLACES) - check_places(places)) :]
    size = max(least_type, height * TYPE_SHARE)
    if pair not in NAMES:
        raise ValueError(f'Two mats are for "compare", "add" or "take", not "{pair}".')
    names = NAMES[pair] if len(checked) > 1 else ("",)
    gap = size if len(checked) > 1 else 0.0
    sheet = _Sheet(
        columns=columns,
        width=(width - gap) / len(checked),
        height=height,
        size=size,
        head=size * ((1.6 if len(checked) > 1 else 0.2) + (1.4 if headings else 0.2)),
        foot=size * (2.3 if digits else 0.2),
    )
    layout = lay(checked, columns, sheet.room, sheet.high, 0.9 * size)
    shapes: list[Shape] = []
    for at, each in enumerate(checked):
        left = at * (sheet.width + gap)
        parts = [*sheet.frame(names[at], headings=headings, digits=digits)]
        if blocks:
            parts += _blocks(each, sheet, layout)
            parts += sheet.counts(each) if digits else []
        shapes += [part.moved(left, 0) for part in parts]
    said = (
        f"{f'{name}: ' * bool(name)}{counted(b)}." for name, b in zip(names, checked, strict=True)
    )
    if not blocks:
        return Drawing(width, height, tuple(shapes), "A mat without blocks")
    return Drawing(width, height, tuple(shapes), "Place value blocks", " ".join(said))


@dataclass(frozen=True)
class _Sheet:
    """One mat: its columns, and the space in them."""

    columns: Sequence[str]
    width: float
    height: float
    size: float
    head: float
    foot: float

    @property
    def column(self) -> float:
        return self.width / len(self.columns)

    @property
    def room(self) -> float:
        """The width for the blocks of a column."""
        return self.column - 2 * self.pad

    @property
    def high(self) -> float:
        """Their height."""
        return self.height - self.head - self.foot - 2 * self.pad

    @property
    def pad(self) -> float:
        return 0.4 * self.size

    def frame(self, name: str, *, headings: bool, digits: bool) -> Iterator[Shape]:
        """Yield the mat's edge, its name, and the lines and headings of its columns."""
        edge = Paint(fill="sheet", stroke="edge", width=0.3)
        inset = edge.width / 2
        yield Box(
            (inset, inset), self.width - 2 * inset, self.height - 2 * inset, 0.5 * self.size, edge
        )
        if name:
            yield Text((0.6 * self.size, 1.3 * self.size), name, self.size, colour="quiet")
        rule = Paint(stroke="edge", width=0.2)
        top = self.head - 0.3 * self.size
        for at in range(1, len(self.columns)):
            x = at * self.column
            yield Line((x, top), (x, self.height), rule, "rule")
        if digits:
            foot = self.height - self.foot
            yield Line((0, foot), (self.width, foot), rule, "rule")
        if headings:
            for at, place in enumerate(self.columns):
                long = max(len(HEADS[each]) for each in self.columns) * LETTER * self.size
                text = HEADS[place] if long < self.room else SHORT[place]
                middle = (at + 0.5) * self.column
                foot = self.head - 0.6 * self.size
                yield Text((middle, foot), text, self.size, "middle", place, role="heading")

    def counts(self, blocks: Blocks) -> Iterator[Shape]:
        """Yield the count of each column, framed where it is no digit yet."""
        leading = True
        for at, place in enumerate(self.columns):
            count = blocks[place]
            leading = leading and count == 0 and place != "ones"
            if leading:
                continue
            type_size = 1.7 * self.size
            middle = (at + 0.5) * self.column, self.height - self.foot / 2
            if count >= BASE:
                wide = (len(str(count)) + 1) * LETTER * type_size
                high = 1.15 * type_size
                dashes = Paint(stroke=place, width=0.3, dashes=(1.2, 0.8))
                corner = middle[0] - wide / 2, middle[1] - high / 2
                yield Box(corner, wide, high, 0.2 * type_size, dashes, "many")
            yield centred(middle, str(count), type_size, colour=place, role="count")


def _blocks(blocks: Blocks, sheet: _Sheet, layout: Layout) -> Iterator[Shape]:
    size = 0.9 * sheet.size
    top = sheet.head + sheet.pad
    for at, place in enumerate(sheet.columns):
        count = blocks[place]
        left = at * sheet.column + sheet.pad
        above = 0.0
        if layout.boxed:
            _, side, above = boxes_in(count, sheet.room, sheet.high, size)
            for boxes in box_spots(count, sheet.room, sheet.high, size):
                foot = left + sheet.room / 2, top + boxes.line
                wide = len(f"{boxes.size} each") * LETTER * size
                text = f"{boxes.size} each" if wide < sheet.room else str(boxes.size)
                yield Text(foot, text, size, "middle", place, role="boxes")
                for x, y in boxes.spots:
                    corner = left + x, top + y
                    yield from _box(corner, side, place)
        for x, y in layout.spots(place, count, above):
            yield from block_shapes(place, (left + x, top + y), layout.unit)


def block_shapes(place: str, corner: Point, unit: float) -> list[Shape]:
    """Return one block.

    Args:
        place: its place.
        corner: its top left corner.
        unit: the side of a one in millimetres.

    Example:
        >>> [shape.role for shape in block_shapes("ones", (0, 0), 5)]
        ['paper', 'tint', 'ones']
    """
    wide, high = SIZES[place]
    left, top = corner
    shapes: list[Shape] = []
    if place == "thousands":
        wide, high = 10.0, 10.0
        top += BASE * BLOCK["back"] * unit
        shapes += _back(corner, unit)
    inner = Paint(stroke=place, width=max(_INSIDE * unit, _THINNEST / 2), opacity=0.7)
    shapes += _face(place, (left, top), (wide, high), unit)
    near = BLOCK["inset"] * unit
    for at in range(1, round(high)):
        y = top + at * unit
        shapes.append(Line((left + near, y), (left + wide * unit - near, y), inner, "inside"))
    for at in range(1, round(wide)):
        x = left + at * unit
        shapes.append(Line((x, top + near), (x, top + high * unit - near), inner, "inside"))
    return shapes


def _face(place: str, corner: Point, size: Point, unit: float) -> list[Shape]:
    """A face: paper that covers what lies below, a tint over it, and its outline."""
    wide, high, radius = size[0] * unit, size[1] * unit, BLOCK["corner"] * unit
    outline = Paint(stroke=place, width=max(_OUTLINE * unit, _THINNEST))
    return [
        Box(corner, wide, high, radius, Paint(fill="sheet"), "paper"),
        Box(corner, wide, high, radius, Paint(fill=place, opacity=_TINT), "tint"),
        Box(corner, wide, high, radius, outline, place),
    ]


def _back(corner: Point, unit: float) -> list[Shape]:
    """What is seen of the nine hundreds behind the first one of a thousand."""
    left, top = corner
    deep = BASE * BLOCK["back"]
    points = tuple(
        (left + x * unit, top + y * unit)
        for x, y in ((0, deep), (deep, 0), (12, 0), (12, 10), (10, 12), (10, deep))
    )
    edge = max(_OUTLINE * unit, _THINNEST)
    inner = Paint(stroke="thousands", width=max(_INSIDE * unit, _THINNEST / 2), opacity=0.7)
    shapes: list[Shape] = [
        Polygon(points, Paint(fill="sheet"), role="paper"),
        Polygon(points, Paint(fill="thousands", opacity=_SIDE_TINT), role="tint"),
        Polygon(points, Paint(stroke="thousands", width=edge, round=True), role="side"),
    ]
    for at in range(1, BASE):
        back = at * BLOCK["back"]
        line = (back, deep - back), (10 + back, deep - back), (10 + back, 12 - back)
        path = tuple((left + x * unit, top + y * unit) for x, y in line)
        shapes.append(Polygon(path, inner, closed=False, role="inside"))
    return shapes


def _box(corner: Point, side: float, place: str) -> list[Shape]:
    left, top = corner
    middle = side / 2
    edge = Paint(stroke=place, width=0.3)
    return [
        Box(corner, side, side, side / 6, Paint(fill=place, opacity=_SIDE_TINT), "tint"),
        Box(corner, side, side, side / 6, edge, "box"),
        Line((left, top + middle), (left + side, top + middle), edge, "band"),
        Line((left + middle, top), (left + middle, top + side), edge, "band"),
    ]
