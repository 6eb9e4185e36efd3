from __future__ import annotations

import math

import pytest
from shapely.geometry import LineString, Polygon

from manipulatives.drawings.polygon import PAPER, cut_spots, outline_spots, polygon_drawing
from manipulatives.drawings.polygon_marks import MARKED, marks_of
from manipulatives.drawings.shapes import Box, Circle, Line, Text
from manipulatives.drawings.shapes import Polygon as Chain
from manipulatives.maths.shapes.papers import GRIDS, dots, place
from manipulatives.maths.shapes.ready import ready_shapes
from manipulatives.words.shape_facts import shape_facts

BOX = {"points": [[1, 1], [7, 1], [7, 5], [1, 5]], "closed": True}
SIZE = 80.0
UNIT = SIZE / (800 + 2 * PAPER["margin"])


def of_role(drawing, role):
    return [shape for shape in drawing.shapes if shape.role == role]


@pytest.mark.parametrize("grid", GRIDS)
def test_dots_are_where_the_paper_has_them(grid):
    drawing = polygon_drawing({"points": [], "closed": False}, grid, size=SIZE)
    margin = PAPER["margin"] * UNIT
    drawn = [dot.centre for dot in of_role(drawing, "dot")]
    wanted = [tuple(margin + part * UNIT for part in place(dot, grid)) for dot in dots(grid)]
    assert drawn == [pytest.approx(spot) for spot in wanted]
    assert (drawing.width, drawing.height) == pytest.approx((SIZE, SIZE))
    assert len(of_role(drawing, "paper")) == 1
    assert drawing.description == "Nothing is drawn yet."


@pytest.mark.parametrize("grid", GRIDS)
def test_sides_run_from_point_to_point(grid):
    for name, shape in ready_shapes(grid).items():
        drawing = polygon_drawing(shape, grid, size=SIZE)
        (outline,) = of_role(drawing, "outline")
        assert outline.closed
        margin = PAPER["margin"] * UNIT
        for point in shape["points"] if name != "circle" else shape["points"][1:]:
            x, y = (margin + part * UNIT for part in place(tuple(point), grid))
            assert min(math.dist((x, y), spot) for spot in outline.points) < 0.2


def area(spots):
    return Polygon(spots).area


def test_curves_are_round():
    radius = 300
    disc, half, quarter = (
        outline_spots(ready_shapes("square")[name], "square")
        for name in ("circle", "half circle", "quarter circle")
    )
    assert area(disc) == pytest.approx(math.pi * radius**2, rel=0.002)
    assert area(half) == pytest.approx(math.pi * radius**2 / 2, rel=0.002)
    assert area(quarter) == pytest.approx(math.pi * 400**2 / 4, rel=0.002)
    assert min(y for _, y in half) == pytest.approx(200), "the curved side is above"
    assert max(x for x, _ in quarter) == pytest.approx(600), "clockwise from the top to the right"


def test_only_what_is_a_shape_has_an_inside():
    tangle = {"points": [[1, 1], [7, 7], [7, 1], [1, 7]], "closed": True}
    for shape, inside in ((BOX, 1), (tangle, 0), ({**BOX, "closed": False}, 0)):
        assert len(of_role(polygon_drawing(shape, "square"), "fill")) == inside


def test_points_that_are_no_vertices_are_hollow_and_points_can_be_left_out():
    shape = {"points": [*BOX["points"], [1, 3]], "closed": True}
    drawing = polygon_drawing(shape, "square")
    assert len(of_role(drawing, "point")) == 4
    (hollow,) = of_role(drawing, "straight")
    assert hollow.paint.fill == "sheet"
    without = polygon_drawing(shape, "square", points=False)
    assert of_role(without, "point") == of_role(without, "straight") == []


def test_the_answer_in_a_key_has_the_colour_of_what_is_moved():
    (outline,) = of_role(polygon_drawing(BOX, "square", answered=True), "outline")
    assert outline.paint.stroke == "move"


def test_a_guide_is_drawn_below_the_shape():
    drawing = polygon_drawing(BOX, "square", guide=ready_shapes("square")["star"])
    roles = [shape.role for shape in drawing.shapes]
    assert roles.index("guide") < roles.index("outline")
    (guide,) = of_role(drawing, "guide")
    assert guide.paint.width > of_role(drawing, "outline")[0].paint.width


@pytest.mark.parametrize("grid", GRIDS)
def test_as_many_marks_are_drawn_as_there_are_facts(grid):
    for shape in ready_shapes(grid).values():
        facts = shape_facts(shape, grid)
        if facts["fault"] or facts["curved_sides"]:
            continue
        roles = [mark.role for mark in marks_of(shape, grid, MARKED)]
        assert roles.count("right") == facts["right_angles"]
        assert roles.count("mirror") == facts["mirror_lines"]
        assert roles.count("equal") >= facts["equal_sides"]
        assert (roles.count("parallel") > 0) == (facts["parallel"] > 0)
        assert roles.count("crossing") == 0


@pytest.mark.parametrize("grid", GRIDS)
def test_a_mirror_line_halves_its_shape(grid):
    for shape in ready_shapes(grid).values():
        whole = Polygon(outline_spots(shape, grid))
        for mark in marks_of(shape, grid, ["mirror_lines"]):
            (x1, y1), (x2, y2) = mark.points
            across, down = x2 - x1, y2 - y1
            right = Polygon(
                [
                    (x1, y1),
                    (x2, y2),
                    (x2 - 9 * down, y2 + 9 * across),
                    (x1 - 9 * down, y1 + 9 * across),
                ]
            )
            assert whole.intersection(right).area == pytest.approx(whole.area / 2, rel=0.01)


def test_a_right_angle_is_marked_inside_its_corner():
    shape = {"points": [[1, 1], [3, 1], [3, 4], [6, 4], [6, 7], [1, 7]], "closed": True}
    marks = marks_of(shape, "square", ["right_angles"])
    assert len(marks) == 5
    inside = Polygon(outline_spots(shape, "square")).buffer(1e-6)
    assert all(inside.contains(LineString(mark.points)) for mark in marks)


def test_crossings_are_where_lines_cross():
    strokes = ready_shapes("square")["pentagram"]
    marks = marks_of(strokes, "square", ["crossing"])
    lines = [
        LineString(pair)
        for pair in zip(
            outline_spots(strokes, "square"),
            [*outline_spots(strokes, "square")[1:], outline_spots(strokes, "square")[0]],
            strict=True,
        )
    ]
    found = {tuple(round(part, 6) for part in mark.points[0]) for mark in marks}
    wanted = {
        tuple(round(part, 6) for part in one.intersection(other).coords[0])
        for at, one in enumerate(lines)
        for other in lines[at + 2 : at + 4]
        if one.crosses(other)
    }
    assert found == wanted
    assert len(found) == 5


def test_numbers_stand_outside_and_count_from_one():
    shape = ready_shapes("square")["star"]
    outside = Polygon(outline_spots(shape, "square"))
    for counted in ("sides", "vertices"):
        marks = marks_of(shape, "square", [], counted)
        assert [mark.text for mark in marks] == [str(at) for at in range(1, 11)]
        for mark in marks:
            assert not outside.contains(LineString([mark.points[0]] * 2))


def test_type_is_as_large_as_asked():
    drawing = polygon_drawing(BOX, "square", counted="sides", size=40, least_type=4.2)
    sizes = {shape.size for shape in drawing.shapes if isinstance(shape, Text)}
    assert sizes == {4.2}


def test_cuts_are_drawn_from_edge_to_edge():
    cut = {**BOX, "cuts": [[[1, 1], [4, 3], [7, 1]]]}
    lines = of_role(polygon_drawing(cut, "square", size=SIZE), "cut")
    assert len(lines) == 2
    assert all(isinstance(line, Line) for line in lines)
    assert cut_spots(cut, "square") == [[(100, 100), (400, 300), (700, 100)]]
    circle = {**ready_shapes("square")["circle"], "cuts": [[[6, 1], [0, 0], [12, 1]]]}
    (spots,) = cut_spots(circle, "square")
    assert spots[0] == pytest.approx((700, 400))
    assert spots[2] == pytest.approx((400, 700))


def test_without_paper_the_drawing_is_as_large_as_the_shape():
    drawing = polygon_drawing(BOX, "square", paper=False, size=SIZE)
    margin = 2 * PAPER["margin"]
    assert (drawing.width, drawing.height) == pytest.approx(
        ((600 + margin) * UNIT, (400 + margin) * UNIT)
    )
    assert not any(isinstance(shape, Box) for shape in drawing.shapes)
    assert of_role(drawing, "dot") == []


@pytest.mark.parametrize("grid", GRIDS)
def test_nothing_reaches_over_the_edge_of_the_paper(grid):
    for shape in ready_shapes(grid).values():
        drawing = polygon_drawing(shape, grid, shown=MARKED, counted="vertices", size=SIZE)
        for each in drawing.shapes:
            spots = {
                Chain: lambda it: it.points,
                Circle: lambda it: (it.centre,),
                Line: lambda it: (it.start, it.end),
                Text: lambda it: (it.at,),
                Box: lambda it: (it.corner,),
            }[type(each)](each)
            assert all(-1e-6 <= part <= SIZE + 1e-6 for spot in spots for part in spot), each


@pytest.mark.parametrize(
    ("shape", "words"),
    [
        (BOX, "A closed shape with straight sides."),
        ({**BOX, "closed": False}, "An open shape with straight sides."),
        (ready_shapes("square")["circle"], "A closed shape with a curved side."),
    ],
)
def test_the_description_gives_no_answer_away(shape, words):
    assert polygon_drawing(shape, "square", shown=MARKED).description == words
