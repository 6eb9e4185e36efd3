"""The papers a sheet is printed on, and the sizes of type and writing space on them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Any, Self

from manipulatives.drawings.shapes import MM_PER_POINT
from manipulatives.lessons.problem import LessonProblem

MARGIN = 15.0
"""Free edge on every side in millimetres; printers cannot reach the outer 4 to 6, and
half an inch (12.7) is the common margin."""


@dataclass(frozen=True)
class Paper:
    """A size of paper, upright.

    Attributes:
        name: as teachers know it.
        width: its width in millimetres.
        height: its height in millimetres.
    """

    name: str
    width: float
    height: float

    @property
    def inside(self) -> float:
        """The width between the margins in millimetres."""
        return self.width - 2 * MARGIN


PAPERS = {
    # ISO 216, and ANSI/ASME Y14.1 size A (8.5 by 11 inches).
    "a4": Paper("A4", 210.0, 297.0),
    "letter": Paper("Letter", 215.9, 279.4),
}


def paper_called(name: str) -> Paper:
    """Return the paper of that name.

    Raises:
        LessonProblem: there is none.

    Example:
        >>> paper_called("a4").height
        297.0
    """
    if name in PAPERS:
        return PAPERS[name]
    known = " or ".join(f'"{each}"' for each in PAPERS)
    raise LessonProblem(f'there is no paper "{name}"', remedy=f"print on {known}")


@dataclass(frozen=True)
class Size:
    """The sizes of one kind of sheet, in millimetres.

    Attributes:
        title: type of the lesson's title.
        heading: type of a round's heading.
        text: type of what pupils read.
        sum: type of sums and of numbers in a row.
        note: type of notes for adults, the smallest on the sheet.
        writing: height of the space to write an answer in.
        box: side of the box that a digit is written in.
        columns: how many tasks lie side by side at most.
        short: how many lie side by side at most where each is only a sum.
        picture: width of a task's picture.
        pair: width of each of two pictures, one given and one to complete.
        blocks: width and height of a mat of blocks.
        shape: width and height of the paper that a shape is on.
        dots: the same for paper to draw a shape on.
        coins: height of the space to draw coins in.
        prompt: least width of the text beside a picture.
        between: free space between rows of tasks.
    """

    title: float
    heading: float
    text: float
    sum: float
    note: float
    writing: float
    box: float
    columns: int
    short: int
    picture: float
    pair: float
    blocks: tuple[float, float]
    shape: float
    dots: float
    coins: float
    prompt: float
    between: float

    def for_age(self, age: int) -> Self:
        """Return the same sizes with space for the handwriting of children of an age.

        Args:
            age: in years.

        Example:
            >>> STANDARD.for_age(5).writing, STANDARD.for_age(5).box
            (20.0, 14.0)
        """
        writing, box = WRITING[min(max(age, min(WRITING)), max(WRITING))]
        return replace(self, writing=max(writing, self.writing), box=max(box, self.box))


WRITING = {5: (20.0, 14.0), 6: (15.0, 12.0), 7: (15.0, 11.0), 8: (12.0, 10.0)}
"""For each age the height of the space to write in, and the side of the box for a digit, in
millimetres. Both are common practice: 20 to 28 mm between lines at five, 15 to 20 at six, 12 to 15
at seven, 8 to 12 at eight; boxes of 10 to 15 mm."""

_YOUNGEST = 5
_AGES = (("CCSS K.", 5), ("CCSS 1.", 6), ("CCSS 2.", 7), ("England Y1", 6), ("England Y2", 7))


def age_for(standards: Iterable[str]) -> int:
    """Return the age at which children first meet a skill.

    They are five or six in kindergarten and year 1, and a year older in each following one; of
    two ages the younger is taken, because younger children write larger. The ages are common
    knowledge of both school systems.

    Args:
        standards: what the skill serves, as the catalogue names them.

    Example:
        >>> age_for(["CCSS 2.MD.C.7", "England Y2 measurement 7"]), age_for([])
        (7, 6)
    """
    ages = [age for one in standards for begins, age in _AGES if one.startswith(begins)]
    return min(ages, default=_YOUNGEST + 1)


# For each size: standard and large print. Type for five- to eight-year-olds is
# 14 to 24 points in practice pages and never below 12 (common practice).
_SIZES = {
    "title": (22 * MM_PER_POINT, 30 * MM_PER_POINT),
    "heading": (17 * MM_PER_POINT, 24 * MM_PER_POINT),
    "text": (14 * MM_PER_POINT, 20 * MM_PER_POINT),
    "sum": (18 * MM_PER_POINT, 26 * MM_PER_POINT),
    "note": (12 * MM_PER_POINT, 18 * MM_PER_POINT),
    "writing": (12.0, 20.0),
    "box": (10.0, 16.0),
    "columns": (2, 1),
    "short": (3, 2),
    "picture": (44.0, 58.0),
    "pair": (44.0, 56.0),
    "blocks": ((74.0, 40.0), (112.0, 58.0)),
    "shape": (50.0, 72.0),
    "dots": (62.0, 84.0),
    "coins": (54.0, 54.0),
    "prompt": (36.0, 52.0),
    "between": (8.0, 10.0),
}


def _size(column: int) -> Size:
    values: dict[str, Any] = {name: both[column] for name, both in _SIZES.items()}
    return Size(**values)


STANDARD = _size(0)
LARGE = _size(1)
