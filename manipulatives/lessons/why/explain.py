"""The rules, or pairs of rules, that may explain the answers of a pupil.

A right answer is evidence against a rule that would have made it wrong. One item is weak evidence,
and rules change from day to day (VanLehn 1982, LRDC-TR-ONR-8): with three answers or more, a rule
has to explain at least two, and more wrong answers than it leaves unexplained.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from manipulatives.lessons.why.candidates import Candidate, candidates, predictions
from manipulatives.lessons.why.reading import Answered

FEW_ANSWERS = 2
LEAST_EXPLAINED = 2
LEAST_WHEN_LIKELY_BY_CHANCE = 3
# A pair of rules is only considered when it explains this many answers more than a single rule.
PAIR_GAINS = 2
# Of five answers that a rule would have made wrong one may be right: pupils sometimes notice.
EXPLAINED_FOR_EACH_AGAINST = 4
# Of three answers that it would have made wrong one may be wrong in another way, by a slip.
EXPLAINED_FOR_EACH_OTHER = 2
# The commonest slip is an answer that is one too many or too few, so these need better evidence.
LIKE_SLIPS = {"start_counted_on", "start_counted_back"}


@dataclass(frozen=True)
class Fit:
    """How well a candidate agrees with the answers.

    Attributes:
        candidate: the rule, or the two rules.
        writes: its answer to each item; None where unknown.
        explained: the indexes of the wrong answers that it explains.
        against: how many right answers it would have made wrong.
        other: how many wrong answers it would have made wrong in another way.
        unexplained: how many wrong answers differ from its own.
        redundant: whether it is a pair with the same answers as one of its rules alone.
    """

    candidate: Candidate
    writes: tuple[int | None, ...]
    explained: frozenset[int]
    against: int
    other: int
    unexplained: int
    redundant: bool

    @property
    def score(self) -> int:
        """Answers that it explains, less those that are evidence against it."""
        return len(self.explained) - self.against

    @property
    def rank(self) -> tuple[int, int]:
        """Larger for a better fit."""
        return self.score, -self.other

    @property
    def enough(self) -> bool:
        """Whether it explains enough answers to be reported."""
        count = len(self.explained)
        ids = self.candidate.ids
        like_slips = not LIKE_SLIPS.isdisjoint(ids)
        by_chance = like_slips or len(ids) > 1
        least = LEAST_WHEN_LIKELY_BY_CHANCE if by_chance else LEAST_EXPLAINED
        for_other = EXPLAINED_FOR_EACH_AGAINST if like_slips else EXPLAINED_FOR_EACH_OTHER
        return (
            count >= least
            and count >= self.against * EXPLAINED_FOR_EACH_AGAINST
            and count >= self.other * for_other
            and count > self.unexplained
        )


@dataclass(frozen=True)
class Findings:
    """What the answers to sums of one operation may mean.

    Attributes:
        fits: the best explanations; none when no candidate explains enough.
        rivals: all candidates that fit the answers as well as these, including the explanations;
            without an explanation, those that fit best so far.
        unexplained: the wrong answers that no explanation explains.
    """

    fits: tuple[Fit, ...]
    rivals: tuple[Fit, ...]
    unexplained: tuple[Answered, ...]


def explain(answers: Sequence[Answered]) -> Findings:
    """Return what answers to sums of one operation may mean.

    One or two answers prove nothing, so then every candidate that explains them all is returned.

    Args:
        answers: right and wrong ones.

    Example:
        >>> from manipulatives.lessons.why.reading import read_all
        >>> [fit.candidate.ids for fit in explain(read_all(["143 - 28 = 125"])).fits]
        [('larger_minus_smaller',), ('ten_for_nothing',)]
    """
    wrong = frozenset(place for place, each in enumerate(answers) if each.wrong)
    if not wrong:
        return Findings((), (), ())
    every = _fits(answers)
    singles = [fit for fit in every if len(fit.candidate.rules) == 1]
    pairs = [fit for fit in every if len(fit.candidate.rules) > 1 and not fit.redundant]
    fits: list[Fit] = []
    if len(answers) <= FEW_ANSWERS:
        fits = [fit for fit in singles if fit.explained == wrong and not fit.against]
        fits = fits or [fit for fit in pairs if fit.explained == wrong and not fit.against]
    else:
        fits = _best([fit for fit in singles if fit.enough])
        score = fits[0].score if fits else 0
        if not fits or fits[0].explained != wrong:
            better = [fit for fit in pairs if fit.enough and fit.score >= score + PAIR_GAINS]
            fits = _best(better) or fits
    rank = fits[0].rank if fits else max(fit.rank for fit in every)
    rivals = [fit for fit in every if fit.rank >= rank and fit.explained]
    seen = frozenset[int]().union(*(fit.explained for fit in fits))
    unexplained = tuple(answers[place] for place in sorted(wrong - seen))
    return Findings(tuple(fits), tuple(rivals), unexplained)


def _best(fits: Sequence[Fit]) -> list[Fit]:
    most = max((fit.rank for fit in fits), default=None)
    return [fit for fit in fits if fit.rank == most]


def _fits(answers: Sequence[Answered]) -> list[Fit]:
    """Return the fit of every candidate."""
    every = candidates(answers[0].item.operation)
    columns = list(zip(*(predictions(each.item) for each in answers), strict=True))
    given = [each.given for each in answers]
    right = [each.item.right for each in answers]
    fits: list[Fit] = []
    of_rule: dict[str, tuple[int | None, ...]] = {}
    for candidate, writes in zip(every, columns, strict=True):
        ids = candidate.ids
        if len(ids) == 1:
            of_rule[ids[0]] = writes
        redundant = len(ids) > 1 and writes in [of_rule[name] for name in ids]
        explained, against, other, unexplained = set(), 0, 0, 0
        for place, (wrote, gave, true) in enumerate(zip(writes, given, right, strict=True)):
            if wrote is None:
                continue
            if wrote == gave:
                if gave != true:
                    explained.add(place)
            elif gave == true:
                against += 1
            else:
                unexplained += 1
                other += wrote != true
        fits.append(
            Fit(candidate, writes, frozenset(explained), against, other, unexplained, redundant)
        )
    return fits
