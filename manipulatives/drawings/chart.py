"""The counting chart on paper: its cells, what is counted or hidden, and the number line."""

from __future__ import annotations

import math

from manipulatives.drawings.shapes import (
    Arc,
    Box,
    Circle,
    Drawing,
    Line,
    Paint,
    Shape,
    centred,
)
from manipulatives.maths.number.chart import Chart, Marks, no_marks
from manipulatives.maths.number.counting import hops
from manipulatives.maths.number.line import marks_apart, numbers_apart, piece
from manipulatives.words.chart_hints import can_be_read

_DIGIT = 0.62
_LINE_TYPE = 0.05
_GRID = Paint("sheet", "edge", 0.25)
_LIT = Paint("move-soft", "move", 0.4)
_COVERED = Paint("rule", "edge", 0.25)
_TO_WRITE = Paint("sheet", "ink", 0.5)


def chart_drawing(
    chart: Chart,
    marks: Marks | None = None,
    *,
    line: bool = False,
    answered: bool = False,
    to_write: bool = False,
    width: float = 120.0,
    least_type: float = 0.0,
) -> Drawing:
    """Return a counting chart, with counted numbers ringed and hidden cells empty.

    Its description gives the range of numbers, but not the hidden ones.

    Args:
        chart: its numbers, the count, and what is hidden.
        marks: what was done to it; None for nothing.
        line: whether there is a number line below it, or instead of it where all is hidden.
        answered: whether hidden numbers are written in as the answer of a key.
        to_write: whether hidden cells are white with a dark edge, to be written in with a pencil.
        width: how wide the drawing is, in millimetres.
        least_type: smallest type allowed, in millimetres; cells grow downward for it.

    Example:
        >>> chart_drawing(Chart(1, 20, hidden=[5])).description
        'Numbers from 1 to 20, 10 in a row, 1 hidden.'
    """
    done = marks or no_marks()
    if line and chart.hidden == "all" and not (answered or to_write):
        # A chart that hides all its cells is left out beside its number line.
        return number_line_drawing(chart, done, width=width, least_type=least_type)
    covered = _TO_WRITE if to_write else _COVERED
    side = width / chart.width
    size = max(least_type, min(side / (_DIGIT * len(str(chart.last)) + 0.6), 0.55 * side))
    high = max(0.8 * side, 1.5 * size)
    shapes: list[Shape] = []
    for number in range(chart.first, chart.last + 1):
        row, column = divmod(number - chart.first, chart.width)
        box = column * side, row * high, side, high
        shapes += _cell(number, box, size, chart, done, covered=covered, answered=answered)
    if to_write:
        # Draw cells with a marked edge last, so that it covers the edges of the cells beside it.
        shapes.sort(key=lambda shape: shape.paint is _TO_WRITE if isinstance(shape, Box) else True)
    height = -(-(chart.last - chart.first + 1) // chart.width) * high
    if line:
        below = number_line_drawing(chart, done, width=width, least_type=least_type)
        shapes += below.at(0, height)
        height += below.height
    hidden = f", {len(chart.blanks)} hidden" if chart.blanks else ""
    described = f"Numbers from {chart.first} to {chart.last}, {chart.width} in a row{hidden}."
    return Drawing(width, height, tuple(shapes), "A counting chart", described)


def number_line_drawing(
    chart: Chart, marks: Marks | None = None, *, width: float = 120.0, least_type: float = 0.0
) -> Drawing:
    """Return the piece of the number line where the last hop is.

    Args:
        chart: its numbers and the count.
        marks: what was done; None for nothing.
        width: how wide the drawing is, in millimetres.
        least_type: smallest type allowed, in millimetres.

    Example:
        >>> number_line_drawing(Chart(0, 20)).description
        'From 0 to 20.'
    """
    done = marks or no_marks()
    low, high = piece(chart.first, chart.last, chart.step, done["counted"], chart.numbers[0])
    size = max(least_type, _LINE_TYPE * width * 0.8)
    room = size * (_DIGIT * len(str(high)) + 0.5)
    each = (width - room) / (high - low)
    base = 3.6 * size

    def place(number: int) -> float:
        return room / 2 + (number - low) * each

    ink = Paint(stroke="ink", width=0.4)
    shapes: list[Shape] = [Line((0 if low else place(low), base), (width, base), ink, "line")]
    apart = marks_apart(low, high)
    for number in range(-(-low // apart) * apart, high + 1, apart):
        longer = 0.5 if number % 10 == 0 else 0.3
        end = place(number), base + longer * size
        shapes.append(Line((place(number), base), end, Paint(stroke="quiet"), "mark"))
    apart = numbers_apart(low, high, width - room, room, chart.step)
    for number in range(-(-low // apart) * apart, high + 1, apart):
        if can_be_read(number, done, chart):
            at = place(number), base + 1.2 * size
            shapes.append(centred(at, str(number), size, role="number"))
    for begin, stop in hops(done["counted"]):
        if low <= min(begin, stop) and max(begin, stop) <= high:
            reach = abs(stop - begin) * each / 2
            middle = (place(begin) + place(stop)) / 2, base
            # Long hops are flatter pieces of larger circles, to stay within the drawing.
            shapes.append(_hop(middle, reach, 2.6 * size))
    if done["counted"] and low <= done["counted"][-1] <= high:
        at = place(done["counted"][-1]), base
        shapes.append(Circle(at, 0.3 * size, Paint(fill="move"), "at"))
    return Drawing(width, base + 2 * size, tuple(shapes), "A number line", f"From {low} to {high}.")


def _cell(
    number: int,
    box: tuple[float, float, float, float],
    size: float,
    chart: Chart,
    marks: Marks,
    *,
    covered: Paint,
    answered: bool,
) -> list[Shape]:
    left, top, wide, high = box
    middle = left + wide / 2, top + high / 2
    counted = number in marks["counted"]
    wiped = chart.mode == "wipe" and counted
    shown = can_be_read(number, marks, chart)
    hidden = not shown and (not answered or covered is _TO_WRITE)
    shapes: list[Shape] = [
        Box((left, top), wide, high, paint=covered if hidden else _GRID, role="cell")
    ]
    if wiped:
        return shapes
    if counted and shown:
        inset = 0.06 * high
        inner = (left + inset, top + inset), wide - 2 * inset, high - 2 * inset
        shapes.append(Box(*inner, radius=0.3 * high, paint=_LIT, role="counted"))
    if shown or answered:
        colour = "ink" if shown else "move"
        shapes.append(centred(middle, str(number), size, colour=colour, role="number"))
    elif str(number) in marks["written"] and chart.mode == "write":
        digits = marks["written"][str(number)]
        shapes.append(centred(middle, digits, size, colour="think", role="written"))
    return shapes


def _half_angle(reach: float, radius: float) -> float:
    return math.degrees(math.asin(min(1.0, reach / radius)))


def _hop(middle: tuple[float, float], reach: float, highest: float) -> Arc:
    paint = Paint(stroke="move", width=0.5, round=True)
    rise = min(reach, highest)
    radius = (reach**2 + rise**2) / (2 * rise)
    centre = middle[0], middle[1] - rise + radius
    return Arc(
        centre,
        radius,
        -_half_angle(reach, radius),
        2 * _half_angle(reach, radius),
        paint,
        role="hop",
    )
