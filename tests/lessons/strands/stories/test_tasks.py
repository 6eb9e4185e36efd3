"""Stories are of the situation that was wanted, and their answers those that trying finds.

Situations and the places of the unknown: Table 1 in the glossary of the Common Core State Standards
for Mathematics (2010).
"""

from __future__ import annotations

import re
from collections import Counter
from functools import cache
from itertools import pairwise

import pytest

from manipulatives.lessons.strands.penny_cross import GOODS, PEOPLE
from manipulatives.lessons.strands.stories.texts import scene
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.lessons.tasks.playing import facts_of, is_solved, mistake_made
from support.oracles.stories import Story
from support.sum_tasks import made, ways

SITUATIONS = {
    "addition.stories_add_to": ("add to", {"result", "change", "start"}),
    "addition.stories_put_together": ("put together", {"total", "addend", "both"}),
    "subtraction.stories_take_from": ("take from", {"result", "change", "start"}),
    "subtraction.stories_compare": ("compare", {"difference", "bigger", "smaller"}),
}
WAYS = [way for strand in ("addition", "subtraction") for way in ways(strand) if "stor" in way[0]]


def of_way(skill, options):
    return _of_way(skill, tuple(options.items()))


@cache
def _of_way(skill, options):
    return [task for seed in range(20) for task in made(skill, dict(options), seed=seed, count=4)]


@pytest.mark.parametrize(("skill", "options"), WAYS)
def test_a_story_asks_what_was_wanted_and_trying_finds_its_answer(skill, options):
    situation, unknowns = SITUATIONS[skill]
    seen = set()
    for task in of_way(skill, options):
        story = Story(task.prompt)
        seen.add(story.unknown)
        assert story.situation == situation
        assert options["unknown"] in ("any", story.unknown)
        assert options.get("wording", "any") in ("any", story.wording)
        wording = f", {story.wording}" if story.wording else ""
        assert task.kind == f"{story.unknown} unknown{wording}"
        assert 1 <= story.answer <= options["to"]
        assert max(story.numbers) <= options["to"]
        if story.unknown == "both":
            left, right = task.answer.split(" = ")
            one, other = map(int, left.split(" + "))
            assert one + other == int(right) == story.answer
            assert min(one, other) > 0
        else:
            assert task.answer == str(story.answer)
    if options["unknown"] == "any":
        # Few stories of many leave both parts open.
        assert seen >= unknowns - {"both"}


def test_a_comparison_is_worded_in_both_ways_for_every_unknown():
    kinds = Counter(
        task.kind
        for seed in range(80)
        for task in made("subtraction.stories_compare", {}, seed=seed)
    )
    assert set(kinds) == {
        f"{unknown} unknown, {wording}"
        for unknown in ("difference", "bigger", "smaller")
        for wording in ("more", "fewer")
    }


def test_a_mixed_round_changes_its_kind_from_story_to_story():
    for skill in SITUATIONS:
        for seed in range(10):
            tasks = make_tasks(skill, seed=seed, count=5, options={"order": "mixed"}, twins=0)
            kinds = [task.kind for task in tasks]
            assert all(one != other for one, other in pairwise(kinds))


@pytest.mark.parametrize(("skill", "options"), WAYS)
def test_numbers_go_with_their_nouns(skill, options):
    one = {goods.one for goods in GOODS}
    many = {goods.many for goods in GOODS}
    for task in of_way(skill, options):
        for count, noun in re.findall(r"\b(\d+) (?:[a-z]+ )??([a-z]+)\b", task.prompt):
            if noun in one | many:
                assert (noun in one) == (count == "1"), task.prompt
        assert not re.search(r"\b1 are\b|\b(?!1 )\d+ is\b", task.prompt)
        for sentence in re.split(r"(?<=[.?]) ", task.prompt):
            assert len(sentence.split()) <= 10


def test_scenes_take_turns():
    """Thirteen people and eleven goods have no common factor."""
    turns = len(PEOPLE) * len(GOODS)
    scenes = [(scene(turn).who, scene(turn).goods.many) for turn in range(turns)]
    assert len(set(scenes)) == turns
    for turn in range(turns):
        assert scene(turn).who != scene(turn).other
        assert scene(turn).who != scene(turn + 1).who
        assert scene(turn).goods != scene(turn + 1).goods


def test_any_two_parts_that_make_the_whole_are_right():
    [task] = made("addition.stories_put_together", {"unknown": "both"}, seed=3)
    whole = Story(task.prompt).answer
    for first in range(whole + 2):
        for second in range(whole + 2):
            mat = [{"ones": first}, {"ones": second}]
            facts = facts_of("PlaceValueBlocks", {**task.start, "mat": mat})
            right = first + second == whole and first > 0 and second > 0
            assert is_solved(task, facts) is right
            mistake = mistake_made(task, facts)
            rule = None
            if not right and first + second:
                gap = first + second - whole
                rule = "parts_short" if gap < 0 else "parts_over" if gap else "parts_in_one"
            assert (mistake.rule if mistake else None) == rule


@pytest.mark.parametrize(
    ("skill", "options", "rule"),
    [
        (
            "subtraction.stories_compare",
            {"unknown": "bigger", "wording": "fewer"},
            "followed_fewer",
        ),
        ("subtraction.stories_compare", {"unknown": "smaller", "wording": "more"}, "followed_more"),
        ("subtraction.stories_compare", {"unknown": "bigger", "wording": "more"}, "took"),
        ("subtraction.stories_compare", {"unknown": "smaller", "wording": "fewer"}, "added"),
        ("addition.stories_add_to", {"unknown": "change"}, "added"),
        ("addition.stories_add_to", {"unknown": "result"}, "took"),
        ("subtraction.stories_take_from", {"unknown": "start"}, "took"),
    ],
)
def test_the_other_operation_is_foreseen(skill, options, rule):
    for task in of_way(skill, options):
        first, second = (int(number) for number in re.findall(r"\d+", task.prompt))
        other = {first + second, abs(first - second)} - {int(task.answer)}
        for answer in other:
            assert mistake_made(task, {"answer": str(answer)}).rule == f"story_{rule}"


def test_a_number_of_the_story_is_no_answer_but_may_be_given():
    for skill in SITUATIONS:
        for task in of_way(skill, {}):
            if task.ask["by"] == "keypad":
                for number in set(re.findall(r"\d+", task.prompt)) - {task.answer}:
                    assert mistake_made(task, {"answer": number}) is not None


@pytest.mark.parametrize(
    "text",
    [
        "Nell has 8 buns. Nell juggles. How many buns does Nell have now?",
        "Nell has 8 buns. Nell bakes 5 more. How many cakes are left over?",
        "Nell has some buns. Nell bakes 5 more. Now Nell has 3. How many were there at first?",
    ],
)
def test_the_oracle_of_stories_refuses_what_it_does_not_understand(text):
    with pytest.raises((AssertionError, ValueError)):
        Story(text)


def test_the_oracle_of_stories_finds_an_answer_of_its_own():
    story = Story("Tansy has 5 buns. Tansy has 3 fewer than Nell. How many buns does Nell have?")
    assert (story.unknown, story.wording, story.answer) == ("bigger", "fewer", 8)
