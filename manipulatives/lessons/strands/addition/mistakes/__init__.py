"""The foreseeable mistakes of the addition strand; `RULES` has them all."""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.strands.addition.mistakes import columns, equals
from manipulatives.lessons.tasks.rule import Rule

RULES: tuple[Rule[Any], ...] = (*columns.RULES, *equals.RULES)
