"""Words about columns: their names, and the word of the class for regrouping."""

from __future__ import annotations

from manipulatives.maths.columns.written_sum import NAMES
from manipulatives.maths.vocabulary import check_vocabulary

TERMS = ("regroup", "exchange", "carry", "borrow")
_USUAL = {"us": "regroup", "uk": "exchange"}


def check_term(term: object, vocabulary: str = "us") -> str:
    """Check the word for regrouping and return it; None for the default of a vocabulary.

    Defaults are "regroup" in the "us" vocabulary and "exchange" in "uk" (common practice). "carry"
    and "borrow" are the two halves of one older way of speaking: with either of them additions
    carry and subtractions borrow.

    Args:
        term: one of the four, or None for the usual one.
        vocabulary: "us" or "uk".

    Raises:
        ValueError: there is no such word, or no such vocabulary.

    Example:
        >>> check_term(None, "uk"), check_term("borrow")
        ('exchange', 'borrow')
    """
    usual = _USUAL[check_vocabulary(vocabulary)]
    if term is None:
        return usual
    if isinstance(term, str) and term in TERMS:
        return term
    raise ValueError(f"A term is {', '.join(map(repr, TERMS))} or None, not {term!r}.")


def some(count: int, column: int) -> str:
    """Return a number of things of one column.

    Example:
        >>> some(1, 1), some(15, 0)
        ('1 ten', '15 ones')
    """
    return f"{count} {NAMES[column][:-1] if count == 1 else NAMES[column]}"


def title(column: int) -> str:
    """Return the name of a column as it begins a sentence.

    Example:
        >>> title(4)
        'Ten thousands'
    """
    return NAMES[column].capitalize()


def listed(columns: list[int]) -> str:
    """Return the names of columns in one phrase.

    Example:
        >>> listed([1]), listed([1, 2])
        ('tens', 'tens and hundreds')
    """
    return " and ".join(NAMES[column] for column in columns)


def full_ten(total: int, column: int, term: str) -> str:
    """Return what is done with ten or more of a column.

    Example:
        >>> full_ten(15, 0, "regroup"), full_ten(15, 0, "exchange"), full_ten(15, 0, "borrow")
        ('Regroup 10 ones as 1 ten.', 'Exchange 10 ones for 1 ten.', 'Write 5 and carry 1 ten.')
    """
    carried, rest = divmod(total, 10)
    ten, given = some(carried, column + 1), some(10 * carried, column)
    match term:
        case "regroup":
            return f"Regroup {given} as {ten}."
        case "exchange":
            return f"Exchange {given} for {ten}."
        case _:
            return f"Write {rest} and carry {ten}."


def broken_ten(column: int, term: str) -> str:
    """Return what is done with one of a column to get ten of the next smaller one.

    Example:
        >>> broken_ten(1, "regroup"), broken_ten(2, "exchange")
        ('Regroup 1 ten as 10 ones.', 'Exchange 1 hundred for 10 tens.')
        >>> broken_ten(1, "carry")
        'Borrow 1 ten: 10 more ones.'
    """
    one, ten = some(1, column), some(10, column - 1)
    match term:
        case "regroup":
            return f"Regroup {one} as {ten}."
        case "exchange":
            return f"Exchange {one} for {ten}."
        case _:
            return f"Borrow {one}: 10 more {NAMES[column - 1]}."
