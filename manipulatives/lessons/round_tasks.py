"""The tasks of a round as its lesson and its class have them."""

from __future__ import annotations

from collections.abc import Collection

from manipulatives.lessons.catalogue.skills import skill_called
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.settings import ClassSettings, with_class
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.lessons.tasks.task import Task


def tasks_for(
    one: Round,
    lesson: Lesson,
    settings: ClassSettings,
    *,
    seed: int | None = None,
    asked: Collection[str] = (),
) -> list[Task]:
    """Return the tasks of a round, without twins; what is unset is as the class has it.

    Args:
        one: the round.
        lesson: its lesson.
        settings: of the class.
        seed: for other tasks of the same kind; None for the round's own, with what was typed.
        asked: what was asked already, as `Task.asks` says it.

    Raises:
        LessonProblem: there are not so many different tasks, or none like what was typed.

    Example:
        >>> one = Round("time.read_hour", seed=90213, tasks=2)
        >>> [task.answer for task in tasks_for(one, Lesson("Monday", seed=7), ClassSettings())]
        ['12:00', '7:00']
    """
    of_lesson = {"vocabulary": lesson.vocabulary, "currency": lesson.currency, "method": None}
    return make_tasks(
        one.skill,
        seed=one.seed if seed is None else seed,
        count=one.tasks or skill_called(one.skill).tasks,
        **with_class(of_lesson, settings),
        options=one.options,
        asked=asked,
        # What was typed belongs to the round's own numbers; others are drawn.
        instead=one.instead if seed in (None, one.seed) else (),
        twins=0,
    )
