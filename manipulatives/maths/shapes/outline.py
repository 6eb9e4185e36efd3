"""The outline of a shape: its sides, its corners, and sides that meet where they should not.

Standard usage, from memory: a polygon is a closed chain of straight sides that meet at their ends
only; a vertex is a point where two sides meet at an angle that is not straight.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from manipulatives.maths.shapes.data import Shape, check_shape
from manipulatives.maths.shapes.papers import Grid, Point, cross, inner, near_zero, way

Fault = Literal["few", "flat", "overlap", "crossing", "touching"]


@dataclass(frozen=True)
class Meeting:
    """Two sides that meet where they should not.

    Attributes:
        kind: `"overlap"` when they lie on each other, `"crossing"` when they cross, `"touching"`
            when an end of the one is on the other.
        one: the side that comes first, counted from 0.
        other: the other.
    """

    kind: Fault
    one: int
    other: int


@dataclass(frozen=True)
class Outline:
    """The parts of the outline of a shape with straight sides.

    Attributes:
        points: the points as they were put.
        corners: which of them are corners, in their order; in an open chain its ends are, too.
        repeated: which are equal to the point before them.
        straight: which are in the middle of a straight side, and are no vertices.
        closed: whether the last corner is joined to the first.
        meetings: where sides meet by mistake.
        fault: why a closed shape is no polygon, or what is wrong with an open chain: `"few"` (fewer
            than three points), `"flat"` (all on one line), or the worst of the meetings.
    """

    points: tuple[Point, ...]
    corners: tuple[int, ...]
    repeated: tuple[int, ...]
    straight: tuple[int, ...]
    closed: bool
    meetings: tuple[Meeting, ...]
    fault: Fault | None

    @property
    def polygon(self) -> tuple[Point, ...] | None:
        """Its corners when it is a polygon, else None."""
        if not self.closed or self.fault:
            return None
        return self.turns

    @property
    def turns(self) -> tuple[Point, ...]:
        """Where its corners are."""
        return tuple(self.points[index] for index in self.corners)

    @property
    def sides(self) -> tuple[tuple[Point, Point], ...]:
        """Its sides, from corner to corner; a closed one returns to its beginning."""
        turns = self.turns
        ends = turns[1:] + (turns[:1] if self._returns else ())
        return tuple(zip(turns, ends, strict=False))

    @property
    def _returns(self) -> bool:
        return self.closed and len(self.corners) > 2  # noqa: PLR2004 - two points have one side


def outline_of(shape: Mapping[str, object] | Shape, grid: Grid) -> Outline:
    """Return the outline of a shape with straight sides.

    Raises:
        ValueError: no shape.

    Example:
        >>> points = [[0, 0], [2, 0], [4, 0], [4, 4]]
        >>> outline = outline_of({"points": points, "closed": True}, "square")
        >>> outline.corners, outline.straight, outline.fault
        ((0, 2, 3), (1,), None)
    """
    checked = check_shape(shape, grid)
    points = tuple((across, down) for across, down in checked["points"])
    closed = checked["closed"]
    indexes = _apart(points, closed=closed)
    repeated = tuple(index for index in range(len(points)) if index not in indexes)
    corners = _turning(points, indexes, grid, closed=closed)
    straight = tuple(index for index in indexes if index not in corners)
    turns = [points[index] for index in corners]
    meetings = tuple(_meetings(turns, grid, closed=closed))
    return Outline(
        points,
        tuple(corners),
        repeated,
        straight,
        closed,
        meetings,
        _fault(points, indexes, corners, meetings, closed=closed),
    )


def _apart(points: Sequence[Point], *, closed: bool) -> list[int]:
    """Return the indexes of points that differ from the point before them."""
    indexes = [
        index for index, point in enumerate(points) if index == 0 or point != points[index - 1]
    ]
    while closed and len(indexes) > 1 and points[indexes[-1]] == points[indexes[0]]:
        indexes.pop()
    return indexes


def _turning(points: Sequence[Point], indexes: list[int], grid: Grid, *, closed: bool) -> list[int]:
    """Return which points are corners.

    All are checked before any is left out, so the first point of the chain does not matter.
    """
    corners = indexes
    while True:
        least = 3 if closed else 2
        straight = set()
        many = len(corners)
        for at in range(many) if closed else range(1, many - 1):
            before, here, after = (points[corners[(at + turn) % many]] for turn in (-1, 0, 1))
            if many >= least and _goes_on(way(before, here), way(here, after), grid):
                straight.add(at)
        if not straight:
            return corners
        corners = [corner for at, corner in enumerate(corners) if at not in straight]


def _goes_on(one: Point, other: Point, grid: Grid) -> bool:
    """Return whether a step goes straight on after another."""
    squares = inner(one, one, grid), inner(other, other, grid)
    return inner(one, other, grid) > 0 and near_zero(2 * cross(one, other), *squares, grid)


def _meetings(turns: Sequence[Point], grid: Grid, *, closed: bool) -> list[Meeting]:
    returns = closed and len(turns) > 2  # noqa: PLR2004 - two points have one side
    many = len(turns) if returns else len(turns) - 1
    found = []
    for one in range(many):
        for other in range(one + 1, many):
            first = turns[one], turns[one + 1]
            second = turns[other], turns[(other + 1) % len(turns)]
            if other == one + 1:
                kind = _folded(first[0], first[1], second[1], grid)
            elif returns and one == 0 and other == many - 1:
                kind = _folded(second[0], second[1], first[1], grid)
            else:
                kind = _meeting(first, second)
            if kind:
                found.append(Meeting(kind, one, other))
    return found


def _folded(before: Point, here: Point, after: Point, grid: Grid) -> Fault | None:
    """Return "overlap" when the chain goes back on itself."""
    one, other = way(before, here), way(here, after)
    return "overlap" if cross(one, other) == 0 and inner(one, other, grid) < 0 else None


def _meeting(one: tuple[Point, Point], other: tuple[Point, Point]) -> Fault | None:
    """Return how two sides that are not neighbours meet, or None. Exact on every paper."""
    (a, b), (c, d) = one, other
    left, right = (_side(a, b, point) for point in other)
    low, high = (_side(c, d, point) for point in one)
    if left == right == low == high == 0:
        length = abs(b[0] - a[0]) + abs(b[1] - a[1])
        starts = sorted(_along(a, b, point) for point in other)
        if starts[1] < 0 or starts[0] > length:
            return None
        return "touching" if starts[1] == 0 or starts[0] == length else "overlap"
    if left * right > 0 or low * high > 0:
        return None
    return "crossing" if left * right < 0 and low * high < 0 else "touching"


def _side(start: Point, end: Point, point: Point) -> int:
    """Return 1, 0 or -1: right of a line, on it, or left of it."""
    area = cross(way(start, end), way(start, point))
    return (area > 0) - (area < 0)


def _along(start: Point, end: Point, point: Point) -> int:
    """Return how far along a line a point is that lies on it; its length is that of its end."""
    across, down = way(start, end)
    right, below = way(start, point)
    return (right if across >= 0 else -right) * (across != 0) + (below if down >= 0 else -below) * (
        down != 0
    )


def _fault(
    points: Sequence[Point],
    indexes: Sequence[int],
    corners: Sequence[int],
    meetings: Sequence[Meeting],
    *,
    closed: bool,
) -> Fault | None:
    if closed and len(indexes) < 3:  # noqa: PLR2004 - a triangle has the fewest
        return "few"
    start = points[indexes[0]] if indexes else (0, 0)
    steps = [way(start, points[index]) for index in indexes[1:]]
    on_a_line = all(cross(steps[0], step) == 0 for step in steps)
    if closed and (on_a_line or len(corners) < 3):  # noqa: PLR2004 - see above
        return "flat"
    kinds = {meeting.kind for meeting in meetings}
    for kind in ("overlap", "crossing", "touching"):
        if kind in kinds:
            return kind
    return None
