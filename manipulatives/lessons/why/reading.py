"""Reading answered sums as a teacher types them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.maths.columns.written_sum import LARGEST, SUBTRACT, read_sum

MOST_ANSWERS = 500
EXAMPLE = '"63 - 29 = 46"'
_ANSWER = re.compile(r"[0-9]{1,16}")
_MINUS = str.maketrans({"\u2212": "-", "\u2013": "-", "\u2010": "-", "\u00a0": " "})


@dataclass(frozen=True)
class Item:
    """A sum to be given to a pupil.

    Attributes:
        operation: "+" or "-".
        numbers: the addends, or the upper number and the lower one.

    Example:
        >>> str(Item("-", (63, 29))), Item("-", (63, 29)).right
        ('63 - 29', 34)
    """

    operation: str
    numbers: tuple[int, ...]

    def __str__(self) -> str:
        return f" {self.operation} ".join(map(str, self.numbers))

    @property
    def right(self) -> int:
        """The right answer."""
        first, *others = self.numbers
        return first - sum(others) if self.operation == SUBTRACT else first + sum(others)


@dataclass(frozen=True)
class Answered:
    """A sum and what a pupil wrote.

    Attributes:
        item: the sum.
        given: what was written.

    Example:
        >>> str(Answered(Item("+", (58, 37)), 85))
        '58 + 37 = 85'
    """

    item: Item
    given: int

    def __str__(self) -> str:
        return f"{self.item} = {self.given}"

    @property
    def wrong(self) -> bool:
        """Whether it is wrong."""
        return self.given != self.item.right


def read_answered(line: str) -> Answered:
    """Return an answered sum that was written in one line.

    Args:
        line: such as "63 - 29 = 46", "58+37=85" or "12 + 34 + 5 = 51"; any minus sign is accepted.

    Raises:
        LessonProblem: it is no answered sum.

    Example:
        >>> read_answered("63-29=46").item.numbers
        (63, 29)
    """
    text = line.translate(_MINUS).strip()
    parts = text.split("=")
    if len(parts) != 2 or not parts[1].strip():  # noqa: PLR2004 - a sum and an answer
        raise LessonProblem(
            f"{quoted(line)} is no sum with one answer",
            remedy=f"write it like {EXAMPLE}",
        )
    answer = parts[1].strip()
    if not _ANSWER.fullmatch(answer):
        raise LessonProblem(
            f"the answer {quoted(answer)} is no whole number",
            remedy=f"write in digits what the pupil wrote, like {EXAMPLE}",
        )
    try:
        operation, numbers = read_sum(parts[0].strip())
    except ValueError as error:
        what = str(error).split(". ")[0].rstrip(".")
        raise LessonProblem(
            what[0].lower() + what[1:],
            remedy=f"write it like {EXAMPLE}, with numbers up to {LARGEST}, the larger one first",
        ) from None
    return Answered(Item(operation, tuple(numbers)), int(answer))


def read_all(lines: Sequence[str]) -> list[Answered]:
    """Return all answered sums; empty lines are skipped.

    Raises:
        LessonProblem: one of them is no answered sum, or there is none, or far too many.

    Example:
        >>> [each.given for each in read_all(["63 - 29 = 46", "", "58+37=85"])]
        [46, 85]
    """
    answers = []
    for number, line in enumerate(lines, 1):
        with at(f"answer {number}"):
            if line.strip():
                answers.append(read_answered(line))
    if not 1 <= len(answers) <= MOST_ANSWERS:
        raise LessonProblem(
            f"{len(answers)} answered sums are given" if answers else "no answered sum is given",
            remedy=f"give 1 to {MOST_ANSWERS}, each like {EXAMPLE}",
        )
    return answers
