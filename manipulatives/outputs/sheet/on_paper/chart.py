"""Pieces of a counting chart to circle and to write numbers on, and number lines."""

from __future__ import annotations

from manipulatives.drawings.chart import chart_drawing
from manipulatives.drawings.shapes import Drawing
from manipulatives.lessons.facts.chart import CHART
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.number.chart import Chart, Marks, no_marks
from manipulatives.outputs.sheet.tasks.number_line import hops_drawing
from manipulatives.outputs.sheet.tasks.printed import Manner, Printed
from manipulatives.outputs.sheet.tasks.solved import solved
from manipulatives.outputs.sheet.tasks.words import words

MANIPULATIVE = "CountingChart"

AROUND = 2
"""How many rows are seen above and below those that are needed."""

MOST_ROWS = 13
WRITE = "write"


def printed(task: Task, manner: Manner) -> Printed:
    """Return a task with a counting chart as it is printed."""
    if task.ask["by"] != "manipulative":
        # What is on the screen's chart is in the prompt too.
        return words(task, manner)
    traits = {name: task.start.get(name, value) for name, value in CHART.items()}
    whole = Chart(**traits)
    now: Marks = {**no_marks(), **task.start.get("chart", {})}
    end: Marks = {**no_marks(), **solved(task).get("chart", {})}
    prompt = task.prompt.replace("Tap the", "Circle the")
    if whole.mode == WRITE:
        picture = _piece(whole, now, sorted(whole.blanks), manner)
        return Printed(prompt, "", "picture", picture)
    needed = [*now["counted"], *end["counted"]]
    if _rows(whole, needed) > MOST_ROWS:
        shown = end["counted"] if manner.key else now["counted"]
        picture = hops_drawing(needed, shown, whole.step, manner)
        return Printed(prompt, "Draw the hops on the line.", "picture", picture)
    picture = _piece(whole, end if manner.key else now, needed, manner)
    instructions = "" if prompt.startswith("Circle") else "Circle every number that you count."
    return Printed(prompt, instructions, "picture", picture)


def _rows(whole: Chart, needed: list[int]) -> int:
    return (max(needed) - whole.first) // whole.width - (min(needed) - whole.first) // whole.width


def _piece(whole: Chart, marks: Marks, needed: list[int], manner: Manner) -> Drawing:
    """Return some rows of a chart: those that are needed and a few more."""
    top = max(0, (min(needed) - whole.first) // whole.width - AROUND)
    bottom = (max(needed) - whole.first) // whole.width + AROUND
    first = whole.first + top * whole.width
    last = min(whole.last, whole.first + (bottom + 1) * whole.width - 1)
    hidden = [number for number in whole.blanks if first <= number <= last]
    # The count itself is printed, not counted: a step of one fits on every piece.
    piece = Chart(first, last, whole.width, hidden=hidden, mode=whole.mode)
    return chart_drawing(
        piece,
        marks,
        to_write=True,
        answered=manner.key and whole.mode == WRITE,
        width=min(manner.room, manner.size.box * whole.width),
        least_type=manner.size.note,
    )
