"""The command that makes the notebook of a lesson: `manipulatives notebook LESSON`."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from manipulatives.commands.shared import arguments as shared_arguments
from manipulatives.commands.shared import writing
from manipulatives.lessons.files import read_lesson
from manipulatives.lessons.problem import LessonProblem, in_file

if TYPE_CHECKING:
    import argparse

HELP = "Make the notebook of a lesson, to be changed, shown and taught from in Jupyter."
EXAMPLE = "manipulatives notebook monday.toml -o monday.ipynb"
ENDING = ".ipynb"


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
    shared_arguments.lesson_argument(parser, what="a lesson file (.toml)")
    shared_arguments.target_arguments(parser, "notebook")


def run(given: argparse.Namespace) -> str:
    """Write the notebook and return a sentence about it.

    Raises:
        LessonProblem: it is no lesson file, or the notebook cannot be written.
    """
    from manipulatives.notebook.writing import notebook_of  # noqa: PLC0415 - notebooks load much
    from manipulatives.shelf.find import source_file  # noqa: PLC0415
    from manipulatives.shelf.outputs import notebook_text  # noqa: PLC0415
    from manipulatives.shelf.replace import REMEDY_MOVE_OR_FORCE, check_unchanged  # noqa: PLC0415

    if given.lesson.is_dir():
        raise LessonProblem("this is a folder", remedy="give a file", file=str(given.lesson))
    if given.lesson.suffix.lower() == ENDING:
        raise LessonProblem(
            "this is a notebook already",
            remedy="give a lesson file (.toml)",
            file=str(given.lesson),
        )
    target: Path = given.output or given.lesson.with_suffix(ENDING)
    writing.check_target(target, ENDING)
    source = source_file(given.lesson)
    if source not in (given.lesson, target) and not given.force:
        raise LessonProblem(
            f"its notebook {source.name} is there, so that is the lesson",
            remedy=f"copy that notebook, or say --force to make one from {given.lesson.name}",
            file=str(given.lesson),
        )
    content = notebook_text(notebook_of(read_lesson(given.lesson)))
    # Do not lose changes that somebody made in it.
    if not given.force:
        with in_file(str(target)):
            check_unchanged(target, content, remedy=REMEDY_MOVE_OR_FORCE)
    writing.write(target, content)
    return f"The notebook is written: {target}."
