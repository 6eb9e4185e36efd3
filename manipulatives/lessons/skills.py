"""The catalogue of skills: what can be taught, with its number ranges and options.

Standards are named by their published codes: "CCSS 2.MD.C.7" is of the Common Core State
Standards for Mathematics (2010), "England Y2 time" of the programmes of study for mathematics,
key stage 1 (Department for Education, 2013, updated 2021).
"""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TYPE_CHECKING

from manipulatives.lessons.checks import check_fields, check_one_of, nearest
from manipulatives.lessons.problem import LessonProblem, at, quoted

if TYPE_CHECKING:
    from collections.abc import Mapping

Option = str | int | bool


@dataclass(frozen=True)
class Skill:
    """One teachable thing.

    Attributes:
        id: strand and name, such as "time.read_hour".
        name: what a child calls it.
        title: what a teacher calls it.
        standards: which published standards it serves.
        manipulative: what it is taught with.
        tasks: how many tasks a round has unless it says otherwise.
        seconds: the time allowance of a round unless it says otherwise.
        options: what a round may set, and to which values; the first one holds if it does not.

    Example:
        >>> SKILLS["time.read_hour"].strand
        'time'
    """

    id: str
    name: str
    title: str
    standards: tuple[str, ...]
    manipulative: str
    tasks: int
    seconds: int
    options: Mapping[str, tuple[Option, ...]] = field(default_factory=dict)

    @property
    def strand(self) -> str:
        """The strand it belongs to, such as "time".

        Example:
            >>> SKILLS["time.later"].strand
            'time'
        """
        return self.id.partition(".")[0]


Row = tuple[str, str, str, int, int, tuple[str, ...], dict[str, tuple[Option, ...]]]


def _skills(strand: str, manipulative: str, rows: tuple[Row, ...]) -> dict[str, Skill]:
    made = (
        Skill(
            id=f"{strand}.{name}",
            name=child,
            title=teacher,
            standards=standards,
            manipulative=manipulative,
            tasks=tasks,
            seconds=seconds,
            options=MappingProxyType(options),
        )
        for name, child, teacher, tasks, seconds, standards, options in rows
    )
    return {skill.id: skill for skill in made}


HALF_HOURS = ("CCSS 1.MD.B.3", "England Y1 time")
FIVE_MINUTES = ("CCSS 2.MD.C.7", "England Y2 time")
ALL_TIMES = (*HALF_HOURS, *FIVE_MINUTES)
# Intervals of time come in Grade 3 in the one and are compared in Year 2 in the other.
INTERVALS = ("CCSS 3.MD.A.1", "England Y2 time")

READ: dict[str, tuple[Option, ...]] = {"answer": ("keypad", "choice")}
SET: dict[str, tuple[Option, ...]] = {
    "given": ("digits", "words"),
    "hands": ("free", "geared"),
    "step": (5, 15, 30, 60),
}
MOVE: dict[str, tuple[Option, ...]] = {
    "by": tuple(range(5, 65, 5)),
    "answer": ("keypad", "hands"),
}

# Columns: name, what a child calls it, what a teacher calls it, tasks, seconds, standards, options.
# fmt: off
SKILLS: Mapping[str, Skill] = MappingProxyType({
    **_skills("time", "Clock", (
        ("read_hour", "O'clock", "Read to the hour", 6, 120, HALF_HOURS, READ),
        ("read_half", "Half past", "Read to the half hour", 6, 150, HALF_HOURS, READ),
        ("read_quarter", "Quarters", "Read quarter past and to", 6, 180, FIVE_MINUTES, READ),
        ("read_five_minutes", "Minutes", "Read to five minutes", 5, 180, FIVE_MINUTES, READ),
        ("set_hands", "Set the clock", "Set the hands to a time", 5, 240, ALL_TIMES, SET),
        ("later", "Later", "Find the time some minutes later", 5, 240, INTERVALS, MOVE),
        ("earlier", "Earlier", "Find the time some minutes earlier", 5, 240, INTERVALS, MOVE),
    )),
})
# fmt: on


def skill_called(name: object) -> Skill:
    """Return the skill of that name.

    Raises:
        LessonProblem: the catalogue has none; the nearest name is suggested.

    Example:
        >>> skill_called("time.read_hour").title
        'Read to the hour'
    """
    if isinstance(name, str) and name in SKILLS:
        return SKILLS[name]
    strands = dict.fromkeys(skill.strand for skill in SKILLS.values())
    given = str(name).partition(".")[0]
    known = [one for one in SKILLS if one.startswith(f"{given}.")] if given in strands else strands
    raise LessonProblem(
        f"there is no skill {quoted(name)}{nearest(name, list(SKILLS))}",
        remedy=f"choose {'from' if given in strands else 'a skill of'} {', '.join(known)}",
    )


def check_options(skill: str, options: object) -> dict[str, Option]:
    """Return the options that were given, if the skill has them and allows their values.

    Raises:
        LessonProblem: there is no such skill, option or value.

    Example:
        >>> check_options("time.later", {"by": 20})
        {'by': 20}
    """
    allowed = skill_called(skill).options
    given = check_fields(options, allowed=allowed, needed=())
    for name, value in given.items():
        with at(name):
            check_one_of(value, allowed[name])
    return given


def all_options(skill: str, options: object) -> dict[str, Option]:
    """Return every option of a skill: the value that was given, or the one that holds otherwise.

    Raises:
        LessonProblem: there is no such skill, option or value.

    Example:
        >>> all_options("time.later", {"by": 20})
        {'by': 20, 'answer': 'keypad'}
    """
    given = check_options(skill, options)
    usual = {name: values[0] for name, values in skill_called(skill).options.items()}
    return {**usual, **given}
