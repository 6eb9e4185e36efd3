"""The facts of a shape on paper with these traits are those of the widget."""

from __future__ import annotations

import pytest

from manipulatives import PolygonDrawer
from manipulatives.lessons.facts.polygon import facts

SQUARE = {"points": [[1, 1], [5, 1], [5, 5], [1, 5]], "closed": True}
STATES = [{}, {"shape": SQUARE}, {"shape": SQUARE, "guide": SQUARE, "vocabulary": "uk"}]


@pytest.mark.parametrize("traits", STATES)
def test_facts_are_those_of_the_widget(traits):
    assert facts(traits) == PolygonDrawer(**traits).facts
