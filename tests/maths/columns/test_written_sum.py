"""A written sum: what it may be, what is written to it, what is true of it, and its blocks."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.columns.blocks import blocks_of, worth_of
from manipulatives.maths.columns.facts import marks_needed, sum_facts
from manipulatives.maths.columns.written_sum import check_sum, new_sum, read_sum, written


@pytest.mark.parametrize(
    ("text", "sum_"),
    [
        ("47 + 38", ("+", [47, 38])),
        ("402-178", ("-", [402, 178])),
        ("402 \u2212 178", ("-", [402, 178])),
        ("  1+2+3 + 4 ", ("+", [1, 2, 3, 4])),
        ("007 + 1", ("+", [7, 1])),
    ],
)
def test_a_sum_is_read_from_a_line(text, sum_):
    assert read_sum(text) == sum_


@pytest.mark.parametrize(
    "text", ["", "47", "47 +", "47 + 38 - 1", "1 + 2 + 3 + 4 + 5", "12345 + 1", "a + b", 47, None]
)
def test_the_error_about_an_invalid_sum_says_how_to_write_one(text):
    with pytest.raises(ValueError, match=r'is no sum\. Write it like "47'):
        read_sum(text)


@pytest.mark.parametrize(
    ("operation", "numbers", "problem"),
    [
        ("*", [1, 2], 'An operation is "+" or "-"'),
        ("+", [1], "2 to 4 numbers"),
        ("-", [3, 2, 1], "has 2 numbers"),
        ("-", [47, 83], "83 cannot be taken away from 47 here: it is larger."),
        ("+", [10000, 1], "from 0 to 9999, not 10000"),
        ("+", [True, 1], "not True"),
        ("+", [1.0, 1], "not 1.0"),
        ("+", "12", "in a list"),
    ],
)
def test_numbers_that_cannot_be_worked_with_are_refused(operation, numbers, problem):
    with pytest.raises(ValueError, match=problem.replace("+", r"\+")):
        check_sum({"operation": operation, "numbers": numbers})


@pytest.mark.parametrize(
    "change",
    [
        {"answer": [1, 2]},
        {"answer": [10, None, None]},
        {"answer": [True, None, None]},
        {"marks": [[], []]},
        {"marks": [[], [None], []]},
        {"marks": [1, 2, 3]},
        {"parts": [1, None, None]},
        {"jumps": [5]},
        {"form": "rows"},
        {"colour": "red"},
        {"answer": "085"},
    ],
)
def test_what_has_no_place_on_the_sum_is_refused(change):
    with pytest.raises(ValueError, match=r"not|no field"):
        check_sum({"operation": "+", "numbers": [47, 38], **change})


def test_jumps_go_no_further_than_the_sum():
    line = {"operation": "-", "numbers": [83, 47], "form": "line"}
    assert check_sum({**line, "jumps": [40, 7]})["jumps"] == [40, 7]
    with pytest.raises(ValueError, match="make up 47 at most"):
        check_sum({**line, "jumps": [40, 8]})


def test_a_checked_sum_shares_nothing_with_what_was_given():
    given_ = check_sum({"operation": "+", "numbers": [47, 38]})
    fresh = check_sum(given_)
    fresh["answer"][0] = 5
    fresh["marks"][1].append(1)
    fresh["numbers"][0] = 1
    assert given_ == new_sum("+", [47, 38])
    before = new_sum("+", [47, 38])
    written(before, [["answer", 0, 5], ["marks", 1, 1]])
    assert before == new_sum("+", [47, 38])


def facts(answer, numbers=(47, 38), operation="+", **more):
    return sum_facts({"operation": operation, "numbers": list(numbers), "answer": answer, **more})


@pytest.mark.parametrize(
    ("answer", "says", "done"),
    [
        ([None, None, None], None, False),
        ([5, 8, None], 85, True),
        ([5, 8, 0], 85, True),
        ([5, None, None], 5, False),
        ([5, None, 1], None, False),
        ([None, 8, None], None, False),
        ([5, 7, None], 75, False),
    ],
)
def test_the_answer_is_what_its_digits_say(answer, says, done):
    known = facts(answer)
    assert (known["answer"], known["number"], known["done"]) == (says, says, done)


def test_each_place_is_right_by_itself():
    known = facts([5, 7, None])
    assert [known[f"{name}_right"] for name in ("ones", "tens", "hundreds")] == [True, False, None]
    assert (known["ones"], known["tens"], known["hundreds"], known["thousands"]) == (
        5,
        7,
        None,
        None,
    )


def test_marks_are_right_when_all_are_there_and_no_others():
    assert facts([5, 8, None], marks=[[], [1], []])["marks_right"]
    assert not facts([5, 8, None])["marks_right"]
    assert not facts([5, 8, None], marks=[[], [1], [1]])["marks_right"]
    assert facts([7, 8, None], (43, 44))["marks_right"]
    assert facts([4, 2, 2], (402, 178), "-", marks=[[12], [9], [3]])["marks_right"]
    assert facts([4, 2, 2], (402, 178), "-", marks=[[12], [10, 9], [3]])["marks_right"]
    assert not facts([4, 2, 2], (402, 178), "-", marks=[[12], [10], [3]])["marks_right"]


def test_with_parts_a_mark_says_what_it_is_worth():
    assert marks_needed(new_sum("-", [402, 178], "parts")) == [12, 90, 300]
    assert marks_needed(new_sum("+", [402, 178], "parts")) == [None] * 4


def test_what_is_written_wrong_has_its_blocks_too():
    sum_ = check_sum({"operation": "+", "numbers": [47, 38], "answer": [6, None, None]})
    assert blocks_of(sum_)["answer"] == [6, 0, 0]


def test_a_part_that_no_blocks_of_its_column_show_is_shown_by_its_digits():
    sum_ = new_sum("+", [47, 38], "parts")
    sum_["parts"] = [15, 7, None]
    assert blocks_of(sum_)["parts"] == [22, 0, 0]
    sum_["parts"] = [None, 75, 100000]
    assert blocks_of(sum_)["parts"] == [5, 7, 1000]


def test_nothing_is_left_in_front_of_an_answer_that_is_right():
    sum_ = check_sum({"operation": "-", "numbers": [83, 80], "answer": [3, None]})
    assert blocks_of(sum_) == {"left": [3, 0], "taken": [0, 8]}
    assert blocks_of(sum_, working=True) == {"left": [3, 8], "taken": [0, 0]}


@given(
    st.integers(0, 9999),
    st.integers(0, 9999),
    st.lists(st.none() | st.integers(0, 9), min_size=5, max_size=5),
    st.lists(st.none() | st.integers(0, 9), min_size=5, max_size=5),
)
def test_the_blocks_of_an_answer_are_worth_what_it_says(one, other, answer, marks):
    sum_ = new_sum("+", [one, other])
    width = len(sum_["answer"])
    sum_["answer"] = answer[:width]
    sum_["marks"] = [[] if mark is None else [mark] for mark in marks[:width]]
    known = sum_facts(sum_)
    rows = blocks_of(sum_)
    if known["answer"] is not None:
        assert worth_of({"answer": rows["answer"]}) == known["answer"]
    waiting = sum(
        10**place * (one // 10**place % 10 + other // 10**place % 10 + (marks[place] or 0))
        for place in range(width)
        if answer[place] is None
    )
    assert worth_of(rows) == waiting + worth_of({"answer": rows["answer"]})
