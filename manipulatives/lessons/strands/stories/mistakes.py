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

from manipulatives.lessons.tasks.rule import Rule

OnShown = Rule[Callable[[int, int, int], int | None]]
"""A rule on the two numbers that are shown, in their order, and the right answer."""


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


# In each table: where several rules lead to one answer, the first of them names it.
ADDED: OnShown = Rule(
    "story_added",
    added_shown,
    may_have="added both numbers of the story",
    us="Tell the story again: what is asked?",
)
TOOK: OnShown = Rule(
    "story_took",
    took_shown,
    may_have="taken one number of the story from the other",
    us="Tell the story again: what is asked?",
)
FOLLOWED_MORE: OnShown = Rule(
    "story_followed_more",
    added_shown,
    may_have='added because of the word "more"',
    us="Who has more? Draw both.",
)
FOLLOWED_FEWER: OnShown = Rule(
    "story_followed_fewer",
    took_shown,
    may_have='taken away because of the word "fewer"',
    us="Who has fewer? Draw both.",
)
STORY_NUMBERS: tuple[OnShown, ...] = (
    Rule(
        "story_first_number",
        gave_first,
        may_have="given the first number of the story",
        us="You know that number; now find the other.",
    ),
    Rule(
        "story_last_number",
        gave_second,
        may_have="given the last number of the story",
        us="You know that number; now find the other.",
    ),
    Rule(
        "story_one_less",
        one_less,
        may_have="counted the number where the count starts",
        us="Say the first count at the next number.",
    ),
    Rule(
        "story_one_more",
        one_more,
        may_have="counted one too far",
        us="Nearly there: count once more, slowly.",
    ),
)
MISSING_NUMBERS: tuple[OnShown, ...] = (
    Rule(
        "missing_added",
        added_shown,
        may_have="added both numbers that are shown",
        us="Put your number in: is it true?",
    ),
    Rule(
        "missing_took",
        took_shown,
        may_have="taken one number from the other",
        us="Put your number in: is it true?",
    ),
    Rule(
        "missing_first_number",
        gave_first,
        may_have="written the first number once more",
        us="Put your number in: is it true?",
    ),
    Rule(
        "missing_last_number",
        gave_second,
        may_have="written the last number once more",
        us="Put your number in: is it true?",
    ),
    Rule(
        "missing_one_less",
        one_less,
        may_have="counted one too few",
        us="Nearly there: count the hops once more.",
    ),
    Rule(
        "missing_one_more",
        one_more,
        may_have="counted the number where the hops start",
        us="Count hops: the start is not one.",
    ),
)
PARTS_SHORT: Rule[Callable[[int], int]] = Rule(
    "parts_short",
    part_short,
    may_have="left some out",
    us="Some are left: put them on too.",
)
PARTS_OVER: Rule[Callable[[int], int]] = Rule(
    "parts_over",
    part_over,
    may_have="counted on past the whole",
    us="There are too many: count all again.",
)
PARTS_IN_ONE: Rule[Callable[[int], int]] = Rule(
    "parts_in_one",
    all_in_one,
    may_have="put everything on one of the two",
    us="Put some on the other one too.",
)

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
