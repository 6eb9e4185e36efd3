"""Any shape drawn stroke by stroke, with the sentence that goes with every stroke."""

from __future__ import annotations

from dataclasses import dataclass

from manipulatives.maths.shapes.data import Shape, check_shape
from manipulatives.maths.shapes.outline import outline_of
from manipulatives.maths.shapes.papers import Grid, Point, way

# A step on plain paper is straight when it goes less than two fifths as far aside.
_STRAIGHT = (2, 5)


@dataclass(frozen=True)
class Stroke:
    """One stroke of a shape that is drawn.

    Attributes:
        shape: the shape when it is done.
        say: what is said with it, in at most ten words.
    """

    shape: Shape
    say: str


def strokes(given: Shape, grid: Grid) -> list[Stroke]:
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
        >>> for stroke in strokes(corners, "square"):
        ...     print(stroke.say)
        Begin here, with the first point.
        Side 1: 3 right.
        Side 2: 2 down.
        Side 3: back to the first point.
    """
    shape = check_shape(given, grid)
    if "curve" in shape:
        return _curved(shape, grid)
    outline = outline_of(shape, grid)
    if not outline.points:
        return []
    first = outline.corners[0] if shape["closed"] else 0
    turned = [*range(first, len(outline.points)), *range(first)]
    order = [index for index in turned if index not in outline.repeated]
    points = [outline.points[index] for index in order]
    done = [Stroke(_open(points[:1]), "Begin here, with the first point.")]
    side = 0
    for at in range(1, len(order)):
        turns = order[at - 1] in outline.corners
        side += turns
        chain = _open(points[: at + 1])
        words = in_words(way(points[at - 1], points[at]), grid)
        say = f"Side {side}: {words}." if turns else f"Side {side} goes on: {words}."
        done.append(Stroke(chain, say + _crosses(chain, grid)))
    if shape["closed"] and len(points) > 1:
        side += order[-1] in outline.corners
        whole = Shape(points=[list(point) for point in points], closed=True)
        done.append(Stroke(whole, f"Side {side}: back to the first point."))
    return done


def _open(points: list[Point]) -> Shape:
    return Shape(points=[list(point) for point in points], closed=False)


def _curved(shape: Shape, grid: Grid) -> list[Stroke]:
    start, end = ((point[0], point[1]) for point in shape["points"])
    whole = Shape(points=[list(start), list(end)], closed=True, curve=shape["curve"])
    if shape["curve"] == "circle":
        return [
            Stroke(_open([start]), "Begin with the centre."),
            Stroke(whole, "All around, always as far from the centre."),
        ]
    last = "The curved side goes back to the first corner."
    if shape["curve"] == "quarter circle":
        last = "The curved side, then side 2 straight back."
    return [
        Stroke(_open([start]), "Begin here, with the first corner."),
        Stroke(_open([start, end]), f"Side 1: {in_words(way(start, end), grid)}."),
        Stroke(whole, last),
    ]


def _crosses(chain: Shape, grid: Grid) -> str:
    """Return what is added when the newest side crosses one before it."""
    outline = outline_of(chain, grid)
    newest = len(outline.corners) - 2
    crossing = any(
        meeting.kind == "crossing" and meeting.other == newest for meeting in outline.meetings
    )
    return " It crosses." if crossing else ""


def in_words(step: Point, grid: Grid) -> str:
    """Return where a step goes, in dots where there are any.

    Example:
        >>> in_words((3, -2), "square"), in_words((-4, 6), "triangle")
        ('3 right, 2 up', '4 down left, 2 down right')
        >>> in_words((300, -200), "plain")
        'up and to the right'
    """
    across, down = step
    if grid == "plain":
        return _direction(across, down)
    if grid == "square":
        parts = [(abs(across), "right" if across > 0 else "left")]
        parts.append((abs(down), "down" if down > 0 else "up"))
    else:
        parts = _on_triangles(across, down)
    return ", ".join(f"{many} {name}" for many, name in parts if many)


def _direction(across: int, down: int) -> str:
    least, most = _STRAIGHT
    level = "to the right" if across > 0 else "to the left"
    upright = "down" if down > 0 else "up"
    if most * abs(down) <= least * abs(across):
        return level
    if most * abs(across) <= least * abs(down):
        return f"straight {upright}"
    return f"{upright} and {level}"


def _on_triangles(across: int, down: int) -> list[tuple[int, str]]:
    """Return a step as steps in two of the six directions that are next to each other."""
    level, leaning, other = "right", "down right", "down left"
    if down < 0 or (down == 0 and across < 0):
        across, down = -across, -down
        level, leaning, other = "left", "up left", "up right"
    if across >= 0:
        return [(across, level), (down, leaning)]
    aside = min(-across, down)
    back = {"right": "left", "left": "right"}[level]
    return [(-across - aside, back), (aside, other), (down - aside, leaning)]
