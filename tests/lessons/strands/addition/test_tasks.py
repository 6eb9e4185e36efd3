"""What is asked, said and shown of additions is right; worked out again by trying."""

from __future__ import annotations

import re
from collections import Counter
from itertools import combinations, pairwise

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.make import GENERATORS, make_tasks, make_typed
from manipulatives.lessons.tasks.playing import facts_of, is_solved, mistake_made
from manipulatives.maths.columns.written_sum import new_sum, written
from support.sum_tasks import (
    integers,
    made,
    way_name,
    ways,
)

WAYS = [way for way in ways("addition") if "stories" not in way[0]]


def numbers_of(task):
    return integers(task.prompt)


FORMS = {
    "sum first": r"\d+ \+ \d+ = \d+",
    "sum last": r"\d+ = \d+ \+ \d+",
    "both sides": r"\d+ \+ \d+ = \d+ \+ \d+",
    "turned": r"(\d+) ([+-]) (\d+) = \3 \2 \1",
}
MISSING = {"first": r"\? \+ \d+ = \d+", "second": r"\d+ \+ \? = \d+"}
PLACES = {"none": set(), "ones": {"o"}, "tens": {"t"}}

# Of each option: whether a task has it, from its value, the prompt and the numbers in it.
CHECKS = {
    "to": lambda to, prompt, numbers: largest(prompt, numbers) <= to,
    "over": lambda over, _, numbers: sum(numbers) > over,
    "near": lambda near, _, numbers: (numbers[0] != numbers[1]) is near,
    "zero": lambda zero, _, numbers: zero or 0 not in numbers,
    "teens": lambda teens, _, numbers: (max(numbers) >= 10) is teens and sum(numbers) <= 20,
    "of": lambda of, _, numbers: all(number % of == 0 for number in numbers),
    "ten": lambda ten, _, numbers: ten == "any" or has_ten(numbers) is (ten == "yes"),
    "count": lambda count, _, numbers: len(numbers) == count,
    "second": lambda second, _, numbers: [len(f"{each}") for each in numbers] == [3, second],
    "regroup": lambda regroup, _, numbers: is_regrouped(regroup, numbers),
    "form": lambda form, prompt, _: re.search(FORMS.get(form, "") + "$", prompt),
    "unknown": lambda unknown, prompt, _: re.fullmatch(MISSING.get(unknown, ".*"), prompt),
}


@pytest.mark.parametrize("way", WAYS, ids=way_name)
def test_options_are_met_exactly(way):
    skill, options = way
    for task in made(skill, options, seed=5, count=12):
        for name, value in options.items():
            assert CHECKS[name](value, task.prompt, numbers_of(task)), (task.prompt, name, value)


def largest(prompt, numbers):
    """What comes out of a sum; in an equation what stands for the first sum."""
    if prompt.startswith("True"):
        first_sum = numbers[-2:] if SUM_LAST(prompt) else numbers[:2]
        return numbers[0] if "-" in prompt else sum(first_sum)
    return max(numbers) if "?" in prompt else sum(numbers)


SUM_LAST = re.compile(r".*\? \d+ = ").match


def has_ten(numbers):
    return any(sum(pair) == 10 for pair in combinations(numbers, 2))


def is_regrouped(regroup, numbers):
    if regroup == "any":
        return True
    through = regroup != "zero" or f"{sum(numbers)}"[-2] == "0"
    return through and regrouped(numbers) == PLACES.get(regroup, {"o", "t"})


def regrouped(numbers):
    """Say where ten or more come together: "o" in the ones, "t" in the tens, "h" beyond."""
    ends = {"o": 10, "t": 100, "h": 1000}
    places = set()
    for name, end in ends.items():
        lower = sum(number % (end // 10) for number in numbers) // (end // 10)
        if sum(number // (end // 10) % 10 for number in numbers) + lower >= 10:
            places.add(name)
    return places


def test_a_pattern_of_difficulties_is_met_in_its_order():
    """One regrouped in the tens only, then two through a zero."""
    for seed in range(50):
        options = {"regroup": ["tens", "zero", "zero"]}
        tens, *zeros = make_tasks("addition.two_digit", seed=seed, count=3, options=options)
        assert regrouped(numbers_of(tens)) == {"t"}
        for task in zeros:
            assert regrouped(numbers_of(task)) == {"o", "t"}
            assert task.answer[-2] == "0"


@pytest.mark.parametrize(
    ("skill", "options", "many"),
    [
        # Ordered sums within 5, within 10, of two one-digit numbers: 21, 66 and 100.
        ("addition.facts_10", {"to": 5}, 21),
        ("addition.facts_10", {"to": 10}, 66),
        ("addition.facts_20", {}, 100),
        ("addition.facts_20", {"regroup": "none"}, 55),
        ("addition.facts_20", {"regroup": "ones"}, 45),
        ("addition.facts_20", {"regroup": "ones", "zero": False}, 45),
        ("addition.facts_20", {"regroup": "none", "zero": False}, 36),
        ("addition.make_ten", {"unknown": "second"}, 9),
        ("addition.make_ten", {"to": 100}, 18),
        ("addition.two_digit", {"regroup": "none"}, 1980),
        ("addition.two_digit", {"regroup": "ones"}, 1260),
        ("addition.two_digit", {"regroup": "tens"}, 2475),
        ("addition.two_digit", {"regroup": "both"}, 2385),
        ("addition.doubles", {"over": 18}, 1),
    ],
)
def test_there_are_as_many_tasks_as_there_are(skill, options, many):
    usual = {name: values[0] for name, values in SKILLS[skill].options.items()}
    assert len(GENERATORS[skill].items({**usual, **options})) == many


def test_what_cannot_be_asked_is_said():
    with pytest.raises(LessonProblem, match="has only 1 different tasks with these options, not 5"):
        make_tasks("addition.doubles", seed=1, count=5, options={"over": 18})
    with pytest.raises(LessonProblem, match="has only 0 different tasks"):
        make_tasks("addition.two_digit", seed=1, count=1, options={"regroup": "tens", "to": 99})


def test_a_sum_that_was_typed_is_taken():
    task = make_typed("addition.two_digit", " 58+37 ")
    assert (task.prompt, task.answer) == ("58 + 37", "95")
    with pytest.raises(LessonProblem, match="'58 \\+ 7' is not what is asked here"):
        make_typed("addition.two_digit", "58 + 7")
    with pytest.raises(LessonProblem, match="'sum' is no sum"):
        make_typed("addition.two_digit", "sum")
    assert make_typed("addition.facts_10", "3 + 5").answer == "8"
    assert make_typed("addition.several", "12 + 34 + 56").answer == "102"


def test_a_written_sum_is_solved_by_its_digits_and_a_lost_ten_is_foreseen():
    """28 + 17 answered 35: the ten was left out (from two published examples)."""
    task = make_typed("addition.two_digit", "28 + 17")
    fresh = new_sum("+", [28, 17])
    right = written(fresh, [["answer", 0, 5], ["answer", 1, 4]])
    wrong = written(fresh, [["answer", 0, 5], ["answer", 1, 3]])
    start = {**task.start}
    assert is_solved(task, facts_of("ColumnBoard", {**start, "sum": right}))
    mistake = mistake_made(task, facts_of("ColumnBoard", {**start, "sum": wrong}))
    assert mistake.answer == "35"
    assert "ten" in mistake.teacher


def test_one_number_is_missing_in_either_place():
    kinds = Counter(
        task.kind for seed in range(60) for task in made("addition.missing_addend", {}, seed=seed)
    )
    assert set(kinds) == {"second missing", "first missing"}
    assert min(kinds.values()) > 10


def test_in_a_mixed_round_no_two_statements_of_one_form_are_neighbours():
    for seed in range(20):
        tasks = make_tasks("addition.true_or_false", seed=seed, count=6, options={"order": "mixed"})
        assert all(one.kind != other.kind for one, other in pairwise(tasks))


def test_half_of_the_statements_are_true():
    for form in SKILLS["addition.true_or_false"].options["form"][1:]:
        for to in (10, 20):
            items = GENERATORS["addition.true_or_false"].items({"form": form, "to": to})
            prompts = made("addition.true_or_false", {"form": form, "to": to}, count=len(items))
            answers = Counter(task.answer for task in prompts)
            assert len(answers) == 2
            assert abs(answers["true"] - answers["false"]) <= len(items) * 0.1


def test_every_wrong_judgement_may_be_explained():
    for task in made("addition.true_or_false", {}, count=400):
        assert [mistake.answer for mistake in task.mistakes] == [
            "false" if task.answer == "true" else "true"
        ]


def test_easy_numbers_come_first_where_that_is_wanted():
    for skill in ("addition.facts_20", "addition.two_digit", "addition.true_or_false"):
        for seed in range(10):
            tasks = make_tasks(skill, seed=seed, count=5, options={"order": "easy first"})
            difficulties = [GENERATORS[skill].difficulty(item_of(task)) for task in tasks]
            assert difficulties == sorted(difficulties)


def item_of(task):
    if task.skill != "addition.true_or_false":
        return tuple(numbers_of(task))
    numbers = numbers_of(task)
    if task.kind == "sum last":
        numbers = [*numbers[1:], numbers[0]]
    return (task.kind, *numbers, *[0] * (4 - len(numbers)))


def test_twins_are_as_hard():
    for seed in range(5):
        for task in make_tasks("addition.two_digit", seed=seed, count=3):
            assert len(task.twins) == 3
            for twin in task.twins:
                assert regrouped(numbers_of(twin)) == regrouped(numbers_of(task))
                assert twin.prompt != task.prompt
