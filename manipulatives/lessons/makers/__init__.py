"""Task makers: from a skill and a seed to the tasks of a round; one module a strand."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.lessons.chance import Chance
from manipulatives.lessons.checks import check_seed, check_whole
from manipulatives.lessons.makers import time
from manipulatives.lessons.makers.maker import Maker, Request
from manipulatives.lessons.problem import LessonProblem, at
from manipulatives.lessons.skills import Option, all_options, skill_called
from manipulatives.maths.times import check_vocabulary

if TYPE_CHECKING:
    from collections.abc import Mapping

    from manipulatives.lessons.task import Task

MAKERS: Mapping[str, Maker] = {**time.MAKERS}


def make_tasks(
    skill: str,
    *,
    seed: int,
    count: int,
    vocabulary: str = "us",
    options: Mapping[str, Option] | None = None,
) -> list[Task]:
    """Return the tasks of a round; the same seed gives the same tasks everywhere.

    No two tasks ask the same. The first tasks do not depend on how many are made, so asking for
    twice as many gives every task a twin. Neither vocabulary nor the way of answering changes
    what is asked about.

    Args:
        skill: as the catalogue names it.
        seed: a whole number from 0.
        count: how many tasks.
        vocabulary: "us" or "uk".
        options: what the skill lets a round set.

    Raises:
        LessonProblem: there is no such skill or option, or there are not so many different tasks.
        ValueError: no vocabulary of the kit.

    Example:
        >>> [task.answer for task in make_tasks("time.read_hour", seed=90213, count=2)]
        ['12:00', '7:00']
    """
    check_vocabulary(vocabulary)
    with at("seed"):
        check_seed(seed)
    set_options = all_options(skill, options or {})
    check_count(skill, count, set_options)
    maker = MAKERS[skill]
    name = f"{skill} {seed}"
    first_turn = Chance(f"{name} turn").below(1_000_000)
    items = Chance(name).sample(maker.items(set_options), count)
    return [
        maker.task(
            Request(
                skill=skill,
                item=item,
                turn=first_turn + number,
                # Of its own, so that a task does not depend on those before it.
                chance=Chance(f"{name} task {number}"),
                vocabulary=vocabulary,
                options=set_options,
            )
        )
        for number, item in enumerate(items)
    ]


def check_count(skill: str, count: int, options: Mapping[str, Option] | None = None) -> int:
    """Return how many tasks are asked for, if the skill has so many different ones.

    Raises:
        LessonProblem: it has fewer, or there is no such skill or option.

    Example:
        >>> check_count("time.read_hour", 12)
        12
        >>> check_count("time.read_hour", 13)
        Traceback (most recent call last):
        manipulatives.lessons.problem.LessonProblem: time.read_hour has only 12 different ...
    """
    with at("count"):
        check_whole(count, 0, 10_000)
    most = len(MAKERS[skill_called(skill).id].items(all_options(skill, options or {})))
    if count <= most:
        return count
    raise LessonProblem(
        f"{skill} has only {most} different tasks with these options, not {count}",
        remedy=f"ask for {most} or fewer",
    )
