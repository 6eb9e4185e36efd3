"""How long sentences are and which numbers they say, in figures or in words."""

from __future__ import annotations

import re
from functools import cache

from num2words import num2words

_FIGURES = re.compile(r"\d+")
_WORDS = re.compile(r"[a-z]+(?:-[a-z]+)?")
MOST = 100


@cache
def _in_words() -> dict[str, int]:
    return {num2words(number): number for number in range(MOST)}


def numbers_said(text: str) -> set[int]:
    """Return every number of a sentence: those in figures, and those below a hundred in words."""
    figures = {int(figure) for figure in _FIGURES.findall(text)}
    words = {_in_words()[word] for word in _WORDS.findall(text.lower()) if word in _in_words()}
    return figures | words


def check_length(text: str, most: int = 10) -> None:
    """Check that no sentence has more than so many words; numbers count as words."""
    for sentence in re.findall(r"[^.?!]+[.?!]", text):
        assert len(sentence.split()) <= most, sentence
