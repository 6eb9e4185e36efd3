"""What the browser says of blocks is what Python says of them."""

from __future__ import annotations

import json
from itertools import pairwise
from pathlib import Path
from random import Random

import pytest

from manipulatives.maths.number.mats import mat_equation, mat_facts, put_together
from manipulatives.maths.number.place_names import counted
from manipulatives.maths.number.place_value import (
    LARGEST,
    PLACES,
    check_blocks,
    number_of,
    partitioned,
    pieces_of,
)
from manipulatives.maths.number.trades import (
    Trade,
    trade_between,
    trade_down,
    trade_equation,
    trade_up,
)
from manipulatives.maths.number.words import number_in_words
from support.blocks import random_blocks

HERE = Path(__file__).parents[1] / "cases"
CASES = json.loads((HERE / "blocks.json").read_text("utf-8"))
STEPS = json.loads((HERE / "block_steps.json").read_text("utf-8"))
STATES = "blocks/state/places.js"
TELL = "blocks/state/tell.js"
SEED = 90213
MANY = 3000


@pytest.fixture(scope="module")
def some():
    """Blocks of every kind, the same in each run."""
    chance = Random(SEED)  # noqa: S311 - examples, not secrets
    return [random_blocks(chance) for _ in range(MANY)]


def full(mat):
    return [check_blocks(blocks) for blocks in mat]


def test_the_browser_satisfies_the_cases(js):
    assert js(STATES, "facts", [[case["mat"]] for case in CASES]) == [
        case["facts"] for case in CASES
    ]
    every = [
        (blocks, parts)
        for case in CASES
        for blocks, parts in zip(case["mat"], case["parts"], strict=True)
    ]
    given = [check_blocks(blocks) for blocks, _ in every]
    parts = [parts for _, parts in every]
    assert js(TELL, "partitioned", [[blocks] for blocks in given]) == [p["short"] for p in parts]
    assert js(TELL, "partitioned", [[blocks, True] for blocks in given]) == [
        p["zeros"] for p in parts
    ]
    assert js(TELL, "counted", [[blocks] for blocks in given]) == [p["counted"] for p in parts]


def test_the_browser_writes_the_steps_of_the_cases(js):
    steps = [[full(case["before"]), full(case["after"])] for case in STEPS]
    assert js(TELL, "matEquation", steps) == [case["equation"] for case in STEPS]


def test_the_facts_of_thousands_of_mats_are_those_of_python(js, some):
    mats = [[blocks] for blocks in some] + [list(pair) for pair in pairwise(some)]
    assert js(STATES, "facts", [[mat] for mat in mats]) == [mat_facts(mat) for mat in mats]


def test_thousands_of_blocks_are_parted_and_counted_as_python_does(js, some):
    for zeros in (False, True):
        assert js(TELL, "partitioned", [[blocks, zeros] for blocks in some]) == [
            partitioned(blocks, zeros=zeros) for blocks in some
        ]
    assert js(TELL, "counted", [[blocks] for blocks in some]) == [counted(each) for each in some]


def after_by_chance(chance, mat):
    """A mat one step on: a trade, more or fewer blocks, or all put together."""
    at = chance.randrange(len(mat))
    place = chance.choice(PLACES)
    way = chance.choice(["up", "down", "more", "less", "together", "anything"])
    try:
        if way in ("up", "down"):
            changed = (trade_up if way == "up" else trade_down)(mat[at], place)
        elif way == "together":
            return put_together(mat)
        elif way == "anything":
            changed = random_blocks(chance)
        else:
            more = chance.randint(1, 9) * (1 if way == "more" else -1)
            changed = check_blocks({**mat[at], place: mat[at][place] + more})
    except ValueError:
        return mat
    return [changed if index == at else blocks for index, blocks in enumerate(mat)]


def test_thousands_of_steps_are_written_as_python_writes_them(js, some):
    chance = Random(SEED)  # noqa: S311 - examples, not secrets
    mats = [[blocks] for blocks in some] + [list(pair) for pair in pairwise(some)]
    steps = [[mat, after_by_chance(chance, mat)] for mat in mats]
    expected = [mat_equation(before, after) for before, after in steps]
    assert js(TELL, "matEquation", steps) == expected
    # The examples are of all kinds: trades, sums, differences and nothing at all.
    assert {kind for kind in ("ten", "+", "\N{MINUS SIGN}") if any(kind in e for e in expected)}
    assert "" in expected


def test_thousands_of_trades_are_recognised_as_python_does(js, some):
    chance = Random(SEED)  # noqa: S311 - examples, not secrets
    steps = [[blocks, after_by_chance(chance, [blocks])[0]] for blocks in some]
    found = js(STATES, "tradeBetween", steps)
    expected = [trade_between(*step) for step in steps]
    assert [None if trade is None else as_browser(trade) for trade in expected] == found
    assert sum(trade is not None for trade in found) > MANY / 20


def as_browser(trade):
    return {"place": trade.place, "way": 1 if trade.way == "up" else -1, "times": trade.times}


def test_trades_are_made_as_python_makes_them(js, some):
    calls = [[[blocks], 0, place, way] for blocks in some for place in PLACES for way in (1, -1)]
    for (mat, _, place, way), found in zip(calls, js(STATES, "traded", calls), strict=True):
        try:
            expected = [(trade_up if way == 1 else trade_down)(mat[0], place)]
        except ValueError:
            expected = None
        assert found == expected, (mat, place, way)


def test_each_trade_of_the_browser_changes_the_pieces_by_nine_and_never_the_value(js, some):
    calls = [[[blocks], 0, place, way] for blocks in some for place in PLACES for way in (1, -1)]
    made = 0
    for (mat, _, _, way), found in zip(calls, js(STATES, "traded", calls), strict=True):
        if found is not None:
            made += 1
            assert number_of(found[0]) == number_of(mat[0])
            assert pieces_of(found[0]) - pieces_of(mat[0]) == -9 * way
    assert made > MANY


def test_equations_of_trades_are_those_of_python(js):
    trades = [
        Trade(place, way, times)
        for places, way in ((PLACES[1:], "up"), (PLACES[:-1], "down"))
        for place in places
        for times in (1, 2, 10)
    ]
    found = js(TELL, "tradeEquation", [[as_browser(trade)] for trade in trades])
    assert found == [trade_equation(trade) for trade in trades]


def test_all_is_put_together_as_python_does(js, some):
    pairs = [list(pair) for pair in pairwise(some)]
    for pair, found in zip(pairs, js(STATES, "together", [[pair] for pair in pairs]), strict=True):
        try:
            expected = put_together(pair) if any(pair[1].values()) else None
        except ValueError:
            expected = None
        assert found == expected


@pytest.mark.parametrize("vocabulary", ["us", "uk"])
def test_the_browser_says_every_number_on_a_mat_as_python_does(js, vocabulary):
    numbers = [*range(LARGEST + 1), 10_000, 19_998, 100_101, 999_999]
    found = js("shared/state/number_words.js", "numberInWords", [[n, vocabulary] for n in numbers])
    assert found == [number_in_words(number, vocabulary) for number in numbers]


BLOCKS_35 = {"thousands": 0, "hundreds": 0, "tens": 2, "ones": 15}


@pytest.mark.parametrize(
    ("taken", "target", "after"),
    [
        # Out of the box into its own column.
        ((None, "tens", 1), (0, "tens"), {"tens": 3, "ones": 15}),
        # Out of the box into the next smaller column: it breaks.
        ((None, "tens", 1), (0, "ones"), {"tens": 2, "ones": 25}),
        # From the mat into the next smaller column: it breaks.
        ((0, "tens", 1), (0, "ones"), {"tens": 1, "ones": 25}),
        ((0, "tens", 2), (0, "ones"), {"tens": 0, "ones": 35}),
        # Ten into the next larger column become one.
        ((0, "ones", 10), (0, "tens"), {"tens": 3, "ones": 5}),
        # Beside the mats it is taken away.
        ((0, "ones", 3), None, {"tens": 2, "ones": 12}),
        # Where it was.
        ((0, "ones", 3), (0, "ones"), {"tens": 2, "ones": 15}),
        ((None, "ones", 1), None, {"tens": 2, "ones": 15}),
    ],
)
def test_blocks_are_put_down(js, taken, target, after):
    (put,) = js(STATES, "putDown", [[[BLOCKS_35], as_taken(taken), as_target(target), True]])
    assert put == {"mat": [check_blocks(after)]}


@pytest.mark.parametrize(
    ("taken", "target", "trades", "why"),
    [
        ((0, "ones", 7), (0, "tens"), True, "Ten ones make a ten. You have 7."),
        ((None, "ones", 1), (0, "tens"), True, "Ten ones make a ten. You have 1."),
        ((None, "hundreds", 1), (0, "ones"), True, "First break the hundred into tens."),
        ((None, "thousands", 1), (0, "ones"), True, "First break the thousand into hundreds."),
        ((0, "ones", 10), (0, "hundreds"), True, "Ones belong in their own column."),
        ((0, "tens", 1), (0, "ones"), False, "Tens belong in their own column."),
        ((0, "ones", 10), (0, "tens"), False, "Ones belong in their own column."),
        ((None, "thousands", 1), (1, "thousands"), True, "A mat holds 9999 at most."),
    ],
)
def test_what_cannot_be_put_there_says_why_in_ten_words(js, taken, target, trades, why):
    mat = [BLOCKS_35, check_blocks({"thousands": 9})]
    (put,) = js(STATES, "putDown", [[mat, as_taken(taken), as_target(target), trades]])
    assert put == {"why": why}
    assert len(why.split()) <= 10


def as_taken(taken):
    return dict(zip(("at", "place", "count"), taken, strict=True))


def as_target(target):
    return None if target is None else dict(zip(("at", "place"), target, strict=True))


def test_moving_blocks_never_makes_or_loses_any(js, some):
    """Between two mats the sum stays; a trade by dropping changes no value."""
    chance = Random(SEED)  # noqa: S311 - examples, not secrets
    calls = []
    for pair in pairwise(some):
        at = chance.randrange(2)
        place = chance.choice(PLACES)
        count = chance.randint(0, min(pair[at][place], 12))
        target = {"at": chance.randrange(2), "place": chance.choice(PLACES)}
        calls.append([list(pair), {"at": at, "place": place, "count": count}, target, True])
    moved = 0
    for (mat, *_), put in zip(calls, js(STATES, "putDown", calls), strict=True):
        if "mat" in put:
            moved += put["mat"] != mat
            assert sum(map(number_of, put["mat"])) == sum(map(number_of, mat))
    assert moved > MANY / 20


@pytest.mark.parametrize(
    ("key", "after"),
    [
        ("ArrowUp", {"tens": 12, "ones": 5}),
        ("+", {"tens": 12, "ones": 5}),
        ("Shift++", {"tens": 12, "ones": 5}),
        ("ArrowDown", {"tens": 10, "ones": 5}),
        ("-", {"tens": 10, "ones": 5}),
        ("Backspace", {"tens": 10, "ones": 5}),
        ("Delete", {"tens": 10, "ones": 5}),
        ("7", {"tens": 7, "ones": 5}),
        ("0", {"tens": 0, "ones": 5}),
        ("Shift+ArrowLeft", {"hundreds": 1, "tens": 1, "ones": 5}),
        ("Shift+ArrowRight", {"tens": 10, "ones": 15}),
    ],
)
def test_keys_change_a_column(js, key, after):
    mat = [check_blocks({"tens": 11, "ones": 5})]
    rules = {"trades": True, "columns": ["hundreds", "tens", "ones"]}
    assert js(STATES, "keyed", [[mat, 0, "tens", key, rules]]) == [[check_blocks(after)]]


@pytest.mark.parametrize("key", ["PageUp", "PageDown", ".", "b", "F5", "Escape", "ArrowLeft", "x"])
def test_other_keys_mean_nothing_to_the_blocks(js, key):
    """Those of the board among them; Left and Right move the focus, Escape lets go."""
    mat = [check_blocks({"tens": 11})]
    marked = js(STATES, "keyed", [[mat, 0, "tens", key, {"trades": True, "columns": ["tens"]}]])
    assert marked == [None]


@pytest.mark.parametrize(
    ("blocks", "place", "key", "why"),
    [
        ({"ones": 5}, "ones", "Shift+ArrowLeft", "Ten ones make a ten. You have 5."),
        ({"tens": 12}, "tens", "Shift+ArrowLeft", "There is no column above the tens."),
        ({"ones": 5}, "ones", "Shift+ArrowRight", "A one does not break."),
        ({"ones": 5}, "tens", "Shift+ArrowRight", "There are no tens to break."),
        ({"ones": 5}, "tens", "ArrowDown", "There are no tens."),
        ({"ones": 9999}, "tens", "ArrowUp", "A mat holds 9999 at most."),
        ({"ones": 9999}, "tens", "7", "A mat holds 9999 at most."),
        ({"ones": 5}, "ones", "Shift+ArrowUp", ""),
    ],
)
def test_a_key_that_cannot_says_why_in_ten_words(js, blocks, place, key, why):
    mat, rules = [check_blocks(blocks)], {"trades": True, "columns": ["tens", "ones"]}
    assert js(STATES, "keyed", [[mat, 0, place, key, rules]]) == [None]
    assert js(TELL, "whyNoKey", [[mat[0], place, key, rules]]) == [why]
    assert len(why.split()) <= 10


def test_a_key_moves_a_block_to_the_other_mat_and_no_further(js):
    mat = [check_blocks({"tens": 2}), check_blocks({"tens": 1})]
    rules = {"trades": False, "columns": ["tens", "ones"]}
    down, up, past = js(
        STATES,
        "keyed",
        [
            [mat, 0, "tens", "Shift+ArrowDown", rules],
            [mat, 1, "tens", "Shift+ArrowUp", rules],
            [mat, 0, "tens", "Shift+ArrowUp", rules],
        ],
    )
    assert [blocks["tens"] for blocks in down] == [1, 2]
    assert [blocks["tens"] for blocks in up] == [3, 0]
    assert past is None


def test_nothing_is_traded_into_a_column_that_is_not_there(js):
    mat = [check_blocks({"tens": 12})]
    rules = {"trades": True, "columns": ["tens", "ones"]}
    assert js(STATES, "keyed", [[mat, 0, "tens", "Shift+ArrowLeft", rules]]) == [None]


def test_columns_are_those_asked_for_and_where_blocks_lie(js):
    found = js(
        STATES,
        "columnsOf",
        [
            [[check_blocks({})], 1],
            [[check_blocks({"tens": 1})], 1],
            [[check_blocks({"ones": 1}), check_blocks({"thousands": 1})], 2],
            [[check_blocks({"ones": 1})], 3],
        ],
    )
    assert found == [["ones"], ["tens", "ones"], list(PLACES), ["hundreds", "tens", "ones"]]


@pytest.mark.parametrize(
    ("before", "after", "step"),
    [
        ([{"tens": 3, "ones": 4}], [{"tens": 2, "ones": 14}], True),
        ([{"tens": 3, "ones": 4}], [{"tens": 1, "ones": 4}], True),
        ([{"tens": 3, "ones": 4}], [{"tens": 2, "ones": 8}], False),
        ([{"tens": 3}, {"ones": 4}], [{"tens": 3, "ones": 4}, {}], True),
        ([{"tens": 3}, {"ones": 4}], [{"tens": 3}], False),
        ([{"tens": 3}], [{"tens": 3}], True),
    ],
)
def test_one_step_is_told_from_beginning_anew(js, before, after, step):
    assert js(TELL, "isStep", [[full(before), full(after)]]) == [step]


@pytest.mark.parametrize(
    ("told", "one", "two"),
    [
        (("compare", True, True), ["345"], ["345", ">", "287"]),
        (("compare", True, False), ["345"], ["345", None, "287"]),
        (("compare", False, True), [], ["A", ">", "B"]),
        (("compare", False, False), [], []),
        (("add", True, True), ["345"], ["345", "+", "287", "=", "632"]),
        (("add", True, False), ["345"], ["345", "+", "287", "=", None]),
        (("add", False, True), [], ["A", "+", "B", "=", "632"]),
        (("take", True, True), ["345"], ["632", "\N{MINUS SIGN}", "287", "=", "345"]),
        (("take", True, False), ["345"], ["632", "\N{MINUS SIGN}", "287", "=", None]),
        (("take", False, True), [], []),
    ],
)
def test_a_sentence_never_tells_what_is_to_be_found_out(js, told, one, two):
    looks = dict(zip(("pair", "numeral", "result"), told, strict=True))
    mats = [
        check_blocks(b)
        for b in ({"hundreds": 3, "tens": 4, "ones": 5}, {"hundreds": 2, "tens": 8, "ones": 7})
    ]
    assert js(TELL, "sentence", [[mats[:1], ">", looks], [mats, ">", looks]]) == [one, two]
