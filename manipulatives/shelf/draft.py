"""A lesson that is being edited: its rounds, and the cells of the notebook that it came from."""

from __future__ import annotations

import ast
import copy
import re
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from nbformat.v4 import new_code_cell

from manipulatives.lessons import editing
from manipulatives.lessons.files import read_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem, at, in_file
from manipulatives.notebook.calls import PACKAGE, Call, CallReader
from manipulatives.notebook.cells import ROUND, CodeCell, items_of
from manipulatives.notebook.markdown import heading, headings
from manipulatives.notebook.reading import header_of, lesson_of, open_notebook, title_of
from manipulatives.notebook.writing import notebook_of
from manipulatives.widgets.round.children import MANIPULATIVES

if TYPE_CHECKING:
    from nbformat import NotebookNode

Cells = tuple["NotebookNode", ...]


@dataclass(frozen=True)
class RoundCells:
    """The cells of a round in its original notebook.

    Attributes:
        cells: from its heading to its call.
        call: as it was read.
        round: as it was read.
        plain: whether its last cell holds the call itself and not only a name for it.
    """

    cells: Cells
    call: Call
    round: Round
    plain: bool


@dataclass(frozen=True)
class Draft:
    """A lesson that is being edited.

    Attributes:
        lesson: its current state.
        round_cells: for each round its original cells, or None for a new round.
        between: the other cells: those before each round, and those after the last.
        metadata: of the original notebook.
        original: the lesson as it was opened.

    Example:
        >>> draft = Draft.of(Lesson("Monday", seed=7)).with_round("time.read_hour")
        >>> [one.skill for one in draft.lesson.rounds]
        ['time.read_hour']
    """

    lesson: Lesson
    round_cells: tuple[RoundCells | None, ...] = ()
    between: tuple[Cells, ...] = ((),)
    metadata: NotebookNode | None = None
    original: Lesson | None = None

    @classmethod
    def of(cls, lesson: Lesson) -> Draft:
        """Return a draft of a lesson that has no notebook yet."""
        count = len(lesson.rounds)
        return cls(lesson, round_cells=(None,) * count, between=((),) * (count + 1))

    @property
    def foreign(self) -> bool:
        """Whether it has code that is not the kit's."""
        return any(isinstance(item, CodeCell) for item in items_of(self.notebook()))

    def with_round(self, skill: str, place: int | None = None) -> Draft:
        """Return the draft with one more round; other cells stay at their places."""
        at_place = len(self.round_cells) if place is None else place
        return replace(
            self,
            lesson=editing.with_round(self.lesson, skill, at_place),
            round_cells=(*self.round_cells[:at_place], None, *self.round_cells[at_place:]),
            between=(*self.between[: at_place + 1], (), *self.between[at_place + 1 :]),
        )

    def moved(self, place: int, to: int) -> Draft:
        """Return the draft with a round moved; cells between rounds stay at their places."""
        lesson = editing.moved(self.lesson, place, to)
        round_cells = [*self.round_cells]
        round_cells.insert(to, round_cells.pop(place))
        return replace(self, lesson=lesson, round_cells=tuple(round_cells))

    def copied(self, place: int) -> Draft:
        """Return the draft with a round twice."""
        return replace(
            self,
            lesson=editing.copied(self.lesson, place),
            round_cells=(*self.round_cells[: place + 1], None, *self.round_cells[place + 1 :]),
            between=(*self.between[: place + 1], (), *self.between[place + 1 :]),
        )

    def removed(self, place: int) -> Draft:
        """Return the draft without a round; the cells around it stay."""
        lesson = editing.removed(self.lesson, place)
        joined = (*self.between[place], *self.between[place + 1])
        return replace(
            self,
            lesson=lesson,
            round_cells=(*self.round_cells[:place], *self.round_cells[place + 1 :]),
            between=(*self.between[:place], joined, *self.between[place + 2 :]),
        )

    def changed(self, lesson: Lesson) -> Draft:
        """Return the draft with another state of the lesson, with the same rounds in order."""
        return replace(self, lesson=lesson)

    def notebook(self) -> NotebookNode:
        """Return its notebook; unchanged rounds and other cells are as in the original."""
        made = notebook_of(self.lesson)
        if self.metadata is None:
            return made
        cells = [copy.deepcopy(cell) for cell in self.between[0]]
        rounds = zip(self.lesson.rounds, self.round_cells, self.between[1:], strict=True)
        for one, round_cells, after in rounds:
            cells += _cells_of(one, round_cells, self.lesson, self.original)
            cells += [copy.deepcopy(cell) for cell in after]
        _set_title(cells, self.lesson.title)
        if self.lesson.rounds and not any(map(_imports_play, cells)):
            cells.insert(1, new_code_cell(f"from {PACKAGE} import {ROUND}", id="imports"))
        metadata = copy.deepcopy(self.metadata)
        metadata.pop("widgets", None)
        metadata[PACKAGE] = made.metadata[PACKAGE]
        made.cells = _with_ids(cells)
        made.metadata = metadata
        return made


def open_draft(path: Path) -> Draft:
    """Return the draft of a lesson file or of a notebook, which is not run.

    Raises:
        LessonProblem: the file cannot be read, or has a value that is not allowed.

    Example:
        >>> open_draft(Path("notebooks/market-clock.toml")).lesson.title
        'Market clock'
    """
    if path.suffix.lower() != ".ipynb":
        return Draft.of(read_lesson(path))
    with in_file(str(path)):
        return draft_of_notebook(open_notebook(path), title=path.stem)


def draft_of_notebook(notebook: NotebookNode, *, title: str = "Lesson") -> Draft:
    """Return the draft of a notebook, which is not run.

    Args:
        notebook: made by the kit, changed by hand or not, or any other.
        title: for a notebook without one.

    Raises:
        LessonProblem: a round, or the header of the lesson in the notebook, is not valid.

    Example:
        >>> monday = Lesson("Monday", seed=7, rounds=(Round("time.read_hour", seed=90213),))
        >>> draft_of_notebook(notebook_of(monday)).lesson == monday
        True
    """
    lesson = lesson_of(notebook, title=title_of(notebook) or title)
    reader = CallReader({ROUND, *MANIPULATIVES})
    between: list[list[NotebookNode]] = [[]]
    round_cells: list[RoundCells] = []
    heading_at = None
    for number, cell in enumerate(notebook.cells, start=1):
        between[-1].append(cell)
        if cell.cell_type == "markdown":
            if any(level == 2 for level, _ in headings(cell.source)):  # noqa: PLR2004 - "##"
                heading_at = len(between[-1]) - 1
            continue
        calls = reader.read(number, cell.source) if cell.cell_type == "code" else None
        if not calls or calls[0].name != ROUND:
            continue
        begin = len(between[-1]) - 1 if heading_at is None else heading_at
        cells = tuple(between[-1][begin:])
        del between[-1][begin:]
        one = lesson.rounds[len(round_cells)]
        round_cells.append(RoundCells(cells, calls[0], one, plain=calls[0].cell == number))
        between.append([])
        heading_at = None
    if len(round_cells) != len(lesson.rounds):
        with at("the notebook"):
            raise LessonProblem(
                "its rounds cannot be told apart", remedy="let each stand in a cell of its own"
            )
    return Draft(
        lesson,
        round_cells=tuple(round_cells),
        between=tuple(map(tuple, between)),
        metadata=copy.deepcopy(notebook.metadata),
        original=lesson if header_of(notebook) or lesson.rounds else None,
    )


def _cells_of(
    one: Round, round_cells: RoundCells | None, lesson: Lesson, original: Lesson | None
) -> Cells:
    """Return the cells of a round, the original ones where nothing changed."""
    name, call = notebook_of(replace(lesson, rounds=(one,))).cells[-2:]
    if round_cells is None:
        return name, call
    cells = [copy.deepcopy(cell) for cell in round_cells.cells]
    same_words = original is not None and (original.vocabulary, original.currency) == (
        lesson.vocabulary,
        lesson.currency,
    )
    if one == round_cells.round and same_words:
        return tuple(cells)
    last = cells[-1]
    written = _with_extra_arguments(call.source, round_cells.call)
    source = _with_call(last.source, written) if round_cells.plain else None
    last.source = source or written
    last.outputs = []
    last.execution_count = None
    if one.title != round_cells.round.title:
        if cells[0].cell_type == "markdown":
            cells[0].source = _with_heading(cells[0].source, 2, headings(name.source)[0][1])
        else:
            cells.insert(0, name)
    return tuple(cells)


def _with_extra_arguments(written: str, call: Call) -> str:
    """Return a call with the arguments that somebody added to the round: method and timer."""
    added = {name: call.kwargs[name] for name in ("method", "timer") if name in call.kwargs}
    extra = "".join(f', {name}="{value}"' for name, value in added.items() if value)
    return f"{written.rstrip(')').rstrip().rstrip(',')}{extra})" if extra else written


def _with_call(source: str, written: str) -> str | None:
    """Return a cell's source with another call in place of its last one."""
    found = None
    for node in ast.walk(ast.parse(source)):
        match node:
            case ast.Call(func=ast.Name(id=name)) if name == ROUND:
                found = node
    if found is None or found.end_lineno is None or found.end_col_offset is None:
        return None
    # Columns of a syntax tree count bytes.
    lines = source.encode().split(b"\n")
    before = b"\n".join([*lines[: found.lineno - 1], lines[found.lineno - 1][: found.col_offset]])
    after = b"\n".join(
        [lines[found.end_lineno - 1][found.end_col_offset :], *lines[found.end_lineno :]]
    )
    return (before + written.encode() + after).decode()


def _with_heading(source: str, level: int, words: str) -> str:
    """Return a text with other words in its last heading of a level."""
    lines = source.split("\n")
    marks = "#" * level
    places = [place for place, line in enumerate(lines) if re.match(rf"{marks}\s", line)]
    if not places:
        return f"{heading(level, words)}\n\n{source}"
    lines[places[-1] if level > 1 else places[0]] = heading(level, words)
    return "\n".join(lines)


def _set_title(cells: list[NotebookNode], title: str) -> None:
    """Make the title the first heading of a notebook."""
    for cell in cells:
        if cell.cell_type == "markdown":
            found = [words for level, words in headings(cell.source) if level == 1]
            if found:
                if heading(1, found[0]) != heading(1, title):
                    cell.source = _with_heading(cell.source, 1, title)
                return
    cells.insert(0, notebook_of(Lesson(title, seed=0)).cells[0])


def _imports_play(cell: NotebookNode) -> bool:
    return cell.cell_type == "code" and bool(
        re.search(rf"^\s*from {PACKAGE} import .*(\*|\b{ROUND}\b)", cell.source, re.MULTILINE)
        or re.search(rf"^\s*from {PACKAGE} import \([^)]*\b{ROUND}\b", cell.source, re.MULTILINE)
    )


def _with_ids(cells: list[NotebookNode]) -> list[NotebookNode]:
    """Return the cells with an id each that no other has."""
    used: set[str] = set()
    for cell in cells:
        name = cell.get("id") or "cell"
        again = 1
        wanted = name
        while wanted in used:
            again += 1
            wanted = f"{name[:56]}-{again}"
        used.add(wanted)
        cell["id"] = wanted
    return cells
