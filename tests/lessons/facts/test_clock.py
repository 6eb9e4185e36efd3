"""The facts of a clock with these traits are those of the widget."""

from __future__ import annotations

import pytest

from manipulatives import Clock
from manipulatives.lessons.facts.clock import facts

STATES = [{"dial": {"hour": 275, "minute": 35, "half": "am"}}]


@pytest.mark.parametrize("traits", STATES)
def test_facts_are_those_of_the_widget(traits):
    assert facts(traits) == Clock(**traits).facts
