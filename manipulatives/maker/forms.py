"""The forms that a lesson is made into, each as the content of a file."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

import nbformat
from nbformat import NotebookNode

from manipulatives.lessons.lesson import Lesson
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.settings import ClassSettings
from manipulatives.outputs.notebook import Code, items_of, lesson_of

# Pages and paper load much that a form on the screen does not need until it is asked for them.


@dataclass(frozen=True)
class Source:
    """What every form is made from.

    Attributes:
        notebook: of the lesson.
        settings: the class settings of its folder.
        name: of its file, without an ending.
        folder: it is in.
    """

    notebook: NotebookNode
    settings: ClassSettings
    name: str
    folder: Path = Path()

    @property
    def lesson(self) -> Lesson:
        """The lesson in the notebook."""
        return lesson_of(self.notebook, title=self.name)


@dataclass(frozen=True)
class Form:
    """One form.

    Attributes:
        word: what it is called.
        ending: what its file's name has in place of the lesson's ending.
        mark: bytes that every such file made by the kit holds.
        content: makes it.
    """

    word: str
    ending: str
    mark: bytes
    content: Callable[[Source], bytes]


def notebook_text(notebook: NotebookNode) -> bytes:
    """Return a notebook as the bytes of its file."""
    return (nbformat.writes(notebook) + "\n").encode()


def _page(source: Source) -> bytes:
    from manipulatives.outputs.page import page_of  # noqa: PLC0415 - see above

    if any(isinstance(item, Code) for item in items_of(source.notebook)):
        raise LessonProblem(
            "the notebook holds code of its own, which the page would have to run",
            remedy="make its page from the shelf, which asks before it runs it",
        )
    return page_of(
        source.notebook, settings=source.settings, folder=source.folder, name=source.name
    ).encode()


def _sheet(source: Source) -> bytes:
    from manipulatives.outputs.sheet import sheet_of  # noqa: PLC0415 - see above

    return sheet_of(source.lesson, source.settings)


def _key(source: Source) -> bytes:
    from manipulatives.outputs.sheet import sheet_of  # noqa: PLC0415 - see above

    return sheet_of(source.lesson, source.settings, key=True)


def _script(source: Source) -> bytes:
    from manipulatives.outputs.sheet import script_of  # noqa: PLC0415 - see above

    return script_of(source.lesson, source.settings)


FORMS: Mapping[str, Form] = {
    "page": Form("Page", ".html", b'data-kit-session="page"', _page),
    "sheet": Form("Sheet", ".sheet.pdf", b"/Creator (manipulatives)", _sheet),
    "key": Form("Key", ".key.pdf", b"/Creator (manipulatives)", _key),
    "script": Form("Script", ".script.pdf", b"/Creator (manipulatives)", _script),
}


def is_own(path: Path, form: Form) -> bool:
    """Whether a file is such a form made by the kit, which may be replaced by a newer one.

    Raises:
        OSError: it cannot be read.
    """
    return path.is_file() and not path.is_symlink() and form.mark in path.read_bytes()
