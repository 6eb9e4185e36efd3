"""Text about a lesson for the templates of the shelf."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from manipulatives.shelf.items import ShelfItem


def length(item: ShelfItem) -> str:
    """How long a lesson is, in minutes and rounds.

    Example:
        >>> from pathlib import Path
        >>> from manipulatives.shelf.items import Shelf
        >>> length(Shelf(Path("notebooks")).find("market-clock"))
        '... min · ... rounds'
    """
    return f"{item.minutes} min · {item.rounds} {'round' if item.rounds == 1 else 'rounds'}"


def cells(numbers: Sequence[int]) -> str:
    """Name cells by their numbers.

    Example:
        >>> cells((3,)), cells((2, 5, 7))
        ('cell 3', 'cells 2, 5 and 7')
    """
    if len(numbers) == 1:
        return f"cell {numbers[0]}"
    return f"cells {', '.join(map(str, numbers[:-1]))} and {numbers[-1]}"


def can_make(item: ShelfItem, output: str) -> bool:
    """Whether an output is worth a button: paper is for lessons with rounds."""
    if item.problem or item.notebook is None or item.needs_kernel:
        return False
    return output == "page" or item.rounds > 0


def by_folder(items: Iterable[ShelfItem]) -> list[tuple[str, list[ShelfItem]]]:
    """Return the lessons of each folder, the shelf's own first; what has no rounds comes last."""
    in_order = sorted(items, key=lambda item: (item.folder, not item.rounds))
    return [(folder, list(some)) for folder, some in groupby(in_order, lambda item: item.folder)]
