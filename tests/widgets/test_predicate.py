"""The browser's twins of predicates and answers give the verdicts that Python gives."""

from __future__ import annotations

import json
from itertools import product
from pathlib import Path

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.tasks.answers import tidy
from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.lessons.tasks.playing import facts_of, play_steps
from manipulatives.lessons.tasks.predicates import check_predicate, holds
from manipulatives.words.clock_digits import in_digits
from support.node import JavaScriptError

CASES = Path(__file__).parents[1] / "cases"
# Some names are those that every JavaScript object answers to.
NAMES = ("minutes", "answer", "half", "closed", "constructor", "toString", "__proto__", "0", "")
VALUES = (None, True, False, 0, 1, -1, 7, 275, "", "0", "1", "am", "4:35", "true", "null", "é")


def some_facts(source):
    names = source.sample(NAMES, source.below(len(NAMES)))
    return {name: source.choose(VALUES) for name in names}


def some_predicate(source, depth):
    word = source.choose(
        ("=", "!=", "in", "<", "<=", ">", ">=", *(("and", "or", "not") * 2 if depth else ()))
    )
    if word == "not":
        return [word, some_predicate(source, depth - 1)]
    if word in {"and", "or"}:
        return [word, *(some_predicate(source, depth - 1) for _ in range(source.below(4)))]
    name = source.choose(NAMES)
    if word == "in":
        return [word, name, source.sample(VALUES, source.below(4))]
    if word in {"=", "!="}:
        return [word, name, source.choose(VALUES)]
    return [word, name, source.below(310) - 10]


def test_ten_thousand_generated_predicates_have_one_verdict_in_both_languages(js):
    source = Chance(20260302)
    pairs = [[some_predicate(source, 3), some_facts(source)] for _ in range(10_000)]
    for predicate, _ in pairs:
        check_predicate(predicate)
    expected = [holds(predicate, facts) for predicate, facts in pairs]
    assert js("shared/state/predicate.js", "holds", pairs) == expected
    # A generator that gives one verdict only would compare nothing.
    assert 3000 < sum(expected) < 7000


def test_goals_and_mistakes_of_tasks_have_one_verdict_in_both_languages(js):
    source = Chance(7)
    pairs = []
    for skill in SKILLS:
        for task in make_tasks(skill, seed=7, count=SKILLS[skill].tasks, twins=0):
            predicates = (task.goal, *(mistake.when for mistake in task.mistakes))
            answers = (None, task.answer, *(mistake.answer for mistake in task.mistakes))
            begun = [facts_of(task.manipulative, task.start, answer) for answer in answers]
            pairs += product(predicates, [*begun, play_steps(task)])
            for predicate in predicates if task.manipulative == "Clock" else ():
                for _ in range(20):
                    minute = source.below(12) * 5
                    hour = source.choose((source.below(720), source.below(12) * 60 + minute))
                    dial = {"hour": hour, "minute": minute, "half": "am"}
                    answer = source.choose((None, task.answer, in_digits(hour)))
                    pairs.append([predicate, facts_of("Clock", {"dial": dial}, answer)])
    pairs = [[*pair] for pair in pairs]
    expected = [holds(predicate, facts) for predicate, facts in pairs]
    assert js("shared/state/predicate.js", "holds", pairs) == expected
    assert any(expected)


def test_the_shared_predicate_cases_hold_in_javascript(js):
    cases = json.loads((CASES / "predicates.json").read_text())
    verdicts = js(
        "shared/state/predicate.js", "holds", [[c["predicate"], c["facts"]] for c in cases]
    )
    assert verdicts == [case["holds"] for case in cases]


@pytest.mark.parametrize(
    "broken",
    [None, "and", [], ["=", "minutes"], ["~", "minutes", 1], ["in", "minutes", "12"], ["not"],
     ["constructor", "minutes", 1], ["=", 3, 3], ["and", ["="]], [["="], "minutes", 1]],
)  # fmt: skip
def test_what_is_no_predicate_is_refused_in_both_languages(js, broken):
    with pytest.raises(ValueError, match="is no predicate"):
        holds(broken, {"minutes": 1})
    with pytest.raises(JavaScriptError, match="no predicate"):
        js("shared/state/predicate.js", "holds", [[broken, {"minutes": 1}]])


def test_the_shared_answer_cases_are_tidied_alike_in_javascript(js):
    cases = json.loads((CASES / "answers.json").read_text())
    tidied = js("shared/state/answers.js", "tidy", [[case["form"], case["text"]] for case in cases])
    assert tidied == [case["tidy"] for case in cases]


def test_ten_thousand_generated_answers_are_tidied_alike_in_both_languages(js):
    source = Chance(435)
    letters = "0123456789" * 3 + "::.. -\n\tap\u00a0\u0664"
    calls = [
        [
            source.choose(("time", "number")),
            "".join(source.choose(letters) for _ in range(source.below(7))),
        ]
        for _ in range(10_000)
    ]
    expected = [tidy(form, text) for form, text in calls]
    assert js("shared/state/answers.js", "tidy", calls) == expected
    assert 1000 < sum(one is not None for one in expected) < 9000


def test_an_unknown_form_of_answer_is_refused_in_javascript_too(js):
    with pytest.raises(JavaScriptError, match='"time", "number" or "sum", not "money"'):
        js("shared/state/answers.js", "tidy", [["money", "1.50"]])
