"""Warnings about a lesson before it is taught, as sentences for a helper."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from manipulatives.lessons.catalogue.skill import Skill
from manipulatives.lessons.catalogue.skills import SKILLS, skill_called
from manipulatives.lessons.editing import seconds_of
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.tasks.make import make_tasks

SLOT = 15
"""Minutes of a short review, unless said otherwise."""


@dataclass(frozen=True)
class LessonWarning:
    """A warning about a lesson.

    Attributes:
        about: "review", "order", "strategy", "time", "copy" or "empty".
        sentence: what the warning is about and what to do, for a helper.

    Example:
        >>> LessonWarning("time", "The rounds take 20 minutes.").about
        'time'
    """

    about: str
    sentence: str


def warnings_about(
    lesson: Lesson, *, others: Iterable[Lesson] = (), minutes: int = SLOT
) -> list[LessonWarning]:
    """Return the warnings about a lesson; none when it is well made.

    Args:
        lesson: the lesson.
        others: the other lessons of the folder; a skill of one with an earlier
            date is a review here.
        minutes: how long the session may be.

    Example:
        >>> rounds = (Round("time.later", seed=1), Round("time.read_hour", seed=2))
        >>> [each.about for each in warnings_about(Lesson("Monday", seed=7, rounds=rounds))]
        ['order']
    """
    if not lesson.rounds:
        return [LessonWarning("empty", "There is no round yet. Choose a skill and add it.")]
    return [
        *_too_long(lesson, minutes),
        *_no_review(lesson, _earlier(lesson, others)),
        *_order(lesson),
        *_strategies(lesson),
        *_copies(lesson),
    ]


def came_before(skill: str) -> frozenset[str]:
    """Return every skill that one builds on, directly or through others.

    Example:
        >>> "time.read_hour" in came_before("time.read_quarter")
        True
    """
    found: set[str] = set()
    waiting = [*skill_called(skill).builds_on]
    while waiting:
        one = waiting.pop()
        if one not in found:
            found.add(one)
            # A row may name a skill that is not in the catalogue yet.
            waiting += SKILLS[one].builds_on if one in SKILLS else ()
    return frozenset(found)


def length_in_words(seconds: int) -> str:
    """Return a length of time in words.

    Example:
        >>> length_in_words(90), length_in_words(600)
        ('1 min 30 s', '10 min')
    """
    whole, rest = divmod(seconds, 60)
    parts = [f"{whole} min"] * bool(whole) + [f"{rest} s"] * bool(rest or not whole)
    return " ".join(parts)


def _too_long(lesson: Lesson, minutes: int) -> Iterable[LessonWarning]:
    total = sum(map(seconds_of, lesson.rounds))
    if total > minutes * 60:
        over = length_in_words(total - minutes * 60)
        yield LessonWarning(
            "time",
            f"The rounds take {length_in_words(total)}, {over} more than the session has. "
            "Take a round out, or give some of them less time.",
        )


def _no_review(lesson: Lesson, earlier: Sequence[Lesson]) -> Iterable[LessonWarning]:
    here = [one.skill for one in lesson.rounds]
    taught = {one.skill for each in earlier for one in each.rounds}
    known = taught.union(*map(came_before, here))
    if known & {*here}:
        return
    last = next((one.skill for each in reversed(earlier) for one in each.rounds), None)
    wanted = last or next(
        (one for name in here for one in skill_called(name).builds_on if one in SKILLS), None
    )
    if wanted:
        yield LessonWarning(
            "review",
            "Nothing comes back that was learnt earlier. "
            f'Add a round of it, for example "{SKILLS[wanted].title}".',
        )


def _order(lesson: Lesson) -> Iterable[LessonWarning]:
    rounds = [*enumerate(lesson.rounds, start=1)]
    for place, one in rounds:
        for later, other in rounds[place:]:
            if other.skill in came_before(one.skill):
                yield LessonWarning(
                    "order",
                    f"Round {place}, {_name(one)}, builds on round {later}, {_name(other)}. "
                    f"Move round {later} before it.",
                )


def _strategies(lesson: Lesson) -> Iterable[LessonWarning]:
    for place, (one, other) in enumerate(pairwise(lesson.rounds), start=1):
        if one.skill == other.skill and one.options == other.options:
            yield LessonWarning(
                "strategy",
                f"Rounds {place} and {place + 1} practise the same: {_name(one)}. "
                "Put another round between them.",
            )
        elif _way_of_working(one) == _way_of_working(other):
            yield LessonWarning(
                "strategy",
                f"Rounds {place} and {place + 1}, {_name(one)} and {_name(other)}, are done the "
                "same way. Put another round between them.",
            )


def _copies(lesson: Lesson) -> Iterable[LessonWarning]:
    first: dict[tuple[str, int], int] = {}
    for place, one in enumerate(lesson.rounds, start=1):
        original = first.setdefault((one.skill, one.seed), place)
        if original != place:
            yield LessonWarning(
                "copy", f"Round {place} asks the same as round {original}. Draw its numbers again."
            )


def _earlier(lesson: Lesson, others: Iterable[Lesson]) -> list[Lesson]:
    """Return the lessons of the folder that come before this one, the latest last."""
    dated = [(each.date, each) for each in others if each.date is not None]
    before = [pair for pair in dated if lesson.date is None or pair[0] < lesson.date]
    return [each for _, each in sorted(before, key=_date)]


def _date(pair: tuple[dt.date, Lesson]) -> dt.date:
    return pair[0]


def _way_of_working(one: Round) -> tuple[str, ...]:
    """Return how the tasks of a round are worked: strand, manipulative and kind of task."""
    skill = skill_called(one.skill)
    return (skill.strand, skill.manipulative, _kind(skill.id))


@cache
def _kind(skill: str) -> str:
    return make_tasks(skill, seed=1, count=1, twins=0)[0].kind


def _name(one: Round) -> str:
    skill: Skill = skill_called(one.skill)
    return f'"{one.title or skill.title}"'
