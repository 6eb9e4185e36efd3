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
"""How many more rows are printed above and below those that are needed."""

MOST_ROWS = 13
WRITE = "write"


def printed(task: Task, manner: Manner) -> Printed:
    """Return a task with a counting chart as it is printed."""
    if task.ask["by"] != "manipulative":
        # The prompt says what the chart on the screen shows.
        return words(task, manner)
    traits = {name: task.start.get(name, value) for name, value in CHART.items()}
    chart = Chart(**traits)
    now: Marks = {**no_marks(), **task.start.get("chart", {})}
    end: Marks = {**no_marks(), **solved(task).get("chart", {})}
    prompt = task.prompt.replace("Tap the", "Circle the")
    if chart.mode == WRITE:
        picture = _piece(chart, now, sorted(chart.blanks), manner)
        return Printed(prompt, "", "picture", picture)
    needed = [*now["counted"], *end["counted"]]
    if _rows(chart, needed) > MOST_ROWS:
        shown = end["counted"] if manner.key else now["counted"]
        picture = hops_drawing(needed, shown, chart.step, manner)
        return Printed(prompt, "Draw the hops on the line.", "picture", picture)
    picture = _piece(chart, end if manner.key else now, needed, manner)
    instructions = "" if prompt.startswith("Circle") else "Circle every number that you count."
    return Printed(prompt, instructions, "picture", picture)


def _rows(chart: Chart, needed: list[int]) -> int:
    return (max(needed) - chart.first) // chart.width - (min(needed) - chart.first) // chart.width


def _piece(chart: Chart, marks: Marks, needed: list[int], manner: Manner) -> Drawing:
    """Return some rows of a chart: those that are needed and a few more."""
    top = max(0, (min(needed) - chart.first) // chart.width - AROUND)
    bottom = (max(needed) - chart.first) // chart.width + AROUND
    first = chart.first + top * chart.width
    last = min(chart.last, chart.first + (bottom + 1) * chart.width - 1)
    hidden = [number for number in chart.blanks if first <= number <= last]
    # The marks already hold the count, so the step of the piece does not matter: one always fits.
    piece = Chart(first, last, chart.width, hidden=hidden, mode=chart.mode)
    return chart_drawing(
        piece,
        marks,
        to_write=True,
        answered=manner.key and chart.mode == WRITE,
        width=min(manner.room, manner.size.box * chart.width),
        least_type=manner.size.note,
    )
