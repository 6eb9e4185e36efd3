"""The rule for replacing files: only files that the kit made, unless the user allows more.

The commands, the buttons of the shelf and the lesson maker all check it here.
"""

from __future__ import annotations

from pathlib import Path

from manipulatives.lessons.problem import LessonProblem
from manipulatives.shelf.outputs import OUTPUTS, Output

REMEDY_MOVE = "move it away or rename it, then try again"
REMEDY_FORCE = "give another name with -o, or --force to replace it"
REMEDY_MOVE_OR_FORCE = "move it away or rename it, or --force to replace it"

_END_OF_PDF = b"%%EOF"


class AnotherFile(LessonProblem):
    """There is another file of that name, which is only replaced when the user allows it."""


def is_made_by_kit(path: Path, output: Output) -> bool:
    """Whether a file is this output, made by the kit.

    Raises:
        OSError: it cannot be read.
    """
    return path.is_file() and not path.is_symlink() and output.mark in path.read_bytes()


def is_replaceable(path: Path, output: Output) -> bool:
    """Whether a file was made by the kit and not changed since, so that an output may replace it.

    Any page may replace any page, and any PDF any PDF: the page for a board may replace a page for
    pupils.

    Raises:
        OSError: it cannot be read.
    """
    if not path.is_file() or path.is_symlink():
        return False
    content = path.read_bytes()
    marks = (each.mark for each in OUTPUTS.values() if each.media_type == output.media_type)
    # Programs that write notes into a PDF append them, with another end mark.
    return any(mark in content for mark in marks) and content.count(_END_OF_PDF) <= 1


def check_replaceable(path: Path, output: Output, *, remedy: str = REMEDY_MOVE) -> None:
    """Check that writing an output under this name would replace no file of others.

    Args:
        path: of the file to write.
        output: the output to write.
        remedy: for a file that the kit did not make.

    Raises:
        AnotherFile: there is a file that the kit did not make.
        OSError: the existing file cannot be read.
    """
    if is_there(path) and not is_replaceable(path, output):
        raise AnotherFile(
            f"{path.name} is there already and the kit did not make it", remedy=remedy
        )


def check_unchanged(path: Path, content: bytes, *, remedy: str = REMEDY_MOVE) -> None:
    """Check that an editable file, such as a notebook, is missing or has exactly this content.

    Raises:
        AnotherFile: it has other content.
        OSError: it cannot be read.
    """
    if is_there(path) and (path.is_symlink() or path.read_bytes() != content):
        raise AnotherFile(f"{path.name} is there already, with other content", remedy=remedy)


def is_there(path: Path) -> bool:
    """Whether there is anything of that name, even a broken link."""
    return path.exists() or path.is_symlink()
