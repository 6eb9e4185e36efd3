"""The foreseeable mistakes of the counting strand; `RULES` has them all."""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.strands.counting.mistakes.counts import COUNTS, MISCOUNTS
from manipulatives.lessons.strands.counting.mistakes.odd_even import DECIDING, NEXT
from manipulatives.lessons.tasks.rule import Rule

RULES: tuple[Rule[Any], ...] = (*COUNTS, *MISCOUNTS, *DECIDING, *NEXT)
