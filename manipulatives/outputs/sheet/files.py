"""The lesson to print, and the seed and version of its numbers."""

from __future__ import annotations

from pathlib import Path

from manipulatives.lessons.lesson import Lesson
from manipulatives.lessons.problem import at, in_file
from manipulatives.lessons.settings import ClassSettings, class_settings, settled
from manipulatives.notebook.reading import lesson_of, notebook_at
from manipulatives.outputs.sheet.code import check_code, check_version, read_code, with_seed


def lesson_at(path: str | Path) -> tuple[Lesson, ClassSettings]:
    """Return the lesson of a file, and the class settings of its folder.

    Args:
        path: ends in .toml or .ipynb.

    Raises:
        LessonProblem: the file cannot be read.
    """
    file = Path(path)
    notebook = notebook_at(file)
    settings = class_settings(file.parent)
    with in_file(str(path)):
        return lesson_of(notebook, title=file.stem), settings


def with_numbers(
    lesson: Lesson,
    settings: ClassSettings,
    *,
    seed: int | None = None,
    version: str = "A",
    code: str | None = None,
) -> tuple[Lesson, str]:
    """Return the lesson with the wanted numbers, and the version.

    Args:
        lesson: the lesson.
        settings: of the class, for what the lesson leaves unset.
        seed: for other tasks of the same kind; None for the lesson's own.
        version: "A", "B" or "C".
        code: from the foot of a sheet, instead of seed and version.

    Raises:
        LessonProblem: no seed, version or code, or the lesson does not make its numbers.
    """
    if code is None:
        return (lesson if seed is None else with_seed(lesson, seed)), check_version(version)
    with at("code"):
        wanted = read_code(code)
        found = with_seed(lesson, wanted.seed)
        check_code(wanted, settled(found, settings))
    return found, wanted.version
