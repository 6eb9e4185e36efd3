"""Checking a lesson file or a notebook: every problem, with its place and remedy."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

from manipulatives.lessons.checks import check_whole
from manipulatives.lessons.lesson import MOST_ROUNDS, Lesson, Round, round_seed
from manipulatives.lessons.problem import LessonProblem, at, in_file
from manipulatives.lessons.round_tasks import tasks_for
from manipulatives.lessons.settings import ClassSettings, class_settings
from manipulatives.lessons.toml import read_toml
from manipulatives.notebook.calls import Call
from manipulatives.notebook.cells import ROUND, Item, items_of, rounds_of
from manipulatives.notebook.reading import lesson_of, open_notebook
from manipulatives.shelf.outputs import NOTEBOOK

Rounds = list[tuple[str, Round]]
"""Rounds with their places in the file."""


def lesson_checked(path: Path) -> tuple[Lesson | None, list[LessonProblem]]:
    """Return the lesson of a file and every problem with it; None when it cannot be read.

    Every round is checked by itself and its tasks are made, so one problem does not hide others.

    Args:
        path: ends in .toml or .ipynb; a notebook is read and not run.

    Example:
        >>> lesson_checked(Path("nowhere.toml"))[1][0].remedy
        'check its name and folder'
    """
    found: list[LessonProblem] = []
    try:
        with in_file(str(path)):
            # The file of the settings may be broken too; its problem names that file.
            settings = _settings(path, found)
            if path.suffix.lower() == NOTEBOOK:
                lesson, rounds = _of_notebook(path, found)
            else:
                lesson, rounds = _of_toml(read_toml(path), found)
    except LessonProblem as problem:
        return None, [*found, problem]
    found += _tasks(lesson, rounds, settings)
    problems = [_with_file(each, path) for each in found]
    whole = replace(lesson, rounds=tuple(one for _, one in rounds))
    return (None if problems else whole), problems


def _settings(path: Path, found: list[LessonProblem]) -> ClassSettings:
    try:
        return class_settings(path.parent)
    except LessonProblem as problem:
        found.append(problem)
        return ClassSettings()


def _of_toml(data: dict[str, Any], found: list[LessonProblem]) -> tuple[Lesson, Rounds]:
    """Return the valid parts of a lesson: its header, and the rounds without problems."""
    given = data.pop("rounds", [])
    header = _try(lambda: Lesson.from_data(data), found)
    if not isinstance(given, list):
        _try(lambda: Lesson.from_data({"title": "Lesson", "seed": 0, "rounds": given}), found)
        given = []
    with at("rounds"):
        check_whole(len(given), 0, MOST_ROUNDS)
    lesson = header or Lesson("Lesson", seed=0)
    rounds: Rounds = []
    for place, one in enumerate(given, start=1):
        usual = {"seed": round_seed(lesson.seed, place)}
        whole = {**usual, **one} if isinstance(one, dict) else one
        name = f"[[rounds]] {place}"
        made = _try(lambda whole=whole: Round.from_data(whole), found, name)
        rounds += [(name, made)] if made else []
    return lesson, rounds


def _of_notebook(path: Path, found: list[LessonProblem]) -> tuple[Lesson, Rounds]:
    notebook = open_notebook(path)
    items = items_of(notebook)
    _check_widgets(items, found)
    calls = [call for call, _ in rounds_of(items)]
    try:
        lesson = lesson_of(notebook, title=path.stem)
    except LessonProblem as problem:
        found.append(problem)
    else:
        cells = [f"cell {call.cell}" for call in calls]
        return lesson, [*zip(cells, lesson.rounds, strict=True)]
    # The first problem hides the others, so each round is read without the others.
    round_cells = {call.cell for call in calls}
    for call in calls:
        alone = notebook.copy()
        alone.cells = [
            cell
            for number, cell in enumerate(notebook.cells, start=1)
            if number == call.cell or number not in round_cells
        ]
        try:
            lesson_of(alone, title=path.stem)
        except LessonProblem as problem:
            # Without the other cells its number is different.
            place = ", ".join([f"cell {call.cell}", *problem.place.split(", ")[1:]])
            again = LessonProblem(problem.what, remedy=problem.remedy, place=place)
            if problem.place.startswith("cell") and str(again) not in map(str, found):
                found.append(again)
    return Lesson("Lesson", seed=0), []


def _check_widgets(items: Iterable[Item], found: list[LessonProblem]) -> None:
    """Make every manipulative outside of rounds, which shows whether its call is valid."""
    from manipulatives.outputs.page.page import widgets_of  # noqa: PLC0415 - for notebooks only

    for item in items:
        if isinstance(item, Call) and item.name != ROUND:
            try:
                with widgets_of([item], {}):
                    pass
            except LessonProblem as problem:
                found.append(problem)


def _tasks(lesson: Lesson, rounds: Rounds, settings: ClassSettings) -> Iterator[LessonProblem]:
    """Yield the problems of making the tasks of each round."""
    for place, one in rounds:
        try:
            with at(place):
                tasks_for(one, lesson, settings)
        except LessonProblem as problem:
            yield problem


def _try(make: Any, found: list[LessonProblem], place: str = "") -> Any:  # noqa: ANN401 - of any type
    try:
        if not place:
            return make()
        with at(place):
            return make()
    except LessonProblem as problem:
        found.append(problem)
        return None


def _with_file(problem: LessonProblem, path: Path) -> LessonProblem:
    return LessonProblem(
        problem.what,
        remedy=problem.remedy,
        place=problem.place,
        file=problem.file or str(path),
    )
