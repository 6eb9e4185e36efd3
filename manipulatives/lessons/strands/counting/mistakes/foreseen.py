"""The mistakes of counting tasks: foreseen answers, or taps on a chart."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from manipulatives.lessons.strands.counting.mistakes.counts import COUNTS, OnCount
from manipulatives.lessons.strands.counting.mistakes.odd_even import DECIDING, NEXT
from manipulatives.lessons.tasks.foreseen import done_with, foreseen, mistake
from manipulatives.lessons.tasks.predicates import Predicate
from manipulatives.lessons.tasks.rule import Rule
from manipulatives.lessons.tasks.task import Mistake
from manipulatives.maths.number.parity import next_of, parity


def step_mistakes(
    at: int, by: int, vocabulary: str, rules: Sequence[OnCount] = COUNTS
) -> tuple[Mistake, ...]:
    """Return the mistakes of one step of a count, one for each wrong number.

    Args:
        at: the number said last.
        by: the step; below 0 it goes back.
        vocabulary: "us" or "uk".
        rules: those that can apply.

    Example:
        >>> [mistake.answer for mistake in step_mistakes(39, 1, "us")]
        ['50', '30', '38', '1', '39', '41', '310']
    """
    found = [(rule, rule.wrong(at, by)) for rule in rules]
    numbers = done_with("step", at=at, by=by)
    return foreseen(found, vocabulary, right=at + by, numbers=numbers)


def tapping_mistakes(
    numbers: Sequence[int], by: int, ends: dict[str, int], vocabulary: str
) -> tuple[Mistake, ...]:
    """Return the mistakes of a count that is tapped on a chart.

    Rules that lead to the same taps make one mistake.

    Args:
        numbers: those of the count; the last one is the goal.
        by: the step; below 0 it goes back.
        ends: the traits `first` and `last` of the chart.
        vocabulary: "us" or "uk".

    Example:
        >>> made = tapping_mistakes([30, 40], 10, {"first": 1, "last": 100}, "us")
        >>> made[0].rule, made[0].when
        ('counted_other_way', ['and', ['=', 'at', 30], ['=', 'tapped', 20]])
    """
    places: dict[tuple[Rule[Any], ...], list[tuple[int, int]]] = {}
    for at in numbers[:-1]:
        taps: dict[int, list[Rule[Any]]] = {}
        for rule in COUNTS:
            wrong = rule.wrong(at, by)
            # A tap on the number counted last takes it back; that is no mistake.
            if wrong is not None and wrong != at and ends["first"] <= wrong <= ends["last"]:
                taps.setdefault(wrong, []).append(rule)
        for wrong, rules in taps.items():
            places.setdefault(tuple(rules), []).append((at, wrong))
    return tuple(_tapped(rules, taps, by, vocabulary) for rules, taps in places.items())


def _tapped(
    rules: Sequence[Rule[Any]], taps: Sequence[tuple[int, int]], by: int, vocabulary: str
) -> Mistake:
    """Return one mistake for taps that the same rules lead to, each from another number."""
    whens: list[Predicate] = [["and", ["=", "at", at], ["=", "tapped", tap]] for at, tap in taps]
    numbers = {
        "act": "step",
        "at": [at for at, _ in taps],
        "by": by,
        **rules[0].does,
        "wrong": [tap for _, tap in taps],
    }
    when = whens[0] if len(whens) == 1 else ["or", *whens]
    return mistake(rules, when, vocabulary, numbers=numbers)


def deciding_mistakes(number: int, vocabulary: str) -> tuple[Mistake, ...]:
    """Return the mistakes of saying even for odd, or odd for even.

    Example:
        >>> [mistake.answer for mistake in deciding_mistakes(34, "us")]
        ['odd']
    """
    found = [(rule, rule.wrong(number)) for rule in DECIDING]
    numbers = done_with("parity", number=number)
    return foreseen(found, vocabulary, right=parity(number), numbers=numbers)


def next_mistakes(number: int, wanted: str, vocabulary: str) -> tuple[Mistake, ...]:
    """Return the mistakes of finding the next even or odd number, one for each wrong number.

    Example:
        >>> [mistake.answer for mistake in next_mistakes(14, "even", "us")]
        ['15', '12']
    """
    found = [(rule, rule.wrong(number, wanted)) for rule in NEXT]
    numbers = done_with("next", number=number, wanted=wanted)
    return foreseen(found, vocabulary, right=next_of(number, wanted), numbers=numbers)
