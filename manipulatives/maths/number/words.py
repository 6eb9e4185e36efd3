"""Whole numbers in words."""

from __future__ import annotations

from manipulatives.data import table
from manipulatives.maths.time.day import is_whole
from manipulatives.maths.vocabulary import check_vocabulary

BELOW = 1_000_000

_SMALL: list[str] = table("number_words")["small"]
_TENS: list[str] = table("number_words")["tens"]
_AND = {"us": " ", "uk": " and "}


def number_in_words(number: int, vocabulary: str = "us") -> str:
    """Return a whole number in words.

    In "uk", but not in "us", there is an "and" before the tens (common practice in both).

    Raises:
        ValueError: it is no whole number from 0 to 999 999, or no vocabulary of the kit.

    Example:
        >>> number_in_words(41), number_in_words(141), number_in_words(141, "uk")
        ('forty-one', 'one hundred forty-one', 'one hundred and forty-one')
    """
    if not is_whole(number, BELOW):
        raise ValueError(f"A number in words is whole, from 0 to {BELOW - 1}, not {number!r}.")
    joint = _AND[check_vocabulary(vocabulary)]
    thousands, rest = divmod(number, 1000)
    if not thousands:
        return _below_thousand(rest, joint)
    words = f"{_below_thousand(thousands, joint)} thousand"
    if not rest:
        return words
    return f"{words}{joint if rest < 100 else ' '}{_below_thousand(rest, joint)}"  # noqa: PLR2004 - a hundred is a hundred


def _below_thousand(number: int, joint: str) -> str:
    hundreds, rest = divmod(number, 100)
    if not hundreds:
        return _below_hundred(rest)
    words = f"{_SMALL[hundreds]} hundred"
    return f"{words}{joint}{_below_hundred(rest)}" if rest else words


def _below_hundred(number: int) -> str:
    if number < len(_SMALL):
        return _SMALL[number]
    tens, ones = divmod(number, 10)
    return f"{_TENS[tens]}-{_SMALL[ones]}" if ones else _TENS[tens]
