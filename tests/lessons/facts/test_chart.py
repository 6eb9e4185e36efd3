"""The facts of a counting chart with these traits are those of the widget."""

from __future__ import annotations

import pytest

from manipulatives import CountingChart
from manipulatives.lessons.facts.chart import facts

STATES = [
    {},
    {"step": 5, "chart": {"counted": [5, 10], "tapped": None, "written": {}}},
    {"first": 101, "last": 120, "hidden": "thirds", "mode": "write"},
]


@pytest.mark.parametrize("traits", STATES)
def test_facts_are_those_of_the_widget(traits):
    assert facts(traits) == CountingChart(**traits).facts
