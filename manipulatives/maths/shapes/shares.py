"""Shapes cut into shares: how many there are, whether they are equal, and ways to cut.

A *cut* is a line through points, from edge to edge: from the outline, or from an earlier cut, to
the outline or to an earlier cut. On a polygon its points are points of the paper. On a circle they
are `[direction, 1]` on the edge, the direction counted clockwise from the top in 24 parts of the
round, or `[0, 0]`, the centre.

Shares are equal when their areas are; they need not have the same shape (Common Core 2.G.A.3).
Areas of polygons are compared as whole numbers. Those of a circle's shares are not even fractions,
so they count as equal when they differ by less than a billionth of the square of the radius.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from manipulatives.data import table
from manipulatives.maths.shapes.cuts import (
    RADIUS,
    RIM,
    CutProblem,
    Ring,
    chord,
    cut_along,
    dots_between,
    on_circle,
    rim,
)
from manipulatives.maths.shapes.data import Cut, Shape, check_shape
from manipulatives.maths.shapes.outline import outline_of
from manipulatives.maths.shapes.papers import Grid, Point, cross, inner, way

TWELFTHS = 12
CLOSE = 1e-9

_WAYS = table("shares")
_PARALLELOGRAM: dict[int, list[list[Cut]]]
_CIRCLE: dict[int, list[list[Cut]]]
_PARALLELOGRAM, _CIRCLE = (
    {int(shares): ways for shares, ways in _WAYS[kind].items()}
    for kind in ("parallelogram", "circle")
)


@dataclass(frozen=True)
class Shares:
    """The shares of a cut shape.

    Attributes:
        rings: the corners of each share. Those of a circle's shares are in ten-thousandths of the
            radius from the centre, with points along its edge.
        areas: how large each is: whole numbers for a polygon, in the smallest triangles of dots;
            for a circle in squares of its radius.
        alike: whether they all have the same shape and size.
    """

    rings: tuple[tuple[Point, ...], ...]
    areas: tuple[float, ...]
    alike: bool

    @property
    def equal(self) -> bool:
        """Whether all are equally large."""
        least, most = min(self.areas), max(self.areas)
        return least == most or (isinstance(most, float) and most - least < CLOSE)


def shares_of(given: Shape, grid: Grid) -> Shares | None:
    """Return the shares that a shape was cut into, one when there are no cuts.

    Returns:
        The shares, or None for what cannot be cut: no polygon and no circle.

    Raises:
        CutProblem: a cut leaves the shape, ends inside it, or crosses another between dots.
        ValueError: no shape.

    Example:
        >>> box = {"points": [[0, 0], [6, 0], [6, 4], [0, 4]], "closed": True}
        >>> found = shares_of({**box, "cuts": [[[0, 0], [6, 4]], [[3, 2], [6, 0]]]}, "square")
        >>> found.areas, found.equal
        ((12, 12, 24), False)
    """
    shape = check_shape(given, grid)
    cuts = shape.get("cuts", [])
    if shape.get("curve") == "circle":
        rings: list[Ring] = [list(rim())]
        for cut in cuts:
            rings = cut_along(rings, [on_circle(point) for point in cut], chord)
        return Shares(
            tuple(map(tuple, rings)), tuple(map(_area_in_circle, rings)), _all_alike(rings, _near)
        )
    outline = outline_of(shape, grid)
    if "curve" in shape or outline.polygon is None:
        return None
    rings = [list(outline.polygon)]
    for cut in cuts:
        rings = cut_along(rings, [(across, down) for across, down in cut], dots_between)
    areas = tuple(abs(_area(ring)) for ring in rings)
    return Shares(tuple(map(tuple, rings)), areas, _all_alike(rings, _exact(grid)))


def ways_to_share(given: Shape, grid: Grid, shares: int) -> list[list[Cut]]:
    """Return ways to cut a circle or a parallelogram into equal shares.

    Some ways give a parallelogram equal shares of different shapes.

    Args:
        given: the shape; its own cuts are ignored.
        grid: the paper it is on. Ways that need other points than the paper has are left out.
        shares: how many, 2, 3 or 4.

    Returns:
        Cuts for each way; none for other shapes.

    Raises:
        ValueError: another number of shares, or no shape.

    Example:
        >>> box = {"points": [[0, 0], [6, 0], [6, 4], [0, 4]], "closed": True}
        >>> ways_to_share(box, "square", 2)[0]
        [[[3, 0], [3, 4]]]
    """
    if shares not in _PARALLELOGRAM:
        raise ValueError(f"A shape is shared into 2, 3 or 4, not {shares!r}.")
    shape = check_shape(given, grid)
    if shape.get("curve") == "circle":
        return _CIRCLE[shares]
    polygon = outline_of(shape, grid).polygon
    if "curve" in shape or polygon is None or len(polygon) != 4:  # noqa: PLR2004 - a parallelogram
        return []
    corner, along, across = polygon[0], way(*polygon[:2]), way(polygon[0], polygon[3])
    if way(polygon[1], polygon[2]) != across:
        return []
    ways = []
    for cuts in _PARALLELOGRAM[shares]:
        placed = [[_twelfths(corner, along, across, point) for point in cut] for cut in cuts]
        on_paper = [[point for point in cut if point is not None] for cut in placed]
        if on_paper == placed and _fit(shape, on_paper, grid):
            ways.append(on_paper)
    return ways


def _fit(shape: Shape, cuts: list[Cut], grid: Grid) -> bool:
    """Return whether cuts cross at points of the paper only."""
    try:
        return shares_of({**shape, "cuts": cuts}, grid) is not None
    except CutProblem:
        return False


def _twelfths(corner: Point, along: Point, across: Point, part: Sequence[int]) -> list[int] | None:
    """Return a point of the paper that is so many twelfths along two sides, or None."""
    point = []
    for start, one, other in zip(corner, along, across, strict=True):
        far, left = divmod(one * part[0] + other * part[1], TWELFTHS)
        if left:
            return None
        point.append(start + far)
    return point


def _area(ring: Sequence[Point]) -> int:
    return sum(cross(one, other) for one, other in pairwise([*ring, ring[0]]))


def _area_in_circle(ring: Ring) -> float:
    places = {point: index for index, point in enumerate(rim())}
    part = 2 * math.pi / RIM
    bulge = part - math.sin(part)
    twice = 0.0
    for start, end in pairwise([*ring, ring[0]]):
        if (0, 0) not in (start, end):
            turn = (places[end] - places[start]) % RIM
            twice += math.sin(turn * part) + (bulge if turn == 1 else 0.0)
    return twice / 2


def _exact(grid: Grid) -> Callable[[Point, Point], bool]:
    return lambda one, other: inner(one, one, grid) == inner(other, other, grid)


def _near(one: Point, other: Point) -> bool:
    # Rounded to ten-thousandths of the radius.
    return abs(math.hypot(*one) - math.hypot(*other)) < RADIUS / 1000


def _all_alike(rings: list[Ring], same: Callable[[Point, Point], bool]) -> bool:
    first, *others = (_without_straight(ring) for ring in rings)
    return all(_congruent(first, other, same) for other in others)


def _without_straight(ring: Ring) -> Ring:
    many = len(ring)
    return [
        point
        for at, point in enumerate(ring)
        if cross(way(ring[at - 1], point), way(point, ring[(at + 1) % many])) != 0
    ]


def _congruent(one: Ring, other: Ring, same: Callable[[Point, Point], bool]) -> bool:
    """Return whether two shares fit onto each other, turned or turned over.

    They do when all distances between corners agree.
    """
    many = len(one)
    if len(other) != many:
        return False
    steps = [way(one[i], one[j]) for i in range(many) for j in range(i)]
    for turned in (other, other[::-1]):
        for shift in range(many):
            fit = turned[shift:] + turned[:shift]
            ways = (way(fit[i], fit[j]) for i in range(many) for j in range(i))
            if all(same(step, its) for step, its in zip(steps, ways, strict=True)):
                return True
    return False
