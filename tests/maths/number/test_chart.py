from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.number.chart import (
    Chart,
    chart_facts,
    check_marks,
    marks_left,
    next_number,
    no_marks,
    tap,
    write,
)
from manipulatives.words.chart_hints import can_be_read, cell_hint, count_hint, neighbours
from support.cases import cases

CASES = cases("chart")


def marks(**given_):
    return {**no_marks(), **given_}


@pytest.mark.parametrize("case", CASES["facts"], ids=lambda case: case["about"])
def test_the_facts_are_those_of_the_cases(case):
    chart = Chart(**case["settings"])
    facts = chart_facts(check_marks(case["marks"], chart), chart)
    assert {name: facts[name] for name in case["facts"]} == case["facts"]


@pytest.mark.parametrize("case", CASES["hints"], ids=lambda case: case["hint"])
def test_a_hint_is_that_of_the_cases(case):
    chart = Chart(**case["settings"])
    done = check_marks(case["marks"], chart)
    number = case["number"]
    hint = count_hint(done, chart) if number is None else cell_hint(number, done, chart)
    assert hint == case["hint"]


@pytest.mark.parametrize("step", [1, 2, 5, 7, 10, 100])
@pytest.mark.parametrize("direction", ["forward", "back"])
def test_tapping_the_next_number_leads_to_the_end(step, direction):
    chart = Chart(step=step, direction=direction)
    done = no_marks()
    for number in chart.numbers:
        assert not chart_facts(done, chart)["finished"]
        assert next_number(done, chart) == number
        done = tap(done, number, chart)
    assert chart_facts(done, chart)["finished"]
    assert next_number(done, chart) is None
    assert done["counted"] == chart.numbers


def test_the_last_number_is_taken_back_and_another_is_only_noted():
    chart = Chart(step=5)
    done = marks(counted=[5, 10])
    assert tap(done, 10, chart) == marks(counted=[5])
    assert tap(done, 5, chart) == marks(counted=[5, 10], tapped=5)
    missed = tap(done, 11, chart)
    assert missed == marks(counted=[5, 10], tapped=11)
    assert tap(missed, 15, chart) == marks(counted=[5, 10, 15])
    assert done == marks(counted=[5, 10]), "nothing is changed in place"


def test_a_count_out_of_step_is_not_finished():
    chart = Chart(1, 20, step=5)
    facts = chart_facts(marks(counted=[5, 11, 15, 20]), chart)
    assert facts["in_step"] is False
    assert facts["finished"] is False


@given(st.data())
def test_of_all_blanks_each_is_right_wrong_or_blank(data):
    chart = Chart(
        1, 30, hidden=data.draw(st.sampled_from(["thirds", "cross", "all"])), mode="write"
    )
    done = no_marks()
    expected = {"right": 0, "wrong": 0, "blank": 0}
    for number in chart.blanks:
        kind = data.draw(st.sampled_from(list(expected)))
        expected[kind] += 1
        digits = {"right": str(number), "wrong": str(number + 1), "blank": ""}[kind]
        done = write(done, number, digits)
    facts = chart_facts(done, chart)
    assert {name: facts[name] for name in expected} == expected
    assert facts["finished"] is (expected["right"] == len(chart.blanks))


def test_a_number_with_a_zero_before_it_is_not_right():
    chart = Chart(hidden=[7], mode="write")
    assert chart_facts(write(no_marks(), 7, "07"), chart)["wrong"] == 1


def test_neighbours_go_on_across_the_end_of_a_row():
    assert neighbours(45, Chart()) == [44, 46, 35, 55]
    assert neighbours(40, Chart()) == [39, 41, 30, 50]
    assert neighbours(100, Chart()) == [99, 90]


NUMBERS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
}  # fmt: skip


@given(st.integers(2, 12), st.sets(st.integers(1, 60), max_size=60), st.integers(1, 60))
def test_a_hint_leads_to_the_number_from_one_that_can_be_read(width, hidden, number):
    chart = Chart(1, 60, width=width, hidden=sorted(hidden), mode="write")
    hint = cell_hint(number, no_marks(), chart)
    words = hint.rstrip(".").split()
    assert len(words) <= 10
    if words[0] == "The":
        assert set(chart.blanks) | {number} == set(range(1, 61))
        return
    shown = int(words[-1])
    assert can_be_read(shown, no_marks(), chart)
    assert shown != number
    if words[0] == "Count":
        assert (shown < number) is (words[1] == "on")
        return
    gap = NUMBERS[words[0].lower()]
    assert number == (shown + gap if words[1] == "more" else shown - gap)


def test_a_covered_number_can_be_read_once_it_was_counted():
    chart = Chart(hidden="thirds")
    assert not can_be_read(3, no_marks(), chart)
    assert can_be_read(3, marks(counted=[1, 2, 3]), chart)


def test_what_was_written_rightly_helps_its_neighbours():
    chart = Chart(hidden=[34, 35, 36, 25, 45], mode="write")
    assert cell_hint(35, no_marks(), chart) == "Count on from 33."
    assert cell_hint(35, write(no_marks(), 34, "34"), chart) == "One more than 34."
    assert cell_hint(35, write(no_marks(), 34, "43"), chart) == "Count on from 33."


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (None, "What was done to a chart is a dict"),
        ({"count": [5]}, "has no field 'count'"),
        ({"counted": 5}, "Counted is a list of numbers, not 5."),
        ({"counted": [0]}, "The chart goes from 1 to 100, not 0."),
        ({"counted": [True]}, "not True"),
        ({"counted": [5, 5]}, "Each number is counted once."),
        ({"tapped": 101}, "not 101"),
        ({"written": [5]}, "Written is a dict"),
        ({"written": {5: "5"}}, 'by numbers of the chart as text, from "1" to "100", not by 5'),
        ({"written": {"05": "5"}}, "not by '05'"),
        ({"written": {"5": 5}}, "A cell holds 1 to 5 digits as text, not 5."),
        ({"written": {"5": ""}}, "not ''"),
        ({"written": {"5": "123456"}}, "1 to 5 digits"),
        ({"written": {"5": "٣"}}, "1 to 5 digits"),
    ],
)
def test_impossible_marks_are_refused(data, said):
    with pytest.raises(ValueError, match=said):
        check_marks(data, Chart())


@pytest.mark.parametrize("settings", [{"direction": "down"}, {"mode": "erase"}, {"width": 1}])
def test_an_invalid_chart_is_refused(settings):
    with pytest.raises(ValueError, match="not"):
        Chart(**settings)


def test_on_other_numbers_what_is_on_them_is_left():
    done = marks(counted=[95, 100, 105], tapped=110, written={"99": "99", "110": "1"})
    assert marks_left(done, Chart()) == marks(counted=[95, 100], written={"99": "99"})
