"""The table of outputs: what a lesson can be made into, each as the content of a file."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

import nbformat
from nbformat import NotebookNode

from manipulatives.lessons.lesson import Lesson
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.settings import ClassSettings, class_settings
from manipulatives.notebook.cells import CodeCell, items_of
from manipulatives.notebook.reading import lesson_of, notebook_at

# Pages and sheets import much, so they are imported when they are made.

NOTEBOOK, TOML = ".ipynb", ".toml"


@dataclass(frozen=True)
class Source:
    """The source of every output.

    Attributes:
        notebook: of the lesson.
        settings: the class settings of its folder.
        name: of its file, without an ending.
        folder: it is in.
        may_run: whether other code in the notebook may be run for a page.
    """

    notebook: NotebookNode
    settings: ClassSettings
    name: str
    folder: Path = Path()
    may_run: bool = False

    @classmethod
    def of_file(cls, path: Path, *, may_run: bool = False) -> Source:
        """Return the source of a lesson file or a notebook, which is not run.

        Raises:
            LessonProblem: the file, or the class settings beside it, cannot be read.
        """
        settings = class_settings(path.parent)
        return cls(notebook_at(path), settings, path.stem, path.parent, may_run)

    @property
    def lesson(self) -> Lesson:
        """The lesson in the notebook."""
        return lesson_of(self.notebook, title=self.name)


@dataclass(frozen=True)
class Output:
    """One kind of output.

    Attributes:
        word: the label of its button.
        ending: of its file name, in place of that of the lesson.
        media_type: its media type.
        mark: bytes in every such file made by the kit.
        content: returns the content of its file.
        runs_code: whether other code in a notebook is run for it.
    """

    word: str
    ending: str
    media_type: str
    mark: bytes
    content: Callable[[Source], bytes]
    runs_code: bool = False


def notebook_text(notebook: NotebookNode) -> bytes:
    """Return a notebook as the bytes of its file."""
    return (nbformat.writes(notebook) + "\n").encode()


def _page(audience: str) -> Callable[[Source], bytes]:
    def content(source: Source) -> bytes:
        from manipulatives.outputs.page import page_of  # noqa: PLC0415 - see above

        foreign = any(isinstance(item, CodeCell) for item in items_of(source.notebook))
        if foreign and not source.may_run:
            raise LessonProblem(
                "the notebook holds code of its own, which the page would have to run",
                remedy="make its page from the shelf, which asks before it runs it",
            )
        return page_of(
            source.notebook,
            settings=source.settings,
            folder=source.folder,
            name=source.name,
            audience=audience,
        ).encode()

    return content


def _sheet(kind: str) -> Callable[[Source], bytes]:
    def content(source: Source) -> bytes:
        from manipulatives.outputs.sheet import sheet_of  # noqa: PLC0415 - see above

        return sheet_of(source.lesson, source.settings, kind=kind)

    return content


def _script(source: Source) -> bytes:
    from manipulatives.outputs.sheet import script_of  # noqa: PLC0415 - see above

    return script_of(source.lesson, source.settings)


def _cutouts(source: Source) -> bytes:
    from manipulatives.outputs.sheet import cutouts_of  # noqa: PLC0415 - see above

    return cutouts_of(source.lesson, source.settings)


_HTML, _PDF = "text/html; charset=UTF-8", "application/pdf"
_FOR_BOARD, _FOR_PUPILS = b'data-kit-session="page"', b'data-kit-session="pupils"'
_PAPER = b"/Creator (manipulatives)"

OUTPUTS: Mapping[str, Output] = {
    "page": Output("Page", ".html", _HTML, _FOR_BOARD, _page("board"), runs_code=True),
    "pupils": Output(
        "Pupils' page", ".pupils.html", _HTML, _FOR_PUPILS, _page("pupils"), runs_code=True
    ),
    "sheet": Output("Sheet", ".sheet.pdf", _PDF, _PAPER, _sheet("pupil")),
    "key": Output("Key", ".key.pdf", _PDF, _PAPER, _sheet("key")),
    "steps": Output("Key with its steps", ".steps.pdf", _PDF, _PAPER, _sheet("steps")),
    "script": Output("Script", ".script.pdf", _PDF, _PAPER, _script),
    "cutouts": Output("Sheet to cut out", ".cutouts.pdf", _PDF, _PAPER, _cutouts),
}

ON_THE_SHELF = ("page", "pupils", "sheet", "key")
"""The outputs with a button on the shelf."""

OF_A_LESSON = ("page", "sheet", "key", "script")
"""The outputs that `make` makes and the lesson maker offers."""
