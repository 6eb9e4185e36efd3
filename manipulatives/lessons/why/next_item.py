"""The next sum to give: the one whose answer distinguishes most candidates."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from functools import partial

from manipulatives.lessons.why.candidates import Candidate, predictions
from manipulatives.lessons.why.explain import LEAST_EXPLAINED, Findings
from manipulatives.lessons.why.items import diagnostic_items, pool
from manipulatives.lessons.why.reading import Item

LARGE = 100

NEAR_FACTOR = 1.25
"""By what factor a sum in which a rule shows may distinguish worse than the best sum."""


def give_next(found: Findings, given: Sequence[Item]) -> Item | None:
    """Return the sum to give after these findings.

    It distinguishes the explanations from each other and from the rivals. When there is nothing to
    distinguish, the explanation shows in it once more, or it is a usual sum.

    Args:
        found: the findings from the answers so far.
        given: the sums that were given already, at least one; none is repeated.

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
    # With little evidence, first give a sum in which the rule shows once more.
    weak = len(fits[0].explained) < LEAST_EXPLAINED
    distinguishing = next_item(named, () if weak else possible, given)
    return distinguishing or showing_item(named, possible, given)


def next_item(
    named: Sequence[Candidate], possible: Sequence[Candidate], given: Sequence[Item]
) -> Item | None:
    """Return the sum that distinguishes candidates best, or None when no sum does.

    Larger sums than those given are only used when no small one distinguishes. When no sum
    distinguishes the named candidates, they have to show in the sum, unless another sum
    distinguishes the rest far better.

    Args:
        named: the candidates to distinguish first.
        possible: those to distinguish as well, all for sums of one operation.
        given: the sums that were given already, at least one; none is repeated.

    Example:
        >>> from manipulatives.lessons.why.candidates import candidates
        >>> either = candidates("-")[:2]
        >>> item = next_item(either, (), [Item("-", (143, 28))])
        >>> either[0].answer(*item.numbers) != either[1].answer(*item.numbers)
        True
    """
    for first, then in ((named, possible), (possible, ())):
        for choices in _pools(given):
            best = min(choices, key=partial(_remaining, first, then))
            left = _undistinguished(first, predictions(best))
            if left < _undistinguished(first, ()):
                return best if first is named else _showing(named, possible, choices, left) or best
    return None


def _showing(
    named: Sequence[Candidate], possible: Sequence[Candidate], choices: Sequence[Item], left: int
) -> Item | None:
    """Return the best sum in which all named candidates show; None if it is far from the best."""
    shows = [
        item
        for item in choices
        if all(predictions(item)[each.place] not in (None, item.right) for each in named)
    ]
    best = min(shows, key=partial(_remaining, possible, ()), default=None)
    near = best is not None and _undistinguished(possible, predictions(best)) <= NEAR_FACTOR * left
    return best if near else None


def showing_item(
    named: Sequence[Candidate], possible: Sequence[Candidate], given: Sequence[Item]
) -> Item | None:
    """Return a sum in which most of these candidates show, and few others have the same answer.

    Args:
        named: the candidates that have to show.
        possible: those to distinguish from them where possible.
        given: the sums that were given already, at least one; none is repeated.

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
        return silent, _undistinguished(possible, writes), alike

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


def _remaining(
    first: Sequence[Candidate], then: Sequence[Candidate], item: Item
) -> tuple[int, int]:
    writes = predictions(item)
    return _undistinguished(first, writes), _undistinguished(then, writes)


def _undistinguished(candidates: Sequence[Candidate], writes: Sequence[int | None]) -> int:
    """Return a measure of how many candidates an item leaves undistinguished.

    Args:
        candidates: the candidates.
        writes: the answers of all candidates to the item; empty for no item.
    """
    weights: Counter[int | None] = Counter()
    for candidate in candidates:
        weights[writes[candidate.place] if writes else 0] += candidate.weight
    # A candidate without a known answer is distinguished less reliably.
    return sum(weight**2 for weight in weights.values()) + weights[None]
