"""The session file, which a teacher saves from the board: how a lesson went in class.

The file is plain JSON and names no child.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Self

from manipulatives.lessons.checks import (
    check_fields,
    check_one_of,
    check_seed,
    check_table,
    check_text,
    check_whole,
)
from manipulatives.lessons.lesson import LONGEST, MOST_ROUNDS
from manipulatives.lessons.lesson import MOST_TASKS as MOST_TASKS_OF_A_ROUND
from manipulatives.lessons.problem import at
from manipulatives.lessons.records.loading import (
    LONGEST_PROMPT,
    VERSION,
    RecordKind,
    check_asked,
    check_date,
    fields_of,
    read_items,
    read_record,
)

if TYPE_CHECKING:
    from manipulatives.lessons.records.origin import Origin

KIND = RecordKind(
    "manipulatives session",
    what="session file",
    saved_by="a board",
    names=("title", "seed", "date", "rounds"),
    items="rounds",
    most=MOST_ROUNDS,
)
MARKS = ("most", "half", "few")
"""How many of the class were right, as the teacher saw it."""

LONGEST_USED = 7 * 86_400
"""Most seconds of a round: a page can stay open for days."""

_SINCE_VERSION_2 = ("round", "options", "tasks")


@dataclass(frozen=True)
class TaughtTask:
    """One question that was asked on the board.

    Attributes:
        prompt: what was asked.
        asked: `start`, `goal` and `answer` of the task.

    Raises:
        LessonProblem: a field is not valid.

    Example:
        >>> asked = {"start": {}, "goal": ["=", "answer", "4:00"], "answer": "4:00"}
        >>> TaughtTask("What time is it?", asked).asked["answer"]
        '4:00'
    """

    prompt: str
    asked: dict[str, Any] = field(hash=False)

    def __post_init__(self) -> None:
        with at("prompt"):
            check_text(self.prompt, longest=LONGEST_PROMPT)
        with at("asked"):
            check_asked(self.asked)

    @classmethod
    def from_data(cls, data: object) -> Self:
        """Return a task from its data in a file.

        Raises:
            LessonProblem: the data are no such task.

        Example:
            >>> TaughtTask.from_data({"prompt": "What time is it?"})
            Traceback (most recent call last):
            manipulatives.lessons.problem.LessonProblem: the field 'asked' is missing; add it.
        """
        names = tuple(cls.__dataclass_fields__)
        return cls(**check_fields(data, allowed=names, needed=names))


@dataclass(frozen=True)
class TaughtRound:
    """One round as it was taught.

    Attributes:
        title: of the round.
        skill: as the catalogue names it, or "" when unknown.
        seed: of the round, or None when unknown.
        planned: seconds, or None when unknown.
        used: seconds.
        mark: one of `MARKS`, or None.
        round: its number in the lesson, from 1; None in version 1.
        options: of the skill in this round; None in version 1.
        tasks: what was asked; none in version 1.

    Raises:
        LessonProblem: a field is not valid.

    Example:
        >>> TaughtRound("Half past", "time.read_half", 4351, 120, 135, "half").mark
        'half'
    """

    title: str
    skill: str
    seed: int | None
    planned: int | None
    used: int
    mark: str | None
    round: int | None = None
    options: dict[str, Any] | None = field(default=None, hash=False)
    tasks: tuple[TaughtTask, ...] = ()

    def __post_init__(self) -> None:
        with at("title"):
            check_text(self.title)
        with at("skill"):
            if self.skill != "":
                check_text(self.skill)
        with at("seed"):
            if self.seed is not None:
                check_seed(self.seed)
        with at("planned"):
            if self.planned is not None:
                check_whole(self.planned, 0, LONGEST)
        with at("used"):
            check_whole(self.used, 0, LONGEST_USED)
        with at("mark"):
            if self.mark is not None:
                check_one_of(self.mark, MARKS)
        with at("round"):
            if self.round is not None:
                check_whole(self.round, 1, MOST_ROUNDS)
        with at("options"):
            if self.options is not None:
                check_table(self.options)

    @classmethod
    def from_data(cls, data: object, version: int = VERSION) -> Self:
        """Return a round from its data in a file of this version.

        Raises:
            LessonProblem: the data are no such round.

        Example:
            >>> TaughtRound.from_data({"title": "Half past"})
            Traceback (most recent call last):
            manipulatives.lessons.problem.LessonProblem: the field 'skill' is missing; add it.
        """
        fields = fields_of(
            data,
            names=tuple(cls.__dataclass_fields__),
            since_2=_SINCE_VERSION_2,
            version=version,
        )
        tasks = read_items(
            "tasks", fields.pop("tasks", []), TaughtTask.from_data, longest=MOST_TASKS_OF_A_ROUND
        )
        return cls(**fields, tasks=tasks)


@dataclass(frozen=True)
class Session:
    """One lesson as it was taught.

    Attributes:
        title: of the lesson.
        seed: of the lesson.
        date: the day on which it began, as "2026-11-25", or None when it did not begin.
        rounds: of the lesson, in order.
        origin: of the record; None in version 1.

    Raises:
        LessonProblem: a field is not valid.

    Example:
        >>> Session("Market clock", 4350, "2026-11-25").rounds
        ()
    """

    title: str
    seed: int
    date: str | None
    rounds: tuple[TaughtRound, ...] = ()
    origin: Origin | None = None

    def __post_init__(self) -> None:
        with at("title"):
            check_text(self.title)
        with at("seed"):
            check_seed(self.seed)
        with at("date"):
            if self.date is not None:
                check_date(self.date)


def read_session(text: str) -> Session:
    """Return the session in a file.

    Args:
        text: of the file, as a board saves it.

    Raises:
        LessonProblem: it is no session file, or a value in it is not valid; with its place.

    Example:
        >>> read_session(
        ...     '{"format": "manipulatives session", "version": 1, "title": "Market clock",'
        ...     ' "seed": 4350, "date": null, "rounds": []}'
        ... ).title
        'Market clock'
    """
    origin, fields = read_record(text, KIND, TaughtRound.from_data)
    return Session(**fields, origin=origin)
