"""Foreseeable errors of counting parts of shapes and of naming them, as pure functions.

They are common knowledge of teachers, from no published table; the rules are our exact statements
of them. That a shape which is turned is no longer called the same is what a standard for these ages
is about (Common Core K.G.A.2). Right angles and folds have a file of their own
(`angles`), and so has what shows in a drawing or a cut (`drawing`).

What a wrong answer suggests is a possibility, not a diagnosis: one item is weak evidence.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.strands.shapes.mistakes import angles, drawing
from manipulatives.lessons.strands.shapes.mistakes.drawing import Facts
from manipulatives.lessons.tasks.rule import Rule, rules_in

FOUR = 4
# What young pupils call by its number of sides alone.
_NAMED = {3: "triangle", 5: "pentagon", 6: "hexagon", 7: "heptagon", 8: "octagon"}


def points_of_star(facts: Facts) -> int | None:
    """Return what is counted when only the corners that stick out are.

    Args:
        facts: what is true of the shape (`shapes.shape_facts`); so in the rules below.

    Returns:
        The wrong answer, or None where the error does not show; so do the rules below.

    Example:
        >>> points_of_star({"sides": 10, "tips": 5}), points_of_star({"sides": 6, "tips": 6})
        (5, None)
    """
    tips = facts["tips"]
    return tips if isinstance(tips, int) and 0 < tips < _sides(facts) else None


def counted_mid_side(facts: Facts) -> int | None:
    """Return what is counted when points in the middle of a straight side are, too.

    Example:
        >>> counted_mid_side({"sides": 4, "points": 6, "curved_sides": 0})
        6
        >>> counted_mid_side({"sides": 4, "points": 4, "curved_sides": 0})
    """
    points = facts["points"]
    if facts["curved_sides"] or not isinstance(points, int) or points <= _sides(facts):
        return None
    return points


def start_twice(facts: Facts) -> int | None:
    """Return what is counted when the one that the count began with is counted once more.

    Example:
        >>> start_twice({"sides": 5}), start_twice({"sides": 0})
        (6, None)
    """
    return _sides(facts) + 1 if _sides(facts) else None


def one_too_few(facts: Facts) -> int | None:
    """Return what is counted when one is left out.

    Example:
        >>> one_too_few({"sides": 5}), one_too_few({"sides": 0})
        (4, None)
    """
    return _sides(facts) - 1 if _sides(facts) else None


def curved_as_straight(facts: Facts) -> int | None:
    """Return how many straight sides are counted when the curved one is, too.

    Example:
        >>> curved_as_straight({"sides": 1, "curved_sides": 1})
        2
        >>> curved_as_straight({"sides": 4, "curved_sides": 0})
    """
    return _sides(facts) + 1 if facts["curved_sides"] else None


def name_one_more(facts: Facts) -> str | None:
    """Return the name of the polygon that has one side more.

    Example:
        >>> name_one_more({"sides": 5, "curved_sides": 0})
        'hexagon'
    """
    return _neighbour(facts, 1)


def name_one_fewer(facts: Facts) -> str | None:
    """Return the name of the polygon that has one side fewer.

    Example:
        >>> name_one_fewer({"sides": 6, "curved_sides": 0})
        'pentagon'
    """
    return _neighbour(facts, -1)


def _neighbour(facts: Facts, step: int) -> str | None:
    return None if facts["curved_sides"] else _NAMED.get(_sides(facts) + step)


def any_four_is_square(facts: Facts) -> str | None:
    """Return the name when every shape with four sides is called a square.

    Example:
        >>> any_four_is_square({"sides": 4, "square": False})
        'square'
        >>> any_four_is_square({"sides": 4, "square": True})
    """
    return "square" if facts["sides"] == FOUR and not facts["square"] else None


def any_four_is_rectangle(facts: Facts) -> str | None:
    """Return the name when every shape with four sides is called a rectangle.

    Example:
        >>> any_four_is_rectangle({"sides": 4, "rectangle": False})
        'rectangle'
    """
    return "rectangle" if facts["sides"] == FOUR and not facts["rectangle"] else None


def round_is_circle(facts: Facts) -> str | None:
    """Return the name when every shape with a curved side is called a circle.

    Example:
        >>> round_is_circle({"curved_sides": 1, "name": "half circle"})
        'circle'
    """
    return "circle" if facts["curved_sides"] and facts["name"] != "circle" else None


def half_for_quarter(facts: Facts) -> str | None:
    """Return the name when a half circle is taken for a quarter circle, or the other way round.

    Example:
        >>> half_for_quarter({"name": "half circle"}), half_for_quarter({"name": "circle"})
        ('quarter circle', None)
    """
    swapped = {"half circle": "quarter circle", "quarter circle": "half circle"}
    return swapped.get(str(facts["name"]))


def _sides(facts: Facts) -> int:
    sides = facts["sides"]
    return sides if isinstance(sides, int) else 0


Number = Rule[Callable[[Facts], int | None]]
Name = Rule[Callable[[Facts], str | None]]

# In each table: where several rules lead to one answer, the first of them names it.
COUNTING: tuple[Number, ...] = rules_in(
    FOLDER / "shapes",
    points_of_star,
    counted_mid_side,
    curved_as_straight,
    start_twice,
    one_too_few,
)
NAMING: tuple[Name, ...] = rules_in(
    FOLDER / "shapes",
    any_four_is_square,
    any_four_is_rectangle,
    round_is_circle,
    half_for_quarter,
    name_one_more,
    name_one_fewer,
)

RULES: tuple[Rule[Any], ...] = (
    *COUNTING,
    *NAMING,
    *angles.RIGHT_ANGLES,
    *angles.MIRROR_LINES,
    *angles.SQUARES,
    *drawing.RULES,
)
