"""Finding skills in the catalogue: by words, by standard, by age."""

from __future__ import annotations

from collections.abc import Iterable

from manipulatives.lessons.catalogue.listing import skills_like
from manipulatives.lessons.catalogue.skill import Skill
from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.catalogue.standards import standards_like
from manipulatives.lessons.problem import LessonProblem

# Children are five or six in kindergarten and year 1, and a year older in each following one; the
# ages are common knowledge of both school systems.
_AGES = {
    5: ("CCSS K.", "England Y1"),
    6: ("CCSS 1.", "England Y1", "England Y2"),
    7: ("CCSS 2.", "England Y2"),
    8: ("CCSS 3.",),
}

AGES = {"5": 5, "6": 6, "7": 7, "8": 8}


def strands() -> dict[str, str]:
    """Return the strands of the catalogue by what they are called.

    Example:
        >>> strands()["time"]
        'time'
    """
    names = dict.fromkeys(skill.strand for skill in SKILLS.values())
    return {name.replace("_", " "): name for name in names}


def skills_found(
    text: str = "", *, strand: str | None = None, age: int | None = None
) -> list[Skill]:
    """Return the skills that a search finds, in the order of the catalogue.

    Args:
        text: words that are all found in a skill's names, limits and trade words; or a standard,
            such as "2.MD.C.7" or "Y1 measurement 6", or a part of one.
        strand: such as "time"; None for all.
        age: of the children in years, 5 to 8; None for all.

    Example:
        >>> [skill.id for skill in skills_found("hour half")]
        ['time.read_half']
        >>> "time.read_half" in [skill.id for skill in skills_found("Y1 measurement 6")]
        True
    """
    found = _of_standard(text) or _with_words(text.split())
    return [
        skill
        for skill in found
        if strand in (None, skill.strand) and (age is None or _is_for(skill.standards, age))
    ]


def _with_words(words: Iterable[str]) -> list[Skill]:
    found = [*SKILLS.values()]
    for word in words:
        these = skills_like(word=word)
        found = [skill for skill in found if skill in these]
    return found


def _of_standard(text: str) -> list[Skill]:
    """Return the skills that serve a standard; none where the text means no standard."""
    if not any(letter.isdigit() for letter in text) and "CC" not in text.upper():
        return []
    try:
        wanted = {*standards_like(text.strip())}
    except LessonProblem:
        return []
    return [skill for skill in SKILLS.values() if wanted & {*skill.standards}]


def _is_for(standards: Iterable[str], age: int) -> bool:
    return any(one.startswith(_AGES[age]) for one in standards)
