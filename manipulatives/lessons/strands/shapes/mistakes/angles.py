"""Foreseeable errors of counting right angles, mirror lines, and squares in rows and columns.

They are common knowledge of teachers, from no published table; the rules are our exact statements
of them.
"""

from __future__ import annotations

from collections.abc import Callable

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.strands.shapes.mistakes.drawing import Facts
from manipulatives.lessons.tasks.rule import Rule, rules_in


def all_corners_right(facts: Facts) -> int | None:
    """Return how many right angles are counted when every corner is taken for one.

    Example:
        >>> all_corners_right({"sides": 3, "right_angles": 1})
        3
        >>> all_corners_right({"sides": 4, "right_angles": 4})
    """
    return None if facts["right_angles"] == facts["sides"] else _sides(facts)


def upright_corners(facts: Facts) -> int | None:
    """Return how many right angles are seen when those that are turned are left out.

    Args:
        facts: besides, `upright`: how many of the right angles have a level and an upright side.

    Example:
        >>> upright_corners({"right_angles": 4, "upright": 0})
        0
    """
    upright = facts["upright"]
    return upright if isinstance(upright, int) and upright != facts["right_angles"] else None


def only_vertical_line(facts: Facts) -> int | None:
    """Return how many mirror lines are found when only a vertical one counts.

    Args:
        facts: besides, `vertical_line`: whether there is a vertical mirror line.

    Example:
        >>> only_vertical_line({"mirror_lines": 2, "vertical_line": True})
        1
    """
    seen = int(facts["vertical_line"] is True)
    return None if facts["mirror_lines"] == seen else seen


def line_for_each_side(facts: Facts) -> int | None:
    """Return how many mirror lines are counted when there is one for every side.

    A rectangle has two and not four: folded from corner to corner its halves do not match.

    Example:
        >>> line_for_each_side({"sides": 4, "mirror_lines": 2})
        4
        >>> line_for_each_side({"sides": 4, "mirror_lines": 4})
    """
    return None if facts["mirror_lines"] == facts["sides"] else _sides(facts)


def halves_look_alike(facts: Facts) -> int | None:
    """Return how many mirror lines are found in a parallelogram when a turn is taken for a fold.

    Its halves are equal, but one must be turned, not folded, to lie on the other.

    Example:
        >>> halves_look_alike({"parallelogram": True, "mirror_lines": 0})
        2
    """
    turned = facts["parallelogram"] and facts["mirror_lines"] == 0
    return 2 if turned else None


def rows_and_columns(rows: int, columns: int) -> int | None:
    """Return how many squares are found when rows and columns are added.

    Example:
        >>> rows_and_columns(2, 4), rows_and_columns(2, 2)
        (6, None)
    """
    return None if rows + columns == rows * columns else rows + columns


def one_row(_: int, columns: int) -> int:
    """Return how many squares are found when only one row is counted.

    Example:
        >>> one_row(2, 4)
        4
    """
    return columns


def edge_alone(rows: int, columns: int) -> int | None:
    """Return how many squares are found when only those on the edge are counted.

    Example:
        >>> edge_alone(3, 4), edge_alone(2, 4)
        (10, None)
    """
    inside = (rows - 2) * (columns - 2)
    return rows * columns - inside if inside > 0 else None


def _sides(facts: Facts) -> int:
    sides = facts["sides"]
    return sides if isinstance(sides, int) else 0


Number = Rule[Callable[[Facts], int | None]]
OnSquares = Rule[Callable[[int, int], int | None]]

# In each table: where several rules lead to one answer, the first of them names it.
RIGHT_ANGLES: tuple[Number, ...] = rules_in(FOLDER / "shapes", all_corners_right, upright_corners)
MIRROR_LINES: tuple[Number, ...] = rules_in(
    FOLDER / "shapes", halves_look_alike, line_for_each_side, only_vertical_line
)
SQUARES: tuple[OnSquares, ...] = rules_in(FOLDER / "shapes", rows_and_columns, one_row, edge_alone)
