"""What a pupil handed in: the results file of a page for pupils, read and checked.

The file is plain JSON. It holds a code that the teacher gave, or none, and no name. It may come
from anyone, so everything in it is checked before it is used.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import date
from typing import Any, Self

from manipulatives.lessons.checks import (
    check_fields,
    check_one_of,
    check_seed,
    check_table,
    check_text,
    check_whole,
)
from manipulatives.lessons.problem import LessonProblem, at, quoted

FORMAT = "manipulatives results"
VERSION = 1
LONGEST_CODE = 8
LONGEST_PROMPT = 200
MOST_TASKS = 1_000
MOST_TRIES = 1_000
LARGEST_FILE = 1_000_000
_FACTS = (str, int, bool, type(None))


@dataclass(frozen=True)
class Result:
    """One question that a pupil tried.

    Attributes:
        skill: the skill it belongs to, as the catalogue names it.
        prompt: what was asked.
        given: every answer in order: a text, or, where something was made, those facts of the
            manipulative that the goal speaks of.
        tries: how many answers that were.
        right: whether the last one was right.
        rule: the last mistake that was foreseen, or None. It is a possibility and no diagnosis.
        hints: how many hints were taken.
        twin: whether it was asked at the end of a round, instead of one that was not solved.

    Raises:
        LessonProblem: a field is not as said here.

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

    @classmethod
    def from_data(cls, data: object) -> Self:
        """Return the result that stands in a file.

        Raises:
            LessonProblem: the data are no result.

        Example:
            >>> Result.from_data({"skill": "time.read_hour"})
            Traceback (most recent call last):
            manipulatives.lessons.problem.LessonProblem: the field 'prompt' is missing; add it.
        """
        names = tuple(cls.__dataclass_fields__)
        fields = check_fields(data, allowed=names, needed=names)
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
        code: which the teacher gave the pupil, or None.
        date: the day on which the results were taken, as "2026-11-25".
        tasks: the questions that were tried, in order.

    Raises:
        LessonProblem: a field is not as said here.

    Example:
        >>> Results("Market day", 7, "K7", "2026-11-25").tasks
        ()
    """

    title: str
    seed: int
    code: str | None
    date: str
    tasks: tuple[Result, ...] = ()

    def __post_init__(self) -> None:
        with at("title"):
            check_text(self.title)
        with at("seed"):
            check_seed(self.seed)
        with at("code"):
            if self.code is not None:
                _check_code(self.code)
        with at("date"):
            _check_date(self.date)


def read_results(text: str) -> Results:
    """Return what stands in a results file.

    Args:
        text: of the file, as a page for pupils saves it.

    Raises:
        LessonProblem: it is no such file, or something in it is not as it has to be; one sentence
            with the place and what to do.

    Example:
        >>> read_results(
        ...     '{"format": "manipulatives results", "version": 1, "title": "Market day",'
        ...     ' "seed": 7, "code": "K7", "date": "2026-11-25", "tasks": []}'
        ... ).code
        'K7'
    """
    if len(text) > LARGEST_FILE:
        raise LessonProblem(
            "it is far too long for a results file", remedy="take a file that a page saved"
        )
    try:
        data = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise LessonProblem(
            "it is no results file, or only a part of one",
            remedy="save or copy the results once more",
        ) from error
    if not isinstance(data, dict) or data.get("format") != FORMAT:
        raise LessonProblem(
            "it is no results file", remedy="take a file that a page for pupils saved"
        )
    with at("version"):
        if type(data.get("version")) is not int or data["version"] != VERSION:
            raise LessonProblem(
                f"{quoted(data.get('version'))} is not known here",
                remedy=f"use a kit that knows it; this one knows version {VERSION}",
            )
    names = ("format", "version", "title", "seed", "code", "date", "tasks")
    fields = check_fields(data, allowed=names, needed=names)
    given = fields["tasks"]
    with at("tasks"):
        if not isinstance(given, list) or len(given) > MOST_TASKS:
            raise LessonProblem(
                "there is no list of tasks", remedy=f"give a list of at most {MOST_TASKS}"
            )
    tasks = []
    for number, one in enumerate(given, start=1):
        with at(f"task {number}"):
            tasks.append(Result.from_data(one))
    return Results(fields["title"], fields["seed"], fields["code"], fields["date"], tuple(tasks))


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


def _check_date(day: object) -> None:
    try:
        # The basic forms of ISO 8601 would be taken as well.
        fine = isinstance(day, str) and date.fromisoformat(day).isoformat() == day
    except ValueError:
        fine = False
    if not fine:
        raise LessonProblem(f"{quoted(day)} is no day", remedy='write it as "2026-11-25"')
