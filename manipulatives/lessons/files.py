"""Lesson files in TOML: a header, and a [[rounds]] table for every round."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import tomli_w

from manipulatives.lessons.atomic_write import atomic_write
from manipulatives.lessons.lesson import Lesson
from manipulatives.lessons.problem import in_file
from manipulatives.lessons.toml import read_toml


def read_lesson(path: str | Path) -> Lesson:
    """Return the lesson of a file; a round without a seed gets one.

    Raises:
        LessonProblem: the file cannot be read, or has a value that is not allowed; one sentence
            with the file, the place (line, or round and field), what is allowed and what to do.

    Example:
        >>> write_lesson(Lesson("Monday", seed=7), "monday.toml")
        >>> read_lesson("monday.toml").title
        'Monday'
    """
    with in_file(str(path)):
        return Lesson.from_data(read_toml(Path(path)))


def write_lesson(lesson: Lesson, path: str | Path) -> None:
    """Write a lesson to a file atomically, every round with its seed.

    Raises:
        OSError: the folder is missing, full or not writable.

    Example:
        >>> write_lesson(Lesson("Monday", seed=7), "monday.toml")
    """
    atomic_write(path, lesson_text(lesson))


def lesson_text(lesson: Lesson) -> str:
    """Return the text of a lesson's file; every round with its seed.

    Example:
        >>> print(lesson_text(Lesson("Monday", seed=7)), end="")
        title = "Monday"
        seed = 7
    """
    header = lesson.to_data()
    rounds = header.pop("rounds")
    if lesson.date:
        # TOML has a type for dates.
        header["date"] = lesson.date
    return "\n[[rounds]]\n".join([tomli_w.dumps(header), *map(_round_text, rounds)])


def _round_text(one: dict[str, Any]) -> str:
    """Return a round with its options on one line, as a person would write it."""
    fields = dict(one)
    options, instead = fields.pop("options", {}), fields.pop("instead", [])
    text = tomli_w.dumps(fields)
    if options:
        each = (f"{name} = {_value(value)}" for name, value in options.items())
        text += f"options = {{ {', '.join(each)} }}\n"
    if instead:
        text += f"instead = {_value(instead)}\n"
    return text


def _value(value: object) -> str:
    """Return a value as TOML on one line; `tomli_w` writes lists on several."""
    if isinstance(value, list):
        return f"[{', '.join(map(_value, value))}]"
    return tomli_w.dumps({"a": value}).strip().removeprefix("a = ")
