"""The two vocabularies that the kit speaks: US and UK English."""

from __future__ import annotations

VOCABULARIES = ("us", "uk")


def check_vocabulary(vocabulary: object) -> str:
    """Return the vocabulary that was given, if the kit speaks it.

    Raises:
        ValueError: it is neither "us" nor "uk".

    Example:
        >>> check_vocabulary("uk")
        'uk'
    """
    if isinstance(vocabulary, str) and vocabulary in VOCABULARIES:
        return vocabulary
    raise ValueError(f'The vocabulary is "us" or "uk", not {vocabulary!r}.')
