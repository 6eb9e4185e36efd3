"""Comparing a traced shape with its guide."""

from __future__ import annotations

from manipulatives.maths.shapes.data import Shape, check_shape
from manipulatives.maths.shapes.outline import outline_of
from manipulatives.maths.shapes.papers import Grid, alike, inner, place, way

# Tolerance for a point traced by hand on plain paper, in hundredths of a space.
HAND_TOLERANCE = 40


def traced(given: Shape, guide: Shape, grid: Grid) -> bool:
    """Return whether a shape is the guide, whichever point it begins with.

    On plain paper each corner may be 40 hundredths of a space off.

    Example:
        >>> guide = {"points": [[0, 0], [4, 0], [4, 4]], "closed": True}
        >>> traced({"points": [[4, 4], [4, 0], [2, 0], [0, 0]], "closed": True}, guide, "square")
        True
    """
    shape, wanted = check_shape(given, grid), check_shape(guide, grid)
    if shape["closed"] != wanted["closed"] or shape.get("curve") != wanted.get("curve"):
        return False
    if "curve" in shape:
        return _same_curve(shape, wanted, grid)
    ours, theirs = outline_of(shape, grid).turns, outline_of(wanted, grid).turns
    many = len(ours)
    if many != len(theirs):
        return False
    shifts = range(many) if shape["closed"] else range(1)
    return (
        any(
            all(_same(ours[at], path[(at + shift) % many], grid) for at in range(many))
            for path in (theirs, theirs[::-1])
            for shift in shifts
        )
        or not many
    )


def _same_curve(shape: Shape, wanted: Shape, grid: Grid) -> bool:
    (a, b), (c, d) = (
        [(point[0], point[1]) for point in each["points"]] for each in (shape, wanted)
    )
    if shape["curve"] == "circle":
        one, other = way(a, b), way(c, d)
        same_size = alike(inner(one, one, grid), inner(other, other, grid), grid)
        return same_size and _same(a, c, grid)
    return _same(a, c, grid) and _same(b, d, grid)


def _same(one: tuple[int, int], other: tuple[int, int], grid: Grid) -> bool:
    if grid != "plain":
        return one == other
    (a, b), (c, d) = place(one, grid), place(other, grid)
    return (a - c) ** 2 + (b - d) ** 2 <= HAND_TOLERANCE * HAND_TOLERANCE
