"""Foreseeable errors of stories and of missing numbers, as pure functions on what is shown.

That pupils add or take away whatever numbers stand there, or follow the word "more" or "fewer",
studies of word problems describe (Lewis and Mayer 1987, *Students' miscomprehension of relational
statements in arithmetic word problems*, Journal of Educational Psychology 79:363-371, from memory).
The rules are our exact statements of them; the others are common practice of arithmetic, from no
published table.

What a wrong answer suggests is a possibility, not a diagnosis: one item is weak evidence.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.strands.sums.tasks import Found, found_by
from manipulatives.lessons.tasks.foreseen import done_with, mistake
from manipulatives.lessons.tasks.predicates import Predicate
from manipulatives.lessons.tasks.rule import Rule, rule_in, rules_in
from manipulatives.lessons.tasks.task import Mistake

OnShown = Rule[Callable[[int, int, int], int | None]]
"""A rule on the two numbers that are shown, in their order, and the right answer."""
OnWhole = Rule[Callable[[int], int]]
"""A rule on a whole that is put on two mats."""


def added_shown(first: int, second: int, right: int) -> int | None:
    """Return what comes out when both numbers that are shown are added.

    Args:
        first: the number that is shown first.
        second: the other one.
        right: the right answer; so in the rules below.

    Returns:
        The wrong answer, or None where the error does not show; so do the rules below.

    Example:
        >>> added_shown(7, 15, 8), added_shown(8, 5, 13)
        (22, None)
    """
    return _unless(right, first + second)


def took_shown(first: int, second: int, right: int) -> int | None:
    """Return what comes out when the smaller number is taken from the larger one.

    Example:
        >>> took_shown(8, 5, 13), took_shown(13, 5, 8)
        (3, None)
    """
    return _unless(right, abs(first - second))


def gave_first(first: int, _second: int, right: int) -> int | None:
    """Return the first number that is shown.

    Example:
        >>> gave_first(8, 5, 13)
        8
    """
    return _unless(right, first)


def gave_second(_first: int, second: int, right: int) -> int | None:
    """Return the second number that is shown.

    Example:
        >>> gave_second(8, 5, 13)
        5
    """
    return _unless(right, second)


def one_less(_first: int, _second: int, right: int) -> int | None:
    """Return the answer of a count that is one short, as when its start is counted.

    Example:
        >>> one_less(8, 5, 13)
        12
    """
    return right - 1 if right else None


def one_more(_first: int, _second: int, right: int) -> int:
    """Return the answer of a count that goes one too far.

    Example:
        >>> one_more(8, 5, 13)
        14
    """
    return right + 1


def part_short(whole: int) -> int:
    """Return what two parts make together when one is left out.

    Example:
        >>> part_short(9)
        8
    """
    return whole - 1


def part_over(whole: int) -> int:
    """Return what two parts make together when there is one too many.

    Example:
        >>> part_over(9)
        10
    """
    return whole + 1


def all_in_one(whole: int) -> int:
    """Return what one part is when the other is left empty.

    Example:
        >>> all_in_one(9)
        9
    """
    return whole


def _unless(right: int, wrong: int) -> int | None:
    return None if wrong == right else wrong


STORIES = FOLDER / "stories"

ADDED: OnShown = rule_in(STORIES, "story_added", added_shown)
TOOK: OnShown = rule_in(STORIES, "story_took", took_shown)
FOLLOWED_MORE: OnShown = rule_in(STORIES, "story_followed_more", added_shown)
FOLLOWED_FEWER: OnShown = rule_in(STORIES, "story_followed_fewer", took_shown)
# In each table: where several rules lead to one answer, the first of them names it.
STORY_NUMBERS: tuple[OnShown, ...] = rules_in(
    STORIES,
    story_first_number=gave_first,
    story_last_number=gave_second,
    story_one_less=one_less,
    story_one_more=one_more,
)
MISSING_NUMBERS: tuple[OnShown, ...] = rules_in(
    STORIES,
    missing_added=added_shown,
    missing_took=took_shown,
    missing_first_number=gave_first,
    missing_last_number=gave_second,
    missing_one_less=one_less,
    missing_one_more=one_more,
)
PARTS_SHORT: OnWhole = rule_in(STORIES, "parts_short", part_short)
PARTS_OVER: OnWhole = rule_in(STORIES, "parts_over", part_over)
PARTS_IN_ONE: OnWhole = rule_in(STORIES, "parts_in_one", all_in_one)

RULES: tuple[Rule[Any], ...] = (
    ADDED,
    TOOK,
    FOLLOWED_MORE,
    FOLLOWED_FEWER,
    *STORY_NUMBERS,
    *MISSING_NUMBERS,
    PARTS_SHORT,
    PARTS_OVER,
    PARTS_IN_ONE,
)


def story_mistakes(unknown: str, wording: str, shown: tuple[int, int], answer: int) -> Found:
    """Return what can be foreseen to go wrong in a story.

    Args:
        unknown: what is asked, such as "bigger".
        wording: "more" or "fewer" of a comparison, else "".
        shown: the two numbers of the story, in their order.
        answer: the right answer.

    Example:
        >>> [(rule, wrong), *_] = story_mistakes("bigger", "fewer", (8, 5), 13).wrong
        >>> rule.id, wrong
        ('story_followed_fewer', 3)
    """
    rules = (ADDED, TOOK, *STORY_NUMBERS)
    if (unknown, wording) == ("bigger", "fewer"):
        rules = (FOLLOWED_FEWER, *rules)
    if (unknown, wording) == ("smaller", "more"):
        rules = (FOLLOWED_MORE, *rules)
    return found_by(rules, (*shown, answer), "answer", shown=[*shown], right=answer)


def parts_mistakes(whole: int, vocabulary: str) -> tuple[Mistake, ...]:
    """Return what can be foreseen to go wrong when a whole is put on two mats.

    Example:
        >>> [mistake.answer for mistake in parts_mistakes(9, "us")]
        ['8', '10', None]
    """
    # Nothing put down yet is no mistake.
    some: Predicate = [">", "sum", 0]
    one_empty: Predicate = ["or", ["=", "number", 0], ["=", "second_number", 0]]
    whens: dict[OnWhole, Predicate] = {
        PARTS_SHORT: ["and", some, ["<", "sum", whole]],
        PARTS_OVER: [">", "sum", whole],
        PARTS_IN_ONE: ["and", ["=", "sum", whole], one_empty],
    }
    numbers = done_with("lay", whole=whole)
    return tuple(
        mistake(
            [rule],
            when,
            vocabulary,
            # All of them on one mat are as many as there should be.
            answer=None if rule is PARTS_IN_ONE else f"{rule.wrong(whole)}",
            numbers=numbers(rule, rule.wrong(whole)),
        )
        for rule, when in whens.items()
    )
