"""The result of a command as JSON, for other programs."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import argparse


def json_argument(parser: argparse.ArgumentParser) -> None:
    """Add the argument for output as JSON."""
    parser.add_argument("--json", action="store_true", help="as data for another program")


def as_json(data: Any) -> str:  # noqa: ANN401 - whatever JSON can hold
    """Return data as JSON text; an iterable becomes a list."""
    plain = data if isinstance(data, dict) else list(data)
    return json.dumps(plain, ensure_ascii=False, indent=2)
