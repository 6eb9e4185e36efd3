"""Reading TOML files, which may come from anyone."""

from __future__ import annotations

import re
import tomllib
from typing import TYPE_CHECKING, Any

from manipulatives.lessons.problem import LessonProblem, shown

if TYPE_CHECKING:
    from pathlib import Path

LARGEST = 1_000_000
_MESSAGE = re.compile(
    r"(?P<what>.*?) \(at (?:line (?P<line>\d+), column \d+|end of document)\)", re.DOTALL
)


def read_toml(path: Path) -> dict[str, Any]:
    """Return the fields of a TOML file.

    Raises:
        LessonProblem: the file cannot be opened, is too large, or is no TOML; with the line.

    Example:
        >>> from pathlib import Path
        >>> read_toml(Path("nowhere.toml"))
        Traceback (most recent call last):
        manipulatives.lessons.problem.LessonProblem: the file cannot be opened (No such file ...
    """
    try:
        with path.open("rb") as file:
            raw = file.read(LARGEST + 1)
    except OSError as error:
        raise LessonProblem(
            f"the file cannot be opened ({error.strerror})", remedy="check its name and folder"
        ) from None
    if len(raw) > LARGEST:
        raise LessonProblem(
            f"the file has more than {LARGEST:,} bytes", remedy="give a smaller file"
        )
    try:
        # Some editors put a byte order mark first.
        return tomllib.loads(raw.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        raise LessonProblem(
            "the file is not UTF-8 text", remedy="save it as UTF-8", place=f"line {line}"
        ) from None
    except RecursionError:
        raise LessonProblem(
            "lists or tables are nested too deep", remedy="write them flatter"
        ) from None
    except ValueError as error:
        raise _invalid_toml(str(error)) from None


def _invalid_toml(message: str) -> LessonProblem:
    found = _MESSAGE.fullmatch(message)
    what = found["what"] if found else message
    place = ""
    if found:
        place = f"line {found['line']}" if found["line"] else "at its end"
    return LessonProblem(
        f"the file is no TOML ({shown(what[:1].lower() + what[1:])})",
        remedy='write each field on a line of its own, such as title = "Monday"',
        place=place,
    )
