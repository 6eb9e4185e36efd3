"""How blocks fly: from where they were to the places of what they become."""

from __future__ import annotations

import pytest

from manipulatives.maths.number.place_value import PLACES, check_blocks

WAYS = "blocks/state/ways.js"
UNIT = 10


def spots(blocks, shift=0):
    """A row of spots for each place, told apart by their numbers."""
    return {
        place: [{"x": 1000 * row + at, "y": shift} for at in range(blocks[place])]
        for row, place in enumerate(PLACES)
    }


def ways(js, before, after, **how):
    olds = [check_blocks(blocks) for blocks in before]
    news = [check_blocks(blocks) for blocks in after]
    was = [spots(blocks) for blocks in olds]
    now = [spots(blocks, 500) for blocks in news]
    (found,) = js(WAYS, "waysBetween", [[olds, news, was, now, UNIT, how]])
    return found, was, now


def test_ten_ones_come_to_the_ten_parts_of_the_new_ten(js):
    (way,), was, now = ways(js, [{"tens": 2, "ones": 15}], [{"tens": 3, "ones": 5}])
    assert way["place"] == "ones"
    assert way["from"] == was[0]["ones"][5:]
    ten = now[0]["tens"][2]
    assert way["to"] == [{"x": ten["x"], "y": ten["y"] + UNIT * at} for at in range(10)]
    assert way["fresh"] == {"at": 0, "place": "tens", "count": 1}
    assert way["gone"] == {"at": 0, "place": "ones", "spots": was[0]["ones"][5:]}


def test_the_ones_that_were_ringed_are_those_that_go(js):
    ringed = [0, 1, 2, 3, 4, 7, 8, 9, 11, 13]
    gone = {"at": 0, "place": "ones", "indices": ringed}
    (way,), was, _ = ways(js, [{"ones": 15}], [{"tens": 1, "ones": 5}], gone=gone)
    assert way["from"] == [was[0]["ones"][index] for index in ringed]


def test_a_hundred_breaks_into_tens_beside_each_other(js):
    (way,), was, now = ways(js, [{"hundreds": 1}], [{"tens": 10}])
    corner = was[0]["hundreds"][0]
    assert way["place"] == "tens"
    assert way["from"] == [{"x": corner["x"] + UNIT * at, "y": corner["y"]} for at in range(10)]
    assert way["to"] == now[0]["tens"]
    assert way["fresh"] == {"at": 0, "place": "tens", "count": 10}


def test_what_is_dropped_breaks_where_it_was_let_go(js):
    held = {
        "at": 0,
        "place": "tens",
        "spots": [{"x": 70, "y": 80}],
        "target": {"at": 0, "place": "ones"},
    }
    gone = {"at": 0, "place": "tens", "indices": [0]}
    (way,), was, _ = ways(
        js, [{"tens": 2, "ones": 1}], [{"tens": 1, "ones": 11}], held=held, gone=gone
    )
    assert way["from"] == [{"x": 70, "y": 80 + UNIT * at} for at in range(10)]
    assert way["gone"]["spots"] == [was[0]["tens"][0]]


@pytest.mark.parametrize("into", ["tens", "ones"])
def test_a_block_from_the_box_comes_from_the_hand(js, into):
    held = {
        "at": None,
        "place": "tens",
        "spots": [{"x": 70, "y": 80}],
        "target": {"at": 0, "place": into},
    }
    more = 1 if into == "tens" else 10
    (way,), _, now = ways(
        js, [{"tens": 1}], [{"tens": 1, into: 1 + more if into == "tens" else more}], held=held
    )
    assert way["place"] == into
    assert len(way["from"]) == len(way["to"]) == more
    assert way["to"] == now[0][into][-more:]
    assert way["gone"] is None


def test_blocks_put_together_go_from_mat_to_mat(js):
    found, was, now = ways(
        js, [{"tens": 2, "ones": 7}, {"tens": 3, "ones": 5}], [{"tens": 5, "ones": 12}, {}]
    )
    assert {way["place"] for way in found} == {"tens", "ones"}
    for way in found:
        assert way["from"] == was[1][way["place"]]
        assert way["to"] == now[0][way["place"]][-len(way["from"]) :]
        assert way["gone"] is None


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ([{"ones": 5}], [{"ones": 6}]),
        ([{"tens": 5}], [{"hundreds": 3, "ones": 4}]),
        ([{"tens": 5}], [{"tens": 5}, {}]),
        ([{"tens": 5}, {"ones": 1}], [{"tens": 4}, {"ones": 2}]),
    ],
)
def test_nothing_flies_where_nothing_became_anything_else(js, before, after):
    found, _, _ = ways(js, before, after)
    assert found == []
