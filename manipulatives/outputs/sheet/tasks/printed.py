"""The parts of a task that are printed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from manipulatives.drawings.shapes import Drawing
from manipulatives.outputs.sheet.layout.paper import Size

Answer = Literal["choices", "line", "boxes", "parts", "picture", "picture and words"]
"""Where the answer goes: a ring around a choice; on a line; a digit in each box; the parts of a
number, their digits in boxes; into the picture; or into the picture, with words in the key."""


@dataclass(frozen=True)
class Manner:
    """How the tasks of a round are printed.

    Attributes:
        size: the sizes of the sheet, for the age of the pupils.
        key: whether the answers are given.
        room: the width that a picture may have, in millimetres.
        digits: how many boxes there are for a number: the same for all tasks of the round, so that
            they reveal nothing about the answer.
        longest: how many digits the longest number in a row of the round has.
        lead: the width of the widest sum of the round up to its equal sign, so that the boxes of
            all its sums are aligned.
        vocabulary: "us" or "uk".
    """

    size: Size
    key: bool
    room: float
    digits: int = 1
    longest: int = 1
    lead: float = 0.0
    vocabulary: str = "us"


@dataclass(frozen=True)
class Printed:
    """The parts of a task that are printed.

    Attributes:
        prompt: what is asked in words; empty where the picture asks it.
        instructions: what pupils have to do; empty where the prompt says it.
        answer: where the answer goes.
        picture: to look at, or to write or draw on.
        given: what pupils work with; printed once where it is the same for all tasks.
        corner: whether the top left corner of the picture is free for the task's number.
        short: whether the picture is all there is.
    """

    prompt: str
    instructions: str
    answer: Answer
    picture: Drawing | None = None
    given: Drawing | None = None
    corner: bool = False
    short: bool = False
