"""The worked steps of a key: what is said, and what the class answers."""

from __future__ import annotations

from collections.abc import Sequence

from manipulatives.drawings.shapes import Drawing, Line, Paint, Shape, Text
from manipulatives.lessons.tasks.task import Step
from manipulatives.outputs.sheet.layout.lines import paragraph
from manipulatives.outputs.sheet.layout.paper import Size
from manipulatives.outputs.sheet.pdf.letters import text_width

CLASS = "Class:"
_EDGE = Paint(stroke="line", width=0.6)
_INDENT = 2.2


def step_drawings(steps: Sequence[Step], size: Size, width: float) -> list[Drawing]:
    """Return the steps of a task, one drawing for each.

    Args:
        steps: the steps.
        size: the sizes of the sheet.
        width: how wide they may be in millimetres.
    """
    return [_step(number, step, size, width) for number, step in enumerate(steps, start=1)]


def _step(number: int, step: Step, size: Size, width: float) -> Drawing:
    left = _INDENT * size.note
    sentence = paragraph(step.say, size.note, width - left, most=9)
    parts: list[Shape] = [
        Text((0, size.note), f"{number}.", size.note, colour="quiet"),
        *sentence.at(left, 0),
    ]
    height = sentence.height
    if step.chant:
        label = text_width(CLASS, size.note) + 0.4 * size.note
        chant = paragraph(step.chant, size.note, width - left - label, most=9)
        base = height + size.note
        parts += [
            Text((left, base), CLASS, size.note, colour="quiet"),
            *chant.at(left + label, height),
        ]
        height += chant.height
    rule = Line((left - 1.2, 0.2 * size.note), (left - 1.2, height), _EDGE, "rule")
    return Drawing(width, height, (rule, *parts))
