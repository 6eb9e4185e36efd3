"""Place value blocks as a widget: what lies on the mats, and what is shown of it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

import traitlets

from manipulatives.drawings.blocks import blocks_drawing
from manipulatives.drawings.svg import svg_of
from manipulatives.maths.number.mats import check_mat, compared, mat_facts, put_together
from manipulatives.maths.number.place_value import (
    Blocks,
    check_places,
    fewest,
    is_canonical,
    number_of,
    pieces_of,
)
from manipulatives.maths.number.trades import trade_down, trade_up
from manipulatives.maths.vocabulary import VOCABULARIES
from manipulatives.widgets.manipulative import Manipulative, value_errors_as_trait_errors

if TYPE_CHECKING:
    from traitlets.utils.bunch import Bunch

PAIRS = ("compare", "add", "take")
TRADES = ("any", "ring", "button", "none")


class PlaceValueBlocks(Manipulative, folder="blocks", state="mat", takes=("number",)):
    """Thousands, hundreds, tens and ones on a mat of columns, or on two mats.

    A block is dragged out of the box below the mats and back into it, or from mat to mat; or it is
    tapped, and then the place is tapped where it goes (several blocks of one column may be tapped
    first). The blocks arrange themselves in rows that can be counted. Ten of a place become one of
    the next when a ring is drawn round them, when ten are carried into the next column, or at the
    press of a button; one that is dropped in the next smaller column breaks into ten. Beyond two
    hundred blocks most of a full column are put in boxes that say how many are in each.

    A column that has the focus hears these keys:

    | key | what it does |
    | --- | --- |
    | Right, Left | to the next column |
    | Up or + | one block more |
    | Down, -, Delete or Backspace | one block less |
    | 0 to 9 | so many blocks |
    | Shift with Left | ten of the column become one of the next larger place |
    | Shift with Right | one of the column breaks into ten of the next smaller place |
    | Shift with Up, Shift with Down | one block goes to the mat above, or below (first, second) |
    | Enter or Space | picks a block, or one more; puts down what was picked elsewhere |
    | Escape | lets go of what is held or picked; it is where it was |

    PageUp and PageDown are not used: they turn the board.

    Args:
        number: what the mat shows at first, with the fewest blocks: a number from 0 to 9999, or a
            list of two for two mats.
        traits: any of the traits below by name; `mat` in place of `number` gives the blocks.

    Raises:
        ValueError: `number` is none that blocks show.
        traitlets.TraitError: a trait is given what it cannot be.
        TypeError: there is no such trait, or both `number` and `mat` are given.

    Example:
        >>> blocks = PlaceValueBlocks(mat=[{"tens": 2, "ones": 15}])
        >>> blocks.number, blocks.pieces, blocks.canonical
        (35, 17, False)
        >>> blocks.trade_up("ones")
        >>> blocks.number, blocks.pieces, blocks.canonical
        (35, 8, True)
        >>> PlaceValueBlocks([345, 287]).compare
        '>'
    """

    mat = traitlets.List(
        help="The blocks of one mat or two: how many `thousands`, `hundreds`, `tens` and `ones` "
        "there are on each, worth at most 9999.",
    ).tag(sync=True)
    places = traitlets.Int(
        3,
        help="How many columns there are, 1 to 4, the ones first. A mat that holds larger blocks "
        "has columns for them too.",
    ).tag(sync=True)
    pair = traitlets.Enum(
        PAIRS,
        "compare",
        help="What two mats are for. compare: which is more. add: both together. take: what is "
        "left on the first mat, and on the second what was taken away.",
    ).tag(sync=True)
    result = traitlets.Bool(
        True, help="Whether the sign between two mats is shown, or what comes out; else a blank."
    ).tag(sync=True)
    movable = traitlets.Bool(
        True, help="Whether blocks can be moved; if not, the mat is a picture to read."
    ).tag(sync=True)
    trades = traitlets.Enum(
        TRADES,
        "any",
        help="How blocks are traded. ring: in a ring drawn round ten, and by dropping them in "
        "another column. button: with buttons. any: both. none: not at all.",
    ).tag(sync=True)
    digits = traitlets.Bool(True, help="Whether the count of each column is written below it.").tag(
        sync=True
    )
    numeral = traitlets.Bool(
        False, help="Whether the number is written, or the sentence about two numbers."
    ).tag(sync=True)
    expanded = traitlets.Bool(
        False, help="Whether the worth of each column is written as a sum: 300 + 40 + 5."
    ).tag(sync=True)
    zeros = traitlets.Bool(
        False, help="Whether that sum has parts that are zero, as in 300 + 0 + 5."
    ).tag(sync=True)
    words = traitlets.Bool(False, help="Whether the number is written in words.").tag(sync=True)
    equation = traitlets.Bool(
        False,
        help="Whether the last step is written: 10 ones = 1 ten for a trade, 35 - 3 = 32 for "
        "blocks that were taken away.",
    ).tag(sync=True)
    vocabulary = traitlets.Enum(
        VOCABULARIES, "us", help="us: one hundred five. uk: one hundred and five."
    ).tag(sync=True)
    buttons = traitlets.Bool(
        True, help="Whether there are step buttons for each place, undo and reset."
    ).tag(sync=True)
    panel = traitlets.Bool(
        True, help="Whether there are switches for what is shown, the columns and the mats."
    ).tag(sync=True)

    def __init__(self, number: int | Sequence[int] | None = None, **traits: Any) -> None:
        if number is not None:
            if "mat" in traits:
                raise TypeError("Give a number or a mat, not both: they may disagree.")
            traits["mat"] = _mat_of(number)
        super().__init__(**traits)

    @property
    def number(self) -> int:
        """What the blocks of the first mat show.

        Setting it lays the fewest blocks down; a second mat stays as it is.

        Raises:
            ValueError: set to what is no number from 0 to 9999.
        """
        return number_of(self.mat[0])

    @number.setter
    def number(self, number: int) -> None:
        self.mat = [fewest(number), *self.mat[1:]]

    @property
    def numbers(self) -> tuple[int, ...]:
        """What each mat shows."""
        return tuple(map(number_of, self.mat))

    @property
    def pieces(self) -> int:
        """How many blocks lie on the first mat."""
        return pieces_of(self.mat[0])

    @property
    def canonical(self) -> bool:
        """Whether the first mat has as few blocks as can be: each count is a digit."""
        return is_canonical(self.mat[0])

    @property
    def compare(self) -> str | None:
        """The sign between two mats, "<", "=" or ">"; None when there is one mat."""
        return None if len(self.mat) == 1 else compared(*self.numbers)

    @property
    def sum(self) -> int:
        """What all mats show together."""
        return sum(self.numbers)

    @property
    def facts(self) -> dict[str, int | str | bool | None]:
        """What is true of the mats, as goals and mistakes ask for it: see `mat_facts`."""
        return {**mat_facts(self.mat)}

    def trade_up(self, place: str, mat: int = 0) -> None:
        """Let ten of a place become one of the next larger place.

        Args:
            place: of the ten.
            mat: which mat, 0 or 1.

        Raises:
            ValueError: no place, fewer than ten, no larger place, or no such mat.
        """
        self._change(mat, lambda blocks: trade_up(blocks, place))

    def trade_down(self, place: str, mat: int = 0) -> None:
        """Let one of a place become ten of the next smaller place.

        Args:
            place: of the one.
            mat: which mat, 0 or 1.

        Raises:
            ValueError: no place, none there, no smaller place, or no such mat.
        """
        self._change(mat, lambda blocks: trade_down(blocks, place))

    def put_together(self) -> None:
        """Put all blocks of the second mat on the first.

        Raises:
            ValueError: there is no second mat, or both are worth more than 9999.

        Example:
            >>> blocks = PlaceValueBlocks([27, 35], pair="add")
            >>> blocks.put_together()
            >>> blocks.numbers, blocks.canonical
            ((62, 0), False)
        """
        self.mat = put_together(self.mat)

    def still(self) -> str:
        """Return a picture of the mats as SVG text, for readers without a live host."""
        names = ("places", "digits", "pair")
        return svg_of(blocks_drawing(self.mat, **{name: getattr(self, name) for name in names}))

    def _change(self, mat: int, step: Callable[[Blocks], Blocks]) -> None:
        if mat not in range(len(self.mat)):
            raise ValueError(f"There is no mat {mat!r}; there are {len(self.mat)}, from 0 on.")
        self.mat = [step(each) if at == mat else each for at, each in enumerate(self.mat)]

    @traitlets.default("mat")
    def _empty(self) -> list[Blocks]:
        return [fewest(0)]

    @traitlets.validate("mat")
    def _check_mat(self, proposal: Bunch) -> list[Blocks]:
        with value_errors_as_trait_errors():
            return check_mat(proposal["value"])

    @traitlets.validate("places")
    def _check_places(self, proposal: Bunch) -> int:
        with value_errors_as_trait_errors():
            return check_places(proposal["value"])


def _mat_of(number: int | Sequence[int]) -> list[Blocks]:
    numbers = number if isinstance(number, (list, tuple)) else [number]
    return check_mat([fewest(each) for each in numbers])
