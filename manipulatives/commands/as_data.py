"""What a command finds out, as data for another program."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import argparse


def json_argument(parser: argparse.ArgumentParser) -> None:
    """Tell a parser that data may be wanted."""
    parser.add_argument("--json", action="store_true", help="as data for another program")


def as_json(data: Any) -> str:  # noqa: ANN401 - whatever JSON can hold
    """Return data as the text of JSON, a list for whatever yields several."""
    plain = data if isinstance(data, dict) else list(data)
    return json.dumps(plain, ensure_ascii=False, indent=2)
