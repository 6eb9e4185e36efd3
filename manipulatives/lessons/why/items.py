"""Sums whose answers distinguish the rules.

Few random sums do: only 4 of 100 subtractions of three-digit numbers borrow across a zero in the
tens. So the sums here are searched for.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache, partial
from itertools import combinations

from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.why.candidates import candidates, predictions
from manipulatives.lessons.why.reading import Item
from manipulatives.maths.columns.written_sum import SUBTRACT

ITEMS = 10
POOL = 240
# How often every rule should show in the items, and every two rules differ.
WANTED_TIMES = 3
# The weight of a rule that shows, where that of two rules that differ is 1.
SHOWING_WEIGHT = 12
# By how much the weight of two rules that differ shrinks each time; tried out on several seeds.
REPEAT_DIVISOR = 1.5
# The bits for rules that show; the bits for pairs that differ follow.
SHOWING_BITS = 64

# Some digits are more frequent: zeros, which have to be borrowed across, and ones.
_UPPER_DIGITS = (0, 0, 0, 1, 1, 2, 3, 4, 5, 6, 7, 8, 9)
_LOWER_DIGITS = (0, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 9)
_THREE_DIGIT = 3


@cache
def pool(operation: str, digits: int = _THREE_DIGIT, seed: int = 0) -> tuple[Item, ...]:
    """Return sums to choose from, of numbers with up to this many digits.

    Example:
        >>> len(pool("-", 2)), len(pool("-", 3))
        (240, 240)
    """
    chance = Chance(f"sums that tell apart {operation} {digits} {seed}")
    found: dict[Item, None] = {}
    while len(found) < POOL:
        upper = _number(chance, digits, _UPPER_DIGITS)
        # Shorter lower numbers leave empty places, where other rules show.
        lower = _number(chance, max(1, digits - chance.choose((0, 0, 1, 2))), _LOWER_DIGITS)
        if operation == SUBTRACT and upper < lower:
            upper, lower = lower, upper
        if upper != lower:
            found[Item(operation, (upper, lower))] = None
    return tuple(found)


def _number(chance: Chance, digits: int, likely: tuple[int, ...]) -> int:
    number = chance.choose([digit for digit in likely if digit])
    for _ in range(digits - 1):
        number = number * 10 + chance.choose(likely)
    return number


@cache
def diagnostic_items(
    operation: str, count: int = ITEMS, *, digits: int = _THREE_DIGIT, seed: int = 0
) -> tuple[Item, ...]:
    """Return sums in which every rule shows and each differs from the others.

    A greedy choice: each is the sum that adds most to what is still missing.

    Args:
        operation: "+" or "-".
        count: how many.
        digits: how many digits the numbers have at most; with two, some rules cannot show.
        seed: other sums of the same kind.

    Example:
        >>> len(diagnostic_items("-"))
        10
    """
    choices = pool(operation, digits, seed)
    evidence = {item: _evidence(item) for item in choices}
    # seen[n]: the bits that n + 1 of the chosen sums have.
    seen = [0] * WANTED_TIMES
    chosen: list[Item] = []
    for _ in range(count):
        best = max(
            (item for item in choices if item not in chosen), key=partial(_gain, evidence, seen)
        )
        chosen.append(best)
        bits = evidence[best][0]
        for times, before in enumerate(seen):
            seen[times] = before | bits
            bits &= before
    return tuple(chosen)


def _gain(evidence: Mapping[Item, tuple[int, int]], seen: Sequence[int], item: Item) -> float:
    """Return how much a sum adds; bits that no chosen sum has yet count most."""
    bits, unknown = evidence[item]
    shows = (1 << SHOWING_BITS) - 1
    gain = -float(unknown)
    for times, before in enumerate(seen):
        added = bits & ~before
        gain += (added & shows).bit_count() * SHOWING_WEIGHT / 2**times
        gain += (added >> SHOWING_BITS).bit_count() / REPEAT_DIVISOR**times
    return gain


def _evidence(item: Item) -> tuple[int, int]:
    """Return the evidence of an item as bits, and how many candidates have no known answer to it.

    The first bits: does this rule, or reported pair, show? The others: do these two differ?
    """
    writes = [
        wrote
        for candidate, wrote in zip(candidates(item.operation), predictions(item), strict=True)
        if candidate.weight > 1
    ]
    bits = sum(1 << at for at, wrote in enumerate(writes) if wrote not in (None, item.right))
    for at, pair in enumerate(combinations(writes, 2), SHOWING_BITS):
        if None not in pair and pair[0] != pair[1]:
            bits |= 1 << at
    return bits, writes.count(None)
