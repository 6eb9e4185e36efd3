from __future__ import annotations

import pytest

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.predicates import DEEPEST, check_predicate, holds, spell_out
from support.cases import cases

CASES = cases("predicates")


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["why"])
def test_a_predicate_holds_or_not(case):
    check_predicate(case["predicate"])
    assert holds(case["predicate"], case["facts"]) is case["holds"]


@pytest.mark.parametrize(
    "broken",
    [
        None,
        "and",
        [],
        {},
        ["="],
        ["=", "minutes"],
        ["=", "minutes", 1, 2],
        ["=", 3, 3],
        ["=", "minutes", 1.5],
        ["=", "minutes", [1]],
        ["=", "minutes", 2**53],
        ["<", "minutes", "1"],
        ["<", "minutes", True],
        ["in", "minutes", 1],
        ["in", "minutes", "12"],
        ["in", "minutes", [[1]]],
        ["not"],
        ["not", ["and"], ["and"]],
        ["~", "minutes", 1],
        ["xor", ["and"], ["and"]],
    ],
)
def test_a_broken_predicate_is_refused_with_what_is_allowed(broken):
    with pytest.raises(LessonProblem, match='is no predicate; write \\["=", fact, value\\]'):
        check_predicate(broken)


def test_the_message_says_which_part_is_broken():
    with pytest.raises(LessonProblem, match=r"^part 2.1 of the predicate: 'am' is no predicate"):
        check_predicate(["and", ["=", "minutes", 1], ["not", "am"]])


def test_a_predicate_is_not_nested_without_end():
    nested = ["and"]
    for _ in range(DEEPEST - 1):
        nested = ["not", nested]
    check_predicate(nested)
    for _ in range(5000):
        nested = ["not", nested]
    with pytest.raises(LessonProblem, match="nested more than 20 deep"):
        check_predicate(nested)


@pytest.mark.parametrize(
    ("predicate", "text"),
    [
        (["and", ["=", "minutes", 275], ["=", "half", "am"]], "minutes = 275 and half = am"),
        (["not", ["or", ["<", "lag", -7], [">", "lag", 7]]], "not (lag < -7 or lag > 7)"),
        (
            ["or", ["and", ["=", "a", 1], ["=", "b", 2]], ["=", "c", 3]],
            "(a = 1 and b = 2) or c = 3",
        ),
        (["in", "minutes", [5, None]], "minutes in 5, none"),
        (["!=", "closed", True], "closed != true"),
        (["and"], "always"),
        (["or"], "never"),
    ],
)
def test_a_predicate_is_spelt_out_for_people(predicate, text):
    assert spell_out(predicate) == text
