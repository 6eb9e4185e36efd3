"""A count goes through its range in steps, worked out again one number at a time."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.number.counting import (
    beginning,
    check_range,
    check_start,
    check_step,
    count_of,
    hops,
)

RANGES = st.tuples(st.integers(0, 3000), st.integers(1, 200)).map(
    lambda ends: (ends[0], ends[0] + ends[1])
)


@given(RANGES, st.integers(1, 60), st.booleans(), st.data())
def test_a_count_goes_by_its_step_as_far_as_the_range(ends, step, back, data):
    first, last = ends
    start = data.draw(st.none() | st.integers(first, last))
    direction = "back" if back else "forward"
    numbers = count_of(first, last, step, start, direction)
    way = -step if back else step
    assert numbers[0] == beginning(first, last, step, start, direction)
    assert all(later - earlier == way for earlier, later in hops(numbers))
    assert all(first <= number <= last for number in numbers)
    assert not first <= numbers[-1] + way <= last, "it could have gone on"
    if start is not None:
        assert numbers[0] == start


@given(RANGES, st.integers(1, 60))
def test_without_a_start_all_multiples_are_counted(ends, step):
    found = [number for number in range(ends[0], ends[1] + 1) if number % step == 0]
    if found:
        assert count_of(*ends, step) == found
        assert count_of(*ends, step, direction="back") == found[::-1]
    else:
        assert count_of(*ends, step)[0] == ends[0]
        assert count_of(*ends, step, direction="back")[0] == ends[1]


def test_a_count_may_begin_anywhere():
    assert count_of(1, 100, 10, 7) == [7, 17, 27, 37, 47, 57, 67, 77, 87, 97]
    assert count_of(901, 1000, 25, 1000, "back") == [1000, 975, 950, 925]


@pytest.mark.parametrize(
    ("check", "given_", "said"),
    [
        (check_range, (1, 100.0), "The last number is whole, from 0 to 10000, not 100.0."),
        (check_range, (-1, 100), "The first number is whole, from 0 to 10000, not -1."),
        (check_range, (5, 5), "these are 5 and 5"),
        (check_range, (0, 1001), "1 to 1000 more than the first"),
        (check_step, (0,), "A step is a whole number from 1 to 1000, not 0"),
        (check_step, (True,), "not True"),
        (check_step, (-5,), 'to count back, say direction="back"'),
        (check_start, (101, 1, 100), "The start is a number from 1 to 100 or None, not 101."),
    ],
)
def test_invalid_counts_are_refused(check, given_, said):
    with pytest.raises(ValueError, match=said.replace("(", r"\(")):
        check(*given_)


def test_a_thousand_and_one_numbers_are_a_range():
    assert check_range(0, 1000) == (0, 1000)
    assert check_range(9999, 10_000) == (9999, 10_000)
