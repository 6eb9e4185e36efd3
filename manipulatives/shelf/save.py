"""Saving a lesson into a folder: its file, its notebook, and the outputs that are wanted."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path

import tomli_w

from manipulatives.lessons.atomic_write import atomic_write
from manipulatives.lessons.files import lesson_text
from manipulatives.lessons.lesson import Lesson
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.records.origin import new_id
from manipulatives.lessons.settings import FIELDS, FILE, ClassSettings, class_settings
from manipulatives.lessons.write_files import recover, write_files
from manipulatives.shelf.draft import Draft, open_draft
from manipulatives.shelf.find import lesson_names
from manipulatives.shelf.outputs import NOTEBOOK, OUTPUTS, TOML, Source, notebook_text
from manipulatives.shelf.replace import AnotherFile, check_replaceable, is_there
from manipulatives.shelf.stamp import stamp_of

LONGEST_NAME = 60
_TAKEN = {"class", "pyproject"}
REMEDY_REPLACE = "choose another name, or say that it may be replaced"
_DASHES = re.compile(r"[^a-z0-9]+")


@dataclass(frozen=True)
class Place:
    """Where a lesson was saved or opened.

    Attributes:
        folder: the folder.
        name: of its files, without an ending.
        stamp: of its files at that time.
    """

    folder: Path
    name: str
    stamp: str

    def path(self, ending: str) -> Path:
        """Return the file of that ending."""
        return self.folder / f"{self.name}{ending}"


def name_for(title: str) -> str:
    """Return a name for the files of a lesson.

    Example:
        >>> name_for("Monday at the café: 4:35!")
        'monday-at-the-cafe-4-35'
    """
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    name = _DASHES.sub("-", plain)[:LONGEST_NAME].strip("-")
    return f"{name}-lesson" if name in _TAKEN else name or "lesson"


def check_name(name: str) -> str:
    """Check a name for files and return it.

    Raises:
        LessonProblem: it is empty, names another folder, or is reserved.

    Example:
        >>> check_name("monday")
        'monday'
    """
    text = name.strip()
    if not text or text.startswith(".") or len(text) > 2 * LONGEST_NAME:
        raise LessonProblem(
            f"{quoted(name)} is no name for a file", remedy="write a short word for it"
        )
    if not text.isprintable() or re.search(r'[/\\:*?"<>|]', text):
        raise LessonProblem(
            f"{quoted(name)} is no name for a file", remedy="use letters, digits, dashes and spaces"
        )
    if text.lower() in _TAKEN:
        raise LessonProblem(
            f"{quoted(name)} is the name of another file", remedy="choose another one"
        )
    return text


def open_lesson(folder: Path, name: str) -> tuple[Draft, Place]:
    """Return the lesson of that name in a folder as a draft, and where it was found.

    If there is a notebook, it is the lesson; it is not run.

    Raises:
        LessonProblem: there is none, or it cannot be read.
    """
    recover(folder)
    stamp = _stamp(folder, name)
    for ending in (NOTEBOOK, TOML):
        path = folder / f"{name}{ending}"
        if path.is_file():
            return open_draft(path), Place(folder, name, stamp)
    raise LessonProblem("there is no such lesson", remedy="choose another", file=name)


def save(
    draft: Draft,
    folder: Path,
    name: str,
    *,
    outputs: Iterable[str] = (),
    place: Place | None = None,
    replacing: bool = False,
) -> Place:
    """Save a lesson atomically and return its place.

    Everything is made before the first file changes.

    Args:
        draft: the lesson.
        folder: the folder of the shelf; it must exist.
        name: of the files, without an ending.
        outputs: which of page, sheet, key and script are wanted beside lesson file and notebook.
        place: where the lesson was opened or saved last; None for a new one.
        replacing: whether files of another lesson may be replaced.

    Raises:
        AnotherFile: there are files of that name that are not this lesson as it was opened, and
            `replacing` is False. Nothing was written.
        LessonProblem: the name is not valid, or an output cannot be made. Nothing was written.
        OSError: a file cannot be written. Everything is as it was.
    """
    with at("name"):
        name = check_name(name)
    wanted = [OUTPUTS[output] for output in outputs]
    files = {folder / f"{name}{TOML}": lesson_text(draft.lesson).encode()}
    notebook = draft.notebook()
    files[folder / f"{name}{NOTEBOOK}"] = notebook_text(notebook)
    if not replacing:
        _check_same_lesson(folder, name, place)
        for output in wanted:
            check_replaceable(folder / f"{name}{output.ending}", output, remedy=REMEDY_REPLACE)
    source = Source(notebook, class_settings(folder), name, folder)
    for output in wanted:
        with at(output.word.lower()):
            files[folder / f"{name}{output.ending}"] = output.content(source)
    write_files(files)
    return Place(folder, name, _stamp(folder, name))


def write_settings(settings: ClassSettings, folder: Path) -> ClassSettings:
    """Write the class settings of a folder atomically.

    A class without an id gets a random one, which identifies it in results and sessions.

    Returns:
        The settings as written.

    Raises:
        OSError: the folder is missing, full or not writable.

    Example:
        >>> written = write_settings(ClassSettings(vocabulary="uk"), Path())
        >>> class_settings(".").vocabulary
        'uk'
    """
    written = replace(settings, id=settings.id or new_id())
    values = {name: getattr(written, name) for name in FIELDS}
    atomic_write(folder / FILE, tomli_w.dumps(values))
    return written


def others_in(folder: Path, name: str) -> list[Lesson]:
    """Return the other lessons of a folder that can be read."""
    found = []
    for other in lesson_names(folder):
        if other != name:
            try:
                found.append(open_lesson(folder, other)[0].lesson)
            except Exception:  # noqa: BLE001, S112 - its problem is shown when it is opened
                continue
    return found


def _check_same_lesson(folder: Path, name: str, place: Place | None) -> None:
    there = [
        path.name for ending in (TOML, NOTEBOOK) if is_there(path := folder / f"{name}{ending}")
    ]
    if not there:
        return
    if place is None or (place.folder, place.name) != (folder, name):
        raise AnotherFile(
            f"there is a lesson of that name already ({' and '.join(there)})",
            remedy=REMEDY_REPLACE,
        )
    if place.stamp != _stamp(folder, name):
        raise AnotherFile(
            f"somebody has changed {' and '.join(there)} since it was opened here",
            remedy="save under another name, or say that it may be replaced",
        )


def _stamp(folder: Path, name: str) -> str:
    return stamp_of(folder / f"{name}{TOML}", folder / f"{name}{NOTEBOOK}")
