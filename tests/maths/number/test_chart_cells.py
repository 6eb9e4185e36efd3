from __future__ import annotations

from itertools import chain

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.number.chart_cells import (
    PATTERNS,
    check_hidden,
    check_width,
    cross,
    every_third,
    hidden_numbers,
    patch,
    rows_of,
)

CHARTS = st.tuples(st.integers(0, 950), st.integers(1, 200), st.integers(2, 20)).map(
    lambda drawn: (drawn[0], drawn[0] + drawn[1], drawn[2])
)


@given(CHARTS)
def test_the_rows_are_all_numbers_in_order(chart):
    first, last, width = chart
    rows = rows_of(first, last, width)
    assert list(chain.from_iterable(rows)) == list(range(first, last + 1))
    assert all(len(row) == width for row in rows[:-1])
    assert 1 <= len(rows[-1]) <= width


def test_every_third_is_a_third_of_them():
    assert every_third(1, 100) == [number for number in range(1, 101) if number % 3 == 0]
    assert every_third(0, 99)[:3] == [2, 5, 8]


@given(CHARTS, st.data())
def test_a_cross_is_in_one_row_and_one_column(chart, data):
    first, last, width = chart
    middle = data.draw(st.integers(first, last))
    row, column = divmod(middle - first, width)
    expected = [
        number
        for number in range(first, last + 1)
        for down, right in [divmod(number - first, width)]
        if (down == row and abs(right - column) <= 2) or (right == column and abs(down - row) <= 2)
    ]
    assert cross(first, last, width, middle) == expected


@given(CHARTS, st.data())
def test_a_patch_is_around_its_middle_and_does_not_wrap(chart, data):
    first, last, width = chart
    middle = data.draw(st.integers(first, last))
    row, column = divmod(middle - first, width)
    torn = patch(first, last, width, middle)
    assert middle in torn
    assert torn == sorted(set(torn))
    for number in torn:
        down, right = divmod(number - first, width)
        assert abs(down - row) <= 1
        assert abs(right - column) <= 2


def test_in_the_middle_of_a_hundred_there_is_room_for_all_of_it():
    assert cross(1, 100, 10) == [25, 35, 43, 44, 45, 46, 47, 55, 65]
    assert len(patch(1, 100, 10)) == 11


@given(CHARTS)
def test_every_pattern_hides_numbers_of_the_chart(chart):
    first, last, width = chart
    for pattern in PATTERNS:
        hidden = hidden_numbers(pattern, first, last, width, [last, first])
        assert hidden == sorted(set(hidden))
        assert all(first <= number <= last for number in hidden)
        assert bool(hidden) == (pattern != "none" and (pattern != "thirds" or last - first > 1))


@pytest.mark.parametrize("width", [1, 21, True, 10.0, "10"])
def test_no_chart_is_that_wide(width):
    with pytest.raises(ValueError, match="A chart is 2 to 20 numbers wide"):
        check_width(width)


@pytest.mark.parametrize("hidden", ["some", [0], [101], [True], ["5"], None, {5}])
def test_invalid_hidden_cells_are_refused(hidden):
    with pytest.raises(ValueError, match="Hidden is one of none, thirds, cross, patch"):
        check_hidden(hidden, 1, 100)
