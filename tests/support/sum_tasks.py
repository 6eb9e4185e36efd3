"""What is checked of every task of addition and subtraction."""

from __future__ import annotations

import json
import re
from functools import cache
from itertools import product

from manipulatives.lessons.catalogue.skills import SKILLS, options_at
from manipulatives.lessons.tasks.make import GENERATORS, make_tasks
from manipulatives.lessons.tasks.playing import facts_of, is_solved, mistake_made, play_steps
from manipulatives.lessons.tasks.predicates import holds
from manipulatives.lessons.tasks.task import Task
from support.oracles.columns import column_oracle
from support.oracles.sums import SumOracle
from support.oracles.wrong_sums import wrong_of
from support.seeds import SEEDS

MOST = 2200


def ways(strand):
    """Return every skill of a strand with every combination of its options."""
    return [
        (skill.id, dict(zip(skill.options, values, strict=True)))
        for skill in SKILLS.values()
        if skill.strand == strand
        for values in product(*skill.options.values())
    ]


def way_name(way):
    skill, options = way
    return " ".join([skill, *(f"{name}={value}" for name, value in options.items())])


@cache
def of_many_seeds(skill, vocabulary="us"):
    """Return one task of each of many seeds; every other one with options that change."""
    return list(each_of_many_seeds(skill, vocabulary, "counting on"))


def each_of_many_seeds(skill, vocabulary, method):
    """Yield the tasks of many seeds with another method; too many are made to hold them all."""
    strand = skill.partition(".")[0]
    all_ways = [these for other, these in ways(strand) if other == skill and items_of(skill, these)]
    for seed in range(SEEDS):
        options = all_ways[seed % len(all_ways)] if seed % 2 else {}
        yield from made(skill, options, seed=seed, vocabulary=vocabulary, method=method)


def items_of(skill, options):
    """Return what a skill can ask about."""
    return GENERATORS[skill].items({**options_at(skill, options, 0), "currency": "usd"})


def made(skill, options, *, seed=0, count=1, vocabulary="us", method="counting on"):
    """Return tasks, or none where there is nothing with these options."""
    return make_tasks(
        skill,
        seed=seed,
        count=min(count, len(items_of(skill, options))),
        vocabulary=vocabulary,
        method=method,
        options=options,
        twins=0,
    )


def value(text):
    """Work out one side of an equation, from the left."""
    first, *rest = text.split(" ")
    total = int(first)
    for sign, number in zip(rest[::2], rest[1::2], strict=True):
        total += int(number) if sign == "+" else -int(number)
    return total


def solve(prompt):
    """Find what a sum, an equation with a gap or a statement asks for, by trying."""
    if prompt.startswith("True or false? "):
        left, right = prompt.removeprefix("True or false? ").split(" = ")
        return "true" if value(left) == value(right) else "false"
    if "?" not in prompt:
        return str(value(prompt))
    left, right = prompt.split(" = ")
    [found] = [
        number
        for number in range(MOST)
        if value(left.replace("?", str(number))) == value(right.replace("?", str(number)))
    ]
    return str(found)


def check(task):
    """Check what is true of every task, whatever it asks."""
    solved = play_steps(task)
    assert is_solved(task, solved), task.prompt
    assert not is_solved(task, facts_of(task.manipulative, task.start))
    answers = [mistake.answer for mistake in task.mistakes if mistake.answer is not None]
    assert len(set(answers)) == len(answers)
    assert task.answer not in answers
    for mistake in task.mistakes:
        assert not holds(mistake.when, solved)
        if task.ask["by"] != "manipulative":
            assert mistake_made(task, {"answer": mistake.answer}) == mistake
            assert re.fullmatch(r"\d+|true|false", mistake.answer)
    text = json.dumps(task.to_data())
    assert Task.from_data(json.loads(text)) == task
    assert task.kind
    for sentence in re.split(r"(?<=[.?!]) ", task.prompt):
        assert 1 <= len(sentence.split()) <= 10, sentence
    for step in task.steps:
        assert len(step.say) <= 200


def integers(text):
    """Return the numbers in a text."""
    return [int(number) for number in re.findall(r"\d+", text)]


def check_steps(task, vocabulary="us", method="counting on"):
    """Check every step of a task and that all of them lead to its answer."""
    if task.manipulative == "ColumnBoard":
        check_columns(task, vocabulary, method)
        return
    oracle = SumOracle(task.start, vocabulary, method)
    for step in task.steps:
        oracle.follow(step)
    if task.ask["by"] != "manipulative":
        assert oracle.answer == task.answer


def check_columns(task, vocabulary, method):
    """Check every step of a written sum; the board shows the same ones."""
    numbers = integers(task.prompt)
    operation = "-" if "-" in task.prompt else "+"
    oracle = column_oracle(operation, numbers, method, vocabulary)
    assert task.start["sum"]["numbers"] == numbers
    for number, (step, sent) in enumerate(
        zip(task.steps, task.start["steps"], strict=True), start=1
    ):
        assert (step.say, step.chant) == (sent["say"], sent["class"])
        assert step.show == {"mode": "show", "step": number}
        oracle.follow(sent, step.numbers)
    oracle.over()
    assert f"{oracle.result}" == task.answer


def check_mistakes(task):
    """Check that the procedure of each mistake is about the task and leads to its wrong answer."""
    for mistake in task.mistakes:
        numbers = mistake.numbers
        assert wrong_of(numbers) == numbers["wrong"], (task.prompt, mistake.rule)
        if mistake.answer is not None:
            assert mistake.answer == f"{numbers['wrong']}"
        begun = [numbers[name] for name in ("from", "take", "whole") if name in numbers]
        shown = [*numbers.get("terms", []), *numbers.get("shown", []), *begun]
        if numbers["act"] == "judge":
            assert set(integers(task.prompt)) <= set(numbers["numbers"])
        else:
            assert shown == integers(task.prompt)
        assert f"{numbers.get('right', task.answer)}" == task.answer


def others_than(value):
    """Return values that are near one, so that a test sees them noticed."""
    if isinstance(value, bool):
        return [not value]
    if isinstance(value, int):
        return [value + 1, value - 1, value + 10]
    if isinstance(value, list) and isinstance(value[-1], int):
        changed = [[*value[:-1], value[-1] + 1], value[:-1], value[::-1]]
        if value[0] is not None:
            changed.append([value[0] - 1, *value[1:]])
        return [other for other in changed if other != value]
    groups = (["ones", "tens", "hundreds", "thousands"], ["<", "=", ">"], ["+", "-"])
    return [other for group in groups if value in group for other in group if other != value]
