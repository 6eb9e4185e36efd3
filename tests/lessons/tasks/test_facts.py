"""The facts of plain traits are those of the widget with these traits."""

from __future__ import annotations

import pytest

import manipulatives
from manipulatives.lessons.strands.sums.columns.methods import worked_steps
from manipulatives.lessons.tasks.facts import FACTS, facts_of
from manipulatives.maths.columns.written_sum import new_sum
from manipulatives.maths.money.tray import tray_of

SQUARE = {"points": [[1, 1], [5, 1], [5, 5], [1, 5]], "closed": True}
STATES = [
    ("Clock", {"dial": {"hour": 275, "minute": 35, "half": "am"}}),
    ("CoinTray", {}),
    ("CoinTray", {"tray": tray_of("25 10 10 1")}),
    ("CoinTray", {"currency": "gbp", "tray": tray_of("20 5", "gbp"), "purse": {"20": 1, "5": 7}}),
    ("ColumnBoard", {"sum": new_sum("+", [47, 38])}),
    *(
        (
            "ColumnBoard",
            {
                "sum": new_sum("-", [83, 47]),
                "steps": worked_steps("-", [83, 47]),
                "mode": "show",
                "step": step,
            },
        )
        for step in (0, 2, 5)
    ),
    ("CountingChart", {}),
    ("CountingChart", {"step": 5, "chart": {"counted": [5, 10], "tapped": None, "written": {}}}),
    ("CountingChart", {"first": 101, "last": 120, "hidden": "thirds", "mode": "write"}),
    ("PlaceValueBlocks", {}),
    ("PlaceValueBlocks", {"mat": [{"tens": 2, "ones": 15}, {"hundreds": 1}]}),
    ("PolygonDrawer", {}),
    ("PolygonDrawer", {"shape": SQUARE}),
    ("PolygonDrawer", {"shape": SQUARE, "guide": SQUARE, "vocabulary": "uk"}),
]


@pytest.mark.parametrize(("name", "traits"), STATES)
def test_facts_are_those_of_the_widget(name, traits):
    widget = getattr(manipulatives, name)(**traits)
    assert facts_of(name, traits, "7") == {**widget.facts, "answer": "7"}


def test_every_manipulative_has_facts():
    assert set(FACTS) == {name for name, _ in STATES}
    assert set(FACTS) <= set(manipulatives.__all__)
