"""The shelf: the lessons of a folder, read without running anything.

A lesson is one file, TOML or notebook. Once its notebook exists (`monday.ipynb` beside
`monday.toml`), everything is made from the notebook, and the TOML file is ignored.
"""

from __future__ import annotations

import math
import os
import re
from dataclasses import dataclass, field, replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from manipulatives.lessons.checks import LONGEST_TITLE
from manipulatives.lessons.files import read_lesson
from manipulatives.lessons.problem import LessonProblem, unreadable, visible
from manipulatives.lessons.settings import FILE, ClassSettings, class_settings, settled
from manipulatives.lessons.write_files import recover
from manipulatives.notebook.cells import CodeCell, items_of, needs_kernel
from manipulatives.notebook.reading import lesson_of, open_notebook, title_of
from manipulatives.notebook.writing import notebook_of
from manipulatives.shelf.find import is_file, lesson_files
from manipulatives.shelf.outputs import NOTEBOOK, TOML
from manipulatives.shelf.stamp import stamp_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from nbformat import NotebookNode

    from manipulatives.lessons.lesson import Lesson

DEPTH = 2
"""How many levels of subfolders the shelf searches."""

MOST = 300
"""How many lessons a shelf shows."""

MOST_READS = 5
"""How many times a file is read that changes while it is read."""

_OTHER_FOLDERS = {"__pycache__", "node_modules", "build", "dist"}


@dataclass(frozen=True)
class ShelfItem:
    """A lesson, or a notebook without rounds, as its file is at this moment.

    Attributes:
        name: its path below the shelf's folder, without the ending; characters that cannot be shown
            are escaped.
        source: the file that everything is made from.
        top: the shelf's folder.
        stamp: changes with every byte of the file and of the class settings beside it.
        title: of the lesson or notebook.
        lesson: what it teaches; None when it cannot be read.
        settings: the class settings that hold for it.
        notebook: its notebook, made in memory when the file is TOML; None when it cannot be read.
        foreign: the numbers of cells with other code than the kit's, from 1.
        problem: what is wrong with it in one sentence, or "".
        ignored_toml: the TOML file beside its notebook, which is ignored, or "".
    """

    name: str
    source: Path
    top: Path
    stamp: str
    title: str
    lesson: Lesson | None = None
    settings: ClassSettings = field(default_factory=ClassSettings)
    notebook: NotebookNode | None = None
    foreign: tuple[int, ...] = ()
    problem: str = ""
    ignored_toml: str = ""

    @property
    def file(self) -> str:
        """The file, as a path below the shelf's folder with "/" between parts."""
        return visible(self.source.relative_to(self.top).as_posix())

    @property
    def folder(self) -> str:
        """The folder that it is in, below the shelf's; "" for the shelf's own."""
        return self.name.rpartition("/")[0]

    @property
    def kit_only(self) -> bool:
        """Whether it has only calls of the kit, so that running it is safe."""
        return self.notebook is not None and not self.foreign

    @property
    def needs_kernel(self) -> bool:
        """Whether nothing in it would work on a page."""
        return self.notebook is not None and needs_kernel(items_of(self.notebook))

    @property
    def is_notebook(self) -> bool:
        """Whether it is made from a notebook."""
        return self.source.suffix == NOTEBOOK

    @property
    def today(self) -> bool:
        """Whether it is planned for today."""
        return self.lesson is not None and self.lesson.date == datetime.now().astimezone().date()

    @property
    def rounds(self) -> int:
        """How many rounds it has."""
        return len(self.lesson.rounds) if self.lesson else 0

    @property
    def minutes(self) -> int:
        """How long its rounds take together, rounded up."""
        rounds = self.lesson.rounds if self.lesson else ()
        return math.ceil(sum(each.seconds or 0 for each in rounds) / 60)

    @property
    def strands(self) -> tuple[str, ...]:
        """The strands that it touches, in the order of its rounds."""
        rounds = self.lesson.rounds if self.lesson else ()
        names = (each.skill.partition(".")[0].replace("_", " ") for each in rounds)
        return tuple(dict.fromkeys(names))

    @property
    def copies(self) -> tuple[tuple[int, int], ...]:
        """The rounds with the same numbers as an earlier one: (round, earlier round), from 1."""
        rounds = self.lesson.rounds if self.lesson else ()
        first: dict[tuple[str, int], int] = {}
        found = []
        for place, each in enumerate(rounds, start=1):
            original = first.setdefault((each.skill, each.seed), place)
            if original != place:
                found.append((place, original))
        return tuple(found)


class Shelf:
    """The lessons of a folder and of the folders a little below it.

    Args:
        folder: it must exist.

    Raises:
        NotADirectoryError: it is no folder.

    Example:
        >>> Shelf(Path("notebooks")).find("market-clock").title
        'Market clock'
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder.resolve(strict=True)
        if not self.folder.is_dir():
            raise NotADirectoryError(f"{folder} is no folder")
        self._cache: dict[str, tuple[Any, ShelfItem]] = {}
        self.left_out = 0
        """How many lessons were left out by the last `items()`, because there were too many."""

    @property
    def read_only(self) -> bool:
        """Whether the folder is not writable."""
        return not os.access(self.folder, os.W_OK)

    def items(self) -> list[ShelfItem]:
        """Return every lesson in natural order of folder and name: week 2 before week 10."""
        for folder in self._folders(self.folder, DEPTH):
            recover(folder)
        sources = dict(self._sources())
        names = sorted(sources, key=_as_counted)
        self.left_out = max(0, len(names) - MOST)
        found = {}
        for name in names[:MOST]:
            fingerprint = _fingerprint(sources[name])
            cached = self._cache.get(name)
            if fingerprint is None or cached is None or cached[0] != fingerprint:
                cached = (fingerprint, self._read(name, sources[name]))
            found[name] = cached
        self._cache = found
        return [item for _, item in found.values()]

    def find(self, name: str) -> ShelfItem | None:
        """Return the lesson of that name, read again; None when the shelf has none."""
        path = dict(self._sources()).get(name)
        return self._read(name, path) if path else None

    def _sources(self) -> Iterator[tuple[str, Path]]:
        """Yield every name with its file; a notebook comes after the TOML file that it replaces."""
        for folder in self._folders(self.folder, DEPTH):
            for path in lesson_files(folder):
                # Ignore links to files outside of the folder.
                if path.resolve().is_relative_to(self.folder):
                    yield visible(path.relative_to(self.folder).with_suffix("").as_posix()), path

    def _folders(self, folder: Path, depth: int) -> Iterator[Path]:
        yield folder
        if depth == 0:
            return
        try:
            entries = list(os.scandir(folder))
        except OSError:
            return
        for path in (Path(entry.path) for entry in entries if entry.is_dir(follow_symlinks=False)):
            other = path.name.startswith(".") or path.name in _OTHER_FOLDERS
            if not other and not is_file(path / "pyvenv.cfg"):
                yield from self._folders(path, depth - 1)

    def _read(self, name: str, path: Path) -> ShelfItem:
        """Read a lesson with the right stamp, even while somebody writes its file."""
        for _ in range(MOST_READS):
            item = self._read_once(name, path)
            try:
                if not item.stamp or stamp_of(path, path.with_name(FILE)) == item.stamp:
                    return item
            except (LessonProblem, OSError):
                continue
        return replace(item, problem=f"{path.name} is being written; look again.", notebook=None)

    def _read_once(self, name: str, path: Path) -> ShelfItem:
        ignored_toml = path.with_suffix(TOML)
        given: dict[str, Any] = {
            "name": name,
            "source": path,
            "top": self.folder,
            "stamp": "",
            "title": _title(path.stem),
            "ignored_toml": visible(ignored_toml.name)
            if path.suffix == NOTEBOOK and ignored_toml.is_file()
            else "",
        }
        try:
            _check_can_be_named(path.relative_to(self.folder))
            given["stamp"] = stamp_of(path, path.with_name(FILE))
            given["settings"] = class_settings(path.parent)
            if path.suffix == TOML:
                given |= _from_toml(path, given["settings"])
            else:
                given |= _from_notebook(path, given["settings"])
        except LessonProblem as problem:
            given["problem"] = problem
        except OSError as problem:
            given["problem"] = visible(f"{path.name} cannot be read ({problem.strerror}).")
        except Exception as problem:  # noqa: BLE001 - one file must not break the shelf
            given["problem"] = unreadable(problem)
        if isinstance(given.get("problem"), LessonProblem):
            given["problem"] = _sentence(given["problem"], path)
        return ShelfItem(**given)


def _check_can_be_named(path: Path) -> None:
    """Check that a file's name can be shown, and can stand in an address.

    Raises:
        LessonProblem: it has invisible characters, or bytes that are no text.
    """
    if visible(str(path)) != str(path):
        raise LessonProblem("its name holds what cannot be shown", remedy="rename the file")


def _title(text: str) -> str:
    """Return a title for a card: visible and not too long."""
    plain = visible(text)
    return plain if len(plain) <= LONGEST_TITLE else f"{plain[: LONGEST_TITLE - 1]}…"


def _from_toml(path: Path, settings: ClassSettings) -> dict[str, Any]:
    lesson = read_lesson(path)
    return {
        "title": lesson.title,
        "lesson": settled(lesson, settings),
        "notebook": notebook_of(lesson),
    }


def _from_notebook(path: Path, settings: ClassSettings) -> dict[str, Any]:
    notebook = open_notebook(path)
    title = title_of(notebook) or path.stem
    given = {
        "title": _title(title),
        "notebook": notebook,
        "foreign": tuple(item.cell for item in items_of(notebook) if isinstance(item, CodeCell)),
    }
    try:
        given["lesson"] = settled(lesson_of(notebook, title=title), settings)
    except LessonProblem as problem:
        # Its board still opens and names the cell; no other output can be made.
        given["problem"] = problem
    return given


def _sentence(problem: LessonProblem, path: Path) -> str:
    """Return the sentence of a problem, with the file as the shelf names it."""
    file = Path(problem.file).name if problem.file else path.name
    return str(LessonProblem(problem.what, remedy=problem.remedy, place=problem.place, file=file))


def _fingerprint(path: Path) -> tuple[tuple[int, int, int], ...] | None:
    """Return what shows cheaply that a file or its neighbours changed; None when it is missing."""
    marks = []
    for part in (path, path.with_name(FILE), path.with_suffix(TOML)):
        try:
            state = part.stat()
        except OSError:
            if part == path:
                return None
            continue
        marks.append((state.st_mtime_ns, state.st_size, state.st_ino))
    return tuple(marks)


def _as_counted(name: str) -> list[tuple[int, int, str]]:
    """Return a key that sorts numbers in names by their value, and folders after their files."""
    folder, _, last = name.rpartition("/")
    parts = re.split(r"(\d+)", f"{folder}/{last}".lower())
    return [(0, int(part), "") if part.isdecimal() else (1, 0, part) for part in parts]
