"""The coin tray: a purse, a mat, and coins that a child takes hold of."""

from __future__ import annotations

from manipulatives.widgets.coins.coins import CoinTray

__all__ = ["CoinTray"]
