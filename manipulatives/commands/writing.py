"""What the commands share that make one file of a lesson: what they take, and where they write."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

from manipulatives.lessons.atomic_write import atomic_write
from manipulatives.lessons.lesson import PAPERS, VERSIONS
from manipulatives.lessons.problem import LessonProblem, in_file
from manipulatives.lessons.write_files import recover

if TYPE_CHECKING:
    from collections.abc import Callable

    from manipulatives.shelf.outputs import Output

LESSON_OR_NOTEBOOK = "a lesson file (.toml) or a notebook (.ipynb)"


def path(typed: str) -> Path:
    """Return a path, unless its name is made of bytes that no text has."""
    try:
        typed.encode()
    except UnicodeEncodeError:
        raise argparse.ArgumentTypeError(f"{typed!a} cannot be shown, rename it") from None
    return Path(typed)


def lesson_argument(
    parser: argparse.ArgumentParser, name: str = "LESSON", what: str = LESSON_OR_NOTEBOOK
) -> None:
    """Tell a parser that a command takes one lesson."""
    parser.add_argument("lesson", metavar=name, type=path, help=what)


def file_arguments(parser: argparse.ArgumentParser, becomes: str) -> None:
    """Tell a parser that a command takes one file and writes another."""
    lesson_argument(parser, "LESSON_OR_NOTEBOOK")
    target_arguments(parser, becomes)


def target_arguments(parser: argparse.ArgumentParser, becomes: str) -> None:
    """Tell a parser where a command may write, and that it may replace what others made."""
    parser.add_argument(
        "-o",
        "--output",
        metavar="FILE",
        type=path,
        help=f"the {becomes} to write; without it, beside the lesson under the same name",
    )
    force_argument(parser)


def force_argument(parser: argparse.ArgumentParser) -> None:
    """Tell a parser that a command may replace what others made, when it is told to."""
    parser.add_argument(
        "--force",
        action="store_true",
        help="replace a file of that name even if the kit did not make it",
    )


def paper_arguments(parser: argparse.ArgumentParser) -> None:
    """Tell a parser that a command puts one lesson on paper, and on which."""
    file_arguments(parser, "PDF")
    parser.add_argument("--paper", choices=PAPERS, help="instead of what the lesson says")


def numbers_arguments(parser: argparse.ArgumentParser) -> None:
    """Tell a parser which other numbers may be printed."""
    parser.add_argument("--seed", type=int, metavar="N", help="other tasks of the same kind")
    parser.add_argument(
        "--version", choices=VERSIONS, default=VERSIONS[0], help="other tasks, just as difficult"
    )
    parser.add_argument(
        "--code", metavar="CODE", help="the same numbers as on the sheet with this at its foot"
    )


def source_of(given: argparse.Namespace) -> Path:
    """Return the file that a lesson is made from, and say so when that is its notebook.

    A write into its folder that was interrupted is finished or undone first.

    Raises:
        LessonProblem: what was named is a folder.
    """
    from manipulatives.shelf.find import notebook_notice, source_file  # noqa: PLC0415 - loads notebooks

    if given.lesson.is_dir():
        raise LessonProblem("this is a folder", remedy="give a file", file=str(given.lesson))
    recover(given.lesson.parent)
    source = source_file(given.lesson)
    say(notebook_notice(given.lesson, source))
    return source


def say(sentence: str) -> None:
    """Say something beside what the command prints."""
    if sentence and sys.stderr is not None:
        sys.stderr.write(f"{sentence}\n")
        sys.stderr.flush()


def target_of(given: argparse.Namespace, output: Output, ending: str = "") -> Path:
    """Return where an output is to be written, before any work is done for it.

    Args:
        given: what was typed.
        output: what is to be written.
        ending: of its name, where that is not the usual one.

    Raises:
        LessonProblem: nothing can be written there, or a file would be lost.
    """
    from manipulatives.shelf.replace import FORCE, check_replaceable  # noqa: PLC0415 - as above

    ending = ending or output.ending
    target: Path = given.output or given.lesson.with_suffix(ending)
    suffixes = (".html", ".htm") if ending.endswith(".html") else (Path(ending).suffix or ending,)
    check_target(target, *suffixes)
    if not given.force:
        with in_file(str(target)):
            check_replaceable(target, output, remedy=FORCE)
    return target


def write_paper(
    given: argparse.Namespace,
    name: str,
    make: Callable[..., bytes],
    *,
    mark: str = "",
    **how: Any,
) -> str:
    """Write a lesson on paper and return the sentence that says so.

    Args:
        given: what was typed.
        name: of the output.
        make: returns its content for a file and a paper.
        mark: comes last in the usual name of the file, such as "-B".
        how: what else `make` takes.

    Raises:
        LessonProblem: nothing can be printed of it, or it cannot be written.
    """
    from manipulatives.shelf.outputs import OUTPUTS  # noqa: PLC0415 - as above

    output = OUTPUTS[name]
    source = source_of(given)
    target = target_of(given, output, output.ending.replace(".pdf", f"{mark}.pdf"))
    write(target, make(source, paper=given.paper, **how))
    return f"The {output.word.lower()} is written: {target}."


def check_target(target: Path, *suffixes: str) -> None:
    """Check that a file of that name may be there.

    Raises:
        LessonProblem: it has the name of another kind of file, is a folder, or is in none.
    """
    what = None
    if target.suffix.lower() not in suffixes:
        what, remedy = "that is the name of another kind of file", f"let it end in {suffixes[0]}"
    elif target.is_dir():
        what, remedy = "that is a folder", "give the name of a file"
    elif not target.parent.is_dir():
        what, remedy = f"there is no folder {target.parent}", "make it first, or name another"
    if what:
        raise LessonProblem(what, remedy=remedy, file=str(target))


def write(target: Path, content: str | bytes) -> None:
    """Write a file, whole or not at all.

    Raises:
        LessonProblem: it cannot be written.
    """
    try:
        atomic_write(target, content)
    except OSError as error:
        raise LessonProblem(
            f"it cannot be written ({error.strerror})",
            remedy="choose a folder that you may write in",
            file=str(target),
        ) from None
