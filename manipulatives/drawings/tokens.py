"""The kit's colours by name, read from the style sheet of the design tokens."""

from __future__ import annotations

import re
from functools import cache

from manipulatives.data import TOKENS


@cache
def colours() -> dict[str, str]:
    """Return every colour of the kit by its name, without the dashes in front.

    Of a name that the style sheet defines twice, as for a dark screen, the first value is used.

    Example:
        >>> colours()["ink"]
        '#1c2530'
    """
    found: dict[str, str] = {}
    for name, colour in re.findall(r"--([a-z][a-z-]*):\s*(#[0-9a-fA-F]{6})\b", _style_sheet()):
        found.setdefault(name, colour.lower())
    return found


def colour(token: str) -> str:
    """Return the colour of a token as `#rrggbb`.

    Args:
        token: its name, such as `"ink"`.

    Raises:
        ValueError: if the kit has no such colour.

    Example:
        >>> colour("sheet")
        '#fffdf8'
    """
    try:
        return colours()[token]
    except KeyError:
        names = ", ".join(colours())
        raise ValueError(f'There is no colour "{token}". The kit has {names}.') from None


@cache
def typeface() -> str:
    """Return the families that text is set in, the kit's own first, as style sheets write them."""
    found = re.search(r"--type:\s*([^;}]+)", _style_sheet())
    return " ".join(found[1].split()) if found else "sans-serif"


def _style_sheet() -> str:
    return re.sub(r"/\*.*?\*/", "", TOKENS.read_text(encoding="utf-8"), flags=re.DOTALL)
