from __future__ import annotations

import re

import pytest

from manipulatives.lessons.strands.stories.mistakes import MISSING_NUMBERS, RULES, STORY_NUMBERS

BY_ID = {rule.id: rule for rule in RULES}


@pytest.mark.parametrize(
    ("rule", "shown", "right", "wrong"),
    [
        ("story_added", (8, 13), 5, 21),
        ("story_added", (8, 5), 13, None),
        ("story_took", (8, 5), 13, 3),
        ("story_took", (5, 8), 13, 3),
        ("story_took", (13, 5), 8, None),
        ("story_followed_more", (13, 5), 8, 18),
        ("story_followed_fewer", (8, 5), 13, 3),
        ("story_first_number", (13, 5), 8, 13),
        ("story_last_number", (13, 5), 8, 5),
        ("story_last_number", (16, 8), 8, None),
        ("story_one_less", (8, 5), 13, 12),
        ("story_one_less", (8, 8), 0, None),
        ("story_one_more", (8, 5), 13, 14),
        ("missing_added", (7, 15), 8, 22),
        ("missing_took", (7, 8), 15, 1),
        ("missing_first_number", (7, 15), 8, 7),
        ("missing_last_number", (7, 15), 8, 15),
        ("missing_one_more", (7, 15), 8, 9),
        ("missing_one_less", (7, 15), 8, 7),
    ],
)
def test_what_a_rule_makes_of_two_numbers(rule, shown, right, wrong):
    """7 + ? = 15 answered 22 or 15: both numbers added, or the last one written once more."""
    assert BY_ID[rule].wrong(*shown, right) == wrong


def test_no_rule_leads_to_the_right_answer():
    rules = [rule for rule in RULES if not rule.id.startswith("parts_")]
    for first in range(12):
        for second in range(12):
            for right in {first + second, abs(first - second)}:
                for rule in rules:
                    assert rule.wrong(first, second, right) != right


def test_two_parts_may_be_short_over_or_in_one():
    assert [BY_ID[f"parts_{name}"].wrong(9) for name in ("short", "over", "in_one")] == [8, 10, 9]


def test_every_rule_has_a_name_of_its_own_and_modest_words():
    assert len(BY_ID) == len(RULES)
    assert len({*STORY_NUMBERS, *MISSING_NUMBERS}) == 10
    for rule in RULES:
        assert rule.for_teacher.startswith("May have ")
        for sentence in re.split(r"(?<=[.?]) ", rule.for_pupil()):
            assert len(sentence.split()) <= 10
