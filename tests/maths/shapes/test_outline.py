"""Corners, and sides that meet by mistake; shapely and sympy are second opinions."""

from __future__ import annotations

from random import Random

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st
from shapely import LinearRing, LineString
from shapely.geometry import Polygon

from manipulatives.maths.shapes.outline import outline_of
from support.shapes import GRIDS, TURNS, put, random_shape, small_points, spots

FEW = ("few", "flat")


def closed(points, grid="square"):
    return outline_of({"points": points, "closed": True}, grid)


def chains(seed, many, *, exact):
    """Shapes with straight sides by chance; on dots shapely's arithmetic is exact."""
    chance = Random(seed)  # noqa: S311 - nothing here is secret
    made = 0
    while made < many:
        grid = chance.choice(["square", "triangle"] if exact else GRIDS)
        shape = random_shape(chance, grid)
        if "curve" not in shape:
            made += 1
            yield shape, grid


def test_sides_meet_by_mistake_when_shapely_calls_the_chain_not_simple():
    seen = {True: 0, False: 0}
    for shape, grid in chains(7, 1500, exact=True):
        outline = outline_of(shape, grid)
        kept = [point for point in outline.points if point is not None]
        if outline.fault in FEW or len(set(kept)) < 3:
            continue
        # Whether lines meet is the same after any affine change, so whole numbers serve for both.
        line = LinearRing(kept) if shape["closed"] else LineString(kept)
        assert bool(outline.meetings) != line.is_simple, (shape, grid)
        seen[line.is_simple] += 1
    assert min(seen.values()) > 200


def test_a_polygon_is_what_shapely_calls_a_valid_one():
    seen = set()
    for shape, grid in chains(8, 1500, exact=True):
        if not shape["closed"] or len(set(map(tuple, shape["points"]))) < 3:
            continue
        outline = outline_of(shape, grid)
        ring = Polygon(shape["points"])
        # A ring that touches itself in a point is valid for shapely, but no simple polygon.
        valid = ring.is_valid and LinearRing(shape["points"]).is_simple
        assert (outline.polygon is not None) == valid, (shape, grid)
        seen.add(outline.fault)
        if outline.polygon:
            assert ring.equals(Polygon(outline.polygon))
    assert {None, "crossing", "touching", "overlap", "flat"} <= seen


def test_corners_are_the_vertices_of_a_sympy_polygon():
    """Sympy drops points in the middle of straight sides; shapely keeps them."""
    chance = Random(9)  # noqa: S311 - nothing here is secret
    dropped = 0
    for _ in range(60):
        shape = random_shape(chance, "square")
        outline = outline_of(shape, "square") if "curve" not in shape else None
        if outline is None or outline.polygon is None:
            continue
        figure = sympy.Polygon(*map(sympy.Point, shape["points"]))
        corners = {(int(corner.x), int(corner.y)) for corner in figure.vertices}
        assert set(outline.polygon) == corners
        dropped += len(shape["points"]) > len(corners)
    assert dropped > 5


@given(small_points("square"), st.data())
def test_points_put_on_sides_change_nothing_but_their_own_number(points, data):
    doubled = [[2 * x, 2 * y] for x, y in points]
    before = closed(put(doubled, "square"))
    at = data.draw(st.integers(0, len(points) - 1))
    (a, b), (c, d) = doubled[at], doubled[(at + 1) % len(points)]
    more = [*doubled[: at + 1], [(a + c) // 2, (b + d) // 2], *doubled[at + 1 :]]
    after = closed(put(more, "square"))
    assert after.fault == before.fault
    if before.polygon:
        assert set(after.polygon) == set(before.polygon)
        assert len(after.straight) == len(before.straight) + 1


@pytest.mark.parametrize("grid", ["square", "triangle"])
@given(data=st.data())
def test_where_a_chain_begins_and_which_way_it_runs_does_not_matter(grid, data):
    points = put(data.draw(small_points(grid, 1)), grid)
    before = closed(points, grid)
    shift = data.draw(st.integers(0, len(points) - 1))
    turned = points[shift:] + points[:shift]
    for other in (turned, turned[::-1]):
        after = closed(other, grid)
        assert after.fault == before.fault
        assert sorted(after.turns) == sorted(before.turns)
        assert len(after.sides) == len(before.sides)
        kinds = [sorted(meeting.kind for meeting in each.meetings) for each in (before, after)]
        assert kinds[0] == kinds[1]


@pytest.mark.parametrize("grid", ["square", "triangle"])
@pytest.mark.parametrize("turn", range(6))
@given(data=st.data())
def test_turning_mirroring_and_scaling_do_not_matter(grid, turn, data):
    points = data.draw(small_points(grid, 1))
    change = list(TURNS[grid].values())[turn]
    before = closed(put(points, grid), grid)
    after = closed(put([change(*point) for point in points], grid), grid)
    assert after.fault == before.fault
    assert after.corners == before.corners
    assert after.meetings == before.meetings


@pytest.mark.parametrize(
    ("points", "pair", "kind"),
    [
        ([[0, 0], [4, 4], [4, 0], [0, 4]], (0, 2), "crossing"),
        ([[0, 0], [4, 0], [4, 4], [2, 0]], (0, 2), "touching"),
        ([[0, 0], [4, 0], [4, 4], [4, 2], [0, 2]], (1, 2), "overlap"),
        ([[0, 0], [6, 0], [6, 4], [4, 0], [2, 0], [0, 4]], (0, 3), "overlap"),
    ],
)
def test_the_two_sides_that_meet_are_known(points, pair, kind):
    found = [(meeting.one, meeting.other, meeting.kind) for meeting in closed(points).meetings]
    assert (*pair, kind) in found


def test_of_several_faults_the_worst_is_reported():
    both = [[0, 0], [4, 4], [4, 0], [0, 4], [0, 8], [8, 8], [8, 4], [4, 4], [2, 6]]
    kinds = {meeting.kind for meeting in closed(both).meetings}
    assert {"crossing", "touching"} <= kinds
    assert closed(both).fault == "crossing"


def test_the_ends_of_an_open_chain_are_corners():
    outline = outline_of({"points": [[0, 0], [2, 0], [4, 0]], "closed": False}, "square")
    assert outline.corners == (0, 2)
    assert outline.straight == (1,)
    assert len(outline.sides) == 1
    assert outline.polygon is None


def test_points_are_where_the_paper_says():
    assert spots([[1, 0], [0, 2]], "square") == [(100, 0), (0, 200)]
