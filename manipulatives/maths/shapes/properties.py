"""The properties of a polygon: its angles, its sides, and its mirror lines.

On dots all of it is exact. On plain paper there is a tolerance (`papers`), and properties that
imply each other are consistent: a quadrilateral has four right angles only if it is a rectangle,
never three; a polygon has either all its mirror lines or those of a smaller symmetry, never some of
a larger one.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

from manipulatives.maths.shapes.papers import Grid, Point, alike, cross, inner, near_zero, way

TRIANGLE, QUADRILATERAL = 3, 4

Pair = tuple[int, int]


@dataclass(frozen=True)
class Properties:
    """The properties of a polygon. Corners and sides are counted from 0; side 0 leaves corner 0.

    Attributes:
        tips: the corners that stick out (their angle is less than a straight one); the others are
            notches.
        right: the corners with a right angle.
        equal: the sides that are equally long, in groups of two or more, the largest first.
        parallel: the pairs of parallel sides.
        mirrors: the mirror lines; line k swaps corner i with corner k - i, counted around.
        regular: whether all sides and all angles are equal.
        parallelogram: whether it is a quadrilateral with two pairs of parallel sides.
        kite: whether it is a convex quadrilateral that can be folded on a diagonal.
    """

    tips: tuple[int, ...]
    right: tuple[int, ...]
    equal: tuple[tuple[int, ...], ...]
    parallel: tuple[Pair, ...]
    mirrors: tuple[int, ...]
    regular: bool
    parallelogram: bool = False
    kite: bool = False


def properties_of(polygon: Sequence[Point], grid: Grid) -> Properties:
    """Return the properties of a polygon.

    Args:
        polygon: its corners, in order around it; none is in the middle of a straight side.
        grid: the paper it is on.

    Example:
        >>> found = properties_of([(0, 0), (4, 0), (4, 3), (0, 3)], "square")
        >>> found.right, found.equal, found.mirrors
        ((0, 1, 2, 3), ((0, 2), (1, 3)), (1, 3))
    """
    measured = _Measured(polygon, grid)
    if measured.many == TRIANGLE:
        return _triangle(measured)
    if measured.many == QUADRILATERAL:
        return _quadrilateral(measured)
    return _many_sided(measured)


class _Measured:
    """Steps, angles and distances of a polygon."""

    def __init__(self, polygon: Sequence[Point], grid: Grid) -> None:
        self.grid = grid
        self.many = many = len(polygon)
        self.steps = [way(polygon[at], polygon[(at + 1) % many]) for at in range(many)]
        self.squares = [inner(step, step, grid) for step in self.steps]
        self.apart = [
            [inner(way(one, other), way(one, other), grid) for other in polygon] for one in polygon
        ]
        turns = [cross(self.steps[at - 1], self.steps[at]) for at in range(many)]
        area = sum(cross(one, other) for one, other in pairwise([*polygon, polygon[0]]))
        self.tips = tuple(at for at in range(many) if (turns[at] > 0) == (area > 0))

    def right(self) -> list[int]:
        """Corners with a right angle, the one nearest to it first."""
        found = []
        for at in self.tips:
            before, after = self.squares[at - 1], self.squares[at]
            product = inner(self.steps[at - 1], self.steps[at], self.grid)
            if near_zero(product, before, after, self.grid):
                found.append((product * product / (before * after), at))
        return [at for _, at in sorted(found)]

    def parallel(self) -> list[Pair]:
        """Pairs of parallel sides, the most nearly parallel first. Neighbours are none."""
        found = []
        for one, other in combinations(range(self.many), 2):
            squares = self.squares[one] * self.squares[other]
            product = 2 * cross(self.steps[one], self.steps[other])
            neighbours = other - one in (1, self.many - 1)
            if not neighbours and near_zero(product, squares, 1, self.grid):
                found.append((product * product / squares, (one, other)))
        return [pair for _, pair in sorted(found)]

    def equal(self) -> list[tuple[int, ...]]:
        """Sides in groups of equal length, the largest group first."""
        left = sorted(range(self.many), key=lambda side: (self.squares[side], side))
        groups: list[tuple[int, ...]] = []
        while left:
            runs = [self._run(left, start) for start in range(len(left))]
            longest = max(runs, key=len)
            if len(longest) == 1:
                break
            groups.append(tuple(sorted(longest)))
            left = [side for side in left if side not in longest]
        return groups

    def _run(self, sides: list[int], start: int) -> list[int]:
        first = self.squares[sides[start]]
        return [side for side in sides[start:] if alike(first, self.squares[side], self.grid)]

    def mirrors(self) -> list[int]:
        """Mirror lines that leave all distances between corners as they are."""
        return [line for line in range(self.many) if self._mirrors(line)]

    def _mirrors(self, line: int) -> bool:
        return all(
            alike(
                self.apart[one][other],
                self.apart[(line - one) % self.many][(line - other) % self.many],
                self.grid,
            )
            for one, other in combinations(range(self.many), 2)
        )

    def even(self) -> bool:
        """Whether corners so many sides apart are always equally far from each other."""
        for step in range(1, self.many // 2 + 1):
            far = [self.apart[at][(at + step) % self.many] for at in range(self.many)]
            if not alike(min(far), max(far), self.grid):
                return False
        return True


def _triangle(measured: _Measured) -> Properties:
    equal = measured.equal()
    regular = bool(equal) and len(equal[0]) == TRIANGLE
    # Sides i and i + 1 meet in corner i + 1, and line k holds the corner whose double is k.
    mirrors: Iterable[int] = ()
    if regular:
        mirrors = range(TRIANGLE)
    elif equal:
        one, other = equal[0]
        shared = other if other - one == 1 else one
        mirrors = (2 * shared % TRIANGLE,)
    right = () if regular else tuple(measured.right()[:1])
    return Properties(measured.tips, right, tuple(equal), (), tuple(mirrors), regular)


def _quadrilateral(measured: _Measured) -> Properties:
    if not _is_parallelogram(measured):
        return _other_quadrilateral(measured)
    right, equal = measured.right(), measured.equal()
    rectangle = len(right) == QUADRILATERAL
    rhombus = bool(equal) and len(equal[0]) == QUADRILATERAL
    return Properties(
        measured.tips,
        tuple(sorted(right)) if rectangle else (),
        ((0, 1, 2, 3),) if rhombus else ((0, 2), (1, 3)),
        ((0, 2), (1, 3)),
        tuple(line for line in range(4) if (rectangle if line % 2 else rhombus)),
        rectangle and rhombus,
        parallelogram=True,
        kite=rhombus,
    )


def _is_parallelogram(measured: _Measured) -> bool:
    """Whether opposite sides are the same step, there and back."""
    (a, b), (c, d) = measured.steps[0], measured.steps[2]
    gap = inner((a + c, b + d), (a + c, b + d), measured.grid)
    # Within a twentieth of the shortest side, sides are alike and parallel too.
    return gap == 0 if measured.grid != "plain" else 400 * gap <= min(measured.squares)


def _other_quadrilateral(measured: _Measured) -> Properties:
    convex = len(measured.tips) == QUADRILATERAL
    # If both fit on plain paper take the diagonal, so that the first corner does not matter.
    mirrors = sorted(measured.mirrors(), key=lambda line: (line % 2, line))[:1]
    parallel = measured.parallel()[:1] if convex else []
    kite = convex and bool(mirrors) and mirrors[0] % 2 == 0
    if mirrors:
        # Folded on a diagonal it has no parallel sides; folded across, it has just these.
        across = {1: (0, 2), 3: (1, 3)}
        parallel = [across[mirrors[0]]] if convex and mirrors[0] in across else []
    equal = measured.equal()
    if equal and len(equal[0]) == QUADRILATERAL:
        order = sorted(range(4), key=lambda side: (measured.squares[side], side))
        equal = [tuple(sorted(order[:2])), tuple(sorted(order[2:]))]
    return Properties(
        measured.tips,
        tuple(sorted(measured.right()[:2])),
        tuple(equal),
        tuple(parallel),
        tuple(mirrors),
        regular=False,
        kite=kite,
    )


def _many_sided(measured: _Measured) -> Properties:
    many = measured.many
    equal, parallel = measured.equal(), measured.parallel()
    if measured.even():
        half = many // 2
        opposite = [(side, side + half) for side in range(half)] if many % 2 == 0 else []
        lines = range(many)
        every = (tuple(range(many)),)
        return Properties(measured.tips, (), every, tuple(opposite), tuple(lines), regular=True)
    return Properties(
        measured.tips,
        tuple(sorted(measured.right())),
        tuple(equal),
        tuple(sorted(parallel)),
        _whole_symmetry(measured.mirrors(), many),
        regular=False,
    )


def _whole_symmetry(lines: Sequence[int], many: int) -> tuple[int, ...]:
    """Return the mirror lines of one symmetry, which are turned by equal angles.

    Mirror lines k and l make a turn by k - l corners, so they are evenly spaced around. On dots
    all of them always are.
    """
    for step in (step for step in range(1, many + 1) if many % step == 0):
        for first in range(step):
            wanted = range(first, many, step)
            if set(wanted) <= set(lines):
                return tuple(wanted)
    return ()
