from __future__ import annotations

import re
from itertools import pairwise
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.shapes.papers import GRIDS, inner, way
from manipulatives.maths.shapes.ready import ORDER, ready_shapes, shape_named
from manipulatives.maths.shapes.tracing import traced
from manipulatives.words.shape_facts import called, shape_facts
from manipulatives.words.shape_strokes import in_words, strokes
from support.shapes import random_shape

WAYS = {
    "square": {"right": (1, 0), "left": (-1, 0), "down": (0, 1), "up": (0, -1)},
    "triangle": {
        "right": (1, 0),
        "left": (-1, 0),
        "down right": (0, 1),
        "down left": (-1, 1),
        "up left": (0, -1),
        "up right": (1, -1),
    },
}


@pytest.mark.parametrize("grid", ["square", "triangle"])
@given(across=st.integers(-8, 8), down=st.integers(-8, 8))
def test_the_words_for_a_step_lead_where_it_leads(grid, across, down):
    words = in_words((across, down), grid)
    total = [0, 0]
    length = 0
    for many, name in re.findall(r"(\d+) ([a-z ]+)", words):
        step = WAYS[grid][name]
        assert int(many) > 0
        length += int(many)
        total = [part + int(many) * its for part, its in zip(total, step, strict=True)]
    assert total == [across, down]
    assert words.count(",") <= 1
    if grid == "triangle" and length:
        # No shorter way along the dots: the six directions are those of a hexagon of that size.
        assert length == max(abs(across), abs(down), abs(across + down))


@pytest.mark.parametrize(
    ("step", "words"),
    [
        ((300, 10), "to the right"),
        ((-300, 100), "to the left"),
        ((0, 50), "straight down"),
        ((20, -300), "straight up"),
        ((200, -200), "up and to the right"),
        ((-200, 90), "down and to the left"),
    ],
)
def test_on_plain_paper_a_direction_is_given(step, words):
    assert in_words(step, "plain") == words


def shapes():
    chance = Random(71)  # noqa: S311 - nothing here is secret
    for grid in GRIDS:
        for shape in ready_shapes(grid).values():
            yield shape, grid
        for _ in range(150):
            yield random_shape(chance, grid), grid


def test_each_stroke_adds_to_the_one_before_and_the_last_completes_the_shape():
    for shape, grid in shapes():
        done = [stroke.shape for stroke in strokes(shape, grid)]
        if not shape["points"]:
            assert done == []
            continue
        for before, after in pairwise(done):
            assert after["points"][: len(before["points"])] == before["points"]
            assert after != before
            assert not before["closed"]
        assert len(done[0]["points"]) == 1
        different = len(set(map(tuple, shape["points"])))
        assert done[-1]["closed"] == (shape["closed"] and different > 1)
        assert set(map(tuple, done[-1]["points"])) == set(map(tuple, shape["points"]))
        assert traced(done[-1], {**shape, "closed": done[-1]["closed"]}, grid)


def test_a_sentence_has_at_most_ten_words():
    sentences = {stroke.say for shape, grid in shapes() for stroke in strokes(shape, grid)}
    assert len(sentences) > 100
    assert [sentence for sentence in sentences if len(sentence.split()) > 10] == []


def test_the_last_side_that_is_counted_is_the_number_of_sides():
    for shape, grid in shapes():
        facts = shape_facts(shape, grid)
        said = " ".join(stroke.say for stroke in strokes(shape, grid))
        if facts["closed"] and not facts["fault"] and not facts["curved_sides"]:
            assert max(map(int, re.findall(r"[Ss]ide (\d+)", said))) == facts["sides"], shape


def test_a_stroke_that_crosses_says_so():
    said = [stroke.say for stroke in strokes(shape_named("pentagram", "square"), "square")]
    assert [sentence.endswith("It crosses.") for sentence in said] == [
        False,
        False,
        False,
        True,
        True,
        False,
    ]


def test_a_point_that_was_put_twice_is_drawn_once():
    shape = {"points": [[1, 1], [1, 1], [3, 1], [3, 3], [1, 1]], "closed": True}
    done = strokes(shape, "square")
    assert [stroke.say for stroke in done[1:]] == [
        "Side 1: 2 right.",
        "Side 2: 2 down.",
        "Side 3: back to the first point.",
    ]
    assert done[-1].shape["points"] == [[1, 1], [3, 1], [3, 3]]


def test_a_stroke_that_goes_straight_on_is_the_same_side():
    shape = {"points": [[1, 1], [3, 1], [5, 1], [5, 4]], "closed": True}
    said = [stroke.say for stroke in strokes(shape, "square")]
    assert said[1:4] == ["Side 1: 2 right.", "Side 1 goes on: 2 right.", "Side 2: 3 down."]


@pytest.mark.parametrize("grid", GRIDS)
def test_a_shape_that_is_ready_is_what_its_name_says(grid):
    for name, shape in ready_shapes(grid).items():
        facts = shape_facts(shape, grid)
        wanted = "triangle" if name == "right triangle" else name
        assert called(shape, grid)[0] == facts["name"] == wanted
        if name == "right triangle":
            assert facts["right_angles"] == 1
        assert (facts["fault"] is not None) == (name == "pentagram")


def test_shapes_are_as_regular_as_the_paper_allows():
    regular = {
        grid: {
            name
            for name, shape in ready_shapes(grid).items()
            if shape_facts(shape, grid)["regular"]
        }
        for grid in GRIDS
    }
    assert regular["square"] == {"square"}
    assert regular["triangle"] == {"triangle", "hexagon"}
    assert {"triangle", "square", "pentagon", "hexagon", "heptagon", "octagon"} == regular["plain"]


def test_there_is_no_square_on_triangle_dots():
    """A square's side turned by 90 degrees would have to be a step between dots again."""
    steps = [(a, b) for a in range(-8, 9) for b in range(-8, 9) if (a, b) != (0, 0)]
    for one in steps:
        for other in steps:
            if inner(one, one, "triangle") == inner(other, other, "triangle"):
                assert inner(one, other, "triangle") != 0
    with pytest.raises(ValueError, match="no square on triangle dots"):
        shape_named("square", "triangle")
    assert way((0, 0), (1, 2)) == (1, 2)


def test_a_shape_is_found_by_its_other_name():
    assert shape_named("trapezium", "square") == shape_named("trapezoid", "square")
    assert shape_named("semicircle", "plain") == shape_named("half circle", "plain")
    with pytest.raises(ValueError, match="these shapes are ready: triangle"):
        shape_named("blob", "square")
    assert set(ORDER) >= set(ready_shapes("plain"))


def test_what_is_ready_can_be_changed_without_harm():
    ready_shapes("square")["square"]["points"][0][0] = 0
    assert ready_shapes("square")["square"]["points"][0] == [2, 2]
