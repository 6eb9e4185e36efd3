"""The papers that shapes are drawn on, and what can be measured on each.

A point is a pair of whole numbers. What they count depends on the paper:

* `"square"`: dots in rows and columns. `[x, y]` counts dots, x to the right and y downward, each
  from 0 to 8.
* `"triangle"`: dots in rows, each row half a space further along. `[a, b]` means a spaces to the
  right and b spaces down to the right; every dot has six neighbours that are equally far. Rows b
  are 0 to 8, and 2a + b is 0 to 16.
* `"plain"`: no dots. `[x, y]` counts hundredths of the space between dots, each from 0 to 800.

On dots everything is exact, because it is calculated in whole numbers: the square of a length is
x² + y² on square dots and a² + ab + b² on triangle dots (the standard norm form of that lattice).
On plain paper nobody hits a point exactly, so an angle may be three degrees off and lengths may
differ by one part in twenty (`alike`, `near_zero`).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Literal, TypeGuard

Grid = Literal["plain", "square", "triangle"]
Point = tuple[int, int]

GRIDS: tuple[Grid, ...] = ("plain", "square", "triangle")
SPACES = 8
"""How many spaces there are between the dots of a row, and rows below the first."""
UNIT = 100
"""How many steps of plain paper make one space between dots."""
ROW = UNIT * math.sqrt(3) / 2
TOP = (SPACES * UNIT - SPACES * ROW) / 2
"""Rows of triangle dots are nearer to each other, so they begin a little below the top."""

# The square of the sine of three degrees is 1/365.1 (computed).
ANGLE_SLACK = 365
# Lengths are alike up to 21 : 20, their squares up to 441 : 400.
LENGTH_SLACK = (400, 441)


def check_grid(grid: object) -> Grid:
    """Check the name of a paper and return it.

    Raises:
        ValueError: there is no such paper.

    Example:
        >>> check_grid("square")
        'square'
    """
    for known in GRIDS:
        if grid == known:
            return known
    raise ValueError(f'The paper is "plain", "square" or "triangle", not {grid!r}.')


def is_point(point: object, grid: Grid) -> TypeGuard[list[int] | tuple[int, int]]:
    """Return whether something is a point of a paper.

    Example:
        >>> is_point([8, 0], "square"), is_point([9, 0], "square"), is_point([8, 1], "triangle")
        (True, False, False)
    """
    if not isinstance(point, (list, tuple)) or len(point) != 2:  # noqa: PLR2004 - across and down
        return False
    across, down = point
    if type(across) is not int or type(down) is not int:
        return False
    if grid == "triangle":
        return 0 <= down <= SPACES and 0 <= 2 * across + down <= 2 * SPACES
    return 0 <= across <= _last(grid) and 0 <= down <= _last(grid)


def dots(grid: Grid) -> Iterator[Point]:
    """Return the dots of a paper row by row; plain paper has none.

    Example:
        >>> [sum(1 for _ in dots(grid)) for grid in GRIDS]
        [0, 81, 77]
    """
    for down in range(SPACES + 1 if grid != "plain" else 0):
        first = -(down // 2) if grid == "triangle" else 0
        last = SPACES - (down + 1) // 2 if grid == "triangle" else SPACES
        for across in range(first, last + 1):
            yield across, down


def place(point: Point, grid: Grid) -> tuple[float, float]:
    """Return where a point is, in hundredths of a space from the top left corner of the paper.

    Example:
        >>> place((3, 2), "square")
        (300.0, 200.0)
        >>> place((3, 2), "triangle")[0]
        400.0
    """
    across, down = point
    if grid == "triangle":
        return UNIT * across + UNIT * down / 2, TOP + ROW * down
    scale = UNIT if grid == "square" else 1
    return float(scale * across), float(scale * down)


def nearest(x: float, y: float, grid: Grid) -> Point:
    """Return the point of a paper that is nearest to a place; of two the upper, left one.

    Example:
        >>> nearest(312.4, 188, "square"), nearest(400, 190, "triangle")
        ((3, 2), (3, 2))
    """
    if grid != "triangle":
        scale = UNIT if grid == "square" else 1
        across, down = (min(max(_rounded(part / scale), 0), _last(grid)) for part in (x, y))
        return across, down
    found: list[tuple[float, Point]] = []
    row = math.floor((y - TOP) / ROW)
    for down in {min(max(row, 0), SPACES), min(max(row + 1, 0), SPACES)}:
        across = _rounded(x / UNIT - down / 2)
        point = min(max(across, -(down // 2)), SPACES - (down + 1) // 2), down
        right, below = place(point, grid)
        found.append(((right - x) ** 2 + (below - y) ** 2, point))
    return min(found, key=lambda one: (one[0], one[1][1]))[1]


def _last(grid: Grid) -> int:
    return SPACES if grid == "square" else SPACES * UNIT


def _rounded(number: float) -> int:
    # Halves are rounded up, as in the browser.
    return math.floor(number + 0.5)


def way(start: Point, end: Point) -> Point:
    """Return the step from one point to another.

    Example:
        >>> way((1, 1), (4, 5))
        (3, 4)
    """
    return end[0] - start[0], end[1] - start[1]


def inner(one: Point, other: Point, grid: Grid) -> int:
    """Return twice the inner product of two steps, which is 0 when they are at right angles.

    Of a step with itself it is twice the square of its length.

    Example:
        >>> inner((3, 4), (3, 4), "square"), inner((1, 1), (1, 1), "triangle")
        (50, 6)
    """
    (a, b), (c, d) = one, other
    straight = 2 * (a * c + b * d)
    return straight + a * d + b * c if grid == "triangle" else straight


def cross(one: Point, other: Point) -> int:
    """Return the area between two steps, above 0 when the second turns to the right.

    The unit is the smallest parallelogram of dots.

    Example:
        >>> cross((1, 0), (0, 1))
        1
    """
    return one[0] * other[1] - one[1] * other[0]


def alike(one: int, other: int, grid: Grid) -> bool:
    """Return whether two squares of lengths count as equal.

    Example:
        >>> alike(100, 101, "square"), alike(100, 110, "plain"), alike(100, 111, "plain")
        (False, True, False)
    """
    if grid != "plain":
        return one == other
    least, most = LENGTH_SLACK
    return least * max(one, other) <= most * min(one, other)


def near_zero(amount: int, one: int, other: int, grid: Grid) -> bool:
    """Return whether an inner or cross product counts as 0.

    Args:
        amount: the product, doubled.
        one: twice the square of the length of the one step.
        other: the same of the other.
        grid: the paper.

    Example:
        >>> near_zero(2, 20000, 20000, "square"), near_zero(2, 20000, 20000, "plain")
        (False, True)
    """
    return amount == 0 if grid != "plain" else ANGLE_SLACK * amount * amount <= one * other
