"""A written sum on paper: what stands in which square."""

from __future__ import annotations

from itertools import pairwise

import pytest

from manipulatives.drawings.columns import SQUARE, columns_drawing
from manipulatives.drawings.svg import svg_of
from manipulatives.lessons.strands.sums.columns.methods import FORM_OF, METHODS, worked_steps
from manipulatives.maths.columns.written_sum import new_sum, written


def worked(operation, numbers, method="known facts", count=None):
    """A sum after some of its steps."""
    sum_ = new_sum(operation, numbers, FORM_OF[method])
    for step in worked_steps(operation, numbers, method)[:count]:
        sum_ = written(sum_, step["write"])
    return sum_


def texts(drawing, role):
    return [shape.text for shape in drawing.shapes if shape.role == role]


def shapes(drawing, role):
    return [shape for shape in drawing.shapes if shape.role == role]


def test_digits_of_one_place_stand_below_each_other():
    drawing = columns_drawing(worked("+", [347, 9]))
    places = {}
    for shape in drawing.shapes:
        if shape.role in ("digit", "answer"):
            places.setdefault(round(shape.at[0], 6), []).append(shape.text)
    assert [places[at] for at in sorted(places)] == [["3", "3"], ["4", "5"], ["7", "9", "6"]]
    assert all(b - a == pytest.approx(SQUARE) for a, b in pairwise(sorted(places)))


def test_rewritten_digits_are_crossed_out_and_stand_above():
    drawing = columns_drawing(worked("-", [402, 178]))
    assert texts(drawing, "mark") == ["12", "10", "9", "3"]
    # All three digits, and the ten that became a nine.
    assert len(shapes(drawing, "cross")) == 4
    digits = min(shape.at[1] for shape in shapes(drawing, "digit"))
    assert all(shape.at[1] < digits for shape in shapes(drawing, "mark"))


def test_carry_marks_stand_above_or_below():
    sum_ = worked("+", [47, 38])
    above = columns_drawing(sum_)
    below = columns_drawing(sum_, below=True)
    [mark] = shapes(above, "mark")
    assert mark.at[1] < min(shape.at[1] for shape in shapes(above, "digit"))
    [mark] = shapes(below, "mark")
    assert mark.at[1] > max(shape.at[1] for shape in shapes(below, "answer"))
    assert not shapes(columns_drawing(sum_, marks=False), "mark")


def test_headings_can_be_left_out():
    assert texts(columns_drawing(worked("+", [47, 38])), "heading") == ["O", "T", "H"]
    assert not shapes(columns_drawing(worked("+", [47, 38]), headings=False), "heading")


def test_parts_are_written_with_what_they_are_worth():
    drawing = columns_drawing(worked("+", [678, 567], "expanded columns"))
    assert texts(drawing, "digit") == ["8", "70", "600", "7", "60", "500"]
    assert texts(drawing, "parts") == ["15", "130", "1100"]


def test_an_empty_sum_gives_no_answer_away():
    drawing = columns_drawing(new_sum("+", [47, 38]), blocks=True)
    assert not shapes(drawing, "answer")
    assert drawing.description == "47 + 38"
    assert "85" not in svg_of(drawing).replace("859", "")


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize(
    ("operation", "numbers"), [("+", [47, 38]), ("-", [5003, 8]), ("+", [9999, 9999, 9999, 9999])]
)
def test_everything_is_inside_the_drawing(operation, numbers, method):
    for blocks in (False, True):
        drawing = columns_drawing(worked(operation, numbers, method), blocks=blocks)
        for shape in drawing.shapes:
            corner = getattr(shape, "corner", None)
            if corner is not None:
                assert corner[0] >= 0
                assert corner[1] >= 0
                assert corner[0] + shape.width <= drawing.width + 1e-6
                assert corner[1] + shape.height <= drawing.height + 1e-6


@pytest.mark.parametrize("count", [0, 3, 5, None])
def test_there_are_as_many_blocks_as_the_digits_say(count):
    sum_ = worked("-", [83, 47], count=count)
    drawing = columns_drawing(sum_, blocks=True)
    assert len(shapes(drawing, "tens")) * 10 + len(shapes(drawing, "ones")) == 83


def test_type_is_never_smaller_than_asked():
    drawing = columns_drawing(worked("-", [402, 178]), blocks=True, square=6, least_type=5)
    assert min(shape.size for shape in drawing.shapes if hasattr(shape, "text")) >= 3.5
    written_ = [shape for shape in drawing.shapes if shape.role in ("digit", "answer", "mark")]
    assert all(shape.size >= 5 for shape in written_)
