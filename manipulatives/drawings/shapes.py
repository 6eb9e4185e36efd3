"""The plain shapes that every drawing is made of.

Lengths are millimetres; x runs to the right and y downward, from the top left corner. Angles are
read as on a clock: degrees from twelve, clockwise. Colours are names of the kit's tokens (`"ink"`).
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import Literal

MM_PER_POINT = 25.4 / 72
"""One typographic point in millimetres (a PDF's unit: 1/72 of an inch)."""

Point = tuple[float, float]


@dataclass(frozen=True)
class Paint:
    """How a shape is filled and outlined.

    Attributes:
        fill: token of the inside, None for an empty one.
        stroke: token of the outline, None for none.
        width: width of the outline in millimetres.
        opacity: from 0 (invisible) to 1.
        round: whether line ends and corners are round.
        dashes: lengths of dash and gap in millimetres, empty for an unbroken line.
    """

    fill: str | None = None
    stroke: str | None = None
    width: float = 0.3
    opacity: float = 1.0
    round: bool = False
    dashes: tuple[float, ...] = ()


INK = Paint(stroke="ink")


@dataclass(frozen=True)
class Line:
    """A straight line.

    Attributes:
        start: where it begins.
        end: where it ends.
        paint: its look.
        role: names its part in the drawing (`"hour"`), by which tests find it; may be empty.
    """

    start: Point
    end: Point
    paint: Paint = INK
    role: str = ""

    def moved(self, right: float, down: float) -> Line:
        """Return the same line elsewhere."""
        start, end = _moved(self.start, right, down), _moved(self.end, right, down)
        return replace(self, start=start, end=end)


@dataclass(frozen=True)
class Circle:
    """A circle.

    Attributes:
        centre: its middle.
        radius: its radius, to the middle of the outline.
        paint: its look.
        role: names its part in the drawing; may be empty.
    """

    centre: Point
    radius: float
    paint: Paint = INK
    role: str = ""

    def moved(self, right: float, down: float) -> Circle:
        """Return the same circle elsewhere."""
        return replace(self, centre=_moved(self.centre, right, down))


@dataclass(frozen=True)
class Polygon:
    """A chain of straight lines, closed or open.

    Attributes:
        points: its points in order; the first is not repeated at the end.
        paint: its look.
        closed: whether the last point is joined to the first.
        role: names its part in the drawing; may be empty.
    """

    points: tuple[Point, ...]
    paint: Paint = INK
    closed: bool = True
    role: str = ""

    def moved(self, right: float, down: float) -> Polygon:
        """Return the same polygon elsewhere."""
        return replace(self, points=tuple(_moved(point, right, down) for point in self.points))


@dataclass(frozen=True)
class Arc:
    """Part of a circle's edge, or with `slice` the piece between it and the centre.

    Attributes:
        centre: the middle of the circle.
        radius: the radius of the circle.
        start: where it begins, in degrees from twelve, clockwise.
        sweep: how far it goes on clockwise, above 0 and at most 360 degrees.
        paint: its look.
        slice: whether both ends are joined to the centre.
        role: names its part in the drawing; may be empty.
    """

    centre: Point
    radius: float
    start: float
    sweep: float
    paint: Paint = INK
    slice: bool = False
    role: str = ""

    def moved(self, right: float, down: float) -> Arc:
        """Return the same arc elsewhere."""
        return replace(self, centre=_moved(self.centre, right, down))


@dataclass(frozen=True)
class Box:
    """A rectangle with upright sides.

    Attributes:
        corner: its top left corner.
        width: its width.
        height: its height.
        radius: how far its corners are rounded.
        paint: its look.
        role: names its part in the drawing; may be empty.
    """

    corner: Point
    width: float
    height: float
    radius: float = 0.0
    paint: Paint = INK
    role: str = ""

    def moved(self, right: float, down: float) -> Box:
        """Return the same box elsewhere."""
        return replace(self, corner=_moved(self.corner, right, down))


@dataclass(frozen=True)
class Text:
    """One line of text in the kit's font.

    Attributes:
        at: the point on the baseline of its left end, middle or right end (`anchor`).
        text: its letters.
        size: the size of the type in millimetres (12 points are 4.23 mm).
        anchor: which part of the line is at `at`.
        colour: token of the letters.
        halo: width in millimetres of the rim that separates the letters from what is below.
        role: names its part in the drawing; may be empty.
    """

    at: Point
    text: str
    size: float
    anchor: Literal["start", "middle", "end"] = "start"
    colour: str = "ink"
    halo: float = 0.0
    role: str = ""

    def moved(self, right: float, down: float) -> Text:
        """Return the same text elsewhere."""
        return replace(self, at=_moved(self.at, right, down))


Shape = Line | Circle | Polygon | Arc | Box | Text

DIGIT_HEIGHT = 0.7
"""How tall the digits of the kit's font are, as a share of the size of its type."""


@dataclass(frozen=True)
class Drawing:
    """A picture: shapes, of which later ones cover earlier ones.

    Attributes:
        width: its width in millimetres.
        height: its height in millimetres.
        shapes: its shapes.
        title: a few words for people who cannot see it.
        description: more about it for them, without the answer to its task.
    """

    width: float
    height: float
    shapes: tuple[Shape, ...] = field(default=())
    title: str = ""
    description: str = ""

    def at(self, right: float, down: float) -> tuple[Shape, ...]:
        """Return its shapes at their places on a larger drawing.

        Args:
            right: how far its left edge is from the left edge of the larger one.
            down: how far its top is from the top of the larger one.

        Example:
            >>> Drawing(2, 2, (Circle((1, 1), 1),)).at(10, 20)[0].centre
            (11, 21)
        """
        return tuple(shape.moved(right, down) for shape in self.shapes)


def around(centre: Point, radius: float, degrees: float) -> Point:
    """Return the point on a circle at an angle read as on a clock.

    Args:
        centre: the middle of the circle.
        radius: its radius.
        degrees: the angle from twelve, clockwise.

    Example:
        >>> [round(length, 6) for length in around((0, 0), 10, 90)]
        [10.0, -0.0]
    """
    turn = math.radians(degrees)
    return centre[0] + radius * math.sin(turn), centre[1] - radius * math.cos(turn)


def centred(
    at: Point, text: str, size: float, *, colour: str = "ink", halo: float = 0.0, role: str = ""
) -> Text:
    """Return digits with their middle, across and down, at a point.

    Args:
        at: the point.
        text: its letters.
        size: the size of the type in millimetres.
        colour: token of the letters.
        halo: width of the rim around them in millimetres.
        role: names its part in the drawing.

    Example:
        >>> round(centred((0, 0), "12", 10).at[1], 6)
        3.5
    """
    base = at[0], at[1] + size * DIGIT_HEIGHT / 2
    return Text(base, text, size, "middle", colour, halo, role)


def _moved(point: Point, right: float, down: float) -> Point:
    return point[0] + right, point[1] + down
