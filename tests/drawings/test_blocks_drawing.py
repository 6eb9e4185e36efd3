from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.drawings.block_rows import SIZES
from manipulatives.drawings.blocks import BLOCK, block_shapes, blocks_drawing
from manipulatives.drawings.shapes import MM_PER_POINT, Box, Line, Polygon, Text
from manipulatives.drawings.svg import svg_of
from manipulatives.maths.number.place_value import PLACES, fewest
from support.blocks import blocks

NUMBER = re.compile(r"-?\d*\.?\d+")


def of_role(drawing, role):
    return [shape for shape in drawing.shapes if shape.role == role]


def extent(shape):
    """The least and greatest x and y that a shape reaches, its line included."""
    match shape:
        case Line():
            points, edge = [shape.start, shape.end], shape.paint.width / 2
        case Polygon():
            points, edge = list(shape.points), shape.paint.width / 2 * bool(shape.paint.stroke)
        case Box():
            (x, y), edge = shape.corner, shape.paint.width / 2 * bool(shape.paint.stroke)
            points = [(x, y), (x + shape.width, y + shape.height)]
        case Text():
            # No letter is wider than 0.6 of its type, on the average of a word.
            wide = 0.6 * len(shape.text) * shape.size
            left = shape.at[0] - {"start": 0, "middle": wide / 2, "end": wide}[shape.anchor]
            points, edge = [(left, shape.at[1] - 0.75 * shape.size), (left + wide, shape.at[1])], 0
    xs, ys = zip(*points, strict=True)
    return min(xs) - edge, min(ys) - edge, max(xs) + edge, max(ys) + edge


@given(blocks(999))
def test_as_many_blocks_are_drawn_as_there_are(some):
    drawing = blocks_drawing([some], places=3)
    for place in PLACES:
        drawn = len(of_role(drawing, place))
        boxes = of_role(drawing, "boxes")
        assert drawn == some[place] or boxes
    if sum(some.values()) <= 200:
        assert of_role(drawing, "boxes") == []


@given(blocks(), st.booleans(), st.booleans(), st.integers(1, 4), st.floats(90, 190))
def test_nothing_reaches_beyond_the_drawing(some, digits, headings, places, width):
    drawing = blocks_drawing(
        [some], places=places, digits=digits, headings=headings, width=width, height=0.6 * width
    )
    assert (drawing.width, drawing.height) == (width, 0.6 * width)
    # Boxes of a thousand ones and loose ones need more height than a small drawing has.
    reach = 1.0 if sum(some.values()) <= 200 else 1.5
    for shape in drawing.shapes:
        left, top, right, foot = extent(shape)
        assert left >= -0.2, shape
        assert top >= -0.2, shape
        assert right <= width + 0.2, shape
        assert foot <= drawing.height * reach + 0.2, shape


def test_two_mats_stand_beside_each_other_with_their_names():
    drawing = blocks_drawing([fewest(345), fewest(23)], pair="take")
    texts = [shape.text for shape in drawing.shapes if isinstance(shape, Text)]
    assert texts.count("H") == 2
    assert {"Left", "Taken away"} <= set(texts)
    assert drawing.description == ("Left: 3 hundreds, 4 tens, 5 ones. Taken away: 2 tens, 3 ones.")
    tens = of_role(drawing, "tens")
    assert [box.corner[0] < 60 for box in tens] == [True] * 4 + [False] * 2


def test_the_description_counts_the_blocks_and_does_not_say_the_number():
    drawing = blocks_drawing([{"tens": 2, "ones": 15}])
    assert drawing.description == "2 tens, 15 ones."
    assert "35" not in re.findall(r">([^<]*)<", svg_of(drawing))


def test_digits_leave_out_leading_zeros_and_frame_what_is_no_digit():
    drawing = blocks_drawing([{"hundreds": 0, "tens": 12, "ones": 0}], places=3)
    assert [text.text for text in of_role(drawing, "count")] == ["12", "0"]
    (frame,) = of_role(drawing, "many")
    (twelve, _) = of_role(drawing, "count")
    assert frame.corner[0] < twelve.at[0] < frame.corner[0] + frame.width
    assert frame.paint.dashes
    assert len(of_role(blocks_drawing([{"tens": 10, "ones": 9}]), "many")) == 1
    empty = blocks_drawing([{}], places=3)
    assert [text.text for text in of_role(empty, "count")] == ["0"]


def test_without_blocks_it_is_an_empty_mat_and_its_description_gives_no_count():
    drawing = blocks_drawing([fewest(345)], blocks=False)
    assert not any(of_role(drawing, place) for place in PLACES)
    assert of_role(drawing, "count") == []
    assert drawing.description == ""
    assert [text.text for text in of_role(drawing, "heading")] == ["Hundreds", "Tens", "Ones"]


@pytest.mark.parametrize("points", [12, 18])
def test_type_is_never_smaller_than_asked(points):
    least = points * MM_PER_POINT
    drawing = blocks_drawing([fewest(1234)], places=4, width=170, height=60, least_type=least)
    sizes = [shape.size for shape in drawing.shapes if isinstance(shape, Text)]
    assert len(sizes) == 8
    assert min(sizes) >= least - 1e-9


def test_a_place_is_recognised_by_shape_and_heading_and_not_only_by_colour():
    sizes = {place: SIZES[place] for place in PLACES}
    assert len(set(sizes.values())) == 4
    drawing = blocks_drawing([fewest(1111)], places=4)
    for heading in of_role(drawing, "heading"):
        assert heading.text.lower() == heading.colour


@pytest.mark.parametrize("place", PLACES)
def test_a_block_has_the_outlines_that_the_browser_draws(js, place):
    """The corners of the browser's paths, without their roundings, beside those on paper."""
    (paths,) = js("blocks/state/block.js", "outlines", [[place]])
    shapes = block_shapes(place, (0, 0), 1.0)
    face = next(shape for shape in shapes if shape.role == place)
    (drawn,) = [path["d"] for path in paths if path["part"] == "face"]
    r = BLOCK["corner"]
    left, top = face.corner
    assert drawn.startswith(f"M{number(left + r)} {number(top)}H{number(left + face.width - r)}")
    assert f"V{number(top + face.height - r)}" in drawn
    lines = "".join(path["d"] for path in paths if path["part"] == "lines")
    inside = [shape for shape in shapes if shape.role == "inside"]
    assert lines.count("M") == len(inside)
    for shape in inside:
        x, y = shape.start if isinstance(shape, Line) else shape.points[0]
        assert f"M{number(x)} {number(y)}" in lines


def number(length):
    return f"{round(length, 2):g}"


def test_a_ten_is_ten_ones_and_a_hundred_ten_tens():
    one, ten, hundred = (SIZES[place] for place in ("ones", "tens", "hundreds"))
    assert ten == (one[0], 10 * one[1])
    assert hundred == (10 * ten[0], ten[1])
    # Nine lines cut a ten into ten; nine and nine a hundred.
    for place, lines in (("ones", 0), ("tens", 9), ("hundreds", 18), ("thousands", 27)):
        shapes = block_shapes(place, (0, 0), 1.0)
        assert len([shape for shape in shapes if shape.role == "inside"]) == lines


@pytest.mark.parametrize("wrong", [None, [], [{"ones": -1}], 35])
def test_what_is_no_mat_is_refused(wrong):
    with pytest.raises(ValueError, match=r"A mat is|Blocks are"):
        blocks_drawing(wrong)


def test_two_mats_are_for_something_that_there_is():
    with pytest.raises(ValueError, match='"compare", "add" or "take", not "share"'):
        blocks_drawing([{}, {}], pair="share")


@pytest.mark.parametrize("wrong", [0, 5])
def test_places_that_there_are_not_are_refused(wrong):
    with pytest.raises(ValueError, match="There are 1 to 4 places"):
        blocks_drawing([{}], places=wrong)
