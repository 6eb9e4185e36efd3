"""Every rule of a foreseeable mistake, by the id that records store."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from importlib import import_module
from types import MappingProxyType
from typing import Any

from manipulatives.lessons.strands import STRANDS
from manipulatives.lessons.tasks.rule import Rule

# Stories and missing numbers belong to addition and to subtraction.
_FOLDERS = (*STRANDS, "stories")
_ALL: tuple[Rule[Any], ...] = tuple(
    rule for folder in _FOLDERS for rule in import_module(f"{__package__}.{folder}.mistakes").RULES
)

RULES: Mapping[str, Rule[Any]] = MappingProxyType({rule.id: rule for rule in _ALL})
"""What may have been done, by id; no id stands for two things."""

if len(RULES) != len(_ALL):
    shared = [name for name, count in Counter(rule.id for rule in _ALL).items() if count > 1]
    raise RuntimeError(f"Rules share a name: {sorted(shared)}.")
