"""For each manipulative, how its tasks are printed."""

from __future__ import annotations

from collections.abc import Callable

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.task import Task
from manipulatives.outputs.sheet.on_paper.blocks import blocks
from manipulatives.outputs.sheet.on_paper.chart import chart
from manipulatives.outputs.sheet.on_paper.clock import clock
from manipulatives.outputs.sheet.on_paper.coins import coins
from manipulatives.outputs.sheet.on_paper.columns import columns
from manipulatives.outputs.sheet.on_paper.polygon import polygon
from manipulatives.outputs.sheet.printed import Manner, Printed

PICTURES: dict[str, Callable[[Task, Manner], Printed]] = {
    "Clock": clock,
    "CoinTray": coins,
    "ColumnBoard": columns,
    "CountingChart": chart,
    "PlaceValueBlocks": blocks,
    "PolygonDrawer": polygon,
}
"""For each manipulative what makes a task ready for paper."""


def printed(task: Task, manner: Manner) -> Printed:
    """Return what of a task goes on paper.

    What is asked is never shown: only what pupils see on the screen at first, and of that no more
    than is needed.

    Args:
        task: the task.
        manner: how its round is printed.

    Raises:
        LessonProblem: if its manipulative cannot be printed.
    """
    if task.manipulative in PICTURES:
        return PICTURES[task.manipulative](task, manner)
    raise LessonProblem(
        f"{task.manipulative} cannot be printed",
        remedy=f"leave out the round, or take one with {' or '.join(PICTURES)}",
    )
