"""The next sum to give: the one whose answer tells most of the candidates apart."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from functools import partial

from manipulatives.lessons.why.candidates import Candidate, predictions
from manipulatives.lessons.why.explain import LEAST_EXPLAINED, Findings
from manipulatives.lessons.why.items import diagnostic_items, pool
from manipulatives.lessons.why.reading import Item

LARGE = 100

NEARLY = 1.25
"""A sum in which a rule shows may leave so many times as much together as the best one."""


def give_next(found: Findings, given: Sequence[Item]) -> Item | None:
    """Return the sum to give after what was found.

    It tells the explanations apart, and them from what else may be at work. When there is nothing
    to be told apart, it shows once more what was found, or it is a usual sum.

    Args:
        found: what the answers so far may mean.
        given: the sums that were given already, one at least; none of them comes again.

    Example:
        >>> from manipulatives.lessons.why.explain import explain
        >>> from manipulatives.lessons.why.reading import read_all
        >>> answers = read_all(["143 - 28 = 125"])
        >>> give_next(explain(answers), [answers[0].item]) is not None
        True
    """
    if not found.rivals:
        return usual_item(given)
    singles = [fit for fit in found.rivals if len(fit.candidate.rules) == 1]
    fits = found.fits or singles or found.rivals
    named = [fit.candidate for fit in fits]
    possible = [fit.candidate for fit in found.rivals]
    # Before anything else is asked, the rule is to show once more.
    thin = len(fits[0].explained) < LEAST_EXPLAINED
    apart = next_item(named, () if thin else possible, given)
    return apart or showing_item(named, possible, given)


def next_item(
    named: Sequence[Candidate], possible: Sequence[Candidate], given: Sequence[Item]
) -> Item | None:
    """Return the sum that tells candidates apart best, or None when none here does.

    Sums as small as those that were given come first; larger ones only when no small one will do.
    When what is named cannot be told apart any further, it is to show in the sum, unless another
    one tells the rest apart far better.

    Args:
        named: the candidates to be told apart first.
        possible: those that are to be told apart as well, all for sums of one operation.
        given: the sums that were given already, one at least; none of them comes again.

    Example:
        >>> from manipulatives.lessons.why.candidates import candidates
        >>> either = candidates("-")[:2]
        >>> item = next_item(either, (), [Item("-", (143, 28))])
        >>> either[0].answer(*item.numbers) != either[1].answer(*item.numbers)
        True
    """
    for first, then in ((named, possible), (possible, ())):
        for choices in _pools(given):
            best = min(choices, key=partial(_left, first, then))
            left = _together(first, predictions(best))
            if left < _together(first, ()):
                return best if first is named else _showing(named, possible, choices, left) or best
    return None


def _showing(
    named: Sequence[Candidate], possible: Sequence[Candidate], choices: Sequence[Item], left: int
) -> Item | None:
    """Return the sum with least left together in which all that is named shows; None if much is."""
    shows = [
        item
        for item in choices
        if all(predictions(item)[each.place] not in (None, item.right) for each in named)
    ]
    best = min(shows, key=partial(_left, possible, ()), default=None)
    near = best is not None and _together(possible, predictions(best)) <= NEARLY * left
    return best if near else None


def showing_item(
    named: Sequence[Candidate], possible: Sequence[Candidate], given: Sequence[Item]
) -> Item | None:
    """Return a sum in which most of these candidates show, and few others lead to the same.

    Args:
        named: the candidates that are to show.
        possible: those that are to be told from them if it can be.
        given: the sums that were given already, one at least; none of them comes again.

    Example:
        >>> from manipulatives.lessons.why.candidates import candidates
        >>> first = candidates("-")[0]
        >>> item = showing_item([first], (), [Item("-", (63, 29))])
        >>> first.answer(*item.numbers) == item.right
        False
    """

    def measure(item: Item) -> tuple[int, int, int]:
        writes = predictions(item)
        silent = sum(writes[each.place] in (None, item.right) for each in named)
        alike = sum(writes.count(writes[each.place]) for each in named)
        return silent, _together(possible, writes), alike

    for choices in _pools(given):
        best = min(choices, key=measure)
        if measure(best)[0] < len(named):
            return best
    return None


def usual_item(given: Sequence[Item]) -> Item | None:
    """Return the first diagnostic sum that was not given yet.

    Example:
        >>> usual_item([Item("-", (463, 29))]) == diagnostic_items("-")[0]
        True
    """
    digits = _sizes(given)[0]
    choices = diagnostic_items(given[0].operation, digits=digits)
    return next((item for item in choices if item not in given), None)


def _sizes(given: Sequence[Item]) -> tuple[int, ...]:
    large = any(number >= LARGE for item in given for number in item.numbers)
    return (3,) if large else (2, 3)


def _pools(given: Sequence[Item]) -> list[list[Item]]:
    operation = given[0].operation
    return [[item for item in pool(operation, size) if item not in given] for size in _sizes(given)]


def _left(first: Sequence[Candidate], then: Sequence[Candidate], item: Item) -> tuple[int, int]:
    writes = predictions(item)
    return _together(first, writes), _together(then, writes)


def _together(candidates: Sequence[Candidate], writes: Sequence[int | None]) -> int:
    """Return a measure of how many candidates stay together after an answer.

    Args:
        candidates: which.
        writes: what all candidates write in an item; nothing for no item.
    """
    weights: Counter[int | None] = Counter()
    for candidate in candidates:
        weights[writes[candidate.place] if writes else 0] += candidate.weight
    # What cannot be foreseen is told from the rest less surely.
    return sum(weight**2 for weight in weights.values()) + weights[None]
