"""What a browser does with a task, in Python: apply its steps, check its goal, find a mistake."""

from __future__ import annotations

from collections.abc import Mapping

from manipulatives.lessons.tasks.facts import facts_of
from manipulatives.lessons.tasks.predicates import Fact, holds
from manipulatives.lessons.tasks.task import Mistake, Task

__all__ = ["facts_of", "is_solved", "mistake_made", "play_steps"]


def play_steps(task: Task) -> dict[str, Fact]:
    """Return the facts after all worked steps were applied to the start.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> [task] = make_tasks("time.set_hands", seed=90213, count=1)
        >>> holds(task.goal, play_steps(task))
        True
    """
    traits, answer = dict(task.start), None
    for step in task.steps:
        traits |= step.show
        answer = step.answer or answer
    return facts_of(task.manipulative, traits, answer)


def is_solved(task: Task, facts: Mapping[str, Fact]) -> bool:
    """Return whether the goal of a task is met.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> [task] = make_tasks("time.read_hour", seed=90213, count=1)
        >>> is_solved(task, {"answer": task.answer})
        True
    """
    return holds(task.goal, facts)


def mistake_made(task: Task, facts: Mapping[str, Fact]) -> Mistake | None:
    """Return the first mistake whose predicate is true; None if the task is solved or none is.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> [task] = make_tasks("time.read_hour", seed=90213, count=1)
        >>> mistake_made(task, {"answer": task.answer})
    """
    if is_solved(task, facts):
        return None
    return next((mistake for mistake in task.mistakes if holds(mistake.when, facts)), None)
