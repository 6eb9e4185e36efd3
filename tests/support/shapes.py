"""Shapes of every kind on every paper, and how they are turned, mirrored and put elsewhere."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from hypothesis import strategies as st

from manipulatives.maths.shapes.data import CURVES
from manipulatives.maths.shapes.papers import GRIDS, SPACES, dots, is_point, place

if TYPE_CHECKING:
    from collections.abc import Callable
    from random import Random

    from manipulatives.maths.shapes.data import Shape
    from manipulatives.maths.shapes.papers import Grid

Points = list[list[int]]


def spots(points: Points, grid: Grid) -> list[tuple[float, float]]:
    """Where points are on the paper."""
    return [place((across, down), grid) for across, down in points]


def random_points(chance: Random, grid: Grid, most: int = 8) -> Points:
    """A few points of a paper, often near each other, so that special shapes turn up."""
    many = chance.randint(0, most)
    reach = chance.choice([2, 3, 8])
    if grid == "plain":
        step = chance.choice([1, 50, 100])
        return [[chance.randrange(0, 801, step) for _ in range(2)] for _ in range(many)]
    near = [dot for dot in dots(grid) if max(abs(dot[0] - 2), abs(dot[1] - 3)) <= reach]
    return [list(chance.choice(near)) for _ in range(many)]


def around(points: Points, grid: Grid) -> Points:
    """The points in order around their middle: mostly a polygon whose sides do not cross."""
    placed = spots(points, grid)
    middle = [sum(part) / len(placed) for part in zip(*placed, strict=True)] if placed else [0, 0]

    def turn(index: int) -> tuple[float, float]:
        right, down = placed[index][0] - middle[0], placed[index][1] - middle[1]
        return math.atan2(down, right), math.hypot(right, down)

    return [points[index] for index in sorted(range(len(points)), key=turn)]


def random_shape(chance: Random, grid: Grid) -> Shape:
    """A shape by chance: a polygon, a tangle, a chain that is drawn, a quadrilateral, a curve."""
    points = random_points(chance, grid)
    kind = chance.choice(["polygon", "polygon", "tangle", "open", "four", "long", "curve"])
    if kind == "curve":
        two = random_points(chance, grid, 2)
        if len(two) == 2 and two[0] != two[1]:
            return {"points": two, "closed": True, "curve": chance.choice(CURVES)}
    if kind == "four":
        points = _quadrilateral(chance, grid)
    if kind == "long":
        points = [point for _ in range(4) for point in random_points(chance, grid)][:40]
    if kind in ("polygon", "long"):
        points = around(points, grid)
    return {"points": points, "closed": kind != "open"}


def _quadrilateral(chance: Random, grid: Grid) -> Points:
    """Two steps from a point, made a parallelogram, kite or trapezoid where the paper allows."""
    scale = 60 if grid == "plain" else 1
    corner = [chance.randint(0, 4) * scale, chance.randint(0, 4) * scale]
    one, other = ([chance.randint(-3, 3) * scale for _ in range(2)] for _ in range(2))
    if chance.random() < 0.4:
        other = [-one[1], one[0]] if grid != "triangle" else [-one[1], one[0] + one[1]]
    longer = chance.choice([1, 1, 2])
    wobble = chance.randint(-3, 3) if grid == "plain" else 0
    points = [
        corner,
        [corner[0] + one[0], corner[1] + one[1]],
        [corner[0] + longer * one[0] + other[0] + wobble, corner[1] + longer * one[1] + other[1]],
        [corner[0] + other[0], corner[1] + other[1] + wobble],
    ]
    return points if all(is_point(point, grid) for point in points) else []


def small_points(grid: Grid, least: int = 3, most: int = 8) -> st.SearchStrategy[Points]:
    """Points near each other, with room to turn them and to double their distances."""
    if grid == "triangle":
        # A hexagon of dots around the middle.
        near = [[a, b] for a in range(-2, 3) for b in range(-2, 3) if abs(a + b) <= 2]
        points = st.sampled_from(near).map(list)
    else:
        points = st.lists(st.integers(-2, 2), min_size=2, max_size=2)
    return st.lists(points, min_size=least, max_size=most, unique_by=tuple)


# What leaves dots on dots: of a square paper and of a triangle paper, around a dot.
TURNS: dict[str, dict[str, Callable[[int, int], list[int]]]] = {
    "square": {
        "a quarter turn": lambda x, y: [-y, x],
        "half a turn": lambda x, y: [-x, -y],
        "three quarters of a turn": lambda x, y: [y, -x],
        "mirrored": lambda x, y: [-x, y],
        "mirrored and turned": lambda x, y: [y, x],
        "twice as large": lambda x, y: [2 * x, 2 * y],
    },
    "triangle": {
        "a sixth of a turn": lambda a, b: [-b, a + b],
        "a third of a turn": lambda a, b: [-a - b, a],
        "half a turn": lambda a, b: [-a, -b],
        "mirrored": lambda a, b: [b, a],
        "mirrored and turned": lambda a, b: [-a, a + b],
        "twice as large": lambda a, b: [2 * a, 2 * b],
    },
}
MIDDLE = {"square": (4, 4), "triangle": (2, 4)}


def put(points: Points, grid: Grid) -> Points:
    """Points counted from the middle of the paper, as points of the paper."""
    across, down = MIDDLE[grid]
    return [[across + a, down + b] for a, b in points]


def put_on_plain(places: list[tuple[float, float]]) -> Points:
    """Places around the middle of plain paper, as its points."""
    most = 100 * SPACES
    return [[min(max(round(most / 2 + part), 0), most) for part in one] for one in places]


__all__ = [
    "GRIDS",
    "MIDDLE",
    "TURNS",
    "around",
    "put",
    "put_on_plain",
    "random_points",
    "random_shape",
    "small_points",
    "spots",
]
