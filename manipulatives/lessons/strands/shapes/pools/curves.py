"""Circles, half circles and quarter circles that tasks ask about, in several sizes and turned."""

from __future__ import annotations

from functools import cache

from manipulatives.lessons.strands.shapes.pools.polygons import Drawn
from manipulatives.maths.shapes.papers import SPACES, Point

CURVES = ("circle", "half circle", "quarter circle")
MIDDLE = SPACES // 2
SIZES = (2, 3, 4)
# Which way the first point is from the middle or the corner.
WAYS: tuple[Point, ...] = ((0, -1), (1, 0), (0, 1), (-1, 0))
PLACES = (-1, 0, 1)


@cache
def curves(kind: str) -> tuple[Drawn, ...]:
    """Return every picture of a circle or of a part of one.

    Example:
        >>> curves("circle")[0].points
        ((3, 3), (3, 1))
        >>> [len(curves(kind)) for kind in CURVES]
        [19, 28, 28]
    """
    if kind == "circle":
        return tuple(
            Drawn(kind, "square", ((MIDDLE + right, MIDDLE + down), end), curve=kind)
            for size in SIZES
            for down in PLACES
            for right in PLACES
            if size + max(abs(right), abs(down)) <= MIDDLE
            for end in [(MIDDLE + right, MIDDLE + down - size)]
        )
    every = [
        Drawn(kind, "square", _ends(kind, size, way, aside), curve=kind)
        for size in SIZES
        for way in WAYS
        for aside in PLACES
    ]
    return tuple(dict.fromkeys(every))


def _ends(kind: str, size: int, way: Point, aside: int) -> tuple[Point, Point]:
    """Return the ends of a half circle's straight side, or a quarter circle's corner and end."""
    across, down = way
    if kind == "half circle":
        # The curved side is on the left, seen along the straight one: halfway to it is the middle.
        start = (MIDDLE - size * across, MIDDLE - size * down)
        end = (MIDDLE + size * across, MIDDLE + size * down)
        back = size // 2 + aside if size < MIDDLE else size // 2
        moved = (-down * back, across * back)
        return _moved(start, moved), _moved(end, moved)
    # The other end is a quarter turn further, clockwise.
    other = (-down, across)
    back = size // 2 + (aside if size < MIDDLE else 0)
    corner = (MIDDLE - back * (across + other[0]), MIDDLE - back * (down + other[1]))
    return corner, _moved(corner, (size * across, size * down))


def _moved(point: Point, step: Point) -> Point:
    return point[0] + step[0], point[1] + step[1]
