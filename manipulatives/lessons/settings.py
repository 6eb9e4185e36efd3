"""Class settings: what holds for every lesson of a folder unless the lesson says otherwise."""

from __future__ import annotations

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
    """What holds for a class.

    Attributes:
        vocabulary: "us" or "uk".
        currency: such as "usd", or a table with coins of your own.
        paper: "letter" or "a4".
        method: how written sums are worked: "counting on", "known facts", "bridging ten",
            "expanded columns" or "number line jumps".
        timer: of a round: "off", "hidden" or "shown". It is off unless the teacher turns it on.
        count_aloud: by which number the class counts while the board is wiped, 1 to 100;
            0 for not at all.
        id: by which results and sessions say that they are of this class, such as "owls-2026";
            none without one.

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
    """Return the settings that class.toml in a folder makes; without one, the usual ones.

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


def settled(lesson: Lesson, settings: ClassSettings) -> Lesson:
    """Return the lesson with nothing left unset, except a date that it has none of.

    What the lesson leaves unset comes from the class settings, and so does the count-aloud of its
    rounds; what else a round leaves unset (title, number of tasks, seconds) comes from its skill.
    Options that are unset keep what is usual.

    Example:
        >>> settled(Lesson("Monday", seed=7), ClassSettings(vocabulary="uk")).vocabulary
        'uk'
    """
    unset = {name: getattr(settings, name) for name in OF_LESSONS if getattr(lesson, name) is None}
    rounds = tuple(_settled_round(one, settings) for one in lesson.rounds)
    return replace(lesson, rounds=rounds, **unset)


def _settled_round(one: Round, settings: ClassSettings) -> Round:
    skill = skill_called(one.skill)
    usual: dict[str, Any] = {
        "title": skill.name,
        "tasks": skill.tasks,
        "seconds": skill.seconds,
        "count_aloud": settings.count_aloud,
    }
    return replace(
        one, **{name: value for name, value in usual.items() if getattr(one, name) is None}
    )
