"""The results file of a page for pupils, read and checked.

The file is plain JSON. It holds a code that the teacher gave, or none, and no name.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Self

from manipulatives.lessons.checks import (
    check_one_of,
    check_seed,
    check_table,
    check_text,
    check_whole,
)
from manipulatives.lessons.lesson import MOST_ROUNDS
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.records.loading import (
    LONGEST_PROMPT,
    MOST_TASKS,
    VERSION,
    RecordKind,
    check_asked,
    check_date,
    fields_of,
    read_record,
)

if TYPE_CHECKING:
    from manipulatives.lessons.records.origin import Origin

KIND = RecordKind(
    "manipulatives results",
    what="results file",
    saved_by="a page for pupils",
    names=("title", "seed", "code", "date", "tasks"),
    items="tasks",
    most=MOST_TASKS,
)
LONGEST_CODE = 8
MOST_TRIES = 1_000
_FACTS = (str, int, bool, type(None))
_SINCE_VERSION_2 = ("round", "options", "asked")


@dataclass(frozen=True)
class Result:
    """One question that a pupil tried.

    Attributes:
        skill: the skill it belongs to, as the catalogue names it.
        prompt: what was asked.
        given: every answer in order: a text, or for a manipulative the facts that the goal uses.
        tries: the number of answers.
        right: whether the last one was right.
        rule: the last foreseen mistake that an answer matched, or None. It is a possibility and no
            diagnosis.
        hints: how many hints were taken.
        twin: whether it was asked at the end of a round, in place of one that was not solved.
        round: the number of its round in the lesson, from 1; None in version 1.
        options: of the skill in its round; None in version 1.
        asked: `start`, `goal` and `answer` of the task; None in version 1.

    Raises:
        LessonProblem: a field is not valid.

    Example:
        >>> Result("time.read_hour", "What time is it?", ("4:00",), 1, True).right
        True
    """

    skill: str
    prompt: str
    given: tuple[str | dict[str, Any], ...]
    tries: int
    right: bool
    rule: str | None = None
    hints: int = 0
    twin: bool = False
    round: int | None = None
    options: dict[str, Any] | None = field(default=None, hash=False)
    asked: dict[str, Any] | None = field(default=None, hash=False)

    def __post_init__(self) -> None:
        with at("skill"):
            check_text(self.skill)
        with at("prompt"):
            check_text(self.prompt, longest=LONGEST_PROMPT)
        with at("tries"):
            check_whole(self.tries, 0, MOST_TRIES)
        with at("given"):
            if len(self.given) != self.tries:
                raise LessonProblem(
                    f"there are {len(self.given)} answers, but {self.tries} tries",
                    remedy="take the file as the page saved it",
                )
            for answer in self.given:
                _check_given(answer)
        for name in ("right", "twin"):
            with at(name):
                check_one_of(getattr(self, name), (True, False))
        with at("rule"):
            if self.rule is not None:
                check_text(self.rule)
        with at("hints"):
            check_whole(self.hints, 0, MOST_TRIES)
        if self.round is not None:
            with at("round"):
                check_whole(self.round, 1, MOST_ROUNDS)
        if self.options is not None:
            with at("options"):
                check_table(self.options)
        if self.asked is not None:
            with at("asked"):
                check_asked(self.asked)

    @classmethod
    def from_data(cls, data: object, version: int = VERSION) -> Self:
        """Return a result from its data in a file of this version.

        Raises:
            LessonProblem: the data are no result.

        Example:
            >>> Result.from_data({"skill": "time.read_hour"})
            Traceback (most recent call last):
            manipulatives.lessons.problem.LessonProblem: the field 'prompt' is missing; add it.
        """
        fields = fields_of(
            data,
            names=tuple(cls.__dataclass_fields__),
            since_2=_SINCE_VERSION_2,
            version=version,
        )
        with at("given"):
            if not isinstance(fields["given"], list):
                raise LessonProblem(
                    f"{quoted(fields['given'])} is no list", remedy="give a list of answers"
                )
        return cls(**{**fields, "given": tuple(fields["given"])})


@dataclass(frozen=True)
class Results:
    """What one pupil did with one lesson.

    Attributes:
        title: of the lesson.
        seed: of the lesson.
        code: of the pupil, given by the teacher, or None.
        date: the day on which the results were taken, as "2026-11-25".
        tasks: the questions that were tried, in order.
        origin: of the record; None in version 1.

    Raises:
        LessonProblem: a field is not valid.

    Example:
        >>> Results("Market day", 7, "K7", "2026-11-25").tasks
        ()
    """

    title: str
    seed: int
    code: str | None
    date: str
    tasks: tuple[Result, ...] = ()
    origin: Origin | None = None

    def __post_init__(self) -> None:
        with at("title"):
            check_text(self.title)
        with at("seed"):
            check_seed(self.seed)
        with at("code"):
            if self.code is not None:
                _check_code(self.code)
        with at("date"):
            check_date(self.date)


def read_results(text: str) -> Results:
    """Return the results in a file.

    Args:
        text: of the file, as a page for pupils saves it.

    Raises:
        LessonProblem: it is no such file, or a value in it is not valid; one sentence with the
            place and what to do.

    Example:
        >>> read_results(
        ...     '{"format": "manipulatives results", "version": 1, "title": "Market day",'
        ...     ' "seed": 7, "code": "K7", "date": "2026-11-25", "tasks": []}'
        ... ).code
        'K7'
    """
    origin, fields = read_record(text, KIND, Result.from_data)
    return Results(**fields, origin=origin)


def _check_given(answer: object) -> None:
    if isinstance(answer, str):
        check_text(answer, longest=LONGEST_PROMPT)
        return
    for name, value in check_table(answer).items():
        with at(name):
            if not isinstance(value, _FACTS):
                raise LessonProblem(
                    f"{quoted(value)} is no plain fact", remedy="give a number, a text or true"
                )


def _check_code(code: object) -> None:
    if not (isinstance(code, str) and code.isalnum() and len(code) <= LONGEST_CODE):
        raise LessonProblem(
            f"{quoted(code)} is no code", remedy=f"give 1 to {LONGEST_CODE} letters and digits"
        )
