"""The outputs of one lesson on the shelf: their paths, reading them, and writing them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.lessons.atomic_write import atomic_write
from manipulatives.lessons.problem import LessonProblem, in_file, unreadable, visible
from manipulatives.shelf.outputs import NOTEBOOK, OUTPUTS, Source, notebook_text
from manipulatives.shelf.replace import REMEDY_MOVE, check_replaceable, is_made_by_kit, is_there

if TYPE_CHECKING:
    from pathlib import Path

    from manipulatives.shelf.items import ShelfItem


def output_path(item: ShelfItem, output: str) -> Path:
    """Return the path of an output, beside the file of its lesson."""
    return item.source.with_name(item.source.stem + OUTPUTS[output].ending)


def read_output(item: ShelfItem, output: str) -> bytes | None:
    """Return the content of an output; None when there is no such file made by the kit.

    Raises:
        OSError: it cannot be read.
    """
    path = output_path(item, output)
    return path.read_bytes() if is_made_by_kit(path, OUTPUTS[output]) else None


def write_output(item: ShelfItem, output: str) -> Path:
    """Write an output beside its lesson atomically, and return its path.

    An output made before is replaced; any other file of that name stays as it is.

    Raises:
        LessonProblem: the output cannot be made of the lesson, or another file has its name.
        OSError: the file cannot be written.

    Example:
        >>> from pathlib import Path
        >>> from manipulatives.shelf.items import Shelf
        >>> write_output(Shelf(Path("notebooks")).find("market-clock"), "sheet").name
        'market-clock.sheet.pdf'
    """
    path = output_path(item, output)
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


def notebook_path(item: ShelfItem) -> str:
    """Return the path of a lesson's notebook below the shelf; write it first if there is none.

    From then on everything is made from the notebook, which helpers can edit.

    Raises:
        LessonProblem: the lesson cannot be read, or another file has the notebook's name.
        OSError: the file cannot be written.

    Example:
        >>> from pathlib import Path
        >>> from manipulatives.shelf.items import Shelf
        >>> notebook_path(Shelf(Path("notebooks")).find("market-clock"))
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
            "there is something of that name already", remedy=REMEDY_MOVE, file=path.name
        )
    atomic_write(path, notebook_text(item.notebook))
    return path.relative_to(item.top).as_posix()
