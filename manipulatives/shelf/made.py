"""An output of one lesson of the shelf: where it is, what it holds, and how it is made."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.lessons.atomic_write import atomic_write
from manipulatives.lessons.problem import LessonProblem, in_file, unreadable, visible
from manipulatives.shelf.outputs import NOTEBOOK, OUTPUTS, Source, notebook_text
from manipulatives.shelf.replace import ELSEWHERE, check_replaceable, is_own, is_there

if TYPE_CHECKING:
    from pathlib import Path

    from manipulatives.shelf.items import ShelfItem


def target(item: ShelfItem, output: str) -> Path:
    """Return the file that an output of a lesson is written to, beside the lesson's own."""
    return item.source.with_name(item.source.stem + OUTPUTS[output].ending)


def made(item: ShelfItem, output: str) -> bytes | None:
    """Return an output as it was made last; None when there is no such file made by the kit.

    Raises:
        OSError: it cannot be read.
    """
    path = target(item, output)
    return path.read_bytes() if is_own(path, OUTPUTS[output]) else None


def make(item: ShelfItem, output: str) -> Path:
    """Write an output of a lesson beside the lesson, whole or not at all, and return its path.

    An output made before is replaced; any other file of that name stays as it is.

    Raises:
        LessonProblem: the lesson does not give that output, or another file has its name.
        OSError: the file cannot be written.

    Example:
        >>> from pathlib import Path
        >>> from manipulatives.shelf.items import Shelf
        >>> make(Shelf(Path("notebooks")).find("market-clock"), "sheet").name
        'market-clock.sheet.pdf'
    """
    path = target(item, output)
    with in_file(path.name):
        check_replaceable(path, OUTPUTS[output])
    with in_file(item.source.name):
        if item.notebook is None or (item.lesson is None and not OUTPUTS[output].runs_code):
            raise LessonProblem("there is no lesson in it to print", remedy="mend it first")
        source = Source(
            item.notebook, item.settings, item.source.stem, item.source.parent, may_run=True
        )
        try:
            content = OUTPUTS[output].content(source)
        except LessonProblem:
            raise
        except Exception as error:
            raise unreadable(error) from error
        atomic_write(path, content)
    return path


def notebook_for(item: ShelfItem) -> str:
    """Return the notebook of a lesson as a path below the shelf; written when there is none.

    From then on everything is made from the notebook, which helpers can change.

    Raises:
        LessonProblem: the lesson cannot be read, or another file has the notebook's name.
        OSError: the file cannot be written.

    Example:
        >>> from pathlib import Path
        >>> from manipulatives.shelf.items import Shelf
        >>> notebook_for(Shelf(Path("notebooks")).find("market-clock"))
        'market-clock.ipynb'
    """
    if item.is_notebook and visible(item.source.name) == item.source.name:
        return item.file
    path = item.source.with_suffix(NOTEBOOK)
    if item.notebook is None:
        raise LessonProblem(
            "it cannot be made into a notebook as it is", remedy=f"mend {item.file} first"
        )
    if is_there(path):
        raise LessonProblem(
            "there is something of that name already", remedy=ELSEWHERE, file=path.name
        )
    atomic_write(path, notebook_text(item.notebook))
    return path.relative_to(item.top).as_posix()
