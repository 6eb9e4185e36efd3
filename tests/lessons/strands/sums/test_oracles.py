"""The oracles notice each number that is not so; the proofs of all sums stand on them."""

from __future__ import annotations

import random
import re
from dataclasses import replace
from itertools import combinations

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.strands.addition.mistakes import columns, equals
from manipulatives.lessons.strands.stories.mistakes import MISSING_NUMBERS, STORY_NUMBERS
from manipulatives.lessons.strands.subtraction.mistakes import RULES as TAKING
from support.oracles.sums import SumOracle
from support.oracles.wrong_sums import wrong_of
from support.sum_tasks import made, others_than, way_name, ways

NOTICED = (AssertionError, ValueError, IndexError, KeyError, TypeError, AttributeError)
ON_LINE_AND_BLOCKS = [
    way
    for strand in ("addition", "subtraction")
    for way in ways(strand)
    if SKILLS[way[0]].manipulative != "ColumnBoard"
]


def follow(task, steps, method):
    """Follow steps to their end."""
    oracle = SumOracle(task.start, method=method)
    for step in steps:
        oracle.follow(step)
    assert task.ask["by"] == "manipulative" or oracle.answer == task.answer


def texts_with_another_number(text):
    """Yield a text again and again, each time with one number changed."""
    for found in re.finditer(r"\d+", text):
        yield f"{text[: found.start()]}{int(found[0]) + 1}{text[found.end() :]}"


def wrong_steps(step):
    """Yield a step again and again, each time with one number changed."""
    for say in texts_with_another_number(step.say):
        yield replace(step, say=say)
    for chant in texts_with_another_number(step.chant):
        yield replace(step, chant=chant)
    for name, value in step.numbers.items():
        for other in others_than(value):
            yield replace(step, numbers={**step.numbers, name: other})
    if step.show.get("chart", {}).get("counted"):
        *counted, last = step.show["chart"]["counted"]
        yield replace(step, show={"chart": {"counted": [*counted, last + 1]}})
    if "mat" in step.show:
        first, second = step.show["mat"]
        yield replace(step, show={"mat": [first, {**second, "ones": second["ones"] + 1}]})


@pytest.mark.parametrize("method", ["counting on", "bridging ten"])
@pytest.mark.parametrize("way", ON_LINE_AND_BLOCKS, ids=way_name)
def test_each_number_that_is_changed_is_noticed(way, method):
    skill, options = way
    for task in made(skill, options, seed=2, count=2, method=method):
        steps = task.steps
        follow(task, steps, method)
        for at, step in enumerate(steps):
            for wrong in wrong_steps(step):
                with pytest.raises(NOTICED):
                    follow(task, [*steps[:at], wrong, *steps[at + 1 :]], method)
            if "answer" in step.numbers:
                # The last sentence says the whole sum, or the judgement.
                with pytest.raises(NOTICED):
                    follow(
                        task,
                        [*steps[:at], replace(step, say="Well done."), *steps[at + 1 :]],
                        method,
                    )


def test_every_act_that_the_oracle_knows_is_done_somewhere():
    done = {
        step.numbers["act"]
        for skill, options in ON_LINE_AND_BLOCKS
        for method in ("counting on", "bridging ten")
        for seed in range(3)
        for task in made(skill, options, seed=seed, count=8, method=method)
        for step in task.steps
    }
    assert done == {name[1:] for name in vars(SumOracle) if re.match("_[a-z]", name)}


def many_sums():
    """Sums of two to four numbers with many zeros and nines; always the same."""
    source = random.Random(90213)  # noqa: S311 - no secret
    for _ in range(3000):
        lengths = [source.randint(1, 4) for _ in range(source.choice((2, 2, 2, 3, 4)))]
        numbers = ["".join(source.choice("0001123456789") for _ in range(n)) for n in lengths]
        yield [int(number) for number in numbers]


ADDITIONS = [{"act": "add", "terms": numbers} for numbers in many_sums()]
SUBTRACTIONS = [
    {"act": "take", "from": max(numbers[:2]), "take": min(numbers[:2])} for numbers in many_sums()
]
ANSWERS = [
    {"act": "answer", "shown": [first, second], "right": right}
    for first in range(12)
    for second in range(12)
    for right in {first + second, abs(first - second)}
]


def given_to_rule(numbers):
    """What a rule is called with, and the right answer."""
    if numbers["act"] == "add":
        return numbers["terms"], sum(numbers["terms"])
    if numbers["act"] == "take":
        return (numbers["from"], numbers["take"]), numbers["from"] - numbers["take"]
    return (*numbers["shown"], numbers["right"]), numbers["right"]


TABLES = [(columns.RULES, ADDITIONS), (TAKING, SUBTRACTIONS),
          (STORY_NUMBERS, ANSWERS), (MISSING_NUMBERS, ANSWERS)]  # fmt: skip


@pytest.mark.parametrize(
    ("rule", "sums"),
    [pytest.param(rule, sums, id=rule.id) for rules, sums in TABLES for rule in rules],
)
def test_what_a_rule_does_is_what_its_data_say(rule, sums):
    """Of a procedure that nobody can go on with, or that leads to the right answer, there is no
    wrong answer."""  # noqa: D205, D209 - one sentence
    shown = 0
    for numbers in sums:
        given, right = given_to_rule(numbers)
        wrong = wrong_of({**numbers, **rule.does})
        assert rule.wrong(*given) == (None if wrong == right else wrong), (rule.id, numbers)
        shown += wrong not in (None, right)
    assert shown


def test_a_statement_is_judged_as_the_data_of_a_rule_say():
    for form in ("sum first", "sum last", "both sides", "turned sum", "turned difference"):
        for a in range(1, 8):
            for b in range(1, 8):
                for c in range(1, 15):
                    d = b if form == "both sides" else 0
                    statement = (form, a, b, *((b, a) if form.startswith("turned") else (c, d)))
                    for rule in equals.RULES:
                        wrong = rule.wrong(*statement)
                        numbers = {"act": "judge", "form": form, "numbers": [*statement[1:]]}
                        assert wrong in (None, wrong and wrong_of({**numbers, **rule.does}))


@pytest.mark.parametrize(("rules", "sums"), TABLES)
def test_the_data_of_two_rules_never_mean_the_same(rules, sums):
    for one, other in combinations(rules, 2):
        assert one.does != other.does
        assert any(
            wrong_of({**numbers, **one.does}) != wrong_of({**numbers, **other.does})
            for numbers in sums
        ), (one.id, other.id)
