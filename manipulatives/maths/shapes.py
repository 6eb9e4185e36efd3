"""What is true of a shape, as goals and foreseen mistakes ask for it."""

from __future__ import annotations

from manipulatives.maths.ready_shapes import ready_shapes, shape_named
from manipulatives.maths.shape_cuts import CutProblem
from manipulatives.maths.shape_data import Shape, check_shape, converted
from manipulatives.maths.shape_names import (
    DEFINITIONS,
    US,
    Wording,
    is_pentagram,
    kinds_of,
    names_of,
)
from manipulatives.maths.shape_outline import Outline, outline_of
from manipulatives.maths.shape_papers import GRIDS, Grid, alike, check_grid, inner, place, way
from manipulatives.maths.shape_properties import properties_of
from manipulatives.maths.shape_shares import shares_of, ways_to_share
from manipulatives.maths.shape_strokes import Stroke, strokes
from manipulatives.maths.shape_words import remark, shares_in_words, teachers_note

__all__ = [
    "DEFINITIONS",
    "GRIDS",
    "US",
    "CutProblem",
    "Grid",
    "Outline",
    "Shape",
    "Stroke",
    "Wording",
    "called",
    "check_grid",
    "check_shape",
    "converted",
    "outline_of",
    "ready_shapes",
    "remark",
    "shape_facts",
    "shape_named",
    "shares_in_words",
    "shares_of",
    "strokes",
    "teachers_note",
    "traced",
    "ways_to_share",
]

Facts = dict[str, int | str | bool | None]

# A point traced by hand on plain paper may be so far off, in hundredths of a space.
HAND = 40
_NO_KIND = dict.fromkeys(
    ("square", "rectangle", "rhombus", "parallelogram", "trapezoid", "kite"), False
)
_CURVED: dict[str, Facts] = {
    "circle": {"sides": 0, "vertices": 0, "corners": 0, "right_angles": 0, "mirror_lines": None},
    "half circle": {
        "sides": 1,
        "vertices": 0,
        "corners": 2,
        "right_angles": 0,
        "mirror_lines": 1,
    },
    "quarter circle": {
        "sides": 2,
        "vertices": 1,
        "corners": 3,
        "right_angles": 1,
        "mirror_lines": 1,
    },
}


def shape_facts(
    given: Shape, grid: Grid, wording: Wording = US, guide: Shape | None = None
) -> Facts:
    """Return what is true of a shape.

    Args:
        given: the shape.
        grid: the paper it is on.
        wording: what a trapezoid is and how it is called.
        guide: the shape that is to be traced, if there is one.

    Returns:
        `closed`: whether the last point is joined to the first;
        `sides`: straight sides; pieces of one straight side count once;
        `curved_sides`: 1 for a circle and its parts, else 0;
        `vertices`: where two straight sides meet; in an open chain its ends count, too;
        `corners`: the same, and where a curved side ends;
        `points`: how many points were put;
        `crossing`: whether sides cross, touch or lie on each other where they should not;
        `fault`: why it is no polygon: "few", "flat", "overlap", "crossing", "touching" or None;
        `name`: its most particular name, or None.

        The following are None until there is a closed shape without fault:

        `tips`: vertices that stick out, such as the points of a star;
        `right_angles`: right angles inside;
        `equal_sides`: the largest number of sides that are equally long, 0 when all differ;
        `regular`: whether all sides and angles are equal; `convex`: whether it has no notch;
        `parallel`: pairs of parallel sides;
        `mirror_lines`: how many there are; None for a circle, too, since there is no end of them.

        `square`, `rectangle`, `rhombus`, `parallelogram`, `trapezoid`, `kite`: whether it is one; a
        square is a rectangle;
        `shares`: into how many it is cut, 1 when it is not, 0 when it cannot be;
        `equal_shares`, `same_shape`: whether they are equal, and alike; None below two;
        `traced`: whether it is the guide; None without one.

    Raises:
        ValueError: no shape.

    Example:
        >>> square = {"points": [[0, 0], [4, 0], [4, 4], [0, 4]], "closed": True}
        >>> facts = shape_facts(square, "square")
        >>> facts["name"], facts["rectangle"], facts["right_angles"], facts["mirror_lines"]
        ('square', True, 4, 4)
    """
    shape = check_shape(given, grid)
    facts = _round_facts(shape) if "curve" in shape else _straight_facts(shape, grid, wording)
    return {
        **facts,
        **_share_facts(shape, grid),
        "traced": None if guide is None else traced(shape, guide, grid),
    }


def _round_facts(shape: Shape) -> Facts:
    return {
        "closed": True,
        "curved_sides": 1,
        "points": len(shape["points"]),
        "crossing": False,
        "fault": None,
        "name": shape["curve"],
        "tips": 0,
        "equal_sides": 2 if shape["curve"] == "quarter circle" else 0,
        "regular": False,
        "convex": True,
        "parallel": 0,
        **_NO_KIND,
        **_CURVED[shape["curve"]],
    }


def _straight_facts(shape: Shape, grid: Grid, wording: Wording) -> Facts:
    outline = outline_of(shape, grid)
    polygon = outline.polygon
    found = properties_of(polygon, grid) if polygon else None
    sides = len(outline.sides)
    names = names_of(found, sides, wording) if found else ["pentagram"]
    return {
        "closed": shape["closed"],
        "sides": sides,
        "curved_sides": 0,
        "vertices": len(outline.corners),
        "corners": len(outline.corners),
        "points": len(shape["points"]),
        "crossing": bool(outline.meetings),
        "fault": outline.fault,
        "name": names[0] if found or is_pentagram(outline) else None,
        "tips": len(found.tips) if found else None,
        "right_angles": len(found.right) if found else None,
        "equal_sides": (len(found.equal[0]) if found.equal else 0) if found else None,
        "regular": found.regular if found else None,
        "convex": len(found.tips) == sides if found else None,
        "parallel": len(found.parallel) if found else None,
        "mirror_lines": len(found.mirrors) if found else None,
        **(kinds_of(found, sides, wording) if found else _NO_KIND),
    }


def _share_facts(shape: Shape, grid: Grid) -> Facts:
    shares = shares_of(shape, grid)
    many = len(shares.areas) if shares else 0
    cut = shares if many > 1 else None
    return {
        "shares": many,
        "equal_shares": cut.equal if cut else None,
        "same_shape": cut.alike if cut else None,
    }


def called(given: Shape, grid: Grid, wording: Wording = US) -> list[str]:
    """Return everything that a shape is called, the most particular name first.

    Example:
        >>> called({"points": [[0, 0], [4, 0], [4, 4], [0, 4]], "closed": True}, "square")[:3]
        ['square', 'rectangle', 'rhombus']
    """
    shape = check_shape(given, grid)
    if "curve" in shape:
        return [shape["curve"]]
    outline = outline_of(shape, grid)
    polygon = outline.polygon
    if polygon is None:
        return ["pentagram"] if is_pentagram(outline) else []
    return names_of(properties_of(polygon, grid), len(polygon), wording)


def traced(given: Shape, guide: Shape, grid: Grid) -> bool:
    """Return whether a shape is the one that was to be traced, wherever it was begun.

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
    return (a - c) ** 2 + (b - d) ** 2 <= HAND * HAND
