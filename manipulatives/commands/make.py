"""The command that makes everything of a lesson: `manipulatives make LESSON…`."""

from __future__ import annotations

import argparse
from pathlib import Path

from manipulatives.commands.shared import arguments as shared_arguments
from manipulatives.commands.shared import writing
from manipulatives.commands.shared.problems import one_problem
from manipulatives.commands.shared.progress import Progress
from manipulatives.lessons.problem import LessonProblem

HELP = (
    "Make everything of lessons: notebook, page, sheet, key and script. What is newer than its "
    "lesson is left as it is, so a run that was stopped goes on where it was."
)
EXAMPLE = "manipulatives make monday.toml tuesday.toml --into ready"


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument(
        "lessons",
        metavar="LESSON",
        type=shared_arguments.path,
        nargs="+",
        help="a lesson file (.toml), a notebook (.ipynb), or a folder with lesson files",
    )
    parser.add_argument(
        "--into",
        metavar="FOLDER",
        type=shared_arguments.path,
        help="where everything goes, made if it is not there; without it, beside each lesson",
    )
    parser.add_argument(
        "--again", action="store_true", help="make everything, even what is newer than its lesson"
    )
    shared_arguments.force_argument(parser)


def run(given: argparse.Namespace) -> str:
    """Make everything and return one sentence about it.

    Raises:
        LessonProblem: a lesson cannot be read or made; the others are made all the same.
    """
    # Drawing and Jupyter's formats take long to load, so other commands do not import them.
    from manipulatives.shelf.find import notebook_notice, source_file  # noqa: PLC0415
    from manipulatives.shelf.make import make_all  # noqa: PLC0415

    lessons = lessons_in(given.lessons)
    if given.into is not None:
        _make_folder(given.into)
    for lesson in lessons:
        writing.print_notice(notebook_notice(lesson, source_file(lesson, given.into)))
    written, left, problems = 0, 0, []
    with Progress(len(lessons), "lessons") as progress:
        for made in make_all(lessons, into=given.into, again=given.again, force=given.force):
            progress.step()
            written += len(made.files)
            left += not (made.files or made.problem)
            if made.problem:
                problems.append(made.problem)
    if problems:
        raise one_problem(problems)
    new = f"{written} file{'s' * (written != 1)} written" if written else "Nothing was to do"
    there = f"; {left} lesson{'s were' if left != 1 else ' was'} there already" if left else ""
    return f"{new}{there}."


def lessons_in(given: list[Path]) -> list[Path]:
    """Return the given lessons, and those in given folders.

    Raises:
        LessonProblem: there is no lesson in a folder.
    """
    from manipulatives.shelf.find import TOML, lesson_files  # noqa: PLC0415 - loads notebooks

    found: list[Path] = []
    for path in given:
        if not path.is_dir():
            found.append(path)
            continue
        inside = [each for each in lesson_files(path) if each.suffix == TOML]
        if not inside:
            raise LessonProblem(
                "there are no lesson files in this folder",
                remedy="give another, or a file",
                file=str(path),
            )
        found += inside
    return [*dict.fromkeys(found)]


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise LessonProblem(
            f"the folder cannot be made ({error.strerror})",
            remedy="choose another",
            file=str(folder),
        ) from None
