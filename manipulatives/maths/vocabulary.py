"""The two vocabularies of the kit: US and UK English."""

from __future__ import annotations

VOCABULARIES = ("us", "uk")


def check_vocabulary(vocabulary: object) -> str:
    """Check a vocabulary and return it.

    Raises:
        ValueError: it is neither "us" nor "uk".

    Example:
        >>> check_vocabulary("uk")
        'uk'
    """
    if isinstance(vocabulary, str) and vocabulary in VOCABULARIES:
        return vocabulary
    raise ValueError(f'The vocabulary is "us" or "uk", not {vocabulary!r}.')
