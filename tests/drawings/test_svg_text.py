from __future__ import annotations

import re
from xml.etree import ElementTree as ET

import pytest

from manipulatives.drawings.shapes import (
    Arc,
    Box,
    Circle,
    Drawing,
    Line,
    Paint,
    Polygon,
    Text,
    around,
)
from manipulatives.drawings.svg import svg_of
from manipulatives.drawings.tokens import colour

NS = "{http://www.w3.org/2000/svg}"


def parsed(*shapes, **drawing):
    return ET.fromstring(svg_of(Drawing(40, 30, shapes, **drawing)))  # noqa: S314 (made here)


def numbers(path):
    return [float(number) for number in re.findall(r"-?[\d.]+", path)]


def test_the_box_of_view_is_the_drawing_in_millimetres():
    assert parsed().get("viewBox") == "0 0 40 30"


def test_the_picture_has_a_name_and_a_description_for_those_who_listen():
    root = parsed(title="A clock", description="Short hand exactly on the 4.")
    assert root.get("role") == "img"
    assert root.get("aria-label") == "A clock"
    assert root.find(f"{NS}title").text == "A clock"
    assert root.find(f"{NS}desc").text == "Short hand exactly on the 4."


def test_a_picture_without_a_name_is_silent():
    assert parsed().get("aria-hidden") == "true"


def test_text_is_text_and_never_mark_up():
    root = parsed(Text((1, 2), '<script>alert("&")</script>', 4), title='"><b>')
    assert [element.tag for element in root] == [f"{NS}title", f"{NS}text"]
    assert root.find(f"{NS}text").text == '<script>alert("&")</script>'
    assert root.get("aria-label") == '"><b>'


@pytest.mark.parametrize("anchor", ["start", "middle", "end"])
def test_text_is_anchored_at_its_point(anchor):
    text = parsed(Text((1.5, 2), "4:35", 4, anchor, "quiet")).find(f"{NS}text")
    expected = {"x": "1.5", "y": "2", "font-size": "4", "text-anchor": anchor}
    assert expected.items() <= text.attrib.items()
    assert text.get("fill") == colour("quiet")
    assert "Kit Reading" in text.get("font-family")


def test_a_halo_is_drawn_behind_its_letters():
    text = parsed(Text((1, 2), "7", 4, halo=0.5)).find(f"{NS}text")
    assert text.get("stroke-width") == "1"
    assert text.get("paint-order") == "stroke"


def test_circle_box_line_and_polygon_stand_where_they_were_put():
    root = parsed(
        Circle((1, 2), 3),
        Box((4, 5), 6, 7, 1),
        Line((0, 1), (2, 3.25)),
        Polygon(((0, 0), (9, 0), (9, 9))),
        Polygon(((0, 0), (9, 0), (9, 9)), closed=False),
    )
    circle, box, line, closed, chain = root
    assert (circle.get("cx"), circle.get("cy"), circle.get("r")) == ("1", "2", "3")
    assert [box.get(name) for name in ("x", "y", "width", "height", "rx")] == list("45671")
    assert line.get("d") == "M0 1L2 3.25"
    assert closed.get("d") == "M0 0L9 0L9 9Z"
    assert chain.get("d") == "M0 0L9 0L9 9"


@pytest.mark.parametrize("sweep", [30, 180, 210, 359])
def test_an_arc_goes_clockwise_from_its_start_to_its_end(sweep):
    path = parsed(Arc((20, 15), 10, 45, sweep)).find(f"{NS}path").get("d")
    x0, y0, *curves = numbers(path)
    assert (x0, y0) == pytest.approx(around((20, 15), 10, 45), abs=1e-3)
    first, second = curves[:7], curves[7:]
    for rx, ry, _, large, clockwise, _, _ in (first, second):
        assert (rx, ry, large, clockwise) == (10, 10, 0, 1)
    assert first[5:] == pytest.approx(around((20, 15), 10, 45 + sweep / 2), abs=1e-3)
    assert second[5:] == pytest.approx(around((20, 15), 10, 45 + sweep), abs=1e-3)


def test_a_slice_is_joined_to_the_centre():
    path = parsed(Arc((20, 15), 10, 0, 90, slice=True)).find(f"{NS}path").get("d")
    assert path.startswith("M20 15L20 5A")
    assert path.endswith("Z")


def test_paint_says_fill_stroke_width_ends_dashes_and_opacity():
    paint = Paint(fill="sheet", stroke="ink", width=0.5, opacity=0.1, round=True, dashes=(1, 2))
    line = parsed(Line((0, 0), (1, 1), paint)).find(f"{NS}path")
    assert (
        line.attrib.items()
        >= {
            "fill": colour("sheet"),
            "stroke": colour("ink"),
            "stroke-width": "0.5",
            "stroke-linecap": "round",
            "stroke-dasharray": "1 2",
            "opacity": "0.1",
        }.items()
    )


def test_nothing_is_written_in_a_way_that_svg_cannot_read():
    tiny = Line((1e-9, -1e-9), (-0.0, 1234.56789))
    assert parsed(tiny).find(f"{NS}path").get("d") == "M0 0L0 1234.568"
