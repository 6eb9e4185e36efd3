"""The tasks of the addition strand; `GENERATORS` makes those of each skill."""

from __future__ import annotations

from manipulatives.lessons.strands.addition.tasks.additions import GENERATORS

__all__ = ["GENERATORS"]
