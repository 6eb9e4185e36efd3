"""Place value blocks: thousands, hundreds, tens and ones that a child moves and trades."""

from __future__ import annotations

from manipulatives.widgets.blocks.blocks import PlaceValueBlocks

__all__ = ["PlaceValueBlocks"]
