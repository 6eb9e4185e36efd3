"""The column board as a widget: what is written on it, and how it is shown or tried."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import traitlets

from manipulatives.drawings.columns import columns_drawing
from manipulatives.drawings.svg import svg_of
from manipulatives.lessons.strands.sums.columns.methods import FORM_OF, METHODS, worked_steps
from manipulatives.lessons.strands.sums.columns.working import ColumnStep, played
from manipulatives.maths.columns.facts import sum_facts
from manipulatives.maths.columns.written_sum import (
    NAMES,
    Sum,
    answer_of,
    check_sum,
    new_sum,
    read_sum,
    result_of,
    written,
)
from manipulatives.maths.vocabulary import VOCABULARIES
from manipulatives.widgets.manipulative import Manipulative, value_errors_as_trait_errors
from manipulatives.words.columns import TERMS

if TYPE_CHECKING:
    from traitlets.utils.bunch import Bunch

MODES = ("show", "try")
_STEP_FIELDS = {"say", "class", "column", "write", "blocks"}
_OF_STEPS = ("sum", "method", "vocabulary", "term")


class ColumnBoard(Manipulative, folder="columns", state="sum", takes=("text",)):
    """A sum on squared paper, shown step by step in the class's own method, or tried by pupils.

    In the mode "show" each press goes one worked step on or back; with it come the sentence, what
    everybody answers, the digits and marks that are written, and the blocks that stand for them.
    In the mode "try" pupils write digits and marks in any order; each place is checked by itself.

    A square is chosen with a tap and written to with the keypad on the screen, or with keys:

    | key | the square that has the focus |
    | --- | --- |
    | Right, Left, Up, Down | the next square that way |
    | Home, End | the first or last square of its row |
    | 0 to 9 | write the digit; where more than one fits, it goes behind those that are there |
    | Backspace, Delete | rub out the last digit |
    | Enter | check the place |

    Args:
        text: the sum in one line, such as "47 + 38", "12 + 34 + 56" or "402 - 178"; numbers up to
            9999, four of them at most.
        traits: any of the traits below by name; `sum` in place of `text` gives what is written.

    Raises:
        ValueError: `text` is no sum that can be written here.
        traitlets.TraitError: a trait is given what it cannot be.
        TypeError: there is no such trait, or both `text` and `sum` are given.

    Example:
        >>> board = ColumnBoard("47 + 38", method="bridging ten")
        >>> board.steps[0]["say"]
        'Ones: 8 + 7. 8 needs 2 to make 10.'
        >>> board.write("ones", 5)
        >>> board.write("tens", 7)
        >>> board.answer, board.done, board.facts["tens_right"]
        (75, False, False)
    """

    sum = traitlets.Dict(
        help='The sum and what pupils wrote: `operation`, "+" or "-"; `form`, which follows from '
        "the method; `numbers`; and, the ones first, `answer`, `marks`, `parts`, `jumps`, see "
        "`maths.column_sum`.",
    ).tag(sync=True)
    method = traitlets.Enum(
        METHODS,
        "counting on",
        help="How the class works: counting on, known facts, bridging ten, expanded columns or "
        "number line jumps.",
    ).tag(sync=True)
    vocabulary = traitlets.Enum(
        VOCABULARIES,
        "us",
        help="us: carry marks above the columns, and regroup unless another term is set. uk: "
        "carry marks below the answer, and exchange.",
    ).tag(sync=True)
    term = traitlets.Enum(
        TERMS,
        None,
        allow_none=True,
        help="The class's word: regroup, exchange, carry or borrow; None for the usual one. With "
        "carry and with borrow additions carry and subtractions borrow.",
    ).tag(sync=True)
    mode = traitlets.Enum(
        MODES, "try", help="show: the worked steps are shown. try: pupils write."
    ).tag(sync=True)
    steps = traitlets.List(
        help="The worked steps, which follow from the sum, the method and the words: `say`, "
        "`class`, `column`, `write` and `blocks`, see `lessons.strands.sums.columns`.",
    ).tag(sync=True)
    step = traitlets.Int(0, help="How many of the steps have been shown.").tag(sync=True)
    headings = traitlets.Bool(True, help="Whether the columns are named.").tag(sync=True)
    marks = traitlets.Bool(
        True, help="Whether there are squares for carry marks and rewritten digits."
    ).tag(sync=True)
    blocks = traitlets.Bool(
        True, help="Whether blocks stand beside the sum for what is written."
    ).tag(sync=True)
    writable = traitlets.Bool(
        True, help="Whether pupils can write; if not, the board is a picture to read."
    ).tag(sync=True)
    buttons = traitlets.Bool(
        True,
        help="Whether there are buttons to check, undo and reset, and to show the steps with what "
        "is said to them.",
    ).tag(sync=True)
    panel = traitlets.Bool(
        True, help="Whether there are switches between show and try and for what is shown."
    ).tag(sync=True)

    def __init__(self, text: str | None = None, **traits: Any) -> None:
        if text is not None:
            if "sum" in traits:
                raise TypeError("A ColumnBoard takes text or a sum, not both: they may disagree.")
            form = FORM_OF.get(traits.get("method", METHODS[0]), "columns")
            traits["sum"] = {**new_sum(*read_sum(text), form)}
        super().__init__(**traits)

    @property
    def answer(self) -> int | None:
        """What the digits of the answer say, or None while they are no number."""
        return answer_of(self.shown)

    @property
    def result(self) -> int:
        """What comes out when the sum is worked out right."""
        return result_of(self._sum)

    @property
    def done(self) -> bool:
        """Whether the answer is right."""
        return self.answer == self.result

    @property
    def shown(self) -> Sum:
        """What is on the board: what was written, or in the mode "show" the steps so far."""
        if self.mode == "try":
            return self._sum
        return played(self._sum, self.steps[: self.step])

    @property
    def facts(self) -> dict[str, int | str | bool | None]:
        """What is true of what is on the board, as goals and mistakes ask for it: `sum_facts`."""
        return sum_facts(self.shown)

    def write(self, place: str, digit: int | None) -> None:
        """Write a digit of the answer, or rub it out.

        Args:
            place: "ones", "tens", "hundreds", "thousands" or "ten thousands".
            digit: 0 to 9, or None for an empty square.

        Raises:
            ValueError: the sum has no such column.
            traitlets.TraitError: it is no digit.
        """
        columns = NAMES[: len(self._sum["answer"])]
        if place not in columns:
            raise ValueError(f"This sum has the columns {', '.join(columns)}, not {place!r}.")
        self.sum = {**written(self._sum, [["answer", columns.index(place), digit]])}

    def still(self) -> str:
        """Return a picture of the board as SVG text, for readers without a live host."""
        drawing = columns_drawing(
            self.shown,
            headings=self.headings,
            marks=self.marks,
            blocks=self.blocks,
            below=self.vocabulary == "uk",
        )
        return svg_of(drawing)

    @property
    def _sum(self) -> Sum:
        return check_sum(self.sum)

    def _worked(self) -> list[ColumnStep]:
        words = {"vocabulary": self.vocabulary, "term": self.term}
        return worked_steps(self.sum["operation"], self.sum["numbers"], self.method, **words)

    @traitlets.default("sum")
    def _first_sum(self) -> dict[str, Any]:
        return {**new_sum("+", [47, 38], FORM_OF[self.method])}

    @traitlets.default("steps")
    def _first_steps(self) -> list[ColumnStep]:
        return self._worked()

    @traitlets.validate("sum")
    def _check_sum(self, proposal: Bunch) -> dict[str, Any]:
        given, form = proposal["value"], FORM_OF[self.method]
        with value_errors_as_trait_errors():
            return {**check_sum({"form": form, **given})}

    @traitlets.validate("steps")
    def _check_steps(self, proposal: Bunch) -> list[ColumnStep]:
        for step in proposal["value"]:
            if not isinstance(step, dict) or set(step) != _STEP_FIELDS:
                raise traitlets.TraitError(
                    f"A step is a dict as worked_steps makes it, not {step!r}."
                )
        return proposal["value"]

    @traitlets.validate("step")
    def _check_step(self, proposal: Bunch) -> int:
        most = len(self.steps)
        if not 0 <= proposal["value"] <= most:
            raise traitlets.TraitError(
                f"There are {most} steps, so 0 to {most} of them have been shown, not "
                f"{proposal['value']!r}."
            )
        return int(proposal["value"])

    @traitlets.observe(*_OF_STEPS)
    def _work_anew(self, _: Bunch) -> None:
        """What the steps follow from has changed."""
        if self.sum["form"] != FORM_OF[self.method]:
            fresh = new_sum(self.sum["operation"], self.sum["numbers"], FORM_OF[self.method])
            self.sum = {**fresh}
        steps = self._worked()
        if steps != self.steps:
            self.step = 0
            self.steps = steps
