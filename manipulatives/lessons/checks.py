"""Checks of values in lessons, whether typed in Python or read from a file."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from difflib import get_close_matches
from typing import TYPE_CHECKING, Any, TypeVar

from manipulatives.lessons.problem import LessonProblem, quoted

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

T = TypeVar("T")

LONGEST_TITLE = 80
LONGEST_SENTENCE = 200
PUPIL_WORDS = 10
LARGEST_SEED = 999_999_999

_SENTENCE_END = re.compile(r"(?<=[.?!]) ")


def check_text(value: object, *, longest: int = LONGEST_TITLE) -> str:
    """Check a line of text that can be shown as it is, and return it.

    Raises:
        LessonProblem: it is no text, is empty, too long, or has line breaks or control characters.

    Example:
        >>> check_text("Monday at the bell tower")
        'Monday at the bell tower'
    """
    if not isinstance(value, str):
        raise LessonProblem(
            f"{quoted(value)} is not text", remedy="put words between quotation marks"
        )
    if not value.strip() or len(value) > longest:
        raise LessonProblem(
            f"{quoted(value)} has {len(value)} letters", remedy=f"write 1 to {longest} letters"
        )
    # Text copied from elsewhere often holds non-breaking spaces.
    if not value.replace("\u00a0", " ").isprintable():
        raise LessonProblem(
            f"{quoted(value)} has a line break or another character that cannot be shown",
            remedy="write one plain line",
        )
    return value


def check_whole(value: object, low: int, high: int) -> int:
    """Check a whole number from low to high and return it; true, 1.0 and "1" are not allowed.

    Raises:
        LessonProblem: it is not valid.

    Example:
        >>> check_whole(5, 1, 40)
        5
    """
    if type(value) is int and low <= value <= high:
        return value
    raise LessonProblem(
        f"{quoted(value)} is not allowed", remedy=f"give a whole number from {low} to {high}"
    )


def check_seed(value: object) -> int:
    """Check a seed, a whole number from 0 to 999 999 999, and return it.

    Raises:
        LessonProblem: it is not valid.

    Example:
        >>> check_seed(90213)
        90213
    """
    return check_whole(value, 0, LARGEST_SEED)


def check_words(value: object, *, most: int = PUPIL_WORDS) -> str:
    """Check a line of text for pupils, with at most ten words in a sentence, and return it.

    Raises:
        LessonProblem: it is no line of text, or a sentence is longer.

    Example:
        >>> check_words("What time does the bell tower show?")
        'What time does the bell tower show?'
    """
    text = check_text(value, longest=LONGEST_SENTENCE)
    for sentence in _SENTENCE_END.split(text):
        count = len(sentence.split())
        if count > most:
            raise LessonProblem(
                f"{quoted(sentence)} has {count} words", remedy=f"say it in {most} words or fewer"
            )
    return text


def check_plain(value: object) -> object:
    """Check data that JSON can hold and return it: numbers, text, true, false, none, lists, tables.

    Raises:
        LessonProblem: there is something else in it.

    Example:
        >>> check_plain({"dial": {"hour": 275}, "snap": 5})
        {'dial': {'hour': 275}, 'snap': 5}
    """
    match value:
        case None | bool() | str() | int():
            return value
        case float() if math.isfinite(value):
            return value
        case list():
            return [check_plain(item) for item in value]
        case dict() if all(isinstance(name, str) for name in value):
            return {name: check_plain(item) for name, item in value.items()}
    raise LessonProblem(
        f"{quoted(value)} is no plain data",
        remedy="use numbers, text, true, false, none, lists and tables with text for names",
    )


def check_table(value: object) -> dict[str, Any]:
    """Check a table of plain data, with text for names, and return it.

    Raises:
        LessonProblem: it is not valid.

    Example:
        >>> check_table({"snap": 5})
        {'snap': 5}
    """
    if not isinstance(value, dict):
        raise LessonProblem(f"{quoted(value)} is no table", remedy="give names with values")
    table: dict[str, Any] = check_plain(value)  # type: ignore[assignment]  # a dict stays one
    return table


def check_one_of(value: object, allowed: Sequence[T]) -> T:
    """Check that a value is one of those allowed, of the same type, and return it.

    Raises:
        LessonProblem: it is none of them.

    Example:
        >>> check_one_of("uk", ("us", "uk"))
        'uk'
    """
    for one in allowed:
        if type(value) is type(one) and value == one:
            return one
    guess = nearest(value, [one for one in allowed if isinstance(one, str)])
    raise LessonProblem(
        f"{quoted(value)} is not allowed{guess}",
        remedy=f"choose {' or '.join(_as_written(one) for one in allowed)}",
    )


def check_fields(data: object, *, allowed: Iterable[str], needed: Iterable[str]) -> dict[str, Any]:
    """Check that a table has all needed fields and no unknown ones, and return it.

    Raises:
        LessonProblem: it is no table, a field is unknown, or one is missing.

    Example:
        >>> check_fields({"title": "Monday"}, allowed=["title", "date"], needed=["title"])
        {'title': 'Monday'}
    """
    names = list(allowed)
    if not isinstance(data, Mapping):
        raise LessonProblem(
            f"{quoted(data)} is no table of fields", remedy=f"give {' and '.join(needed)}"
        )
    for name in data:
        if name not in names:
            raise LessonProblem(
                f"there is no field {quoted(name)}{nearest(name, names)}",
                remedy=f"use only {', '.join(names)}" if names else "leave it out",
            )
    for name in needed:
        if name not in data:
            raise LessonProblem(f"the field {name!r} is missing", remedy="add it")
    return dict(data)


def nearest(given: object, known: Sequence[str]) -> str:
    """Return " (did you mean …?)" when a known name is spelt similarly, or "".

    Example:
        >>> nearest("taks", ["title", "tasks"])
        " (did you mean 'tasks'?)"
    """
    close = get_close_matches(given, known, n=1) if isinstance(given, str) else []
    return f" (did you mean {close[0]!r}?)" if close else ""


def _as_written(value: object) -> str:
    return f'"{value}"' if isinstance(value, str) else str(value)
