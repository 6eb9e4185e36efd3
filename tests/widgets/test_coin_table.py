"""How mat and purse are laid out for a place on the screen."""

from __future__ import annotations

import json
from itertools import combinations, product

import pytest

from manipulatives.maths.money.coins import CURRENCIES, currency
from manipulatives.maths.money.places import LINE, MAT, reach
from manipulatives.maths.money.tray import tray_of
from support.files import ROOT

ALL = {"x": 0, "y": 0, "width": MAT, "height": MAT}
PLACES = [
    {"width": width, "height": height}
    for width, height in ((1300, 990), (700, 700), (980, 900), (340, 480), (310, 330), (2600, 2000))
]
OWN = json.loads((ROOT / "tests" / "cases" / "trays.json").read_text("utf-8"))[-1]["currency"]
KINDS = {
    **{code: money.to_data()["coins"] for code, money in CURRENCIES.items()},
    "usual": [coin for coin in CURRENCIES["usd"].to_data()["coins"] if coin["worth"] < 50],
    "own": currency(OWN).to_data()["coins"],
    "none": [],
}


def lies_in(inner, outer):
    return (
        inner["x"] >= outer["x"] - 1e-6
        and inner["y"] >= outer["y"] - 1e-6
        and inner["x"] + inner["width"] <= outer["x"] + outer["width"] + 1e-6
        and inner["y"] + inner["height"] <= outer["y"] + outer["height"] + 1e-6
    )


def meets(one, other):
    return (
        one["x"] < other["x"] + other["width"] - 1e-6
        and other["x"] < one["x"] + one["width"] - 1e-6
        and one["y"] < other["y"] + other["height"] - 1e-6
        and other["y"] < one["y"] + one["height"] - 1e-6
    )


CASES = list(product(KINDS, (False, True), PLACES))


@pytest.fixture(scope="module")
def tables(js):
    calls = [[KINDS[kinds], named, place, ALL] for kinds, named, place in CASES]
    return list(zip(CASES, js("coins/state/table.js", "tableFor", calls), strict=True))


def test_mat_and_purse_lie_apart_on_the_drawing(tables):
    for (kinds, _, _), table in tables:
        assert lies_in(table["mat"], table["whole"])
        assert table["origin"] == {"x": table["mat"]["x"], "y": table["mat"]["y"]}
        if KINDS[kinds]:
            assert lies_in(table["purse"], table["whole"])
            assert not meets(table["purse"], table["mat"])
        else:
            assert table["purse"] is None
            assert table["slots"] == []


def test_each_kind_has_its_own_place_in_the_purse_with_room_for_the_coin(tables):
    for (kinds, _, _), table in tables:
        assert len(table["slots"]) == len(KINDS[kinds])
        for coin, slot in zip(KINDS[kinds], table["slots"], strict=True):
            assert lies_in(slot, table["purse"])
            size = 2 * reach(CURRENCIES["usd"].coins[0].from_data(coin))
            assert min(slot["width"], slot["height"]) >= size
        assert not any(meets(*pair) for pair in combinations(table["slots"], 2))


def test_what_is_taken_from_the_purse_is_as_large_as_a_finger(tables):
    for (_, _, place), table in tables:
        # The smallest place here is a phone that has other things on it; see the browser test.
        if min(place.values()) >= 340:
            for slot in table["slots"]:
                assert min(slot["width"], slot["height"]) * table["scale"] >= 44


def test_names_in_the_purse_have_large_type_and_room(tables):
    for (kinds, named, place), table in tables:
        if named and KINDS[kinds]:
            # Eight kinds with two words each leave no room for that beside a mat on a phone, and
            # names as long as "twenty-five odds" nowhere but on a board.
            if min(place.values()) >= (340 if kinds == "usual" else 600):
                assert table["type"] * table["scale"] > 17.5
            assert table["type"] * table["scale"] > (9 if kinds == "own" else 11)
            for coin, slot in zip(KINDS[kinds], table["slots"], strict=True):
                words = coin["name"].split()
                assert max(map(len, words)) * 0.5 * table["type"] <= slot["width"]
                coin_and_lines = 10 * coin["diameter"] + 1.1 * len(words) * table["type"]
                assert coin_and_lines <= slot["height"]


def test_the_drawing_is_as_large_as_the_place_allows(tables):
    for (_, _, place), table in tables:
        whole = table["whole"]
        scale = min(place["width"] / whole["width"], place["height"] / whole["height"])
        assert table["scale"] == pytest.approx(scale)
        assert whole["width"] * table["scale"] <= place["width"] + 1e-6
        assert whole["height"] * table["scale"] <= place["height"] + 1e-6


def test_the_purse_lies_beside_the_mat_where_there_is_breadth_and_below_it_elsewhere(js):
    wide, high = js(
        "coins/state/table.js",
        "tableFor",
        [
            [KINDS["usual"], False, {"width": 1300, "height": 900}, ALL],
            [KINDS["usual"], False, {"width": 340, "height": 480}, ALL],
        ],
    )
    assert wide["purse"]["x"] + wide["purse"]["width"] < wide["mat"]["x"]
    assert high["purse"]["y"] > high["mat"]["y"] + high["mat"]["height"]


def test_the_purse_stays_on_its_side_when_the_place_changes_a_little(js):
    place = {"width": 530, "height": 590}
    fresh, was_beside, was_below = js(
        "coins/state/table.js",
        "tableFor",
        [[KINDS["usual"], False, place, ALL, *before] for before in ([], [True], [False])],
    )
    assert not fresh["beside"]
    assert was_beside["beside"]
    assert not was_below["beside"]
    wide = {"width": 900, "height": 500}
    (turned,) = js("coins/state/table.js", "tableFor", [[KINDS["usual"], False, wide, ALL, False]])
    assert turned["beside"]


def test_a_place_that_is_not_known_yet_is_no_trouble(js):
    (table,) = js(
        "coins/state/table.js", "tableFor", [[KINDS["usd"], True, {"width": 0, "height": 0}, ALL]]
    )
    assert table["scale"] == 0
    assert len(table["slots"]) == 6


def test_coins_that_only_lie_there_fill_the_drawing(js):
    tray = tray_of("10 1")
    money = CURRENCIES["usd"].to_data()
    plain, empty = js("coins/state/table.js", "partOf", [[tray, money], [[], money]])
    for lying in tray:
        r = reach(CURRENCIES["usd"].coin(lying["coin"]))
        # With a line for the figures of counting on below it.
        box = {"x": lying["x"] - r, "y": lying["y"] - r, "width": 2 * r, "height": 2 * r + LINE}
        assert lies_in(box, plain)
    assert plain["width"] < MAT / 2
    assert empty == ALL


def test_a_point_is_in_a_box_or_not(js):
    box = {"x": 10, "y": 20, "width": 30, "height": 40}
    points = [({"x": 10, "y": 20}, True), ({"x": 40, "y": 60}, True), ({"x": 41, "y": 30}, False)]
    calls = [*([box, point] for point, _ in points), [None, points[0][0]]]
    assert js("coins/state/table.js", "inside", calls) == [*(known for _, known in points), False]
