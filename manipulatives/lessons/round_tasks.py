"""The tasks of a round, with the settings of its lesson and class."""

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
    """Return the tasks of a round, without twins; unset values come from the class settings.

    Args:
        one: the round.
        lesson: its lesson.
        settings: of the class.
        seed: for other tasks of the same kind; None for the round's own, with its replacements.
        asked: the `Task.asks` of earlier tasks, which are not repeated.

    Raises:
        LessonProblem: there are too few different tasks, or none with the typed numbers.

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
        # Replacements belong to the round's own seed only.
        instead=one.instead if seed in (None, one.seed) else (),
        twins=0,
    )
