"""Candidates that may explain a pupil's answers: every rule, and every pair of rules."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import combinations
from typing import Any

from manipulatives.lessons.strands.addition.mistakes import columns as mistakes_addition
from manipulatives.lessons.strands.subtraction import mistakes as mistakes_subtraction
from manipulatives.lessons.strands.subtraction.mistakes import REPORTED_PAIRS
from manipulatives.lessons.tasks.rule import Rule
from manipulatives.lessons.why.reading import Item
from manipulatives.maths.columns.written_sum import SUBTRACT

CACHE_SIZE = 20_000
SINGLE, REPORTED = 4, 2


@dataclass(frozen=True)
class Candidate:
    """One rule, or a pair of rules.

    Attributes:
        rules: the rules, in the order of their table.
        answer: returns the answer of the rules to a sum with these numbers; None where unknown.
        place: its index in `candidates` and in `predictions`.
        weight: how likely it is compared with others: a single rule more than a pair that was
            reported, and that more than any other pair (a guess, used to choose sums only).

    Example:
        >>> candidates("-")[0].answer(63, 29)
        46
    """

    rules: tuple[Rule[Any], ...]
    answer: Callable[..., int | None]
    place: int
    weight: int

    @property
    def ids(self) -> tuple[str, ...]:
        """The ids of its rules."""
        return tuple(rule.id for rule in self.rules)


@cache
def candidates(operation: str) -> tuple[Candidate, ...]:
    """Return the candidates for sums with "+" or "-": the single rules, then the pairs.

    Example:
        >>> candidates("+")[0].ids
        ('carry_left_out',)
    """
    if operation == SUBTRACT:
        rules: tuple[Rule[Any], ...] = mistakes_subtraction.RULES
        worked: Callable[..., Callable[..., int | None]] = mistakes_subtraction.subtracted
        combined = mistakes_subtraction.COMBINED
    else:
        rules = mistakes_addition.RULES
        worked = mistakes_addition.added
        combined = mistakes_addition.COMBINED
    pairs = combinations((rule for rule in rules if rule.id in combined), 2)
    found = []
    for place, some in enumerate([*((rule,) for rule in rules), *pairs]):
        ids = tuple(rule.id for rule in some)
        weight = SINGLE if len(ids) == 1 else REPORTED if ids in REPORTED_PAIRS else 1
        found.append(Candidate(some, worked(*ids), place, weight))
    return tuple(found)


@lru_cache(maxsize=CACHE_SIZE)
def predictions(item: Item) -> tuple[int | None, ...]:
    """Return what each candidate would write, in the order of `candidates`.

    Example:
        >>> predictions(Item("-", (63, 29)))[:2]
        (46, 44)
    """
    return tuple(each.answer(*item.numbers) for each in candidates(item.operation))
