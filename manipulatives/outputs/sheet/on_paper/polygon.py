"""Shapes to count and to name, and dotted paper to draw on."""

from __future__ import annotations

from typing import Any

from manipulatives.drawings.polygon import polygon_drawing
from manipulatives.drawings.shapes import Drawing
from manipulatives.lessons.facts.polygon import EMPTY_PAPER
from manipulatives.lessons.tasks.task import Task
from manipulatives.outputs.sheet.tasks.printed import Manner, Printed
from manipulatives.outputs.sheet.tasks.solved import solved
from manipulatives.outputs.sheet.tasks.words import asked, on_paper

MANIPULATIVE = "PolygonDrawer"

DRAW = "Draw on the dots. Use a ruler."
CUT = "Draw the lines to cut along. Use a ruler."


def printed(task: Task, manner: Manner) -> Printed:
    """Return a task with a shape as it is printed."""
    if task.ask["by"] != "manipulative":
        return asked(task, manner, picture=_paper(task.start, manner))
    cut = task.start.get("tool") == "cut"
    traits = task.start
    if manner.key:
        traits = {**task.start, "shape": solved(task).get("shape", EMPTY_PAPER)}
    picture = _paper(traits, manner, answered=manner.key and not cut)
    return Printed(on_paper(task.prompt), CUT if cut else DRAW, "picture", picture)


def _paper(traits: dict[str, Any], manner: Manner, *, answered: bool = False) -> Drawing:
    return polygon_drawing(
        traits.get("shape", EMPTY_PAPER),
        traits.get("grid", "square"),
        shown=traits.get("show", ()),
        counted=traits.get("count", ""),
        guide=traits.get("guide"),
        points=traits.get("movable", True) or traits.get("show_points", True),
        answered=answered,
        size=manner.size.dots if traits.get("movable", True) else manner.size.shape,
        least_type=manner.size.note,
    )
