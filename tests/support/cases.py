"""The tables of cases that Python and JavaScript both satisfy."""

from __future__ import annotations

import json
from typing import Any

from support.files import ROOT


def cases(name: str) -> Any:
    """Return the table tests/cases/NAME.json."""
    return json.loads((ROOT / "tests" / "cases" / f"{name}.json").read_text("utf-8"))
