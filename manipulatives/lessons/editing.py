"""Changes to a lesson: each returns another lesson."""

from __future__ import annotations

import secrets
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from manipulatives.lessons.catalogue.skills import skill_called
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.chance import Chance

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

FIRST_SEED, SEEDS = 10_000, 90_000
"""Seeds have five digits here, which are easy to type and to read out."""


def new_seed(source: str, used: Collection[int] = ()) -> int:
    """Return a seed that is not used yet.

    Args:
        source: any text; the same text gives the same seed.
        used: the seeds in use.

    Example:
        >>> 10_000 <= new_seed("Monday") < 100_000
        True
    """
    chance = Chance(f"{source} seed")
    while True:
        seed = FIRST_SEED + chance.below(SEEDS)
        if seed not in used:
            return seed


def seed_by_chance(used: Collection[int] = ()) -> int:
    """Return a random seed that is not used yet.

    Args:
        used: the seeds in use.

    Example:
        >>> 10_000 <= seed_by_chance() < 100_000
        True
    """
    return new_seed(secrets.token_hex(8), used)


def with_round(lesson: Lesson, skill: str, place: int | None = None) -> Lesson:
    """Return the lesson with one more round, with the defaults of its skill.

    Args:
        lesson: the lesson.
        skill: as the catalogue names it.
        place: where it goes, counted from 0; None for the end.

    Raises:
        LessonProblem: there is no such skill, or the lesson has as many rounds as it may have.

    Example:
        >>> with_round(Lesson("Monday", seed=7), "time.read_hour").rounds[0].skill
        'time.read_hour'
    """
    skill_called(skill)
    at = len(lesson.rounds) if place is None else place
    one = Round(skill, new_seed(f"{lesson.seed} {skill}", _seeds(lesson.rounds)))
    return replace(lesson, rounds=(*lesson.rounds[:at], one, *lesson.rounds[at:]))


def moved(lesson: Lesson, place: int, to: int) -> Lesson:
    """Return the lesson with a round in another place.

    Raises:
        LessonProblem: there is no such place.

    Example:
        >>> monday = with_round(with_round(Lesson("Monday", 7), "time.read_hour"), "time.later")
        >>> [one.skill for one in moved(monday, 1, 0).rounds]
        ['time.later', 'time.read_hour']
    """
    _check(lesson, place)
    _check(lesson, to)
    rounds = [*lesson.rounds]
    rounds.insert(to, rounds.pop(place))
    return replace(lesson, rounds=tuple(rounds))


def copied(lesson: Lesson, place: int) -> Lesson:
    """Return the lesson with a round twice; the second one, right after it, has other numbers.

    Raises:
        LessonProblem: there is no such round, or the lesson has as many as it may have.

    Example:
        >>> monday = copied(with_round(Lesson("Monday", seed=7), "time.read_hour"), 0)
        >>> len({one.seed for one in monday.rounds})
        2
    """
    one = _check(lesson, place)
    seed = new_seed(f"{one.seed} copy", _seeds(lesson.rounds))
    # Otherwise tasks that were typed or drawn again would be asked twice.
    other = replace(one, seed=seed, instead=())
    rounds = (*lesson.rounds[: place + 1], other, *lesson.rounds[place + 1 :])
    return replace(lesson, rounds=rounds)


def removed(lesson: Lesson, place: int) -> Lesson:
    """Return the lesson without a round.

    Raises:
        LessonProblem: there is no such round.

    Example:
        >>> removed(with_round(Lesson("Monday", seed=7), "time.read_hour"), 0).rounds
        ()
    """
    _check(lesson, place)
    return replace(lesson, rounds=(*lesson.rounds[:place], *lesson.rounds[place + 1 :]))


def drawn_again(lesson: Lesson, place: int) -> Lesson:
    """Return the lesson with other numbers in one round; typed tasks stay.

    Raises:
        LessonProblem: there is no such round.

    Example:
        >>> monday = with_round(Lesson("Monday", seed=7), "time.read_hour")
        >>> drawn_again(monday, 0).rounds[0].seed == monday.rounds[0].seed
        False
    """
    one = _check(lesson, place)
    seed = new_seed(f"{one.seed} again", _seeds(lesson.rounds))
    typed = [each if isinstance(each, str) else "" for each in one.instead]
    return changed(lesson, place, seed=seed, instead=_trimmed(typed, len(typed)))


def changed(lesson: Lesson, place: int, **what: Any) -> Lesson:
    """Return the lesson with changed fields in one round.

    Args:
        lesson: the lesson.
        place: of the round, counted from 0.
        what: fields of a `Round` with their new values; `skill` cannot be changed.

    Raises:
        LessonProblem: there is no such round, or a value is not allowed.

    Example:
        >>> monday = with_round(Lesson("Monday", seed=7), "time.read_hour")
        >>> changed(monday, 0, tasks=4).rounds[0].tasks
        4
    """
    one = _check(lesson, place)
    skill = skill_called(one.skill)
    count = what.get("tasks", one.tasks) or skill.tasks
    instead = what.get("instead", one.instead)
    other = replace(one, **{**what, "instead": _trimmed(instead, count)})
    return replace(lesson, rounds=(*lesson.rounds[:place], other, *lesson.rounds[place + 1 :]))


def with_option(lesson: Lesson, place: int, name: str, value: Any) -> Lesson:  # noqa: ANN401 - checked by the round
    """Return the lesson with an option of one round set: one value, or a list of one for each task.

    A default value of the skill is left out of the round.

    Raises:
        LessonProblem: there is no such round, option or value.

    Example:
        >>> monday = with_round(Lesson("Monday", seed=7), "time.later")
        >>> with_option(monday, 0, "by", [5, 20]).rounds[0].options
        {'by': [5, 20]}
    """
    one = _check(lesson, place)
    options = {key: each for key, each in one.options.items() if key != name}
    usual = (*skill_called(one.skill).options.get(name, ()), "any")[0]
    # In Python 1 equals True, so compare the types too.
    if (type(value), value) != (type(usual), usual):
        options[name] = value
    return changed(lesson, place, options=options)


def with_task(lesson: Lesson, place: int, task: int, instead: str | int) -> Lesson:
    """Return the lesson with one task typed ("37 + 48"), or drawn again (1, 2, …).

    Args:
        lesson: the lesson.
        place: of the round, counted from 0.
        task: of the task in its round, counted from 0.
        instead: what `Round.instead` takes for a task; "" or 0 for the one that the seed gives.

    Raises:
        LessonProblem: there is no such round, or such numbers cannot be typed for its skill.

    Example:
        >>> monday = with_round(Lesson("Monday", seed=7), "time.read_hour")
        >>> with_task(monday, 0, 1, "4:00").rounds[0].instead
        ('', '4:00')
    """
    one = _check(lesson, place)
    new: list[str | int] = [*one.instead]
    new += [""] * (task + 1 - len(new))
    new[task] = instead or ""
    return changed(lesson, place, instead=new)


def seconds_of(one: Round) -> int:
    """Return how long a round takes.

    Example:
        >>> seconds_of(Round("time.read_hour", seed=7, seconds=90))
        90
    """
    return one.seconds or skill_called(one.skill).seconds


def tasks_of(one: Round) -> int:
    """Return how many tasks a round has.

    Example:
        >>> tasks_of(Round("time.read_hour", seed=7, tasks=4))
        4
    """
    return one.tasks or skill_called(one.skill).tasks


def _trimmed(instead: Sequence[str | int], count: int) -> tuple[str | int, ...]:
    """Return the replacements of this many tasks, without empty ones at the end."""
    trimmed = [*instead[:count]]
    while trimmed and not trimmed[-1]:
        trimmed.pop()
    return tuple(trimmed)


def _seeds(rounds: Sequence[Round]) -> set[int]:
    return {one.seed for one in rounds}


def _check(lesson: Lesson, place: int) -> Round:
    if 0 <= place < len(lesson.rounds):
        return lesson.rounds[place]
    raise LessonProblem(
        f"there is no round {place + 1}", remedy=f"choose one of {len(lesson.rounds)}"
    )
