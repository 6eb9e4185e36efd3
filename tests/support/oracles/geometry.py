"""What is true of shapes, found by other means than the kit's: shapely, products, and folding.

Places are exact where they need be: on triangle dots x is a + b/2 and y is b times the root of
3/4, so squares of lengths and products of steps are fractions.
"""

from __future__ import annotations

import math
from fractions import Fraction

from shapely import LineString, Point, Polygon, unary_union
from shapely.ops import polygonize


def step(one, other, grid):
    """A step between dots: across, and down in rows (which are the root of 3/4 apart)."""
    across, down = other[0] - one[0], other[1] - one[1]
    return (Fraction(across) + Fraction(down, 2), down) if grid == "triangle" else (across, down)


def product(one, other, grid):
    row = Fraction(3, 4) if grid == "triangle" else 1
    return one[0] * other[0] + row * one[1] * other[1]


def corners_of(shape, _grid=None):
    """The points where the way turns: the area between the steps before and after is not nothing.

    Straight lines stay straight on either paper, so that it does not matter here.
    """
    points = shape["points"]
    return [
        here
        for before, here, after in zip(
            [points[-1], *points[:-1]], points, [*points[1:], points[0]], strict=True
        )
        if (here[0] - before[0]) * (after[1] - here[1])
        != (here[1] - before[1]) * (after[0] - here[0])
    ]


def is_simple(shape):
    return Polygon(shape["points"]).is_valid


def around(points, grid):
    """The steps from corner to corner, and back to the first."""
    return [
        step(one, other, grid) for one, other in zip(points, [*points[1:], points[0]], strict=True)
    ]


def right_angles(shape, grid):
    points = corners_of(shape, grid)
    steps = around(points, grid)
    area = sum(
        a[0] * b[1] - a[1] * b[0] for a, b in zip(points, [*points[1:], points[0]], strict=True)
    )
    many = 0
    for before, after in zip([steps[-1], *steps[:-1]], steps, strict=True):
        turns = before[0] * after[1] - before[1] * after[0]
        # A notch of 270 degrees turns the other way.
        many += product(before, after, grid) == 0 and (turns > 0) == (area > 0)
    return many


def lengths(shape, grid):
    return [product(one, one, grid) for one in around(corners_of(shape, grid), grid)]


def parallel_pairs(shape, grid):
    steps = around(corners_of(shape, grid), grid)
    return sum(
        steps[i][0] * steps[j][1] == steps[i][1] * steps[j][0]
        for i in range(len(steps))
        for j in range(i + 2, len(steps))
        if (i, j) != (0, len(steps) - 1)
    )


def tips(shape, grid):
    """Corners that lie on the hull of the shape, or stick out between notches: convex corners."""
    points = corners_of(shape, grid)
    ring = Polygon(points)
    clockwise = not ring.exterior.is_ccw
    many = 0
    for before, here, after in zip(
        [points[-1], *points[:-1]], points, [*points[1:], points[0]], strict=True
    ):
        turns = (here[0] - before[0]) * (after[1] - here[1]) - (here[1] - before[1]) * (
            after[0] - here[0]
        )
        many += (turns < 0) == clockwise
    return many


def places(shape, grid):
    """Where the corners are, as floats."""
    points = corners_of(shape, grid)
    if grid == "triangle":
        return [(a + b / 2, b * math.sqrt(3) / 2) for a, b in points]
    return [(float(x), float(y)) for x, y in points]


def mirror_lines(shape, grid):
    """Fold on every line through the middle and a corner, or the middle of a side."""
    spots = places(shape, grid)
    many = len(spots)
    middle = [sum(one[k] for one in spots) / many for k in (0, 1)]
    halves = [
        ((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)
        for one, other in zip(spots, [*spots[1:], spots[0]], strict=True)
    ]
    directions = set()
    for spot in (*spots, *halves):
        across, down = spot[0] - middle[0], spot[1] - middle[1]
        if math.hypot(across, down) > 1e-6:
            directions.add(round(math.atan2(down, across) % math.pi, 6) % round(math.pi, 6))
    return sum(folds(spots, middle, direction) for direction in directions)


def has_vertical_line(shape, grid):
    spots = places(shape, grid)
    middle = [sum(one[k] for one in spots) / len(spots) for k in (0, 1)]
    return folds(spots, middle, math.pi / 2)


def folds(spots, middle, direction):
    """Whether a fold lays the whole shape on itself: the area of what does not match is nothing."""
    cos, sin = math.cos(2 * direction), math.sin(2 * direction)
    folded = [
        (
            middle[0] + cos * (x - middle[0]) + sin * (y - middle[1]),
            middle[1] + sin * (x - middle[0]) - cos * (y - middle[1]),
        )
        for x, y in spots
    ]
    return Polygon(spots).symmetric_difference(Polygon(folded)).area < 1e-4


def names(shape, grid):
    """Everything a shape is called by its sides, angles and lengths."""
    if "curve" in shape:
        return {shape["curve"]}
    if not shape["closed"]:
        return set()
    sides = len(corners_of(shape, grid))
    by_sides = ("triangle", "quadrilateral", "pentagon", "hexagon", "heptagon", "octagon")
    found = {by_sides[sides - 3]} if sides < 9 else set()
    if sides != 4:
        return found
    right, long = right_angles(shape, grid), lengths(shape, grid)
    pairs = parallel_pairs(shape, grid)
    kinds = {
        "rectangle": right == 4,
        "square": right == 4 and len(set(long)) == 1,
        "rhombus": len(set(long)) == 1,
        "parallelogram": pairs == 2,
        "trapezoid": pairs == 1,
        "kite": tips(shape, grid) == 4
        and (
            (long[0] == long[1] and long[2] == long[3])
            or (long[1] == long[2] and long[3] == long[0])
        ),
    }
    return found | {name for name, holds in kinds.items() if holds}


def areas(shape):
    """The areas of the shares of a cut shape on square dots; a circle is a polygon of 720 sides."""
    lines = []
    if shape.get("curve") == "circle":
        whole = Point(0, 0).buffer(1, quad_segs=180)
        for cut in shape["cuts"]:
            spots = [_on_circle(*point) for point in cut]
            lines.append(LineString(spots))
    else:
        whole = Polygon(shape["points"])
        lines = [LineString(cut) for cut in shape["cuts"]]
    pieces = polygonize(unary_union([whole.boundary, *lines]))
    return [piece.area for piece in pieces if whole.covers(piece.representative_point())]


def _on_circle(direction, far):
    # A little beyond the edge, so that the line surely crosses it.
    turn = math.pi * direction / 12
    return 1.001 * far * math.sin(turn), -1.001 * far * math.cos(turn)
