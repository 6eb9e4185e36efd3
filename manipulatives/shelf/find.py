"""Finding the lessons of a folder, and which of its files a lesson is made from.

A lesson is one file, TOML or notebook. Once its notebook exists (`monday.ipynb` beside
`monday.toml`), everything is made from the notebook, and the TOML file is ignored.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from manipulatives.lessons.settings import FILE
from manipulatives.shelf.outputs import NOTEBOOK, TOML

NOT_LESSONS = {FILE, "pyproject.toml"}
"""TOML files that are no lessons."""


def lesson_files(folder: Path) -> Iterator[Path]:
    """Yield the lesson files and notebooks of a folder, the TOML files first, each kind in order.

    A folder that cannot be read yields none.

    Example:
        >>> [path.name for path in lesson_files(Path("notebooks"))][0]
        'market-clock.toml'
    """
    try:
        paths = sorted(folder.iterdir())
    except OSError:
        return
    for ending in (TOML, NOTEBOOK):
        for path in paths:
            other = path.name.startswith(".") or path.name in NOT_LESSONS or path.suffix != ending
            if not other and is_file(path):
                yield path


def is_file(path: Path) -> bool:
    """Whether there is a file; False where the system does not allow to check.

    Example:
        >>> is_file(Path("nowhere.toml"))
        False
    """
    try:
        return path.is_file()
    except OSError:
        return False


def lesson_names(folder: Path) -> list[str]:
    """Return the names of the lessons and notebooks of a folder, in order.

    Example:
        >>> "market-clock" in lesson_names(Path("notebooks"))
        True
    """
    return sorted({path.stem for path in lesson_files(folder)})


def source_file(lesson: Path, folder: Path | None = None) -> Path:
    """Return the file that a lesson is made from: its notebook, if that exists.

    Args:
        lesson: a lesson file or a notebook.
        folder: another folder to search for its notebook, or None.

    Example:
        >>> source_file(Path("notebooks/market-clock.toml")).name
        'market-clock.ipynb'
    """
    if lesson.suffix.lower() == TOML:
        for place in (lesson.parent, folder or lesson.parent):
            notebook = place / f"{lesson.stem}{NOTEBOOK}"
            if notebook.is_file():
                return notebook
    return lesson


def notebook_notice(lesson: Path, source: Path) -> str:
    """Return the sentence that says that a notebook is used instead of a lesson file, or "".

    Example:
        >>> notebook_notice(Path("fri.toml"), Path("fri.ipynb"))
        'fri.toml: its notebook fri.ipynb is there, so that is the lesson.'
    """
    if source == lesson:
        return ""
    return f"{lesson}: its notebook {source} is there, so that is the lesson."
