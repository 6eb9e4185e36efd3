"""What is asked, said and shown about shapes is right: measured, folded and cut afresh."""

from __future__ import annotations

import json
import re
from collections import Counter
from copy import deepcopy
from dataclasses import replace
from functools import cache
from itertools import pairwise, product

import pytest
import sympy

from manipulatives.lessons.catalogue.skills import SKILLS as EVERY
from manipulatives.lessons.strands.rules import RULES
from manipulatives.lessons.strands.shapes.pools.corners import SQUARE_DOTS, TRIANGLE_DOTS
from manipulatives.lessons.strands.shapes.pools.curves import CURVES, curves
from manipulatives.lessons.strands.shapes.pools.polygons import (
    drawn,
    names_of,
    with_points_on_sides,
)
from manipulatives.lessons.strands.shapes.tasks.naming import UNLIKE
from manipulatives.lessons.tasks.make import GENERATORS, make_tasks
from manipulatives.lessons.tasks.playing import facts_of, is_solved, mistake_made, play_steps
from manipulatives.lessons.tasks.predicates import holds, spell_out
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.shapes.data import check_shape
from manipulatives.widgets.polygon import PolygonDrawer
from manipulatives.words.shape_facts import called
from manipulatives.words.shape_names import Wording
from support.oracles import geometry
from support.oracles.shapes import ShapeOracle, wrong_of
from support.seeds import SEEDS

SKILLS = [skill for skill in EVERY.values() if skill.strand == "shapes"]
WAYS = [
    pytest.param(skill.id, options, id=f"{skill.id} {' '.join(map(str, options.values()))}")
    for skill in SKILLS
    for values in product(*skill.options.values())
    for options in [dict(zip(skill.options, values, strict=True))]
]


@cache
def _of_seeds(skill, options):
    return [
        task
        for seed in range(SEEDS)
        for task in make_tasks(
            skill,
            seed=seed,
            count=1,
            vocabulary="uk" if seed % 2 else "us",
            options=dict(options),
            twins=0,
        )
    ]


def of_seeds(skill, **options):
    return _of_seeds(skill, tuple(options.items()))


def shape_of(task):
    return task.start["shape"], task.start["grid"]


def on_paper(task, shape):
    return facts_of("PolygonDrawer", {**task.start, "shape": shape})


@pytest.mark.parametrize("kind", dict.fromkeys([*SQUARE_DOTS, *TRIANGLE_DOTS]))
def test_every_picture_of_a_kind_is_of_that_kind(kind):
    pictures = drawn(kind)
    assert len(set(pictures)) == len(pictures) >= 6
    for one in pictures:
        shape = one.shape()
        assert geometry.is_simple(shape)
        name = kind.removeprefix("notched ")
        sides = len(one.points)
        assert len(geometry.corners_of(shape, one.grid)) == sides
        if name == "star":
            assert 2 * geometry.tips(shape, one.grid) == sides
        else:
            assert name in geometry.names(shape, one.grid)
        notched = geometry.tips(shape, one.grid) < sides
        assert notched == (kind.startswith("notched") or kind == "star")


def test_shapes_come_turned_and_in_several_sizes():
    """Neither orientation nor size changes a name (Common Core K.G.A.2)."""
    for kind in ("triangle", "square", "rectangle", "hexagon"):
        pictures = [one for one in drawn(kind) if one.grid == "square"]
        level = [any(a[1] == b[1] for a, b in pairwise(one.points)) for one in pictures]
        assert {True, False} == set(level) or kind == "hexagon"
        assert len({round(geometry.Polygon(one.points).area) for one in pictures}) >= 3


def test_points_on_sides_are_corners_to_nobody():
    for kind in ("triangle", "pentagon", "octagon"):
        for one in drawn(kind)[::4]:
            more = with_points_on_sides(one)
            if more and one.grid == "square":
                polygon = sympy.Polygon(*more.points)
                assert len(polygon.vertices) == len(one.points) == len(more.points) - 1


@pytest.mark.parametrize("kind", CURVES)
def test_round_shapes_stay_on_the_paper(kind):
    for one in curves(kind):
        facts = facts_of("PolygonDrawer", {"shape": check_shape(one.shape(), "square")})
        assert facts["name"] == kind
        (a, b), (c, d) = one.points
        if kind == "circle":
            reach = abs(c - a) + abs(d - b)
            assert all(reach <= part <= 8 - reach for part in (a, b))


@pytest.mark.parametrize(("skill", "options"), WAYS)
def test_every_step_is_true_of_the_shape(skill, options):
    for task in of_seeds(skill, **options):
        oracle = ShapeOracle(task.start)
        for step in task.steps:
            oracle.follow(step)
        assert len(task.steps) >= 2


@pytest.mark.parametrize(("skill", "options"), WAYS)
def test_the_procedure_of_a_mistake_leads_to_its_answer(skill, options):
    for task in of_seeds(skill, **options):
        for mistake in task.mistakes:
            numbers = mistake.numbers
            if "shows" in numbers:
                assert numbers["shows"] == mistake.rule
            else:
                wrong = wrong_of(numbers, *shape_of(task))
                assert wrong == numbers["wrong"], (task.prompt, mistake.rule)
                assert mistake.answer == f"{wrong}"


@pytest.mark.parametrize(
    "change",
    [
        {"to": 2},
        {"counted": [1, 2]},
        {"many": 9},
        {"straight": 3},
        {"curved": 0},
        {"terms": [1, 1]},
        {"total": 1},
        {"fits": 5},
        {"of": 9},
        {"name": "kite"},
        {"step": [1, 7]},
        {"side": 9},
        {"number": 5},
        {"areas": [1, 2]},
        {"shares": 5},
        {"match": None},
        {"equal": None},
        {"is": None},
    ],
    ids=str,
)
def test_the_oracle_refuses_what_is_not_so(change):
    refused = 0
    for skill, options in (way.values for way in WAYS):
        for task in of_seeds(skill, **options)[:10]:
            oracle = ShapeOracle(task.start)
            for step in task.steps:
                if step.numbers.keys() >= change.keys():
                    # A truth is turned into the other one.
                    new = {key: not step.numbers[key] if value is None else value
                           for key, value in change.items()}  # fmt: skip
                    wrong = replace(step, numbers={**step.numbers, **new})
                    if wrong != step:
                        with pytest.raises((AssertionError, KeyError)):
                            deepcopy(oracle).follow(wrong)
                        refused += 1
                if re.search(r"\d", step.say):
                    other = re.sub(r"\d+", "77", step.say, count=1)
                    with pytest.raises(AssertionError):
                        deepcopy(oracle).follow(replace(step, say=other))
                oracle.follow(step)
    assert refused


@pytest.mark.parametrize(("skill", "options"), WAYS)
def test_playing_the_steps_ends_in_the_goal_and_begins_elsewhere(skill, options):
    for task in of_seeds(skill, **options):
        begun, solved = facts_of("PolygonDrawer", task.start), play_steps(task)
        assert is_solved(task, solved), (task.prompt, spell_out(task.goal))
        assert not is_solved(task, begun)
        assert mistake_made(task, begun) is None
        assert task.start["show"] == []
        for mistake in task.mistakes:
            assert not holds(mistake.when, solved)


@pytest.mark.parametrize(("skill", "options"), WAYS)
def test_foreseen_mistakes_differ_are_wrong_and_are_found(skill, options):
    for task in of_seeds(skill, **options):
        named = [one.answer for one in task.mistakes if one.answer is not None]
        assert task.answer not in named
        assert len(set(named)) == len(named)
        for mistake in task.mistakes:
            assert mistake.rule in RULES
            if task.ask["by"] != "manipulative":
                assert mistake_made(task, {"answer": mistake.answer}) == mistake


@pytest.mark.parametrize(("skill", "options"), WAYS)
def test_data_come_back_to_the_byte(skill, options):
    for task in of_seeds(skill, **options)[:40]:
        text = json.dumps(task.to_data())
        assert Task.from_data(json.loads(text)) == task


@pytest.mark.parametrize("shapes", ["first", "more"])
def test_a_shape_is_called_by_a_name_that_is_true_and_alone_among_the_choices(shapes):
    for task in of_seeds("shapes.name_shapes", ask="name", shapes=shapes):
        true = geometry.names(*shape_of(task))
        choices = ["trapezoid" if one == "trapezium" else one for one in task.ask["choices"]]
        assert len(choices) == 4
        # By the inclusive definition a parallelogram is a trapezoid, too: never a wrong choice.
        if "parallelogram" in true:
            assert "trapezoid" not in choices
        assert sum(choice in true for choice in choices) == 1
        assert next(one for one in choices if one in true) == task.answer.replace("zium", "zoid")


def test_every_true_name_is_right():
    """England, Year 1: rectangles (including squares)."""
    tasks = of_seeds("shapes.name_shapes", ask="name", shapes="first")
    squares = [task for task in tasks if task.answer == "square"]
    assert squares
    for task in squares:
        for name in ("square", "rectangle", "rhombus"):
            assert is_solved(task, {"answer": name})
        assert not is_solved(task, {"answer": "triangle"})
    rectangles = [task for task in tasks if task.answer == "rectangle"]
    assert all(not is_solved(task, {"answer": "square"}) for task in rectangles)


@pytest.mark.parametrize("shapes", ["first", "more"])
def test_yes_or_no_agrees_with_measuring_and_a_square_is_a_rectangle(shapes):
    squares_asked = 0
    for task in of_seeds("shapes.name_shapes", ask="yes or no", shapes=shapes):
        name = task.prompt.removesuffix("?").split(" ", 3)[3]
        true = geometry.names(*shape_of(task))
        assert task.answer == ("yes" if name in true else "no")
        squares_asked += name == "rectangle" and "square" in true
    assert squares_asked


def test_no_answer_hangs_on_what_a_trapezoid_is():
    assert "trapezoid" not in UNLIKE
    for kind in ("trapezoid", "parallelogram", "rectangle", "square", "rhombus"):
        for one in drawn(kind):
            by_each = [called(one.shape(), one.grid, Wording("us", book)) for book in
                       ("inclusive", "exclusive")]  # fmt: skip
            assert by_each[0][0] == by_each[1][0] == names_of(one, "us")[0]


def test_england_says_trapezium():
    tasks = of_seeds("shapes.name_shapes", ask="name", shapes="more")
    answers = {(task.start["vocabulary"], task.answer) for task in tasks}
    assert ("uk", "trapezium") in answers
    assert ("us", "trapezoid") in answers
    assert ("uk", "trapezoid") not in answers


@pytest.mark.parametrize("skill", ["shapes.count_sides", "shapes.count_vertices"])
@pytest.mark.parametrize("shapes", ["any", "plain", "notched", "points on sides"])
def test_sides_and_vertices_are_as_many_as_the_corners(skill, shapes):
    kinds = Counter()
    for task in of_seeds(skill, shapes=shapes):
        shape, grid = shape_of(task)
        corners = len(geometry.corners_of(shape, grid))
        assert task.answer == str(corners)
        rules = {mistake.rule for mistake in task.mistakes}
        notched = geometry.tips(shape, grid) < corners
        assert ("points_of_star" in rules) == notched
        assert ("counted_mid_side" in rules) == (len(shape["points"]) > corners)
        kinds[task.kind] += 1
        if shapes != "any":
            assert task.kind == shapes
    assert len(kinds) == (3 if shapes == "any" else 1)


def test_right_angles_are_as_many_as_products_of_steps_say():
    found = Counter()
    for task in of_seeds("shapes.right_angles"):
        shape, grid = shape_of(task)
        many = geometry.right_angles(shape, grid)
        assert task.answer == str(many)
        found[many] += 1
    assert set(found) == {0, 1, 2, 3, 4}


def test_mirror_lines_are_those_that_a_fold_confirms():
    found = Counter()
    for task in of_seeds("shapes.mirror_lines", ask="how many"):
        assert task.answer == str(geometry.mirror_lines(*shape_of(task)))
        found[task.answer] += 1
    assert {"0", "1", "2", "4"} <= set(found)


def test_a_vertical_mirror_line_is_one_that_swaps_left_and_right():
    found, rules = Counter(), Counter()
    for task in of_seeds("shapes.mirror_lines", ask="vertical"):
        vertical = geometry.has_vertical_line(*shape_of(task))
        assert task.answer == ("yes" if vertical else "no")
        [mistake] = task.mistakes
        rules[mistake.rule] += 1
        if mistake.rule == "folds_another_way":
            assert geometry.mirror_lines(*shape_of(task)) > 0
        found[task.answer] += 1
    assert min(found.values()) > 0.3 * SEEDS
    assert set(rules) == {"folds_another_way", "turn_for_fold", "fold_not_seen"}


@pytest.mark.parametrize("begin", ["empty", "one side"])
def test_a_shape_is_drawn_if_it_has_what_is_asked_however_it_is_turned(begin):
    for task in of_seeds("shapes.draw_shape", ask="any", begin=begin)[:60]:
        grid = task.start["grid"]
        for kind in ("triangle", "square", "rectangle", "rhombus", "pentagon", "hexagon", "octagon",
                     "trapezoid", "notched hexagon"):  # fmt: skip
            for one in drawn(kind)[::7]:
                if one.grid == grid:
                    facts = on_paper(task, one.shape())
                    assert is_solved(task, facts) == wanted(task, one.shape(), grid)


def wanted(task, shape, grid):
    """Whether a shape is what the prompt asks for, read from its words."""
    words = task.prompt.removesuffix(".").split()
    sides, right = len(geometry.corners_of(shape, grid)), geometry.right_angles(shape, grid)
    if "angle" in words:
        return sides == 3 and right == 1
    if "angles" in words:
        return sides == 4 and right == 4
    if words[-1] in ("sides", "vertices"):
        return sides == int(words[-2])
    return words[-1] in geometry.names(shape, grid)


@pytest.mark.parametrize(
    ("asked", "shape", "rule"),
    [
        ("Draw a square.", [[0, 0], [4, 0], [4, 3], [0, 3]], "sides_not_equal"),
        ("Draw a square.", [[1, 0], [3, 0], [4, 2], [0, 2]], "corners_not_right"),
        ("Draw a rectangle.", [[1, 0], [3, 0], [4, 2], [0, 2]], "corners_not_right"),
        ("Draw a rectangle.", [[0, 0], [4, 0], [0, 3]], "drew_one_fewer"),
        ("Draw a shape with 5 sides.", [[0, 0], [4, 0], [4, 3], [0, 3]], "drew_one_fewer"),
        ("Draw a shape with 3 sides.", [[0, 0], [4, 0], [4, 3], [0, 3]], "drew_one_more"),
        ("Draw a shape with 4 sides.", [[0, 0], [2, 0], [4, 0], [0, 3]], "drew_mid_side"),
        ("Draw a shape with 4 sides.", [[0, 0], [4, 3], [4, 0], [0, 3]], "sides_cross"),
        ("Draw a triangle with 1 right angle.", [[0, 0], [4, 0], [1, 3]], "corners_not_right"),
        ("Draw a rectangle.", [[0, 0], [2, 0], [2, 2], [0, 2]], None),
    ],
)
def test_what_was_drawn_is_understood(asked, shape, rule):
    family = len(GENERATORS["shapes.draw_shape"].items({"ask": "any"}))
    tasks = make_tasks("shapes.draw_shape", seed=0, count=family, twins=0)
    task = next(task for task in tasks if task.prompt == asked and task.start["grid"] == "square")
    facts = on_paper(task, {"points": shape, "closed": True})
    mistake = mistake_made(task, facts)
    assert (mistake.rule if mistake else None) == rule
    assert is_solved(task, facts) == (rule is None)
    assert mistake_made(task, on_paper(task, {"points": shape, "closed": False})).rule == (
        "not_closed"
    )


@pytest.mark.parametrize("shares", ["any", 2, 3, 4])
def test_shares_are_equal_when_shapely_measures_them_so(shares):
    found = Counter()
    for task in of_seeds("shapes.equal_shares", ask="judge", shares=shares):
        areas = geometry.areas(task.start["shape"])
        equal = max(areas) - min(areas) < 1e-2
        assert task.answer == ("yes" if equal else "no")
        assert shares in ("any", len(areas))
        found[equal] += 1
        rules = [mistake.rule for mistake in task.mistakes]
        assert rules == ["unequal_as_equal"] or equal
    assert min(found.values()) > 0.2 * SEEDS


def test_equal_shares_need_not_look_alike():
    """Common Core 2.G.A.3."""
    unlike = [
        task
        for task in of_seeds("shapes.equal_shares", ask="judge", shares="any")
        if [mistake.rule for mistake in task.mistakes] == ["unlike_as_unequal"]
    ]
    assert unlike
    for task in unlike:
        areas = geometry.areas(task.start["shape"])
        assert max(areas) - min(areas) < 1e-9
        assert mistake_made(task, {"answer": "no"}).rule == "unlike_as_unequal"


@pytest.mark.parametrize("shares", ["any", 2, 3, 4])
def test_a_cut_into_equal_shares_is_right_and_into_others_is_understood(shares):
    for task in of_seeds("shapes.equal_shares", ask="cut", shares=shares):
        wanted_shares = int(task.prompt.split()[3])
        assert shares in ("any", wanted_shares)
        done = task.steps[-2].show["shape"]
        areas = geometry.areas(done)
        assert len(areas) == wanted_shares
        assert max(areas) - min(areas) < 1e-2
    rectangle = {"points": [[1, 2], [7, 2], [7, 6], [1, 6]], "closed": True}
    tasks = make_tasks("shapes.equal_shares", seed=3, count=1, options={"ask": "cut", "shares": 3})
    for cuts, rule in (
        ([[[3, 2], [3, 6]], [[5, 2], [5, 6]]], None),
        ([[[2, 2], [2, 6]], [[5, 2], [5, 6]]], "unequal_as_equal"),
        ([[[2, 2], [2, 6]], [[4, 2], [4, 6]], [[6, 2], [6, 6]]], "one_cut_too_many"),
        ([[[4, 2], [4, 6]]], "one_share_too_few"),
    ):
        mistake = mistake_made(tasks[0], on_paper(tasks[0], {**rectangle, "cuts": cuts}))
        assert (mistake.rule if mistake else None) == rule


@pytest.mark.parametrize("ask", ["any", "sides", "name"])
def test_round_shapes_are_told_by_their_straight_sides(ask):
    """By the convention for these ages: a circle has no straight side, a half circle has one."""
    straight = {"circle": "0", "half circle": "1", "quarter circle": "2"}
    for task in of_seeds("shapes.curved", ask=ask):
        kind = task.start["shape"]["curve"]
        by_number = task.ask["by"] == "keypad"
        assert task.answer == (straight[kind] if by_number else kind)
        assert ask in ("any", "sides" if by_number else "name")
        if by_number:
            assert task.mistakes[0].rule == "curved_as_straight"


def test_squares_in_rows_are_as_many_as_shapely_cuts_out():
    """Up to five rows and columns: Common Core 2.OA.C.4."""
    for task in of_seeds("shapes.rows_columns"):
        areas = geometry.areas(task.start["shape"])
        assert task.answer == str(len(areas))
        assert max(areas) - min(areas) < 1e-9
        assert round(areas[0]) in {1, 4}
        assert len(areas) <= 25


def test_mixed_order_changes_the_kind_from_one_task_to_the_next():
    for skill in SKILLS[:-1]:
        for seed in range(10):
            tasks = make_tasks(skill.id, seed=seed, count=4, options={"order": "mixed"}, twins=0)
            kinds = [task.kind for task in tasks]
            assert all(one != other for one, other in pairwise(kinds)), kinds


def test_easy_shapes_come_first_where_that_is_wanted():
    for seed in range(10):
        tasks = make_tasks(
            "shapes.count_sides", seed=seed, count=4, twins=0,
            options={"order": "easy first", "shapes": "plain"},
        )  # fmt: skip
        sides = [int(task.answer) for task in tasks]
        assert sides == sorted(sides)


def test_no_two_tasks_of_a_round_show_and_ask_the_same():
    for skill in SKILLS:
        for seed in range(20):
            tasks = make_tasks(skill.id, seed=seed, count=6, twins=0)
            asked = {json.dumps([task.prompt, task.start]) for task in tasks}
            assert len(asked) == 6


def test_twins_are_of_the_same_kind_and_ask_something_else():
    for skill in SKILLS:
        for task in make_tasks(skill.id, seed=11, count=4):
            assert len(task.twins) == 3
            for twin in task.twins:
                assert twin.kind == task.kind
                assert (twin.prompt, twin.start) != (task.prompt, task.start)


@pytest.mark.parametrize(("skill", "options"), WAYS)
def test_the_paper_takes_what_tasks_and_their_steps_give_it(skill, options):
    for task in of_seeds(skill, **options)[:10]:
        drawer = PolygonDrawer(**task.start)
        begun = facts_of("PolygonDrawer", task.start)
        assert {**drawer.facts, "answer": None} == begun
        for step in task.steps:
            for name, value in step.show.items():
                drawer.set_trait(name, value)
        solved = play_steps(task)
        assert {**drawer.facts, "answer": solved["answer"]} == solved
