"""Counting goes wrong just as the rules say; the examples were worked by hand from their words."""

from __future__ import annotations

import pytest

from manipulatives.lessons.strands.counting.mistakes import RULES
from manipulatives.lessons.strands.counting.mistakes.counts import (
    COUNTS,
    MISCOUNTS,
    STEPS,
    crosses,
)
from manipulatives.lessons.strands.counting.mistakes.odd_even import DECIDING, NEXT

BY = [sign * step for sign in (1, -1) for step in (1, 2, 3, 5, 10, 100)]
EVERY = [(at, by) for by in BY for at in range(0, 1001, 1) if 0 <= at + by <= 1000]


def rule(name):
    return next(one for one in RULES if one.id == name)


@pytest.mark.parametrize(
    ("name", "at", "by", "wrong"),
    [
        ("skipped_decade", 39, 1, 50),
        ("skipped_decade", 48, 2, 60),
        ("skipped_decade", 40, -1, 29),
        ("skipped_decade", 5, -10, None),
        ("skipped_decade", 31, 1, None),
        ("skipped_decade", 10, -1, None),
        ("stayed_in_decade", 39, 1, 30),
        ("stayed_in_decade", 28, 3, 21),
        ("stayed_in_decade", 40, -1, 49),
        ("stayed_in_decade", 99, 1, 90),
        ("stayed_in_decade", 35, 1, None),
        ("went_to_hundreds", 100, 1, 200),
        ("went_to_hundreds", 100, 10, 200),
        ("went_to_hundreds", 109, 1, 200),
        ("went_to_hundreds", 109, 10, None),
        ("went_to_hundreds", 100, 100, None),
        ("went_to_hundreds", 100, -1, None),
        ("counted_in_ones", 35, 5, 36),
        ("counted_in_ones", 35, -5, 34),
        ("counted_in_ones", 35, 1, None),
        ("counted_in_tens", 35, 5, 45),
        ("counted_in_tens", 340, 100, 350),
        ("counted_in_tens", 340, -100, 330),
        ("counted_in_tens", 34, 10, None),
        ("to_next_full", 34, 10, 40),
        ("to_next_full", 34, -10, 30),
        ("to_next_full", 340, 100, 400),
        ("to_next_full", 7, 5, 10),
        ("to_next_full", 40, 10, None),
        ("started_over", 45, 5, 5),
        ("started_over", 45, -5, None),
        ("started_over", 0, 5, None),
        ("said_the_start", 35, 1, 35),
        ("said_the_start", 35, 5, 39),
        ("said_the_start", 35, -10, 26),
        ("one_beyond", 35, 5, 41),
        ("one_beyond", 35, -10, 24),
        ("one_beyond", 1, -1, None),
        ("counted_other_way", 35, 5, 30),
        ("counted_other_way", 35, -10, 45),
        ("counted_other_way", 3, 5, None),
        ("ten_beside", 39, 1, 310),
        ("ten_beside", 109, 1, 1010),
        ("ten_beside", 9, 1, None),
        ("ten_beside", 39, -1, None),
    ],
)
def test_a_step_goes_wrong_as_the_rule_says(name, at, by, wrong):
    assert rule(name).wrong(at, by) == wrong


def test_no_rule_of_counting_gives_the_right_number_or_one_below_zero():
    for at, by in EVERY:
        for one in COUNTS:
            wrong = one.wrong(at, by)
            assert wrong is None or (wrong >= 0 and wrong != at + by), (one.id, at, by)


def test_decades_go_wrong_only_where_the_tens_digits_differ():
    for at, by in EVERY:
        tens = (str(at)[:-1], str(at + by)[:-1])
        assert crosses(at, by, 10) == (tens[0] != tens[1])
        for name in ("skipped_decade", "stayed_in_decade"):
            if rule(name).wrong(at, by) is not None:
                assert tens[0] != tens[1]
                assert abs(by) < 10


def test_in_every_hundred_ten_steps_of_one_pass_into_a_new_ten():
    """0 to 100 by ones: 9, 19, …, 99 are the last of their ten."""
    shown = [at for at in range(100) if rule("skipped_decade").wrong(at, 1) is not None]
    assert shown == [9, 19, 29, 39, 49, 59, 69, 79, 89, 99]


def test_one_step_alone_has_every_rule_but_that_of_starting_over():
    assert [one for one in COUNTS if one not in STEPS] == [rule("started_over")]


def test_a_miscount_is_one_off_and_never_nothing():
    for number in range(1, 21):
        wrong = [one.wrong(number) for one in MISCOUNTS]
        assert wrong == [number - 1 if number > 1 else None, number + 1]


@pytest.mark.parametrize(
    ("number", "by_first_digit", "mixed_up"),
    [(34, "odd", "odd"), (24, None, "odd"), (43, "even", "even"), (7, None, "even")],
)
def test_even_is_taken_for_odd_as_the_rule_says(number, by_first_digit, mixed_up):
    assert [one.wrong(number) for one in DECIDING] == [by_first_digit, mixed_up]


@pytest.mark.parametrize(
    ("number", "wanted", "wrong"),
    [
        (14, "even", [15, None, 12]),
        (13, "even", [None, 15, 12]),
        (14, "odd", [None, 16, 13]),
        (13, "odd", [14, None, 11]),
        (0, "even", [1, None, None]),
        (1, "odd", [2, None, None]),
    ],
)
def test_the_next_even_or_odd_number_goes_wrong_as_the_rule_says(number, wanted, wrong):
    assert [one.wrong(number, wanted) for one in NEXT] == wrong


@pytest.mark.parametrize("one", RULES, ids=lambda one: one.id)
def test_a_rule_speaks_kindly_to_the_pupil_and_modestly_to_the_teacher(one):
    for vocabulary in ("us", "uk"):
        words = one.for_pupil(vocabulary)
        assert len(words.split()) <= 10
        assert words.endswith((".", "?"))
        assert "wrong" not in words.lower()
    assert one.for_teacher.startswith("May have ")


def test_every_rule_has_a_name_of_its_own():
    assert len({one.id for one in RULES}) == len(RULES)
