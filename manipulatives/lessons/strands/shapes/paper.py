"""The paper as a shape task begins: nothing is read out that is asked."""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.strands.shapes.pools.polygons import Drawn
from manipulatives.lessons.tasks.task import Numbers
from manipulatives.maths.shapes.data import Shape
from manipulatives.maths.shapes.papers import Grid

YES_OR_NO = ("yes", "no")


def to_look_at(one: Drawn, vocabulary: str) -> dict[str, Any]:
    """Return the traits of a paper that is a picture to read.

    Example:
        >>> from manipulatives.lessons.strands.shapes.pools.polygons import drawn
        >>> to_look_at(drawn("square")[0], "us")["show"]
        []
    """
    return {
        "shape": dict(one.shape()),
        "grid": one.grid,
        "show": [],
        "hints": False,
        "movable": False,
        "buttons": False,
        "vocabulary": vocabulary,
    }


def to_draw_on(shape: Shape | None, grid: Grid, vocabulary: str) -> dict[str, Any]:
    """Return the traits of a paper that is drawn on; hints say when sides cross.

    Example:
        >>> to_draw_on(None, "square", "us")["shape"]
        {'points': [], 'closed': False}
    """
    return {
        "shape": dict(shape or Shape(points=[], closed=False)),
        "grid": grid,
        "show": [],
        "vocabulary": vocabulary,
    }


def yes_no(value: bool) -> str:  # noqa: FBT001 - the value is what is put into words
    """Return a truth as it is chosen.

    Example:
        >>> yes_no(True)
        'yes'
    """
    return YES_OR_NO[0] if value else YES_OR_NO[1]


def with_article(name: str) -> str:
    """Return a name of a shape as it stands in a sentence.

    Example:
        >>> with_article("octagon"), with_article("square")
        ('an octagon', 'a square')
    """
    return f"{'an' if name[0] in 'aeio' else 'a'} {name}"


def numbers_to(many: int) -> str:
    """Return the numbers that are said while so many are counted.

    Example:
        >>> numbers_to(4)
        '1, 2, 3, 4'
    """
    return ", ".join(map(str, range(1, many + 1)))


def count_of(what: str, many: int) -> Numbers:
    """Return the numbers of a step in which so many of something are counted.

    Example:
        >>> count_of("sides", 3)
        {'act': 'count', 'what': 'sides', 'from': 0, 'by': 1, 'to': 3, 'counted': [1, 2, 3]}
    """
    counted = [*range(1, many + 1)]
    return {"act": "count", "what": what, "from": 0, "by": 1, "to": many, "counted": counted}


def found(what: str, many: int) -> Numbers:
    """Return the numbers of a step that tells how many of something a shape has.

    Example:
        >>> found("right angles", 4)
        {'act': 'find', 'what': 'right angles', 'many': 4}
    """
    return {"act": "find", "what": what, "many": many}


def counted(many: int, one: str, several: str) -> str:
    """Return a number of things.

    Example:
        >>> counted(1, "right angle", "right angles")
        '1 right angle'
    """
    return f"{many} {one if many == 1 else several}"
