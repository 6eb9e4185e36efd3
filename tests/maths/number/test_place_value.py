from __future__ import annotations

from collections import Counter
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words
from sympy import ZZ, ring
from sympy.polys.ring_series import rs_mul

from manipulatives.maths.number.place_names import counted
from manipulatives.maths.number.place_value import (
    LARGEST,
    PLACES,
    check_blocks,
    check_place,
    expanded_form,
    fewest,
    is_canonical,
    number_of,
    partitioned,
    parts_of,
    pieces_of,
    representations,
    ways,
)
from manipulatives.maths.number.words import number_in_words
from support.blocks import blocks
from support.cases import cases

CASES = cases("blocks")
NUMBERS = st.integers(0, LARGEST)


def digit_sum(number):
    return sum(map(int, str(number)))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["about"])
def test_blocks_are_parted_and_counted_as_in_the_cases(case):
    for given_blocks, parts in zip(case["mat"], case["parts"], strict=True):
        assert partitioned(given_blocks) == parts["short"]
        assert partitioned(given_blocks, zeros=True) == parts["zeros"]
        assert counted(given_blocks) == parts["counted"]


def test_the_fewest_pieces_of_every_number_are_its_digits():
    for number in range(LARGEST + 1):
        shown = fewest(number)
        assert "".join(str(shown[place]) for place in PLACES) == f"{number:04}"
        assert number_of(shown) == number
        # As many as the digit sum: each trade saves nine, and the ones alone are as many as n.
        assert pieces_of(shown) == digit_sum(number)


@given(blocks())
def test_no_blocks_show_a_number_with_fewer_pieces_than_its_digits(some):
    number = number_of(some)
    assert pieces_of(some) >= pieces_of(fewest(number))
    assert is_canonical(some) == (some == fewest(number))
    # Casting out nines: pieces and number leave the same remainder.
    assert pieces_of(some) % 9 == number % 9


@pytest.mark.parametrize("number", [0, 9, 10, 35, 99, 100, 120, 345, 1000])
def test_the_representations_are_all_that_there_are(number):
    found = [tuple(shown[place] for place in PLACES) for shown in representations(number)]
    brute = [
        (thousands, hundreds, tens, ones)
        for thousands, hundreds, tens in product(
            range(number // 1000 + 1), range(number // 100 + 1), range(number // 10 + 1)
        )
        if (ones := number - 1000 * thousands - 100 * hundreds - 10 * tens) >= 0
    ]
    assert sorted(found) == sorted(brute)
    assert len(set(found)) == len(found)
    assert found[0] == tuple(fewest(number).values())
    assert found[-1] == (0, 0, 0, number)


@pytest.mark.parametrize("places", [1, 2, 3, 4])
def test_the_number_of_ways_is_the_coefficient_of_the_generating_function(places):
    """Polynomials of sympy: the geometric series of 1/((1-x)(1-x^10)(1-x^100)(1-x^1000))."""
    degree = 1200
    polynomials, x = ring("x", ZZ)
    product_of_series = polynomials(1)
    for power in range(places):
        series = polynomials({(exponent,): 1 for exponent in range(0, degree + 1, 10**power)})
        product_of_series = rs_mul(product_of_series, series, x, degree + 1)
    coefficients = [int(product_of_series[(exponent,)]) for exponent in range(degree + 1)]
    assert [ways(number, places) for number in range(degree + 1)] == coefficients


def test_small_numbers_have_as_many_ways_as_are_published():
    """The first coefficients of 1/((1-x)(1-x^10)(1-x^100)): 1 ten times, 2, 3, …; 12 at 100."""
    assert [ways(number, 3) for number in range(10)] == [1] * 10
    assert [ways(number, 3) for number in range(10, 20)] == [2] * 10
    assert [ways(number, 3) for number in range(20, 30)] == [3] * 10
    assert ways(100, 3) == ways(100) == 12


@pytest.mark.parametrize("number", [9, 10, 101, 999, 1000, 2345, 9999])
@pytest.mark.parametrize("places", [1, 2, 3, 4])
def test_there_are_as_many_representations_as_ways(number, places):
    assert sum(1 for _ in representations(number, places)) == ways(number, places)


@pytest.mark.parametrize("places", [1, 2, 3, 4])
def test_fewer_places_leave_all_the_rest_in_the_largest_of_them(places):
    for number in range(0, LARGEST + 1, 37):
        shown = fewest(number, places)
        assert number_of(shown) == number
        assert all(shown[place] == 0 for place in PLACES[: 4 - places])
        assert all(shown[place] < 10 for place in PLACES[5 - places :])


def test_the_digit_sums_to_999_are_the_pieces_that_show_them():
    """The sum of digit sums is 900 for 0 to 99 and 13500 for 0 to 999 (45 times places · 10^…)."""
    assert sum(pieces_of(fewest(number)) for number in range(100)) == 900
    assert sum(pieces_of(fewest(number)) for number in range(1000)) == 13500


def test_expanded_form_leaves_zeros_out_or_writes_them():
    # Common Core State Standards, 2.NBT.A.3, and the digits of 706 in 2.NBT.A.1.
    assert expanded_form(706) == "700 + 6"
    assert expanded_form(706, zeros=True) == "700 + 0 + 6"
    assert expanded_form(18) == "10 + 8"  # K.NBT.A.1 writes this equation
    assert expanded_form(0) == expanded_form(0, zeros=True) == "0"
    assert expanded_form(9000) == "9000"
    assert expanded_form(9000, zeros=True) == "9000 + 0 + 0 + 0"


@given(NUMBERS)
def test_expanded_form_has_one_part_for_each_digit_that_is_not_zero(number):
    parts = [int(part) for part in expanded_form(number).split(" + ")]
    assert sum(parts) == number
    assert sorted(parts, reverse=True) == parts
    digits = Counter(str(number).replace("0", ""))
    assert Counter(str(part)[0] for part in parts if part) == digits
    full = expanded_form(number, zeros=True).split(" + ")
    assert len(full) == len(str(number))
    assert sum(map(int, full)) == number


@given(blocks())
def test_the_parts_of_any_blocks_make_their_number(some):
    for zeros in (False, True):
        assert sum(parts_of(some, zeros=zeros)) == number_of(some)
    assert 0 not in parts_of(some) or parts_of(some) == [0]


@given(blocks())
def test_blocks_are_named_in_the_singular_only_where_there_is_one(some):
    said = counted(some)
    for place in PLACES:
        count = some[place]
        named = f"{count} {place if count != 1 else place[:-1]}"
        assert (named in said.split(", ")) == (count > 0)


def test_numbers_are_said_with_and_without_and():
    # Common practice: "and" before the tens in British English alone.
    assert number_in_words(105) == "one hundred five"
    assert number_in_words(105, "uk") == "one hundred and five"


@pytest.mark.parametrize(("vocabulary", "language"), [("us", "en"), ("uk", "en_GB")])
def test_all_numbers_on_a_mat_are_said_as_another_library_says_them(vocabulary, language):
    """num2words writes "and" in both and a comma behind thousands."""
    for number in range(LARGEST + 1):
        said = num2words(number, lang=language).replace(",", "")
        if vocabulary == "us":
            said = said.replace(" and ", " ")
        assert number_in_words(number, vocabulary) == said, number


@pytest.mark.parametrize(
    "wrong",
    [
        None,
        345,
        [3, 4, 5],
        {"ones": -1},
        {"ones": 1.0},
        {"ones": True},
        {"ones": "5"},
        {"ones": 10_000},
        {"thousands": 9, "ones": 1000},
        {"one": 5},
        {"tens": 1, 7: 2},
    ],
)
@pytest.mark.parametrize("use", [check_blocks, number_of, pieces_of, is_canonical, counted])
def test_what_is_no_blocks_is_refused(use, wrong):
    with pytest.raises(ValueError, match="Blocks are counts such as") as refused:
        use(wrong)
    assert str(refused.value).endswith(f"not {wrong!r}.")


def test_checked_blocks_are_a_full_copy():
    some = {"ones": 5, "tens": 2}
    checked = check_blocks(some)
    assert checked == {"thousands": 0, "hundreds": 0, "tens": 2, "ones": 5}
    assert list(checked) == list(PLACES)
    assert some == {"ones": 5, "tens": 2}


@pytest.mark.parametrize("wrong", [-1, 10_000, 3.0, "35", None, True])
@pytest.mark.parametrize("use", [fewest, expanded_form, ways])
def test_a_number_that_blocks_cannot_show_is_refused(use, wrong):
    with pytest.raises(ValueError, match="a whole number from 0 to 9999, not"):
        use(wrong)


@pytest.mark.parametrize("wrong", [0, 5, "tens", None, True])
@pytest.mark.parametrize("use", [fewest, ways])
def test_places_that_there_are_not_are_refused(use, wrong):
    with pytest.raises(ValueError, match="There are 1 to 4 places"):
        use(35, wrong)


@pytest.mark.parametrize("wrong", ["ten", "", None, 3])
def test_a_place_is_called_by_its_name(wrong):
    with pytest.raises(ValueError, match="A place is 'thousands', 'hundreds', 'tens', 'ones', not"):
        check_place(wrong)
