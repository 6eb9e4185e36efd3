"""The column board: sums as they are written on squared paper."""

from __future__ import annotations

from manipulatives.widgets.columns.columns import ColumnBoard

__all__ = ["ColumnBoard"]
