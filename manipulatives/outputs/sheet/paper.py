"""The papers a sheet is printed on, and the sizes of type and writing space on them."""

from __future__ import annotations

from dataclasses import dataclass

from manipulatives.drawings.shapes import MM_PER_POINT

MARGIN = 15.0
"""Free edge on every side in millimetres; printers cannot reach the outer 4 to 6, and half an inch
(12.7) is what is commonly kept free."""


@dataclass(frozen=True)
class Paper:
    """A size of paper, upright.

    Attributes:
        name: what teachers call it.
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


@dataclass(frozen=True)
class Size:
    """The sizes of one kind of sheet, in millimetres.

    Attributes:
        title: type of the lesson's title.
        heading: type of a round's heading.
        text: type of what pupils read.
        note: type of what grown-ups read; the smallest on the sheet.
        writing: height of the space to write an answer in.
        columns: how many tasks lie side by side at most.
        picture: width of a task's picture.
        pair: width of each of two pictures, one given and one to complete.
        prompt: least width of the text beside a picture.
        between: free space between rows of tasks.
    """

    title: float
    heading: float
    text: float
    note: float
    writing: float
    columns: int
    picture: float
    pair: float
    prompt: float
    between: float


# Type for five- to eight-year-olds is 14 to 24 points in practice pages and never below 12. For
# handwriting, 15 to 20 mm at the age of six and 12 to 15 mm at seven are common practice.
STANDARD = Size(
    title=22 * MM_PER_POINT,
    heading=17 * MM_PER_POINT,
    text=14 * MM_PER_POINT,
    note=12 * MM_PER_POINT,
    writing=15.0,
    columns=2,
    picture=44.0,
    pair=44.0,
    prompt=36.0,
    between=8.0,
)
LARGE = Size(
    title=30 * MM_PER_POINT,
    heading=24 * MM_PER_POINT,
    text=20 * MM_PER_POINT,
    note=18 * MM_PER_POINT,
    writing=20.0,
    columns=1,
    picture=58.0,
    pair=56.0,
    prompt=52.0,
    between=10.0,
)
