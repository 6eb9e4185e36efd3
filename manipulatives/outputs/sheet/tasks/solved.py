"""The state of a manipulative once a task is solved."""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.tasks.task import Task


def solved(task: Task) -> dict[str, Any]:
    """Return the traits after the last step; each step replaces the traits that it shows.

    Args:
        task: the task.
    """
    traits = dict(task.start)
    for step in task.steps:
        traits.update(step.show)
    return traits
