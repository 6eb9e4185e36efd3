"""The tasks of the money strand; `GENERATORS` makes those of each skill."""

from __future__ import annotations

from manipulatives.lessons.strands.money.tasks.generators import GENERATORS

__all__ = ["GENERATORS"]
