"""Blocks to read, and mats to draw blocks on."""

from __future__ import annotations

import re
from typing import Any

from manipulatives.drawings.block_rows import ONES, PITCH
from manipulatives.drawings.blocks import block_shapes, blocks_drawing
from manipulatives.drawings.shapes import Box, Drawing, Paint, Shape
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.number.place_value import Blocks, fewest, number_of
from manipulatives.outputs.sheet.tasks.printed import Answer, Manner, Printed
from manipulatives.outputs.sheet.tasks.solved import solved
from manipulatives.outputs.sheet.tasks.words import asked, is_sum, on_paper, words

MANIPULATIVE = "PlaceValueBlocks"

INSTRUCTIONS = "Draw the blocks on the mat."

_SHOWN = ("places", "pair", "digits")
_GAP = 6.0
_PLACES = 3
_BROAD, _HIGH = 1.6, 1.5
_MOST_ONES = 20
_ONE = 0.15
"""The side of a one where there are only ones, as a share of the height of a mat."""


def printed(task: Task, manner: Manner) -> Printed:
    """Return a task with blocks as it is printed."""
    if task.ask["by"] == "manipulative":
        traits = {**task.start, **({"mat": solved(task)["mat"]} if manner.key else {})}
        empty = not manner.key and not any(map(number_of, task.start["mat"]))
        picture = _mat(traits, manner, drawn=not empty)
        answer: Answer = "picture and words" if len(task.start["mat"]) > 1 else "picture"
        return Printed(on_paper(task.prompt), INSTRUCTIONS, answer, picture)
    mats: list[Blocks] = task.start.get("mat", [{}])
    if is_sum(task.prompt) or all(_repeats_prompt(mat, task.prompt) for mat in mats):
        return words(task, manner)
    return asked(task, manner, picture=_mat(task.start, manner))


def _repeats_prompt(mat: Blocks, prompt: str) -> bool:
    """Whether blocks only repeat a number of the prompt, or there are none."""
    number = number_of(mat)
    if not number:
        return True
    return f"{number}" in re.findall("[0-9]+", prompt) and {**mat} == {**fewest(number)}


def _mat(traits: dict[str, Any], manner: Manner, *, drawn: bool = True) -> Drawing:
    shown = {name: traits[name] for name in _SHOWN if name in traits}
    width, height = manner.size.blocks
    mats = traits["mat"]
    if len(mats) > 1:
        width = min(manner.room, 2 * width + _GAP)
    elif traits.get("places") == 1 and number_of(mats[0]) <= _MOST_ONES:
        return _ones(mats[0]["ones"] if drawn else 0, _ONE * height)
    elif traits.get("places", _PLACES) >= _PLACES:
        # A hundred is wide: on a small mat the blocks would be too small to count.
        width, height = min(manner.room, _BROAD * width), _HIGH * height
    return blocks_drawing(
        mats,
        **shown,
        blocks=drawn,
        width=width,
        height=height,
        least_type=manner.size.note,
    )


def _ones(count: int, unit: float) -> Drawing:
    """Return a mat with ones only, in rows of five and groups of ten, larger than beside tens."""
    inset = 0.9 * unit
    width = (4 * PITCH + 1) * unit + 2 * inset
    height = (ONES["group"] + PITCH + 1) * unit + 2 * inset
    edge = Paint(fill="sheet", stroke="edge", width=0.3)
    shapes: list[Shape] = [Box((0.15, 0.15), width - 0.3, height - 0.3, 2, edge, "mat")]
    for index in range(count):
        ten, one = divmod(index, 10)
        x, y = PITCH * (one % 5), ONES["group"] * ten + PITCH * (one // 5)
        shapes += block_shapes("ones", (inset + x * unit, inset + y * unit), unit)
    return Drawing(width, height, tuple(shapes))
