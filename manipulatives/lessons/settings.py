"""Class settings: the defaults of all lessons in a folder."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from manipulatives.lessons.catalogue.skills import skill_called
from manipulatives.lessons.checks import check_fields, check_one_of, check_whole
from manipulatives.lessons.currency import Money, check_money
from manipulatives.lessons.lesson import LARGEST_COUNT, SETTINGS, Lesson, Round
from manipulatives.lessons.problem import at, in_file
from manipulatives.lessons.records.origin import check_class_id
from manipulatives.lessons.strands.sums.columns.methods import METHODS
from manipulatives.lessons.toml import read_toml

FILE = "class.toml"

TIMERS = ("off", "hidden", "shown")
OF_LESSONS = (*SETTINGS, "currency")
ALLOWED = {**SETTINGS, "method": METHODS, "timer": TIMERS}


@dataclass(frozen=True)
class ClassSettings:
    """The settings of a class.

    Attributes:
        vocabulary: "us" or "uk".
        currency: such as "usd", or a table with coins of your own.
        paper: "letter" or "a4".
        method: how written sums are worked: "counting on", "known facts", "bridging ten",
            "expanded columns" or "number line jumps".
        timer: of a round: "off", "hidden" or "shown". It is off unless the teacher turns it on.
        count_aloud: the number by which the class counts while the board is wiped, 1 to 100;
            0 for no counting.
        id: identifies the class in results and sessions, such as "owls-2026"; None for none.

    Raises:
        LessonProblem: a value is not allowed.

    Example:
        >>> ClassSettings(vocabulary="uk").paper
        'letter'
    """

    vocabulary: str = "us"
    currency: Money = "usd"
    paper: str = "letter"
    method: str = METHODS[0]
    timer: str = "off"
    count_aloud: int = 0
    id: str | None = None

    def __post_init__(self) -> None:
        for name, allowed in ALLOWED.items():
            with at(name):
                check_one_of(getattr(self, name), allowed)
        with at("currency"):
            object.__setattr__(self, "currency", check_money(self.currency))
        with at("count_aloud"):
            check_whole(self.count_aloud, 0, LARGEST_COUNT)
        with at("id"):
            if self.id is not None:
                check_class_id(self.id)


FIELDS = tuple(ClassSettings.__dataclass_fields__)


def class_settings(folder: str | Path) -> ClassSettings:
    """Return the settings in class.toml of a folder, or the defaults without such a file.

    Raises:
        LessonProblem: class.toml cannot be read, or has an unknown field or value.

    Example:
        >>> class_settings(".").vocabulary
        'us'
    """
    path = Path(folder) / FILE
    if not path.exists():
        return ClassSettings()
    with in_file(str(path)):
        return ClassSettings(**check_fields(read_toml(path), allowed=FIELDS, needed=()))


def with_class(given: Mapping[str, Any], settings: ClassSettings) -> dict[str, Any]:
    """Return values by name, with those of the class in place of None.

    Example:
        >>> with_class({"timer": None, "paper": "a4"}, ClassSettings())
        {'timer': 'off', 'paper': 'a4'}
    """
    return {
        name: getattr(settings, name) if value is None else value for name, value in given.items()
    }


def settled(lesson: Lesson, settings: ClassSettings) -> Lesson:
    """Return the lesson with nothing left unset but its date.

    Unset values of the lesson, and the count-aloud of its rounds, come from the class settings;
    other unset values of a round (title, number of tasks, seconds) come from its skill. Options
    that are unset have their defaults.

    Example:
        >>> settled(Lesson("Monday", seed=7), ClassSettings(vocabulary="uk")).vocabulary
        'uk'
    """
    of_lesson = with_class({name: getattr(lesson, name) for name in OF_LESSONS}, settings)
    rounds = tuple(_settled_round(one, settings) for one in lesson.rounds)
    return replace(lesson, rounds=rounds, **of_lesson)


def _settled_round(one: Round, settings: ClassSettings) -> Round:
    skill = skill_called(one.skill)
    usual: dict[str, Any] = {
        "title": skill.name,
        "tasks": skill.tasks,
        "seconds": skill.seconds,
    }
    unset = {name: value for name, value in usual.items() if getattr(one, name) is None}
    return replace(one, **unset, **with_class({"count_aloud": one.count_aloud}, settings))
