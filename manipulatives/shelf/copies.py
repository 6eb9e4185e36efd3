"""Copied rounds: two rounds with the same skill and seed ask the same questions."""

from __future__ import annotations

import ast
import re
import tomllib
from dataclasses import replace
from typing import TYPE_CHECKING

import nbformat

from manipulatives.lessons.atomic_write import atomic_write
from manipulatives.lessons.editing import seed_by_chance
from manipulatives.lessons.files import read_lesson, write_lesson
from manipulatives.lessons.lesson import Lesson
from manipulatives.lessons.problem import LessonProblem, in_file
from manipulatives.notebook.cells import ROUND, items_of, rounds_of
from manipulatives.notebook.reading import lesson_of, open_notebook

if TYPE_CHECKING:
    from pathlib import Path

    from manipulatives.shelf.items import ShelfItem

_HEADER = re.compile(r"\s*\[\[\s*rounds\s*\]\]\s*(#.*)?")
_TABLE = re.compile(r"\s*\[")
_SEED = re.compile(r"(\s*seed\s*=\s*)(\d[\d_]*)(.*)", re.DOTALL)


def renumber(item: ShelfItem, which: str) -> int:
    """Give a copied round another seed in its file and return the seed; the write is atomic.

    Args:
        item: the lesson.
        which: the number of the round, from 1, as the browser sends it.

    Raises:
        LessonProblem: that round is no copy, or its seed cannot be changed by itself.
        OSError: the file cannot be written.

    Example:
        >>> from pathlib import Path
        >>> from manipulatives.shelf.items import Shelf
        >>> renumber(Shelf(Path("notebooks")).find("market-clock"), "2")
        Traceback (most recent call last):
        manipulatives.lessons.problem.LessonProblem: ... that round has numbers of its own ...
    """
    with in_file(item.source.name):
        copied = [str(place) for place, _ in item.copies]
        if item.lesson is None or which not in copied:
            raise LessonProblem(
                "that round has numbers of its own by now", remedy="go back to the shelf"
            )
        place = int(which)
        seed = seed_by_chance({each.seed for each in item.lesson.rounds})
        change = _in_notebook if item.is_notebook else _in_toml
        change(item.source, place, seed)
        return seed


def _changed(lesson: Lesson, place: int, seed: int) -> Lesson:
    """Return the lesson with another seed in one round."""
    rounds = list(lesson.rounds)
    rounds[place - 1] = replace(rounds[place - 1], seed=seed)
    return replace(lesson, rounds=tuple(rounds))


def _in_toml(path: Path, place: int, seed: int) -> None:
    lesson = read_lesson(path)
    wanted = _changed(lesson, place, seed)
    text = _with_seed(path.read_bytes().decode("utf-8-sig"), place, seed)
    # Changing the line in place preserves comments and order. If that is not possible, the whole
    # lesson is written again.
    if text is not None and _same(text, wanted):
        atomic_write(path, text)
    else:
        write_lesson(wanted, path)


def _same(text: str, wanted: Lesson) -> bool:
    try:
        return Lesson.from_data(tomllib.loads(text)) == wanted
    except ValueError:
        return False


def _with_seed(text: str, place: int, seed: int) -> str | None:
    """Return the text of a lesson file with another seed in one [[rounds]] table."""
    lines = text.splitlines(keepends=True)
    at = 0
    for number, line in enumerate(lines):
        if _HEADER.fullmatch(line.rstrip("\r\n")):
            at += 1
        elif at == place and _TABLE.match(line):
            return None
        elif at == place and (found := _SEED.fullmatch(line)):
            lines[number] = f"{found[1]}{seed}{found[3]}"
            return "".join(lines)
    return None


def _in_notebook(path: Path, place: int, seed: int) -> None:
    notebook = open_notebook(path)
    wanted = _changed(lesson_of(notebook), place, seed)
    call, _ = list(rounds_of(items_of(notebook)))[place - 1]
    cell = notebook.cells[call.cell - 1]
    source = _with_argument(cell.source, wanted.rounds[place - 1].skill, call.kwargs["seed"], seed)
    if source is not None:
        cell.source = source
        cell.outputs = []
        if lesson_of(notebook) == wanted:
            atomic_write(path, nbformat.writes(notebook) + "\n")
            return
    raise LessonProblem(
        f"the numbers of round {place} cannot be changed by themselves",
        remedy="open the notebook and give that round another seed",
        place=f"cell {call.cell}",
    )


def _with_argument(source: str, skill: str, old: int, new: int) -> str | None:
    """Return a cell's source with another seed in the last call that makes this round."""
    found = None
    for node in ast.walk(ast.parse(source)):
        match node:
            case ast.Call(func=ast.Name(id=name), args=args, keywords=words) if name == ROUND:
                arguments = {word.arg: word.value for word in words}
                skills = [*args[:1], arguments.get("skill")]
                is_it = any(isinstance(one, ast.Constant) and one.value == skill for one in skills)
                seed = arguments.get("seed")
                if (
                    is_it
                    and isinstance(seed, ast.Constant)
                    and seed.value is not True
                    and seed.value == old
                ):
                    found = seed
    if found is None or found.lineno != found.end_lineno:
        return None
    lines = source.split("\n")
    # Columns of a syntax tree count bytes.
    line = lines[found.lineno - 1].encode()
    lines[found.lineno - 1] = (
        line[: found.col_offset] + str(new).encode() + line[found.end_col_offset :]
    ).decode()
    return "\n".join(lines)
