"""Shapes that tasks ask about: turned, mirrored, small and large, each picture once.

Neither orientation nor size changes a name, so every shape comes in all of them. On dots all of it
is exact.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cache
from typing import NamedTuple, TypeVar

from manipulatives.lessons.strands.shapes.pools.corners import SQUARE_DOTS, TRIANGLE_DOTS, Corners
from manipulatives.maths.shapes.data import Shape
from manipulatives.maths.shapes.papers import Grid, Point, is_point
from manipulatives.words.shape_facts import Facts, called, shape_facts
from manipulatives.words.shape_names import Wording

T = TypeVar("T")

LEAST_ACROSS = 3
"""How many spaces a shape is wide or high at least, so that it can be seen well."""
EACH = 24
"""How many pictures there are of each kind of shape, if there are so many."""
MOST_SCALE = 8


class Drawn(NamedTuple):
    """A shape on dots.

    Attributes:
        kind: what sort of shape it is here, such as "rectangle" or "notched hexagon".
        grid: the paper it is on.
        points: its corners, and points in the middle of its sides if there are any.
        curve: "circle", "half circle", "quarter circle", or "" for straight sides.
        closed: whether the last point is joined to the first.

    Example:
        >>> Drawn("triangle", "square", ((0, 0), (4, 0), (0, 3))).shape()
        {'points': [[0, 0], [4, 0], [0, 3]], 'closed': True}
    """

    kind: str
    grid: Grid
    points: tuple[Point, ...]
    curve: str = ""
    closed: bool = True

    def shape(self) -> Shape:
        """Return the shape as the paper keeps it."""
        shape = Shape(points=[list(point) for point in self.points], closed=self.closed)
        if self.curve:
            shape["curve"] = self.curve
        return shape


_TURNS: dict[Grid, tuple[Callable[[int, int], Point], Callable[[int, int], Point], int]] = {
    # A turn that leaves dots on dots, a mirroring, and how many such turns make a round.
    "square": (lambda x, y: (-y, x), lambda x, y: (-x, y), 4),
    "triangle": (lambda a, b: (-b, a + b), lambda a, b: (b, a), 6),
}


@cache
def drawn(kind: str) -> tuple[Drawn, ...]:
    """Return every picture of a kind of shape, about the middle of its paper.

    Example:
        >>> drawn("square")[0].points, len(drawn("square"))
        (((3, 3), (6, 3), (6, 6), (3, 6)), 19)
    """
    papers: tuple[tuple[Grid, Corners], ...] = (
        ("square", SQUARE_DOTS),
        ("triangle", TRIANGLE_DOTS),
    )
    seen: dict[object, Drawn] = {}
    for grid, table in papers:
        for corners in table.get(kind, ()):
            for points in _in_all_ways(corners, grid):
                seen.setdefault((grid, frozenset(points)), Drawn(kind, grid, points))
    return tuple(seen.values())


@cache
def some_drawn(kind: str) -> tuple[Drawn, ...]:
    """Return pictures of a kind of shape, about as many as of every other kind.

    Example:
        >>> len(some_drawn("triangle")), len(some_drawn("square"))
        (24, 19)
    """
    return spread(drawn(kind), EACH)


def spread(items: Sequence[T], many: int) -> tuple[T, ...]:
    """Return so many of the items, evenly from the whole sequence.

    Example:
        >>> spread("abcdef", 3)
        ('a', 'c', 'e')
    """
    many = min(many, len(items))
    return tuple(items[len(items) * index // many] for index in range(many))


def all_drawn(kinds: Iterable[str]) -> tuple[Drawn, ...]:
    """Return some pictures of each of several kinds.

    Example:
        >>> len(all_drawn(["triangle", "square"]))
        43
    """
    return tuple(one for kind in kinds for one in some_drawn(kind))


def _in_all_ways(corners: Sequence[Point], grid: Grid) -> Iterator[tuple[Point, ...]]:
    turn, mirror, turns = _TURNS[grid]
    for scale in range(1, MOST_SCALE + 1):
        points = [(scale * across, scale * down) for across, down in corners]
        for mirrored in (points, [mirror(*point) for point in points]):
            turned = mirrored
            for _ in range(turns):
                placed = _in_the_middle(turned, grid)
                if placed:
                    yield placed
                turned = [turn(*point) for point in turned]


def _in_the_middle(points: Sequence[Point], grid: Grid) -> tuple[Point, ...] | None:
    """Return points moved to the middle of the paper, or None if they are too small or large."""
    # On triangle dots twice as far across, so that half spaces are whole numbers.
    wide = [2 * across + down if grid == "triangle" else across for across, down in points]
    high = [down for _, down in points]
    unit = 2 if grid == "triangle" else 1
    if max(max(wide) - min(wide), unit * (max(high) - min(high))) < LEAST_ACROSS * unit:
        return None
    down = 4 - (max(high) + min(high)) // 2
    if grid == "triangle":
        across = (8 - (max(wide) + min(wide)) // 2 - down) // 2
    else:
        across = 4 - (max(wide) + min(wide)) // 2
    moved = tuple((one + across, other + down) for one, other in points)
    return moved if all(is_point(point, grid) for point in moved) else None


@cache
def facts_of(one: Drawn) -> Facts:
    """Return what is true of a shape.

    Example:
        >>> facts_of(drawn("square")[0])["sides"]
        4
    """
    return shape_facts(one.shape(), one.grid)


@cache
def names_of(one: Drawn, vocabulary: str) -> tuple[str, ...]:
    """Return everything that a shape is called, the most particular name first.

    Example:
        >>> names_of(drawn("square")[0], "us")[:2]
        ('square', 'rectangle')
    """
    return tuple(called(one.shape(), one.grid, Wording(vocabulary)))


@cache
def with_points_on_sides(one: Drawn) -> Drawn | None:
    """Return the shape with a point in the middle of a straight side, or None if no dot is there.

    Example:
        >>> with_points_on_sides(drawn("square")[1]).points[:3]
        ((2, 2), (4, 2), (6, 2))
    """
    for at, (a, b) in enumerate(one.points):
        c, d = one.points[(at + 1) % len(one.points)]
        if (a + c) % 2 == 0 and (b + d) % 2 == 0:
            middle = ((a + c) // 2, (b + d) // 2)
            points = (*one.points[: at + 1], middle, *one.points[at + 1 :])
            return one._replace(points=points)
    return None


@cache
def with_gap(one: Drawn) -> Drawn | None:
    """Return the shape with its last side not quite drawn, or None if no dot is on the way.

    Example:
        >>> with_gap(drawn("square")[0]).closed
        False
    """
    (a, b), (c, d) = one.points[-1], one.points[0]
    steps = math.gcd(c - a, d - b)
    if steps == 1:
        return None
    end = (c - (c - a) // steps, d - (d - b) // steps)
    return one._replace(points=(*one.points, end), closed=False)
