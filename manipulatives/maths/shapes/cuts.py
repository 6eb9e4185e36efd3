"""Cutting a shape along lines, in whole numbers.

A share is the list of its corners, a *ring*. A circle is a ring too, of points
so close to each other that only the side of a line on which they are is used.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from functools import cache
from itertools import pairwise

from manipulatives.maths.shapes.papers import Point, cross, way

DIRECTIONS = 24
RADIUS = 10_000
"""The radius of a circle, of which all points are rounded to whole numbers."""
RIM = 2 * DIRECTIONS
"""Between two directions lies one point more, so that a cut between neighbours is no edge."""

Ring = list[Point]


class CutProblem(ValueError):
    """A cut that does not fit its shape."""


def on_circle(point: Sequence[int]) -> Point:
    """Return where a point of a circle's cut is: `[direction, 1]` on its edge, `[0, 0]` within.

    Raises:
        CutProblem: no such point.

    Example:
        >>> on_circle([6, 1]), on_circle([0, 0])
        ((10000, 0), (0, 0))
    """
    direction, far = point
    if (direction, far) == (0, 0):
        return 0, 0
    if far == 1 and 0 <= direction < DIRECTIONS:
        return rim()[2 * direction]
    raise CutProblem(
        f"A point of a cut is [0 to {DIRECTIONS - 1}, 1] on the edge of a circle, or [0, 0], its "
        f"centre, not {list(point)!r}."
    )


@cache
def rim() -> tuple[Point, ...]:
    """Return the edge of a circle as a ring, clockwise from the top.

    Example:
        >>> rim()[0], rim()[12], len(rim())
        ((0, -10000), (10000, 0), 48)
    """
    half = []
    for index in range(RIM // 2):
        turn = 2 * math.pi * index / RIM
        right, up = RADIUS * math.sin(turn), RADIUS * math.cos(turn)
        half.append((math.floor(right + 0.5), -math.floor(up + 0.5)))
    return (*half, *((-across, -down) for across, down in half))


def chord(start: Point, end: Point) -> list[Point]:
    """Return where a cut of a circle may meet others: at its ends, and in the centre.

    Example:
        >>> chord(on_circle([0, 1]), on_circle([12, 1]))
        [(0, -10000), (0, 0), (0, 10000)]
    """
    through = start != (0, 0) and end == (-start[0], -start[1])
    return [start, (0, 0), end] if through else [start, end]


def dots_between(start: Point, end: Point) -> list[Point]:
    """Return the points of a paper on a line, where a cut of a polygon may meet others.

    Example:
        >>> dots_between((0, 0), (4, 2))
        [(0, 0), (2, 1), (4, 2)]
    """
    across, down = way(start, end)
    steps = math.gcd(across, down) or 1
    return [
        (start[0] + across // steps * step, start[1] + down // steps * step)
        for step in range(steps + 1)
    ]


def cut_along(
    rings: list[Ring], line: list[Point], between: Callable[[Point, Point], list[Point]]
) -> list[Ring]:
    """Return the shares after one more cut.

    Args:
        rings: the shares before.
        line: the points that the cut goes through, from edge to edge.
        between: where the cut may meet others between two of its points.

    Raises:
        CutProblem: it leaves the shape, ends inside it, crosses another where it may not, or
            crosses itself.

    Example:
        >>> cut_along([[(0, 0), (2, 0), (2, 2), (0, 2)]], [(0, 0), (2, 2)], dots_between)
        [[(0, 0), (2, 0), (2, 2)], [(2, 2), (0, 2), (0, 0)]]
    """
    steps = list(pairwise(line))
    for index, one in enumerate(steps):
        if one[0] == one[1]:
            raise CutProblem("A cut does not cross or touch itself.")
        for other in steps[index + 1 :]:
            if _cross(one, other) or one[0] in other or (one[1] in other and one[1] != other[0]):
                raise CutProblem("A cut does not cross or touch itself.")
    path = [line[0]]
    for step in steps:
        path += between(*step)[1:]
    if not any(_on_edge(path[0], ring) for ring in rings):
        raise CutProblem("A cut begins on an edge of the shape or on another cut.")
    run = path[:1]
    for point in path[1:]:
        run.append(point)
        if any(_on_edge(point, ring) for ring in rings):
            rings = _split(rings, run)
            run = [point]
    if len(run) > 1:
        raise CutProblem("A cut ends on an edge of the shape or on another cut.")
    return rings


def _split(rings: list[Ring], run: list[Point]) -> list[Ring]:
    """Return the shares after a line that meets edges at its two ends only."""
    middle = run[0][0] + run[1][0], run[0][1] + run[1][1]
    for index, ring in enumerate(rings):
        edges = list(pairwise([*ring, ring[0]]))
        if any(_between(run[0], *edge) and _between(run[1], *edge) for edge in edges):
            return rings
        doubled = [(2 * across, 2 * down) for across, down in ring]
        if not (_inside(middle, doubled) or _on_edge(middle, doubled)):
            continue
        bent = _bends(run)
        if any(_cross(step, edge) for step in pairwise(bent) for edge in edges):
            raise CutProblem("Cuts cross at a dot, not between dots.")
        start, end = run[0], run[-1]
        whole = _with(_with(ring, start), end)
        at = whole.index(start)
        whole = whole[at:] + whole[:at]
        at = whole.index(end)
        bends = bent[1:-1]
        one, other = whole[: at + 1] + bends[::-1], [*whole[at:], start, *bends]
        return [*rings[:index], one, other, *rings[index + 1 :]]
    raise CutProblem("A cut stays inside the shape.")


def _bends(run: list[Point]) -> list[Point]:
    inner_ones = [
        here
        for before, here, after in zip(run, run[1:], run[2:], strict=False)
        if cross(way(before, here), way(here, after)) != 0
    ]
    return [run[0], *inner_ones, run[-1]]


def _with(ring: Ring, point: Point) -> Ring:
    """Return the corners of a share with a point of its edge among them."""
    if point in ring:
        return ring
    for at, (start, end) in enumerate(pairwise([*ring, ring[0]])):
        if _between(point, start, end):
            return [*ring[: at + 1], point, *ring[at + 1 :]]
    raise CutProblem("A cut stays inside the shape.")


def _on_edge(point: Point, ring: Ring) -> bool:
    return any(_between(point, start, end) for start, end in pairwise([*ring, ring[0]]))


def _between(point: Point, start: Point, end: Point) -> bool:
    if cross(way(start, end), way(start, point)) != 0:
        return False
    return all(
        min(one, other) <= part <= max(one, other)
        for part, one, other in zip(point, start, end, strict=True)
    )


def _inside(point: Point, ring: Ring) -> bool:
    """Return whether a point that is on no edge is inside: a line to the right leaves it."""
    inside = False
    for start, end in pairwise([*ring, ring[0]]):
        if (start[1] > point[1]) != (end[1] > point[1]):
            right = cross(way(start, end), way(start, point)) > 0
            inside ^= right == (end[1] < start[1])
    return inside


def _cross(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    """Return whether two lines cross, with both ends of each beside the other."""
    (a, b), (c, d) = one, other
    left, right = (cross(way(a, b), way(a, point)) for point in other)
    low, high = (cross(way(c, d), way(c, point)) for point in one)
    return (left > 0) != (right > 0) and (low > 0) != (high > 0) and left * right * low * high != 0
