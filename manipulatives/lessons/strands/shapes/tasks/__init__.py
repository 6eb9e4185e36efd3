"""The tasks of the shapes strand; `GENERATORS` makes those of each skill."""

from __future__ import annotations

from manipulatives.lessons.strands.shapes.tasks.generators import GENERATORS

__all__ = ["GENERATORS"]
