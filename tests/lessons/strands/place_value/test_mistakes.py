"""Numbers are misread just as the rules say; the examples were worked by hand from their words."""

from __future__ import annotations

from itertools import permutations

import pytest

from manipulatives.lessons.strands.place_value.mistakes import RULES
from manipulatives.lessons.strands.place_value.mistakes.comparing import COMPARING, ORDERING
from manipulatives.lessons.strands.place_value.mistakes.rules import (
    BUILDING,
    DECOMPOSING,
    EXPANDING,
    FROM_PARTS,
    READING,
    VALUE,
    WORDS,
)

ON_NUMBERS = dict.fromkeys([*READING, *WORDS, *BUILDING, *FROM_PARTS])


def rule(name):
    return next(one for one in RULES if one.id == name)


@pytest.mark.parametrize(
    ("name", "number", "wrong"),
    [
        ("digits_added", 345, 12),
        ("digits_added", 300, 3),
        ("digits_added", 7, None),
        ("parts_beside", 345, 300405),
        ("parts_beside", 305, 3005),
        ("parts_beside", 45, 405),
        ("parts_beside", 14, 104),
        ("parts_beside", 300, None),
        ("said_literally", 345, 30045),
        ("said_literally", 305, 3005),
        ("said_literally", 45, None),
        ("zero_left_out", 305, 35),
        ("zero_left_out", 340, 34),
        ("zero_left_out", 300, 3),
        ("zero_left_out", 345, None),
        ("teen_reversed", 14, 41),
        ("teen_reversed", 317, 371),
        ("teen_reversed", 12, None),
        ("teen_reversed", 24, None),
        ("tens_ones_swapped", 24, 42),
        ("tens_ones_swapped", 345, 354),
        ("tens_ones_swapped", 305, 350),
        ("tens_ones_swapped", 12, 21),
        ("tens_ones_swapped", 14, None),
        ("tens_ones_swapped", 33, None),
        ("tens_ones_swapped", 7, None),
        ("from_the_right", 345, 543),
        ("from_the_right", 343, None),
        ("from_the_right", 340, None),
        ("from_the_right", 45, None),
        ("teen_for_ty", 14, 40),
        ("teen_for_ty", 40, 14),
        ("teen_for_ty", 316, 360),
        ("teen_for_ty", 12, None),
        ("teen_for_ty", 20, None),
        ("whole_teen", 14, 14),
        ("ten_counted_too", 14, 5),
    ],
)
def test_a_number_is_misread_as_the_rule_says(name, number, wrong):
    assert rule(name).wrong(number) == wrong


def test_no_rule_gives_the_right_number():
    for number in range(1, 1001):
        for one in ON_NUMBERS:
            assert one.wrong(number) != number, (one.id, number)


def test_digits_are_lost_swapped_or_added_as_text_says():
    for number in range(1, 1000):
        digits = str(number)
        without = digits.replace("0", "")
        assert rule("zero_left_out").wrong(number) == (int(without) if without != digits else None)
        added = sum(map(int, digits))
        assert rule("digits_added").wrong(number) == (added if len(digits) > 1 else None)
        swapped = int(digits[:-2] + digits[-1] + digits[-2]) if len(digits) > 1 else number
        wrong = [rule(name).wrong(number) for name in ("teen_reversed", "tens_ones_swapped")]
        assert [one for one in wrong if one is not None] == [swapped] * (swapped != number)


def test_teens_and_tens_are_taken_for_each_other_both_ways():
    seven = [(teen, (teen - 10) * 10) for teen in range(13, 20)]
    for teen, tens in seven:
        assert rule("teen_for_ty").wrong(teen) == tens
        assert rule("teen_for_ty").wrong(tens) == teen
    shown = [number for number in range(100) if rule("teen_for_ty").wrong(number) is not None]
    assert shown == sorted(number for pair in seven for number in pair)


@pytest.mark.parametrize(
    ("counts", "wrong"),
    [((0, 2, 15), 215), ((2, 14, 5), 2145), ((2, 10, 0), 2100), ((3, 4, 5), None)],
)
def test_counts_above_nine_are_written_as_they_are(counts, wrong):
    blocks = dict(zip(("thousands", "hundreds", "tens", "ones"), (0, *counts), strict=True))
    assert rule("counts_beside").wrong(blocks) == wrong


@pytest.mark.parametrize(
    ("number", "forms"),
    [
        (345, ["3 + 4 + 5", None, None, "300405"]),
        (305, ["3 + 5", "300 + 0 + 5", "30 + 5", "3005"]),
        (340, ["3 + 4", "300 + 40 + 0", "30 + 4", "30040"]),
        (45, ["4 + 5", None, None, "405"]),
    ],
)
def test_the_expanded_form_goes_wrong_as_the_rules_say(number, forms):
    assert [one.wrong(number) for one in EXPANDING] == forms


def test_parts_are_taken_as_they_come():
    for order in permutations([300, 40, 5]):
        come = int("".join(str(part)[0] for part in order))
        assert rule("as_they_come").wrong(order) == (None if come == 345 else come)


@pytest.mark.parametrize(
    ("number", "place", "worths"),
    [
        (345, 0, [None, None, 50, None]),
        (345, 1, [4, 45, 400, None]),
        (345, 2, [3, 345, 3000, 30]),
        (340, 1, [4, None, 400, None]),
    ],
)
def test_the_worth_of_a_digit_goes_wrong_as_the_rules_say(number, place, worths):
    assert [one.wrong(number, place) for one in VALUE] == worths


@pytest.mark.parametrize(
    ("one", "other", "signs"),
    [
        (341, 287, ["<", None, "<", "<"]),
        (345, 287, ["<", None, "<", "<"]),
        (98, 105, [">", ">", ">", ">"]),
        (345, 354, [">", "=", "=", ">"]),
        (35, 35, [None, None, None, None]),
        (50, 23, ["<", None, "=", "<"]),
    ],
)
def test_a_sign_goes_wrong_as_the_rules_say(one, other, signs):
    # Of 341 and 287 the sums are 8 and 17; of 345 and 287 they are 12 and 17.
    assert [each.wrong(one, other) for each in COMPARING] == signs


def test_comparing_the_other_way_round_goes_wrong_the_other_way_round():
    turned = {"<": ">", ">": "<", "=": "=", None: None}
    for one in range(1, 400, 7):
        for other in range(1, 400, 11):
            for each in COMPARING:
                assert each.wrong(other, one) == turned[each.wrong(one, other)]


@pytest.mark.parametrize(
    ("row", "wanted", "picked"),
    [
        ([345, 354, 271], "greatest", [345, None, None, 271]),
        ([98, 345, 271], "greatest", [98, 98, 98, 98]),
        ([340, 289, 210], "smallest", [None, None, None, 340]),
        ([431, 289, 218], "smallest", [431, None, 431, 431]),
    ],
)
def test_the_number_at_the_end_goes_wrong_as_the_rules_say(row, wanted, picked):
    """Where two numbers are alike by the rule, nobody knows which is taken: it does not show."""
    assert [each.wrong(row, wanted) for each in ORDERING] == picked


def test_taking_a_teen_apart_goes_wrong_by_all_of_it_or_by_one():
    for number in range(11, 20):
        assert [each.wrong(number) for each in DECOMPOSING] == [number, number - 9]


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
