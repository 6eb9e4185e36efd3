"""A drawing as SVG: the still picture that is shown where no widget runs."""

from __future__ import annotations

from html import escape
from typing import assert_never

from manipulatives.drawings.shapes import (
    Arc,
    Box,
    Circle,
    Drawing,
    Line,
    Paint,
    Point,
    Polygon,
    Shape,
    Text,
    around,
)
from manipulatives.drawings.tokens import colour, typeface


def svg_of(drawing: Drawing, *, width: str = "100%") -> str:
    """Return the drawing as one SVG element without references.

    Its colours are written out, so that it needs no style sheet.

    Args:
        drawing: the drawing.
        width: its width in CSS (`"100%"`, `"60mm"`).

    Example:
        >>> svg_of(Drawing(4, 2, (Line((0, 1), (4, 1)),), title="A line"))[:46]
        '<svg xmlns="http://www.w3.org/2000/svg" viewBo'
    """
    name = escape(drawing.title)
    label = f' role="img" aria-label="{name}"' if name else ' aria-hidden="true"'
    about = f"<title>{name}</title>" if name else ""
    if drawing.description:
        about += f"<desc>{escape(drawing.description)}</desc>"
    body = "".join(_element(shape) for shape in drawing.shapes)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_n(drawing.width)} '
        f'{_n(drawing.height)}" width="{escape(width)}"{label}>{about}{body}</svg>'
    )


def _element(shape: Shape) -> str:
    match shape:
        case Line():
            path = f"M{_p(shape.start)}L{_p(shape.end)}"
            return f'<path d="{path}"{_paint(shape.paint)}/>'
        case Polygon():
            path = "M" + "L".join(_p(point) for point in shape.points) + "Z" * shape.closed
            return f'<path d="{path}"{_paint(shape.paint)}/>'
        case Arc():
            return f'<path d="{_arc(shape)}"{_paint(shape.paint)}/>'
        case Circle():
            x, y = shape.centre
            place = f'cx="{_n(x)}" cy="{_n(y)}" r="{_n(shape.radius)}"'
            return f"<circle {place}{_paint(shape.paint)}/>"
        case Box():
            x, y = shape.corner
            place = f'x="{_n(x)}" y="{_n(y)}" width="{_n(shape.width)}" height="{_n(shape.height)}"'
            corners = f' rx="{_n(shape.radius)}"' if shape.radius else ""
            return f"<rect {place}{corners}{_paint(shape.paint)}/>"
        case Text():
            x, y = shape.at
            look = f'font-family="{escape(typeface())}" font-size="{_n(shape.size)}"'
            look += f' text-anchor="{shape.anchor}" fill="{colour(shape.colour)}"'
            if shape.halo:
                look += f' stroke="{colour("sheet")}" stroke-width="{_n(2 * shape.halo)}"'
                look += ' stroke-linejoin="round" paint-order="stroke"'
            return f'<text x="{_n(x)}" y="{_n(y)}" {look}>{escape(shape.text)}</text>'
        case _:
            assert_never(shape)


def _arc(arc: Arc) -> str:
    begin = around(arc.centre, arc.radius, arc.start)
    # SVG leaves out an arc whose ends meet, so it is drawn in two halves.
    middle = around(arc.centre, arc.radius, arc.start + arc.sweep / 2)
    end = around(arc.centre, arc.radius, arc.start + arc.sweep)
    radius = _n(arc.radius)
    curve = "".join(f"A{radius} {radius} 0 0 1 {_p(point)}" for point in (middle, end))
    if arc.slice:
        return f"M{_p(arc.centre)}L{_p(begin)}{curve}Z"
    return f"M{_p(begin)}{curve}"


def _paint(paint: Paint) -> str:
    said = f' fill="{colour(paint.fill) if paint.fill else "none"}"'
    if paint.stroke:
        said += f' stroke="{colour(paint.stroke)}" stroke-width="{_n(paint.width)}"'
        if paint.round:
            said += ' stroke-linecap="round" stroke-linejoin="round"'
        if paint.dashes:
            said += f' stroke-dasharray="{" ".join(map(_n, paint.dashes))}"'
    if paint.opacity < 1:
        said += f' opacity="{_n(paint.opacity)}"'
    return said


def _p(point: Point) -> str:
    return f"{_n(point[0])} {_n(point[1])}"


def _n(length: float) -> str:
    # A thousandth of a millimetre is finer than any printer; + 0.0 turns -0 into 0.
    return f"{round(length, 3) + 0.0:.7g}"
