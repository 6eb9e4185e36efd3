"""Any shape drawn stroke by stroke."""

from __future__ import annotations

from dataclasses import dataclass

from manipulatives.maths.shapes.data import Shape, check_shape
from manipulatives.maths.shapes.outline import outline_of
from manipulatives.maths.shapes.papers import Grid, Point, way


@dataclass(frozen=True)
class DrawnStroke:
    """One stroke of a shape that is drawn.

    Attributes:
        shape: the shape when it is done.
        side: which side it is of, counted from 1; 0 for the point where the shape begins.
        step: how far it goes across and down; None for that point, for a stroke back to it, and for
            a curved side.
        goes_on: whether it goes on with the side of the stroke before.
        crosses: whether it crosses a side before it.
    """

    shape: Shape
    side: int = 0
    step: Point | None = None
    goes_on: bool = False
    crosses: bool = False


def drawn_strokes(given: Shape, grid: Grid) -> list[DrawnStroke]:
    """Return the strokes that draw a shape: where it begins, then side by side.

    A shape with straight sides begins at its first corner. The last stroke of a closed one goes
    back there. A point that was put twice is drawn once.

    Args:
        given: the shape; its cuts are not drawn.
        grid: the paper it is on.

    Raises:
        ValueError: no shape.

    Example:
        >>> corners = {"points": [[1, 1], [4, 1], [4, 3]], "closed": True}
        >>> [(stroke.side, stroke.step) for stroke in drawn_strokes(corners, "square")]
        [(0, None), (1, (3, 0)), (2, (0, 2)), (3, None)]
    """
    shape = check_shape(given, grid)
    if "curve" in shape:
        return _curved(shape)
    outline = outline_of(shape, grid)
    if not outline.points:
        return []
    first = outline.corners[0] if shape["closed"] else 0
    turned = [*range(first, len(outline.points)), *range(first)]
    order = [index for index in turned if index not in outline.repeated]
    points = [outline.points[index] for index in order]
    done = [DrawnStroke(_open(points[:1]))]
    side = 0
    for at in range(1, len(order)):
        turns = order[at - 1] in outline.corners
        side += turns
        chain, step = _open(points[: at + 1]), way(points[at - 1], points[at])
        crosses = _crosses(chain, grid)
        done.append(DrawnStroke(chain, side, step, goes_on=not turns, crosses=crosses))
    if shape["closed"] and len(points) > 1:
        side += order[-1] in outline.corners
        whole = Shape(points=[list(point) for point in points], closed=True)
        done.append(DrawnStroke(whole, side))
    return done


def _open(points: list[Point]) -> Shape:
    return Shape(points=[list(point) for point in points], closed=False)


def _curved(shape: Shape) -> list[DrawnStroke]:
    start, end = ((point[0], point[1]) for point in shape["points"])
    whole = Shape(points=[list(start), list(end)], closed=True, curve=shape["curve"])
    if shape["curve"] == "circle":
        return [DrawnStroke(_open([start])), DrawnStroke(whole, 1)]
    straight = DrawnStroke(_open([start, end]), 1, way(start, end))
    return [DrawnStroke(_open([start])), straight, DrawnStroke(whole, 2)]


def _crosses(chain: Shape, grid: Grid) -> bool:
    """Return whether the newest side crosses one before it."""
    outline = outline_of(chain, grid)
    newest = len(outline.corners) - 2
    return any(
        meeting.kind == "crossing" and meeting.other == newest for meeting in outline.meetings
    )
