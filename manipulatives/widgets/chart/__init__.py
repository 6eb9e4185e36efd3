"""The counting chart: numbers to count on, to wipe and to write."""

from __future__ import annotations

from manipulatives.widgets.chart.chart import CountingChart

__all__ = ["CountingChart"]
