from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.number.mats import check_mat, compared, mat_equation, mat_facts
from manipulatives.maths.number.place_value import PLACES, fewest
from support.cases import cases

CASES = cases("blocks")
NUMBERS = st.integers(0, 9999)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["about"])
def test_the_facts_of_a_mat_are_those_of_the_cases(case):
    assert mat_facts(case["mat"]) == case["facts"]


@given(NUMBERS, NUMBERS)
def test_two_mats_are_compared_and_added_as_their_numbers_are(one, other):
    facts = mat_facts([fewest(one), fewest(other)])
    assert (facts["number"], facts["second_number"]) == (one, other)
    assert facts["sum"] == one + other
    assert {"<": one < other, "=": one == other, ">": one > other}[facts["compare"]]


@given(NUMBERS)
def test_one_mat_has_no_facts_of_a_second(number):
    facts = mat_facts([fewest(number)])
    assert set(facts) == {"number", "pieces", "canonical", *PLACES}


def test_canonical_is_true_or_false_and_no_number():
    assert mat_facts([{"ones": 10}])["canonical"] is False
    assert mat_facts([{"ones": 9}])["canonical"] is True


@pytest.mark.parametrize("one", [0, 9, 10, 345])
def test_numbers_are_compared_with_the_open_side_to_the_larger(one):
    assert compared(one, one + 1) == "<"
    assert compared(one + 1, one) == ">"
    assert compared(one, one) == "="


@pytest.mark.parametrize("wrong", [None, {}, {"ones": 5}, [], [{}, {}, {}], "35"])
@pytest.mark.parametrize("use", [check_mat, mat_facts, lambda mat: mat_equation(mat, [{}])])
def test_what_is_no_mat_is_refused(use, wrong):
    with pytest.raises(ValueError, match="A mat is a list of one or two blocks, not"):
        use(wrong)


def test_a_checked_mat_is_a_copy_down_to_its_blocks():
    mat = [{"ones": 5}]
    checked = check_mat(mat)
    checked[0]["ones"] = 6
    assert mat == [{"ones": 5}]
