"""A worked step, and how steps follow one another on one written sum."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple, TypedDict

from manipulatives.lessons.tasks.task import Numbers
from manipulatives.maths.columns.blocks import Rows, blocks_of
from manipulatives.maths.columns.written_sum import (
    NAMES,
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
then (`written_sum.written`); `blocks` are the blocks after it (`blocks.blocks_of`).
"""


class Said(NamedTuple):
    """What is said in a step.

    Attributes:
        say: the sentence, at most ten words.
        answer: what everybody answers; may be empty.
        numbers: what is done, as data.
    """

    say: str
    answer: str
    numbers: Numbers


class Working:
    """A sum while it is worked out: what is on it so far, and the steps that led there.

    Attributes:
        sum: the sum as it stands.
        steps: the steps so far.
        numbers: what is done in each of the steps, as data; screens do not need it.
        term: the class's word for regrouping.

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> working = Working(new_sum("+", [2, 3]), "regroup")
        >>> said = Said("Ones: what is 2 + 3?", "5", {"act": "add", "terms": [2, 3], "total": 5})
        >>> working.step(said, 0, [["answer", 0, 5]])
        >>> working.sum["answer"], working.steps[0]["blocks"]["answer"]
        ([5, None], [5, 0])
    """

    def __init__(self, sum_: Sum, term: str) -> None:
        self.sum = sum_
        self.term = term
        self.steps: list[ColumnStep] = []
        self.numbers: list[Numbers] = []

    def step(
        self,
        said: Said,
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
            # Nothing was written, so the blocks stay as they are.
            blocks = {name: [*row] for name, row in self.steps[-1]["blocks"].items()}
        step = ColumnStep(
            {
                "say": said.say,
                "class": said.answer,
                "column": column,
                "write": list(write),
                "blocks": blocks,
            }
        )
        self.steps.append(step)
        place = {} if column is None else {"place": NAMES[column]}
        self.numbers.append({**place, **said.numbers})

    def finish(self, vocabulary: str, *, write: bool = False) -> Working:
        """Read the whole sum, and return the sum with all its steps.

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
            dropped = {"act": "drop", "zeros": len(front), "number": result}
            self.step(Said(f"{say} not needed.", f"{result}", dropped), None, front, working=False)
        read = {
            "act": "read",
            "operation": self.sum["operation"],
            "numbers": [*self.sum["numbers"]],
            "number": result,
        }
        words = number_in_words(result, vocabulary)
        said = Said(f"Read it all: {in_signs(self.sum)}.", words, read)
        self.step(said, None, writes if write else ())
        return self


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
