"""Which skills teach each published standard, and which standards no skill teaches."""

from __future__ import annotations

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.catalogue.standards import STANDARDS


def skills_by_standard() -> dict[str, list[str]]:
    """Return the ids of the skills that teach each standard, in the order of the catalogue.

    Example:
        >>> "time.read_half" in skills_by_standard()["CCSS 1.MD.B.3"]
        True
    """
    found: dict[str, list[str]] = {one: [] for one in STANDARDS}
    for skill in SKILLS.values():
        for standard in skill.standards:
            # A skill may name a standard of a later year; the table ends with grade 2.
            if standard in found:
                found[standard].append(skill.id)
    return found


def coverage_table() -> str:
    """Return a table of all standards in Markdown: what each says, and its skills or why none.

    Example:
        >>> coverage_table().splitlines()[0]
        '| standard | says | skills |'
    """
    lines = ["| standard | says | skills |", "| --- | --- | --- |"]
    for name, skills in skills_by_standard().items():
        standard = STANDARDS[name]
        taught_by = ", ".join(f"`{skill}`" for skill in skills) or f"none: {standard.why_not}"
        lines.append(f"| {name} | {standard.says} | {taught_by} |")
    return "\n".join(lines)
