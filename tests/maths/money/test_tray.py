from __future__ import annotations

import itertools
import math
import re
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.money.coins import CURRENCIES
from manipulatives.maths.money.places import MAT, MOST_COINS
from manipulatives.maths.money.tray import (
    check_coins,
    check_purse,
    check_tray,
    left_in,
    traded,
    trades,
    tray_facts,
    tray_of,
)
from support.cases import cases

CASES = cases("trays")
KEYS = {code: [coin.key for coin in money.coins] for code, money in CURRENCIES.items()}


def some_coins(most=8):
    return st.sampled_from(list(KEYS)).flatmap(
        lambda code: st.tuples(st.just(code), st.lists(st.sampled_from(KEYS[code]), max_size=most))
    )


def lying(*keys):
    """Coins without regard to their places."""
    return [{"coin": key, "x": 700, "y": 700} for key in keys]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["about"])
def test_facts_are_as_the_cases_tell(case):
    tray = tray_of(case["coins"], case["currency"])
    facts = tray_facts(tray, case["currency"], check_purse(case["purse"], case["currency"]))
    assert case["facts"].items() <= facts.items()


@given(some_coins())
def test_facts_are_flat_and_count_what_is_there(given_coins):
    code, keys = given_coins
    facts = tray_facts(lying(*keys), code)
    assert facts["total"] == sum(map(int, keys))
    assert facts["count"] == len(keys)
    assert facts["kinds"].split() == sorted(keys, key=int, reverse=True)
    counted = {name: value for name, value in facts.items() if name.startswith("count_")}
    assert counted == {f"count_{key}": keys.count(key) for key in KEYS[code]}
    assert all(isinstance(value, (bool, int, str)) for value in facts.values())


@given(
    st.lists(st.sampled_from(KEYS["usd"]), max_size=5),
    st.dictionaries(st.sampled_from(KEYS["usd"]), st.integers(0, 3), max_size=4),
)
def test_fewest_is_true_when_no_smaller_handful_is_worth_as_much(keys, purse):
    there = Counter(keys)
    around = list(
        itertools.chain.from_iterable(
            [key] * max(there[key], purse.get(key, 0)) for key in KEYS["usd"]
        )
    )
    worth = sum(map(int, keys))
    smaller = any(
        sum(map(int, handful)) == worth
        for size in range(len(keys))
        for handful in itertools.combinations(around, size)
    )
    assert tray_facts(lying(*keys), "usd", purse)["fewest"] == (not smaller)


@given(some_coins(), st.integers(0, 4))
def test_coins_left_and_coins_on_the_tray_are_those_of_the_purse(given_coins, many):
    code, keys = given_coins
    purse = check_purse(dict.fromkeys(KEYS[code], many + len(keys)), code)
    for key, left in left_in(purse, lying(*keys)).items():
        assert left + keys.count(key) == purse[key]
    assert left_in(KEYS[code], lying(*keys)) == dict.fromkeys(KEYS[code])


@given(some_coins(6))
def test_a_trade_is_for_coins_worth_as_much(given_coins):
    code, keys = given_coins
    for offer in trades(keys, dict.fromkeys(KEYS[code]), code):
        assert sum(map(int, offer)) == sum(map(int, keys))
        assert (len(keys) == 1) != (len(offer) == 1)
        assert 1 <= len(offer) <= 25


@pytest.mark.parametrize(
    ("given_away", "offers"),
    [
        ("25", ["10 10 5", "5 5 5 5 5", " ".join(["1"] * 25)]),
        ("10", ["5 5", " ".join(["1"] * 10)]),
        ("1", []),
        ("10 10 5", ["25"]),
        ("5 5", ["10"]),
        ("1 1 1 1 1", ["5"]),
        ("10 5", []),
        ("25 25", []),
    ],
)
def test_quarters_dimes_nickels_and_pennies_are_traded(given_away, offers):
    left = dict.fromkeys(["25", "10", "5", "1"])
    assert [" ".join(offer) for offer in trades(given_away.split(), left)] == offers


def test_a_trade_takes_from_the_purse_what_is_in_it():
    assert trades(["25"], {"10": 1, "5": 3, "1": 4}) == [["10", "5", "5", "5"]]
    assert trades(["25"], {"10": 2, "5": 0, "1": 4}) == []
    assert trades(["5", "5"], {"10": 0}) == []
    assert trades(["5", "5"], {"10": 1}) == [["10"]]


def test_a_trade_offers_four_ways_at_most_and_never_a_heap():
    offers = trades(["200"], dict.fromkeys(KEYS["gbp"]), "gbp")
    assert [len(offer) for offer in offers] == [2, 4, 10, 20]


@given(some_coins(6), st.data())
def test_trading_does_not_change_the_total_or_the_other_coins(given_coins, data):
    code, keys = given_coins
    tray = tray_of(keys, code)
    chosen = data.draw(st.sets(st.integers(0, max(0, len(keys) - 1)), max_size=len(keys)))
    given_away = [tray[place]["coin"] for place in chosen]
    for offer in trades(given_away, dict.fromkeys(KEYS[code]), code) if chosen else []:
        after = traded(tray, list(chosen), offer, code)
        if after is None:
            # Many small coins for a few large ones may find no room; then nothing happens.
            assert len(offer) > len(chosen)
            continue
        assert check_tray(after, code) == after
        assert tray_facts(after, code)["total"] == tray_facts(tray, code)["total"]
        assert [one for place, one in enumerate(tray) if place not in chosen] == after[
            : len(tray) - len(chosen)
        ]


def test_coins_come_from_a_trade_where_the_old_ones_lay():
    tray = [{"coin": "10", "x": 400, "y": 900}, {"coin": "25", "x": 1000, "y": 200}]
    after = traded(tray, [0], ["5", "5"])
    assert after[0] == tray[1]
    assert after[1] == {"coin": "5", "x": 400, "y": 900}
    assert math.dist((after[2]["x"], after[2]["y"]), (400, 900)) < 240


def test_no_trade_happens_where_there_is_no_room():
    crowd = [
        {"coin": "50", "x": x, "y": y} for x in range(160, 1250, 240) for y in range(160, 1250, 240)
    ]
    assert check_tray(crowd) == crowd
    assert traded(crowd, [0], ["1"] * 50) is None


@pytest.mark.parametrize("places", [[], [2], [-1], [True]])
def test_a_trade_is_of_coins_that_are_there(places):
    with pytest.raises(ValueError, match="The tray has coins 0 to 1 to trade"):
        traded(tray_of("5 5"), places, ["5"])


def test_a_trade_is_never_at_a_loss():
    with pytest.raises(ValueError, match="Coins worth 10 are traded for coins worth as much"):
        traded(tray_of("5 5"), [0, 1], ["5"])


def test_coins_are_given_as_text_or_list_and_sorted_largest_first():
    assert check_coins("1 25 10") == ["25", "10", "1"]
    assert check_coins([1, "25", 10]) == ["25", "10", "1"]
    assert check_coins("") == []
    assert check_purse("1 1 25") == ["25", "1"]
    assert check_purse([]) == []
    assert check_purse({1: 4, "25": 1}) == {"25": 1, "1": 4}
    assert check_purse(None, "nzd") == ["200", "100", "50", "20", "10"]


@pytest.mark.parametrize(
    ("check", "broken", "said"),
    [
        (check_coins, "3", "US dollars have no coin '3'. The coins are \"100\","),
        (check_coins, ["quarter"], "US dollars have no coin 'quarter'."),
        (check_coins, [2.5], "US dollars have no coin 2.5."),
        (check_coins, [True], "US dollars have no coin True."),
        (check_coins, 25, "Coins are a list of at most 100, or a text such as"),
        (check_coins, ["1"] * (MOST_COINS + 1), "Coins are a list of at most 100"),
        (check_purse, {"3": 1}, "US dollars have no coin '3'."),
        (check_purse, {"1": -1}, "A purse holds a number from 0 to 100 of each coin, not -1"),
        (check_purse, {"1": True}, "A purse holds a number from 0 to 100 of each coin, not True"),
        (check_purse, {"1": None}, "A purse holds a number from 0 to 100 of each coin, not None"),
        (check_purse, 7, "Coins are a list of at most 100"),
        (check_tray, None, "A tray is a list of at most 100 coins, not None."),
        (check_tray, ["25"], 'A coin on a tray is {"coin": …, "x": …, "y": …}'),
        (check_tray, [{"coin": "25", "x": 700}], "A coin on a tray is"),
        (check_tray, [{"coin": "25", "x": 700, "y": 70.5}], "A coin on a tray is"),
        (check_tray, [{"coin": 25, "x": 700, "y": 700}], "A coin on a tray is"),
        (check_tray, [{"coin": "25", "x": 700, "y": 700, "z": 1}], "A coin on a tray is"),
        (check_tray, lying("3"), "US dollars have no coin '3'."),
        (check_tray, lying("25", "10"), "cover each other; move them apart, or give the coins"),
        (check_tray, [{"coin": "25", "x": 121, "y": 700}], "lies 122 to 1278 tenths of a mill"),
        (check_tray, [{"coin": "25", "x": 700, "y": MAT}], "A coin on a tray is"),
    ],
)
def test_an_invalid_coin_purse_or_tray_is_refused_with_what_is_allowed(check, broken, said):
    with pytest.raises(ValueError, match=re.escape(said)):
        check(broken)


def test_more_coins_than_the_mat_holds_are_refused():
    with pytest.raises(ValueError, match="60 such coins do not fit on the mat; take fewer"):
        tray_of(["50"] * 60)


@given(some_coins(30))
def test_a_tray_of_coins_is_a_tray(given_coins):
    code, keys = given_coins
    tray = tray_of(keys, code)
    assert check_tray(tray, code) == tray
    assert [one["coin"] for one in tray] == sorted(keys, key=int, reverse=True)
