"""The facts of a coin tray with these traits are those of the widget."""

from __future__ import annotations

import pytest

from manipulatives import CoinTray
from manipulatives.lessons.facts.coins import facts
from manipulatives.maths.money.tray import tray_of

STATES = [
    {},
    {"tray": tray_of("25 10 10 1")},
    {"currency": "gbp", "tray": tray_of("20 5", "gbp"), "purse": {"20": 1, "5": 7}},
]


@pytest.mark.parametrize("traits", STATES)
def test_facts_are_those_of_the_widget(traits):
    assert facts(traits) == CoinTray(**traits).facts
