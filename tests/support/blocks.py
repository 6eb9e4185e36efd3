"""Blocks of every kind that a mat can hold, for property tests."""

from __future__ import annotations

from typing import TYPE_CHECKING

from hypothesis import strategies as st

from manipulatives.maths.number.place_value import LARGEST, PLACES, WORTH

if TYPE_CHECKING:
    from random import Random

    from manipulatives.maths.number.place_value import Blocks


@st.composite
def blocks(draw: st.DrawFn, largest: int = LARGEST) -> Blocks:
    """Blocks worth at most so much, canonical or not."""
    room = draw(st.integers(0, largest))
    made = {}
    for place in PLACES:
        made[place] = draw(st.integers(0, room // WORTH[place]))
        room -= made[place] * WORTH[place]
    return made


def random_blocks(chance: Random) -> Blocks:
    """Blocks by chance: often what a lesson has, sometimes anything that a mat can hold."""
    room = chance.choice([9, 35, 99, 345, 999, LARGEST])
    made = {}
    for place in PLACES:
        most = room // WORTH[place]
        made[place] = chance.randint(0, most if chance.random() < 0.2 else min(most, 19))
        room -= made[place] * WORTH[place]
    return made
