"""A shape on its paper: dots, a guide to trace, sides, points, marks and cuts."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from itertools import pairwise

from manipulatives.data import table
from manipulatives.drawings.polygon_marks import Mark, Spot, marks_of
from manipulatives.drawings.shapes import (
    Box,
    Circle,
    Drawing,
    Line,
    Paint,
    Polygon,
    Shape,
    centred,
)
from manipulatives.maths.shapes.cuts import DIRECTIONS
from manipulatives.maths.shapes.data import Shape as Given
from manipulatives.maths.shapes.data import check_shape
from manipulatives.maths.shapes.outline import outline_of
from manipulatives.maths.shapes.papers import SPACES, UNIT, Grid, dots, place
from manipulatives.maths.shapes.shares import shares_of

PAPER: dict[str, float] = table("shape_marks")["paper"]
"""Lengths in hundredths of a space."""
COLOURS = {
    "right": "hour",
    "equal": "minute",
    "parallel": "good",
    "mirror": "hundreds",
    "crossing": "think",
}
_SMOOTH = math.radians(3)


def polygon_drawing(
    given: Given,
    grid: Grid,
    *,
    shown: Collection[str] = (),
    counted: str = "",
    guide: Given | None = None,
    paper: bool = True,
    points: bool = True,
    answered: bool = False,
    size: float = 60.0,
    least_type: float = 0.0,
) -> Drawing:
    """Return a shape on its paper that fills the given size.

    Its description gives neither the number of sides nor a name.

    Args:
        given: the shape.
        grid: the paper it is on.
        shown: what is marked: any of `polygon_marks.MARKED`.
        counted: what is numbered: "sides", "vertices" or nothing.
        guide: a shape to trace, drawn faint below.
        paper: whether there is a sheet with dots around it; without, the drawing ends where the
            shape does, and one space between dots is as large as if there were.
        points: whether the points that were put are drawn, also those that are no vertices.
        answered: whether the shape is the answer in a key: in the colour of what is moved.
        size: width and height of the whole paper in millimetres.
        least_type: smallest type allowed, in millimetres.

    Raises:
        ValueError: no shape.

    Example:
        >>> square = {"points": [[2, 2], [6, 2], [6, 6], [2, 6]], "closed": True}
        >>> polygon_drawing(square, "square").description
        'A closed shape with straight sides.'
    """
    shape = check_shape(given, grid)
    scale = size / (SPACES * UNIT + 2 * PAPER["margin"])
    marks = marks_of(shape, grid, shown, counted)
    least, most = (0.0, 0.0), (float(SPACES * UNIT), float(SPACES * UNIT))
    if not paper:
        least, most = _extent(shape, grid, marks)
    left, top = (part - PAPER["margin"] for part in least)
    pen = _Pen(scale, left, top)
    width, height = ((most[at] - least[at] + 2 * PAPER["margin"]) * scale for at in (0, 1))
    shapes: list[Shape] = []
    if paper:
        edge = Paint(fill="sheet", stroke="line", width=5 * scale)
        shapes.append(Box((0, 0), width, height, 14 * scale, edge, "paper"))
        shapes += [
            Circle(pen.at(place(dot, grid)), PAPER["dot"] * scale, Paint(fill="edge"), "dot")
            for dot in dots(grid)
        ]
    if guide is not None:
        shapes += _lines(pen, check_shape(guide, grid), grid, "guide", "line")
    shapes += _body(pen, shape, grid)
    shapes += _lines(pen, shape, grid, "outline", "move" if answered else "ink")
    shapes += _cuts(pen, shape, grid)
    shapes += [_marked(pen, mark, least_type) for mark in marks]
    if points:
        shapes += _points(pen, shape, grid)
    return Drawing(width, height, tuple(shapes), "A shape", _described(shape))


class _Pen:
    """Converts places on the paper to millimetres on the drawing."""

    def __init__(self, scale: float, left: float, top: float) -> None:
        self.scale, self.left, self.top = scale, left, top

    def at(self, spot: Spot) -> Spot:
        return (spot[0] - self.left) * self.scale, (spot[1] - self.top) * self.scale

    def all(self, spots: Sequence[Spot]) -> tuple[Spot, ...]:
        return tuple(self.at(spot) for spot in spots)


def outline_spots(given: Given, grid: Grid) -> list[Spot]:
    """Return the corners of a shape, and points along its curved side, in hundredths of a space.

    Example:
        >>> outline_spots({"points": [[1, 1], [3, 1]], "closed": False}, "square")
        [(100.0, 100.0), (300.0, 100.0)]
    """
    shape = check_shape(given, grid)
    spots = [place((point[0], point[1]), grid) for point in shape["points"]]
    if "curve" not in shape:
        return spots
    start, end = spots
    if shape["curve"] == "circle":
        return _arc(start, end, 2 * math.pi)[:-1]
    if shape["curve"] == "quarter circle":
        return [start, *_arc(start, end, math.pi / 2)]
    return _arc(((start[0] + end[0]) / 2, (start[1] + end[1]) / 2), start, math.pi)


def _arc(centre: Spot, start: Spot, sweep: float) -> list[Spot]:
    """Return points along an arc, clockwise from a point of it."""
    radius = math.dist(centre, start)
    begin = math.atan2(start[1] - centre[1], start[0] - centre[0])
    steps = math.ceil(sweep / _SMOOTH)
    return [
        (
            centre[0] + radius * math.cos(begin + sweep * step / steps),
            centre[1] + radius * math.sin(begin + sweep * step / steps),
        )
        for step in range(steps + 1)
    ]


def _extent(shape: Given, grid: Grid, marks: Sequence[Mark]) -> tuple[Spot, Spot]:
    """Return the top left and the bottom right of a shape and what is marked on it."""
    spots = outline_spots(shape, grid) + [spot for mark in marks for spot in mark.points]
    xs, ys = zip(*(spots or [(0.0, 0.0)]), strict=True)
    return (min(xs), min(ys)), (max(xs), max(ys))


def _body(pen: _Pen, shape: Given, grid: Grid) -> list[Shape]:
    """The inside, of a shape that has one."""
    if "curve" not in shape and outline_of(shape, grid).polygon is None:
        return []
    paint = Paint(fill="move-soft", opacity=0.7)
    return [Polygon(pen.all(outline_spots(shape, grid)), paint, role="fill")]


def _lines(pen: _Pen, shape: Given, grid: Grid, role: str, colour: str) -> list[Shape]:
    spots = outline_spots(shape, grid)
    width = PAPER["guide" if role == "guide" else "line"] * pen.scale
    if len(spots) == 1 and role == "guide":
        return [Circle(pen.at(spots[0]), width / 2, Paint(fill=colour), role)]
    if len(spots) < 2:  # noqa: PLR2004 - a line has two ends
        return []
    paint = Paint(stroke=colour, width=width, round=True)
    return [Polygon(pen.all(spots), paint, shape["closed"], role)]


def _cuts(pen: _Pen, shape: Given, grid: Grid) -> list[Shape]:
    paint = Paint(stroke="minute", width=PAPER["cut"] * pen.scale, round=True)
    return [
        Line(pen.at(start), pen.at(end), paint, "cut")
        for spots in cut_spots(shape, grid)
        for start, end in pairwise(spots)
    ]


def cut_spots(given: Given, grid: Grid) -> list[list[Spot]]:
    """Return where the cuts of a shape run, in hundredths of a space.

    Raises:
        ValueError: no shape, or a cut that does not fit.

    Example:
        >>> square = {"points": [[0, 0], [2, 0], [2, 2], [0, 2]], "closed": True}
        >>> cut_spots({**square, "cuts": [[[0, 0], [2, 2]]]}, "square")
        [[(0.0, 0.0), (200.0, 200.0)]]
    """
    shape = check_shape(given, grid)
    cuts = shape.get("cuts", [])
    if cuts and shares_of(shape, grid) is None:
        return []
    if "curve" not in shape:
        return [[place((point[0], point[1]), grid) for point in cut] for cut in cuts]
    centre, edge = (place((point[0], point[1]), grid) for point in shape["points"])
    radius = math.dist(centre, edge)

    def spot(point: Sequence[int]) -> Spot:
        turn = 2 * math.pi * point[0] / DIRECTIONS
        far = radius * point[1]
        return centre[0] + far * math.sin(turn), centre[1] - far * math.cos(turn)

    return [[spot(point) for point in cut] for cut in cuts]


def _marked(pen: _Pen, mark: Mark, least_type: float) -> Shape:
    if mark.role == "number":
        type_size = max(PAPER["number"] * pen.scale, least_type)
        return centred(
            pen.at(mark.points[0]), mark.text, type_size, halo=0.04 * type_size, role="number"
        )
    colour = COLOURS[mark.role]
    width = PAPER["mark"] * pen.scale
    if mark.role == "crossing":
        ring = Paint(stroke=colour, width=1.4 * width)
        return Circle(pen.at(mark.points[0]), PAPER["crossing"] * pen.scale, ring, "crossing")
    dashes = (4.4 * width, 2.8 * width) if mark.role == "mirror" else ()
    paint = Paint(stroke=colour, width=width, round=mark.role != "mirror", dashes=dashes)
    return Polygon(pen.all(mark.points), paint, closed=False, role=mark.role)


def _points(pen: _Pen, shape: Given, grid: Grid) -> list[Shape]:
    """Return the points of the shape; those that are no vertices are hollow."""
    hollow: Collection[int] = ()
    if "curve" not in shape:
        hollow = outline_of(shape, grid).straight
    elif shape["curve"] == "circle":
        hollow = (0, 1)
    radius = PAPER["point"] * pen.scale
    return [
        Circle(
            pen.at(place((point[0], point[1]), grid)),
            radius * (0.7 if at in hollow else 1),
            Paint(fill="sheet", stroke="quiet", width=0.3 * radius)
            if at in hollow
            else Paint(fill="ink"),
            "straight" if at in hollow else "point",
        )
        for at, point in enumerate(shape["points"])
    ]


def _described(shape: Given) -> str:
    if "curve" in shape:
        return "A closed shape with a curved side."
    if not shape["points"]:
        return "Nothing is drawn yet."
    closed = "A closed" if shape["closed"] else "An open"
    return f"{closed} shape with straight sides."


__all__ = ["COLOURS", "PAPER", "cut_spots", "outline_spots", "polygon_drawing"]
