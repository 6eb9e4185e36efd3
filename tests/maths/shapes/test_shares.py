"""Cutting into shares; shapely's pieces are the second opinion on polygons, sectors on circles."""

from __future__ import annotations

import math
from random import Random

import pytest
from shapely import LineString
from shapely.geometry import Polygon
from shapely.ops import polygonize, unary_union

from manipulatives.maths.shapes.cuts import CutProblem
from manipulatives.maths.shapes.outline import outline_of
from manipulatives.maths.shapes.ready import ready_shapes
from manipulatives.maths.shapes.shares import shares_of, ways_to_share
from manipulatives.words.shape_facts import shape_facts
from support.shapes import random_shape

BOX = {"points": [[1, 1], [7, 1], [7, 5], [1, 5]], "closed": True}
CIRCLE = {"points": [[4, 4], [4, 1]], "closed": True, "curve": "circle"}


def cut(shape, *cuts):
    return {**shape, "cuts": [list(map(list, each)) for each in cuts]}


def by_shapely(shape):
    """The areas of the pieces, doubled, in order of size."""
    ring = Polygon(shape["points"])
    lines = unary_union([ring.exterior, *(LineString(each) for each in shape["cuts"])])
    return sorted(round(2 * piece.area, 9) for piece in polygonize(lines))


def random_cuts(chance, shape):
    """Lines between points of the outline, or through a point inside."""
    ring = outline_of(shape, "square").polygon
    ends = [
        [across, down]
        for across in range(9)
        for down in range(9)
        if Polygon(ring).boundary.distance(LineString([(across, down)] * 2)) == 0
    ]
    lines = []
    for _ in range(chance.randint(1, 3)):
        one, other = chance.choice(ends), chance.choice(ends)
        inside = [[chance.randint(1, 7), chance.randint(1, 7)]] if chance.random() < 0.3 else []
        if one != other:
            lines.append([one, *inside, other])
    return lines


def test_the_pieces_are_those_that_shapely_finds():
    chance = Random(61)  # noqa: S311 - nothing here is secret
    fitting = refused = 0
    for _ in range(1500):
        shape = random_shape(chance, "square")
        if "curve" in shape or outline_of(shape, "square").polygon is None:
            continue
        shape = {**shape, "cuts": random_cuts(chance, shape)}
        try:
            shares = shares_of(shape, "square")
        except CutProblem:
            refused += 1
            continue
        fitting += 1
        assert sorted(shares.areas) == by_shapely(shape), shape
    assert fitting > 200
    assert refused > 50


def test_shares_add_up_to_the_whole():
    for grid in ("square", "triangle", "plain"):
        for shape in ready_shapes(grid).values():
            whole = shares_of(shape, grid)
            for many in (2, 3, 4):
                for way in ways_to_share(shape, grid, many):
                    shares = shares_of({**shape, "cuts": way}, grid)
                    assert sum(shares.areas) == pytest.approx(whole.areas[0])


@pytest.mark.parametrize("grid", ["square", "triangle", "plain"])
@pytest.mark.parametrize("many", [2, 3, 4])
def test_every_way_makes_the_wanted_number_of_equal_shares(grid, many):
    # Common Core 2.G.A.3: circles and rectangles into two, three or four equal shares.
    ways = {name: ways_to_share(shape, grid, many) for name, shape in ready_shapes(grid).items()}
    assert {"rectangle", "circle"} <= {name for name, each in ways.items() if each}
    for name, each in ways.items():
        for way in each:
            facts = shape_facts({**ready_shapes(grid)[name], "cuts": way}, grid)
            assert (facts["shares"], facts["equal_shares"]) == (many, True), (name, way)


@pytest.mark.parametrize("many", [2, 3, 4])
def test_equal_shares_of_a_rectangle_need_not_have_the_same_shape(many):
    """Common Core 2.G.A.3."""
    alike = [
        shares_of({**BOX, "cuts": way}, "square").alike
        for way in ways_to_share(BOX, "square", many)
    ]
    assert True in alike
    assert False in alike


@pytest.mark.parametrize(
    ("cuts", "areas", "equal", "alike"),
    [
        ([[[4, 1], [4, 5]]], [24, 24], True, True),
        ([[[3, 1], [3, 5]]], [16, 32], False, False),
        ([[[1, 1], [7, 5]], [[7, 1], [1, 5]]], [12, 12, 12, 12], True, False),
        ([[[1, 1], [7, 5]], [[4, 3], [7, 1]]], [12, 12, 24], False, False),
        ([[[2, 1], [2, 3], [6, 3], [6, 5]]], [24, 24], True, True),
        ([[[4, 1], [4, 5]], [[4, 3], [7, 3]], [[1, 1], [4, 5]]], [12, 12, 12, 12], True, False),
    ],
)
def test_shares_of_a_rectangle(cuts, areas, equal, alike):
    shares = shares_of(cut(BOX, *cuts), "square")
    assert sorted(shares.areas) == areas == by_shapely(cut(BOX, *cuts))
    assert (shares.equal, shares.alike) == (equal, alike)


def test_a_cut_along_an_edge_cuts_nothing():
    shares = shares_of(cut(BOX, [[1, 1], [7, 1]], [[4, 1], [4, 5]], [[4, 5], [4, 1]]), "square")
    assert len(shares.areas) == 2


@pytest.mark.parametrize(
    ("cuts", "said"),
    [
        ([[[2, 2], [2, 5]]], "begins on an edge"),
        ([[[2, 1], [2, 4]]], "ends on an edge"),
        ([[[0, 0], [4, 5]]], "begins on an edge"),
        ([[[1, 1], [0, 0]]], "ends on an edge"),
        ([[[7, 5], [8, 5], [8, 1], [7, 1]]], "stays inside"),
        ([[[2, 1], [4, 5]], [[2, 5], [4, 1], [4, 1]]], "itself"),
        ([[[2, 1], [3, 5]], [[1, 2], [7, 3]]], "at a dot"),
        ([[[2, 1], [2, 4], [4, 4], [4, 2], [1, 2]]], "cross or touch itself"),
    ],
)
def test_a_cut_that_does_not_fit_is_refused_with_the_reason(cuts, said):
    with pytest.raises(CutProblem, match=said):
        shares_of(cut(BOX, *cuts), "square")


def test_a_cut_may_not_leave_through_a_notch():
    shape = {
        "points": [[0, 0], [6, 0], [6, 6], [4, 6], [4, 2], [2, 2], [2, 6], [0, 6]],
        "closed": True,
    }
    with pytest.raises(CutProblem, match="stays inside"):
        shares_of(cut(shape, [[2, 4], [4, 4]]), "square")
    assert len(shares_of(cut(shape, [[2, 2], [2, 0]], [[4, 2], [4, 0]]), "square").areas) == 3


def sector(parts):
    return math.pi * parts / 24


def segment(parts):
    angle = 2 * math.pi * parts / 24
    return (angle - math.sin(angle)) / 2


@pytest.mark.parametrize(
    ("cuts", "areas"),
    [
        ([[[0, 1], [12, 1]]], [sector(12)] * 2),
        ([[[0, 1], [8, 1]]], [segment(8), segment(16)]),
        ([[[5, 1], [6, 1]]], [segment(1), segment(23)]),
        ([[[0, 1], [0, 0], [5, 1]]], [sector(5), sector(19)]),
        ([[[0, 1], [12, 1]], [[6, 1], [0, 0]]], [sector(6), sector(6), sector(12)]),
        ([[[0, 1], [12, 1]], [[6, 1], [18, 1]]], [sector(6)] * 4),
        ([[[1, 1], [11, 1]], [[13, 1], [23, 1]]], [segment(10)] * 2 + [math.pi - 2 * segment(10)]),
    ],
)
def test_shares_of_a_circle_are_sectors_and_segments(cuts, areas):
    # Sector: r²·angle/2; segment: r²·(angle - sin angle)/2. Standard, from memory.
    shares = shares_of(cut(CIRCLE, *cuts), "square")
    assert sorted(shares.areas) == pytest.approx(sorted(areas))
    assert shares.equal == (max(areas) - min(areas) < 1e-12)


def test_equal_shares_of_a_circle_do_not_depend_on_its_size():
    for end in ([4, 3], [7, 4], [5, 6]):
        shape = cut(
            {**CIRCLE, "points": [[4, 4], end]}, [[0, 1], [0, 0], [8, 1]], [[0, 0], [16, 1]]
        )
        assert shares_of(shape, "square").equal


@pytest.mark.parametrize(
    ("cuts", "said"),
    [
        ([[[24, 1], [0, 0]]], "0 to 23"),
        ([[[3, 2], [0, 0]]], "0 to 23"),
        ([[[3, 0], [0, 0]]], "0 to 23"),
        ([[[3, 1], [0, 0]]], "ends on an edge"),
        ([[[0, 1], [8, 1]], [[4, 1], [16, 1]]], "at a dot"),
    ],
)
def test_a_cut_that_does_not_fit_a_circle_is_refused(cuts, said):
    with pytest.raises(CutProblem, match=said):
        shares_of(cut(CIRCLE, *cuts), "square")


def test_what_is_no_polygon_and_no_circle_is_not_cut():
    half = {"points": [[1, 4], [7, 4]], "closed": True, "curve": "half circle"}
    for shape in (half, {**BOX, "closed": False}, {"points": [], "closed": True}):
        assert shares_of(shape, "square") is None
        assert ways_to_share(shape, "square", 2) == []


def test_only_points_of_the_paper_are_cut_through():
    narrow = {"points": [[1, 1], [4, 1], [4, 2], [1, 2]], "closed": True}
    assert ways_to_share(narrow, "square", 3) == [
        [[[2, 1], [2, 2]], [[3, 1], [3, 2]]],
        [[[2, 1], [2, 2]], [[2, 1], [4, 2]]],
    ]
    assert ways_to_share(narrow, "square", 4) == []
    with pytest.raises(ValueError, match="2, 3 or 4"):
        ways_to_share(narrow, "square", 5)


def test_shares_on_triangle_dots_are_exact_too():
    hexagon = {"points": [[2, 1], [5, 1], [5, 4], [2, 7], [-1, 7], [-1, 4]], "closed": True}
    middle = [2, 4]
    thirds = cut(hexagon, [[2, 1], middle, [5, 4]], [middle, [-1, 7]])
    shares = shares_of(thirds, "triangle")
    assert shares.areas == (18, 18, 18)
    assert shares.equal
    assert shares.alike
