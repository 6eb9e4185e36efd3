"""Every rule of a foreseeable mistake, by the name that records keep."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from manipulatives.maths import (
    mistakes_addition,
    mistakes_counting,
    mistakes_equals,
    mistakes_money,
    mistakes_place_value,
    mistakes_shapes,
    mistakes_stories,
    mistakes_subtraction,
    mistakes_time,
)
from manipulatives.maths.mistake_rule import Rule, may_have

__all__ = ["RULES", "Rule", "may_have"]

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
