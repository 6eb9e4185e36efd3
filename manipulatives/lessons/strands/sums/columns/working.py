"""A worked step, and how steps follow one another on one written sum."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, TypedDict

from manipulatives.maths.columns.blocks import Rows, blocks_of
from manipulatives.maths.columns.written_sum import (
    Sum,
    digits_of,
    in_signs,
    new_sum,
    result_of,
    written,
)
from manipulatives.maths.number.words import number_in_words

ColumnStep = TypedDict(
    "ColumnStep",
    {
        "say": str,
        "class": str,
        "column": int | None,
        "write": list[list[Any]],
        "blocks": Rows,
    },
)
ColumnStep.__doc__ = """One press of a worked sum, as it is sent.

`say` is the sentence, at most ten words; `class` is what everybody answers, and may be empty;
`column` is where it happens, from 0 for the ones, None for nowhere; `write` is what is written
then (`column_sum.written`); `blocks` are the blocks after it (`column_blocks.blocks_of`).
"""


class Working:
    """A sum while it is worked out: what is on it so far, and the steps that led there.

    Attributes:
        sum: the sum as it stands.
        steps: the steps so far.
        term: the class's word for regrouping.

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> working = Working(new_sum("+", [2, 3]), "regroup")
        >>> working.step("Ones: what is 2 + 3?", "5", 0, [["answer", 0, 5]])
        >>> working.sum["answer"], working.steps[0]["blocks"]["answer"]
        ([5, None], [5, 0])
    """

    def __init__(self, sum_: Sum, term: str) -> None:
        self.sum = sum_
        self.term = term
        self.steps: list[ColumnStep] = []

    def step(
        self,
        say: str,
        answer: str,
        column: int | None = None,
        write: Sequence[list[Any]] = (),
        *,
        working: bool = True,
    ) -> None:
        """Go one step on; `working` until every column has been worked out."""
        if write or not self.steps:
            self.sum = written(self.sum, write)
            blocks = blocks_of(self.sum, working=working)
        else:
            # Nothing was written, so the blocks lie as they did.
            blocks = {name: [*row] for name, row in self.steps[-1]["blocks"].items()}
        step = ColumnStep(
            {
                "say": say,
                "class": answer,
                "column": column,
                "write": list(write),
                "blocks": blocks,
            }
        )
        self.steps.append(step)

    def finish(self, vocabulary: str, *, write: bool = False) -> list[ColumnStep]:
        """Read the whole sum, and return all steps.

        Args:
            vocabulary: how the answer is said in words.
            write: whether the answer is to be written now, all at once.
        """
        result = result_of(self.sum)
        digits = digits_of(result)
        writes = [["answer", column, digit] for column, digit in enumerate(digits)]
        front = [
            ["answer", column, None]
            for column, digit in enumerate(self.sum["answer"])
            if column >= len(digits) and digit is not None
        ]
        if front:
            say = "The 0 in front is" if len(front) == 1 else "The 0s in front are"
            self.step(f"{say} not needed.", f"{result}", None, front, working=False)
        self.step(
            f"Read it all: {in_signs(self.sum)}.",
            number_in_words(result, vocabulary),
            None,
            writes if write else (),
        )
        return self.steps


def played(sum_: Sum, steps: Sequence[ColumnStep]) -> Sum:
    """Return a sum as it stands after some of its steps, whatever was written to it before.

    Args:
        sum_: the sum.
        steps: the first of its steps.

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> from manipulatives.lessons.strands.sums.columns.methods import worked_steps
        >>> played(new_sum("+", [47, 38]), worked_steps("+", [47, 38])[:3])["answer"]
        [5, None, None]
    """
    fresh = new_sum(sum_["operation"], sum_["numbers"], sum_["form"])
    return written(fresh, [write for step in steps for write in step["write"]])
