from __future__ import annotations

from itertools import combinations, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point

from manipulatives.maths.money.coins import CURRENCIES
from manipulatives.maths.money.places import (
    EDGE,
    GAP,
    LINE,
    MAT,
    MOST_COINS,
    apart,
    lined_up,
    next_place,
    on_mat,
    place_near,
    reach,
    readable,
)

USD = CURRENCIES["usd"]
ALL_COINS = [coin for money in CURRENCIES.values() for coin in money.coins]
coins = st.sampled_from(ALL_COINS)
steps = st.integers(-450, 450)
keys = st.lists(st.sampled_from([coin.key for coin in USD.coins]), max_size=12)


def disc(coin, x, y, share=1.0):
    """A coin as a general library draws it, in tenths of a millimetre."""
    return Point(x, y).buffer(share * 5 * coin.diameter, quad_segs=64)


def tray(keys_there, money=USD):
    """Coins put down one after the other where they go by themselves."""
    there = []
    for key in keys_there:
        lying = next_place(key, there, money)
        if lying is not None:
            there.append(lying)
    return there


def pairs(there, money=USD):
    for one, other in combinations(there, 2):
        right, down = one["x"] - other["x"], one["y"] - other["y"]
        yield money.coin(one["coin"]), money.coin(other["coin"]), right, down


@given(coins, coins, steps, steps)
def test_coins_can_be_read_when_neither_covers_the_middle_of_the_other(one, other, right, down):
    middle_of_one = disc(one, right, down, 0.55).intersects(disc(other, 0, 0))
    middle_of_other = disc(other, 0, 0, 0.55).intersects(disc(one, right, down))
    distance = (right**2 + down**2) ** 0.5
    least = 5 * max(one.diameter, other.diameter) + 2.75 * min(one.diameter, other.diameter)
    if abs(distance - least) > 0.5:  # nearer to the limit a circle of many corners cannot tell
        assert readable(one, other, right, down) == (not middle_of_one and not middle_of_other)


@given(coins, coins, steps, steps)
def test_coins_are_apart_when_two_millimetres_are_between_them(one, other, right, down):
    between = disc(one, right, down).distance(disc(other, 0, 0))
    if abs(between - GAP) > 0.5:
        assert apart(one, other, right, down) == (between >= GAP)
    assert readable(one, other, right, down) or not apart(one, other, right, down)


@given(coins, st.integers(-50, MAT + 50), st.integers(-50, MAT + 50))
def test_a_coin_is_on_the_mat_with_all_of_itself_or_not_at_all(coin, x, y):
    inside = all(5 * coin.diameter <= part <= MAT - 5 * coin.diameter for part in (x, y))
    assert not on_mat(coin, x, y) or inside
    assert reach(coin) - 5 * coin.diameter < 1


@given(keys, st.sampled_from(USD.coins), st.integers(-200, 1600), st.integers(-200, 1600))
def test_a_coin_comes_to_lie_where_it_is_put_or_as_near_as_it_can_be_read(there, coin, x, y):
    others = tray(there)
    lying = place_near(coin.key, x, y, others, USD)
    assert on_mat(coin, lying["x"], lying["y"])
    assert all(readable(*pair) for pair in pairs([*others, lying]))
    least, most = reach(coin), MAT - reach(coin)
    wanted = [min(max(part, least), most) for part in (x, y)]

    def free(at_x, at_y):
        return on_mat(coin, at_x, at_y) and all(
            readable(coin, USD.coin(other["coin"]), at_x - other["x"], at_y - other["y"])
            for other in others
        )

    # Nothing nearer is free, on the grid that is searched.
    far = (lying["x"] - wanted[0]) ** 2 + (lying["y"] - wanted[1]) ** 2
    grid = range(-400, 401, 10)
    assert not any(
        i * i + j * j < far and free(wanted[0] + i, wanted[1] + j) for i in grid for j in grid
    )


def test_a_coin_put_at_a_free_place_stays_there_to_the_tenth():
    there = tray(["25", "25"])
    assert place_near("10", 703, 911, there, USD) == {"coin": "10", "x": 703, "y": 911}


def test_a_coin_put_beyond_the_mat_comes_back_to_its_edge():
    assert place_near("25", -500, 5000, [], USD) == {"coin": "25", "x": 122, "y": MAT - 122}


def test_a_coin_put_on_another_moves_aside():
    lying = place_near("10", 700, 700, [{"coin": "25", "x": 700, "y": 700}], USD)
    assert readable(USD.coin("10"), USD.coin("25"), lying["x"] - 700, lying["y"] - 700)
    assert max(abs(lying["x"] - 700), abs(lying["y"] - 700)) <= 200


def test_coins_that_go_by_themselves_stand_side_by_side_on_four_lines():
    there = tray(["25", "10", "5", "1"] * 4)
    assert all(apart(*pair) for pair in pairs(there))
    assert [len(row) for row in rows_of(there)] == [5, 6, 5]
    assert [lying["coin"] for lying in there[:5]] == ["25", "10", "5", "1", "25"]


def test_an_automatically_placed_coin_fills_the_first_gap():
    there = tray(["25"] * 4)
    assert next_place("25", [*there[:1], *there[2:]], USD) == there[1]


def test_the_mat_takes_coins_until_there_is_no_room():
    there = tray(["25"] * 50)
    assert 30 <= len(there) < 50
    assert all(readable(*pair) for pair in pairs(there))
    assert next_place("25", there, USD) is None
    assert place_near("25", 700, 700, there, USD) is None


def test_sixty_coins_have_room_in_rows():
    mixed = ["25"] * 5 + ["10"] * 15 + ["5"] * 10 + ["1"] * 30
    assert len(lined_up(mixed, USD)) == 60
    assert len(lined_up(["1"] * 60, USD)) == 60


def test_a_tray_takes_a_hundred_coins_at_most():
    there = [{"coin": "10", "x": 90, "y": 90}] * MOST_COINS
    assert next_place("10", there, USD) is None
    assert place_near("10", 700, 700, there, USD) is None


def rows_of(there, money=USD):
    """The coins of each row, told by the line they stand on."""
    rows = {}
    for lying in there:
        base = lying["y"] + reach(money.coin(lying["coin"]))
        rows.setdefault(base, []).append(lying)
    return [rows[base] for base in sorted(rows)]


@given(keys)
def test_lined_up_coins_are_read_row_by_row_from_the_largest_worth(given_keys):
    there = lined_up(given_keys, USD)
    assert [lying["coin"] for lying in there] == sorted(given_keys, key=int, reverse=True)
    assert all(on_mat(USD.coin(lying["coin"]), lying["x"], lying["y"]) for lying in there)
    assert all(readable(*pair) for pair in pairs(there))
    rows = rows_of(there)
    assert [lying for row in rows for lying in row] == there
    for row in rows:
        assert all(left["x"] < right["x"] for left, right in pairwise(row))


@pytest.mark.parametrize("code", CURRENCIES)
def test_one_coin_of_each_usual_kind_fits_with_a_line_for_figures_below_each_row(code):
    money = CURRENCIES[code]
    there = lined_up(list(money.usual), money)
    assert all(apart(*pair) for pair in pairs(there, money))
    rows = rows_of(there, money)
    bases = [row[0]["y"] + reach(money.coin(row[0]["coin"])) for row in rows]
    for base, row in zip(bases, rows[1:], strict=False):
        top = min(lying["y"] - reach(money.coin(lying["coin"])) for lying in row)
        assert top - base >= LINE
    assert bases[-1] + LINE <= MAT


def test_a_few_coins_stand_in_one_row():
    assert len(rows_of(lined_up(["25", "10", "5", "1"], USD))) == 1


def test_more_coins_stand_in_one_row_a_kind():
    rows = rows_of(lined_up(["25"] * 3 + ["10"] * 4 + ["5"] * 2 + ["1"] * 5, USD))
    assert [[lying["coin"] for lying in row] for row in rows] == [
        ["25"] * 3,
        ["10"] * 4,
        ["5"] * 2,
        ["1"] * 5,
    ]
    assert {row[0]["x"] - reach(USD.coin(row[0]["coin"])) for row in rows} == {EDGE}


def test_many_coins_cover_each_other_a_little():
    there = lined_up(["1"] * 60, USD)
    assert not all(apart(*pair) for pair in pairs(there))
    assert all(readable(*pair) for pair in pairs(there))


def test_there_are_more_coins_than_can_be_lined_up():
    assert lined_up(["50"] * 60, USD) is None
    assert lined_up([], USD) == []
