"""Written addition and subtraction: worked steps in the class's own method.

What a written sum is and what is true of it stands in `maths.columns`. Column algorithms are a
written method beside strategies: neither the Common Core State Standards up to grade 2 nor
England's programmes of study for years 1 and 2 demand them.
"""

from __future__ import annotations

from collections.abc import Sequence

from manipulatives.lessons.strands.sums.columns.adding import adding_parts, adding_steps
from manipulatives.lessons.strands.sums.columns.jumping import jumping_steps
from manipulatives.lessons.strands.sums.columns.taking import taking_steps
from manipulatives.lessons.strands.sums.columns.working import ColumnStep, Working
from manipulatives.maths.columns.written_sum import (
    COLUMNS,
    LINE,
    PARTS,
    SUBTRACT,
    new_sum,
)
from manipulatives.maths.vocabulary import check_vocabulary
from manipulatives.words.columns import check_term

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
    """Return how a sum is worked out, one step after the other, as it is sent.

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
    return worked_sum(operation, numbers, method, vocabulary=vocabulary, term=term).steps


def worked_sum(
    operation: str,
    numbers: Sequence[int],
    method: str = "counting on",
    *,
    vocabulary: str = "us",
    term: str | None = None,
) -> Working:
    """Return a sum that is worked out, with the numbers of its steps; see `worked_steps`.

    Raises:
        ValueError: such a sum cannot be written here, or there is no such method, vocabulary or
            term.

    Example:
        >>> worked_sum("-", [83, 47], "bridging ten").numbers[2]
        {'place': 'ones', 'act': 'bridge', 'from': 13, 'by': -7, 'parts': [-3, -4], 'ten': 10, ...}
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
