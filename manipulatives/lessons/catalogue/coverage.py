"""Which skill serves which standard, and which standards none serves."""

from __future__ import annotations

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.catalogue.standards import STANDARDS


def served() -> dict[str, list[str]]:
    """Return for every standard the skills that serve it, in the order of the catalogue.

    Example:
        >>> "time.read_half" in served()["CCSS 1.MD.B.3"]
        True
    """
    found: dict[str, list[str]] = {one: [] for one in STANDARDS}
    for skill in SKILLS.values():
        for standard in skill.standards:
            # Standards of later years are met here and there; the table ends with grade 2.
            if standard in found:
                found[standard].append(skill.id)
    return found


def coverage_table() -> str:
    """Return the table of all standards in Markdown: what each says, and who serves it or why not.

    Example:
        >>> coverage_table().splitlines()[0]
        '| standard | says | skills |'
    """
    lines = ["| standard | says | skills |", "| --- | --- | --- |"]
    for name, skills in served().items():
        standard = STANDARDS[name]
        who = ", ".join(f"`{skill}`" for skill in skills) or f"none: {standard.why_not}"
        lines.append(f"| {name} | {standard.says} | {who} |")
    return "\n".join(lines)
