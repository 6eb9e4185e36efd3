"""What is true of a clock, from its traits."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from manipulatives.maths.time.dial import dial_facts

MANIPULATIVE = "Clock"


def facts(traits: Mapping[str, Any]) -> dict[str, Any]:
    """Return the facts of a clock.

    Raises:
        KeyError: the dial is missing.
        ValueError: the dial is none.

    Example:
        >>> facts({"dial": {"hour": 275, "minute": 35, "half": "am"}})["meant"]
        275
    """
    return {**dial_facts(traits["dial"])}
