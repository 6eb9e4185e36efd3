"""The sentence that goes with every stroke of a shape that is drawn."""

from __future__ import annotations

from dataclasses import dataclass

from manipulatives.maths.shapes.data import Shape
from manipulatives.maths.shapes.papers import Grid, Point
from manipulatives.maths.shapes.strokes import DrawnStroke, drawn_strokes

# A step on plain paper counts as straight if it goes less than two fifths as far sideways.
_STRAIGHT = (2, 5)
_BEGIN = {
    "circle": "Begin with the centre.",
    "half circle": "Begin here, with the first corner.",
    "quarter circle": "Begin here, with the first corner.",
}
_END = {
    "circle": "All around, always as far from the centre.",
    "half circle": "The curved side goes back to the first corner.",
    "quarter circle": "The curved side, then side 2 straight back.",
}


@dataclass(frozen=True)
class Stroke:
    """One stroke of a shape that is drawn, with its sentence.

    Attributes:
        drawn: the stroke.
        say: its sentence, in at most ten words.
    """

    drawn: DrawnStroke
    say: str

    @property
    def shape(self) -> Shape:
        """The shape when the stroke is done."""
        return self.drawn.shape


def strokes(given: Shape, grid: Grid) -> list[Stroke]:
    """Return the strokes that draw a shape, each with its sentence.

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
    curve = given.get("curve")
    return [Stroke(one, _sentence(one, grid, curve)) for one in drawn_strokes(given, grid)]


def _sentence(stroke: DrawnStroke, grid: Grid, curve: str | None) -> str:
    if stroke.side == 0:
        return _BEGIN[curve] if curve else "Begin here, with the first point."
    if stroke.step is None:
        return _END[curve] if curve else f"Side {stroke.side}: back to the first point."
    words = in_words(stroke.step, grid)
    goes_on = " goes on" if stroke.goes_on else ""
    return f"Side {stroke.side}{goes_on}: {words}." + (" It crosses." if stroke.crosses else "")


def in_words(step: Point, grid: Grid) -> str:
    """Return a step in words, counted in dots where there are any.

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
