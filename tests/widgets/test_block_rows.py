"""Blocks lie in the browser where they lie on paper."""

from __future__ import annotations

import json
from itertools import pairwise
from pathlib import Path
from random import Random

import pytest

from manipulatives.drawings.block_rows import (
    SIZES,
    box_spots,
    boxes_in,
    boxes_of,
    lay,
    loose_of,
    plans_for,
)
from manipulatives.drawings.blocks import BLOCK
from manipulatives.maths.number.place_value import PLACES, check_blocks
from support.blocks import random_blocks

CASES = json.loads((Path(__file__).parents[1] / "cases" / "block_rows.json").read_text("utf-8"))
ROWS = "blocks/state/rows.js"
SEED = 4711
LEAST = 5
"""The browser draws no block with fewer pixels."""


def calls_by_chance(many):
    """Mats, columns and rooms of every size, the same in each run."""
    chance = Random(SEED)  # noqa: S311 - examples, not secrets
    calls = []
    for _ in range(many):
        mat = [random_blocks(chance) for _ in range(chance.choice([1, 1, 2]))]
        first = min(
            (at for at, place in enumerate(PLACES) if any(blocks[place] for blocks in mat)),
            default=3,
        )
        columns = list(PLACES[min(first, chance.randint(0, 3)) :])
        width, height = chance.uniform(60, 700), chance.uniform(80, 900)
        calls.append([mat, columns, width, height, chance.choice([18, 24, 36])])
    return calls


@pytest.fixture(scope="module")
def calls():
    return calls_by_chance(1500)


@pytest.fixture(scope="module")
def laid(js, calls):
    """How the browser lays them."""
    return js(ROWS, "lay", calls)


def flat(spots):
    return [
        length for spot in spots for length in (spot.values() if isinstance(spot, dict) else spot)
    ]


def test_units_fans_and_boxes_are_those_of_paper(calls, laid):
    boxed = 0
    for call, browser in zip(calls, laid, strict=True):
        paper = lay(*call, least=LEAST)
        boxed += paper.boxed
        assert browser["unit"] == pytest.approx(paper.unit), call
        assert browser["boxed"] == paper.boxed
        for place in call[1]:
            column = browser["columns"][place]
            assert column["left"] == pytest.approx(paper.columns[place].left)
            assert column["strip"] == pytest.approx(paper.columns[place].strip)
    assert 100 < boxed < 1400


def test_every_block_lies_where_it_lies_on_paper(js, calls, laid):
    asked, expected = [], []
    for call, browser in zip(calls, laid, strict=True):
        mat, columns, *room = call
        paper = lay(*call, least=LEAST)
        for blocks in mat:
            for place in columns:
                count = blocks[place]
                above = boxes_in(count, *room).high if paper.boxed else 0
                asked.append([browser, place, count, above])
                expected.append(paper.spots(place, count, above))
    for found, paper in zip(js(ROWS, "spotsOf", asked), expected, strict=True):
        assert flat(found) == pytest.approx(flat(paper))


def test_boxes_stand_where_they_stand_on_paper(js):
    chance = Random(SEED)  # noqa: S311 - examples, not secrets
    calls = [
        [
            chance.randint(0, 9999),
            chance.uniform(60, 700),
            chance.uniform(80, 900),
            chance.choice([18, 24]),
        ]
        for _ in range(1000)
    ]
    for call, found in zip(calls, js(ROWS, "boxSpots", calls), strict=True):
        paper = box_spots(*call)
        assert [boxes["size"] for boxes in found] == [boxes.size for boxes in paper]
        for browser, boxes in zip(found, paper, strict=True):
            assert browser["line"] == pytest.approx(boxes.line)
            assert flat(browser["spots"]) == pytest.approx(flat(boxes.spots))
    stand = js(ROWS, "boxesIn", calls)
    assert {each["row"] for each in stand} == {5, 10}
    for call, found in zip(calls, stand, strict=True):
        assert tuple(found.values()) == pytest.approx(boxes_in(*call))


@pytest.mark.parametrize("case", CASES["layouts"], ids=lambda case: case["about"])
def test_both_satisfy_the_layouts_of_the_cases(js, case):
    mat = [check_blocks(blocks) for blocks in case["mat"]]
    call = [mat, case["columns"], case["width"], case["height"], case["type"]]
    paper = lay(*call)
    (browser,) = js(ROWS, "lay", [call])
    assert paper.boxed == browser["boxed"] == case["boxed"]
    assert paper.unit == pytest.approx(case["unit"])
    assert browser["unit"] == pytest.approx(case["unit"])
    for place, rows in case.get("spots", {}).items():
        most = max(index for index, *_ in rows) + 1
        here = paper.spots(place, most, 0)
        (there,) = js(ROWS, "spotsOf", [[browser, place, most, 0]])
        for index, x, y in rows:
            assert here[index] == pytest.approx((x, y))
            assert tuple(there[index].values()) == pytest.approx((x, y))
    for place, boxes in case.get("boxes", {}).items():
        count = mat[0][place]
        assert boxes_of(count) == [tuple(each) for each in boxes]
        assert loose_of(count) == case["loose"][place]
        (found,) = js(ROWS, "boxesOf", [[count]])
        assert [[each["size"], each["count"]] for each in found] == boxes
        assert js(ROWS, "looseOf", [[count]]) == [case["loose"][place]]


@pytest.mark.parametrize("case", CASES["plans"], ids=lambda case: f"{case['place']} {case['plan']}")
def test_rows_are_those_of_the_cases(case):
    plan = plans_for(case["place"], case["most"])[case["plan"]]
    assert plan.wide(plan.strip) == pytest.approx(case["wide"])
    assert plan.high(plan.strip) == pytest.approx(case["high"])
    for index, x, y in case["spots"]:
        assert plan.spot(index, plan.strip) == pytest.approx((x, y))


def test_a_block_is_made_of_ten_smaller_ones_that_fill_it(js):
    for place, smaller in pairwise(PLACES):
        (parts,) = js("blocks/state/block.js", "piecesIn", [[place]])
        wide, high = SIZES[smaller]
        assert len({tuple(part.values()) for part in parts}) == 10
        right = max(part["x"] for part in parts) + wide
        foot = max(part["y"] for part in parts) + high
        # The last hundred of a thousand is not quite at its back: it has a thickness of its own.
        assert (right, foot) == pytest.approx(SIZES[place], abs=BLOCK["back"] + 1e-9)
        assert min(part["x"] for part in parts) == min(part["x"] for part in parts[:1] + parts[-1:])
    assert js("blocks/state/block.js", "piecesIn", [["ones"]]) == [[]]


def boxes_of_blocks(paper, place, count):
    wide, high = (length * paper.unit for length in SIZES[place])
    return [(x, y, x + wide, y + high) for x, y in paper.spots(place, count, 0)]


def test_blocks_lie_apart_or_in_a_fan_and_inside_their_column(calls):
    looked = 0
    for mat, columns, width, height, type_size in calls:
        paper = lay(mat, columns, width, height, type_size, least=LEAST)
        if paper.boxed:
            continue
        for blocks in mat:
            for place in columns:
                lying = boxes_of_blocks(paper, place, blocks[place])
                strip = paper.columns[place].strip * paper.unit
                for at, (left, top, right, foot) in enumerate(lying):
                    assert left > -1e-6
                    assert top > -1e-6
                    assert right < width + 1e-6
                    assert foot < height + 1e-6
                    for other in lying[:at]:
                        apart = max(
                            left - other[2], other[0] - right, top - other[3], other[1] - foot
                        )
                        seen = max(abs(left - other[0]), abs(top - other[1]))
                        assert apart > -1e-6 or (strip > 0 and seen > strip - 1e-6)
                        looked += 1
    assert looked > 10_000


@pytest.mark.parametrize("count", [5, 10, 15, 20])
def test_ones_lie_in_rows_of_five_and_tens_of_two_rows(count):
    plan = plans_for("ones", 20)[0]
    rows = [round(plan.spot(index, 0)[1], 6) for index in range(count)]
    assert [rows.count(y) for y in sorted(set(rows))] == [5] * (count // 5)
    gaps = [b - a for a, b in pairwise(sorted(set(rows)))]
    # Within a ten the rows are nearer to each other than two tens are.
    assert all(gap < wider for gap, wider in zip(gaps[::2], gaps[1::2], strict=False))


@pytest.mark.parametrize("mat", [[{"ones": 9999}], [{"tens": 999}], [{"hundreds": 99, "tens": 9}]])
def test_what_is_in_boxes_and_what_is_not_is_all_that_there_is(mat):
    full = [check_blocks(blocks) for blocks in mat]
    for blocks in full:
        for count in blocks.values():
            assert loose_of(count) + sum(size * many for size, many in boxes_of(count)) == count
            assert all(many < 10 for _, many in boxes_of(count))
            # Ten stay out of the boxes, so that they can be traded.
            assert count < 20 or 10 <= loose_of(count) <= 20
