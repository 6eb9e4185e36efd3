"""What is made of a lesson beside its board: page, sheet, key and notebook, each a file."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import nbformat

from manipulatives.lessons.problem import LessonProblem, in_file
from manipulatives.lessons.whole import write_whole

if TYPE_CHECKING:
    from pathlib import Path

    from manipulatives.serve.shelf import ShelfItem


@dataclass(frozen=True)
class Form:
    """A form that a lesson can be had in.

    Attributes:
        word: what the button says.
        ending: what the file's name has in place of the lesson's ending.
        kind: its media type.
        mark: bytes that every such file made by the kit holds.
    """

    word: str
    ending: str
    kind: str
    mark: bytes


FORMS = {
    "page": Form("Page", ".html", "text/html; charset=UTF-8", b'data-kit-session="page"'),
    "pupils": Form(
        "Pupils' page",
        ".pupils.html",
        "text/html; charset=UTF-8",
        b'data-kit-session="pupils"',
    ),
    "sheet": Form("Sheet", ".sheet.pdf", "application/pdf", b"/Creator (manipulatives)"),
    "key": Form("Key", ".key.pdf", "application/pdf", b"/Creator (manipulatives)"),
}

# The forms that are pages, each with whom it is for.
AUDIENCES = {"page": "board", "pupils": "pupils"}


def target(item: ShelfItem, form: str) -> Path:
    """Return the file that a form of a lesson is written to, beside the lesson's own."""
    return item.source.with_name(item.source.stem + FORMS[form].ending)


def made(item: ShelfItem, form: str) -> bytes | None:
    """Return a form as it was made last; None when there is no such file made by the kit.

    Raises:
        OSError: it cannot be read.
    """
    path = target(item, form)
    if path.is_symlink() or not path.is_file():
        return None
    content = path.read_bytes()
    return content if FORMS[form].mark in content else None


def make(item: ShelfItem, form: str) -> Path:
    """Write a form of a lesson beside the lesson, whole or not at all, and return its path.

    A form made before is replaced; any other file of that name stays as it is.

    Raises:
        LessonProblem: the lesson does not give that form, or another file has its name.
        OSError: the file cannot be written.

    Example:
        >>> from pathlib import Path
        >>> from manipulatives.serve.shelf import Shelf
        >>> make(Shelf(Path("notebooks")).find("market-clock"), "sheet").name
        'market-clock.sheet.pdf'
    """
    path = target(item, form)
    if path.is_symlink() or (path.exists() and made(item, form) is None):
        raise LessonProblem(
            "there is a file of that name that the kit did not make",
            remedy="move it away or rename it, then try again",
            file=path.name,
        )
    with in_file(item.source.name):
        write_whole(path, _content(item, form))
    return path


def notebook_for(item: ShelfItem) -> str:
    """Return the notebook of a lesson as a path below the shelf; written when there is none.

    From then on everything is made from the notebook, which helpers can change.

    Raises:
        LessonProblem: the lesson cannot be read, or another file has the notebook's name.
        OSError: the file cannot be written.

    Example:
        >>> from pathlib import Path
        >>> from manipulatives.serve.shelf import Shelf
        >>> notebook_for(Shelf(Path("notebooks")).find("market-clock"))
        'market-clock.ipynb'
    """
    if item.is_notebook:
        return item.file
    path = item.source.with_suffix(".ipynb")
    if item.notebook is None:
        raise LessonProblem(
            "it cannot be made into a notebook as it is", remedy=f"mend {item.file} first"
        )
    if path.is_symlink() or path.exists():
        raise LessonProblem(
            "there is something of that name already",
            remedy="move it away or rename it, then try again",
            file=path.name,
        )
    write_whole(path, nbformat.writes(item.notebook) + "\n")
    return path.relative_to(item.top).as_posix()


def _content(item: ShelfItem, form: str) -> str | bytes:
    # Each loads much that a shelf does not need until it is asked to make something.
    if form in AUDIENCES:
        from manipulatives.outputs.page import page_of  # noqa: PLC0415

        return page_of(
            item.notebook,
            settings=item.settings,
            folder=item.source.parent,
            name=item.source.stem,
            audience=AUDIENCES[form],
        )
    from manipulatives.outputs.sheet import sheet_of  # noqa: PLC0415

    if item.lesson is None:
        raise LessonProblem("there is no lesson in it to print", remedy="mend it first")
    return sheet_of(item.lesson, item.settings, key=form == "key")
