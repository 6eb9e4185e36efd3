"""Where sums carry and borrow: counted over all sums of a size, and against Kummer's theorem.

Kummer, E. E. (1852), Ueber die Ergaenzungssaetze zu den allgemeinen Reciprocitaetsgesetzen,
Journal fuer die reine und angewandte Mathematik 44, 93-146: adding in base p, the carries are
(s(a) + s(b) - s(a + b)) / (p - 1), with s the sum of the digits. The counts themselves are brute
force, done once by a program of its own and kept here.
"""

from __future__ import annotations

from collections import Counter
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.columns.difficulty import borrows, carries, difficulty

ONES, TWOS, THREES = range(1, 10), range(10, 100), range(100, 1000)


def digit_sum(number):
    return sum(map(int, str(number)))


def adding(ones, others, most=None):
    """How many sums carry how often."""
    counts = Counter(
        sum(map(bool, carries([one, other])))
        for one, other in product(ones, others)
        if most is None or one + other <= most
    )
    return tuple(counts[times] for times in range(max(counts) + 1))


def taking(uppers, lowers):
    """How many differences borrow how often."""
    counts = Counter(
        sum(borrows(upper, lower)[0]) for upper, lower in product(uppers, lowers) if upper >= lower
    )
    return tuple(counts[times] for times in range(max(counts) + 1))


@pytest.mark.parametrize(
    ("ones", "others", "most", "counts"),
    [
        (range(10), range(10), None, (55, 45)),
        (ONES, ONES, None, (36, 45)),
        (TWOS, ONES, None, (405, 360, 45)),
        (TWOS, range(10), None, (495, 360, 45)),
        (TWOS, TWOS, None, (1980, 3735, 2385)),
        (TWOS, TWOS, 99, (1980, 1260)),
        (TWOS, TWOS, 100, (1980, 1269, 72)),
        (range(100), range(100), None, (3025, 4500, 2475)),
        (range(100), range(100), 99, (3025, 2025)),
        (range(101), range(101), 100, (3027, 2034, 90)),
        (THREES, THREES, None, (108900, 278325, 291600, 131175)),
        (THREES, THREES, 999, (108900, 142200, 69300)),
        (THREES, THREES, 1000, (108900, 142209, 69372, 720)),
    ],
)
def test_carries_come_as_often_as_they_do(ones, others, most, counts):
    assert adding(ones, others, most) == counts


@pytest.mark.parametrize(
    ("uppers", "lowers", "counts"),
    [
        (TWOS, TWOS, (2475, 1620)),
        (TWOS, ONES, (405, 405)),
        (range(100), range(100), (3025, 2025)),
        (range(101), range(101), (3027, 2034, 90)),
        (THREES, THREES, (136125, 180225, 89100)),
        (THREES, TWOS, (22275, 36855, 21870)),
        (THREES, ONES, (4050, 3645, 405)),
    ],
)
def test_borrows_come_as_often_as_they_do(uppers, lowers, counts):
    assert taking(uppers, lowers) == counts


def test_the_places_of_all_two_digit_sums():
    counts = Counter(difficulty("+", [one, other]).places for one, other in product(TWOS, TWOS))
    assert counts == {(): 1980, ("tens",): 2475, ("ones",): 1260, ("ones", "tens"): 2385}


def test_the_places_of_all_two_digit_differences():
    counts = Counter(
        difficulty("-", [upper, lower]).places
        for upper, lower in product(TWOS, TWOS)
        if upper >= lower
    )
    assert counts == {(): 2475, ("ones",): 1620}


def test_one_three_digit_difference_in_twenty_five_regroups_through_a_zero():
    """16 200 of 405 450: the tens digit is 0 and the ones are not enough."""
    through = sum(
        borrows(upper, lower)[1] > 0
        for upper in THREES
        if upper // 10 % 10 == 0
        for lower in range(100, upper + 1)
    )
    assert through == 16_200


@given(st.lists(st.integers(0, 9999), min_size=2, max_size=4))
def test_carries_are_those_of_kummer(numbers):
    """For more numbers: each ten that is carried takes nine from the sum of all digits."""
    nines = sum(map(digit_sum, numbers)) - digit_sum(sum(numbers))
    assert 9 * sum(carries(numbers)) == nines


@given(st.integers(0, 9999), st.integers(0, 9999))
def test_borrows_are_those_of_kummer(one, other):
    upper, lower = max(one, other), min(one, other)
    nines = digit_sum(lower) + digit_sum(upper - lower) - digit_sum(upper)
    assert 9 * sum(borrows(upper, lower)[0]) == nines


@pytest.mark.parametrize(
    ("numbers", "zeros"),
    [
        ([402, 178], 1),
        ([9002, 733], 2),
        ([1000, 1], 2),
        ([513, 247], 0),
        ([402, 101], 0),
        ([4030, 1025], 0),
        ([2003, 1], 0),
        ([2003, 5], 2),
        ([3050, 1060], 1),
    ],
)
def test_the_longest_run_of_zeros_that_is_regrouped_through(numbers, zeros):
    assert difficulty("-", numbers).zeros == zeros


def test_difficulties_are_distinguished():
    assert difficulty("+", [47, 58]).new_place
    assert not difficulty("+", [47, 38]).new_place
    assert difficulty("+", [347, 9]).blanks
    assert difficulty("-", [83, 43]).equal == 1
    assert difficulty("-", [523, 407]).equal == 0
    assert difficulty("+", [19, 28, 37, 99]).regroupings == 2
    assert max(carries([99, 99, 99, 99])) == 3
