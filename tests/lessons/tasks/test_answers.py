from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.lessons.tasks.answers import FORMS, tidy
from manipulatives.words.clock_digits import in_digits, parse_time
from support.cases import cases

CASES = cases("answers")


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case['form']} {case['text']!r}")
def test_an_answer_is_made_tidy(case):
    assert tidy(case["form"], case["text"]) == case["tidy"]


def test_every_time_of_a_dial_is_known_however_it_is_typed():
    for reading in range(720):
        digits = in_digits(reading)
        for typed in (digits, digits.replace(":", "."), digits.replace(":", ""), f"0{digits}"[-5:]):
            assert tidy("time", typed) == digits


@given(st.text())
def test_what_is_tidied_as_a_time_is_a_time_of_a_dial(text):
    tidied = tidy("time", text)
    assert tidied is None or in_digits(parse_time(tidied)) == tidied


@given(st.sampled_from(FORMS), st.text(alphabet="0123456789:. -+", max_size=8))
def test_tidying_twice_changes_nothing_more(form, text):
    tidied = tidy(form, text)
    assert tidied is None or tidy(form, tidied) == tidied


@given(st.integers(min_value=0), st.integers(min_value=0, max_value=4))
def test_zeros_before_a_number_do_not_count(number, zeros):
    assert tidy("number", "0" * zeros + str(number)) == str(number)


def test_an_unknown_form_is_refused():
    with pytest.raises(ValueError, match='"time", "number" or "sum", not \'money\''):
        tidy("money", "1.50")
