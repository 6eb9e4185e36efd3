"""Sums chosen so that their answers tell one way of working from another.

By chance few sums do: a zero in the tens to be gone through comes up in 4 of 100 subtractions of
three-digit numbers. So the sums here are searched for.
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
# So often every rule should show in the items, and every two differ.
OFTEN = 3
# That a rule shows at all counts as much as that it differs from so many others.
FOR_SHOWING = 12
# How much less it counts that two differ once more; tried out on several seeds.
AGAIN = 1.5
# Room for the bits of so many candidates.
SHOWN = 64

# Digits that matter come more often: zeros are gone through, ones handled like zeros.
_UPPER_DIGITS = (0, 0, 0, 1, 1, 2, 3, 4, 5, 6, 7, 8, 9)
_LOWER_DIGITS = (0, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 9)
_THREE_DIGIT = 3


@cache
def pool(operation: str, digits: int = _THREE_DIGIT, seed: int = 0) -> tuple[Item, ...]:
    """Return sums to choose from, of numbers with up to so many digits.

    Example:
        >>> len(pool("-", 2)), len(pool("-", 3))
        (240, 240)
    """
    chance = Chance(f"sums that tell apart {operation} {digits} {seed}")
    found: dict[Item, None] = {}
    while len(found) < POOL:
        upper = _number(chance, digits, _UPPER_DIGITS)
        # Shorter lower numbers leave gaps, in which other rules show.
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

    Chosen one after the other: always the sum that adds most to what is still missing.

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
    told = {item: _tells(item) for item in choices}
    # seen[n]: what n + 1 of the chosen sums tell, as bits.
    seen = [0] * OFTEN
    chosen: list[Item] = []
    for _ in range(count):
        best = max((item for item in choices if item not in chosen), key=partial(_gain, told, seen))
        chosen.append(best)
        news = told[best][0]
        for times, before in enumerate(seen):
            seen[times] = before | news
            news &= before
    return tuple(chosen)


def _gain(told: Mapping[Item, tuple[int, int]], seen: Sequence[int], item: Item) -> float:
    """Return how much a sum adds: what is told for the first time counts most."""
    news, unforeseen = told[item]
    shows = (1 << SHOWN) - 1
    gain = -float(unforeseen)
    for times, before in enumerate(seen):
        fresh = news & ~before
        gain += (fresh & shows).bit_count() * FOR_SHOWING / 2**times
        gain += (fresh >> SHOWN).bit_count() / AGAIN**times
    return gain


def _tells(item: Item) -> tuple[int, int]:
    """Return as bits what an item tells, and of how many candidates it cannot be foreseen.

    The first bits: does this rule, or reported pair, show? The others: do these two differ?
    """
    writes = [
        wrote
        for candidate, wrote in zip(candidates(item.operation), predictions(item), strict=True)
        if candidate.weight > 1
    ]
    bits = sum(1 << at for at, wrote in enumerate(writes) if wrote not in (None, item.right))
    for at, pair in enumerate(combinations(writes, 2), SHOWN):
        if None not in pair and pair[0] != pair[1]:
            bits |= 1 << at
    return bits, writes.count(None)
