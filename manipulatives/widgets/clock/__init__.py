"""The clock: two hands that a child takes hold of."""

from __future__ import annotations

from manipulatives.widgets.clock.clock import Clock

__all__ = ["Clock"]
