"""Shapes as data.

A **shape** is a dict: `points`, in the order in which they were put, and `closed`, whether the
last is joined to the first. The papers (`papers`) say what the numbers of a point count.
Two fields are there only when they are needed:

* `curve`: `"circle"` (its points are the centre and a point of its edge), `"half circle"` (the two
  ends of its straight side; seen along it, the curved side is on the left) or `"quarter circle"`
  (its square corner and one end of its curved side; the other end is a quarter turn further,
  clockwise);
* `cuts`: lines that cut the shape into shares (`shares`).
"""

from __future__ import annotations

from typing import NotRequired, TypedDict

from manipulatives.maths.fields import fields_of
from manipulatives.maths.shapes.papers import Grid, is_point, nearest, place

CURVES = ("circle", "half circle", "quarter circle")
MOST_POINTS = 40
MOST_CUTS = 12

Cut = list[list[int]]


class Shape(TypedDict):
    """A shape; a plain dict, as it is stored and sent."""

    points: list[list[int]]
    closed: bool
    curve: NotRequired[str]
    cuts: NotRequired[list[Cut]]


def check_shape(given: object, grid: Grid) -> Shape:
    """Check a shape and return a copy of it.

    Args:
        given: a shape, or a list of points, which is a closed shape.
        grid: the paper it is on.

    Raises:
        ValueError: something is missing, too much, or not on the paper.

    Example:
        >>> check_shape([[0, 0], [4, 0], [0, 3]], "square")
        {'points': [[0, 0], [4, 0], [0, 3]], 'closed': True}
    """
    if isinstance(given, (list, tuple)):
        given = {"points": given, "closed": True}
    data = fields_of(given, "A shape", ("points", "closed"), ("curve", "cuts"))
    points, closed = data["points"], data["closed"]
    if not isinstance(closed, bool):
        # Everywhere in the kit a wrong value of any type is a ValueError.
        raise ValueError(f'"closed" is True or False, not {closed!r}.')  # noqa: TRY004
    if not isinstance(points, (list, tuple)) or len(points) > MOST_POINTS:
        raise ValueError(f"A shape has a list of at most {MOST_POINTS} points, not {points!r}.")
    shape = Shape(points=[_point(point, grid) for point in points], closed=closed)
    if data.get("curve") is not None:
        shape["curve"] = _curve(data["curve"], shape)
    if data.get("cuts"):
        shape["cuts"] = _cuts(data["cuts"])
    return shape


def _point(given: object, grid: Grid) -> list[int]:
    if is_point(given, grid):
        return list(given)
    allowed = {
        "square": "[x, y] in whole dots, each from 0 to 8",
        "triangle": "[a, b] in whole dots, b from 0 to 8 and 2a + b from 0 to 16",
        "plain": "[x, y] in whole hundredths of a space, each from 0 to 800",
    }[grid]
    raise ValueError(f"A point on {grid} paper is {allowed}, not {given!r}.")


def _curve(given: object, shape: Shape) -> str:
    if given not in CURVES:
        raise ValueError(f"A curve is {', '.join(map(repr, CURVES))}, not {given!r}.")
    points = shape["points"]
    if len(points) != 2 or points[0] == points[1] or not shape["closed"]:  # noqa: PLR2004 - see above
        raise ValueError(f"A {given} is closed and has two points apart, not {points!r}.")
    return str(given)


def _cuts(given: object) -> list[Cut]:
    if not isinstance(given, (list, tuple)) or len(given) > MOST_CUTS:
        raise ValueError(f"Cuts are a list of at most {MOST_CUTS} lines, not {given!r}.")
    for cut in given:
        if (
            not isinstance(cut, (list, tuple))
            or not 2 <= len(cut) <= MOST_POINTS  # noqa: PLR2004 - a line has two ends
            or not all(_is_pair(point) for point in cut)
        ):
            raise ValueError(f"A cut is a line through two or more points, not {cut!r}.")
    return [[list(point) for point in cut] for cut in given]


def _is_pair(given: object) -> bool:
    return (
        isinstance(given, (list, tuple))
        and len(given) == 2  # noqa: PLR2004 - a pair
        and all(isinstance(part, int) and not isinstance(part, bool) for part in given)
    )


def converted(given: Shape, before: Grid, after: Grid) -> Shape:
    """Return a shape on other paper: each point where it was, or as near as the paper allows.

    Cuts are left out, since they may no longer go from edge to edge.

    Args:
        given: the shape.
        before: the paper that it is on.
        after: the paper that it is put on.

    Raises:
        ValueError: no shape.

    Example:
        >>> converted({"points": [[1, 2], [3, 2]], "closed": False}, "square", "plain")
        {'points': [[100, 200], [300, 200]], 'closed': False}
    """
    shape = check_shape(given, before)
    spots = [place((point[0], point[1]), before) for point in shape["points"]]
    points = [list(nearest(*spot, after)) for spot in spots]
    if "curve" not in shape:
        return Shape(points=points, closed=shape["closed"])
    if points[0] == points[1]:
        return Shape(points=[], closed=False)
    return Shape(points=points, closed=True, curve=shape["curve"])
