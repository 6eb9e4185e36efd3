"""A lesson as a PDF to print: practice for pupils, or the key for whoever marks it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from manipulatives.drawings.shapes import Drawing
from manipulatives.lessons.checks import check_one_of
from manipulatives.lessons.lesson import Lesson
from manipulatives.lessons.problem import at, in_file
from manipulatives.lessons.settings import ClassSettings, settled
from manipulatives.outputs.sheet.code import check_version, code_of
from manipulatives.outputs.sheet.files import lesson_at, with_numbers
from manipulatives.outputs.sheet.layout.frame import foot, head, heading
from manipulatives.outputs.sheet.layout.pages import Block, laid_out
from manipulatives.outputs.sheet.layout.paper import LARGE, STANDARD, Paper, Size, paper_called
from manipulatives.outputs.sheet.pdf.document import pdf_of
from manipulatives.outputs.sheet.pdf.letters import printable
from manipulatives.outputs.sheet.printed_sheet import ATTACHMENT, KINDS, printed_sheet
from manipulatives.outputs.sheet.rounds import RoundTasks, tasks_by_round
from manipulatives.outputs.sheet.tasks.cells import (
    COLUMN_GAP,
    Cell,
    cells_of,
    drawing_of,
    fits,
    rows_of,
)
from manipulatives.outputs.sheet.tasks.steps import step_drawings

WORKED = "steps"
LANGUAGES = {"us": "en-US", "uk": "en-GB"}

_BESIDE = 110.0
"""Steps of less than this height are printed beside their task, in millimetres."""

_MARKS = {"pupil": "", "key": "Answers", "steps": "Worked answers"}
_NAMES = {"pupil": "Sheet", "key": "Key", "steps": "Steps"}


def sheet_of_file(
    path: str | Path,
    *,
    key: bool = False,
    large_print: bool = False,
    paper: str | None = None,
    seed: int | None = None,
    kind: str | None = None,
    version: str = "A",
    code: str | None = None,
    address: str = "",
) -> bytes:
    """Return the sheet of a lesson file or a notebook, with the class settings of its folder.

    A notebook is read and not run; cells with code of their own are left out.

    Args:
        path: ends in .toml or .ipynb.
        key: whether the answers are given.
        large_print: whether everything is larger.
        paper: "a4" or "letter", None for that of the lesson or its settings.
        seed: for other tasks of the same kind; None for the lesson's own.
        kind: "pupil", "key" or "steps"; None for "key" or "pupil", depending on `key`.
        version: "A" for the lesson's own numbers, "B" or "C" for others as difficult.
        code: from the foot of a sheet, for the same numbers again, instead of seed and version.
        address: of the lesson's page, for a QR code; empty for none.

    Raises:
        LessonProblem: the file cannot be read, there is nothing in it to print, or it does not
            make the numbers of the code.

    Example:
        >>> sheet_of_file("notebooks/market-clock.toml", key=True)[:4]
        b'%PDF'
    """
    lesson, settings = lesson_at(path)
    with in_file(str(path)):
        lesson, version = with_numbers(lesson, settings, seed=seed, version=version, code=code)
        return sheet_of(
            lesson,
            settings,
            key=key,
            large_print=large_print,
            paper=paper,
            kind=kind,
            version=version,
            address=address,
        )


def sheet_of(
    lesson: Lesson,
    settings: ClassSettings,
    *,
    key: bool = False,
    large_print: bool = False,
    paper: str | None = None,
    kind: str | None = None,
    version: str = "A",
    address: str = "",
) -> bytes:
    """Return a lesson as a PDF to print: practice for pupils, or the key for whoever marks it.

    The same lesson gives the same bytes. What is printed is stored in the file, too, as
    `printed_of` reads it. Sheet and key have the same layout, so that they can be compared side by
    side. Sizes in millimetres are true on paper.

    Args:
        lesson: the lesson.
        settings: of the class, for what the lesson leaves unset.
        key: whether the answers are given.
        large_print: whether everything is larger: type of at least 18 points instead of 12.
        paper: "a4" or "letter", None for that of the lesson or its settings.
        kind: "pupil", "key", or "steps" for a key with worked steps; None for "key" or "pupil",
            depending on `key`.
        version: "A" for the lesson's own numbers, "B" or "C" for others as difficult.
        address: of the lesson's page, for a QR code; empty for none.

    Raises:
        LessonProblem: the lesson has no rounds, or one that cannot be made or drawn, or there is
            no such paper, kind, version or address.

    Example:
        >>> from manipulatives.lessons.lesson import Round
        >>> monday = Lesson("Monday", seed=7, rounds=(Round("time.read_hour", seed=90213),))
        >>> sheet_of(monday, ClassSettings())[:4]
        b'%PDF'
    """
    complete = settled(lesson, settings)
    kind = _kind(kind, key=key)
    rounds = tasks_by_round(complete, settings, check_version(version))
    pages = pages_of(
        complete,
        rounds,
        kind=kind,
        large_print=large_print,
        paper=paper,
        version=version,
        address=address,
    )
    mark = _MARKS[kind].lower()
    title = f"{printable(complete.title)}{f': {mark}' if mark else ''}"
    stored = printed_sheet(complete, rounds, kind=kind, version=version)
    return pdf_of(
        pages,
        title=title,
        language=LANGUAGES[str(complete.vocabulary)],
        attachments={ATTACHMENT: stored.to_json()},
    )


def pages_of(
    complete: Lesson,
    rounds: Sequence[RoundTasks],
    *,
    kind: str = "pupil",
    large_print: bool = False,
    paper: str | None = None,
    version: str = "A",
    address: str = "",
) -> list[Drawing]:
    """Return the pages of a sheet as drawings.

    Args:
        complete: the lesson, with nothing left unset.
        rounds: its rounds with their tasks.
        kind: "pupil", "key" or "steps".
        large_print: whether everything is larger.
        paper: "a4" or "letter", None for that of the lesson.
        version: "A", "B" or "C".
        address: of the lesson's page, for a QR code; empty for none.

    Raises:
        LessonProblem: as `sheet_of` says.
    """
    on = paper_called(paper or str(complete.paper))
    size = LARGE if large_print else STANDARD
    blocks = [
        Block(
            head(
                complete.title,
                size,
                on.inside,
                mark=_MARKS[kind],
                address=address,
                names=kind != WORKED,
            )
        )
    ]
    first = 1
    for place, each in enumerate(rounds, start=1):
        with at(f"round {place}"):
            words = str(complete.vocabulary)
            blocks += _round(each, first, size, on, kind=kind, vocabulary=words)
        first += len(each.tasks)
    note = f"{_NAMES[kind]} {code_of(complete, version)} · {complete.title}"
    return laid_out(blocks, on, lambda page, of: foot(note, page, of, size, on.inside))


def _kind(kind: str | None, *, key: bool) -> str:
    if kind is None:
        return "key" if key else "pupil"
    with at("kind"):
        return check_one_of(kind, KINDS)


def _round(
    each: RoundTasks, first: int, size: Size, on: Paper, *, kind: str, vocabulary: str
) -> list[Block]:
    sized = size.for_age(each.age)
    numbered = list(enumerate(each.tasks, start=first))
    cells = cells_of(numbered, sized, on.inside, key=kind != "pupil", vocabulary=vocabulary)
    # A prompt that all tasks share is printed once, in the heading.
    prompts = {cell.printed.prompt for cell in cells}
    alike = len(prompts) == 1
    instructions = dict.fromkeys(cell.printed.instructions for cell in cells)
    text = " ".join(text for text in [*(prompts if alike else ()), *instructions] if text)
    name = str(each.round.title)
    title, continued = (
        heading(one, text, size, on.inside) for one in (name, f"{name} (continued)")
    )
    cells = [cell.without_prompt() for cell in cells] if alike else cells
    given = cells[0].printed.given
    start = [Block(title, before=2 * size.text, keep_with_next=True)]
    if given and all(cell.printed.given == given for cell in cells):
        start.append(Block(given, before=size.note, keep_with_next=True))
        continued = _above(continued, given, size.note)
    else:
        cells = [cell.with_given() for cell in cells]
    if kind == WORKED:
        body = _worked(cells, sized, on.inside, continued)
    else:
        row, *others = rows_of(cells, on.inside)
        body = [
            Block(row, before=size.text),
            *(Block(other, before=size.between, repeated_heading=continued) for other in others),
        ]
    return [*start, *body]


def _above(one: Drawing, other: Drawing, gap: float) -> Drawing:
    below = one.height + gap
    return Drawing(one.width, below + other.height, (*one.shapes, *other.at(0, below)))


def _worked(cells: Sequence[Cell], size: Size, width: float, continued: Drawing) -> list[Block]:
    """Return the tasks of a round one below the other, each with its steps beside it or below."""
    blocks: list[Block] = []
    half = (width - COLUMN_GAP) / 2
    for cell in cells:
        before = size.between if blocks else size.text
        under = continued if blocks else None
        steps = step_drawings(cell.task.steps, size, half)
        if fits(cell, half) and sum(step.height for step in steps) < _BESIDE:
            both = _side_by_side(drawing_of(cell, half), steps, size, width)
            blocks.append(Block(both, before=before, repeated_heading=under))
            continue
        steps = step_drawings(cell.task.steps, size, width - cell.left)
        answered = drawing_of(cell, width)
        keep = bool(steps)
        blocks.append(Block(answered, before, keep_with_next=keep, repeated_heading=under))
        moved = [Drawing(width, step.height, step.at(cell.left, 0)) for step in steps]
        blocks += [Block(step, before=size.note / 3, repeated_heading=continued) for step in moved]
    return blocks


def _side_by_side(left: Drawing, steps: Sequence[Drawing], size: Size, width: float) -> Drawing:
    shapes = [*left.shapes]
    down = 0.0
    for step in steps:
        shapes += step.at(left.width + COLUMN_GAP, down)
        down += step.height + size.note / 3
    return Drawing(width, max(left.height, down - size.note / 3), tuple(shapes))
