"""The polygon drawer as Python sees it, with no browser attached."""

from __future__ import annotations

import doctest
from xml.etree import ElementTree as ET

import pytest
import traitlets

import manipulatives.widgets.polygon.polygon
from manipulatives.maths.shapes.ready import ready_shapes
from manipulatives.widgets.polygon import PolygonDrawer
from manipulatives.widgets.polygon.polygon import READINGS
from manipulatives.words.shape_facts import shape_facts
from manipulatives.words.shape_strokes import strokes

BOX = [[1, 1], [5, 1], [5, 4], [1, 4]]
NOTHING = {"points": [], "closed": False}


def test_the_examples_in_its_reference_are_true():
    failed, tried = doctest.testmod(manipulatives.widgets.polygon.polygon)
    assert tried > 0
    assert failed == 0


def test_a_new_paper_is_empty():
    drawer = PolygonDrawer()
    assert drawer.shape == NOTHING
    assert (drawer.sides, drawer.vertices, drawer.name, drawer.closed) == (0, 0, None, False)
    assert drawer.names == []
    assert drawer.remark is None


@pytest.mark.parametrize(
    "given",
    [BOX, tuple(map(tuple, BOX)), {"points": BOX, "closed": True}],
    ids=["points", "tuples", "shape"],
)
def test_a_shape_is_given_in_several_ways(given):
    drawer = PolygonDrawer(given)
    assert drawer.shape == {"points": BOX, "closed": True}
    assert drawer.points == BOX
    drawer.shape = "hexagon"
    assert drawer.name == "hexagon"


@pytest.mark.parametrize("grid", ["square", "triangle", "plain"])
def test_a_shape_that_is_ready_is_given_by_its_name(grid):
    for name, shape in ready_shapes(grid).items():
        drawer = PolygonDrawer(name, grid=grid)
        assert drawer.shape == shape
        assert drawer.facts == shape_facts(shape, grid)
        assert drawer.sides == drawer.facts["sides"]
        assert drawer.vertices == drawer.facts["vertices"]


def test_readings_follow_the_shape():
    drawer = PolygonDrawer(BOX)
    assert (drawer.sides, drawer.vertices, drawer.name, drawer.closed) == (4, 4, "rectangle", True)
    drawer.vocabulary, drawer.trapezoid = "uk", "inclusive"
    assert drawer.names == ["rectangle", "parallelogram", "trapezium", "quadrilateral"]
    drawer.trapezoid = "exclusive"
    assert drawer.facts["trapezoid"] is False
    assert "trapezium, too" in drawer.note
    drawer.shape = [*BOX, [1, 2]]
    assert drawer.remark == "One point is on a straight side: no vertex."
    assert drawer.sides == 4


def test_points_are_put_until_the_first_closes_the_shape():
    drawer = PolygonDrawer()
    for point in [*BOX, BOX[0]]:
        drawer.put(*point)
    assert drawer.shape == {"points": BOX, "closed": True}
    with pytest.raises(ValueError, match="closed"):
        drawer.put(0, 0)
    drawer.clear()
    assert drawer.shape == NOTHING
    drawer.put(0, 0)
    with pytest.raises(ValueError, match="three points"):
        drawer.join()
    with pytest.raises(ValueError, match="0 to 8"):
        drawer.put(9, 0)
    assert drawer.points == [[0, 0]]


def test_what_is_traced_is_a_fact():
    drawer = PolygonDrawer(guide="triangle")
    assert drawer.facts["traced"] is False
    drawer.shape = "triangle"
    assert drawer.facts["traced"] is True
    drawer.guide = None
    assert drawer.facts["traced"] is None


def test_strokes_are_those_of_the_guide_or_else_of_the_shape():
    drawer = PolygonDrawer(BOX)
    assert drawer.strokes == strokes(drawer.shape, "square")
    drawer.guide = "star"
    assert drawer.strokes == strokes(drawer.guide, "square")
    assert drawer.strokes[-1].shape == drawer.guide


@pytest.mark.parametrize(
    ("name", "value", "said"),
    [
        ("shape", "blob", "these shapes are ready"),
        ("shape", {"points": [[0, 9]], "closed": False}, "0 to 8"),
        ("shape", [[0.5, 1]], "whole dots"),
        ("shape", 4, "dict"),
        ("shape", {"points": BOX, "closed": True, "cuts": [[[2, 1], [2, 3]]]}, "ends on an edge"),
        (
            "shape",
            {
                "points": [[1, 1], [5, 1]],
                "closed": True,
                "curve": "half circle",
                "cuts": [[[1, 1], [5, 1]]],
            },
            "Only polygons and circles",
        ),
        ("guide", "blob", "these shapes are ready"),
        ("grid", "lined", r"\['plain', 'square', 'triangle'\]|plain"),
        ("show", ["area"], "area|sides"),
        ("count", "corners", "sides"),
        ("tool", "erase", "draw"),
        ("vocabulary", "fr", "'us'.*'uk'"),
        ("trapezoid", "both", "inclusive"),
        ("movable", "yes", "boolean"),
        ("hints", None, "boolean"),
    ],
)
def test_a_wrong_value_is_refused_with_what_is_allowed_and_leaves_all_as_it_was(name, value, said):
    drawer = PolygonDrawer(BOX, guide="star")
    before = drawer.get_state()
    with pytest.raises(traitlets.TraitError, match=said):
        setattr(drawer, name, value)
    assert drawer.get_state() == before
    with pytest.raises(traitlets.TraitError, match=said):
        PolygonDrawer(**{name: value})


def test_what_it_has_not_is_refused_with_what_it_has():
    with pytest.raises(TypeError, match=r"no 'colour'.*It takes .*shape, show"):
        PolygonDrawer(colour="red")


def test_every_trait_says_what_it_is():
    for name, trait in PolygonDrawer.class_own_traits().items():
        if name[0] != "_":
            assert len(trait.help) > 20, name


def test_another_paper_takes_shape_and_guide_along():
    drawer = PolygonDrawer(BOX, guide="triangle")
    drawer.grid = "plain"
    assert drawer.points == [[100, 100], [500, 100], [500, 400], [100, 400]]
    assert drawer.guide["points"] == [[400, 100], [700, 700], [100, 700]]
    drawer.grid = "square"
    assert drawer.points == BOX
    drawer.shape = "circle"
    drawer.grid = "triangle"
    assert drawer.name == "circle"


def test_paper_and_shape_that_come_together_belong_together():
    drawer = PolygonDrawer([[100, 100], [700, 100], [400, 500]], grid="plain", guide="octagon")
    assert drawer.points == [[100, 100], [700, 100], [400, 500]]
    assert drawer.guide == ready_shapes("plain")["octagon"]
    state = {"grid": "square", "shape": {"points": BOX, "closed": True}, "guide": None}
    drawer.set_state(state)
    assert drawer.points == BOX
    drawer.set_state({"shape": {"points": [[0, 0], [800, 800]], "closed": False}, "grid": "plain"})
    assert drawer.points == [[0, 0], [800, 800]]


def test_whoever_listens_hears_of_each_change():
    drawer = PolygonDrawer()
    heard = []
    stop = drawer.on_change(lambda its: heard.append(its.sides))
    drawer.shape = BOX
    drawer.clear()
    drawer.clear()
    stop()
    stop()
    drawer.shape = "star"
    assert heard == [4, 0]


def test_the_still_picture_shows_the_shape_and_tells_no_number():
    drawer = PolygonDrawer(BOX, show=["right_angles"], guide="circle", count="sides")
    root = ET.fromstring(drawer.still())  # noqa: S314 - it is the kit's own
    space = {"svg": "http://www.w3.org/2000/svg"}
    assert root.findtext("svg:desc", namespaces=space) == "A closed shape with straight sides."
    assert [text.text for text in root.iterfind(".//svg:text", space)] == ["1", "2", "3", "4"]
    bundle, _ = drawer._repr_mimebundle_()
    assert bundle["image/svg+xml"] == drawer.still()


def test_every_shape_has_a_still_picture():
    for grid in ("square", "triangle", "plain"):
        for name in ready_shapes(grid):
            assert PolygonDrawer(name, grid=grid, show=list(READINGS)).still().startswith("<svg")


def test_its_text_is_small_enough_to_be_carried_by_every_notebook():
    assert len(PolygonDrawer._esm.encode()) < 90_000  # noqa: SLF001 - it is what hosts are sent
