"""What is asked and shown of place value is right; worked out afresh from blocks, digits, words."""

from __future__ import annotations

import json
import re
from collections import Counter
from copy import deepcopy
from dataclasses import replace
from functools import cache
from itertools import combinations, pairwise, product

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.strands.place_value.mistakes import RULES
from manipulatives.lessons.strands.place_value.pools import Triples, pairs, triples
from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.tasks.generator import Request
from manipulatives.lessons.tasks.make import GENERATORS, make_tasks
from manipulatives.lessons.tasks.playing import facts_of, is_solved, mistake_made, play_steps
from manipulatives.lessons.tasks.predicates import holds
from manipulatives.lessons.tasks.task import Task
from support.oracles.place_value import (
    NumberOracle,
    PairOracle,
    in_words,
    wrong_of,
)
from support.seeds import SEEDS

WORTH = {"thousands": 1000, "hundreds": 100, "tens": 10, "ones": 1}
STRAND = [skill for skill in SKILLS.values() if skill.strand == "place_value"]
NAMES = [
    "teens", "read_blocks", "build_number", "read_words", "choose_words", "expanded_form",
    "from_expanded", "digit_worth", "compare", "order",
]  # fmt: skip
IDS = [f"place_value.{name}" for name in NAMES]


def ways(skill):
    """Every combination of a skill's options for which there are tasks."""
    for values in product(*skill.options.values()):
        options = dict(zip(skill.options, values, strict=True))
        if len(GENERATORS[skill.id].items(options)):
            yield options


def some_of(skill, options, *, count=2, vocabulary="us", seed=5):
    count = min(count, len(GENERATORS[skill].items(options)))
    return make_tasks(
        skill, seed=seed, count=count, vocabulary=vocabulary, options=options, twins=0
    )


def integers(text):
    return [int(number) for number in re.findall(r"\d+", text)]


def shown(task, mat=0):
    return sum(count * WORTH[place] for place, count in task.start["mat"][mat].items())


@cache
def numbers_by_words(vocabulary):
    return {in_words(number, vocabulary): number for number in range(1, 1001)}


def number_in(words, vocabulary):
    return numbers_by_words(vocabulary)[words]


def answer_by_reading(task, vocabulary):  # noqa: PLR0911 - a line or two for each skill
    """Work out the answer from the prompt, or from the blocks on the mat."""
    name, prompt = task.skill.partition(".")[2], task.prompt
    numbers = integers(prompt)
    if name == "teens":
        return str(numbers[0] + numbers[1] if "+" in prompt else numbers[0] - 10)
    if name == "read_blocks":
        return str(shown(task))
    if name in ("build_number", "read_words"):
        words = prompt.removeprefix("Show ").removesuffix(" with blocks.")
        words = words.removeprefix("Write in digits: ").removesuffix(".")
        return str(sum(numbers) if numbers else number_in(words, vocabulary))
    if name == "choose_words":
        return in_words(numbers[0], vocabulary)
    if name == "expanded_form":
        digits = str(numbers[0])
        worths = [digit + "0" * (len(digits) - at - 1) for at, digit in enumerate(digits)]
        return " + ".join(worth for worth in worths if worth[0] != "0")
    if name == "from_expanded":
        return str(sum(numbers))
    if name == "digit_worth":
        digit, number = map(str, numbers)
        return digit + "0" * (len(number) - number.index(digit) - 1)
    if name == "compare":
        return "<=>"[(numbers[0] >= numbers[1]) + (numbers[0] > numbers[1])]
    assert name == "order"
    return str(sorted(numbers)[-1 if "greatest" in prompt else 0])


def oracle_of(task, vocabulary):
    numbers = integers(task.prompt)
    if task.skill.endswith((".compare", ".order")):
        return PairOracle(*numbers)
    if task.skill.endswith(".teens"):
        number = max(int(task.answer), *numbers)
    elif task.skill.endswith(".digit_worth"):
        number = numbers[1]
    elif task.skill.endswith((".choose_words", ".expanded_form")):
        number = numbers[0]
    else:
        number = int(answer_by_reading(task, vocabulary))
    return NumberOracle(number, vocabulary)


def follow_steps(task, vocabulary):
    oracle = oracle_of(task, vocabulary)
    for step in task.steps:
        oracle.follow(step)


def others_than(value):
    """Values near one that a step carries."""
    if isinstance(value, int):
        return [value + 1, value + 10]
    if isinstance(value, list):
        return [[*value[:-1], value[-1] + 1], [value[0] + 10, *value[1:]], value[:-1]]
    if isinstance(value, dict):
        return [{**value, place: digit + 1} for place, digit in value.items()]
    rings = (("ones", "tens", "hundreds", "thousands"), "<=>", ("greatest", "smallest"))
    ring = next(ring for ring in rings if value in ring)
    return [ring[(ring.index(value) + 1) % len(ring)]]


def test_the_oracle_notices_a_number_that_is_not_so():
    seen = Counter()
    for skill in STRAND:
        for options in ways(skill):
            for task in some_of(skill.id, options, count=3):
                oracle = oracle_of(task, "us")
                for step in task.steps:
                    for name, value in step.numbers.items():
                        for wrong in others_than(value) if name != "act" else ():
                            changed = replace(step, numbers={**step.numbers, name: wrong})
                            with pytest.raises((AssertionError, KeyError, IndexError, ValueError)):
                                deepcopy(oracle).follow(changed)
                            seen[step.numbers["act"]] += 1
                    spoilt = re.sub(r"\d+", lambda one: f"{int(one[0]) + 1}", step.say, count=1)
                    if spoilt != step.say:
                        with pytest.raises(AssertionError):
                            deepcopy(oracle).follow(replace(step, say=spoilt))
                    oracle.follow(step)
    assert len(seen) == 12


@pytest.mark.parametrize("skill", STRAND, ids=lambda skill: skill.id)
def test_the_procedure_of_a_mistake_leads_to_its_answer(skill):
    for options in ways(skill):
        for seed in range(20):
            for task in some_of(skill.id, options, seed=seed, count=3):
                for mistake in task.mistakes:
                    wrong = mistake.numbers["wrong"]
                    assert wrong_of(mistake.numbers) == wrong, (task.prompt, mistake.rule)
                    if skill.id.endswith("choose_words"):
                        assert mistake.answer == in_words(wrong, "us")
                    else:
                        assert mistake.answer == f"{wrong}"


def test_the_strand_has_its_skills_and_each_builds_on_one_that_there_is():
    assert {skill.id for skill in STRAND} == set(IDS)
    assert all(before in SKILLS for skill in STRAND for before in skill.builds_on)


@pytest.mark.parametrize("skill", IDS)
def test_many_rounds_are_right_and_their_steps_end_in_the_goal(skill):
    for seed in range(SEEDS):
        for task in make_tasks(skill, seed=seed, count=2, twins=0):
            assert task.answer == answer_by_reading(task, "us")
            assert holds(task.goal, play_steps(task))
            follow_steps(task, "us")


@pytest.mark.parametrize("skill", STRAND, ids=lambda skill: skill.id)
def test_every_option_in_both_vocabularies_is_right_to_its_last_sentence(skill):
    for options in ways(skill):
        for vocabulary, seed in product(("us", "uk"), range(SEEDS // 50)):
            for task in some_of(skill.id, options, count=6, vocabulary=vocabulary, seed=seed):
                assert task.answer == answer_by_reading(task, vocabulary)
                assert holds(task.goal, play_steps(task))
                follow_steps(task, vocabulary)
                assert Task.from_data(json.loads(json.dumps(task.to_data()))) == task
                if task.ask["by"] != "manipulative":
                    assert task.steps[-1].answer == task.answer
                if task.answer.isdigit():
                    assert task.spoken == in_words(int(task.answer), vocabulary)


@pytest.mark.parametrize("skill", STRAND, ids=lambda skill: skill.id)
def test_mistakes_are_wrong_and_each_is_told_once(skill):
    for options in ways(skill):
        for task in some_of(skill.id, options, count=6):
            given = [mistake.answer for mistake in task.mistakes]
            assert task.answer not in given
            assert None not in given
            assert len(set(given)) == len(given)
            for mistake in task.mistakes:
                if task.ask["by"] == "manipulative":
                    facts = {"number": int(mistake.answer)}
                else:
                    facts = {"answer": mistake.answer}
                assert mistake_made(task, facts) == mistake
            assert mistake_made(task, facts_of(task.manipulative, task.start)) is None


@pytest.mark.parametrize("skill", IDS)
def test_what_is_asked_is_never_shown_at_first(skill):
    for options in ways(SKILLS[skill]):
        for task in some_of(skill, options):
            assert not is_solved(task, facts_of(task.manipulative, task.start))
            for reading in ("numeral", "expanded", "words", "equation"):
                assert not task.start.get(reading)
            assert task.start["digits"] is False
            if skill in ("place_value.read_words", "place_value.from_expanded"):
                assert shown(task) == 0


def test_choices_hold_the_right_words_once_and_every_foreseen_one_among_them():
    for vocabulary in ("us", "uk"):
        for to in (20, 100, 1000):
            tasks = make_tasks(
                "place_value.choose_words",
                seed=3,
                count=20,
                vocabulary=vocabulary,
                options={"to": to},
                twins=0,
            )
            for task in tasks:
                choices = task.ask["choices"]
                assert 3 <= len(choices) <= 4
                assert len(set(choices)) == len(choices)
                assert choices.count(task.answer) == 1
                assert {mistake.answer for mistake in task.mistakes} <= set(choices)
                assert all(number_in(words, vocabulary) for words in choices)


def test_the_right_words_stand_anywhere_among_the_choices():
    """Chi-squared of three degrees of freedom passes 22 once in ten thousand times."""
    places = Counter(
        task.ask["choices"].index(task.answer)
        for seed in range(150)
        for task in make_tasks(
            "place_value.choose_words", seed=seed, count=3, options={"to": 1000}, twins=0
        )
    )
    expected = sum(places.values()) / 4
    assert sum((places[place] - expected) ** 2 / expected for place in range(4)) < 22


def zeros_as_written(number):
    digits = str(number)
    if digits == "1000":
        return "both"
    return {(False, False): "none", (False, True): "ones", (True, False): "tens"}.get(
        (len(digits) == 3 and digits[1] == "0", len(digits) > 1 and digits[-1] == "0"), "both"
    )


@pytest.mark.parametrize("zeros", ["none", "ones", "tens", "both"])
@pytest.mark.parametrize(("to", "least"), [(20, 1), (100, 10), (1000, 100)])
def test_zeros_stand_exactly_where_they_are_asked_for(zeros, to, least):
    every = [number for number in range(least, to + 1) if zeros_as_written(number) == zeros]
    for skill in ("read_blocks", "build_number", "read_words", "choose_words"):
        options = {"to": to, "zeros": zeros, "pieces": "fewest"}
        assert list(GENERATORS[f"place_value.{skill}"].items(options)) == every
    for skill in ("expanded_form", "from_expanded"):
        items = GENERATORS[f"place_value.{skill}"].items({"to": to, "zeros": zeros})
        assert list(items) == [n for n in every if len(str(n).replace("0", "")) > 1]


def test_the_zeros_of_a_round_come_in_the_order_that_is_asked_for():
    for seed in range(30):
        tasks = make_tasks(
            "place_value.expanded_form",
            seed=seed,
            count=4,
            options={"to": 1000, "zeros": ["none", "tens", "ones"]},
            twins=0,
        )
        found = [zeros_as_written(integers(task.prompt)[0]) for task in tasks]
        assert found == ["none", "tens", "ones", "ones"]


def test_no_number_to_100_has_an_empty_tens_place_in_it():
    with pytest.raises(LessonProblem, match="has only 0 different tasks"):
        make_tasks("place_value.read_blocks", seed=1, count=1, options={"to": 100, "zeros": "tens"})


def test_more_pieces_than_need_be_are_one_trade_away():
    for seed in range(60):
        for to in (20, 100, 1000):
            [task] = make_tasks(
                "place_value.read_blocks",
                seed=seed,
                count=1,
                options={"to": to, "pieces": "more"},
                twins=0,
            )
            counts = list(task.start["mat"][0].values())
            assert sum(counts) == sum(map(int, task.answer)) + 9
            assert max(counts) >= 10
            assert " and " in task.steps[0].say
            beside = "".join(map(str, counts)).lstrip("0")
            # Ten ones beside no tens are written 10, which is right.
            if beside != task.answer:
                assert mistake_made(task, {"answer": beside}).rule == "counts_beside"


def test_parts_may_be_written_in_any_order_and_a_zero_is_not_a_part():
    count = len(GENERATORS["place_value.expanded_form"].items({"to": 1000, "zeros": "any"}))
    tasks = make_tasks(
        "place_value.expanded_form", seed=0, count=count, options={"to": 1000}, twins=0
    )
    by_number = {integers(task.prompt)[0]: task for task in tasks}
    assert is_solved(by_number[345], {"answer": "5 + 300 + 40"})
    for number, wrong, rule in (
        (345, "3 + 4 + 5", "digits_without_place"),
        (345, "300405", "plus_left_out"),
        (305, "300 + 0 + 5", "zero_as_part"),
        (305, "30 + 5", "place_closed_up"),
        (340, "300 + 40 + 0", "zero_as_part"),
    ):
        assert mistake_made(by_number[number], {"answer": wrong}).rule == rule


def test_mixed_parts_are_never_in_order_and_join_to_the_same_number():
    for seed in range(60):
        options = {"to": 1000, "parts": "mixed"}
        [task] = make_tasks(
            "place_value.from_expanded", seed=seed, count=1, options=options, twins=0
        )
        parts = integers(task.prompt)
        assert parts != sorted(parts, reverse=True)
        come = "".join(str(part)[0] for part in parts)
        if come != task.answer:
            assert mistake_made(task, {"answer": come}) is not None


def first_difference(one, other):
    one, other = f"{one:04}", f"{other:04}"
    differing = [at for at in range(4) if one[at] != other[at]]
    return ("thousands", "hundreds", "tens", "ones")[differing[0]] if differing else "equal"


@pytest.mark.parametrize("to", [10, 20, 100])
@pytest.mark.parametrize("decides", ["any", "hundreds", "tens", "ones", "equal"])
def test_pairs_are_just_those_in_which_the_place_decides(to, decides):
    every = {
        (one, other)
        for one, other in product(range(1, to + 1), repeat=2)
        if decides in ("any", first_difference(one, other))
    }
    family = pairs(to, decides)
    listed = list(family)
    assert len(listed) == len(set(listed)) == len(every)
    assert set(listed) == every
    assert all(pair in family for pair in listed[:50])


def test_pairs_up_to_1000_are_counted_right_and_picked_right():
    """Of 1 to 1000: 90 pairs of hundreds of 100 numbers each, less what has no 0 and with 1000."""
    assert len(pairs(1000, "any")) == 1_000_000
    assert len(pairs(1000, "hundreds")) == 2 * (36 * 100 * 100 + 9 * 99 * 100)
    assert len(pairs(1000, "equal")) == 1000
    for decides in ("hundreds", "tens", "ones"):
        family = pairs(1000, decides)
        for index in range(0, len(family), len(family) // 97):
            assert first_difference(*family[index]) == decides


def test_a_round_of_comparing_follows_its_pattern():
    wanted = ["hundreds", "tens", "equal", "ones", "tens"]
    for seed in range(60):
        tasks = make_tasks(
            "place_value.compare",
            seed=seed,
            count=5,
            options={"to": 1000, "decides": wanted},
            twins=0,
        )
        assert [first_difference(*integers(task.prompt)) for task in tasks] == wanted


@pytest.mark.parametrize(
    ("numbers", "given", "rules"),
    [
        # 341 against 287: 1 < 7 by last digits, 8 < 17 by sums, and the sign turned round.
        ((341, 287), "<", {"compared_last_digits", "compared_digit_sums", "sign_turned"}),
        ((98, 105), ">", {"compared_first_digits", "compared_last_digits"}),
        ((345, 354), "=", {"compared_first_digits", "compared_digit_sums"}),
    ],
)
def test_a_wrong_sign_suggests_all_that_may_have_happened(numbers, given, rules):
    generator = GENERATORS["place_value.compare"]
    request = Request("place_value.compare", numbers, 0, Chance(1), "us", {"to": 1000})
    mistake = mistake_made(generator.task(request), {"answer": given})
    sentences = {rule.id: rule.may_have for rule in RULES}
    assert mistake.rule in rules
    assert all(sentences[rule] in mistake.teacher for rule in rules)


def test_triples_are_all_sets_of_three_each_once():
    for long in range(3, 12):
        listed = list(Triples(range(5, 5 + long)))
        assert sorted(listed) == list(combinations(range(5, 5 + long), 3))


def test_triples_are_alike_as_they_are_asked_for():
    same_tens = list(triples(100, "tens"))
    assert len(same_tens) == len(set(same_tens)) == 9 * 120
    assert all(len({number // 10 for number in three}) == 1 for three in same_tens)
    same_digits = list(triples(1000, "digits"))
    assert len(same_digits) == len(set(same_digits)) == 84 * 20
    assert all(len({"".join(sorted(str(n))) for n in three}) == 1 for three in same_digits)
    hundreds = triples(1000, "hundreds")
    assert len(hundreds) == 9 * 161_700
    for index in range(0, len(hundreds), len(hundreds) // 97):
        assert len({number // 100 for number in hundreds[index]}) == 1


def test_a_digit_whose_worth_is_asked_for_stands_in_its_place_alone():
    for place, at in (("ones", -1), ("tens", -2), ("hundreds", -3)):
        tasks = make_tasks(
            "place_value.digit_worth",
            seed=4,
            count=60,
            options={"to": 1000, "place": place},
            twins=0,
        )
        for task in tasks:
            digit, number = map(str, integers(task.prompt))
            assert number[at] == digit != "0"
            assert number.count(digit) == 1


def test_a_number_is_built_with_any_blocks_that_are_worth_it():
    for seed in range(40):
        [task] = make_tasks("place_value.build_number", seed=seed, count=1, twins=0)
        number = int(task.answer)
        loose = {"thousands": 0, "hundreds": 0, "tens": number // 10 - 1, "ones": number % 10 + 10}
        for blocks, right in ((loose, True), ({**loose, "ones": loose["ones"] + 1}, False)):
            facts = facts_of("PlaceValueBlocks", {**task.start, "mat": [blocks]})
            assert is_solved(task, facts) is right


def test_mixed_order_never_asks_one_kind_twice_in_a_row():
    for seed in range(30):
        for skill in ("place_value.teens", "place_value.digit_worth", "place_value.order"):
            options = {"order": "mixed"}
            tasks = make_tasks(skill, seed=seed, count=6, options=options, twins=0)
            kinds = [task.kind for task in tasks]
            assert all(one != other for one, other in pairwise(kinds))
