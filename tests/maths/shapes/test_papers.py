"""Papers and what is measured on them; sympy is the second opinion on lengths and angles."""

from __future__ import annotations

import math
from itertools import product
from random import Random

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.shapes.papers import (
    GRIDS,
    alike,
    cross,
    dots,
    inner,
    is_point,
    near_zero,
    nearest,
    place,
    way,
)

STEPS = st.tuples(st.integers(-8, 8), st.integers(-8, 8))


def exact(step, grid):
    """A step in exact numbers: the second direction of triangle dots is (1/2, √3/2)."""
    a, b = (sympy.Integer(part) for part in step)
    return (a + b / 2, b * sympy.sqrt(3) / 2) if grid == "triangle" else (a, b)


@pytest.mark.parametrize("grid", ["square", "triangle"])
@given(one=STEPS, other=STEPS)
def test_lengths_and_angles_on_dots_are_exact(grid, one, other):
    (a, b), (c, d) = exact(one, grid), exact(other, grid)
    assert inner(one, other, grid) == sympy.expand(2 * (a * c + b * d))
    unit = sympy.sqrt(3) / 2 if grid == "triangle" else 1
    assert sympy.expand(cross(one, other) * unit - (a * d - b * c)) == 0


def test_the_square_of_a_length_on_triangle_dots_is_the_norm_form():
    # a² + ab + b², the norm of a + b·e^(iπ/3): standard, from memory; checked by complex numbers.
    for a, b in product(range(-8, 9), repeat=2):
        assert inner((a, b), (a, b), "triangle") == 2 * (a * a + a * b + b * b)
        number = a + b * complex(math.cos(math.pi / 3), math.sin(math.pi / 3))
        assert a * a + a * b + b * b == pytest.approx(abs(number) ** 2)


def test_every_triangle_dot_has_six_neighbours_equally_far():
    ways = [(1, 0), (0, 1), (-1, 1), (-1, 0), (0, -1), (1, -1)]
    assert {inner(step, step, "triangle") for step in ways} == {2}
    middle = place((2, 4), "triangle")
    for across, down in ways:
        assert math.dist(middle, place((2 + across, 4 + down), "triangle")) == pytest.approx(100)


@pytest.mark.parametrize("grid", ["square", "triangle"])
def test_the_dots_are_the_points_of_a_paper(grid):
    found = set(dots(grid))
    assert len(found) == len(list(dots(grid)))
    assert found == {point for point in product(range(-20, 21), repeat=2) if is_point(point, grid)}
    for point in found:
        right, down = place(point, grid)
        assert 0 <= right <= 800
        assert 0 <= down <= 800


@pytest.mark.parametrize("grid", ["square", "triangle"])
def test_the_nearest_point_is_the_nearest_of_all_dots(grid):
    chance = Random(51)  # noqa: S311 - nothing here is secret
    for _ in range(500):
        spot = chance.uniform(-60, 860), chance.uniform(-60, 860)
        found = nearest(*spot, grid)
        least = min(math.dist(spot, place(dot, grid)) for dot in dots(grid))
        assert is_point(found, grid)
        assert math.dist(spot, place(found, grid)) == pytest.approx(least)


@pytest.mark.parametrize("grid", GRIDS)
def test_a_point_is_nearest_to_where_it_is(grid):
    for point in dots(grid) if grid != "plain" else [(0, 0), (800, 1), (399, 800)]:
        assert nearest(*place(point, grid), grid) == point


def test_plain_paper_has_whole_steps_and_an_edge():
    assert nearest(12.5, 12.4999, "plain") == (13, 12)
    assert nearest(-3, 900, "plain") == (0, 800)
    assert not any(is_point(point, "plain") for point in ([801, 0], [0, -1], [0.5, 0], "00"))


@given(st.integers(1, 800), st.integers(1, 800))
def test_lengths_on_plain_paper_are_alike_up_to_one_in_twenty(one, other):
    squares = one * one, other * other
    assert alike(*squares, "plain") == (20 * max(one, other) <= 21 * min(one, other))
    assert alike(*squares, "square") == (one == other)


@given(st.tuples(st.integers(-400, 400), st.integers(-400, 400)).filter(any), st.floats(-9, 9))
def test_an_angle_on_plain_paper_may_be_three_degrees_off(step, degrees):
    # Rounding moves the end of a step by up to 0.71, so angles near the limit decide nothing.
    length = math.hypot(*step)
    if length < 30 or abs(abs(degrees) - 3) < math.degrees(1 / length):
        return
    turn = math.atan2(step[1], step[0]) + math.radians(90 + degrees)
    other = round(length * math.cos(turn)), round(length * math.sin(turn))
    squares = inner(step, step, "plain"), inner(other, other, "plain")
    assert near_zero(inner(step, other, "plain"), *squares, "plain") == (abs(degrees) < 3)


def test_a_way_leads_from_one_point_to_another():
    assert way((3, 1), (1, 5)) == (-2, 4)
