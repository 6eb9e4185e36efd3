"""What is asked, said and shown about coins is right: added up afresh from what lies there."""

from __future__ import annotations

import json
import re
from collections import Counter
from copy import deepcopy
from dataclasses import replace
from functools import cache
from itertools import combinations_with_replacement, pairwise, product

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS as EVERY
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.strands.rules import RULES
from manipulatives.lessons.tasks.answers import tidy
from manipulatives.lessons.tasks.make import GENERATORS, make_tasks, make_typed
from manipulatives.lessons.tasks.playing import facts_of, is_solved, mistake_made, play_steps
from manipulatives.lessons.tasks.predicates import holds, spell_out
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.money.tray import check_tray, tray_of
from manipulatives.widgets.coins import CoinTray
from support.oracles.money import (
    SIGNS,
    TABLES,
    CoinOracle,
    amount,
    fewest,
    name_of,
    small_coins,
    wrong_of,
)
from support.seeds import SEEDS

SKILLS = [skill for skill in EVERY.values() if skill.strand == "money"]
CURRENCIES = tuple(TABLES)
NAMES = [skill.id for skill in SKILLS]
MINOR = {"usd": "cents", "gbp": "pence", "eur": "cents", "cad": "cents", "aud": "cents",
         "nzd": "cents"}  # fmt: skip


@cache
def of_seeds(skill, money):
    """Tasks of many seeds, of all options in turn, in the vocabulary that goes with the money."""
    table = next(one for one in SKILLS if one.id == skill).options
    ways = [dict(zip(table, values, strict=True)) for values in product(*table.values())]
    vocabulary = "us" if money in ("usd", "cad") else "uk"
    tasks = []
    for seed in range(SEEDS):
        options = ways[seed % len(ways)]
        if GENERATORS[skill].items({**options, "currency": money}):
            tasks += make_tasks(
                skill, seed=seed, count=1, vocabulary=vocabulary, currency=money, options=options,
                twins=0,
            )  # fmt: skip
    return tasks


def each(*skills):
    return [
        pytest.param(skill, money, id=f"{skill} {money}")
        for skill in (skills or NAMES)
        for money in CURRENCIES
    ]


def worths_on(traits):
    return sorted((int(lying["coin"]) for lying in traits["tray"]), reverse=True)


def laid_by(task, worths):
    """What is true when these coins lie on the tray of a task."""
    tray = tray_of([str(worth) for worth in worths], task.start["currency"])
    return facts_of("CoinTray", {**task.start, "tray": tray})


def ways_to_make(total, money, most):
    """Every group of up to so many small coins that is worth an amount, by trying all groups."""
    return [
        group
        for many in range(1, most + 1)
        for group in combinations_with_replacement(small_coins(money), many)
        if sum(group) == total
    ]


@pytest.mark.parametrize(("skill", "money"), each())
def test_every_step_is_true_of_the_coins(skill, money):
    for task in of_seeds(skill, money):
        oracle = CoinOracle(task.start)
        for step in task.steps:
            oracle.follow(step)
        assert len(task.steps) >= 2


@pytest.mark.parametrize(("skill", "money"), each())
def test_the_procedure_of_a_mistake_leads_to_its_answer(skill, money):
    for task in of_seeds(skill, money):
        for mistake in task.mistakes:
            numbers = mistake.numbers
            if "wrong" not in numbers:
                assert numbers["laid"]
                continue
            assert wrong_of(numbers, money) == numbers["wrong"], (task.prompt, mistake.rule)
            if task.ask["by"] == "keypad":
                assert mistake.answer == f"{numbers['wrong']}"
            elif numbers["act"] == "count":
                assert amount(mistake.answer, money) == numbers["wrong"]
                assert mistake.when == ["=", "total", numbers["wrong"]]
            elif numbers["act"] == "lay":
                assert mistake.when == ["=", "kinds", " ".join(map(str, numbers["wrong"]))]
            elif skill == "money.name_coins":
                assert mistake.answer == name_of(int(numbers["wrong"]), money)
            else:
                assert amount(mistake.answer, money) == int(numbers["wrong"])


@pytest.mark.parametrize("laid", ["as many as units", "coin for coin", "more than needed"])
def test_what_shows_in_the_coins_is_found_when_such_coins_are_laid(laid):
    found = 0
    for skill in ("money.make_amount", "money.another_way", "money.fewest_coins"):
        for task in of_seeds(skill, "usd")[:60]:
            for mistake in task.mistakes:
                wanted = mistake.numbers.get("amount", 0)
                # Below ten cents, nickels and pennies are the fewest coins.
                if mistake.numbers.get("laid") != laid or 0 < wanted < 10:
                    continue
                coins = {
                    "as many as units": [5] * wanted,
                    "coin for coin": [*mistake.numbers.get("coins", ())[1:], 50],
                    "more than needed": [5] * (wanted // 5) + [1] * (wanted % 5),
                }[laid]
                assert mistake_made(task, laid_by(task, coins)).rule == mistake.rule
                found += 1
    assert found


@pytest.mark.parametrize(
    "change",
    [
        {"total": 3},
        {"counted": [1, 2, 3]},
        {"coins": [25]},
        {"from": 1},
        {"give": [10]},
        {"take": [5]},
        {"larger": 9},
        {"smaller": 9},
        {"sides": 5},
        {"parts": [1]},
        {"at": 0},
        {"coin": 50},
        {"by": 3},
    ],
    ids=str,
)
def test_the_oracle_refuses_what_is_not_so(change):
    refused = 0
    for skill in NAMES:
        for task in of_seeds(skill, "usd")[:5]:
            oracle = CoinOracle(task.start)
            for step in task.steps:
                if step.numbers.keys() >= change.keys():
                    wrong = replace(step, numbers={**step.numbers, **change})
                    if wrong != step:
                        with pytest.raises((AssertionError, TypeError)):
                            deepcopy(oracle).follow(wrong)
                        refused += 1
                # The sentences with a number are held to it.
                if re.search(r"\d", step.say):
                    other = re.sub(r"\d+", "77", step.say, count=1)
                    with pytest.raises(AssertionError):
                        deepcopy(oracle).follow(replace(step, say=other))
                oracle.follow(step)
    assert refused


@pytest.mark.parametrize(("skill", "money"), each())
def test_playing_the_steps_ends_in_the_goal_and_begins_elsewhere(skill, money):
    for task in of_seeds(skill, money):
        begun, solved = facts_of("CoinTray", task.start), play_steps(task)
        assert is_solved(task, solved), (task.prompt, spell_out(task.goal))
        assert not is_solved(task, begun)
        assert mistake_made(task, begun) is None
        for mistake in task.mistakes:
            assert not holds(mistake.when, solved)


@pytest.mark.parametrize(("skill", "money"), each())
def test_foreseen_mistakes_differ_are_wrong_and_are_found(skill, money):
    for task in of_seeds(skill, money):
        named = [one.answer for one in task.mistakes if one.answer is not None]
        assert task.answer not in named
        assert len(set(named)) == len(named)
        for mistake in task.mistakes:
            assert mistake.rule in RULES
            assert mistake.teacher.startswith("May have ")
            if task.ask["by"] == "keypad":
                assert tidy("number", mistake.answer) == mistake.answer
            if task.ask["by"] != "manipulative":
                assert mistake_made(task, {"answer": mistake.answer}) == mistake


@pytest.mark.parametrize(("skill", "money"), each())
def test_coins_lie_where_they_can_and_data_come_back_to_the_byte(skill, money):
    for task in of_seeds(skill, money):
        check_tray(task.start["tray"], money)
        text = json.dumps(task.to_data())
        assert Task.from_data(json.loads(text)) == task


@pytest.mark.parametrize(("skill", "money"), each("money.name_coins", "money.coin_worth"))
def test_a_coin_is_asked_about_beside_others_with_name_and_numeral_off(skill, money):
    for task in of_seeds(skill, money):
        key = task.start["ring"]
        there = [lying["coin"] for lying in task.start["tray"]]
        assert there.count(key) == 1
        assert len(there) == len(set(there)) >= 2
        assert task.start["worths"] is False
        assert not task.start.get("names", False)
        assert task.start["running_total"] is False
        assert not task.start["movable"]
        if skill == "money.name_coins":
            assert task.answer == name_of(int(key), money)
        else:
            assert amount(task.answer, money) == int(key)


def test_the_place_of_a_coin_tells_nothing_about_its_worth():
    first = Counter()
    for seed in range(600):
        [task] = make_tasks("money.name_coins", seed=seed, count=1, twins=0)
        tray = sorted(task.start["tray"], key=lambda lying: (lying["y"], lying["x"]))
        first[int(tray[0]["coin"])] += 1
    # Each of four coins comes first about as often; none in more than a third of all.
    assert set(first) == {25, 10, 5, 1}
    assert max(first.values()) < 200


@pytest.mark.parametrize(("skill", "money"), each("money.count_like", "money.count_mixed"))
def test_coins_are_worth_what_adding_up_says(skill, money):
    for task in of_seeds(skill, money):
        worths = worths_on(task.start)
        unit = task.prompt.removeprefix("How many ").removesuffix(" are there?")
        scale = 1 if unit == MINOR[money] else 100
        assert int(task.answer) * scale == sum(worths)
        assert task.start["running_total"] is False
        assert not task.start.get("counts", False)
        assert (len(set(worths)) == 1) == (skill == "money.count_like")


@pytest.mark.parametrize("kinds", [2, 3, 4])
@pytest.mark.parametrize("most", [4, 6, 8])
def test_as_many_kinds_of_coins_lie_there_as_are_asked_for(kinds, most):
    for seed in range(SEEDS):
        options = {"kinds": kinds, "most": most}
        count = 1 if (kinds, most) == (4, 4) else 3
        for task in make_tasks(
            "money.count_mixed", seed=seed, count=count, options=options, twins=0
        ):
            worths = worths_on(task.start)
            assert len(set(worths)) == kinds
            assert len(worths) <= most


def test_a_list_of_kinds_is_met_task_by_task():
    for seed in range(SEEDS):
        tasks = make_tasks(
            "money.count_mixed", seed=seed, count=4, options={"kinds": [2, 3, 4, 2]}, twins=0
        )
        assert [len(set(worths_on(task.start))) for task in tasks] == [2, 3, 4, 2]


@pytest.mark.parametrize(("skill", "money"), each("money.make_amount"))
def test_an_amount_is_met_by_whatever_coins_make_it(skill, money):
    for task in of_seeds(skill, money)[:60]:
        wanted = amount(task.prompt.split(" costs ")[1].split(". ")[0], money)
        assert wanted == amount(task.answer, money)
        for group in ways_to_make(wanted, money, 4):
            assert is_solved(task, laid_by(task, group))
        for group in ways_to_make(wanted + small_coins(money)[-1], money, 3):
            assert not is_solved(task, laid_by(task, group))


@pytest.mark.parametrize(("skill", "money"), each("money.fewest_coins"))
def test_the_fewest_coins_are_the_fewest_of_all_ways(skill, money):
    for task in of_seeds(skill, money)[:60]:
        wanted = amount(task.answer, money)
        least = fewest(wanted, tuple(small_coins(money)))
        assert len(worths_on(task.steps[-3].show)) == least
        for group in ways_to_make(wanted, money, min(least + 1, 6)):
            facts = laid_by(task, group)
            assert is_solved(task, facts) == (len(group) == least)
            if len(group) > least:
                assert mistake_made(task, facts).rule == "more_coins_than_needed"


@pytest.mark.parametrize(("skill", "money"), each("money.another_way"))
def test_another_way_is_any_other_coins_of_the_same_worth(skill, money):
    for task in of_seeds(skill, money)[:60]:
        start = worths_on(task.start)
        assert amount(task.answer, money) == sum(start)
        assert task.start["running_total"] is False
        others = [group for group in ways_to_make(sum(start), money, 6) if list(group) != start]
        for group in others:
            assert is_solved(task, laid_by(task, group))
        assert not is_solved(task, laid_by(task, start))
        # A coin traded for one coin of another worth.
        least = small_coins(money)[-1]
        swapped = [*start[1:], least if start[0] != least else small_coins(money)[0]]
        assert mistake_made(task, laid_by(task, swapped)).rule == "same_number_of_coins"


@pytest.mark.parametrize(("skill", "money"), each("money.change"))
def test_change_is_what_is_left_of_what_was_paid(skill, money):
    for task in of_seeds(skill, money):
        costs, pays, asks = task.prompt.split(". ")
        small = SIGNS[money][1]
        price, paid = (int(one.rsplit(" ", 1)[1].removesuffix(small)) for one in (costs, pays))
        assert 0 < price < paid
        assert int(task.answer) == paid - price
        assert asks == f"How many {MINOR[money]} come back?"


@pytest.mark.parametrize("paid", [20, 50, 100])
def test_change_from_the_payment_that_is_asked_for(paid):
    for task in make_tasks("money.change", seed=2, count=10, options={"paid": paid}):
        assert f"You pay {paid}¢." in task.prompt


@pytest.mark.parametrize("money", CURRENCIES)
def test_prompts_speak_in_the_writing_of_the_currency(money):
    for skill in NAMES:
        for task in of_seeds(skill, money)[:20]:
            text = " ".join([task.prompt, task.answer, *(step.say for step in task.steps)])
            other = {sign for signs in SIGNS.values() for sign in signs} - set(SIGNS[money])
            for sign in other - {"c", "p"}:
                assert sign not in text
            assert task.start["currency"] == money


def test_mixed_order_changes_the_kind_from_one_task_to_the_next():
    for skill in ("money.name_coins", "money.count_like", "money.count_mixed", "money.change"):
        for seed in range(20):
            tasks = make_tasks(skill, seed=seed, count=4, options={"order": "mixed"}, twins=0)
            assert all(one.kind != other.kind for one, other in pairwise(tasks))


def test_easy_coins_come_first_where_that_is_wanted():
    for seed in range(20):
        tasks = make_tasks(
            "money.make_amount", seed=seed, count=5, options={"order": "easy first"}, twins=0
        )
        amounts = [amount(task.answer, "usd") for task in tasks]
        assert amounts == sorted(amounts)


def test_no_two_tasks_of_a_round_lie_alike():
    for skill in NAMES:
        for seed in range(20):
            tasks = make_tasks(skill, seed=seed, count=4, twins=0)
            asked = [
                json.dumps([task.goal, worths_on(task.start), task.start.get("ring")])
                + (task.prompt.partition(" ")[2] if "costs" in task.prompt else "")
                for task in tasks
            ]
            assert len(set(asked)) == 4


def test_twins_are_of_the_same_kind_and_ask_something_else():
    for skill in NAMES:
        for task in make_tasks(skill, seed=11, count=4):
            assert len(task.twins) == 3
            for twin in task.twins:
                assert twin.kind == task.kind
                assert twin.to_data() != task.to_data()


@pytest.mark.parametrize(
    ("money", "worths", "given", "rule"),
    [
        ("usd", (25, 10, 5, 1), 4, "coins_as_ones"),
        ("usd", (25, 10, 10, 1), 76, "kept_first_step"),
        ("usd", (25, 10, 1, 1), 55, "kept_last_step"),
        ("usd", (25, 10, 1), 31, "size_for_worth"),
        ("usd", (10, 10, 1), 11, "metals_mixed_up"),
        ("usd", (25, 10, 5), 35, "left_one_out"),
        ("usd", (25, 10, 1), 37, "counted_one_twice"),
        ("gbp", (20, 10, 10, 2), 62, "kept_first_step"),
    ],
)
def test_a_wrong_total_is_understood(money, worths, given, rule):
    """Worked by hand: in the first, four coins; in the second, 25, 50, 75 and 1; and so on."""
    kinds, most = len(set(worths)), next(most for most in (4, 6, 8) if most >= len(worths))
    options = {"kinds": kinds, "most": most}
    family = len(GENERATORS["money.count_mixed"].items({**options, "currency": money}))
    tasks = make_tasks(
        "money.count_mixed", seed=0, count=family, currency=money, options=options, twins=0
    )
    task = next(task for task in tasks if tuple(worths_on(task.start)) == worths)
    mistake = mistake_made(task, {"answer": f"{given}"})
    assert mistake.rule == rule


@pytest.mark.parametrize(
    ("cents", "worths", "rule"),
    [
        (12, (5,) * 12, "as_many_coins"),
        (35, (25,), "left_one_out"),
        (35, (25, 10, 10), "counted_one_twice"),
        (6, (10, 1), "coin_by_size"),
        (35, (25, 5), "coin_by_size"),
        (15, (10, 5, 5), "counted_one_twice"),
        (35, (10, 10, 10), None),
    ],
)
def test_coins_that_make_another_amount_are_understood(cents, worths, rule):
    """By size a nickel is taken for a dime, a penny for a nickel, a dime for a penny.

    So 6 cents become a penny (for the nickel) and a dime (for the penny): these are 11 cents.
    """
    tasks = make_tasks("money.make_amount", seed=0, count=99, twins=0)
    task = next(task for task in tasks if amount(task.answer, "usd") == cents)
    mistake = mistake_made(task, laid_by(task, worths))
    assert (mistake.rule if mistake else None) == rule


@pytest.mark.parametrize(("skill", "money"), each())
def test_the_tray_takes_what_tasks_and_their_steps_give_it(skill, money):
    for task in of_seeds(skill, money)[:10]:
        tray = CoinTray(**task.start)
        assert {**tray.facts, "answer": None} == facts_of("CoinTray", task.start)
        for step in task.steps:
            tray.set_trait("currency", money)
            for name, value in step.show.items():
                tray.set_trait(name, value)
        solved = play_steps(task)
        assert {**tray.facts, "answer": solved["answer"]} == solved


@pytest.mark.parametrize(
    ("skill", "text", "answer"),
    [
        ("money.count_mixed", "1 25 10 10", "46"),
        ("money.make_amount", "41", "41¢"),
        ("money.fewest_coins", " 30 ", "30¢"),
        ("money.another_way", "10 25", "35¢"),
        ("money.change", "37 from 50", "13"),
    ],
)
def test_coins_and_amounts_can_be_typed(skill, text, answer):
    assert make_typed(skill, text).answer == answer


@pytest.mark.parametrize(
    ("skill", "text", "says"),
    [
        ("money.count_mixed", "3 4", "'3 4' are no coins of this currency"),
        ("money.count_mixed", "25 25", "'25 25' cannot be asked here; type another, such as"),
        ("money.make_amount", "four", "'four' is no amount"),
        ("money.fewest_coins", "25", "'25' cannot be asked here"),
        ("money.change", "50 - 37", "'50 - 37' is no price and payment"),
        ("money.change", "60 from 50", "'60 from 50' cannot be asked here"),
        ("money.another_way", "1", "'1' cannot be asked here"),
    ],
)
def test_what_is_typed_and_cannot_be_asked_is_refused_with_what_to_do(skill, text, says):
    with pytest.raises(LessonProblem, match=f"^{says}"):
        make_typed(skill, text)


def test_more_kinds_of_coins_than_a_currency_has_are_refused():
    """Below a dollar New Zealand has three coins: 10, 20 and 50 cents."""
    with pytest.raises(LessonProblem, match="has only 0 different tasks"):
        make_tasks("money.count_mixed", seed=1, count=1, currency="nzd", options={"kinds": 4})
