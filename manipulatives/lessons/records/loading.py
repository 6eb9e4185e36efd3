"""What all record files share: plain JSON with a format, a version and an origin.

A file may come from anyone, so everything in it is checked before it is used.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, Any, TypeVar

from manipulatives.lessons.checks import check_fields, check_table, check_text
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.records.origin import Origin
from manipulatives.lessons.tasks.predicates import check_predicate

if TYPE_CHECKING:
    from collections.abc import Callable

T = TypeVar("T")

VERSION = 2
"""The version that the kit writes. It reads version 1 too."""

LARGEST_FILE = 2_000_000
"""Letters of the longest file that is read."""

LONGEST_PROMPT = 200
MOST_TASKS = 1_000
ORIGIN = ("id", "revision", "kit", "class", "lesson")


@dataclass(frozen=True)
class RecordKind:
    """A kind of record files.

    Attributes:
        file_format: the value of their field `format`.
        what: their name in a sentence, such as "results file".
        saved_by: what saves them, such as "a page for pupils".
        names: of all fields that are not in every record file.
        items: the name of the one of them that holds a list.
        most: how many items that list may have.

    Example:
        >>> RecordKind("a list", "list", "a page", ("title", "tasks"), "tasks", 40).what
        'list'
    """

    file_format: str
    what: str
    saved_by: str
    names: tuple[str, ...]
    items: str
    most: int


def load(text: str, kind: RecordKind) -> tuple[int, dict[str, Any]]:
    """Return the version of a record file and its fields.

    Args:
        text: of the file.
        kind: of the file.

    Raises:
        LessonProblem: it is no such file.

    Example:
        >>> kind = RecordKind("a list", "list", "a page", ("tasks",), "tasks", 40)
        >>> load('{"format": "a list", "version": 1}', kind)
        (1, {})
    """
    if len(text) > LARGEST_FILE:
        raise LessonProblem(
            f"it is far too long for a {kind.what}", remedy="take a file that a page saved"
        )
    try:
        data = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise LessonProblem(
            f"it is no {kind.what}, or only a part of one", remedy="save or copy it once more"
        ) from error
    if not isinstance(data, dict) or data.get("format") != kind.file_format:
        raise LessonProblem(
            f"it is no {kind.what}", remedy=f"take a file that {kind.saved_by} saved"
        )
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
    """Return the origin of a record, None in version 1, and its other fields.

    Raises:
        LessonProblem: a field of the origin is missing or not valid.

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


def read_record(
    text: str, kind: RecordKind, read_item: Callable[[object, int], object]
) -> tuple[Origin | None, dict[str, Any]]:
    """Return the origin of a record file and its other fields, with the items of its list read.

    Args:
        text: of the file.
        kind: of the file.
        read_item: converts an item of its list, for the version of the file.

    Raises:
        LessonProblem: it is no such file, a field is missing or unknown, or an item is not valid.

    Example:
        >>> kind = RecordKind("a list", "list", "a page", ("tasks",), "tasks", 40)
        >>> text = '{"format": "a list", "version": 1, "tasks": [4, 5]}'
        >>> read_record(text, kind, lambda item, version: item + version)
        (None, {'tasks': (5, 6)})
    """
    version, data = load(text, kind)
    origin, rest = split_origin(version, data)
    fields = check_fields(rest, allowed=kind.names, needed=kind.names)
    fields[kind.items] = read_items(
        kind.items, fields[kind.items], lambda one: read_item(one, version), longest=kind.most
    )
    return origin, fields


def fields_of(
    data: object, *, names: tuple[str, ...], since_2: tuple[str, ...], version: int
) -> dict[str, Any]:
    """Return the fields of a part of a record file.

    Args:
        data: of that part, from the file.
        names: of all its fields.
        since_2: those that version 1 does not have, and that version 2 must fill.
        version: of the file.

    Raises:
        LessonProblem: a field is missing, unknown or empty.

    Example:
        >>> fields_of({"skill": "a"}, names=("skill", "round"), since_2=("round",), version=1)
        {'skill': 'a'}
    """
    if version == 1:
        names = tuple(name for name in names if name not in since_2)
    fields = check_fields(data, allowed=names, needed=names)
    for name in since_2 if version > 1 else ():
        with at(name):
            if fields[name] is None:
                raise LessonProblem("there is nothing in it", remedy="say what it is")
    return fields


def read_items(
    field: str, value: object, read: Callable[[object], T], *, longest: int
) -> tuple[T, ...]:
    """Read each item of a list in a field.

    Args:
        field: its name in the plural; the place of an item is named with its singular.
        value: the list.
        read: converts an item.
        longest: how many items there may be.

    Raises:
        LessonProblem: it is no such list, or an item cannot be read; with its number.

    Example:
        >>> read_items("tasks", [4, 5], str, longest=2)
        ('4', '5')
    """
    made = []
    with at(field):
        items = check_list(value, longest=longest)
    for number, one in enumerate(items, start=1):
        with at(f"{field.removesuffix('s')} {number}"):
            made.append(read(one))
    return tuple(made)


def check_list(value: object, *, longest: int) -> list[Any]:
    """Check a list of at most this length and return it.

    Raises:
        LessonProblem: it is not valid.

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
    """Check what a task asked beside its prompt, its start, goal and answer, and return it.

    Raises:
        LessonProblem: it is not valid.

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
    """Check a date such as "2026-11-25" and return it.

    Raises:
        LessonProblem: it is not valid.

    Example:
        >>> check_date("2026-11-25")
        '2026-11-25'
    """
    try:
        # `fromisoformat` would accept the basic forms of ISO 8601 too.
        if isinstance(value, str) and date.fromisoformat(value).isoformat() == value:
            return value
    except ValueError:
        pass
    raise LessonProblem(f"{quoted(value)} is no day", remedy='write it as "2026-11-25"')
