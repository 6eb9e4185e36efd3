"""A lesson and its rounds, as plain data with a seed."""

from __future__ import annotations

import datetime as dt
from copy import deepcopy
from dataclasses import dataclass, field
from typing import Any, Self

from manipulatives.lessons.catalogue.skill import Option
from manipulatives.lessons.catalogue.skills import check_options, skill_called
from manipulatives.lessons.checks import (
    LARGEST_SEED,
    check_fields,
    check_one_of,
    check_seed,
    check_text,
    check_whole,
)
from manipulatives.lessons.currency import Money, check_money
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.tasks.make import check_count
from manipulatives.lessons.tasks.replacements import Replacement, check_replacements
from manipulatives.maths.money import coins
from manipulatives.maths.vocabulary import VOCABULARIES

CURRENCIES = tuple(coins.CURRENCIES)
PAPERS = ("letter", "a4")
VERSIONS = ("A", "B", "C")
MOST_TASKS = 40
MOST_ROUNDS = 60
SHORTEST, LONGEST = 10, 3600
LARGEST_COUNT = 100


@dataclass(frozen=True)
class Round:
    """Several tasks of one skill under one time allowance.

    Attributes:
        skill: as the catalogue names it.
        seed: decides the tasks, 0 to 999 999 999.
        title: or None for the skill's own name.
        tasks: their number, 1 to 40, or None for the default of the skill.
        seconds: the time allowance, 10 to 3600, or None for the default of the skill.
        count_aloud: the number by which the class counts at its end, while the board is wiped, 1 to
            100; 0 for no counting, None for that of the class settings.
        options: of the skill.
        instead: replacements for the tasks of the seed, one for each task in order: typed numbers
            ("37 + 48"), how often the task was drawn again (1, 2, …), or "" for no replacement.

    Raises:
        LessonProblem: a field is not valid, or there are too few different tasks.

    Example:
        >>> Round("time.later", seed=90213, tasks=4, options={"by": 20}).options
        {'by': 20}
    """

    skill: str
    seed: int
    title: str | None = None
    tasks: int | None = None
    seconds: int | None = None
    count_aloud: int | None = None
    options: dict[str, Option] = field(default_factory=dict)
    instead: tuple[Replacement, ...] = ()

    def __post_init__(self) -> None:
        with at("skill"):
            skill_called(self.skill)
        with at("seed"):
            check_seed(self.seed)
        if self.title is not None:
            with at("title"):
                check_text(self.title)
        if self.seconds is not None:
            with at("seconds"):
                check_whole(self.seconds, SHORTEST, LONGEST)
        if self.count_aloud is not None:
            with at("count_aloud"):
                check_whole(self.count_aloud, 0, LARGEST_COUNT)
        with at("options"):
            check_options(self.skill, self.options)
        if self.tasks is not None:
            with at("tasks"):
                check_whole(self.tasks, 1, MOST_TASKS)
                check_count(self.skill, self.tasks, self.options)
        with at("instead"):
            count = self.tasks or skill_called(self.skill).tasks
            # In files it is a list.
            object.__setattr__(self, "instead", check_replacements(self.instead, count))

    def to_data(self) -> dict[str, Any]:
        """Return the round as JSON-able data, without what is unset.

        Example:
            >>> Round("time.read_hour", seed=90213, tasks=4).to_data()
            {'skill': 'time.read_hour', 'seed': 90213, 'tasks': 4}
        """
        fields = {name: getattr(self, name) for name in self.__dataclass_fields__}
        fields["instead"] = [*self.instead]
        unset: tuple[object, ...] = (None, {}, [])
        return {name: deepcopy(value) for name, value in fields.items() if value not in unset}

    @classmethod
    def from_data(cls, data: object) -> Self:
        """Return a round from its data.

        Raises:
            LessonProblem: the data are no round.

        Example:
            >>> Round.from_data({"skill": "time.read_hour", "seed": 90213}).tasks
        """
        fields = check_fields(data, allowed=cls.__dataclass_fields__, needed=("skill", "seed"))
        return cls(**deepcopy(fields))


@dataclass(frozen=True)
class Lesson:
    """An ordered list of rounds; what it leaves unset comes from the class settings.

    Attributes:
        title: one line.
        seed: 0 to 999 999 999; rounds without a seed get one that depends on it.
        rounds: at most sixty.
        date: the school day, or None.
        vocabulary: "us" or "uk", or None.
        currency: such as "usd", or a table with coins of your own, or None.
        paper: "letter" or "a4", or None.

    Raises:
        LessonProblem: a field is not valid.

    Example:
        >>> monday = Lesson("Monday", seed=7, rounds=(Round("time.read_hour", seed=90213),))
        >>> monday.to_data()["rounds"]
        [{'skill': 'time.read_hour', 'seed': 90213}]
    """

    title: str
    seed: int
    rounds: tuple[Round, ...] = ()
    date: dt.date | None = None
    vocabulary: str | None = None
    currency: Money | None = None
    paper: str | None = None

    def __post_init__(self) -> None:
        with at("title"):
            check_text(self.title)
        with at("seed"):
            check_seed(self.seed)
        with at("rounds"):
            check_whole(len(self.rounds), 0, MOST_ROUNDS)
        with at("date"):
            if self.date is not None and type(self.date) is not dt.date:
                raise _no_date(self.date)
        for name, allowed in SETTINGS.items():
            value = getattr(self, name)
            if value is not None:
                with at(name):
                    check_one_of(value, allowed)
        if self.currency is not None:
            with at("currency"):
                object.__setattr__(self, "currency", check_money(self.currency))

    def to_data(self) -> dict[str, Any]:
        """Return the lesson as JSON-able data, without what is unset; the date as "2026-03-02".

        Example:
            >>> Lesson("Monday", seed=7, date=dt.date(2026, 3, 2)).to_data()
            {'title': 'Monday', 'seed': 7, 'date': '2026-03-02', 'rounds': []}
        """
        fields = {name: getattr(self, name) for name in self.__dataclass_fields__}
        fields["date"] = self.date.isoformat() if self.date else None
        fields["rounds"] = [one.to_data() for one in fields.pop("rounds")]
        return {name: deepcopy(value) for name, value in fields.items() if value is not None}

    @classmethod
    def from_data(cls, data: object) -> Self:
        """Return a lesson from its data, such as those of a file.

        A round without a seed gets one that depends on the lesson's seed and the round's place.

        Raises:
            LessonProblem: the data are no lesson.

        Example:
            >>> data = {"title": "Monday", "seed": 7, "rounds": [{"skill": "time.read_hour"}]}
            >>> Lesson.from_data(data).rounds[0].seed == round_seed(7, 1)
            True
        """
        fields = check_fields(data, allowed=cls.__dataclass_fields__, needed=("title", "seed"))
        with at("seed"):
            seed = check_seed(fields["seed"])
        with at("date"):
            fields["date"] = _date(fields.get("date"))
        fields["rounds"] = _rounds(fields.get("rounds", []), seed)
        return cls(**fields)


SETTINGS = {"vocabulary": VOCABULARIES, "paper": PAPERS}
"""The settings of a lesson with their allowed values; the currency is one more."""


def round_seed(lesson_seed: int, place: int) -> int:
    """Return the seed of a round that has none of its own.

    Args:
        lesson_seed: the seed of its lesson.
        place: which round it is, counted from 1.

    Example:
        >>> round_seed(7, 1) == round_seed(7, 1) != round_seed(7, 2)
        True
    """
    return Chance(f"{lesson_seed} round {place}").below(LARGEST_SEED + 1)


def _rounds(rounds: object, lesson_seed: int) -> tuple[Round, ...]:
    if not isinstance(rounds, list):
        raise LessonProblem(
            f"{quoted(rounds)} is no list of rounds",
            remedy="begin every round with [[rounds]]",
            place="rounds",
        )
    with at("rounds"):
        check_whole(len(rounds), 0, MOST_ROUNDS)
    made = []
    for place, data in enumerate(rounds, start=1):
        with at(f"[[rounds]] {place}"):
            usual = {"seed": round_seed(lesson_seed, place)} if isinstance(data, dict) else {}
            made.append(Round.from_data({**usual, **data} if usual else data))
    return tuple(made)


def _date(value: object) -> dt.date | None:
    if value is None or type(value) is dt.date:
        return value
    try:
        return dt.date.fromisoformat(value)  # type: ignore[arg-type]  # checked by trying
    except (TypeError, ValueError):
        raise _no_date(value) from None


def _no_date(value: object) -> LessonProblem:
    return LessonProblem(f"{quoted(value)} is no date", remedy="write it like 2026-03-02")
