"""Shapes that are ready to be traced, drawn stroke by stroke, or cut.

On dots they are as regular as dots allow: there is no regular pentagon on either kind, and no
square on triangle dots.
"""

from __future__ import annotations

import math

from manipulatives.maths.shapes.data import CURVES, Shape
from manipulatives.maths.shapes.papers import Grid

MIDDLE = 400
RADIUS = 320
# The outline of the star of five strokes has its notches so far in: 1 / φ², with φ the golden
# ratio.
NOTCH = (3 - math.sqrt(5)) / 2

# fmt: off
_POINTS: dict[Grid, dict[str, list[list[int]]]] = {
    "square": {
        "triangle": [[4, 1], [7, 7], [1, 7]],
        "right triangle": [[1, 1], [7, 7], [1, 7]],
        "square": [[2, 2], [6, 2], [6, 6], [2, 6]],
        "rectangle": [[1, 2], [7, 2], [7, 6], [1, 6]],
        "rhombus": [[4, 1], [6, 4], [4, 7], [2, 4]],
        "parallelogram": [[3, 2], [7, 2], [5, 6], [1, 6]],
        "trapezoid": [[3, 2], [5, 2], [7, 6], [1, 6]],
        "kite": [[4, 0], [6, 3], [4, 8], [2, 3]],
        "pentagon": [[4, 1], [7, 3], [6, 7], [2, 7], [1, 3]],
        "hexagon": [[2, 1], [6, 1], [8, 4], [6, 7], [2, 7], [0, 4]],
        "octagon": [[3, 1], [5, 1], [7, 3], [7, 5], [5, 7], [3, 7], [1, 5], [1, 3]],
        "star": [
            [4, 0], [5, 3], [8, 3], [6, 5], [7, 8], [4, 6], [1, 8], [2, 5], [0, 3], [3, 3],
        ],
        "pentagram": [[4, 0], [7, 8], [0, 3], [8, 3], [1, 8]],
        "circle": [[4, 4], [4, 1]],
        "half circle": [[1, 5], [7, 5]],
        "quarter circle": [[2, 6], [2, 2]],
    },
    "triangle": {
        "triangle": [[4, 0], [4, 6], [-2, 6]],
        "right triangle": [[1, 2], [3, 6], [-1, 6]],
        "rectangle": [[0, 2], [6, 2], [4, 6], [-2, 6]],
        "rhombus": [[0, 2], [4, 2], [4, 6], [0, 6]],
        "parallelogram": [[0, 2], [5, 2], [5, 5], [0, 5]],
        "trapezoid": [[2, 2], [5, 2], [5, 5], [-1, 5]],
        "kite": [[4, 0], [5, 2], [0, 8], [1, 2]],
        "pentagon": [[4, 0], [5, 3], [3, 6], [-1, 6], [0, 3]],
        "hexagon": [[2, 1], [5, 1], [5, 4], [2, 7], [-1, 7], [-1, 4]],
        "star": [
            [4, 0], [4, 2], [6, 2], [4, 4], [4, 6], [2, 6],
            [0, 8], [0, 6], [-2, 6], [0, 4], [0, 2], [2, 2],
        ],
        "pentagram": [[4, 0], [3, 6], [0, 3], [5, 3], [-1, 6]],
        "circle": [[2, 4], [5, 4]],
        "half circle": [[-1, 4], [5, 4]],
        "quarter circle": [[-1, 6], [1, 2]],
    },
    "plain": {
        "right triangle": [[150, 150], [650, 650], [150, 650]],
        "square": [[160, 160], [640, 160], [640, 640], [160, 640]],
        "rectangle": [[100, 160], [700, 160], [700, 640], [100, 640]],
        "rhombus": [[400, 100], [600, 400], [400, 700], [200, 400]],
        "parallelogram": [[250, 220], [730, 220], [550, 580], [70, 580]],
        "trapezoid": [[280, 200], [520, 200], [700, 600], [100, 600]],
        "kite": [[400, 60], [600, 280], [400, 740], [200, 280]],
        "circle": [[400, 400], [400, 100]],
        "half circle": [[100, 520], [700, 520]],
        "quarter circle": [[180, 620], [180, 160]],
    },
}
# fmt: on
_REGULAR = {"triangle": 3, "pentagon": 5, "hexagon": 6, "heptagon": 7, "octagon": 8}


def ready_shapes(grid: Grid) -> dict[str, Shape]:
    """Return the shapes that are ready on a paper, by name.

    Example:
        >>> ready_shapes("square")["triangle"]
        {'points': [[4, 1], [7, 7], [1, 7]], 'closed': True}
        >>> sorted(set(ready_shapes("square")) - set(ready_shapes("triangle")))
        ['octagon', 'square']
    """
    points = dict(_POINTS[grid])
    if grid == "plain":
        for name, sides in _REGULAR.items():
            points[name] = _around(sides, 1)
        points["star"] = _around(10, NOTCH)
        points["pentagram"] = [points["pentagon"][2 * turn % 5] for turn in range(5)]
    return {name: _shape(name, points[name]) for name in ORDER if name in points}


ORDER = (
    "triangle",
    "right triangle",
    "square",
    "rectangle",
    "rhombus",
    "parallelogram",
    "trapezoid",
    "kite",
    "pentagon",
    "hexagon",
    "heptagon",
    "octagon",
    "star",
    "pentagram",
    "circle",
    "half circle",
    "quarter circle",
)


def _shape(name: str, points: list[list[int]]) -> Shape:
    shape = Shape(points=[list(point) for point in points], closed=True)
    if name in CURVES:
        shape["curve"] = name
    return shape


def _around(many: int, inward: float) -> list[list[int]]:
    """Return points around the middle of plain paper, every second one nearer to it."""
    points = []
    for index in range(many):
        turn = 2 * math.pi * index / many
        far = RADIUS * (inward if index % 2 else 1) if inward < 1 else RADIUS
        right, up = far * math.sin(turn), far * math.cos(turn)
        points.append([math.floor(MIDDLE + right + 0.5), math.floor(MIDDLE - up + 0.5)])
    return points


def shape_named(name: object, grid: Grid) -> Shape:
    """Return a shape that is ready, by its name.

    Args:
        name: such as "hexagon"; "trapezium" is the trapezoid, and "semicircle" the half circle.
        grid: the paper it is on.

    Raises:
        ValueError: there is none of that name on that paper.

    Example:
        >>> shape_named("circle", "square")
        {'points': [[4, 4], [4, 1]], 'closed': True, 'curve': 'circle'}
    """
    ready = ready_shapes(grid)
    usual = {"trapezium": "trapezoid", "semicircle": "half circle"}
    key = usual.get(name, name) if isinstance(name, str) else None
    if key in ready:
        return ready[key]
    why = " There is no square on triangle dots." if key == "square" else ""
    raise ValueError(
        f"On {grid} paper these shapes are ready: {', '.join(ready)}; not {name!r}.{why}"
    )
