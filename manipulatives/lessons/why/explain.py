"""Which rule, or which two together, a pupil's answers may come from.

A rule that would have led to a wrong answer where the pupil's is right speaks against itself. One
item is weak evidence, and rules change from day to day (VanLehn 1982, LRDC-TR-ONR-8): from three
answers on, a rule has to explain two at least, and more of the wrong ones than it leaves over.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from manipulatives.lessons.why.candidates import Candidate, candidates, predictions
from manipulatives.lessons.why.reading import Answered

FEW_ANSWERS = 2
LEAST_EXPLAINED = 2
LEAST_WHEN_LIKELY_BY_CHANCE = 3
# Two rules at once are only thought of when they explain so many answers more than one rule.
PAIR_GAINS = 2
# Of five answers that a rule would have made wrong one may be right: pupils notice now and then.
EXPLAINED_FOR_EACH_AGAINST = 4
# And of three that it would have made wrong one may be wrong in another way: facts slip as well.
EXPLAINED_FOR_EACH_OTHER = 2
# An answer that is one too many or too few is the commonest slip, so these need better evidence.
LIKE_SLIPS = {"start_counted_on", "start_counted_back"}


@dataclass(frozen=True)
class Fit:
    """How well a candidate agrees with the answers.

    Attributes:
        candidate: the rule, or the two rules.
        writes: what it would have written in each item; None where that cannot be said.
        explained: the places of the wrong answers that it leads to.
        against: how many right answers it would have made wrong.
        other: how many wrong answers it would have made wrong in another way.
        unexplained: how many wrong answers it does not lead to, though it can be foreseen there.
        idle: whether it is a pair that one of its rules alone does not differ from here.
    """

    candidate: Candidate
    writes: tuple[int | None, ...]
    explained: frozenset[int]
    against: int
    other: int
    unexplained: int
    idle: bool

    @property
    def score(self) -> int:
        """Answers explained, less those that speak against it."""
        return len(self.explained) - self.against

    @property
    def rank(self) -> tuple[int, int]:
        """The larger the better it agrees."""
        return self.score, -self.other

    @property
    def enough(self) -> bool:
        """Whether it agrees with enough answers to be named."""
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
        fits: the best explanations, none when nothing explains enough.
        rivals: all candidates that agree with the answers as well as these, the explanations
            among them; without an explanation, what fits best so far.
        unexplained: the wrong answers that no explanation leads to.
    """

    fits: tuple[Fit, ...]
    rivals: tuple[Fit, ...]
    unexplained: tuple[Answered, ...]


def explain(answers: Sequence[Answered]) -> Findings:
    """Return what answers to sums of one operation may mean.

    One or two answers cannot prove anything; then everything that explains them all is returned.

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
    pairs = [fit for fit in every if len(fit.candidate.rules) > 1 and not fit.idle]
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
    """Return how well every candidate agrees."""
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
        idle = len(ids) > 1 and writes in [of_rule[name] for name in ids]
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
        fits.append(Fit(candidate, writes, frozenset(explained), against, other, unexplained, idle))
    return fits
