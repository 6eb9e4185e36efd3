"""What may be replaced: a file that the kit made, and no other, unless somebody says so.

Whoever writes beside a lesson asks here: the commands, the shelf's buttons, and the lesson maker.
"""

from __future__ import annotations

from pathlib import Path

from manipulatives.lessons.problem import LessonProblem
from manipulatives.shelf.outputs import OUTPUTS, Output

ELSEWHERE = "move it away or rename it, then try again"
FORCE = "give another name with -o, or --force to replace it"
MOVE_OR_FORCE = "move it away or rename it, or --force to replace it"

_END_OF_PDF = b"%%EOF"


class AnotherFile(LessonProblem):
    """There is another file of that name; it is only replaced when somebody says so."""


def is_own(path: Path, output: Output) -> bool:
    """Whether a file is such an output made by the kit.

    Raises:
        OSError: it cannot be read.
    """
    return path.is_file() and not path.is_symlink() and output.mark in path.read_bytes()


def is_replaceable(path: Path, output: Output) -> bool:
    """Whether a file is the kit's own and nobody's work, so that an output may take its name.

    Any page may replace any page, and any paper any paper: a board's page may stand where a
    pupils' page stood.

    Raises:
        OSError: it cannot be read.
    """
    if not path.is_file() or path.is_symlink():
        return False
    content = path.read_bytes()
    marks = (each.mark for each in OUTPUTS.values() if each.media_type == output.media_type)
    # Whoever writes notes into a PDF lets a program add them after its end, with an end of its own.
    return any(mark in content for mark in marks) and content.count(_END_OF_PDF) <= 1


def check_replaceable(path: Path, output: Output, *, remedy: str = ELSEWHERE) -> None:
    """Check that no file would be lost if an output was written under this name.

    Args:
        path: where it is to be written.
        output: what is to be written.
        remedy: what to do about a file that the kit did not make.

    Raises:
        AnotherFile: there is a file that the kit did not make.
        OSError: the file that is there cannot be read.
    """
    if is_there(path) and not is_replaceable(path, output):
        raise AnotherFile(
            f"{path.name} is there already and the kit did not make it", remedy=remedy
        )


def check_unchanged(path: Path, content: bytes, *, remedy: str = ELSEWHERE) -> None:
    """Check that a file that people work on, such as a notebook, is missing or holds just this.

    Raises:
        AnotherFile: it holds something else.
        OSError: it cannot be read.
    """
    if is_there(path) and (path.is_symlink() or path.read_bytes() != content):
        raise AnotherFile(f"{path.name} is there already, with other content", remedy=remedy)


def is_there(path: Path) -> bool:
    """Whether there is anything of that name, be it a link that leads nowhere."""
    return path.exists() or path.is_symlink()
