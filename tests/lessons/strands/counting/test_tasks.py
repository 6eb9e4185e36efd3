"""What is asked and shown of counting is right; worked out afresh from the prompt."""

from __future__ import annotations

import json
import re
from collections import Counter
from dataclasses import replace
from itertools import pairwise, product

import pytest
from num2words import num2words

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.make import GENERATORS, make_tasks
from manipulatives.lessons.tasks.playing import facts_of, is_solved, mistake_made, play_steps
from manipulatives.lessons.tasks.predicates import holds
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.number.chart import Chart, check_marks, tap
from support.oracles.counting import ACTS, follow, integers, wrong_of
from support.seeds import SEEDS

STEPS = {"ones": 1, "twos": 2, "threes": 3, "fives": 5, "tens": 10, "hundreds": 100}
COUNTS = [
    (f"counting.{way}_in_{name}", step if way == "on" else -step)
    for way in ("on", "back")
    for name, step in STEPS.items()
]
STRAND = [skill for skill in SKILLS.values() if skill.strand == "counting"]
CHART = {
    "first": 1, "last": 100, "width": 10, "step": 1, "start": None, "direction": "forward",
    "hidden": "none", "mode": "count",
}  # fmt: skip


def ways(skill):
    """Every combination of a skill's options for which there are tasks."""
    for values in product(*skill.options.values()):
        options = dict(zip(skill.options, values, strict=True))
        if GENERATORS[skill.id].items(options):
            yield options


def some_of(skill, options, *, count=2, vocabulary="us", seed=5):
    count = min(count, len(GENERATORS[skill].items(options)))
    return make_tasks(
        skill, seed=seed, count=count, vocabulary=vocabulary, options=options, twins=0
    )


def chart_of(task):
    return Chart(**{name: task.start.get(name, usual) for name, usual in CHART.items()})


def tapped(task, numbers):
    """Tap numbers on the chart of a task as the widget does, and return what is true of it."""
    chart = chart_of(task)
    marks = check_marks(task.start["chart"], chart)
    for number in numbers:
        marks = tap(marks, number, chart)
    return facts_of("CountingChart", {**task.start, "chart": {**marks}})


def answer_by_reading(task):  # noqa: C901, PLR0911 - a line or two for each kind of prompt
    """Work out the answer from the prompt, or from what lies on the mat."""
    prompt, numbers = task.prompt, integers(task.prompt)
    if prompt.startswith("What comes next?"):
        return 2 * numbers[-1] - numbers[-2]
    if prompt.startswith(("Count on", "Count back", "Put out")):
        return numbers[-1]
    if prompt.startswith("How many"):
        return sum(blocks["ones"] for blocks in task.start["mat"])
    if " before " in prompt or "one less" in prompt:
        return numbers[0] - 1
    if " just after " in prompt or "one more" in prompt:
        return numbers[0] + 1
    if " between " in prompt:
        return sum(numbers) // 2
    if match := re.search(r"(ten|one hundred) (more|less) than", prompt):
        by = {"ten": 10, "one hundred": 100}[match[1]]
        return numbers[0] + (by if match[2] == "more" else -by)
    if "missing?" in prompt:
        row = [None if one == "_" else int(one) for one in re.findall(r"\d+|_", prompt)]
        gap = row.index(None)
        return (row[gap - 1] + row[gap + 1]) // 2
    if match := re.search(r"Which (even|odd) number comes next", prompt):
        wanted = 0 if match[1] == "even" else 1
        return next(n for n in range(numbers[0] + 1, numbers[0] + 3) if n % 2 == wanted)
    if prompt.startswith("Is "):
        return "even" if numbers[0] % 2 == 0 else "odd"
    assert prompt.startswith("Write the missing number")
    return ", ".join(map(str, chart_of(task).blanks))


def test_the_oracle_notices_a_number_that_is_not_so():
    """Every number of every step, changed by one, by ten, or to its neighbour in a list."""
    seen = Counter()
    for skill in STRAND:
        for options in ways(skill):
            [task] = some_of(skill.id, options, count=1)
            for step in task.steps:
                for name, value in step.numbers.items():
                    for wrong in others_than(value):
                        changed = replace(step, numbers={**step.numbers, name: wrong})
                        with pytest.raises((AssertionError, KeyError)):
                            follow(changed)
                        seen[step.numbers["act"]] += 1
                spoilt = re.sub(r"\d+", lambda one: f"{int(one[0]) + 1}", step.say, count=1)
                if spoilt != step.say:
                    with pytest.raises(AssertionError):
                        follow(replace(step, say=spoilt))
    assert set(seen) == set(ACTS)


def others_than(value):
    """Values near one that a step carries."""
    if isinstance(value, bool) or value is None:
        return []
    if isinstance(value, int):
        return [value + 1, value - 1, value + 10]
    if isinstance(value, list):
        return [[*value[:-1], value[-1] + 1], [value[0] - 1, *value[1:]], value[:-1]]
    return {"even": ["odd"], "odd": ["even"]}.get(value, [])


def test_the_strand_has_its_skills_and_each_builds_on_one_that_there_is():
    named = {skill.id for skill in STRAND}
    others = "before_after missing_numbers one_more_less ten_more_less hundred_more_less odd_even"
    assert {one for one, _ in COUNTS} | {f"counting.{one}" for one in others.split()} <= named
    assert all(before in SKILLS for skill in STRAND for before in skill.builds_on)


@pytest.mark.parametrize("skill", STRAND, ids=lambda skill: skill.id)
def test_many_rounds_are_right_and_their_steps_end_in_the_goal(skill):
    for seed in range(SEEDS):
        for task in make_tasks(skill.id, seed=seed, count=2, twins=0):
            assert task.answer == str(answer_by_reading(task))
            assert holds(task.goal, play_steps(task))
            for step in task.steps:
                follow(step)


@pytest.mark.parametrize("skill", STRAND, ids=lambda skill: skill.id)
def test_every_option_in_both_vocabularies_is_right_to_its_last_sentence(skill):
    for options in ways(skill):
        for vocabulary, seed in product(("us", "uk"), range(SEEDS // 50)):
            for task in some_of(skill.id, options, vocabulary=vocabulary, seed=seed):
                assert task.answer == str(answer_by_reading(task))
                assert holds(task.goal, play_steps(task))
                for step in task.steps:
                    follow(step)
                if task.ask["by"] != "manipulative":
                    assert [bool(step.answer) for step in task.steps][-1:] == [True]
                again = Task.from_data(json.loads(json.dumps(task.to_data())))
                assert again == task
                if task.answer.isdigit():
                    words = num2words(int(task.answer)).replace(",", "")
                    if vocabulary == "us":
                        words = words.replace(" and ", " ")
                    assert task.spoken == words


@pytest.mark.parametrize("skill", STRAND, ids=lambda skill: skill.id)
def test_the_procedure_of_a_mistake_leads_to_its_answer(skill):
    for options in ways(skill):
        for seed in range(20):
            for task in some_of(skill.id, options, seed=seed):
                for mistake in task.mistakes:
                    numbers = mistake.numbers
                    assert wrong_of(numbers) == numbers["wrong"], (task.prompt, mistake.rule)
                    if mistake.answer is not None:
                        assert mistake.answer == f"{numbers['wrong']}"


@pytest.mark.parametrize("skill", STRAND, ids=lambda skill: skill.id)
def test_mistakes_are_wrong_and_each_is_told_once(skill):
    for options in ways(skill):
        for task in some_of(skill.id, options, count=3):
            given = [mistake.answer for mistake in task.mistakes if mistake.answer is not None]
            assert task.answer not in given
            assert len(set(given)) == len(given)
            for mistake in task.mistakes:
                assert all(len(s.split()) <= 10 for s in mistake.pupil.split(". "))
                if task.ask["by"] != "manipulative":
                    assert mistake_made(task, {"answer": mistake.answer}) == mistake
            assert mistake_made(task, facts_of(task.manipulative, task.start)) is None


@pytest.mark.parametrize("skill", STRAND, ids=lambda skill: skill.id)
def test_what_is_asked_is_never_shown_at_first(skill):
    for options in ways(skill):
        for task in some_of(skill.id, options):
            assert not is_solved(task, facts_of(task.manipulative, task.start))
            if task.ask.get("form") == "number" and task.manipulative == "CountingChart":
                if "odd_even" in skill.id:
                    assert task.start.get("chart") is None
                    continue
                assert task.start["hidden"] == "all"
                assert int(task.answer) not in task.start["chart"]["counted"]
                chart = chart_of(task)
                for number in range(chart.first, chart.last + 1):
                    assert number not in task.start["chart"]["counted"] or number in integers(
                        task.prompt
                    )
                    # A stray tap brings no other number to light.
                    marks = tap(check_marks(task.start["chart"], chart), number, chart)
                    assert set(marks["counted"]) <= set(task.start["chart"]["counted"])


def brute_begins(by, to, start, crosses):
    """Counts of three numbers and one to ask for, by trying every one."""
    unit = {"any": None, "ten": 10, "hundred": 100}[crosses]
    found = set()
    for first in range(to + 1):
        row = [first, first + by, first + 2 * by, first + 3 * by]
        if min(row) < 0 or max(row) > to:
            continue
        if start == "multiple" and first / by != first // by:
            continue
        if unit and row[2] // unit == row[3] // unit:
            continue
        found.add(first)
    return found


@pytest.mark.parametrize(("skill", "by"), COUNTS)
def test_a_count_has_exactly_the_difficulty_that_is_asked_for(skill, by):
    for options in product(*SKILLS[skill].options.values()):
        given = dict(zip(SKILLS[skill].options, options, strict=True))
        items = GENERATORS[skill].items(given)
        wanted = brute_begins(
            by, given.get("to", 1000), given.get("start", "any"), given.get("crosses", "any")
        )
        assert len(items) == len(set(items))
        assert set(items) == wanted


def test_a_round_can_ask_for_one_count_across_a_ten_and_then_one_across_a_hundred():
    for seed in range(50):
        one, other, third = make_tasks(
            "counting.on_in_ones",
            seed=seed,
            count=3,
            options={"to": 1000, "crosses": ["ten", "hundred"]},
            twins=0,
        )
        assert integers(one.prompt)[-1] % 10 == 9
        assert integers(other.prompt)[-1] % 100 == 99
        assert integers(third.prompt)[-1] % 100 == 99


def test_a_count_that_cannot_be_is_refused_with_a_remedy():
    with pytest.raises(LessonProblem, match="has only 0 different tasks"):
        make_tasks("counting.on_in_ones", seed=1, count=1, options={"to": 20, "crosses": "hundred"})


@pytest.mark.parametrize(("skill", "by"), COUNTS)
def test_a_count_on_the_chart_is_done_by_tapping_it_in_step(skill, by):
    for seed in range(20):
        [task] = make_tasks(skill, seed=seed, count=1, options={"ask": "count"}, twins=0)
        start, end = integers(task.prompt)
        row = list(range(start, end + (1 if by > 0 else -1), by))
        assert 4 <= len(row) <= 6
        assert row[-1] == end
        assert is_solved(task, tapped(task, row[1:]))
        assert not is_solved(task, tapped(task, row[1:-1]))
        # One that was left out is not counted.
        assert not is_solved(task, tapped(task, row[2:]))


def test_a_wrong_tap_says_what_it_may_mean():
    [task] = make_tasks(
        "counting.on_in_tens", seed=1, count=1, options={"start": "any", "ask": "count"}, twins=0
    )
    start, _ = integers(task.prompt)
    for wrong, rule in ((start + 1, "counted_in_ones"), (start + 9, "said_the_start")):
        assert mistake_made(task, tapped(task, [wrong])).rule == rule
    assert mistake_made(task, tapped(task, [start + 10])) is None


@pytest.mark.parametrize(
    ("skill", "prompt", "wrong", "rule"),
    [
        ("counting.on_in_ones", "What comes next? 37, 38, 39.", "50", "skipped_decade"),
        ("counting.on_in_ones", "What comes next? 37, 38, 39.", "30", "stayed_in_decade"),
        ("counting.on_in_ones", "What comes next? 37, 38, 39.", "310", "ten_beside"),
        ("counting.back_in_ones", "What comes next? 42, 41, 40.", "29", "skipped_decade"),
        ("counting.on_in_fives", "What comes next? 25, 30, 35.", "45", "counted_in_tens"),
        ("counting.on_in_fives", "What comes next? 25, 30, 35.", "5", "started_over"),
        ("counting.on_in_fives", "What comes next? 20, 25, 30.", "25", "counted_other_way"),
        ("counting.odd_even", "Is 16 even or odd?", "odd", "parity_of_tens"),
    ],
)
def test_a_wrong_answer_suggests_what_may_have_happened(skill, prompt, wrong, rule):
    count = len(GENERATORS[skill].items({name: v[0] for name, v in SKILLS[skill].options.items()}))
    tasks = make_tasks(skill, seed=0, count=count, twins=0)
    task = next(task for task in tasks if task.prompt == prompt)
    assert mistake_made(task, {"answer": wrong}).rule == rule


@pytest.mark.parametrize("skill", STRAND, ids=lambda skill: skill.id)
def test_the_chart_holds_what_is_asked_and_is_no_longer_than_it_must_be(skill):
    for options in ways(skill):
        for task in some_of(skill.id, options):
            if task.manipulative != "CountingChart":
                continue
            chart = chart_of(task)
            numbers = [*integers(task.prompt), *integers(task.answer)]
            assert all(chart.first <= number <= chart.last for number in numbers)
            assert chart.last <= options.get("to", 1000) or "odd_even" in skill.id
            far = max(numbers) - min(numbers) > 100
            assert chart.last - chart.first < (1001 if far else 201)
            # A hop of a hundred is seen on the line.
            assert bool(task.start.get("line")) == far


def test_missing_numbers_are_written_into_the_chart():
    for seed in range(50):
        [task] = make_tasks(
            "counting.missing_numbers", seed=seed, count=1, options={"ask": "chart"}, twins=0
        )
        blanks = integers(task.answer)
        written = {str(number): str(number) for number in blanks}
        right = {"counted": [], "tapped": None, "written": written}
        assert is_solved(task, facts_of("CountingChart", {**task.start, "chart": right}))
        spoilt = {**right, "written": {**written, str(blanks[0]): "0"}}
        assert not is_solved(task, facts_of("CountingChart", {**task.start, "chart": spoilt}))


def test_the_size_of_a_step_is_told_from_two_numbers_that_are_shown():
    skill = SKILLS["counting.missing_numbers"]
    for options in ways(skill):
        if options["ask"] == "gap":
            for task in some_of(skill.id, options, count=6):
                size = task.steps[0].numbers
                assert {size["from"], size["to"]} <= set(integers(task.prompt))


def test_no_chart_with_the_same_missing_numbers_comes_twice_in_a_round():
    # On the rows from 1 to 20 the blanks are 1 and 11, 2 and 12, and so on to 10 and 20.
    options = {"to": 20, "way": "any", "ask": "chart"}
    most = len(GENERATORS["counting.missing_numbers"].items({"step": 1, "start": "any", **options}))
    tasks = make_tasks("counting.missing_numbers", seed=3, count=most, options=options, twins=0)
    assert len({task.answer for task in tasks}) == most == 10


def test_every_kind_that_is_asked_for_comes_and_no_other():
    for skill, option, kinds in (
        ("counting.before_after", "which", {"before", "after", "between"}),
        ("counting.one_more_less", "which", {"more", "less"}),
        ("counting.ten_more_less", "which", {"more", "less"}),
        ("counting.hundred_more_less", "which", {"more", "less"}),
        ("counting.missing_numbers", "way", {"on", "back"}),
    ):
        for kind in kinds:
            tasks = make_tasks(skill, seed=2, count=8, options={option: kind}, twins=0)
            assert {task.kind for task in tasks} == {kind}
        many = make_tasks(skill, seed=2, count=40, options={option: "any"}, twins=0)
        assert {task.kind for task in many} == kinds


def test_mixed_order_never_asks_one_kind_twice_in_a_row():
    for seed in range(30):
        tasks = make_tasks(
            "counting.before_after", seed=seed, count=9, options={"order": "mixed"}, twins=0
        )
        kinds = [task.kind for task in tasks]
        assert all(one != other for one, other in pairwise(kinds))


def test_every_start_of_a_count_is_as_likely_as_the_others():
    """Chi-squared of 18 degrees of freedom passes 50 once in ten thousand times."""
    counts = Counter(
        task.prompt
        for seed in range(600)
        for task in make_tasks("counting.on_in_fives", seed=seed, count=2, twins=0)
    )
    cells = len(brute_begins(5, 100, "multiple", "any"))
    expected = 1200 / cells
    assert len(counts) == cells == 18
    assert sum((seen - expected) ** 2 / expected for seen in counts.values()) < 50
