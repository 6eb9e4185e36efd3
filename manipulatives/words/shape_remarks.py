"""Remarks about a shape: to pupils in at most ten words, and to teachers where books differ."""

from __future__ import annotations

from manipulatives.data import table
from manipulatives.maths.shapes.data import Shape, check_shape
from manipulatives.maths.shapes.outline import Outline, outline_of
from manipulatives.maths.shapes.papers import Grid
from manipulatives.maths.shapes.properties import properties_of
from manipulatives.maths.shapes.shares import Shares, shares_of
from manipulatives.words.shape_names import US, Wording, is_pentagram, is_star

_WORDS = table("shape_words")
PARTS: dict[str, dict[int, str]] = {
    vocabulary: {int(many): called for many, called in names.items()}
    for vocabulary, names in _WORDS["shares"].items()
}


def remark(given: Shape, grid: Grid, wording: Wording = US) -> str | None:
    """Return the remark about a shape for a pupil, or None.

    It is about sides that meet where they should not, also while the shape is drawn; then shares;
    then points that are no vertices; then what is special about a circle or a star.

    Args:
        given: the shape.
        grid: the paper it is on.
        wording: how shares are called, fourths or quarters.

    Raises:
        ValueError: no shape.

    Example:
        >>> remark({"points": [[0, 0], [2, 0], [4, 0], [4, 4]], "closed": True}, "square")
        'One point is on a straight side: no vertex.'
    """
    shape = check_shape(given, grid)
    shares = shares_of(shape, grid)
    if shares and len(shares.areas) > 1:
        return shares_in_words(shares, wording)
    if "curve" in shape:
        return str(_WORDS["curves"][shape["curve"]])
    outline = outline_of(shape, grid)
    return _fault_remark(outline) or _no_vertices(outline) or _star(outline, grid)


def _fault_remark(outline: Outline) -> str | None:
    if outline.fault == "few":
        many = len(set(outline.points))
        return str(_WORDS["few"][many])
    if is_pentagram(outline):
        return "A pentagram: five strokes that cross. It is no polygon."
    if outline.closed and outline.fault in _WORDS["closed"]:
        return str(_WORDS["closed"][outline.fault])
    return str(_WORDS["open"][outline.fault]) if outline.fault else None


def _no_vertices(outline: Outline) -> str | None:
    if outline.repeated:
        return "Two points in one place count once."
    many = len(outline.straight)
    if many == 1:
        return "One point is on a straight side: no vertex."
    return f"{many} points are on straight sides: no vertices." if many else None


def _star(outline: Outline, grid: Grid) -> str | None:
    polygon = outline.polygon
    if polygon is None:
        return None
    found, sides = properties_of(polygon, grid), len(polygon)
    if not is_star(found, sides):
        return None
    return f"Star: {sides} sides, {sides} vertices, {len(found.tips)} of them points."


def shares_in_words(shares: Shares, wording: Wording = US) -> str:
    """Return how many shares there are and whether they are equal.

    Example:
        >>> box = {"points": [[0, 0], [6, 0], [6, 4], [0, 4]], "closed": True}
        >>> cut = {**box, "cuts": [[[0, 0], [6, 4]], [[6, 0], [0, 4]]]}
        >>> shares_in_words(shares_of(cut, "square"), Wording("uk"))
        '4 equal shares: quarters. Equal, but not alike in shape.'
    """
    many = len(shares.areas)
    if not shares.equal:
        return f"{many} shares that are not equal."
    called = PARTS[wording.vocabulary].get(many)
    parts = f"{many} equal shares: {called}." if called else f"{many} equal shares."
    return parts if shares.alike else f"{parts} Equal, but not alike in shape."


def teachers_note(given: Shape, grid: Grid, wording: Wording = US) -> str | None:
    """Return where books differ about a shape, or None when they agree.

    Example:
        >>> teachers_note({"points": [[4, 4], [4, 1]], "closed": True, "curve": "circle"}, "square")
        'Some books say that a circle has one curved side. Here straight sides are counted.'
    """
    shape = check_shape(given, grid)
    curve = shape.get("curve")
    if curve == "circle":
        return "Some books say that a circle has one curved side. Here straight sides are counted."
    if curve:
        return (
            "Some books call the corners beside a curved side vertices. Here a vertex is where two "
            "straight sides meet."
        )
    outline = outline_of(shape, grid)
    if is_pentagram(outline):
        return (
            "A polygon's sides do not cross. The outline of this star is one: it has ten sides and "
            "ten vertices, five of them points."
        )
    polygon = outline.polygon
    if polygon is None or not properties_of(polygon, grid).parallelogram:
        return None
    name = "trapezium" if wording.vocabulary == "uk" else "trapezoid"
    if wording.trapezoid == "inclusive":
        return f"By the other definition this is no {name}, since both pairs of sides are parallel."
    return f"By the other definition this is a {name}, too, since it has parallel sides."
