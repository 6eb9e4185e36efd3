from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.number.counting import count_of
from manipulatives.maths.number.line import marks_apart, numbers_apart, piece


@given(st.integers(0, 900), st.integers(1, 1000), st.integers(1, 150), st.booleans(), st.data())
def test_the_last_hop_is_whole_on_the_piece(first, more, step, back, data):
    last = first + more
    numbers = count_of(first, last, step, None, "back" if back else "forward")
    counted = numbers[: data.draw(st.integers(0, len(numbers)))]
    low, high = piece(first, last, step, counted, numbers[0])
    assert first <= low < high <= last
    for seen in counted[-2:] or numbers[:1]:
        assert low <= seen <= high


def test_a_short_line_is_shown_whole():
    assert piece(0, 20, 1, [], 0) == (0, 20)
    assert piece(1, 21, 1, [20], 1) == (1, 21)


def test_a_long_line_turns_its_page_after_the_hop_onto_it():
    assert piece(1, 100, 1, [18, 19], 1) == (1, 21)
    assert piece(1, 100, 1, [19, 20], 1) == (1, 21)
    assert piece(1, 100, 1, [20, 21], 1) == (19, 41)
    assert piece(1, 100, 10, [100, 90], 100) == (40, 100)


@given(st.integers(0, 9000), st.integers(1, 1000))
def test_there_are_never_too_many_marks_to_distinguish(low, more):
    apart = marks_apart(low, low + more)
    assert apart in {1, 10, 100}
    assert more // apart <= 60


@given(st.integers(1, 1000), st.floats(100, 3000), st.floats(10, 90), st.integers(1, 200))
def test_numbers_below_the_line_have_room(more, length, room, step):
    apart = numbers_apart(0, more, length, room, step)
    assert apart * length / more >= room or apart == 500


@pytest.mark.parametrize(("step", "apart"), [(5, 5), (10, 10), (2, 2), (3, 2), (20, 2)])
def test_numbers_are_as_far_apart_as_usual_counts(step, apart):
    assert numbers_apart(0, 20, 400, 35, step) == apart
