"""A lesson as a PDF to print: practice for pupils, or the key for whoever marks it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import count
from pathlib import Path

from manipulatives.lessons.checks import check_seed
from manipulatives.lessons.lesson import Lesson, Round, round_seed
from manipulatives.lessons.makers import make_tasks
from manipulatives.lessons.problem import LessonProblem, at, in_file
from manipulatives.lessons.settings import ClassSettings, class_settings, settled
from manipulatives.outputs.notebook import lesson_of, notebook_at
from manipulatives.outputs.sheet.cells import rows_of
from manipulatives.outputs.sheet.frame import foot, head, heading
from manipulatives.outputs.sheet.pages import Block, laid_out
from manipulatives.outputs.sheet.paper import LARGE, PAPERS, STANDARD, Paper, Size
from manipulatives.outputs.sheet.pdf import pdf_of, printable

LANGUAGES = {"us": "en-US", "uk": "en-GB"}


def sheet_of_file(
    path: str | Path,
    *,
    key: bool = False,
    large_print: bool = False,
    paper: str | None = None,
    seed: int | None = None,
) -> bytes:
    """Return the sheet of a lesson file or a notebook, with the class settings of its folder.

    A notebook is read and not run; cells with code of their own are left out.

    Args:
        path: ends in .toml or .ipynb.
        key: whether the answers are given.
        large_print: whether everything is larger.
        paper: "a4" or "letter", None for what lesson and settings say.
        seed: for other tasks of the same kind; None for the lesson's own.

    Raises:
        LessonProblem: the file cannot be read, or there is nothing in it to print.

    Example:
        >>> sheet_of_file("notebooks/market-clock.toml", key=True)[:4]
        b'%PDF'
    """
    file = Path(path)
    notebook = notebook_at(file)
    settings = class_settings(file.parent)
    with in_file(str(path)):
        lesson = lesson_of(notebook, title=file.stem)
        if seed is not None:
            lesson = _sown(lesson, seed)
        return sheet_of(lesson, settings, key=key, large_print=large_print, paper=paper)


def sheet_of(
    lesson: Lesson,
    settings: ClassSettings,
    *,
    key: bool = False,
    large_print: bool = False,
    paper: str | None = None,
) -> bytes:
    """Return a lesson as a PDF to print: practice for pupils, or the key for whoever marks it.

    The same lesson gives the same bytes. Sheet and key are laid out alike, so that one can be
    laid beside the other; what is drawn has the size in millimetres that it is said to have.

    Args:
        lesson: the lesson.
        settings: what holds where the lesson says nothing.
        key: whether the answers are given.
        large_print: whether everything is larger: type of at least 18 points instead of 12.
        paper: "a4" or "letter", None for what lesson and settings say.

    Raises:
        LessonProblem: the lesson has no rounds, or one that cannot be made or drawn, or there is
            no such paper.

    Example:
        >>> monday = Lesson("Monday", seed=7, rounds=(Round("time.read_hour", seed=90213),))
        >>> sheet_of(monday, ClassSettings())[:4]
        b'%PDF'
    """
    whole = settled(lesson, settings)
    if not whole.rounds:
        raise LessonProblem("there is nothing to print", remedy="give the lesson a round")
    on = _paper(paper or str(whole.paper))
    size = LARGE if large_print else STANDARD
    blocks = [Block(head(whole.title, size, on.inside, key=key))]
    numbers = count(1)
    for place, each in enumerate(whole.rounds, start=1):
        with at(f"round {place}"):
            blocks += _round(each, str(whole.vocabulary), numbers, size, on, key=key)
    note = f"{'Key' if key else 'Sheet'} {whole.seed} · {whole.title}"
    pages = laid_out(blocks, on, lambda page, of: foot(note, page, of, size, on.inside))
    title = f"{printable(whole.title)}{': answers' if key else ''}"
    return pdf_of(pages, title=title, language=LANGUAGES[str(whole.vocabulary)])


def _sown(lesson: Lesson, seed: int) -> Lesson:
    """Return the lesson with other numbers: every round has a seed that comes from this one."""
    with at("seed"):
        check_seed(seed)
    rounds = enumerate(lesson.rounds, start=1)
    others = tuple(replace(each, seed=round_seed(seed, place)) for place, each in rounds)
    return replace(lesson, seed=seed, rounds=others)


def _paper(name: str) -> Paper:
    if name in PAPERS:
        return PAPERS[name]
    known = " or ".join(f'"{each}"' for each in PAPERS)
    raise LessonProblem(f'there is no paper "{name}"', remedy=f"print on {known}")


def _round(
    each: Round,
    vocabulary: str,
    numbers: Iterator[int],
    size: Size,
    on: Paper,
    *,
    key: bool,
) -> list[Block]:
    tasks = make_tasks(
        each.skill,
        seed=each.seed,
        count=each.tasks,
        vocabulary=vocabulary,
        options=each.options,
    )
    # What all tasks ask in the same words is said once, in the heading.
    alike = len({task.prompt for task in tasks}) == 1
    title, again = (
        heading(name, tasks, size, on.inside, prompt=alike)
        for name in (each.title, f"{each.title} (continued)")
    )
    first, *others = rows_of(
        [(next(numbers), task) for task in tasks],
        size,
        on.inside,
        prompts=not alike,
        key=key,
    )
    return [
        Block(title, before=2 * size.text, keep=True),
        Block(first, before=size.text),
        *(Block(row, before=size.between, again=again) for row in others),
    ]
