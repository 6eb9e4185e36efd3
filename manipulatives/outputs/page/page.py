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
    from manipulatives.outputs.page.blocks import Say

HERE = Path(__file__).parent
"""Where the modules and style sheets of a page stand, which a served board has too."""

LONGEST_SAID = 300
"""Letters of what a widget says about a call that cannot be made."""

LANGUAGES = {"us": "en-US", "uk": "en-GB"}
"""What a page in each vocabulary is written in; a voice that reads aloud goes by it."""


def _unheard(_sentence: str) -> None:
    """Let what is said be; a command line prints it."""


def page_of_file(path: str | Path, *, audience: str = "board", say: Say = _unheard) -> str:
    """Return the page of a lesson file or a notebook, with the class settings of its folder.

    Args:
        path: ends in .toml or .ipynb.
        audience: "board" for a class that is taught, "pupils" for each to work alone.
        say: hears one sentence about everything that happens or is left out.

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
            say=say,
        )


def page_of(
    notebook: NotebookNode,
    *,
    audience: str = "board",
    settings: ClassSettings | None = None,
    folder: Path = Path(),
    name: str = "Lesson",
    say: Say = _unheard,
) -> str:
    """Return a notebook as one HTML file.

    A notebook with nothing but the kit's own calls is not run. One with other code is, which
    `say` hears beforehand.

    Args:
        notebook: of a lesson, changed by hand or not, or any other.
        audience: "board" for a class that is taught, "pupils" for each to work alone: one
            question at a time with hints, and the results as a file at the end.
        settings: of the class; without any, the usual ones hold.
        folder: where foreign code is run.
        name: the title of a page that has no other.
        say: hears one sentence about everything that happens or is left out.

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
        say(f"it holds code of its own (first in cell {foreign[0]}), so it is run now")
        kept, pieces = _run(notebook, folder, say, audience)
    else:
        said = {"vocabulary": vocabulary, "currency": header.get("currency") or None}
        of_class = dict.fromkeys(("method", "timer", "count_aloud"))
        usual = with_class({**said, **of_class}, settings)
        kept, pieces = _made(items, usual, audience)
    title = title_of(notebook) or name
    return document(
        title=title,
        key=f"{title} {header.get('seed', 0)}",
        language=LANGUAGES[vocabulary],
        body=_body(pieces, say),
        saved=kept.script(),
        audience=audience,
        source=source_of(title, header.get("seed", 0), settings),
    )


def _made(
    items: list[Item], usual: dict[str, Any], audience: str
) -> tuple[SavedWidgets, list[TextCell | str]]:
    """Return the widgets of a notebook of plain calls, and its texts and places in order."""
    calls = [item for item in items if isinstance(item, Call)]
    with widgets_of(calls, usual) as widgets:
        kept = _saved(states_of(with_parts(widgets.values())), audience)
        pieces: list[TextCell | str] = []
        for item in items:
            if isinstance(item, TextCell):
                pieces.append(item)
            elif isinstance(item, Call):
                pieces.append(blocks.view(kept.add(widgets[item].model_id)))
        return kept, pieces


def _run(
    notebook: NotebookNode, folder: Path, say: Say, audience: str
) -> tuple[SavedWidgets, list[TextCell | str]]:
    """Return the same of a notebook that only a kernel can know."""
    # Loading what talks to a kernel takes longer than making a page without one.
    from manipulatives.notebook.running import run  # noqa: PLC0415

    executed = run(notebook, folder)
    widgets = executed.metadata.get("widgets", {}).get(blocks.STATE, {})
    kept = _saved(widgets.get("state", {}), audience)
    pieces: list[TextCell | str] = []
    for number, cell in enumerate(executed.cells, start=1):
        if cell.cell_type == "markdown":
            pieces.append(TextCell(number, cell.source, cell.get("attachments", {})))
        elif cell.cell_type == "code":
            told = _in_cell(number, say)
            pieces += [blocks.output(each, kept, told) for each in cell.outputs]
    return kept, pieces


def _saved(states: Mapping[str, Any], audience: str) -> SavedWidgets:
    """Return the widgets of a page, with its rounds as they are for its audience."""
    return SavedWidgets(rounds_on_page(states, pupils=audience == "pupils"))


def _body(pieces: Iterable[TextCell | str], say: Say) -> list[str]:
    """Return the blocks, with the title left out: the page shows it at its top."""
    body = []
    titled = False
    for piece in pieces:
        if isinstance(piece, TextCell):
            text = piece.text
            if not titled:
                title, text = without_title(text)
                titled = title is not None
            body.append(blocks.words(text, piece.pictures, _in_cell(piece.cell, say)))
        else:
            body.append(piece)
    return [block for block in body if block]


@contextmanager
def widgets_of(
    calls: Iterable[Call], usual: dict[str, Any]
) -> Iterator[dict[Call, ipywidgets.Widget]]:
    """Make what the calls say, and put it away again: a server makes many pages.

    Args:
        calls: from one notebook.
        usual: what a round has that its call does not say.

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
    """Make one widget; what a round leaves unset is as the lesson or the class has it."""
    try:
        if call.name == ROUND:
            return play(*call.args, **{**usual, **call.kwargs})
        return MANIPULATIVES[call.name](*call.args, **call.kwargs)
    except LessonProblem:
        raise
    except (TypeError, ValueError, TraitError) as error:
        said = shown((str(error).splitlines() or [""])[0].rstrip("."), longest=LONGEST_SAID)
        raise LessonProblem(
            f"{call.name}(…) cannot be made ({said})", remedy="change what stands in its brackets"
        ) from error


def _in_cell(number: int, say: Say) -> Say:
    return lambda sentence: say(f"cell {number}: {sentence}")
