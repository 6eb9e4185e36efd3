"""The names of shapes.

Names by number of sides are standard usage, from memory but for eleven and twelve, which were
looked up. Two things differ between books, and are settings:

* a quadrilateral with parallel sides is a *trapezoid* in the United States and a *trapezium* in
  England;
* it has exactly one pair of parallel sides by the exclusive definition and at least one by the
  inclusive one, by which a parallelogram is a trapezoid, too. The progression on geometry of the
  Common Core State Standards (K-6, 2012/13) calls both legitimate and notes that the inclusive one
  is favoured.

A square is a rectangle, as England's programme of study for Year 1 says ("rectangles (including
squares)"), and a rhombus; it is called by its most particular name, and the others are given with
it. Neither size nor position changes a name (Common Core K.G.A.2).
"""

from __future__ import annotations

from dataclasses import dataclass

from manipulatives.data import table
from manipulatives.maths.shapes.outline import Outline
from manipulatives.maths.shapes.properties import QUADRILATERAL, Properties
from manipulatives.maths.vocabulary import VOCABULARIES

DEFINITIONS = ("inclusive", "exclusive")
BY_SIDES: dict[int, str] = {
    int(sides): name for sides, name in table("shape_words")["sides"].items()
}
LEAST_STAR = 4
_CROSSINGS = 5


@dataclass(frozen=True)
class Wording:
    """The choice of names for shapes.

    Attributes:
        vocabulary: "us" (trapezoid) or "uk" (trapezium).
        trapezoid: "inclusive" (at least one pair of parallel sides) or "exclusive" (exactly one).
    """

    vocabulary: str = "us"
    trapezoid: str = "inclusive"

    def __post_init__(self) -> None:
        if self.vocabulary not in VOCABULARIES:
            raise ValueError(f'The vocabulary is "us" or "uk", not {self.vocabulary!r}.')
        if self.trapezoid not in DEFINITIONS:
            raise ValueError(
                f'A trapezoid is defined "inclusive" or "exclusive", not {self.trapezoid!r}.'
            )


US = Wording()


def kinds_of(found: Properties, sides: int, wording: Wording = US) -> dict[str, bool]:
    """Return which of the kinds of quadrilaterals a polygon is.

    Args:
        found: its properties.
        sides: how many sides it has.
        wording: which definition of a trapezoid holds.

    Example:
        >>> from manipulatives.maths.shapes.properties import properties_of
        >>> found = properties_of([(0, 0), (4, 0), (4, 3), (0, 3)], "square")
        >>> [kind for kind, holds in kinds_of(found, 4).items() if holds]
        ['rectangle', 'parallelogram', 'trapezoid']
    """
    rectangle = found.parallelogram and bool(found.right)
    rhombus = found.parallelogram and len(found.equal[0]) == QUADRILATERAL
    pairs = len(found.parallel) if sides == QUADRILATERAL else 0
    return {
        "square": rectangle and rhombus,
        "rectangle": rectangle,
        "rhombus": rhombus,
        "parallelogram": found.parallelogram,
        "trapezoid": pairs == 1 or (pairs > 1 and wording.trapezoid == "inclusive"),
        "kite": found.kite,
    }


def names_of(found: Properties, sides: int, wording: Wording = US) -> list[str]:
    """Return every name of a polygon, the most particular name first.

    Example:
        >>> from manipulatives.maths.shapes.properties import properties_of
        >>> found = properties_of([(0, 0), (3, 0), (3, 3), (0, 3)], "square")
        >>> names_of(found, 4, Wording("uk", "exclusive"))
        ['square', 'rectangle', 'rhombus', 'parallelogram', 'kite', 'quadrilateral']
    """
    kinds = kinds_of(found, sides, wording)
    names = [_in_words(kind, wording) for kind, holds in kinds.items() if holds]
    if is_star(found, sides):
        names.append("star")
    return [*names, by_sides(sides)]


def _in_words(kind: str, wording: Wording) -> str:
    return "trapezium" if kind == "trapezoid" and wording.vocabulary == "uk" else kind


def by_sides(sides: int) -> str:
    """Return what a polygon is called after its number of sides.

    Example:
        >>> by_sides(6), by_sides(13)
        ('hexagon', 'polygon with 13 sides')
    """
    return BY_SIDES.get(sides, f"polygon with {sides} sides")


def is_star(found: Properties, sides: int) -> bool:
    """Return whether points and notches take turns around a polygon, with four points or more.

    Example:
        >>> from manipulatives.maths.shapes.properties import properties_of
        >>> corners = [(4, 0), (5, 3), (8, 4), (5, 5), (4, 8), (3, 5), (0, 4), (3, 3)]
        >>> is_star(properties_of(corners, "square"), 8)
        True
    """
    first = set(range(0, sides, 2)), set(range(1, sides, 2))
    return sides >= 2 * LEAST_STAR and sides % 2 == 0 and set(found.tips) in first


def is_pentagram(outline: Outline) -> bool:
    """Return whether a closed chain of five strokes crosses itself five times: a star of strokes.

    Example:
        >>> from manipulatives.maths.shapes.outline import outline_of
        >>> is_pentagram(outline_of([[4, 0], [7, 8], [0, 3], [8, 3], [1, 8]], "square"))
        True
    """
    kinds = [meeting.kind for meeting in outline.meetings]
    return outline.closed and len(outline.corners) == _CROSSINGS and kinds == ["crossing"] * 5
