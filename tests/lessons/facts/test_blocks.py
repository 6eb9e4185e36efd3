"""The facts of place value blocks with these traits are those of the widget."""

from __future__ import annotations

import pytest

from manipulatives import PlaceValueBlocks
from manipulatives.lessons.facts.blocks import facts

STATES = [{}, {"mat": [{"tens": 2, "ones": 15}, {"hundreds": 1}]}]


@pytest.mark.parametrize("traits", STATES)
def test_facts_are_those_of_the_widget(traits):
    assert facts(traits) == PlaceValueBlocks(**traits).facts
