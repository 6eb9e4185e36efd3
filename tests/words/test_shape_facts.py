from __future__ import annotations

import pytest

from manipulatives.maths.shapes.data import check_shape
from manipulatives.maths.shapes.papers import check_grid
from manipulatives.maths.shapes.tracing import traced
from manipulatives.words.shape_facts import called, shape_facts
from manipulatives.words.shape_names import Wording
from manipulatives.words.shape_remarks import remark, teachers_note
from support.cases import cases

CASES = cases("shapes")
SQUARE = {"points": [[2, 2], [6, 2], [6, 6], [2, 6]], "closed": True}


def wording(case):
    return Wording(case.get("vocabulary", "us"), case.get("trapezoid", "inclusive"))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["about"])
def test_the_facts_of_a_shape_are_those_of_the_cases(case):
    facts = shape_facts(case["shape"], case["grid"], wording(case))
    assert {name: facts[name] for name in case["facts"]} == case["facts"]
    assert remark(case["shape"], case["grid"], wording(case)) == case["remark"]


def test_what_is_true_of_every_shape_is_a_flat_fact():
    keys = {frozenset(shape_facts(case["shape"], case["grid"])) for case in CASES}
    assert len(keys) == 1
    for case in CASES:
        for value in shape_facts(case["shape"], case["grid"]).values():
            assert value is None or type(value) in (int, str, bool)


def test_a_sentence_for_pupils_has_at_most_ten_words():
    said = [case["remark"] for case in CASES if case["remark"]]
    assert len(set(said)) > 15
    assert [sentence for sentence in said if len(sentence.split()) > 10] == []


def test_a_square_is_called_by_all_its_names():
    # England, Year 1 geometry: "rectangles (including squares)". The others are standard usage.
    assert called(SQUARE, "square") == [
        "square",
        "rectangle",
        "rhombus",
        "parallelogram",
        "trapezoid",
        "kite",
        "quadrilateral",
    ]
    assert "trapezoid" not in called(SQUARE, "square", Wording(trapezoid="exclusive"))
    assert "trapezium" in called(SQUARE, "square", Wording("uk"))


def test_curves_and_tangles_are_called_what_they_are():
    circle = {"points": [[4, 4], [4, 1]], "closed": True, "curve": "circle"}
    assert called(circle, "square") == ["circle"]
    strokes = {"points": [[4, 0], [7, 8], [0, 3], [8, 3], [1, 8]], "closed": True}
    assert called(strokes, "square") == ["pentagram"]
    tie = {"points": [[1, 1], [7, 7], [7, 1], [1, 7]], "closed": True}
    assert called(tie, "square") == []


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ("square", "dict"),
        ({"points": []}, "closed"),
        ({"points": [], "closed": True, "colour": "red"}, "colour"),
        ({"points": [], "closed": 1}, "True or False"),
        ({"points": [[0, 9]], "closed": False}, "from 0 to 8"),
        ({"points": [[0.0, 1]], "closed": False}, "whole dots"),
        ({"points": [[True, 1]], "closed": False}, "whole dots"),
        ({"points": [[1, 2, 3]], "closed": False}, "whole dots"),
        ({"points": "here", "closed": False}, "list of at most 40"),
        ({"points": [[1, 1]] * 41, "closed": False}, "list of at most 40"),
        ({"points": [[1, 1], [2, 2]], "closed": True, "curve": "oval"}, "circle"),
        ({"points": [[1, 1], [1, 1]], "closed": True, "curve": "circle"}, "two points apart"),
        ({"points": [[1, 1], [2, 2]], "closed": False, "curve": "circle"}, "closed"),
        ({**SQUARE, "cuts": "half"}, "list of at most 12"),
        ({**SQUARE, "cuts": [[[2, 2]]]}, "two or more points"),
        ({**SQUARE, "cuts": [[[2, 2], [6, "6"]]]}, "two or more points"),
    ],
)
def test_an_invalid_shape_is_refused_with_what_is_allowed(given, said):
    with pytest.raises(ValueError, match=said):
        check_shape(given, "square")


@pytest.mark.parametrize(
    ("grid", "said"),
    [("triangle", "2a \\+ b from 0 to 16"), ("plain", "0 to 800"), ("square", "0 to 8")],
)
def test_an_invalid_point_is_refused_with_what_is_allowed(grid, said):
    with pytest.raises(ValueError, match=said):
        check_shape([[-1, 0]], grid)


def test_a_paper_and_a_wording_have_names_of_their_own():
    with pytest.raises(ValueError, match='"plain", "square" or "triangle"'):
        check_grid("lined")
    with pytest.raises(ValueError, match='"us" or "uk"'):
        Wording("fr")
    with pytest.raises(ValueError, match='"inclusive" or "exclusive"'):
        Wording(trapezoid="both")


def test_the_shape_that_comes_back_is_a_fresh_copy():
    given = {**SQUARE, "cuts": [[[2, 2], [6, 6]]]}
    shape = check_shape(given, "square")
    assert shape == given
    shape["points"][0][0] = 7
    shape["cuts"][0][0][0] = 7
    assert given["points"][0] == given["cuts"][0][0] == [2, 2]
    assert "cuts" not in check_shape({**SQUARE, "cuts": []}, "square")


def test_a_traced_shape_may_begin_at_any_point_and_go_either_way():
    guide = {"points": [[1, 1], [7, 1], [7, 5]], "closed": True}
    for points in ([[7, 1], [7, 5], [1, 1]], [[7, 5], [7, 1], [4, 1], [1, 1]]):
        assert shape_facts({"points": points, "closed": True}, "square", guide=guide)["traced"]
    for shape in (
        {"points": [[1, 1], [7, 1], [7, 5]], "closed": False},
        {"points": [[1, 1], [7, 1], [7, 4]], "closed": True},
        {"points": [[1, 1], [7, 1], [7, 5], [1, 5]], "closed": True},
    ):
        assert shape_facts(shape, "square", guide=guide)["traced"] is False
    assert shape_facts(guide, "square")["traced"] is None


def test_on_plain_paper_a_hand_may_miss_by_less_than_half_a_space():
    guide = {"points": [[100, 100], [700, 100], [700, 500]], "closed": True}
    near = {"points": [[700, 124], [700, 500], [132, 100]], "closed": True}
    far = {"points": [[700, 124], [700, 500], [141, 100]], "closed": True}
    assert traced(near, guide, "plain")
    assert not traced(far, guide, "plain")


def test_a_circle_is_traced_when_centre_and_size_are_right():
    guide = {"points": [[4, 4], [4, 1]], "closed": True, "curve": "circle"}
    assert traced({**guide, "points": [[4, 4], [7, 4]]}, guide, "square")
    assert not traced({**guide, "points": [[4, 4], [6, 6]]}, guide, "square")
    assert not traced({**guide, "points": [[4, 5], [4, 2]]}, guide, "square")
    half = {"points": [[1, 4], [7, 4]], "closed": True, "curve": "half circle"}
    assert traced(half, half, "square")
    assert not traced({**half, "points": half["points"][::-1]}, half, "square")


def test_teachers_are_told_where_books_differ():
    circle = {"points": [[4, 4], [4, 1]], "closed": True, "curve": "circle"}
    assert "one curved side" in teachers_note(circle, "square")
    half = {**circle, "curve": "half circle"}
    assert "corners beside a curved side vertices" in teachers_note(half, "square")
    strokes = {"points": [[4, 0], [7, 8], [0, 3], [8, 3], [1, 8]], "closed": True}
    assert "ten sides" in teachers_note(strokes, "square")
    assert "no trapezoid" in teachers_note(SQUARE, "square")
    assert "is a trapezium, too" in teachers_note(SQUARE, "square", Wording("uk", "exclusive"))
    assert teachers_note({**SQUARE, "points": SQUARE["points"][:3]}, "square") is None
