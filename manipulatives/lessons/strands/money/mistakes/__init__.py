"""The foreseeable mistakes of the money strand; `RULES` has them all."""

from __future__ import annotations

from manipulatives.lessons.strands.money.mistakes.paying import RULES

__all__ = ["RULES"]
