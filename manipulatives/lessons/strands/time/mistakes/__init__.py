"""The foreseeable mistakes of the time strand; `RULES` has them all."""

from __future__ import annotations

from manipulatives.lessons.strands.time.mistakes.rules import RULES

__all__ = ["RULES"]
