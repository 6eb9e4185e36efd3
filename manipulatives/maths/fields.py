"""Checks of dicts that people write, with errors that say what is allowed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

LONGEST_TEXT = 24


def fields_of(
    data: object, what: str, needed: Sequence[str], optional: Sequence[str] = ()
) -> dict[str, Any]:
    """Check that a dict has all needed fields and no unknown ones, and return a copy.

    Args:
        data: what was given.
        what: its name, for the beginning of a sentence.
        needed: the fields it must have.
        optional: the fields it may have.

    Raises:
        ValueError: it is no dict, a field is missing, or one is unknown.

    Example:
        >>> fields_of({"sign": "t"}, "A unit", ["sign"])
        {'sign': 't'}
        >>> fields_of({"sing": "t"}, "A unit", ["sign"])
        Traceback (most recent call last):
            ...
        ValueError: A unit has no field 'sing'. It has "sign".
    """
    known = [*needed, *optional]
    names = ", ".join(f'"{name}"' for name in known)
    has = f"has {names}"
    if not isinstance(data, Mapping):
        # Everywhere in the kit a wrong value of any type is a ValueError.
        raise ValueError(f"{what} is a dict that {has}, not {data!r}.")  # noqa: TRY004
    for name in data:
        if name not in known:
            raise ValueError(f"{what} has no field {name!r}. It {has}.")
    for name in needed:
        if name not in data:
            raise ValueError(f'{what} needs the field "{name}". It {has}.')
    return dict(data)


def text_in(value: object, what: str) -> str:
    """Check a short text on one line and return it.

    Args:
        value: what was given.
        what: its name, for the beginning of a sentence.

    Raises:
        ValueError: it is no text, empty, too long or not on one line.

    Example:
        >>> text_in("token", "The name of a unit")
        'token'
    """
    if (
        isinstance(value, str)
        and 1 <= len(value) <= LONGEST_TEXT
        and value.strip() == value
        and value.isprintable()
    ):
        return value
    raise ValueError(f"{what} is a text of 1 to {LONGEST_TEXT} letters on one line, not {value!r}.")
