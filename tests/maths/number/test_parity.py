"""Even and odd numbers, by their last digit as text."""

from __future__ import annotations

from manipulatives.maths.number.parity import next_of, parity

ODD_ENDS = tuple("13579")


def test_even_numbers_are_those_that_end_in_an_even_digit():
    for number in range(1001):
        assert parity(number) == ("odd" if str(number).endswith(ODD_ENDS) else "even")
        for wanted, ends in (("odd", ODD_ENDS), ("even", tuple("02468"))):
            coming = next(n for n in range(number + 1, number + 3) if str(n).endswith(ends))
            assert next_of(number, wanted) == coming
