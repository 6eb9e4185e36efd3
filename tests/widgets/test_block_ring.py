"""A ring drawn by hand: whether it is one, and what is inside."""

from __future__ import annotations

import math
from random import Random

import pytest
from shapely import Point, Polygon

RING = "blocks/state/ring.js"


def hand(chance, corners=40):
    """A line round the origin, as uneven as a child draws it, that ends near its beginning."""
    out = [chance.uniform(0.7, 1.3) for _ in range(corners)]
    return [
        {
            "x": 80 * far * math.cos(math.tau * at / corners),
            "y": 50 * far * math.sin(math.tau * at / corners),
        }
        for at, far in enumerate(out)
    ]


def test_points_are_inside_as_shapely_says(js):
    chance = Random(3)  # noqa: S311 - examples, not secrets
    calls, expected = [], []
    for _ in range(200):
        ring = hand(chance)
        shape = Polygon([(point["x"], point["y"]) for point in ring])
        assert shape.is_valid
        for _ in range(20):
            point = {"x": chance.uniform(-120, 120), "y": chance.uniform(-80, 80)}
            calls.append([ring, point])
            expected.append(shape.contains(Point(point["x"], point["y"])))
    assert js(RING, "rings", calls) == expected
    assert 1000 < sum(expected) < 3500


def test_it_does_not_matter_which_way_a_ring_is_drawn_or_where_it_begins(js):
    chance = Random(5)  # noqa: S311 - examples, not secrets
    ring = hand(chance)
    points = [{"x": chance.uniform(-120, 120), "y": chance.uniform(-80, 80)} for _ in range(200)]
    drawn = [ring, ring[::-1], ring[17:] + ring[:17]]
    one, other, third = (js(RING, "rings", [[line, point] for point in points]) for line in drawn)
    assert one == other == third


@pytest.mark.parametrize(
    ("share", "closed"), [(1.0, True), (0.95, True), (0.85, True), (0.6, False), (0.4, False)]
)
def test_a_ring_comes_back_to_where_it_began(js, share, closed):
    line = hand(Random(9), 60)  # noqa: S311 - examples, not secrets
    assert js(RING, "isRing", [[line[: round(60 * share)], 20]]) == [closed]


def test_a_stroke_is_no_ring(js):
    there = [{"x": 5 * at, "y": 0} for at in range(30)]
    assert js(RING, "isRing", [[there, 20], [there + there[::-1], 20], [there[:1], 20]]) == [
        False,
        False,
        False,
    ]
