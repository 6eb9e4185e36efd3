from __future__ import annotations

from itertools import product

import pytest

from manipulatives.lessons.strands.shapes.mistakes.angles import (
    MIRROR_LINES,
    RIGHT_ANGLES,
    SQUARES,
    edge_alone,
    rows_and_columns,
)
from manipulatives.lessons.strands.shapes.mistakes.counting import COUNTING, NAMING, RULES
from manipulatives.maths.shapes.ready import ready_shapes
from manipulatives.words.shape_facts import called, shape_facts

READY = ready_shapes("square")
WITH_POINT = {"points": [[1, 1], [3, 1], [5, 1], [5, 4], [1, 4]], "closed": True}


def wrong(table, shape, **more):
    facts = {**shape_facts(shape, "square"), **more}
    found = {rule.id: rule.wrong(facts) for rule in table}
    return {name: answer for name, answer in found.items() if answer is not None}


@pytest.mark.parametrize(
    ("shape", "counts"),
    [
        (READY["pentagon"], {"start_twice": 6, "one_too_few": 4}),
        (READY["star"], {"points_of_star": 5, "start_twice": 11, "one_too_few": 9}),
        (WITH_POINT, {"counted_mid_side": 5, "start_twice": 5, "one_too_few": 3}),
        (READY["circle"], {"curved_as_straight": 1}),
        (READY["half circle"], {"curved_as_straight": 2, "start_twice": 2, "one_too_few": 0}),
        (READY["quarter circle"], {"curved_as_straight": 3, "start_twice": 3, "one_too_few": 1}),
    ],
)
def test_sides_are_miscounted_as_the_rules_say(shape, counts):
    """Worked by hand: a star of ten sides has five points, a half circle one straight side."""
    assert wrong(COUNTING, shape) == counts


@pytest.mark.parametrize(
    ("name", "called_so"),
    [
        ("triangle", {}),
        ("square", {"name_one_more": "pentagon", "name_one_fewer": "triangle"}),
        ("rectangle", {"any_four_is_square": "square", "name_one_more": "pentagon",
                       "name_one_fewer": "triangle"}),
        ("rhombus", {"any_four_is_square": "square", "any_four_is_rectangle": "rectangle",
                     "name_one_more": "pentagon", "name_one_fewer": "triangle"}),
        ("hexagon", {"name_one_more": "heptagon", "name_one_fewer": "pentagon"}),
        ("circle", {}),
        ("half circle", {"round_is_circle": "circle", "half_for_quarter": "quarter circle"}),
        ("quarter circle", {"round_is_circle": "circle", "half_for_quarter": "half circle"}),
    ],
)  # fmt: skip
def test_shapes_are_misnamed_as_the_rules_say(name, called_so):
    assert wrong(NAMING, READY[name]) == called_so


@pytest.mark.parametrize("name", READY)
def test_no_rule_gives_a_name_that_is_true(name):
    """A square is a rectangle: no rule holds that against a pupil."""
    true = called(READY[name], "square")
    assert not set(wrong(NAMING, READY[name]).values()) & set(true)


@pytest.mark.parametrize("name", [name for name in READY if name != "pentagram"])
def test_no_rule_gives_the_right_number(name):
    facts = shape_facts(READY[name], "square")
    assert facts["sides"] not in wrong(COUNTING, READY[name]).values()
    if "circle" not in name:
        for upright, line in product(range(5), (True, False)):
            more = {"upright": upright, "vertical_line": line}
            assert facts["right_angles"] not in wrong(RIGHT_ANGLES, READY[name], **more).values()
            assert facts["mirror_lines"] not in wrong(MIRROR_LINES, READY[name], **more).values()


def test_right_angles_and_folds_are_mistaken_as_the_rules_say():
    """A rectangle has two mirror lines, though four sides; a parallelogram has none."""
    assert wrong(RIGHT_ANGLES, READY["right triangle"], upright=0) == {
        "all_corners_right": 3, "upright_corners": 0,
    }  # fmt: skip
    assert wrong(MIRROR_LINES, READY["rectangle"], vertical_line=True) == {
        "line_for_each_side": 4, "only_vertical_line": 1,
    }  # fmt: skip
    assert wrong(MIRROR_LINES, READY["parallelogram"], vertical_line=False) == {
        "halves_look_alike": 2, "line_for_each_side": 4,
    }  # fmt: skip


def test_squares_on_the_edge_are_those_beside_a_side():
    for rows, columns in product(range(2, 6), repeat=2):
        edge = sum(
            row in (0, rows - 1) or column in (0, columns - 1)
            for row in range(rows)
            for column in range(columns)
        )
        assert edge_alone(rows, columns) == (None if edge == rows * columns else edge)
        both = rows_and_columns(rows, columns)
        assert both == (None if rows == columns == 2 else rows + columns)
        for rule in SQUARES:
            assert rule.wrong(rows, columns) != rows * columns


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_a_rule_about_shapes_speaks_kindly_and_modestly(rule):
    for vocabulary in ("us", "uk"):
        sentence = rule.for_pupil(vocabulary)
        assert 1 <= len(sentence.split()) <= 10
        assert sentence[0].isupper()
        assert sentence[-1] in ".?"
        assert sum(sentence.count(mark) for mark in ".?!") == 1
        assert not {"wrong", "no", "not", "mistake", "bad"} & set(sentence.lower().split())
    assert rule.for_teacher.startswith("May have ")
    assert rule.for_teacher.endswith(".")


def test_rules_about_shapes_have_names_of_their_own():
    names = [rule.id for rule in RULES]
    assert len(set(names)) == len(names) == 35
