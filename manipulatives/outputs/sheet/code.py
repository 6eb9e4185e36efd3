"""The short code on a sheet: from it the same version of the kit makes the same numbers again."""

from __future__ import annotations

import hashlib
import json
import re
from dataclasses import dataclass, replace

from manipulatives.data.kit import kit_version
from manipulatives.lessons.checks import LARGEST_SEED, check_one_of, check_seed
from manipulatives.lessons.lesson import VERSIONS, Lesson, round_seed
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.tasks.chance import Chance

# No vowels, so that no words appear, and no letters that look like digits or like each other.
_LETTERS = "CDFHJKMNPRTVWX"
_MARKS = 3
_CODE = re.compile(r"([0-9]{1,9})-([ABC])-([A-Z]{3})(?:-([0-9][0-9A-Z.+]{0,30}))?")
_WITHOUT_KIT = "0.1.0"
"""The one version of the kit whose codes leave out the version."""


@dataclass(frozen=True)
class Code:
    """The parts of a code.

    Attributes:
        seed: of the lesson.
        version: "A", "B" or "C".
        marks: three letters that depend on everything in the lesson that the numbers depend on.
        kit: the version of the kit that draws these numbers.
    """

    seed: int
    version: str
    marks: str
    kit: str

    def __str__(self) -> str:
        """Return the code as it is printed and typed."""
        return f"{self.seed}-{self.version}-{self.marks}-{self.kit}"


def code_of(lesson: Lesson, version: str) -> Code:
    """Return the code of a sheet.

    Args:
        lesson: the lesson that its numbers are made from, with nothing left unset.
        version: "A", "B" or "C".

    Example:
        >>> str(code_of(Lesson("Monday", seed=7), "A"))[:4]
        '7-A-'
    """
    rounds = [
        [one.skill, one.seed, one.tasks, one.options, *([[*one.instead]] if one.instead else [])]
        for one in lesson.rounds
    ]
    # Neither vocabulary nor title changes what is asked.
    data = json.dumps([lesson.seed, version, lesson.currency, rounds], sort_keys=True)
    number = int.from_bytes(hashlib.sha256(data.encode()).digest()[:8], "big")
    marks = ""
    for _ in range(_MARKS):
        number, letter = divmod(number, len(_LETTERS))
        marks += _LETTERS[letter]
    return Code(lesson.seed, version, marks, kit_version())


def read_code(text: object) -> Code:
    """Return the parts of a code that was typed from a sheet.

    Small letters and spaces are accepted, and a code without a version of the kit is of 0.1.0.

    Raises:
        LessonProblem: it is no code.

    Example:
        >>> read_code("90213-b-kxt-0.1.0").version, read_code("90213-B-KXT").kit
        ('B', '0.1.0')
    """
    found = _CODE.fullmatch(re.sub(r"\s", "", text).upper()) if isinstance(text, str) else None
    if found is None:
        raise LessonProblem(
            f"{quoted(text)} is no code of a sheet",
            remedy="type it as it stands at the foot of the sheet, such as "
            f"90213-A-KXT-{kit_version()}",
        )
    return Code(int(found[1]), found[2], found[3], (found[4] or _WITHOUT_KIT).lower())


def check_code(code: Code, lesson: Lesson) -> None:
    """Check that a lesson still makes the numbers that a code stands for.

    Args:
        code: as it was typed.
        lesson: the lesson with the seed of the code and nothing left unset.

    Raises:
        LessonProblem: it makes others, or another version of the kit made the sheet.
    """
    if code.kit != kit_version():
        raise LessonProblem(
            f"version {code.kit} of the kit made sheet {code}, and this is version "
            f"{kit_version()}, which may draw other numbers",
            remedy=f"use version {code.kit}, or the key that was printed with the sheet",
        )
    if code != code_of(lesson, code.version):
        raise LessonProblem(
            f"this lesson does not make the numbers of sheet {code}",
            remedy="look whether it is the right lesson and has been changed since",
        )


def with_seed(lesson: Lesson, seed: int) -> Lesson:
    """Return a lesson with other numbers: the seed of every round is made from this one.

    With the lesson's own seed nothing changes.

    Args:
        lesson: the lesson.
        seed: 0 to 999 999 999.

    Raises:
        LessonProblem: no seed.
    """
    with at("seed"):
        check_seed(seed)
    if seed == lesson.seed:
        return lesson
    rounds = enumerate(lesson.rounds, start=1)
    others = tuple(replace(each, seed=round_seed(seed, place)) for place, each in rounds)
    return replace(lesson, seed=seed, rounds=others)


def check_version(version: object) -> str:
    """Check a version and return it.

    Raises:
        LessonProblem: there is no such version.

    Example:
        >>> check_version("B")
        'B'
    """
    with at("version"):
        return check_one_of(str(version), VERSIONS)


def version_seed(seed: int, version: str) -> int:
    """Return the seed of a round in a version; A has the round's own.

    Args:
        seed: of the round.
        version: "A", "B" or "C".

    Example:
        >>> version_seed(7, "A"), version_seed(7, "B") == version_seed(7, "C")
        (7, False)
    """
    if version == VERSIONS[0]:
        return seed
    return Chance(f"{seed} version {version}").below(LARGEST_SEED + 1)
