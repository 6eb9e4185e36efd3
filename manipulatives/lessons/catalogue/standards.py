"""The published standards that skills teach, in our own short words.

"CCSS 2.NBT.A.1a": Common Core State Standards for Mathematics (2010), kindergarten to grade 2, in
number, operations, time, money and shape. "England Y2 number 1": the statutory statements of the
programmes of study for mathematics, key stage 1 (Department for Education, 2013, updated 2021) in
the same areas; they carry no codes, so they are numbered here in their order within an area, whose
parts on multiplication and fractions go with number.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from manipulatives.lessons.catalogue.standards_table import ROWS
from manipulatives.lessons.problem import LessonProblem, quoted


@dataclass(frozen=True)
class Standard:
    """One published standard.

    Attributes:
        id: its source and its code or place, such as "CCSS 2.NBT.A.1a".
        says: what it asks for, in short.
        why_not: why no skill teaches it, or "" where one does.

    Example:
        >>> STANDARDS["CCSS K.OA.A.4"].says
        'find the number that makes 10 with a number from 1 to 9'
    """

    id: str
    says: str
    why_not: str = ""


STANDARDS: Mapping[str, Standard] = MappingProxyType(
    {row[0]: Standard(*row) for row in ROWS},
)
"""Every standard of the areas that the kit is about, whether a skill teaches it or not."""

_WITHOUT_LETTER = re.compile(r"(?:CCSS )?([K0-9])\.([A-Z]+)\.(?:([A-Z])\.)?([0-9]+)\.?([a-c]?)")


def standards_like(text: str) -> list[str]:
    """Return the standards that a text may mean: a code in any common spelling, or a part of one.

    Older lists leave out the letter of the cluster, and some put a full stop before a part.

    Raises:
        LessonProblem: no standard is like that.

    Example:
        >>> standards_like("2.MD.7"), standards_like("2.NBT.A.1.a")
        (['CCSS 2.MD.C.7'], ['CCSS 2.NBT.A.1a'])
        >>> standards_like("y1 measurement 6")
        ['England Y1 measurement 6']
    """
    wanted = _WITHOUT_LETTER.fullmatch(text.strip().upper().replace("CCSS ", ""))
    if wanted is None:
        wanted = _WITHOUT_LETTER.fullmatch(_upper_code(text))
    if wanted is not None:
        found = [one for one in STANDARDS if _agrees(one, wanted)]
    else:
        found = [one for one in STANDARDS if text.strip().lower() in one.lower()]
    if found:
        return found
    raise LessonProblem(
        f"there is no standard like {quoted(text)}",
        remedy='write it like "2.NBT.A.1" or "England Y2 number 1", or a part of it',
    )


def _upper_code(text: str) -> str:
    """Return a code in capitals, but with a small letter for its part: "2.NBT.A.1a"."""
    code = text.strip().upper().replace("CCSS ", "")
    return code[:-1] + code[-1].lower() if code[-1:] in {"A", "B", "C"} else code


def _agrees(standard: str, wanted: re.Match[str]) -> bool:
    own = _WITHOUT_LETTER.fullmatch(standard)
    if own is None:
        return False
    pairs = zip(own.groups(default=""), wanted.groups(default=""), strict=True)
    return all(asked in ("", given) for given, asked in pairs)
