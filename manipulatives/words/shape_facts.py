"""The facts of a shape, for goals and foreseen mistakes."""

from __future__ import annotations

from manipulatives.maths.shapes.data import Shape, check_shape
from manipulatives.maths.shapes.outline import outline_of
from manipulatives.maths.shapes.papers import Grid
from manipulatives.maths.shapes.properties import properties_of
from manipulatives.maths.shapes.shares import shares_of
from manipulatives.maths.shapes.tracing import traced
from manipulatives.words.shape_names import (
    US,
    Wording,
    is_pentagram,
    kinds_of,
    names_of,
)

Facts = dict[str, int | str | bool | None]

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
    """Return the facts of a shape.

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
        `mirror_lines`: how many there are; None for a circle, too, which has infinitely many.

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
    """Return every name of a shape, the most particular name first.

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
