"""Chance is even: of everything that a skill can ask about, nothing comes more often."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS, options_at
from manipulatives.lessons.tasks.make import GENERATORS, make_tasks
from support.evenness import chi_squared, too_uneven

ROUNDS = 400
MOST_CELLS = 20
"""The items of a long family are counted in so many stretches of the same length."""


def places_asked(monkeypatch, skill, seeds, order="any"):
    """Return which of its items a skill asks about, by their places, over many seeds."""
    generator = GENERATORS[skill]
    asked = []

    def items(options):
        return range(len(generator.items(options)))

    def task(request):
        asked.append(request.item)
        return generator.task(replace(request, item=generator.items(request.options)[request.item]))

    numbered = replace(generator, items=items, task=task)
    monkeypatch.setitem(GENERATORS, skill, numbered)
    for seed in seeds:
        make_tasks(skill, seed=seed, count=1, options={"order": order}, twins=0)
    return asked


def stretches(places, many):
    """Count places in stretches that are as long as they can be alike, and return them all."""
    cells = min(many, MOST_CELLS)
    even = many - many % cells
    return Counter(place * cells // even for place in places if place < even), range(cells)


@pytest.mark.parametrize("skill", SKILLS)
def test_everything_that_a_skill_can_ask_is_asked_as_often(monkeypatch, skill):
    many = len(GENERATORS[skill].items({**options_at(skill, {}, 0), "currency": "usd"}))
    counts, cells = stretches(places_asked(monkeypatch, skill, range(ROUNDS)), many)
    if len(cells) > 1:
        assert chi_squared(counts, cells) < too_uneven(cells)


def test_unevenness_would_be_seen():
    lopsided = [0, *range(100)] * 4
    counts, cells = stretches(lopsided, 100)
    assert chi_squared(counts, cells) < too_uneven(cells)
    counts, cells = stretches(lopsided + [3] * 80, 100)
    assert chi_squared(counts, cells) > too_uneven(cells)
