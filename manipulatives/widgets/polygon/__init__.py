"""The polygon drawer: paper on which shapes are drawn, traced, looked at and cut."""

from __future__ import annotations

from manipulatives.widgets.polygon.polygon import PolygonDrawer

__all__ = ["PolygonDrawer"]
