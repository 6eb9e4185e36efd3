"""Draws each shape of a drawing on a page of a PDF."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import assert_never

from fpdf import FPDF
from fpdf.drawing import PaintedPath
from fpdf.enums import StrokeCapStyle, StrokeJoinStyle

from manipulatives.drawings.shapes import (
    MM_PER_POINT,
    Arc,
    Box,
    Circle,
    Drawing,
    Line,
    Paint,
    Point,
    Polygon,
    Text,
    around,
)
from manipulatives.drawings.tokens import colour
from manipulatives.outputs.sheet.pdf.letters import outline_of, printable, runs_of, text_width

# FPDF.cell puts the baseline this far below its top, as a share of the size of the type.
_BASELINE = 0.8
_QUARTER = 90.0
_TWO = 2


def paint_page(document: FPDF, page: Drawing) -> None:
    """Draw a page; later shapes cover earlier ones.

    Args:
        document: its current page has the size of the drawing.
        page: the drawing.
    """
    # By default fpdf2 extends every line by half its width at both ends.
    with document.local_context(
        stroke_cap_style=StrokeCapStyle.BUTT, stroke_join_style=StrokeJoinStyle.MITER
    ):
        for shape in page.shapes:
            if isinstance(shape, Text):
                _write(document, shape)
            elif _is_simple(shape):
                _draw_simple(document, shape)
            else:
                _draw_path(document, _path_of(shape), shape.paint)


def ink(name: str) -> str:
    """Return the colour of a token on paper, as `#rrggbb`.

    Args:
        name: the token.

    Example:
        >>> ink("sheet")
        '#ffffff'
    """
    # Paper is white already; printing the screen's colour would only make it grey.
    return "#ffffff" if name == "sheet" else colour(name)


def _is_simple(shape: Line | Circle | Polygon | Arc | Box) -> bool:
    """Whether fpdf2's simple shapes can draw it, which are faster than its paths."""
    paint = shape.paint
    if paint.round or paint.opacity < 1 or len(paint.dashes) not in (0, _TWO):
        return False
    return isinstance(shape, Line | Polygon | Circle) or (
        isinstance(shape, Box) and not shape.radius
    )


def _draw_simple(document: FPDF, shape: Line | Circle | Polygon | Arc | Box) -> None:
    paint = shape.paint
    if paint.stroke:
        document.set_draw_color(ink(paint.stroke))
        document.set_line_width(paint.width)
        document.set_dash_pattern(*paint.dashes)
    if paint.fill:
        document.set_fill_color(ink(paint.fill))
    style = f"{'D' if paint.stroke else ''}{'F' if paint.fill else ''}"
    match shape:
        case Line():
            document.line(*shape.start, *shape.end)
        case Polygon():
            document.polyline(shape.points, polygon=shape.closed, style=style)
        case Circle():
            document.circle(*shape.centre, shape.radius, style=style)
        case Box():
            document.rect(*shape.corner, shape.width, shape.height, style=style)


def _draw_path(document: FPDF, path: PaintedPath, paint: Paint) -> None:
    style = path.style
    style.auto_close = False
    style.fill_color = ink(paint.fill) if paint.fill else None
    style.stroke_color = ink(paint.stroke) if paint.stroke else None
    style.stroke_width = paint.width
    style.stroke_cap_style = StrokeCapStyle.ROUND if paint.round else StrokeCapStyle.BUTT
    style.stroke_join_style = StrokeJoinStyle.ROUND if paint.round else StrokeJoinStyle.MITER
    style.stroke_dash_pattern = paint.dashes or None
    if paint.opacity < 1:
        style.fill_opacity = style.stroke_opacity = paint.opacity
    with document.drawing_context() as drawing:
        drawing.add_item(path, clone=False)


def _path_of(shape: Line | Circle | Polygon | Arc | Box) -> PaintedPath:
    path = PaintedPath()
    match shape:
        case Line():
            path.move_to(*shape.start)
            path.line_to(*shape.end)
        case Polygon():
            path.move_to(*shape.points[0])
            for point in shape.points[1:]:
                path.line_to(*point)
            if shape.closed:
                path.close()
        case Circle():
            path.move_to(*around(shape.centre, shape.radius, 0))
            _turn(path, shape.centre, shape.radius, 0, 360)
            path.close()
        case Arc():
            _arc(path, shape)
        case Box():
            _box(path, shape)
        case _:
            assert_never(shape)
    return path


def _arc(path: PaintedPath, arc: Arc) -> None:
    begin = around(arc.centre, arc.radius, arc.start)
    if arc.slice:
        path.move_to(*arc.centre)
        path.line_to(*begin)
    else:
        path.move_to(*begin)
    _turn(path, arc.centre, arc.radius, arc.start, arc.sweep)
    if arc.slice:
        path.close()


def _box(path: PaintedPath, box: Box) -> None:
    (x, y), r = box.corner, box.radius
    left, right, top, bottom = x + r, x + box.width - r, y + r, y + box.height - r
    path.move_to(left, y)
    for start, middle in (
        (0, (right, top)), (90, (right, bottom)), (180, (left, bottom)), (270, (left, top)),
    ):  # fmt: skip
        path.line_to(*around(middle, r, start))
        if r:
            _turn(path, middle, r, start, _QUARTER)
    path.close()


def _turn(path: PaintedPath, centre: Point, radius: float, start: float, sweep: float) -> None:
    """Add a clockwise arc to a path, in curves of at most a quarter.

    With handles of 4/3 of the tangent of a quarter of its angle the middle of each curve lies on
    the circle too, and no point of a quarter is further from it than 0.03 % of the radius.
    """
    parts = math.ceil(sweep / _QUARTER)
    handle = 4 / 3 * math.tan(math.radians(sweep / parts) / 4) * radius
    for one, other in pairwise(start + sweep * part / parts for part in range(parts + 1)):
        (x1, y1), (x2, y2) = around(centre, radius, one), around(centre, radius, other)
        a, b = math.radians(one), math.radians(other)
        path.curve_to(
            x1 + handle * math.cos(a), y1 + handle * math.sin(a),
            x2 - handle * math.cos(b), y2 - handle * math.sin(b),
            x2, y2,
        )  # fmt: skip


def _write(document: FPDF, text: Text) -> None:
    words = printable(text.text)
    share = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor]
    left, base = text.at[0] - share * text_width(words, text.size), text.at[1]
    if text.halo:
        # Only the halo is drawn as outlines; the letters themselves stay text.
        rim = Paint(fill="sheet", stroke="sheet", width=2 * text.halo, round=True)
        _draw_path(document, _outline(words, (left, base), text.size), rim)
    document.set_text_color(ink(text.colour))
    for run in runs_of(words):
        family = run.typeface.family
        if family.lower() not in document.fonts:
            document.add_font(family, fname=run.typeface.file)
        document.set_font(family, size=text.size / MM_PER_POINT)
        document.set_xy(left, base - _BASELINE * text.size)
        width = run.width * text.size
        document.cell(width, text.size, run.text)
        left += width


def _outline(words: str, at: Point, size: float) -> PaintedPath:
    path = PaintedPath()
    for command, ends in outline_of(words):
        places = [at[number % 2] + size * end for number, end in enumerate(ends)]
        match command:
            case "M":
                path.move_to(*places)
            case "L":
                path.line_to(*places)
            case "Q":
                path.quadratic_curve_to(*places)
            case "Z":
                path.close()
    return path
