from __future__ import annotations

import random
import re

import pytest

from manipulatives.lessons.strands.subtraction.mistakes import (
    COMBINED,
    REPORTED_PAIRS,
    RULES,
    subtracted,
)
from manipulatives.maths.columns.faulty_subtraction import Procedure
from manipulatives.maths.columns.subtraction_faults import FAULTS

BY_ID = {rule.id: rule for rule in RULES}

# Most of these sums are printed in Brown & Burton 1978, VanLehn 1990 or Young & O'Shea 1981; the
# others were worked by hand from their descriptions. What counts is the answer: authors' names for
# one thing differ.
EXAMPLES = """
larger_minus_smaller: 63-29=46 143-28=125 253-118=145 326-117=211 542-389=247 81-38=57 703-245=542
larger_minus_smaller: 52-18=46
ten_for_nothing: 143-28=125 62-44=28 81-38=53 305-9=306
zero_turns_nine: 1300-522=878 103-45=158 602-437=265 802-396=506 306-187=219 305-9=396
zero_turns_nine_unless_ten: 803-508=395 802-395=507
zero_passed_over: 304-75=139 904-237=577 305-9=206
zero_gives_nothing: 404-187=227
zero_turns_ten: 1300-522=788 702-368=344 200-133=77 9002-733=8379 7094-799=6395
zero_when_too_small: 326-117=210 542-389=200 42-16=30
zero_shows_lower_digit: 140-21=121 40-21=21 908-395=693
zero_stays_zero: 140-21=120 40-21=20
minus_zero_is_zero: 403-208=105 57-20=30
equal_digits_stay: 83-43=43
front_place_gives: 733-216=427
next_place_grows: 863-134=749
equal_digits_passed_over: 923-427=406
one_turns_nine: 313-159=144
gap_gives_nothing: 347-9=348
keeps_taking: 662-357=205
one_turns_ten: 321-89=231
ends_with_lower_number: 439-4=5
lower_digit_repeated: 4369-22=2147
added_instead: 32-15=47
start_counted_back: 13-4=10
zero_shows_lower_digit zero_passed_over: 602-327=225
zero_stays_zero zero_passed_over: 804-456=308
zero_shows_lower_digit zero_gives_nothing: 703-678=175
zero_stays_zero zero_gives_nothing: 604-387=307
zero_shows_lower_digit lower_digit_gives: 702-368=454
zero_stays_zero lower_digit_gives: 508-489=109
"""
EXAMPLE = [
    (*rules.split(), *map(int, re.split("[-=]", text)))
    for rules, sums in (line.split(": ") for line in EXAMPLES.strip().splitlines())
    for text in sums.split()
]

PAIRS = [(top, bottom) for top in range(100, 1000) for bottom in range(100, top + 1)]

# How many of all 405,450 pairs of three-digit numbers come out wrong, counted by an independent
# program; as shares .6643, .4445, .0400, .1616, .1329, .1808 and .3535.
SHOWS = {
    "larger_minus_smaller": 269_325,
    "zero_when_too_small": 269_325,
    "ten_for_nothing": 269_325,
    "next_place_grows": 269_325,
    "front_place_gives": 180_225,
    "zero_turns_nine": 16_200,
    "zero_turns_ten": 16_200,
    "zero_passed_over": 16_200,
    "zero_gives_nothing": 16_200,
    "equal_digits_passed_over": 16_200,
    "zero_shows_lower_digit": 65_529,
    "printed_zero_shows_lower_digit": 53_865,
    "zero_stays_zero": 65_529,
    "minus_zero_is_zero": 73_305,
    "equal_digits_stay": 143_334,
}
RATES = {
    "larger_minus_smaller": ".6643",
    "zero_when_too_small": ".6643",
    "ten_for_nothing": ".6643",
    "next_place_grows": ".6643",
    "front_place_gives": ".4445",
    "zero_turns_nine": ".0400",
    "zero_turns_ten": ".0400",
    "zero_passed_over": ".0400",
    "zero_gives_nothing": ".0400",
    "equal_digits_passed_over": ".0400",
    "zero_shows_lower_digit": ".1616",
    "printed_zero_shows_lower_digit": ".1329",
    "zero_stays_zero": ".1616",
    "minus_zero_is_zero": ".1808",
    "equal_digits_stay": ".3535",
}
# Of these the written digits cannot be foreseen, for a column of ten has a zero under it: 36 pairs
# of hundreds, 45 of ones that need a ten.
UNFORESEEN = {"zero_turns_ten": 36 * 45}
THROUGH_A_ZERO = ("zero_turns_nine", "zero_turns_ten", "zero_passed_over", "zero_gives_nothing")
ON_ANY_BORROW = ("larger_minus_smaller", "zero_when_too_small", "ten_for_nothing")


def needs_ten(top, bottom):
    """Whether some column's upper digit is too small, by the numbers alone."""
    return any(top % worth < bottom % worth for worth in (10, 100))


@pytest.mark.parametrize("case", EXAMPLE, ids=lambda case: " ".join(map(str, case)))
def test_a_published_sum_comes_out_as_it_was_printed(case):
    *rules, top, bottom, answer = case
    assert subtracted(*rules)(top, bottom) == answer
    if len(rules) == 1:
        assert BY_ID[rules[0]].wrong(top, bottom) == answer


def test_every_rule_and_reported_pair_has_an_example():
    shown = {case[:-3] for case in EXAMPLE}
    # One is a variant that only counts are known of, the other is reported in pairs only.
    rest = {("printed_zero_shows_lower_digit",), ("lower_digit_gives",)}
    assert {(name,) for name in BY_ID} - shown == rest
    # Of the smaller from the larger with zeros that stay only the name is printed.
    assert set(REPORTED_PAIRS) - shown == {("larger_minus_smaller", "zero_stays_zero")}


def test_a_zero_in_a_leading_ten_is_gone_through_rightly():
    """Brown & Burton 1978 (from memory): 104 - 27 = 77 is right."""
    assert BY_ID["zero_turns_nine_unless_ten"].wrong(104, 27) is None
    assert BY_ID["zero_turns_nine"].wrong(104, 27) == 177


def test_without_faults_every_sum_comes_out_right():
    right = Procedure().answer
    assert all(right(top, bottom) == top - bottom for top in range(300) for bottom in range(top))
    source = random.Random(1)  # noqa: S311 - sums, not secrets
    for _ in range(5000):
        top = source.randrange(10**9)
        bottom = source.randrange(top + 1)
        assert right(top, bottom) == top - bottom


@pytest.fixture(scope="module")
def wrong_places():
    """For each rule all pairs that come out wrong, foreseen or not."""
    found = {}
    for name in SHOWS:
        answer = subtracted(name)
        found[name] = [
            (top, bottom) for top, bottom in PAIRS if answer(top, bottom) != top - bottom
        ]
    return found


def test_each_rule_shows_in_as_many_sums_as_were_counted(wrong_places):
    assert len(PAIRS) == 405_450
    assert {name: len(wrong) for name, wrong in wrong_places.items()} == SHOWS
    shares = {name: f"{len(wrong) / len(PAIRS):.4f}"[1:] for name, wrong in wrong_places.items()}
    assert shares == RATES


def test_sums_without_regrouping_tell_nothing_about_regrouping(wrong_places):
    """The smaller digit from the larger is wrong exactly where a ten is needed."""
    needed = {pair for pair in PAIRS if needs_ten(*pair)}
    for name in ON_ANY_BORROW:
        assert set(wrong_places[name]) == needed


def test_faults_at_a_zero_show_only_where_the_ones_need_a_ten_from_a_zero(wrong_places):
    through = {
        (top, bottom) for top, bottom in PAIRS if top // 10 % 10 == 0 and top % 10 < bottom % 10
    }
    assert len(through) == 16_200
    for name in THROUGH_A_ZERO:
        assert set(wrong_places[name]) == through


def test_a_column_of_ten_is_not_foreseen(wrong_places):
    wrong = BY_ID["zero_turns_ten"].wrong
    silent = [pair for pair in wrong_places["zero_turns_ten"] if wrong(*pair) is None]
    assert len(silent) == UNFORESEEN["zero_turns_ten"]
    assert all(bottom // 10 % 10 == 0 for _, bottom in silent)


def test_a_zero_is_gone_through_in_3645_sums_of_three_less_two_digits():
    pairs = [(top, bottom) for top in range(100, 1000) for bottom in range(10, 100)]
    assert len(pairs) == 81_000
    for name in THROUGH_A_ZERO:
        answer = subtracted(name)
        assert sum(answer(top, bottom) != top - bottom for top, bottom in pairs) == 3_645, name


def test_two_rules_agree_on_a_two_digit_number_exactly_where_the_ones_are_five_apart():
    """The classic 143 - 28 = 125 is one of them: 8 - 3 = 5."""
    first, second = BY_ID["larger_minus_smaller"].wrong, BY_ID["ten_for_nothing"].wrong
    items = [
        (top, bottom)
        for top in range(10, 100)
        for bottom in range(1, top)
        if top % 10 < bottom % 10
    ]
    # Each of 2,025 sums once: all tops with all lower ones that need a ten from the tens.
    assert len(items) == 45 * 45
    agree = [pair for pair in items if first(*pair) == second(*pair)]
    assert agree == [pair for pair in items if pair[1] % 10 - pair[0] % 10 == 5]
    assert len(agree) == 225
    both = [pair for pair in items if pair[1] >= 10]
    assert (len(both), len([pair for pair in agree if pair[1] >= 10])) == (1620, 180)
    assert first(143, 28) == second(143, 28) == 125


def test_no_rule_gives_the_right_answer_and_all_of_them_show_somewhere():
    source = random.Random(7)  # noqa: S311 - sums, not secrets
    shown = set()
    for _ in range(4000):
        top = source.choice([source.randrange(1, 100), source.randrange(1, 1000)])
        bottom = source.choice([source.randrange(top), source.randrange(min(top, 10))])
        for rule in RULES:
            wrong = rule.wrong(top, bottom)
            assert wrong is None or (wrong >= 0 and wrong != top - bottom), (rule.id, top, bottom)
            if wrong is not None:
                shown.add(rule.id)
    assert shown == set(BY_ID)


def test_there_are_rules_enough_and_each_has_its_own_fault():
    assert len(RULES) == len(BY_ID) >= 20
    assert set(BY_ID) == set(FAULTS)
    assert set(COMBINED) == set(BY_ID) - {"added_instead", "start_counted_back"}


def test_of_two_faults_in_one_column_the_more_particular_is_done_in_either_order():
    """80 - 37: no ten is taken, and the zero itself stays zero."""
    assert subtracted("larger_minus_smaller", "zero_stays_zero")(80, 37) == 50
    assert subtracted("zero_stays_zero", "larger_minus_smaller")(80, 37) == 50
    assert subtracted("larger_minus_smaller")(80, 37) == 57


@pytest.mark.parametrize("vocabulary", ["us", "uk"])
def test_what_is_said_to_pupils_is_at_most_ten_words(vocabulary):
    for rule in RULES:
        assert 0 < len(rule.for_pupil(vocabulary).split()) <= 10
        assert rule.for_teacher.startswith("May have ")
        term = {"us": "xchange", "uk": "egroup"}[vocabulary]
        assert term not in rule.for_pupil(vocabulary)


@pytest.mark.parametrize("pair", [(3, 5), (-1, 0), (5, -1), (True, 0), (5.0, 1), (10**9, 1)])
def test_what_cannot_be_subtracted_is_refused(pair):
    with pytest.raises(ValueError, match="subtraction here"):
        RULES[0].wrong(*pair)
