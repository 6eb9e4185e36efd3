"""What is asked, said and shown of subtractions is right; worked out again by trying."""

from __future__ import annotations

import re
from collections import Counter

import pytest

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.make import make_tasks, make_typed
from manipulatives.lessons.tasks.playing import mistake_made
from support.sum_tasks import (
    integers,
    items_of,
    made,
    solve,
    way_name,
    ways,
)

WAYS = [way for way in ways("subtraction") if "stories" not in way[0]]


def numbers_of(task):
    return integers(task.prompt)


def regrouped(numbers):
    """Say where the upper digit is not enough, counted in whole ones, tens and hundreds."""
    upper, lower = numbers
    return {
        name for name, end in (("o", 10), ("t", 100)) if upper % end < lower % end
    }  # fmt: skip


def is_regrouped(regroup, numbers):
    zero = numbers[0] // 10 % 10 == 0
    if regroup in ("both", "zero") and zero != (regroup == "zero"):
        return False
    places = {"none": set(), "ones": {"o"}, "tens": {"t"}}.get(regroup, {"o", "t"})
    return regroup == "any" or regrouped(numbers) == places


def is_missing(unknown, prompt):
    sides = prompt.split(" = ")
    difference = next(side for side in sides if "-" in side)
    return unknown == "any" or difference.startswith("?") is (unknown == "first")


def has_equal(place, numbers):
    left = f"{numbers[0] - numbers[1]:03}"[-len(str(numbers[0])) :]
    return "0" in {"ones": left[-1], "tens": left[-2], "some": left}[place]


# Of each option: whether a task has it, from its value, the prompt and the numbers in it.
CHECKS = {
    "zero": lambda zero, _, numbers: zero or (0 not in numbers and numbers[0] != numbers[1]),
    "teens": lambda teens, _, numbers: numbers[0] <= 20 and (
        max(numbers[1], numbers[0] - numbers[1]) >= 10
    ) is teens,
    "of": lambda of, _, numbers: all(number % of == 0 for number in numbers),
    "second": lambda second, _, numbers: [len(f"{each}") for each in numbers] == [3, second],
    "digits": lambda digits, _, numbers: {len(f"{each}") for each in numbers} == {digits},
    "place": lambda place, _, numbers: has_equal(place, numbers),
    "regroup": lambda regroup, _, numbers: is_regrouped(regroup, numbers),
    "unknown": lambda unknown, prompt, _: is_missing(unknown, prompt),
    "answer_first": lambda first, prompt, _: re.match(r"(\d+) = ", prompt) is not None or not first,
}  # fmt: skip


@pytest.mark.parametrize("way", WAYS, ids=way_name)
def test_options_are_met_exactly(way):
    skill, options = way
    for task in made(skill, options, seed=5, count=12):
        numbers = numbers_of(task)
        whole = int(solve(task.prompt)) if task.prompt.startswith("? -") else max(numbers)
        for name, value in options.items():
            if name == "to":
                assert max(whole, *numbers) <= value
            else:
                assert CHECKS[name](value, task.prompt, numbers), (task.prompt, name, value)


@pytest.mark.parametrize(
    ("skill", "options", "many"),
    [
        # The same facts as those of addition, turned round: 21 and 66 within 5 and 10.
        ("subtraction.facts_10", {"to": 5}, 21),
        ("subtraction.facts_10", {}, 66),
        ("subtraction.facts_20", {}, 100),
        ("subtraction.facts_20", {"regroup": "ones"}, 45),
        ("subtraction.two_digit_one_digit", {"regroup": "none"}, 405),
        ("subtraction.two_digit_one_digit", {"regroup": "ones"}, 405),
        ("subtraction.two_digit", {"regroup": "none"}, 2385),
        ("subtraction.two_digit", {"regroup": "ones"}, 1620),
        ("subtraction.three_digit", {"regroup": "zero"}, 16_200),
        ("subtraction.three_digit", {"regroup": "zero", "second": 2}, 3_645),
    ],
)
def test_there_are_as_many_tasks_as_there_are(skill, options, many):
    assert len(items_of(skill, options)) == many


def test_a_pattern_of_difficulties_is_met_in_its_order():
    """One regrouped in the tens only, then two through a zero."""
    for seed in range(50):
        options = {"regroup": ["tens", "zero"]}
        tens, *zeros = make_tasks("subtraction.three_digit", seed=seed, count=3, options=options)
        assert regrouped(numbers_of(tens)) == {"t"}
        for task in zeros:
            assert regrouped(numbers_of(task)) == {"o", "t"}
            assert str(numbers_of(task)[0])[1] == "0"
            assert any(step.say == "The tens are 0: go to the hundreds." for step in task.steps)


def test_a_published_wrong_answer_names_every_rule_that_leads_to_it():
    """143 - 28 = 125 may be the smaller digit from the larger, or a ten that was not taken away
    (both in Brown and Burton 1978, and they agree here because 8 - 3 is 5)."""  # noqa: D205, D209 - one sentence
    task = make_typed("subtraction.three_digit", "143 - 28")
    [mistake] = [mistake for mistake in task.mistakes if mistake.answer == "125"]
    assert mistake.when == ["=", "number", 125]
    assert mistake.teacher.count(", or ") == 1


def test_a_missing_number_may_be_what_comes_of_the_others():
    """7 = ? - 9 is the example of England's programme of study for year 1."""
    tasks = made("subtraction.missing_part", {"answer_first": True, "to": 20}, count=380)
    [task] = [task for task in tasks if task.prompt == "7 = ? - 9"]
    assert task.answer == "16"
    assert mistake_made(task, {"answer": "2"}).rule == "missing_took"
    assert task.say == "Which number is missing? 7 = ? \u2212 9."


def test_a_sum_that_was_typed_is_taken():
    assert make_typed("subtraction.two_digit", "63 - 29").answer == "34"
    assert make_typed("subtraction.facts_20", "13\u22125").answer == "8"
    for text in ("29 - 63", "63 + 29", "163 - 29", "63"):
        with pytest.raises(LessonProblem, match=r"is no sum|is not what is asked here"):
            make_typed("subtraction.two_digit", text)


def test_twins_are_as_hard():
    for seed in range(5):
        for task in make_tasks("subtraction.three_digit", seed=seed, count=3):
            assert len(task.twins) == 3
            for twin in task.twins:
                assert twin.kind == task.kind
                assert regrouped(numbers_of(twin)) == regrouped(numbers_of(task))
                assert twin.prompt != task.prompt


def test_easy_numbers_come_first_where_that_is_wanted():
    for seed in range(10):
        options = {"order": "easy first"}
        tasks = make_tasks("subtraction.three_digit", seed=seed, count=5, options=options)
        hard = [len(regrouped(numbers_of(task))) for task in tasks]
        assert hard[0] <= hard[-1]
        assert "zero" not in tasks[0].kind


def test_all_kinds_of_regrouping_are_met():
    kinds = Counter(task.kind for task in made("subtraction.three_digit", {}, count=400))
    assert set(kinds) == {
        "regroup nowhere",
        "regroup ones",
        "regroup tens",
        "regroup ones, tens",
        "regroup ones, tens through zero",
    }
