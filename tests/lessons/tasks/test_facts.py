"""Every manipulative has facts, and they are those of its widget."""

from __future__ import annotations

import sys

import pytest

from manipulatives.lessons import facts
from manipulatives.lessons.tasks.facts import facts_by_manipulative, facts_of
from manipulatives.widgets.round.children import MANIPULATIVES


def test_every_manipulative_has_facts():
    assert set(facts_by_manipulative()) == set(MANIPULATIVES)


@pytest.mark.parametrize("name", MANIPULATIVES)
def test_facts_of_a_new_one_are_those_of_the_widget(name):
    widget = MANIPULATIVES[name]()
    traits = {trait: getattr(widget, trait) for trait in widget.traits_of_its_own()}
    assert facts_of(name, traits, "7") == {**widget.facts, "answer": "7"}


def test_a_manipulative_that_there_is_not_has_no_facts():
    with pytest.raises(KeyError):
        facts_of("Abacus", {})


def test_facts_are_found_without_being_named(tmp_path, monkeypatch):
    (tmp_path / "abacus.py").write_text(
        "MANIPULATIVE = 'Abacus'\ndef facts(traits): return {'beads': traits['beads']}\n", "utf-8"
    )
    monkeypatch.setattr(facts, "__path__", [*facts.__path__, str(tmp_path)])
    found = facts_by_manipulative.__wrapped__()
    sys.modules.pop("manipulatives.lessons.facts.abacus")
    assert found["Abacus"]({"beads": 7}) == {"beads": 7}
    assert set(found) == {*MANIPULATIVES, "Abacus"}
