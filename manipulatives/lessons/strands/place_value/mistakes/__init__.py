"""The foreseeable mistakes of the place value strand; `RULES` has them all."""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.strands.place_value.mistakes.comparing import COMPARING, ORDERING
from manipulatives.lessons.strands.place_value.mistakes.rules import (
    BUILDING,
    COMPOSING,
    DECOMPOSING,
    EXPANDING,
    FROM_PARTS,
    FROM_PARTS_IN_ORDER,
    READING,
    READING_BLOCKS,
    VALUE,
    WORDS,
)
from manipulatives.lessons.tasks.rule import Rule

_TABLES: tuple[tuple[Rule[Any], ...], ...] = (
    READING, READING_BLOCKS, WORDS, BUILDING, EXPANDING, FROM_PARTS, FROM_PARTS_IN_ORDER,
    COMPOSING, DECOMPOSING, VALUE, COMPARING, ORDERING,
)  # fmt: skip
# The same rule is in several tables.
RULES = tuple({rule.id: rule for table in _TABLES for rule in table}.values())
