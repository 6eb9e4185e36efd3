"""Writing one file of a lesson: where from, where to, and what may be replaced."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

from manipulatives.lessons.atomic_write import atomic_write
from manipulatives.lessons.problem import LessonProblem, in_file
from manipulatives.lessons.write_files import recover

if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable

    from manipulatives.shelf.outputs import Output


def source_of(given: argparse.Namespace) -> Path:
    """Return the file that a lesson is made from, and print a notice when that is its notebook.

    An interrupted write into its folder is finished or undone first.

    Raises:
        LessonProblem: what was named is a folder.
    """
    from manipulatives.shelf.find import notebook_notice, source_file  # noqa: PLC0415 - loads notebooks

    if given.lesson.is_dir():
        raise LessonProblem("this is a folder", remedy="give a file", file=str(given.lesson))
    recover(given.lesson.parent)
    source = source_file(given.lesson)
    print_notice(notebook_notice(given.lesson, source))
    return source


def print_notice(sentence: str) -> None:
    """Print a sentence to the standard error."""
    if sentence and sys.stderr is not None:
        sys.stderr.write(f"{sentence}\n")
        sys.stderr.flush()


def target_of(given: argparse.Namespace, output: Output, ending: str = "") -> Path:
    """Return the file for an output, checked before any work is done for it.

    Args:
        given: the arguments.
        output: the output.
        ending: of its name; "" for that of the output.

    Raises:
        LessonProblem: nothing can be written there, or another file is there.
    """
    from manipulatives.shelf.replace import REMEDY_FORCE, check_replaceable  # noqa: PLC0415 - as above

    ending = ending or output.ending
    target: Path = given.output or given.lesson.with_suffix(ending)
    suffixes = (".html", ".htm") if ending.endswith(".html") else (Path(ending).suffix or ending,)
    check_target(target, *suffixes)
    if not given.force:
        with in_file(str(target)):
            check_replaceable(target, output, remedy=REMEDY_FORCE)
    return target


def write_paper(
    given: argparse.Namespace,
    name: str,
    make: Callable[..., bytes],
    *,
    mark: str = "",
    **options: Any,
) -> str:
    """Write a PDF of a lesson and return a sentence about it.

    Args:
        given: the arguments.
        name: of the output.
        make: returns the PDF of a lesson file.
        mark: added to the default name of the file, such as "-B".
        options: other arguments of `make`.

    Raises:
        LessonProblem: nothing can be printed of it, or it cannot be written.
    """
    from manipulatives.shelf.outputs import OUTPUTS  # noqa: PLC0415 - as above

    output = OUTPUTS[name]
    source = source_of(given)
    target = target_of(given, output, output.ending.replace(".pdf", f"{mark}.pdf"))
    write(target, make(source, paper=given.paper, **options))
    return f"The {output.word.lower()} is written: {target}."


def check_target(target: Path, *suffixes: str) -> None:
    """Check that a file of that name can be written.

    Raises:
        LessonProblem: it has the ending of another kind of file, is a folder, or its folder is
            missing.
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
    """Write a file atomically.

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
