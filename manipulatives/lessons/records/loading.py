"""What every record file has in common: plain JSON with a format, a version and its origin.

A file may come from anyone, so everything in it is checked before it is used.
"""

from __future__ import annotations

import json
from datetime import date
from typing import Any

from manipulatives.lessons.checks import check_fields, check_table, check_text
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.records.origin import Origin
from manipulatives.lessons.tasks.predicates import check_predicate

VERSION = 2
"""The version that the kit writes. It reads version 1 too."""

LARGEST_FILE = 2_000_000
"""Letters of the longest file that is read."""

LONGEST_PROMPT = 200
MOST_TASKS = 1_000
ORIGIN = ("id", "revision", "kit", "class", "lesson")


def load(text: str, *, file_format: str, what: str, maker: str) -> tuple[int, dict[str, Any]]:
    """Return the version of a record file and its fields.

    Args:
        text: of the file.
        file_format: that it has to be of.
        what: it is called in a sentence, such as "results file".
        maker: who saves such files, such as "a page for pupils".

    Raises:
        LessonProblem: it is no such file.

    Example:
        >>> text = '{"format": "a list", "version": 1}'
        >>> load(text, file_format="a list", what="list", maker="a page")
        (1, {})
    """
    if len(text) > LARGEST_FILE:
        raise LessonProblem(
            f"it is far too long for a {what}", remedy="take a file that a page saved"
        )
    try:
        data = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise LessonProblem(
            f"it is no {what}, or only a part of one", remedy="save or copy it once more"
        ) from error
    if not isinstance(data, dict) or data.get("format") != file_format:
        raise LessonProblem(f"it is no {what}", remedy=f"take a file that {maker} saved")
    version = data.get("version")
    with at("version"):
        if type(version) is not int or not 1 <= version <= VERSION:
            raise LessonProblem(
                f"{quoted(version)} is not known here",
                remedy=f"use a kit that knows it; this one knows versions 1 to {VERSION}",
            )
    return version, {
        name: value for name, value in data.items() if name not in ("format", "version")
    }


def split_origin(version: int, fields: dict[str, Any]) -> tuple[Origin | None, dict[str, Any]]:
    """Return where a record comes from, which version 1 does not say, and its other fields.

    Raises:
        LessonProblem: a field of the origin is missing or not as it has to be.

    Example:
        >>> split_origin(1, {"title": "Market day"})
        (None, {'title': 'Market day'})
    """
    if version == 1:
        return None, fields
    given = {name: fields[name] for name in ORIGIN if name in fields}
    check_fields(given, allowed=ORIGIN, needed=ORIGIN)
    rest = {name: value for name, value in fields.items() if name not in ORIGIN}
    return Origin(*(given[name] for name in ORIGIN)), rest


def check_list(value: object, *, longest: int) -> list[Any]:
    """Return a list that is not too long.

    Raises:
        LessonProblem: it is something else.

    Example:
        >>> check_list([4, 5], longest=2)
        [4, 5]
    """
    if not isinstance(value, list) or len(value) > longest:
        raise LessonProblem(
            f"{quoted(value)} is no list of at most {longest}", remedy=f"give at most {longest}"
        )
    return value


def check_asked(value: object) -> dict[str, Any]:
    """Return what a task asked beyond its prompt: how it began, what solves it, and its answer.

    Raises:
        LessonProblem: it is something else.

    Example:
        >>> check_asked({"start": {}, "goal": ["=", "answer", "9:25"], "answer": "9:25"})["answer"]
        '9:25'
    """
    names = ("start", "goal", "answer")
    asked = check_fields(value, allowed=names, needed=names)
    with at("start"):
        check_table(asked["start"])
    with at("goal"):
        check_predicate(asked["goal"])
    with at("answer"):
        check_text(asked["answer"], longest=LONGEST_PROMPT)
    return asked


def check_date(value: object) -> str:
    """Return a day, such as "2026-11-25".

    Raises:
        LessonProblem: it is something else.

    Example:
        >>> check_date("2026-11-25")
        '2026-11-25'
    """
    try:
        # The basic forms of ISO 8601 would be taken as well.
        if isinstance(value, str) and date.fromisoformat(value).isoformat() == value:
            return value
    except ValueError:
        pass
    raise LessonProblem(f"{quoted(value)} is no day", remedy='write it as "2026-11-25"')
