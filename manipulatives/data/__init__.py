"""Tables that Python and JavaScript both read, each stated once.

A table is a JSON file in this folder. Python reads it with `table`; a module in JavaScript imports
it: `import coins from "../../data/coins.json" with { type: "json" };`. Its `about` says what the
numbers mean, for whoever opens the file; neither language is given it. The design tokens, colours
and sizes, are the style sheet `TOKENS`.
"""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).parent
TOKENS = FOLDER / "tokens.css"
"""The style sheet that names every colour and size of the kit, as custom properties."""


@cache
def table(name: str) -> Any:  # noqa: ANN401 - each table has a form of its own
    """Return a table. It is read once, so it must not be changed in place.

    Args:
        name: of its file, without `.json`.

    Raises:
        FileNotFoundError: there is no such table.

    Example:
        >>> table("coins")["gbp"]["minor"]["many"]
        'pence'
    """
    return read_table(FOLDER / f"{name}.json")


def read_table(file: Path) -> Any:  # noqa: ANN401 - whatever the file holds
    """Return what a JSON file holds, without its `about`.

    Raises:
        FileNotFoundError: there is no such file.
        ValueError: it is not JSON.

    Example:
        >>> sorted(read_table(FOLDER / "number_words.json"))
        ['small', 'tens']
    """
    data = json.loads(file.read_text("utf-8"))
    if isinstance(data, dict):
        data.pop("about", None)
    return data
