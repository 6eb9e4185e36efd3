"""Clocks to read, and clocks to draw hands on."""

from __future__ import annotations

from typing import Any

from manipulatives.drawings.clock import clock_drawing
from manipulatives.drawings.shapes import Drawing, Line, Paint, Polygon
from manipulatives.lessons.tasks.task import Task
from manipulatives.outputs.sheet.layout.paper import Size
from manipulatives.outputs.sheet.tasks.printed import Manner, Printed
from manipulatives.outputs.sheet.tasks.solved import solved
from manipulatives.outputs.sheet.tasks.words import asked

MANIPULATIVE = "Clock"

ARROW_ROOM = 10.0

_SHOWN = ("numerals", "ticks", "minute_numbers", "sector", "arc")


def printed(task: Task, manner: Manner) -> Printed:
    """Return a task with a clock as it is printed."""
    size = manner.size
    if task.ask["by"] != "manipulative":
        face = _face(task.start, size, size.picture)
        return asked(task, manner, picture=face, corner=True)
    if manner.key:
        # The key shows the hands that the pupil draws, without the help that steps show on the
        # board.
        helps = {name: task.start.get(name, False) for name in ("sector", "arc")}
        end, how = {**solved(task), **helps}, {"answered": True}
    else:
        end, how = task.start, {"hands": False}
    if task.kind == "set":
        # The first position of the hands is not part of the question.
        face = _face(end, size, size.picture, **how)
    else:
        given = _face(task.start, size, size.pair)
        face = _from_to(given, _face(end, size, size.pair, **how))
    return Printed(task.prompt, "Draw the hands.", "picture and words", face, corner=True)


def _face(traits: dict[str, Any], size: Size, width: float, **how: bool) -> Drawing:
    shown = {name: traits[name] for name in _SHOWN if name in traits}
    return clock_drawing(traits["dial"], **shown, **how, size=width, least_type=size.note)


def _from_to(given: Drawing, end: Drawing) -> Drawing:
    height = max(given.height, end.height)
    left, right, middle = given.width + 1.5, given.width + ARROW_ROOM - 1.5, height / 2
    tip = ((right, middle), (right - 3, middle - 1.8), (right - 3, middle + 1.8))
    arrow = (
        Line((left, middle), (right - 2.5, middle), Paint(stroke="quiet", width=0.8)),
        Polygon(tip, Paint(fill="quiet")),
    )
    end_at = given.width + ARROW_ROOM
    shapes = (*given.at(0, 0), *arrow, *end.at(end_at, 0))
    return Drawing(end_at + end.width, height, shapes)
