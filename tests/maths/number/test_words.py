from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words

from manipulatives.maths.number.words import BELOW, number_in_words


@given(st.integers(0, BELOW - 1) | st.integers(0, 1200))
def test_numbers_are_said_as_a_general_library_says_them(number):
    known = num2words(number, lang="en_GB").replace(",", "")
    assert number_in_words(number, "uk") == known
    assert number_in_words(number) == re.sub(" and ", " ", known)


@pytest.mark.parametrize("number", [-1, BELOW, 2.0, "2", None, True])
def test_what_is_no_number_in_words_is_refused(number):
    with pytest.raises(ValueError, match="A number in words is whole, from 0 to 999999, not "):
        number_in_words(number)


def test_numbers_are_said_in_a_vocabulary_of_the_kit():
    with pytest.raises(ValueError, match='The vocabulary is "us" or "uk"'):
        number_in_words(5, "en")
