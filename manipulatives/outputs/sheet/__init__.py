"""A lesson as practice on paper, and the key to it: the same sheet answered."""

from __future__ import annotations

from manipulatives.outputs.sheet.sheet import sheet_of, sheet_of_file

__all__ = ["sheet_of", "sheet_of_file"]
