"""Written addition and subtraction: worked steps in the class's own method.

What a written sum is (`column_sum`), which blocks stand for it (`column_blocks`), what is true of
it (`column_facts`) and what is hard about it (`column_difficulty`) have files of their own and are
handed on from here. Column algorithms are a written method beside strategies: neither the Common
Core State Standards up to grade 2 nor England's programmes of study for years 1 and 2 demand them.
"""

from __future__ import annotations

from collections.abc import Sequence

from manipulatives.maths.column_addition import adding_parts, adding_steps
from manipulatives.maths.column_blocks import Rows, blocks_of, worth_of
from manipulatives.maths.column_difficulty import Difficulty, borrows, carries, difficulty
from manipulatives.maths.column_facts import jumped_to, marks_needed, sum_facts
from manipulatives.maths.column_steps import ColumnStep, in_signs, played
from manipulatives.maths.column_subtraction import taking_steps
from manipulatives.maths.column_sum import (
    ADD,
    COLUMNS,
    LINE,
    NAMES,
    OPERATIONS,
    PARTS,
    SUBTRACT,
    Sum,
    answer_of,
    check_numbers,
    check_sum,
    new_sum,
    read_sum,
    result_of,
    start_of,
    width_of,
    written,
)
from manipulatives.maths.column_words import TERMS, check_term
from manipulatives.maths.day import check_vocabulary
from manipulatives.maths.number_line_jumps import jumping_steps

__all__ = [
    "ADD",
    "FORM_OF",
    "LINE",
    "METHODS",
    "NAMES",
    "OPERATIONS",
    "PARTS",
    "SUBTRACT",
    "TERMS",
    "ColumnStep",
    "Difficulty",
    "Rows",
    "Sum",
    "answer_of",
    "blocks_of",
    "borrows",
    "carries",
    "check_method",
    "check_numbers",
    "check_sum",
    "check_term",
    "difficulty",
    "in_signs",
    "jumped_to",
    "marks_needed",
    "new_sum",
    "played",
    "read_sum",
    "result_of",
    "start_of",
    "sum_facts",
    "width_of",
    "worked_steps",
    "worth_of",
    "written",
]

FORM_OF = {
    "counting on": COLUMNS,
    "known facts": COLUMNS,
    "bridging ten": COLUMNS,
    "expanded columns": PARTS,
    "number line jumps": LINE,
}
"""The methods, each with the form in which a sum is written for it."""
METHODS = tuple(FORM_OF)


def check_method(method: object) -> str:
    """Return the method that was given, if the kit can show it.

    Raises:
        ValueError: there is no such method.

    Example:
        >>> check_method("bridging ten")
        'bridging ten'
    """
    if isinstance(method, str) and method in METHODS:
        return method
    raise ValueError(f"A method is {', '.join(map(repr, METHODS))}, not {method!r}.")


def worked_steps(
    operation: str,
    numbers: Sequence[int],
    method: str = "counting on",
    *,
    vocabulary: str = "us",
    term: str | None = None,
) -> list[ColumnStep]:
    """Return how a sum is worked out, one step after the other.

    Played one after the other on `new_sum(operation, numbers, FORM_OF[method])`, what the steps
    write leads to the answer, and after each the blocks are those of what is written.

    Args:
        operation: "+" or "-".
        numbers: two to four to be added, or two, the second taken away from the first.
        method: how the class works: "counting on", "known facts", "bridging ten",
            "expanded columns" or "number line jumps".
        vocabulary: "us" or "uk", for numbers in words and the usual term.
        term: "regroup", "exchange", "carry" or "borrow"; None for the usual one.

    Raises:
        ValueError: such a sum cannot be written here, or there is no such method, vocabulary or
            term.

    Example:
        >>> steps = worked_steps("-", [83, 47], "bridging ten", vocabulary="uk")
        >>> [step["say"] for step in steps][:2]
        ['Ones: is 3 enough to take away 7?', 'Exchange 1 ten for 10 ones.']
        >>> steps[1]["write"], steps[1]["blocks"]
        ([['marks', 1, 7], ['marks', 0, 13]], {'left': [13, 7], 'taken': [0, 0]})
    """
    spoken, word = check_vocabulary(vocabulary), check_term(term, vocabulary)
    form = FORM_OF[check_method(method)]
    fresh = new_sum(operation, numbers, form)
    if form == LINE:
        return jumping_steps(fresh, word, spoken)
    if operation == SUBTRACT:
        return taking_steps(fresh, "known facts" if form == PARTS else method, word, spoken)
    if form == PARTS:
        return adding_parts(fresh, word, spoken)
    return adding_steps(fresh, method, word, spoken)
