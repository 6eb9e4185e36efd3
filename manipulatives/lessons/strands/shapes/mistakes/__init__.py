"""The foreseeable mistakes of the shapes strand; `RULES` has them all."""

from __future__ import annotations

from manipulatives.lessons.strands.shapes.mistakes.counting import RULES

__all__ = ["RULES"]
