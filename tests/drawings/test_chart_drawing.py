from __future__ import annotations

from itertools import pairwise

import pytest

from manipulatives.drawings.chart import chart_drawing, number_line_drawing
from manipulatives.drawings.shapes import Arc, Box, Circle, Text, around
from manipulatives.maths.number.chart import Chart, no_marks


def of_role(drawing, role):
    return [shape for shape in drawing.shapes if shape.role == role]


def texts(drawing, role="number"):
    return [shape.text for shape in of_role(drawing, role)]


def marks(**given):
    return {**no_marks(), **given}


@pytest.mark.parametrize(("first", "last", "width"), [(1, 100, 10), (0, 99, 10), (1, 120, 12)])
def test_every_number_has_its_own_cell(first, last, width):
    drawing = chart_drawing(Chart(first, last, width=width))
    cells = of_role(drawing, "cell")
    numbers = of_role(drawing, "number")
    assert texts(drawing) == [str(number) for number in range(first, last + 1)]
    assert len({cell.corner for cell in cells}) == len(cells) == last - first + 1
    for cell, number in zip(cells, numbers, strict=True):
        left, top = cell.corner
        assert number.at[0] == pytest.approx(left + cell.width / 2)
        assert top + 0.1 * cell.height < number.at[1] - 0.7 * number.size
        assert number.at[1] < top + 0.9 * cell.height
        assert 0.62 * len(number.text) * number.size < cell.width
        assert left + cell.width <= drawing.width + 1e-9
        assert top + cell.height <= drawing.height + 1e-9


def test_hidden_numbers_are_not_drawn_but_are_in_the_key():
    chart = Chart(1, 20, hidden=[5, 6])
    assert {"5", "6"}.isdisjoint(texts(chart_drawing(chart)))
    key = chart_drawing(chart, answered=True)
    assert [shape.colour for shape in of_role(key, "number")].count("move") == 2
    assert key.width == chart_drawing(chart).width
    assert key.height == chart_drawing(chart).height
    assert "5" not in chart_drawing(chart).description.replace("1 to 20", "")


def test_counted_numbers_are_ringed_and_wiped_ones_are_left_out():
    counted = marks(counted=[5, 10])
    assert len(of_role(chart_drawing(Chart(1, 20, step=5), counted), "counted")) == 2
    wiped = chart_drawing(Chart(1, 20, step=5, mode="wipe"), counted)
    assert of_role(wiped, "counted") == []
    assert {"5", "10"}.isdisjoint(texts(wiped))


def test_what_a_pupil_wrote_is_drawn():
    chart = Chart(1, 20, hidden=[5, 6], mode="write")
    drawing = chart_drawing(chart, marks(written={"5": "5", "6": "9"}))
    assert texts(drawing, "written") == ["9"]
    assert "5" in texts(drawing)


def test_type_is_never_smaller_than_asked():
    for line in (False, True):
        drawing = chart_drawing(Chart(), width=60, least_type=4.0, line=line)
        sizes = [shape.size for shape in drawing.shapes if isinstance(shape, Text)]
        assert min(sizes) >= 4.0


def test_a_hop_goes_from_number_to_number():
    drawing = number_line_drawing(Chart(0, 20, step=5), marks(counted=[0, 5, 10]))
    places = {shape.text: shape.at[0] for shape in of_role(drawing, "number")}
    hops = of_role(drawing, "hop")
    assert len(hops) == 2
    for hop, (start, end) in zip(hops, pairwise(["0", "5", "10"]), strict=True):
        assert isinstance(hop, Arc)
        assert around(hop.centre, hop.radius, hop.start)[0] == pytest.approx(places[start])
        assert around(hop.centre, hop.radius, hop.start + hop.sweep)[0] == pytest.approx(
            places[end]
        )
        assert hop.centre[1] - hop.radius >= 0
    (at,) = of_role(drawing, "at")
    assert isinstance(at, Circle)
    assert at.centre[0] == pytest.approx(places["10"])


@pytest.mark.parametrize("chart", [Chart(), Chart(1, 1000, step=100), Chart(901, 1000, step=3)])
def test_numbers_on_the_line_do_not_touch(chart):
    drawing = number_line_drawing(chart)
    numbers = of_role(drawing, "number")
    for one, other in pairwise(numbers):
        assert other.at[0] - one.at[0] >= 0.62 * len(other.text) * other.size
    assert len(of_role(drawing, "mark")) <= 61


def test_a_line_below_the_chart_makes_the_drawing_taller():
    chart = Chart(1, 20)
    line = number_line_drawing(chart)
    assert chart_drawing(chart, line=True).height == chart_drawing(chart).height + line.height


def test_a_covered_cell_looks_unlike_an_empty_one():
    drawing = chart_drawing(Chart(1, 20, hidden=[5]))
    fills = [cell.paint.fill for cell in of_role(drawing, "cell") if isinstance(cell, Box)]
    assert fills.count("rule") == 1
