"""Families of sums have exactly the members that trying all numbers finds, each once."""

from __future__ import annotations

from functools import cache
from itertools import product

import pytest

from manipulatives.lessons.strands.sums.pools import ADDING, TAKING, additions, subtractions
from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.tasks.pools import Joined, Labelled, Walks
from manipulatives.maths.columns.difficulty import difficulty

NUMBERS = {1: range(1, 10), 2: range(10, 100), 3: range(100, 1000)}


def carried(numbers, most):
    """Return where numbers carry, by what is known of digit sums (Kummer 1852): place by place.

    Of two numbers there are as many carries as nine goes into their digit sums less that of their
    sum; so of their last digits, of their last two, and so on.
    """
    places, before = [], 0
    for place in range(most):
        ends = [number % 10 ** (place + 1) for number in numbers]
        count = (sum(digit_sum(end) for end in ends) - digit_sum(sum(ends))) // 9
        if count > before:
            places.append(place)
        before = count
    return tuple(places)


def digit_sum(number):
    return sum(map(int, str(number)))


WANTED = {"none": (), "ones": (0,), "tens": (1,), "both": (0, 1), "zero": (0, 1)}


@cache
def all_sums(lengths):
    """All sums with where they carry, and whether the tens of the answer are 0."""
    return [
        ((one, other), carried((one, other), max(lengths)), (one + other) // 10 % 10 == 0)
        for one, other in product(*(NUMBERS[length] for length in lengths))
    ]


@cache
def all_differences(lengths):
    """All differences with where they regroup, as adding what is left carries, and a 0 above."""
    return [
        ((upper, lower), carried((lower, upper - lower), lengths[0]), upper // 10 % 10 == 0)
        for upper, lower in product(*(NUMBERS[length] for length in lengths))
        if upper >= lower
    ]


def sums_by_trying(lengths, regroup, most):
    return {
        pair
        for pair, places, zero in all_sums(lengths)
        if (most is None or sum(pair) <= most)
        and places == WANTED.get(regroup, places)
        and (zero or regroup != "zero")
    }


def differences_by_trying(lengths, regroup, *, nothing):
    return {
        pair
        for pair, places, zero in all_differences(lengths)
        if (nothing or pair[0] > pair[1])
        and places == WANTED.get(regroup, places)
        and (regroup not in ("both", "zero") or zero == (regroup == "zero"))
    }


@pytest.mark.parametrize("regroup", ["any", *ADDING])
@pytest.mark.parametrize("most", [None, 99, 100])
@pytest.mark.parametrize("lengths", [(2, 2), (2, 1)])
def test_all_sums_of_a_difficulty_are_there_each_once(lengths, regroup, most):
    family = additions(lengths, regroup, most)
    assert len(family) == len(set(family))
    assert set(family) == sums_by_trying(lengths, regroup, most)


@pytest.mark.parametrize("regroup", ["any", *TAKING])
@pytest.mark.parametrize("nothing", [True, False])
@pytest.mark.parametrize("lengths", [(2, 2), (2, 1), (3, 1), (3, 2)])
def test_all_differences_of_a_difficulty_are_there_each_once(lengths, regroup, nothing):
    family = subtractions(lengths, regroup, nothing=nothing)
    assert len(family) == len(set(family))
    assert set(family) == differences_by_trying(lengths, regroup, nothing=nothing)


@pytest.mark.parametrize(
    ("lengths", "most", "counts"),
    [
        ((2, 2), None, (8100, 1980, 1260, 2475, 2385)),
        ((2, 2), 99, (3240, 1980, 1260, 0, 0)),
        ((2, 2), 100, (3321, 1980, 1260, 9, 72)),
        ((2, 1), None, (810, 405, 360, 0, 45)),
    ],
)
def test_two_digit_sums_are_as_many_as_they_are(lengths, most, counts):
    """Counts that follow from digits alone: 1980, 3735 and 2385 sums carry never, once, twice."""
    ways = ("any", "none", "ones", "tens", "both")
    assert tuple(len(additions(lengths, way, most)) for way in ways) == counts


def test_three_digit_sums_and_differences_are_as_many_as_they_are():
    """810 000 sums, of which 320 400 come to 999 at most, with 0, 1 or 2 carries; and so on."""
    assert len(additions((3, 3))) == 810_000
    assert len(additions((3, 3), "any", 999)) == 320_400
    assert len(additions((3, 3), "none", 999)) == 108_900
    once = len(additions((3, 3), "ones", 999)) + len(additions((3, 3), "tens", 999))
    assert once == 142_200
    assert len(additions((3, 3), "both", 999)) == 69_300
    assert len(additions((3, 3), "any", 1000)) == 320_400 + 9 + 72 + 720
    takes = {way: len(subtractions((3, 3), way, nothing=True)) for way in ("any", *TAKING)}
    assert takes["any"] == 405_450
    assert takes["none"] == 136_125
    assert takes["ones"] + takes["tens"] == 180_225
    assert takes["both"] + takes["zero"] == 89_100
    assert takes["zero"] == 16_200
    assert len(subtractions((3, 2), "zero", nothing=True)) == 3_645


def test_two_digit_differences_are_as_many_as_they_are():
    for nothing, counts in ((True, (4095, 2475, 1620)), (False, (4005, 2385, 1620))):
        ways = ("any", "none", "ones")
        assert tuple(len(subtractions((2, 2), way, nothing=nothing)) for way in ways) == counts


@pytest.mark.parametrize("regroup", list(TAKING))
def test_samples_of_three_digit_differences_have_the_difficulty(regroup):
    places = {"none": (), "ones": ("ones",), "tens": ("tens",)}.get(regroup, ("ones", "tens"))
    family = subtractions((3, 3), regroup)
    for upper, lower in Chance(regroup).sample(family, 2000):
        found = difficulty("-", [upper, lower])
        assert found.places == places
        assert found.zeros == (regroup == "zero")
        assert upper > lower >= 100


@pytest.mark.parametrize("regroup", list(ADDING))
@pytest.mark.parametrize("most", [999, 1000, 2000])
def test_samples_of_three_digit_sums_have_the_difficulty(regroup, most):
    places = {"none": (), "ones": ("ones",), "tens": ("tens",)}.get(regroup, ("ones", "tens"))
    for one, other in Chance(regroup).sample(additions((3, 3), regroup, most), 1000):
        assert difficulty("+", [one, other]).places == places
        assert one + other <= most
        if regroup == "zero":
            assert difficulty("-", [one + other, other]).zeros == 1


@pytest.mark.parametrize(("place", "digits"), [("ones", 2), ("tens", 2), ("some", 2), ("some", 3)])
def test_equal_digits_stand_where_they_are_wanted(place, digits):
    family = subtractions((digits, digits), "any", place)
    for upper, lower in family if digits == 2 else Chance(place).sample(family, 2000):
        left = f"{upper - lower:0{digits}}"
        zeros = {"ones": left[-1] == "0", "tens": left[-2] == "0", "some": "0" in left}
        assert zeros[place]
        assert difficulty("-", [upper, lower]).equal > 0
    if digits == 2:
        all_pairs = [(a, b) for a in range(10, 100) for b in range(10, a)]
        where = {"ones": slice(1, 2), "tens": slice(0, 1), "some": slice(0, 2)}[place]
        assert set(family) == {(a, b) for a, b in all_pairs if "0" in f"{a - b:02}"[where]}


def test_four_numbers_are_counted_without_being_made():
    """90 to the power of four; the ones alone can carry three."""
    family = additions((2, 2, 2, 2))
    assert len(family) == 90**4
    numbers = Chance(3).sample(family, 500)
    assert len(set(numbers)) == 500
    assert all(len(each) == 4 and all(10 <= one <= 99 for one in each) for each in numbers)
    ones = additions((2, 2, 2), "ones")
    three = [(a, b, c) for a in range(10, 100) for b in range(10, 100) for c in range(10, 100)]
    wanted = [each for each in three if sum(one % 10 for one in each) > 9 and sum(each) < 100]
    assert len(ones) == len(wanted)


def test_a_way_that_cannot_be_is_an_empty_family():
    assert len(additions((1, 1), "tens")) == 0
    assert len(subtractions((2, 2), "both")) == 0
    assert list(subtractions((2, 1), "tens")) == []


def test_items_come_by_their_index_from_either_end():
    family = additions((2, 1), "ones", 99)
    assert family[-1] == family[len(family) - 1]
    assert family[2:5] == [family[2], family[3], family[4]]
    for index in (len(family), -len(family) - 1):
        with pytest.raises(IndexError, match="There are 360 items"):
            family[index]


def test_joined_families_keep_their_order_and_labels():
    family = Joined([Labelled("a", [(1, 2)]), [], Labelled("b", [(3, 4), (5, 6)])])
    assert list(family) == [("a", 1, 2), ("b", 3, 4), ("b", 5, 6)]
    assert ("b", 5, 6) in family
    assert ("a", 5, 6) not in family
    assert len(Joined([])) == 0


def test_walks_are_those_of_brute_force():
    def moves(last):
        return [(digit, digit) for digit in range(10) if abs(digit - last) > 3]

    ways = Walks([moves] * 4, 5, lambda last: last % 2 == 0, tuple)
    wanted = [
        (a, b, c, d)
        for a in range(10) for b in range(10) for c in range(10) for d in range(0, 10, 2)
        if abs(a - 5) > 3 and abs(b - a) > 3 and abs(c - b) > 3 and abs(d - c) > 3
    ]  # fmt: skip
    assert list(ways) == wanted
