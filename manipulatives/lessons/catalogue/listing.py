"""The catalogue and tasks of it as data and as lines of text, for the command line."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from manipulatives.lessons.catalogue.skill import Skill
from manipulatives.lessons.catalogue.skills import SKILLS, Given
from manipulatives.lessons.catalogue.standards import standards_like
from manipulatives.lessons.problem import quoted
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.lessons.tasks.task import Task


def skills_like(
    *, strand: str | None = None, standard: str | None = None, word: str | None = None
) -> list[Skill]:
    """Return the skills that belong to a strand, teach a standard and contain a word.

    Args:
        strand: such as "time"; None for all.
        standard: a code in any common spelling, or a part of one; None for all.
        word: in their id, names, limits or trade words, in any case; None for all.

    Raises:
        LessonProblem: no standard is like that.

    Example:
        >>> [skill.id for skill in skills_like(word="quarter past")]
        ['time.read_quarter']
    """
    wanted = None if standard is None else set(standards_like(standard))
    return [
        skill
        for skill in SKILLS.values()
        if strand in (None, skill.strand)
        and (wanted is None or wanted & set(skill.standards))
        and (word is None or word.lower() in _searched_text(skill).lower())
    ]


def skill_data(skill: Skill) -> dict[str, Any]:
    """Return a skill as JSON-able data.

    Example:
        >>> skill_data(SKILLS["time.read_hour"])["strand"]
        'time'
    """
    return {
        "id": skill.id,
        "strand": skill.strand,
        "name": skill.name,
        "title": skill.title,
        "standards": list(skill.standards),
        "limits": skill.limits,
        "builds_on": list(skill.builds_on),
        "manipulative": skill.manipulative,
        "tasks": skill.tasks,
        "seconds": skill.seconds,
        "words": list(skill.words),
        "options": {name: list(values) for name, values in skill.options.items()},
    }


def skills_text(skills: Iterable[Skill]) -> str:
    """Return skills as lines of text: the title, the limits and the standards of each.

    Example:
        >>> print(skills_text([SKILLS["time.read_half"]]).splitlines()[0])
        time.read_half  Read to the half hour
    """
    found = list(skills)
    if not found:
        return "No skill is like that."
    widest = max(len(skill.id) for skill in found)
    lines = []
    for skill in found:
        lines.append(f"{skill.id:{widest}}  {skill.title}")
        lines += [f"{'':{widest}}  {line}" for line in (skill.limits, ", ".join(skill.standards))]
    return "\n".join(lines)


def tasks_like(
    skill: str, *, seed: int, count: int, vocabulary: str, options: dict[str, Given]
) -> list[Task]:
    """Return tasks without twins.

    Raises:
        LessonProblem: there is no such skill or option, or there are not so many different tasks.

    Example:
        >>> len(tasks_like("time.read_hour", seed=1, count=2, vocabulary="us", options={}))
        2
    """
    return make_tasks(
        skill, seed=seed, count=count, vocabulary=vocabulary, options=options, twins=0
    )


def tasks_text(tasks: Sequence[Task]) -> str:
    """Return tasks as lines of text: question, answer, worked steps, and what may go wrong.

    Example:
        >>> print(tasks_text(make_tasks("time.read_hour", seed=90213, count=1)).splitlines()[0])
        1. What time does the market clock show?  12:00
    """
    lines = []
    for number, task in enumerate(tasks, start=1):
        lines.append(f"{number}. {task.prompt}  {task.answer}")
        for step in task.steps:
            said = f" (all: {step.chant})" if step.chant else ""
            lines.append(f"     {step.say}{said}")
        lines += [
            f"   if {mistake.answer}: {mistake.teacher}"
            for mistake in task.mistakes
            if mistake.answer is not None
        ]
    return "\n".join(lines)


def read_option(text: str) -> tuple[str, Given]:
    """Return an option as it is typed: `name=value`, or `name=one,other` for one value a task.

    Raises:
        ValueError: it is not typed like that.

    Example:
        >>> read_option("by=5,20"), read_option("answer=hands")
        (('by', [5, 20]), ('answer', 'hands'))
    """
    name, sign, value = text.partition("=")
    if not (name and sign and value):
        raise ValueError(f"An option is typed like by=5 or regroup=tens,zero, not {quoted(text)}.")
    values = [_value(one) for one in value.split(",")]
    return name, values[0] if len(values) == 1 else values


def _value(text: str) -> str | int | bool:
    if text in ("true", "false"):
        return text == "true"
    return int(text) if text.isascii() and text.isdigit() else text


def _searched_text(skill: Skill) -> str:
    return " ".join([skill.id, skill.name, skill.title, skill.limits, *skill.words])
