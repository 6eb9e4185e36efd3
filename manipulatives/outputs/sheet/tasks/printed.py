"""What of a task goes on paper."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from manipulatives.drawings.shapes import Drawing
from manipulatives.outputs.sheet.layout.paper import Size

Answer = Literal["choices", "line", "boxes", "parts", "picture", "picture and words"]
"""Where the answer goes: one of the choices is ringed; on a line; a digit in each box; the parts of
a number, their digits in boxes; into the picture; or there, and the key says it in words, too."""


@dataclass(frozen=True)
class Manner:
    """How the tasks of a round are printed.

    Attributes:
        size: the sizes of the sheet, for the age of who writes on it.
        key: whether the answers are given.
        room: the width that a picture may have, in millimetres.
        digits: how many boxes there are for a number: as many for each task of the round, so that
            they tell nothing about the answer.
        longest: how many digits the longest number in a row of the round has.
        lead: how wide the widest sum of the round is up to its equal sign, so that all boxes of
            its sums stand below each other.
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
    """What of a task goes on paper.

    Attributes:
        prompt: what is asked in words; empty where the picture asks it.
        instructions: what pupils are told to do; empty where the prompt says it.
        answer: where the answer goes.
        picture: what is seen, or given to write or to draw on, or both.
        given: what there is to work with; it is printed once where it is the same for all tasks.
        corner: whether the top left corner of the picture is free for the task's number.
        short: whether there is no more to it than the picture.
    """

    prompt: str
    instructions: str
    answer: Answer
    picture: Drawing | None = None
    given: Drawing | None = None
    corner: bool = False
    short: bool = False
