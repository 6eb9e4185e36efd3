"""What a manipulative shows once a task is solved."""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.tasks.task import Task


def solved(task: Task) -> dict[str, Any]:
    """Return its traits after the last step; what a step shows is laid over what was there.

    Args:
        task: the task.
    """
    traits = dict(task.start)
    for step in task.steps:
        traits.update(step.show)
    return traits
