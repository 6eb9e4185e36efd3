from __future__ import annotations

import math

import pytest

from manipulatives.maths.shapes.outline import outline_of
from manipulatives.maths.shapes.properties import properties_of
from manipulatives.maths.shapes.ready import shape_named
from manipulatives.words.shape_facts import called, shape_facts
from manipulatives.words.shape_names import Wording, by_sides, is_pentagram, is_star

# Names by number of sides: standard usage, from memory; eleven and twelve were looked up.
NAMES = {
    3: "triangle",
    4: "quadrilateral",
    5: "pentagon",
    6: "hexagon",
    7: "heptagon",
    8: "octagon",
    9: "nonagon",
    10: "decagon",
    11: "hendecagon",
    12: "dodecagon",
    20: "icosagon",
}


def ring(many, radius=lambda _: 380):
    return [
        [
            round(400 + radius(at) * math.sin(math.tau * at / many)),
            round(400 - radius(at) * math.cos(math.tau * at / many)),
        ]
        for at in range(many)
    ]


def facts(points, grid="plain", wording=None):
    return shape_facts({"points": points, "closed": True}, grid, wording or Wording())


@pytest.mark.parametrize("many", range(5, 31))
def test_a_polygon_is_called_after_its_number_of_sides(many):
    found = facts(ring(many))
    assert found["sides"] == many
    assert found["name"] == NAMES.get(many, f"polygon with {many} sides") == by_sides(many)


@pytest.mark.parametrize("vocabulary", ["us", "uk"])
@pytest.mark.parametrize("definition", ["inclusive", "exclusive"])
def test_what_a_trapezoid_is_and_is_called(vocabulary, definition):
    # The progression on geometry for the Common Core standards (K-6, 2012/13) gives both
    # definitions; England's word is trapezium.
    wording = Wording(vocabulary, definition)
    word = {"us": "trapezoid", "uk": "trapezium"}[vocabulary]
    trapezoid = shape_named("trapezoid", "square")
    assert called(trapezoid, "square", wording) == [word, "quadrilateral"]
    parallelogram = called(shape_named("parallelogram", "square"), "square", wording)
    assert (word in parallelogram) == (definition == "inclusive")
    assert parallelogram[0] == "parallelogram"
    assert {"trapezoid", "trapezium"} & set(called(ring4(), "square", wording)) <= {word}


def ring4():
    return {"points": [[1, 1], [5, 1], [5, 4], [1, 4]], "closed": True}


def test_an_arrowhead_is_no_kite():
    # A kite is convex; standard usage, from memory.
    arrowhead = [[4, 0], [7, 7], [4, 4], [1, 7]]
    assert facts(arrowhead, "square")["name"] == "quadrilateral"


@pytest.mark.parametrize("points", [4, 5, 6, 9])
def test_a_star_has_points_and_notches_in_turn(points):
    outline = ring(2 * points, lambda at: 380 if at % 2 == 0 else 190)
    found = facts(outline)
    assert (found["name"], found["tips"], found["sides"]) == ("star", points, 2 * points)
    assert called({"points": outline, "closed": True}, "plain") == ["star", by_sides(2 * points)]


def test_three_points_make_a_hexagon_and_two_notches_side_by_side_no_star():
    assert facts(ring(6, lambda at: 380 if at % 2 == 0 else 150))["name"] == "hexagon"
    corners = [[0, 0], [8, 0], [5, 2], [5, 5], [8, 8], [0, 8], [2, 5], [2, 2]]
    found = properties_of(outline_of(corners, "square").polygon, "square")
    assert len(found.tips) == 4
    assert not is_star(found, 8)


def test_of_five_strokes_only_those_that_all_cross_are_a_pentagram():
    def strokes(order):
        five = ring(5)
        return outline_of([five[at] for at in order], "plain")

    assert is_pentagram(strokes([0, 2, 4, 1, 3]))
    assert is_pentagram(strokes([3, 1, 4, 2, 0]))
    assert not is_pentagram(strokes([0, 2, 1, 4, 3]))
    assert not is_pentagram(strokes([0, 1, 2, 3, 4]))
    chain = outline_of(
        {"points": [ring(5)[at] for at in (0, 2, 4, 1, 3)], "closed": False}, "plain"
    )
    assert not is_pentagram(chain)
