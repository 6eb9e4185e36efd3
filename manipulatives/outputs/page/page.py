"""A lesson, or any notebook, as one HTML file that needs no server, no network and no kernel."""

from __future__ import annotations

from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

from traitlets import TraitError

from manipulatives.lessons.checks import check_one_of, check_seed
from manipulatives.lessons.problem import LessonProblem, at, in_file, shown
from manipulatives.lessons.settings import ClassSettings, class_settings, with_class
from manipulatives.maths.vocabulary import VOCABULARIES
from manipulatives.notebook.calls import Call
from manipulatives.notebook.cells import ROUND, CodeCell, TextCell, items_of
from manipulatives.notebook.markdown import without_title
from manipulatives.notebook.reading import header_of, notebook_at, title_of
from manipulatives.outputs.page import blocks
from manipulatives.outputs.page.document import SESSIONS, document
from manipulatives.outputs.page.saved import SavedWidgets, states_of, with_parts
from manipulatives.outputs.page.source import source_of
from manipulatives.widgets.round import play
from manipulatives.widgets.round.children import MANIPULATIVES
from manipulatives.widgets.round.on_page import rounds_on_page

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    import ipywidgets
    from nbformat import NotebookNode

    from manipulatives.notebook.cells import Item
    from manipulatives.outputs.page.blocks import Report

HERE = Path(__file__).parent
"""The folder of a page's modules and style sheets; a served board uses them too."""

LONGEST_ERROR = 300
"""Most letters that are quoted of a widget's error about a call."""

LANGUAGES = {"us": "en-US", "uk": "en-GB"}
"""The language of a page in each vocabulary; it decides which voice reads aloud."""


def _ignore(_sentence: str) -> None:
    """Ignore what is reported: the default of `report`."""


def page_of_file(path: str | Path, *, audience: str = "board", report: Report = _ignore) -> str:
    """Return the page of a lesson file or a notebook, with the class settings of its folder.

    Args:
        path: ends in .toml or .ipynb.
        audience: "board" for a class that is taught, "pupils" for each to work alone.
        report: called with a sentence about everything that happens or is left out.

    Raises:
        LessonProblem: the file cannot be read or no page can be made of it.

    Example:
        >>> page_of_file("notebooks/market-clock.toml")[:15]
        '<!doctype html>'
    """
    file = Path(path)
    notebook = notebook_at(file)
    settings = class_settings(file.parent)
    with in_file(str(path)):
        return page_of(
            notebook,
            audience=audience,
            settings=settings,
            folder=file.parent,
            name=file.stem,
            report=report,
        )


def page_of(
    notebook: NotebookNode,
    *,
    audience: str = "board",
    settings: ClassSettings | None = None,
    folder: Path = Path(),
    name: str = "Lesson",
    report: Report = _ignore,
) -> str:
    """Return a notebook as one HTML file.

    A notebook with nothing but the kit's own calls is not run. One with other code is run, and
    `report` is called first.

    Args:
        notebook: of a lesson, changed by hand or not, or any other.
        audience: "board" for a class that is taught, "pupils" for each to work alone: one
            question at a time with hints, and the results as a file at the end.
        settings: of the class; None for the defaults.
        folder: where foreign code is run.
        name: the title of a page that has no other.
        report: called with a sentence about everything that happens or is left out.

    Raises:
        LessonProblem: a call cannot be made or a cell fails; with its number.

    Example:
        >>> from manipulatives.lessons.lesson import Lesson
        >>> from manipulatives.notebook.writing import notebook_of
        >>> monday = notebook_of(Lesson("Monday", seed=7))
        >>> page_of(monday)[:15]
        '<!doctype html>'
    """
    with at("audience"):
        check_one_of(audience, tuple(SESSIONS))
    items = items_of(notebook)
    settings = settings or ClassSettings()
    header = header_of(notebook)
    vocabulary = header.get("vocabulary") or settings.vocabulary
    with at("the notebook's metadata"):
        with at("vocabulary"):
            check_one_of(vocabulary, VOCABULARIES)
        with at("seed"):
            check_seed(header.get("seed", 0))
    foreign = [item.cell for item in items if isinstance(item, CodeCell)]
    if foreign:
        report(f"it holds code of its own (first in cell {foreign[0]}), so it is run now")
        saved, pieces = _with_kernel(notebook, folder, report, audience)
    else:
        given_by_lesson = {"vocabulary": vocabulary, "currency": header.get("currency") or None}
        of_class = dict.fromkeys(("method", "timer", "count_aloud"))
        usual = with_class({**given_by_lesson, **of_class}, settings)
        saved, pieces = _without_kernel(items, usual, audience)
    title = title_of(notebook) or name
    return document(
        title=title,
        key=f"{title} {header.get('seed', 0)}",
        language=LANGUAGES[vocabulary],
        body=_body(pieces, report),
        saved=saved.script(),
        audience=audience,
        source=source_of(title, header.get("seed", 0), settings),
    )


def _without_kernel(
    items: list[Item], usual: dict[str, Any], audience: str
) -> tuple[SavedWidgets, list[TextCell | str]]:
    """Return the widgets of a notebook of plain calls, and its texts and places in order."""
    calls = [item for item in items if isinstance(item, Call)]
    with widgets_of(calls, usual) as widgets:
        saved = _saved(states_of(with_parts(widgets.values())), audience)
        pieces: list[TextCell | str] = []
        for item in items:
            if isinstance(item, TextCell):
                pieces.append(item)
            elif isinstance(item, Call):
                pieces.append(blocks.view(saved.add(widgets[item].model_id)))
        return saved, pieces


def _with_kernel(
    notebook: NotebookNode, folder: Path, report: Report, audience: str
) -> tuple[SavedWidgets, list[TextCell | str]]:
    """Return the same of a notebook that has to be run."""
    # Loading the kernel client takes longer than making a page without it.
    from manipulatives.notebook.running import run  # noqa: PLC0415

    executed = run(notebook, folder)
    widgets = executed.metadata.get("widgets", {}).get(blocks.STATE, {})
    saved = _saved(widgets.get("state", {}), audience)
    pieces: list[TextCell | str] = []
    for number, cell in enumerate(executed.cells, start=1):
        if cell.cell_type == "markdown":
            pieces.append(TextCell(number, cell.source, cell.get("attachments", {})))
        elif cell.cell_type == "code":
            report_cell = _in_cell(number, report)
            pieces += [blocks.output(each, saved, report_cell) for each in cell.outputs]
    return saved, pieces


def _saved(states: Mapping[str, Any], audience: str) -> SavedWidgets:
    """Return the widgets of a page, its rounds adapted to its audience."""
    return SavedWidgets(rounds_on_page(states, pupils=audience == "pupils"))


def _body(pieces: Iterable[TextCell | str], report: Report) -> list[str]:
    """Return the blocks without the title, which the page shows at its top."""
    body = []
    titled = False
    for piece in pieces:
        if isinstance(piece, TextCell):
            text = piece.text
            if not titled:
                title, text = without_title(text)
                titled = title is not None
            body.append(blocks.words(text, piece.pictures, _in_cell(piece.cell, report)))
        else:
            body.append(piece)
    return [block for block in body if block]


@contextmanager
def widgets_of(
    calls: Iterable[Call], usual: dict[str, Any]
) -> Iterator[dict[Call, ipywidgets.Widget]]:
    """Make the widgets of calls and close them afterwards, because a server makes many pages.

    Args:
        calls: from one notebook.
        usual: the arguments of a round that its call leaves out.

    Raises:
        LessonProblem: a call cannot be made; with its cell.

    Example:
        >>> from manipulatives.notebook.calls import CallReader
        >>> calls = CallReader({"Clock"}).read(2, 'Clock(time="4:35")')
        >>> with widgets_of(calls, {}) as made:
        ...     [clock.time for clock in made.values()]
        ['4:35']
    """
    made: dict[Call, ipywidgets.Widget] = {}
    try:
        for call in calls:
            if call not in made:
                with at(f"cell {call.cell}"):
                    made[call] = _widget(call, usual)
        yield made
    finally:
        for widget in with_parts(made.values()):
            widget.close()


def _widget(call: Call, usual: dict[str, Any]) -> ipywidgets.Widget:
    """Make one widget; what a round leaves unset comes from the lesson or the class."""
    try:
        if call.name == ROUND:
            return play(*call.args, **{**usual, **call.kwargs})
        return MANIPULATIVES[call.name](*call.args, **call.kwargs)
    except LessonProblem:
        raise
    except (TypeError, ValueError, TraitError) as error:
        message = shown((str(error).splitlines() or [""])[0].rstrip("."), longest=LONGEST_ERROR)
        raise LessonProblem(
            f"{call.name}(…) cannot be made ({message})",
            remedy="change what stands in its brackets",
        ) from error


def _in_cell(number: int, report: Report) -> Report:
    return lambda sentence: report(f"cell {number}: {sentence}")
