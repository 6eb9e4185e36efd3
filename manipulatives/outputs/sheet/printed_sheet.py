"""What was printed on a sheet, stored in its PDF and read back from it.

A past sheet is not made again from its seeds to mark it, because the tasks of a seed may change
between versions of the kit. Instead the PDF of a sheet carries a small JSON file. A PDF may come
from anyone, so everything in it is checked before it is used.
"""

from __future__ import annotations

import hashlib
import io
import json
from collections.abc import Iterable
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any, Self

from manipulatives.data.kit import kit_version
from manipulatives.lessons.catalogue.skills import options_at
from manipulatives.lessons.checks import (
    check_fields,
    check_one_of,
    check_table,
    check_text,
    check_whole,
)
from manipulatives.lessons.lesson import MOST_ROUNDS, MOST_TASKS, Lesson
from manipulatives.lessons.problem import LessonProblem, at, in_file, quoted
from manipulatives.outputs.sheet.code import code_of, read_code
from manipulatives.outputs.sheet.rounds import RoundTasks

ATTACHMENT = "manipulatives-sheet.json"
"""The name of the file in the PDF."""

FORMAT = "manipulatives printed sheet"
VERSION = 1
KINDS = ("pupil", "key", "steps")
"""What a sheet may be: practice for pupils, the key to it, or the key with worked steps."""

LONGEST_PROMPT = 1_000
LARGEST_PDF = 50_000_000
LARGEST_ATTACHMENT = 2_000_000

DAMAGED = "what it says was printed is damaged"
_REMEDY = "give a sheet or a key as the kit made it"


@dataclass(frozen=True)
class PrintedTask:
    """One task on a sheet.

    Attributes:
        number: of the task on the sheet, from 1.
        round: the number of its round in the lesson, from 1.
        skill: the skill it belongs to, as the catalogue of that version names it.
        options: the value of each option of the skill.
        prompt: what was asked.
        answer: the right answer.

    Raises:
        LessonProblem: a field is not valid.

    Example:
        >>> PrintedTask(1, 1, "time.read_hour", {}, "What time does the clock show?", "4:00").answer
        '4:00'
    """

    number: int
    round: int
    skill: str
    options: dict[str, Any]
    prompt: str
    answer: str

    def __post_init__(self) -> None:
        with at("number"):
            check_whole(self.number, 1, MOST_ROUNDS * MOST_TASKS)
        with at("round"):
            check_whole(self.round, 1, MOST_ROUNDS)
        with at("options"):
            check_table(self.options)
        with at("prompt"):
            check_text(self.prompt, longest=LONGEST_PROMPT)
        for name in ("skill", "answer"):
            with at(name):
                check_text(getattr(self, name))

    @classmethod
    def from_data(cls, data: object) -> Self:
        """Return a task from its data in a file.

        Raises:
            LessonProblem: the data are no task of a sheet.

        Example:
            >>> PrintedTask.from_data({"number": 1})
            Traceback (most recent call last):
            manipulatives.lessons.problem.LessonProblem: the field 'round' is missing; add it.
        """
        names = tuple(cls.__dataclass_fields__)
        return cls(**check_fields(data, allowed=names, needed=names))


@dataclass(frozen=True)
class PrintedSheet:
    """What was printed.

    Attributes:
        code: the code at the foot of the sheet.
        kit: the version of the kit that made it.
        kind: "pupil", "key" or "steps".
        title: of the lesson.
        tasks: the tasks in order.

    Raises:
        LessonProblem: a field is not valid.

    Example:
        >>> PrintedSheet("7-A-KXT-0.1.0", "0.1.0", "pupil", "Monday", ()).tasks
        ()
    """

    code: str
    kit: str
    kind: str
    title: str
    tasks: tuple[PrintedTask, ...]

    def __post_init__(self) -> None:
        with at("code"):
            read_code(self.code)
        with at("kind"):
            check_one_of(self.kind, KINDS)
        for name in ("kit", "title"):
            with at(name):
                check_text(getattr(self, name))

    def to_json(self) -> bytes:
        """Return the file that is stored in the PDF."""
        return with_checksum({"format": FORMAT, "version": VERSION, **asdict(self)})

    @classmethod
    def from_data(cls, data: object) -> Self:
        """Return a sheet from its data in a file.

        Raises:
            LessonProblem: the data are no sheet, or one of a later version of the format.

        Example:
            >>> PrintedSheet.from_data({"format": "another"})
            Traceback (most recent call last):
            manipulatives.lessons.problem.LessonProblem: format: 'another' is not allowed; ...
        """
        if not isinstance(data, dict):
            raise LessonProblem(f"{quoted(data)} is no table of fields", remedy=_REMEDY)
        with at("format"):
            check_one_of(data.get("format"), (FORMAT,))
        with at("version"):
            check_whole(data.get("version"), 1, VERSION)
        rest = {name: value for name, value in data.items() if name != "sha256"}
        if data.get("sha256") != _checksum(rest):
            raise LessonProblem(DAMAGED, remedy=_REMEDY)
        names = tuple(cls.__dataclass_fields__)
        fields = check_fields(rest, allowed=("format", "version", *names), needed=names)
        with at("tasks"):
            given = fields["tasks"]
            if not isinstance(given, list) or len(given) > MOST_ROUNDS * MOST_TASKS:
                raise LessonProblem(f"{quoted(given)} is no list of tasks", remedy=_REMEDY)
        tasks = []
        for place, one in enumerate(given, start=1):
            with at(f"task {place}"):
                tasks.append(PrintedTask.from_data(one))
        return cls(**{**{name: fields[name] for name in names}, "tasks": tuple(tasks)})


def with_checksum(data: dict[str, Any]) -> bytes:
    """Return the bytes of a file with its checksum, because many damaged PDFs can still be read.

    Args:
        data: the fields of the file.

    Example:
        >>> with_checksum({"version": 1})[:25]
        b'{"sha256": "c3aa9744214ca'
    """
    return _json({**data, "sha256": _checksum(data)})


def printed_sheet(
    lesson: Lesson, rounds: Iterable[RoundTasks], *, kind: str, version: str
) -> PrintedSheet:
    """Return what is printed of a lesson.

    Args:
        lesson: with nothing left unset.
        rounds: its rounds with their tasks.
        kind: "pupil", "key" or "steps".
        version: "A", "B" or "C".
    """
    tasks: list[PrintedTask] = []
    for place, each in enumerate(rounds, start=1):
        for at_task, task in enumerate(each.tasks):
            options = options_at(each.round.skill, each.round.options, at_task)
            prompt = " ".join((task.prompt, *task.parts))
            number = len(tasks) + 1
            tasks.append(PrintedTask(number, place, task.skill, {**options}, prompt, task.answer))
    code = str(code_of(lesson, version))
    return PrintedSheet(code, kit_version(), kind, lesson.title, tuple(tasks))


def printed_of(path: str | Path) -> PrintedSheet:
    """Return what was printed on a sheet, from its PDF.

    Args:
        path: of a sheet or a key that the kit made.

    Raises:
        LessonProblem: the file cannot be read, or holds no record of what was printed.

    Example:
        >>> printed_of("nowhere.pdf")
        Traceback (most recent call last):
        manipulatives.lessons.problem.LessonProblem: nowhere.pdf: it cannot be read ...
    """
    with in_file(str(path)):
        return PrintedSheet.from_data(_json_of(_attachment_of(_bytes_of(Path(path)))))


def _json(data: dict[str, Any]) -> bytes:
    return json.dumps(data, ensure_ascii=False, sort_keys=True).encode("utf-8", "surrogatepass")


def _checksum(data: dict[str, Any]) -> str:
    return hashlib.sha256(_json(data)).hexdigest()


def _bytes_of(file: Path) -> bytes:
    try:
        with file.open("rb") as opened:
            content = opened.read(LARGEST_PDF + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name is none"
        raise LessonProblem(f"it cannot be read ({reason})", remedy=_REMEDY) from None
    if len(content) > LARGEST_PDF:
        raise LessonProblem("it is too large for a sheet", remedy=_REMEDY)
    return content


def _attachment_of(content: bytes) -> bytes:
    import pypdf  # noqa: PLC0415 - only reading a sheet needs it

    try:
        found = pypdf.PdfReader(io.BytesIO(content)).attachments.get(ATTACHMENT, [])
        [attachment] = found or [None]
    except Exception:  # noqa: BLE001 - for a damaged PDF its reader may raise anything
        raise LessonProblem("this is no PDF that can be read", remedy=_REMEDY) from None
    if attachment is None:
        raise LessonProblem("it does not say what was printed", remedy=_REMEDY)
    if len(attachment) > LARGEST_ATTACHMENT:
        raise LessonProblem("what it says was printed is too long", remedy=_REMEDY)
    return attachment


def _json_of(attachment: bytes) -> object:
    try:
        return json.loads(attachment.decode("utf-8"))
    except (ValueError, RecursionError):
        raise LessonProblem(DAMAGED, remedy=_REMEDY) from None
