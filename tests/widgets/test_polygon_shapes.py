"""Shapes in the browser's language, without a browser: what is true and how they change."""

from __future__ import annotations

import json
import math
from random import Random

import pytest

from manipulatives.drawings.polygon_marks import COUNTED, MARKED, marks_of
from manipulatives.maths.shapes.cuts import CutProblem
from manipulatives.maths.shapes.data import check_shape, converted
from manipulatives.maths.shapes.papers import GRIDS, dots, is_point, nearest, place
from manipulatives.maths.shapes.ready import ready_shapes
from manipulatives.maths.shapes.shares import shares_of, ways_to_share
from manipulatives.words.shape_facts import called, shape_facts
from manipulatives.words.shape_names import Wording
from manipulatives.words.shape_remarks import remark, teachers_note
from manipulatives.words.shape_strokes import strokes
from support.files import ROOT
from support.shapes import random_shape

CASES = json.loads((ROOT / "tests" / "cases" / "shapes.json").read_text("utf-8"))
US = {"vocabulary": "us", "trapezoid": "inclusive"}
ARROWS = ("ArrowRight", "ArrowLeft", "ArrowDown", "ArrowUp")
BOX = {"points": [[1, 1], [7, 1], [7, 5], [1, 5]], "closed": True}
CIRCLE = {"points": [[4, 4], [4, 1]], "closed": True, "curve": "circle"}


def wording(case):
    return {
        "vocabulary": case.get("vocabulary", "us"),
        "trapezoid": case.get("trapezoid", US["trapezoid"]),
    }


def states(seed, many):
    """Shapes by chance, some of them cut, with a paper and a wording."""
    chance = Random(seed)  # noqa: S311 - nothing here is secret
    for _ in range(many):
        grid = chance.choice(GRIDS)
        shape = random_shape(chance, grid)
        if chance.random() < 0.2:
            shape = chance.choice(list(ready_shapes(grid).values()))
        if chance.random() < 0.3:
            shape = {**shape, **some_cuts(chance, shape, grid)}
        yield (
            shape,
            grid,
            Wording(chance.choice(["us", "uk"]), chance.choice(["inclusive", "exclusive"])),
        )


def some_cuts(chance, shape, grid):
    """Cuts that fit: ways to share, or lines by chance."""
    ways = [way for many in (2, 3, 4) for way in ways_to_share(shape, grid, many)]
    if ways and chance.random() < 0.5:
        return {"cuts": chance.choice(ways)}
    cuts = []
    for _ in range(3):
        if shape.get("curve") == "circle":
            cut = [[chance.randrange(24), 1], [chance.randrange(24), 1]]
            cut = [cut[0], [0, 0], cut[1]] if chance.random() < 0.3 else cut
        else:
            cut = [list(chance.choice(shape["points"] or [[0, 0]])) for _ in range(2)]
        try:
            if shares_of({**shape, "cuts": [*cuts, cut]}, grid):
                cuts.append(cut)
        except CutProblem:
            continue
    return {"cuts": cuts} if cuts else {}


def spoken(words):
    return {"vocabulary": words.vocabulary, "trapezoid": words.trapezoid}


def test_the_browser_satisfies_the_cases_of_shapes(js):
    calls = [[case["shape"], case["grid"], wording(case)] for case in CASES]
    for case, facts in zip(CASES, js("polygon/state/facts.js", "facts", calls), strict=True):
        assert {name: facts[name] for name in case["facts"]} == case["facts"], case["about"]
    assert js("polygon/state/words.js", "remark", calls) == [case["remark"] for case in CASES]


@pytest.fixture(scope="module")
def many_states():
    return list(states(81, 4000))


@pytest.fixture(scope="module")
def calls(many_states):
    return [[shape, grid, spoken(words)] for shape, grid, words in many_states]


def test_the_browser_knows_of_thousands_of_shapes_what_python_does(js, many_states, calls):
    found = js("polygon/state/facts.js", "facts", calls)
    seen = set()
    for state, facts in zip(many_states, found, strict=True):
        assert facts == shape_facts(*state), state
        seen.add(facts["name"])
        seen.add(facts["fault"])
        seen.add(("shares", facts["shares"], facts["equal_shares"], facts["same_shape"]))
    assert {"square", "rectangle", "rhombus", "kite", "trapezium", "star", "circle"} <= seen
    assert {None, "few", "flat", "crossing", "touching", "overlap"} <= seen
    assert {
        ("shares", 2, True, True),
        ("shares", 4, True, False),
        ("shares", 3, False, False),
    } <= seen


@pytest.mark.parametrize(
    ("function", "ours"),
    [
        ("facts.js called", called),
        ("words.js remark", remark),
        ("words.js teachersNote", teachers_note),
    ],
)
def test_the_browser_says_of_thousands_of_shapes_what_python_does(
    js, many_states, calls, function, ours
):
    module, name = function.split()
    for state, said in zip(many_states, js(f"polygon/state/{module}", name, calls), strict=True):
        assert said == ours(*state), state


def test_the_browser_draws_the_same_strokes_with_the_same_sentences(js, many_states):
    found = js(
        "polygon/state/words.js", "strokes", [[shape, grid] for shape, grid, _ in many_states]
    )
    for (shape, grid, _), drawn in zip(many_states, found, strict=True):
        ours = [{"shape": stroke.shape, "say": stroke.say} for stroke in strokes(shape, grid)]
        assert drawn == ours, shape


def test_the_browser_has_the_same_shapes_ready(js):
    for grid, ready in zip(
        GRIDS, js("polygon/state/ready.js", "readyShapes", [[grid] for grid in GRIDS]), strict=True
    ):
        assert list(ready.items()) == list(ready_shapes(grid).items())


def test_the_browser_knows_the_same_ways_to_share(js):
    shapes = [(shape, grid) for grid in GRIDS for shape in ready_shapes(grid).values()]
    calls = [[shape, grid, many] for shape, grid in shapes for many in (2, 3, 4)]
    assert js("polygon/state/shares.js", "waysToShare", calls) == [
        ways_to_share(*call) for call in calls
    ]


def test_the_browser_marks_what_python_marks(js):
    chance = Random(82)  # noqa: S311 - nothing here is secret
    calls = [
        [shape, grid, list(MARKED), chance.choice(COUNTED)] for shape, grid, _ in states(83, 1500)
    ]
    roles = set()
    for call, marks in zip(calls, js("polygon/state/marks.js", "marksOf", calls), strict=True):
        ours = marks_of(*call)
        assert [(mark.role, mark.text) for mark in ours] == [
            (mark["role"], mark["text"]) for mark in marks
        ]
        for mark, other in zip(ours, marks, strict=True):
            roles.add(mark.role)
            theirs = [(point["x"], point["y"]) for point in other["points"]]
            # Which end of a mirror line comes first does not matter, and may hang on rounding.
            turned = theirs[::-1] if mark.role == "mirror" else theirs
            assert close(mark.points, theirs) or close(mark.points, turned), call
    assert roles == {"right", "equal", "parallel", "mirror", "crossing", "number"}


def close(points, others):
    return all(math.dist(one, other) < 1e-6 for one, other in zip(points, others, strict=True))


@pytest.mark.parametrize("grid", GRIDS)
def test_papers_are_the_same_in_the_browser(js, grid):
    chance = Random(84)  # noqa: S311 - nothing here is secret
    spots = [{"x": chance.uniform(-90, 890), "y": chance.uniform(-90, 890)} for _ in range(800)]
    found = js("polygon/state/paper.js", "nearest", [[spot, grid] for spot in spots])
    assert found == [list(nearest(spot["x"], spot["y"], grid)) for spot in spots]
    assert js("polygon/state/paper.js", "dots", [[grid]])[0] == [list(dot) for dot in dots(grid)]
    for point, spot in zip(
        found,
        js("polygon/state/paper.js", "place", [[point, grid] for point in found]),
        strict=True,
    ):
        assert (spot["x"], spot["y"]) == pytest.approx(place(tuple(point), grid))


def test_a_shape_on_other_paper_is_the_same_in_both(js):
    calls = [
        [shape, grid, other]
        for shape, grid, _ in states(85, 600)
        for other in GRIDS
        if other != grid
    ]
    for call, after in zip(calls, js("polygon/state/moves.js", "converted", calls), strict=True):
        assert after == converted(*call), call
        check_shape(after, call[2])


def test_points_are_put_one_after_the_other_until_the_first_closes_the_shape(js):
    shape = {"points": [], "closed": False}
    for point in ([1, 1], [5, 1], [5, 4], [1, 1]):
        (shape,) = js("polygon/state/moves.js", "putPoint", [[shape, point]])
    assert shape == {"points": [[1, 1], [5, 1], [5, 4]], "closed": True}
    assert js("polygon/state/moves.js", "putPoint", [[shape, [0, 0]]]) == [
        "The shape is closed. Its points can be moved."
    ]


def test_what_cannot_be_put_is_answered_in_at_most_ten_words(js):
    two = {"points": [[1, 1], [5, 1]], "closed": False}
    full = {"points": [[at % 9, at % 8] for at in range(40)], "closed": False}
    answers = js(
        "polygon/state/moves.js", "putPoint", [[two, [5, 1]], [two, [1, 1]], [full, [8, 8]]]
    )
    assert answers == [
        "There is a point already.",
        "A closed shape needs three points.",
        "There are as many points as can be.",
    ]
    assert max(len(answer.split()) for answer in answers) <= 10


def test_a_point_moves_alone_and_a_centre_takes_its_circle_along(js):
    calls = [
        [BOX, 2, [8, 8], "square"],
        [{**BOX, "cuts": [[[1, 1], [7, 5]]]}, 2, [7, 5], "square"],
        [CIRCLE, 0, [3, 5], "square"],
        [CIRCLE, 0, [4, 2], "square"],
        [{**CIRCLE, "cuts": [[[0, 1], [12, 1]]]}, 1, [6, 4], "square"],
        [CIRCLE, 1, [4, 4], "square"],
    ]
    moved = js("polygon/state/moves.js", "moved", calls)
    assert moved[0] == {"points": [[1, 1], [7, 1], [8, 8], [1, 5]], "closed": True}
    assert moved[1] == BOX, "cuts would no longer go from edge to edge"
    assert moved[2] == {**CIRCLE, "points": [[3, 5], [3, 2]]}
    assert moved[3] == {**CIRCLE, "points": [[4, 2], [4, 5]]}, "it keeps its size on the paper"
    assert moved[4] == {**CIRCLE, "points": [[4, 4], [6, 4]], "cuts": [[[0, 1], [12, 1]]]}
    assert moved[5] == CIRCLE, "a circle has a size"


def test_points_are_added_and_removed(js):
    assert js("polygon/state/moves.js", "inserted", [[BOX, 0, [4, 0]], [BOX, 3, [0, 3]]]) == [
        {"points": [[1, 1], [4, 0], [7, 1], [7, 5], [1, 5]], "closed": True},
        {"points": [[1, 1], [7, 1], [7, 5], [1, 5], [0, 3]], "closed": True},
    ]
    three = {"points": [[1, 1], [7, 1], [7, 5]], "closed": True}
    assert js("polygon/state/moves.js", "removed", [[BOX, 3], [three, 0], [CIRCLE, 1]]) == [
        three,
        {"points": [[7, 1], [7, 5]], "closed": False},
        {"points": [], "closed": False},
    ]


@pytest.mark.parametrize("grid", ["square", "triangle"])
def test_a_new_point_comes_to_a_free_dot_as_near_to_the_middle_of_its_side_as_any(js, grid):
    shapes = [
        (shape, at)
        for shape, its, _ in states(86, 600)
        if its == grid and "curve" not in shape and shape["closed"] and len(shape["points"]) > 2
        for at in range(len(shape["points"]))
    ]
    found = js(
        "polygon/state/moves.js", "betweenPoints", [[shape, at, grid] for shape, at in shapes]
    )
    for (shape, at), dot in zip(shapes, found, strict=True):
        ends = shape["points"][at], shape["points"][(at + 1) % len(shape["points"])]
        middle = [
            sum(part) / 2 for part in zip(*(place(tuple(e), grid) for e in ends), strict=True)
        ]
        free = [other for other in dots(grid) if list(other) not in shape["points"]]
        least = min(math.dist(middle, place(other, grid)) for other in free)
        assert tuple(dot) in free
        assert math.dist(middle, place(tuple(dot), grid)) == pytest.approx(least)


@pytest.mark.parametrize("function", ["turned", "flipped"])
def test_a_turned_or_turned_over_shape_is_as_true_as_before(js, function):
    shapes = [
        (shape, grid)
        for shape, grid, _ in states(87, 900)
        if not (grid == "plain" and "curve" in shape)
    ]
    found = js("polygon/state/moves.js", function, [list(each) for each in shapes])
    changed = 0
    for (shape, grid), after in zip(shapes, found, strict=True):
        if isinstance(after, str):
            assert grid == "triangle" or "curve" in shape
            continue
        check_shape(after, grid)
        before = {name: value for name, value in shape.items() if name != "cuts"}
        assert shape_facts(after, grid) == shape_facts(before, grid), shape
        changed += after != before
    assert changed > 400


def test_four_quarter_turns_and_six_sixths_lead_back(js):
    for grid, many in (("square", 4), ("plain", 4)):
        shape = ready_shapes(grid)["kite"]
        after = shape
        for _ in range(many):
            (after,) = js("polygon/state/moves.js", "turned", [[after, grid]])
        assert after == shape
    hexagon = {"points": [[2, 2], [4, 2], [4, 4], [2, 6], [0, 6], [0, 4]], "closed": True}
    after = hexagon
    for _ in range(6):
        (after,) = js("polygon/state/moves.js", "turned", [[after, "triangle"]])
    assert after == hexagon


def test_a_turned_over_curve_lies_the_other_way_round(js):
    half = ready_shapes("square")["half circle"]
    (after,) = js("polygon/state/moves.js", "flipped", [[half, "square"]])
    assert after["points"] == [[1, 5], [7, 5]], "its curved side is still above"
    quarter = {"points": [[2, 6], [2, 2]], "closed": True, "curve": "quarter circle"}
    (after,) = js("polygon/state/moves.js", "flipped", [[quarter, "square"]])
    assert after["points"] == [[6, 6], [2, 6]], "from the left end clockwise to the top"


@pytest.mark.parametrize("grid", GRIDS)
def test_an_arrow_leads_to_the_next_point_and_back(js, grid):
    points = [list(dot) for dot in dots(grid)] or [[0, 0], [400, 8], [800, 800], [1, 799]]
    back = {"ArrowRight": "ArrowLeft", "ArrowUp": "ArrowDown"}
    back |= {other: key for key, other in back.items()}
    step = 10 if grid == "plain" else 1
    calls = [[point, key, grid, step] for point in points for key in ARROWS]
    there = js("polygon/state/moves.js", "stepped", calls)
    again = js(
        "polygon/state/moves.js",
        "stepped",
        [[point, back[key], grid, step] for point, (_, key, *_) in zip(there, calls, strict=True)],
    )
    for (start, key, *_), point, end in zip(calls, there, again, strict=True):
        assert is_point(point, grid)
        (x, y), (right, down) = place(tuple(start), grid), place(tuple(point), grid)
        ahead = {
            "ArrowRight": right - x,
            "ArrowLeft": x - right,
            "ArrowDown": down - y,
            "ArrowUp": y - down,
        }[key]
        assert ahead >= 0
        on_edge = grid == "triangle" and key in ("ArrowUp", "ArrowDown") and x in (0, 800)
        if grid != "plain" and point != start and not on_edge:
            assert end == start, (start, key)


def test_arrows_reach_every_dot_of_triangle_paper(js):
    reached, new = {(2, 4)}, [(2, 4)]
    while new:
        calls = [[list(point), key, "triangle", 1] for point in new for key in ARROWS]
        found = {tuple(point) for point in js("polygon/state/moves.js", "stepped", calls)}
        new = list(found - reached)
        reached |= found
    assert reached == set(dots("triangle"))


def test_a_cut_can_go_through_the_dots_of_a_shape_and_nothing_else(js):
    (points,) = js("polygon/state/spots.js", "cutPoints", [[BOX, "square"]])
    assert sorted(each["point"] for each in points) == [
        [x, y] for x in range(1, 8) for y in range(1, 6)
    ]
    (points,) = js("polygon/state/spots.js", "cutPoints", [[CIRCLE, "square"]])
    assert len(points) == 25
    for each in points:
        far = math.dist((each["spot"]["x"], each["spot"]["y"]), (400, 400))
        assert far == pytest.approx(300 if each["point"][1] else 0)
    plain = ready_shapes("plain")
    assert len(js("polygon/state/spots.js", "cutPoints", [[plain["rectangle"], "plain"]])[0]) == 169
    assert len(js("polygon/state/spots.js", "cutPoints", [[plain["pentagon"], "plain"]])[0]) == 5
    half = ready_shapes("square")["half circle"]
    assert js(
        "polygon/state/spots.js",
        "cutPoints",
        [[half, "square"], [{**BOX, "closed": False}, "square"]],
    ) == [[], []]


@pytest.mark.parametrize(
    ("shape", "grid"),
    [(BOX, "square"), (CIRCLE, "square"), (ready_shapes("triangle")["hexagon"], "triangle")],
)
def test_arrows_reach_every_point_of_a_cut(js, shape, grid):
    (points,) = js("polygon/state/spots.js", "cutPoints", [[shape, grid]])
    reached, new = [points[0]], [points[0]]
    while new:
        calls = [[points, point, key] for point in new for key in ARROWS]
        found = js("polygon/state/spots.js", "pointToward", calls)
        new = []
        for point in found:
            if point not in reached:
                reached.append(point)
                new.append(point)
    assert len(reached) == len(points)


def test_the_browser_refuses_the_cuts_that_python_refuses(js):
    chance = Random(88)  # noqa: S311 - nothing here is secret
    shapes, refused = [], []
    for _ in range(600):
        shape = chance.choice([BOX, CIRCLE])
        ends = [[chance.randrange(24), 1] for _ in range(2)]
        if shape is BOX:
            ends = [[chance.randint(0, 8), chance.randint(0, 6)] for _ in range(3)]
        shapes.append({**shape, "cuts": [ends]})
        try:
            shares_of(shapes[-1], "square")
            refused.append(False)
        except CutProblem:
            refused.append(True)
    wholes = js("polygon/state/shares.js", "wholeOf", [[shape, "square"] for shape in shapes])
    answers = js(
        "polygon/state/shares.js",
        "cutBy",
        [[shape, [whole], shape["cuts"][0]] for shape, whole in zip(shapes, wholes, strict=True)],
    )
    assert [isinstance(answer, str) for answer in answers] == refused
    assert 100 < sum(refused) < 500
    assert max(len(answer.split()) for answer in answers if isinstance(answer, str)) <= 10


def test_a_cut_that_does_not_fit_is_left_out_in_the_browser(js):
    wrong = {**BOX, "cuts": [[[2, 1], [2, 3]]]}
    with pytest.raises(CutProblem):
        shares_of(wrong, "square")
    assert js("polygon/state/facts.js", "facts", [[wrong, "square", US]])[0]["shares"] == 1


def test_all_points_are_looked_at_however_many_there_are(js):
    ring = [
        [
            round(400 + 390 * math.cos(math.tau * at / 40)),
            round(400 + 390 * math.sin(math.tau * at / 40)),
        ]
        for at in range(40)
    ]
    shape = {"points": ring, "closed": True}
    (facts,) = js("polygon/state/facts.js", "facts", [[shape, "plain", US]])
    assert facts == shape_facts(shape, "plain")
    assert facts["sides"] == 40
