"""For each manipulative, how its tasks are printed: one module of `on_paper` each.

Whoever adds a manipulative adds one file there. It says which manipulative it prints, as
`MANIPULATIVE = "Clock"`, and has a function `printed(task, manner)`.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from importlib import import_module
from pkgutil import iter_modules

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.task import Task
from manipulatives.outputs.sheet import on_paper
from manipulatives.outputs.sheet.tasks.printed import Manner, Printed

Printer = Callable[[Task, Manner], Printed]
"""Returns the printed parts of a task."""


@cache
def printers() -> dict[str, Printer]:
    """Return the printer of each manipulative, found in the folder `on_paper`.

    Example:
        >>> printers()["Clock"].__module__
        'manipulatives.outputs.sheet.on_paper.clock'
    """
    names = sorted(one.name for one in iter_modules(on_paper.__path__))
    modules = [import_module(f"{on_paper.__name__}.{name}") for name in names]
    return {module.MANIPULATIVE: module.printed for module in modules}


def printed_task(task: Task, manner: Manner) -> Printed:
    """Return the parts of a task that are printed.

    The answer is never shown: the picture holds only what pupils see first on the screen, and only
    as much of it as they need.

    Args:
        task: the task.
        manner: how its round is printed.

    Raises:
        LessonProblem: its manipulative cannot be printed.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> from manipulatives.outputs.sheet.layout.paper import STANDARD
        >>> [task] = make_tasks("time.read_hour", seed=90213, count=1, twins=0)
        >>> printed_task(task, Manner(STANDARD, key=False, room=100)).instructions
        'Write the time on the line.'
    """
    known = printers()
    if task.manipulative in known:
        return known[task.manipulative](task, manner)
    raise LessonProblem(
        f"{task.manipulative} cannot be printed",
        remedy=f"leave out the round, or take one with {' or '.join(sorted(known))}",
    )
