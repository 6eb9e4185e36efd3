from __future__ import annotations

import math
from dataclasses import replace

import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont

from manipulatives.data import font
from manipulatives.drawings.shapes import (
    DIGIT_HEIGHT,
    MM_PER_POINT,
    Arc,
    Box,
    Circle,
    Drawing,
    Line,
    Polygon,
    Text,
    around,
    centred,
)

SHAPES = (
    Line((0, 1), (2, 3)),
    Circle((4, 5), 6),
    Polygon(((0, 0), (1, 0), (1, 1))),
    Arc((7, 8), 9, 30, 60),
    Box((1, 2), 3, 4),
    Text((5, 6), "12", 4),
)
PLACES = ("start", "end", "centre", "points", "corner", "at")


def places(shape):
    for name in PLACES:
        value = getattr(shape, name, None)
        if name == "points" and value:
            yield from value
        elif isinstance(value, tuple):
            yield value


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: type(shape).__name__)
def test_a_drawing_laid_on_another_moves_every_place_and_nothing_else(shape):
    (moved,) = Drawing(20, 20, (shape,)).at(100, 1000)
    before, after = list(places(shape)), list(places(moved))
    assert [(x + 100, y + 1000) for x, y in before] == after
    assert before
    home = {
        name: getattr(shape, name) for name in PLACES if isinstance(getattr(shape, name, 0), tuple)
    }
    assert replace(moved, **home) == shape


@pytest.mark.parametrize(
    ("degrees", "right", "up"),
    [(0, 0, 1), (90, 1, 0), (180, 0, -1), (270, -1, 0), (30, 0.5, math.sqrt(3) / 2)],
)
def test_angles_are_read_as_on_a_clock(degrees, right, up):
    x, y = around((10, 20), 4, degrees)
    assert (x, y) == pytest.approx((10 + 4 * right, 20 - 4 * up))


def test_a_point_is_the_72nd_part_of_an_inch():
    """An inch is 25.4 mm exactly (international yard and pound agreement, 1959)."""
    assert pytest.approx(25.4) == MM_PER_POINT * 72


def test_digits_are_as_tall_as_the_font_draws_them():
    kit = TTFont(font.TTF)
    glyphs, cmap = kit.getGlyphSet(), kit.getBestCmap()
    for digit in "0123456789":
        pen = BoundsPen(glyphs)
        glyphs[cmap[ord(digit)]].draw(pen)
        _, bottom, _, top = pen.bounds
        # Round digits reach a little beyond the flat ones, above and below.
        assert top / kit["head"].unitsPerEm == pytest.approx(DIGIT_HEIGHT, abs=0.015)
        assert bottom / kit["head"].unitsPerEm == pytest.approx(0, abs=0.015)


def test_centred_digits_reach_as_far_above_the_point_as_below():
    text = centred((5, 7), "12", 10)
    assert text.at[1] - 7 == pytest.approx(7 - (text.at[1] - DIGIT_HEIGHT * 10))
    assert text.at[0] == 5
    assert text.anchor == "middle"
