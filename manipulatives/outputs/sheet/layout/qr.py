"""An address as a QR code, to be opened with a camera."""

from __future__ import annotations

import re
from itertools import groupby

import segno

from manipulatives.drawings.shapes import Box, Drawing, Paint, Shape
from manipulatives.lessons.problem import LessonProblem, quoted

MODULE = 0.75
"""The side of the smallest square in millimetres; printers and cameras manage 0.5 (common
practice)."""

QUIET = 4
"""Free squares around a code, as ISO/IEC 18004 asks for."""

LONGEST = 200

_ADDRESS = re.compile(r"https?://[!-~]+")


def check_address(address: object) -> str:
    """Check the address for a QR code and return it.

    Raises:
        LessonProblem: it is no address of a page.

    Example:
        >>> check_address("https://school.example/monday.html")
        'https://school.example/monday.html'
    """
    if isinstance(address, str) and _ADDRESS.fullmatch(address) and len(address) <= LONGEST:
        return address
    raise LessonProblem(
        f"{quoted(address)} is no address of a page",
        remedy=f"give one that begins with https:// and has at most {LONGEST} letters",
        place="address",
    )


def qr_drawing(address: str) -> Drawing:
    """Return the QR code of an address, with its free edge.

    It can still be read with a seventh of it damaged (error correction M of ISO/IEC 18004).

    Args:
        address: of the lesson's page.

    Raises:
        LessonProblem: it is no address.
    """
    code = segno.make_qr(check_address(address), error="m", boost_error=False)
    shapes: list[Shape] = []
    rows = [list(row) for row in code.matrix]
    for down, row in enumerate(rows):
        # Dark squares side by side are one box, so that no thin light line appears between them.
        for dark, squares in groupby(enumerate(row), key=lambda square: square[1]):
            run = [at for at, _ in squares]
            if dark:
                corner = ((QUIET + run[0]) * MODULE, (QUIET + down) * MODULE)
                shapes.append(Box(corner, len(run) * MODULE, MODULE, 0, Paint(fill="ink"), "qr"))
    side = (len(rows) + 2 * QUIET) * MODULE
    return Drawing(side, side, tuple(shapes))
