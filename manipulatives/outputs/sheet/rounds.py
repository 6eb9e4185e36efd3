"""The rounds of a lesson with their tasks, in the numbers of a version."""

from __future__ import annotations

from dataclasses import dataclass

from manipulatives.lessons.catalogue.skills import skill_called
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem, at
from manipulatives.lessons.round_tasks import tasks_for
from manipulatives.lessons.settings import ClassSettings
from manipulatives.lessons.tasks.task import Task
from manipulatives.outputs.sheet.code import VERSIONS, version_seed
from manipulatives.outputs.sheet.layout.paper import age_for


@dataclass(frozen=True)
class RoundTasks:
    """A round with its tasks.

    Attributes:
        round: the round, with nothing left unset.
        tasks: its tasks.
        age: at which children first meet its skill, in years.
    """

    round: Round
    tasks: list[Task]
    age: int


def tasks_by_round(
    lesson: Lesson, settings: ClassSettings, version: str = VERSIONS[0]
) -> list[RoundTasks]:
    """Return the rounds of a lesson with their tasks.

    Versions are equally difficult: they have the same skills, options and numbers of tasks in the
    same order. B repeats no task of A, and C none of A or B, if the skill has enough different
    tasks.

    Args:
        lesson: with nothing left unset.
        settings: of the class, for the method of written sums.
        version: "A", "B" or "C".

    Raises:
        LessonProblem: there are no rounds, or one that cannot be made.
    """
    if not lesson.rounds:
        raise LessonProblem("there is nothing to print", remedy="give the lesson a round")
    found = []
    for place, each in enumerate(lesson.rounds, start=1):
        with at(f"round {place}"):
            tasks = _tasks(each, lesson, settings, version)
            found.append(RoundTasks(each, tasks, age_for(skill_called(each.skill).standards)))
    return found


def _tasks(each: Round, lesson: Lesson, settings: ClassSettings, version: str) -> list[Task]:
    before: set[str] = set()
    for one in VERSIONS[: VERSIONS.index(version) + 1]:
        seed = version_seed(each.seed, one)
        try:
            tasks = tasks_for(each, lesson, settings, seed=seed, asked=before)
        except LessonProblem:
            if not before:
                raise
            tasks = tasks_for(each, lesson, settings, seed=seed)
        before |= {task.asks for task in tasks}
    return tasks
