"""The catalogue of skills: what can be taught, and what a round of it may set."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from manipulatives.lessons.catalogue.skill import Option, Skill, skills_in
from manipulatives.lessons.checks import check_fields, check_one_of, nearest
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.strands import FOLDER, STRANDS

Given = Option | list[Option]
"""The value of an option: one value for all tasks, or a list with one for each task in turn."""

SKILLS: Mapping[str, Skill] = MappingProxyType(
    {skill.id: skill for strand in STRANDS for skill in skills_in(FOLDER / strand / "skills.toml")}
)

ORDERS = ("any", "easy first", "mixed")
"""The option `order`, which every skill has.

any: at random. easy first: from the easiest to the most difficult. mixed: no two neighbours are of
the same kind.
"""


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


def check_options(skill: str, options: object) -> dict[str, Given]:
    """Return the options that were given, if the skill has them and allows their values.

    Raises:
        LessonProblem: there is no such skill, option or value.

    Example:
        >>> check_options("time.later", {"by": [5, 20]})
        {'by': [5, 20]}
    """
    allowed = {**skill_called(skill).options, "order": ORDERS}
    given = check_fields(options, allowed=allowed, needed=())
    for name, value in given.items():
        with at(name):
            several = isinstance(value, list) and name != "order"
            if value == []:
                raise LessonProblem("[] holds no value", remedy="give one value or more")
            for one in value if several else [value]:
                check_one_of(one, allowed[name])
    return given


def options_at(skill: str, options: Mapping[str, Any], place: int) -> dict[str, Option]:
    """Return the value of every option for one task.

    A list has one value for each task; its last value is also that of all tasks after it. An option
    that was not given has its first value.

    Args:
        skill: the id of a skill.
        options: those that were given, already checked.
        place: of the task in its round, counted from 0.

    Example:
        >>> options_at("time.later", {"by": [5, 20]}, 4)
        {'by': 20, 'answer': 'keypad'}
    """
    usual = {name: values[0] for name, values in skill_called(skill).options.items()}
    return {
        name: value[min(place, len(value) - 1)] if isinstance(value, list) else value
        for name, value in {**usual, **options}.items()
        if name != "order"
    }
