"""Every rule of a foreseeable mistake, by the name that records keep."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from manipulatives.lessons.strands.addition.mistakes import (
    columns as mistakes_addition,
)
from manipulatives.lessons.strands.addition.mistakes import (
    equals as mistakes_equals,
)
from manipulatives.lessons.strands.counting.mistakes import counts as mistakes_counting
from manipulatives.lessons.strands.money.mistakes import paying as mistakes_money
from manipulatives.lessons.strands.place_value.mistakes import rules as mistakes_place_value
from manipulatives.lessons.strands.shapes.mistakes import counting as mistakes_shapes
from manipulatives.lessons.strands.stories import mistakes as mistakes_stories
from manipulatives.lessons.strands.subtraction import mistakes as mistakes_subtraction
from manipulatives.lessons.strands.time.mistakes import rules as mistakes_time
from manipulatives.lessons.tasks.rule import Rule

_TABLES: tuple[tuple[Rule[Any], ...], ...] = (
    mistakes_counting.RULES,
    mistakes_place_value.RULES,
    mistakes_addition.RULES,
    mistakes_subtraction.RULES,
    mistakes_equals.RULES,
    mistakes_stories.RULES,
    mistakes_shapes.RULES,
    mistakes_money.RULES,
    mistakes_time.RULES,
)

RULES: Mapping[str, Rule[Any]] = MappingProxyType(
    {rule.id: rule for table in _TABLES for rule in table}
)
"""What may have been done, by name; no name stands for two things."""

if len(RULES) != sum(len(table) for table in _TABLES):
    names = [rule.id for table in _TABLES for rule in table]
    raise RuntimeError(f"Rules share a name: {sorted({n for n in names if names.count(n) > 1})}.")
