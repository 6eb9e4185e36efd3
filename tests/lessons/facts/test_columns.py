"""The facts of a column board with these traits are those of the widget."""

from __future__ import annotations

import pytest

from manipulatives import ColumnBoard
from manipulatives.lessons.facts.columns import facts
from manipulatives.lessons.strands.sums.columns.methods import worked_steps
from manipulatives.maths.columns.written_sum import new_sum

SHOWN = {"sum": new_sum("-", [83, 47]), "steps": worked_steps("-", [83, 47]), "mode": "show"}
STATES = [
    {"sum": new_sum("+", [47, 38])},
    *({**SHOWN, "step": step} for step in (0, 2, 5)),
]


@pytest.mark.parametrize("traits", STATES)
def test_facts_are_those_of_the_widget(traits):
    assert facts(traits) == ColumnBoard(**traits).facts
