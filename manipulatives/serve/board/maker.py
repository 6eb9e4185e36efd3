"""The lesson maker as the shelf opens it: a board that holds nothing but the maker's form."""

from __future__ import annotations

from typing import TYPE_CHECKING

from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.settings import ClassSettings, class_settings
from manipulatives.serve.board.board import Board

if TYPE_CHECKING:
    from pathlib import Path

    from manipulatives.shelf.items import ShelfItem

TITLE = "Make a lesson"

# No lesson of the shelf has a name that begins like this.
NAME = ".maker"

# Nobody else's code runs in the kernel of the form.
_FAST = (
    "from manipulatives.notebook.fast_import import import_nbformat_fast\n\nimport_nbformat_fast()"
)


def maker_board(top: Path, item: ShelfItem | None = None) -> Board:
    """Return the board on which a lesson is put together.

    Args:
        top: the shelf's folder.
        item: the lesson to be changed; None for a new one in the shelf's own folder.

    Example:
        >>> from pathlib import Path
        >>> maker_board(Path("notebooks")).rounds
        0
    """
    folder = item.folder if item else ""
    opened = f"lesson={item.name.rpartition('/')[2]!r}" if item else ""
    cells = [
        new_markdown_cell(f"# {TITLE}", id="title"),
        new_code_cell(_FAST, id="fast"),
        new_code_cell(
            f"from manipulatives import lesson_maker\n\nlesson_maker({opened})", id="maker"
        ),
    ]
    return Board(
        name=NAME,
        title=TITLE,
        seed=0,
        vocabulary=_settings(top / folder).vocabulary,
        rounds=0,
        notebook=new_notebook(cells=cells),
        folder=folder,
        stamp="",
        kit_only=True,
    )


def _settings(folder: Path) -> ClassSettings:
    try:
        return class_settings(folder)
    except LessonProblem:
        # The form says what is wrong with them.
        return ClassSettings()
