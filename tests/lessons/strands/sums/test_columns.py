"""Worked sums, worked out again by an oracle, and their blocks counted again after each step."""

from __future__ import annotations

import random
import re
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.lessons.strands.sums.columns.methods import (
    FORM_OF,
    METHODS,
    check_method,
    worked_steps,
    worked_sum,
)
from manipulatives.maths.columns.facts import sum_facts
from manipulatives.maths.columns.written_sum import new_sum, written
from manipulatives.words.columns import TERMS, check_term
from support.oracles.columns import column_oracle
from support.oracles.columns.adding import Adding
from support.oracles.columns.hopping import Hopping
from support.oracles.columns.taking import Taking
from support.sum_tasks import others_than

TWO_DIGITS = range(10, 100)
ALL_TERMS = (None, *TERMS)


def number(random_, longest):
    """Return a number of any length up to that, with zeros and nines as often as all others."""
    length = random_.randint(1, longest)
    digits = "".join(random_.choice("0001234567899") for _ in range(length))
    return int(digits)


def longer_sums(many):
    """Return sums that are longer than two numbers of two digits; always the same."""
    random_ = random.Random(90213)  # noqa: S311 - no secret
    sums = []
    while len(sums) < many:
        operation = random_.choice("+-")
        numbers = [number(random_, 4) for _ in range(random_.randint(2, 4))]
        if operation == "-":
            numbers = sorted(numbers[:2], reverse=True)
        if len(numbers) > 2 or max(numbers) > 99:
            sums.append((operation, numbers))
    return sums


class Paper:
    """What all blocks must be, read off the squares; a reading apart from the kit's own."""

    def __init__(self, operation, numbers, form):
        self.adding, self.numbers, self.form = operation == "+", numbers, form
        self.width = max(len(str(number)) for number in numbers) + self.adding

    def squares(self, number):
        """The digits of a number in all squares."""
        return [int(digit) for digit in str(number).rjust(self.width, "0")[::-1]]

    def worth(self, number, place):
        """How many of its place a written number means."""
        return number // 10**place if self.form == "parts" else number

    def blocks(self, sum_, rubbed):
        """The blocks that there must be; in squares that were rubbed out, none."""
        given = [0 if at in rubbed else digit for at, digit in enumerate(sum_["answer"])]
        sum_ = {**sum_, "answer": given}
        answer = [digit or 0 for digit in sum_["answer"]]
        begun = sum_["answer"].count(None) < self.width
        if self.form == "line":
            return self.on_line(sum_["jumps"], answer if begun else None)
        parts = sum_["parts"] or [None] * self.width
        gone = [
            digit is not None or part is not None
            for digit, part in zip(sum_["answer"], parts, strict=True)
        ]
        latest = [marks[-1] if marks else None for marks in sum_["marks"]]
        if not self.adding:
            return self.taken_away(sum_["answer"], parts, latest, gone)
        rows = {
            str(index): [0 if over else digit for digit, over in zip(squares, gone, strict=True)]
            for index, squares in enumerate(map(self.squares, self.numbers), 1)
        }
        rows["carried"] = [
            0 if over else mark or 0 for mark, over in zip(latest, gone, strict=True)
        ]
        if self.form == "parts":
            counts = [self.worth(part or 0, place) for place, part in enumerate(parts)]
            rows["parts"] = [0] * self.width if begun else counts
        return {**rows, "answer": answer}

    def taken_away(self, answer, parts, latest, gone):
        """What is left of the upper number, and what is not."""
        upper, lower = map(self.squares, self.numbers)
        left = []
        for place in range(self.width):
            said = (parts[place], latest[place])
            number = next((self.worth(each, place) for each in said if each is not None), None)
            counts = (answer[place], number, upper[place])
            left.append(next(count for count in counts if count is not None))
        return {"left": left, "taken": [lower[at] if gone[at] else 0 for at in range(self.width)]}

    def on_line(self, jumps, answer):
        """Where the jumps are, and how far it is, or how far they went back."""
        far = sum(jumps)
        if self.adding:
            start = max(self.numbers)
            rest = sum(self.numbers) - start - far
            return {"here": answer or self.squares(start + far), "rest": self.squares(rest)}
        return {
            "left": answer or self.squares(self.numbers[0] - far),
            "taken": self.squares(far),
        }


def value(row):
    return sum(count * 10**place for place, count in enumerate(row))


def play(operation, numbers, method, vocabulary="us", term=None):
    """Play the steps of a sum to its end and check everything on the way."""
    sum_ = new_sum(operation, numbers, FORM_OF[method])
    oracle = column_oracle(operation, numbers, method, vocabulary, term)
    paper = Paper(operation, numbers, FORM_OF[method])
    whole = sum(numbers) if operation == "+" else numbers[0]
    rubbed = set()
    worked = worked_sum(operation, numbers, method, vocabulary=vocabulary, term=term)
    for step, data in zip(worked.steps, worked.numbers, strict=True):
        oracle.follow(step, data)
        sum_ = written(sum_, step["write"])
        rubbed |= {at for _, at, *digits in step["write"] if digits == [None]}
        blocks = step["blocks"]
        assert (sum_["answer"], sum_["marks"]) == (oracle.answer, oracle.marks)
        assert (sum_["parts"], sum_["jumps"]) == (oracle.parts, oracle.jumps)
        assert blocks == paper.blocks(sum_, rubbed)
        assert sum(value(row) for row in blocks.values()) == whole
    oracle.over()
    digits = [int(digit) for digit in str(oracle.result)[::-1]]
    assert sum_["answer"] == digits + [None] * (len(sum_["answer"]) - len(digits))
    facts = sum_facts(sum_)
    assert facts["done"]
    assert facts["marks_right"]
    last = next(blocks[row] for row in ("answer", "here", "left") if row in blocks)
    assert value(last) == facts["answer"] == oracle.result


@pytest.mark.parametrize("method", METHODS)
def test_the_steps_of_every_two_digit_sum_end_in_its_answer(method):
    for one, other in product(TWO_DIGITS, TWO_DIGITS):
        play("+", [one, other], method, ("us", "uk")[other % 2], ALL_TERMS[one % 5])


@pytest.mark.parametrize("method", METHODS)
def test_the_steps_of_every_two_digit_difference_end_in_its_answer(method):
    for upper, lower in product(TWO_DIGITS, TWO_DIGITS):
        if upper >= lower:
            play("-", [upper, lower], method, ("us", "uk")[lower % 2], ALL_TERMS[upper % 5])


@pytest.mark.parametrize("method", METHODS)
def test_the_steps_of_ten_thousand_longer_sums_end_in_their_answers(method):
    for at, (operation, numbers) in enumerate(longer_sums(10_000)):
        play(operation, numbers, method, ("us", "uk")[at % 2], ALL_TERMS[at % 5])


@pytest.mark.parametrize(
    "numbers", [[9999, 9999, 9999, 9999], [0, 0], [0, 0, 0], [9, 9], [1, 999], [5000, 0, 7]]
)
@pytest.mark.parametrize("method", METHODS)
def test_sums_at_the_edge_are_worked_out(numbers, method):
    play("+", numbers, method)


@pytest.mark.parametrize(
    "numbers", [[1000, 1], [1000, 999], [9000, 7], [5, 5], [0, 0], [4007, 4007], [7, 0], [2003, 1]]
)
@pytest.mark.parametrize("method", METHODS)
def test_differences_at_the_edge_are_worked_out(numbers, method):
    play("-", numbers, method)


def says(operation, numbers, method, **words):
    return [step["say"] for step in worked_steps(operation, numbers, method, **words)]


def test_counting_on_starts_at_the_largest_digit_and_ends_with_the_carry():
    steps = worked_steps("+", [13, 28, 45, 19], "counting on")
    assert [(step["say"], step["class"]) for step in steps[:5]] == [
        ("Ones: start at the largest digit, 9.", "9"),
        ("Count on 3.", "10, 11, 12"),
        ("Count on 8.", "13, 14, 15, 16, 17, 18, 19, 20"),
        ("Count on 5.", "21, 22, 23, 24, 25"),
        ("Regroup 20 ones as 2 tens.", "2 tens and 5 ones"),
    ]
    assert [step["say"] for step in steps if step["column"] == 1][-2:] == [
        "Count on the carried 2.",
        "Regroup 10 tens as 1 hundred.",
    ]


def test_the_upper_of_two_equal_largest_digits_is_where_counting_starts():
    assert says("+", [28, 18], "counting on")[0] == "Ones: start at the upper 8."


def test_equal_digits_give_nought_and_regroup_nothing():
    steps = worked_steps("-", [57, 27], "counting on")
    assert steps[0]["say"] == "Ones: is 7 enough to take away 7?"
    assert steps[0]["class"] == "yes, and 0 is left"
    assert steps[0]["write"] == [["answer", 0, 0]]


def test_regrouping_goes_through_a_run_of_zeros_to_the_first_digit_that_has_some():
    steps = worked_steps("-", [5003, 8], "known facts")
    assert [step["say"] for step in steps[:6]] == [
        "Ones: is 3 enough to take away 8?",
        "The tens and hundreds are 0: go to the thousands.",
        "Regroup 1 thousand as 10 hundreds.",
        "Regroup 1 hundred as 10 tens.",
        "Regroup 1 ten as 10 ones.",
        "Ones: what is 13 \u2212 8?",
    ]
    assert [step["write"] for step in steps[2:5]] == [
        [["marks", 3, 4], ["marks", 2, 10]],
        [["marks", 2, 9], ["marks", 1, 10]],
        [["marks", 1, 9], ["marks", 0, 13]],
    ]


def test_the_shorter_of_counting_back_and_counting_on_is_taken():
    assert "Ones: count back 3 from 12." in says("-", [52, 23], "counting on")
    assert "Ones: count on from 8 to 12." in says("-", [52, 28], "counting on")


def test_a_sum_of_tens_needs_no_ten_to_be_bridged():
    assert not any("needs" in say for say in says("+", [30, 40], "bridging ten"))
    assert "Ones: 8 + 7. 8 needs 2 to make 10." in says("+", [47, 38], "bridging ten")


@pytest.mark.parametrize(
    ("term", "adding", "taking"),
    [
        (None, "Regroup 10 ones as 1 ten.", "Regroup 1 ten as 10 ones."),
        ("regroup", "Regroup 10 ones as 1 ten.", "Regroup 1 ten as 10 ones."),
        ("exchange", "Exchange 10 ones for 1 ten.", "Exchange 1 ten for 10 ones."),
        ("carry", "Write 5 and carry 1 ten.", "Borrow 1 ten: 10 more ones."),
        ("borrow", "Write 5 and carry 1 ten.", "Borrow 1 ten: 10 more ones."),
    ],
)
def test_the_class_hears_its_own_word_for_regrouping(term, adding, taking):
    assert adding in says("+", [47, 38], "known facts", term=term)
    assert taking in says("-", [83, 47], "known facts", term=term)


def test_exchange_is_the_usual_word_in_the_uk_vocabulary():
    assert (check_term(None, "us"), check_term(None, "uk")) == ("regroup", "exchange")
    steps = worked_steps("+", [67, 38], vocabulary="uk")
    assert steps[2]["say"] == "Exchange 10 ones for 1 ten."
    assert steps[-1]["class"] == "one hundred and five"


def test_steps_are_plain_data():
    step = worked_steps("+", [47, 38])[2]
    assert step == {
        "say": "Regroup 10 ones as 1 ten.",
        "class": "1 ten and 5 ones",
        "column": 0,
        "write": [["answer", 0, 5], ["marks", 1, 1]],
        "blocks": {"1": [0, 4, 0], "2": [0, 3, 0], "carried": [0, 1, 0], "answer": [5, 0, 0]},
    }


def followed(sum_, steps):
    """Follow steps, each with its numbers."""
    operation, numbers, method = sum_
    oracle = column_oracle(operation, numbers, method, "us")
    for step, data in steps:
        oracle.follow(step, data)
    oracle.over()


def wrong_sentences(steps):
    """Yield the steps again and again, each time with one number of a sentence changed."""
    for at, name in product(range(len(steps)), ("say", "class")):
        step, data = steps[at]
        for found in re.finditer(r"\d+", step[name]):
            text = f"{step[name][: found.start()]}{int(found[0]) + 1}{step[name][found.end() :]}"
            yield [*steps[:at], ({**step, name: text}, data), *steps[at + 1 :]]


def wrong_data(steps):
    """Yield the steps again and again, each time with one value of their numbers changed."""
    for at, (step, data) in enumerate(steps):
        for name, value in data.items():
            for other in others_than(value):
                yield [*steps[:at], (step, {**data, name: other}), *steps[at + 1 :]]


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize(
    ("operation", "numbers"),
    [("+", [478, 367]), ("-", [802, 478]), ("+", [19, 28, 37]), ("-", [508, 9]), ("+", [40, 60])],
)
@pytest.mark.parametrize("change", [wrong_sentences, wrong_data])
def test_the_oracle_notices_each_number_that_is_wrong(operation, numbers, method, change):
    """The proofs above stand on the oracle, so it must not take what is not so."""
    sum_ = operation, numbers, method
    worked = worked_sum(*sum_)
    steps = list(zip(worked.steps, worked.numbers, strict=True))
    followed(sum_, steps)
    for wrong in change(steps):
        with pytest.raises((AssertionError, ValueError, IndexError, StopIteration)):
            followed(sum_, wrong)


def test_every_act_that_the_oracle_knows_is_done_somewhere():
    sums = {
        "+": [(478, 367), (308, 50), (95, 9)],
        "-": [(802, 478), (103, 98), (47, 3), (30, 30), (8, 0)],
    }
    done = {
        (type(column_oracle(operation, numbers, method, "us")), data["act"])
        for operation in sums
        for numbers in map(list, sums[operation])
        for method in METHODS
        for data in worked_sum(operation, numbers, method).numbers
    }
    known = {
        (oracle, name[1:])
        for oracle in (Adding, Taking, Hopping)
        for name in vars(oracle)
        if re.match("_[a-z]", name)
    }
    assert known == {(oracle, act) for oracle, act in done if act != "read"}


@pytest.mark.parametrize("method", ["", None, "Counting on", "equal additions", 3])
def test_a_method_that_there_is_not_is_refused(method):
    with pytest.raises(ValueError, match="A method is 'counting on', 'known facts'"):
        check_method(method)
    with pytest.raises(ValueError, match="A method is"):
        worked_steps("+", [1, 2], method)


@pytest.mark.parametrize("term", ["", "trade", 1])
def test_a_term_that_there_is_not_is_refused(term):
    with pytest.raises(ValueError, match="A term is 'regroup', 'exchange', 'carry', 'borrow'"):
        worked_steps("+", [1, 2], term=term)


@given(st.lists(st.integers(0, 9999), min_size=2, max_size=4), st.sampled_from(METHODS))
def test_steps_write_only_into_squares_that_are_there(numbers, method):
    width = len(new_sum("+", numbers)["answer"])
    for step in worked_steps("+", numbers, method):
        for row, *rest in step["write"]:
            assert row == "jumps" or 0 <= rest[0] < width
        assert step["column"] is None or 0 <= step["column"] < width
