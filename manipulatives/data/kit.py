"""Which version of the kit this is.

What the kit makes says so: the same seed may draw other numbers in another version.
"""

from __future__ import annotations

from functools import cache
from importlib.metadata import version


@cache
def kit_version() -> str:
    """Return the kit's version, as `pyproject.toml` says it.

    Example:
        >>> kit_version().split(".")[0].isdigit()
        True
    """
    return version("manipulatives")
