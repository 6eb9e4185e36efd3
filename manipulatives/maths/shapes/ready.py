"""Shapes that are ready to be traced, drawn stroke by stroke, or cut.

On dots they are as regular as dots allow: there is no regular pentagon on either kind, and no
square on triangle dots.
"""

from __future__ import annotations

import math

from manipulatives.data import table
from manipulatives.maths.shapes.data import CURVES, Shape
from manipulatives.maths.shapes.papers import Grid

MIDDLE = 400
RADIUS = 320
# The outline of the star of five strokes has its notches so far in: 1 / φ², with φ the golden
# ratio.
NOTCH = (3 - math.sqrt(5)) / 2

_READY = table("shapes")
ORDER: list[str] = _READY["order"]


def ready_shapes(grid: Grid) -> dict[str, Shape]:
    """Return the shapes that are ready on a paper, by name.

    Example:
        >>> ready_shapes("square")["triangle"]
        {'points': [[4, 1], [7, 7], [1, 7]], 'closed': True}
        >>> sorted(set(ready_shapes("square")) - set(ready_shapes("triangle")))
        ['octagon', 'square']
    """
    points = dict(_READY["points"][grid])
    if grid == "plain":
        for name, sides in _READY["regular"].items():
            points[name] = _around(sides, 1)
        points["star"] = _around(10, NOTCH)
        points["pentagram"] = [points["pentagon"][2 * turn % 5] for turn in range(5)]
    return {name: _shape(name, points[name]) for name in ORDER if name in points}


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
