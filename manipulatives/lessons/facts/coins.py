"""What is true of a coin tray, from its traits."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from manipulatives.maths.money.tray import check_purse, tray_facts

MANIPULATIVE = "CoinTray"


def facts(traits: Mapping[str, Any]) -> dict[str, Any]:
    """Return the facts of a coin tray.

    Raises:
        ValueError: the purse or the tray has something that the currency has not.

    Example:
        >>> from manipulatives.maths.money.tray import tray_of
        >>> facts({"tray": tray_of("25 10")})["total"]
        35
    """
    currency = traits.get("currency", "usd")
    purse = check_purse(traits.get("purse"), currency)
    return {**tray_facts(traits.get("tray", []), currency, purse)}
