"""The state of a coin tray in the browser's language, held to Python's."""

from __future__ import annotations

import json
import random
from itertools import product

import pytest

from manipulatives.maths.money.amounts import fewest
from manipulatives.maths.money.coins import CURRENCIES, currency
from manipulatives.maths.money.places import MAT, lined_up, next_place, place_near, reach
from manipulatives.maths.money.tray import (
    check_purse,
    in_counting_order,
    left_in,
    traded,
    trades,
    tray_facts,
    tray_of,
)
from manipulatives.words.money import WRITINGS, in_writing, sign_on
from support.files import ROOT

CASES = ROOT / "tests" / "cases"
TRAYS = json.loads((CASES / "trays.json").read_text("utf-8"))
MONEY = json.loads((CASES / "money.json").read_text("utf-8"))
DATA = {code: money.to_data() for code, money in CURRENCIES.items()}
KEYS = {code: [coin.key for coin in money.coins] for code, money in CURRENCIES.items()}


def chance_of(seed):
    """A reproducible chance."""
    return random.Random(seed)  # noqa: S311 - nothing here is secret


def some_trays(many, most, seed):
    """Generated trays with their currency: coins thrown one after the other onto the mat."""
    chance = chance_of(seed)
    for _ in range(many):
        code = chance.choice(list(KEYS))
        tray = []
        for key in chance.choices(KEYS[code], k=chance.randint(0, most)):
            at = chance.randint(-100, MAT + 100), chance.randint(-100, MAT + 100)
            lying = place_near(key, *at, tray, CURRENCIES[code])
            if lying:
                tray.append(lying)
        yield code, tray


def some_purse(chance, code):
    kinds = chance.sample(KEYS[code], chance.randint(0, len(KEYS[code])))
    if chance.random() < 0.5:
        return check_purse(kinds, code)
    return check_purse({key: chance.randint(0, 6) for key in kinds}, code)


@pytest.mark.parametrize("code", CURRENCIES)
def test_the_browser_knows_the_coins_that_python_knows(js, code):
    (found,) = js("coins/state/coinage.js", "currencyOf", [[code]])
    assert found == DATA[code]


def test_a_currency_of_a_teacher_is_taken_as_it_is(js):
    own = currency(TRAYS[-1]["currency"]).to_data()
    assert js("coins/state/coinage.js", "currencyOf", [[own]]) == [own]


def test_the_browser_satisfies_the_cases(js):
    calls, expected = [], []
    for case in TRAYS:
        tray = tray_of(case["coins"], case["currency"])
        money = currency(case["currency"]).to_data()
        calls.append([tray, money, check_purse(case["purse"], case["currency"])])
        expected.append(case["facts"])
    for facts, known in zip(js("coins/state/tray.js", "facts", calls), expected, strict=True):
        assert known.items() <= facts.items()


def test_the_browser_knows_the_facts_of_thousands_of_trays(js):
    chance = chance_of(41)
    calls, expected = [], []
    for code, tray in some_trays(3000, 7, 25):
        purse = some_purse(chance, code)
        calls.append([tray, DATA[code], purse])
        expected.append(tray_facts(tray, code, purse))
    assert js("coins/state/tray.js", "facts", calls) == expected


def test_what_is_left_in_the_purse_is_what_python_says(js):
    chance = chance_of(7)
    calls, expected = [], []
    for code, tray in some_trays(500, 8, 3):
        purse = some_purse(chance, code)
        calls.append([purse, tray])
        expected.append([[key, many] for key, many in left_in(purse, tray).items()])
    assert js("coins/state/tray.js", "leftIn", calls) == expected


def test_the_fewest_coins_are_the_same_in_both_languages(js):
    chance = chance_of(5)
    calls, expected = [], []
    for _ in range(2000):
        worths = chance.sample(range(1, 60), chance.randint(1, 5))
        limits = {worth: chance.choice([0, 1, 2, 3, 7, 500]) for worth in worths}
        amount = chance.randint(0, 250)
        calls.append([amount, [[str(worth), many] for worth, many in limits.items()]])
        paid = fewest(amount, limits)
        expected.append(None if paid is None else [str(worth) for worth in paid])
    assert js("coins/state/tray.js", "fewest", calls) == expected


def test_coins_are_counted_in_the_same_order(js):
    trays = [tray for _, tray in some_trays(500, 12, 11)]
    assert js("coins/state/tray.js", "counting", [[tray] for tray in trays]) == [
        in_counting_order(tray) for tray in trays
    ]


def test_the_same_trades_are_offered(js):
    chance = chance_of(13)
    calls, expected = [], []
    for code, keys in KEYS.items():
        for _ in range(300):
            given = chance.choices(keys, k=chance.choice([1, 1, 2, 3, 5]))
            left = left_in(some_purse(chance, code), [])
            calls.append([given, [[key, many] for key, many in left.items()]])
            expected.append(trades(given, left, code))
    assert js("coins/state/tray.js", "trades", calls) == expected
    assert sum(map(bool, expected)) > 300


def test_a_trade_leads_to_the_same_tray(js):
    calls, expected = [], []
    for code, tray in some_trays(300, 8, 17):
        for place, lying in enumerate(tray[:2]):
            for offer in trades([lying["coin"]], dict.fromkeys(KEYS[code]), code)[:2]:
                calls.append([tray, [place], offer, DATA[code]])
                expected.append(traded(tray, [place], offer, code))
    assert len(calls) > 300
    assert js("coins/state/tray.js", "traded", calls) == expected


def test_a_coin_comes_to_lie_at_the_same_tenth_of_a_millimetre(js):
    chance = chance_of(19)
    calls, expected = [], []
    for code, tray in some_trays(400, 18, 23):
        key = chance.choice(KEYS[code])
        at = chance.randint(-200, MAT + 200), chance.randint(-200, MAT + 200)
        clear = chance.random() < 0.3
        calls.append([key, *at, tray, DATA[code], clear])
        expected.append(place_near(key, *at, tray, CURRENCIES[code], clear=clear))
    assert js("coins/state/places.js", "placeNear", calls) == expected


def test_a_place_between_two_tenths_is_rounded(js):
    (found,) = js("coins/state/places.js", "placeNear", [["10", 700.4, 699.6, [], DATA["usd"]]])
    assert found == {"coin": "10", "x": 700, "y": 700}


def test_the_next_coin_goes_to_the_same_place(js):
    chance = chance_of(29)
    calls, expected = [], []
    for code, tray in some_trays(400, 18, 31):
        key = chance.choice(KEYS[code])
        calls.append([key, tray, DATA[code]])
        expected.append(next_place(key, tray, CURRENCIES[code]))
    full = tray_of(["25"] * 49)
    calls.append(["50", full, DATA["usd"]])
    expected.append(None)
    assert js("coins/state/places.js", "nextPlace", calls) == expected


def test_coins_are_lined_up_alike(js):
    chance = chance_of(37)
    calls, expected = [], []
    for code, many in product(KEYS, (0, 1, 3, 4, 6, 9, 14, 20, 28, 36, 45, 56, 80)):
        for _ in range(8):
            keys = chance.choices(KEYS[code], k=many)
            calls.append([keys, DATA[code]])
            expected.append(lined_up(keys, CURRENCIES[code]))
    assert js("coins/state/places.js", "linedUp", calls) == expected
    assert None in expected


def test_a_nudged_coin_goes_that_way_and_past_others(js):
    calls = [
        [tray[0], *way, tray[1:], DATA[code]]
        for code, tray in some_trays(300, 10, 43)
        for way in ((1, 0), (-1, 0), (0, 1), (0, -1))
        if tray
    ]
    stayed = 0
    for call, found in zip(calls, js("coins/state/places.js", "nudged", calls), strict=True):
        lying, right, down, others, data = call
        coin = currency(data).coin(lying["coin"])
        if found is None:
            end = MAT - reach(coin) if right + down > 0 else reach(coin)
            at = lying["x"] if right else lying["y"]
            # It is at the edge of the mat, or others lie between.
            assert abs(end - at) < 50 or others
            stayed += 1
            continue
        gone = (found["x"] - lying["x"]) * right + (found["y"] - lying["y"]) * down
        assert gone >= 25
        assert found == place_near(found["coin"], found["x"], found["y"], others, currency(data))
    assert stayed < len(calls) / 4


def test_a_nudge_on_a_free_mat_is_five_millimetres(js):
    lying = {"coin": "25", "x": 700, "y": 700}
    calls = [[lying, *way, [], DATA["usd"]] for way in ((1, 0), (0, -1))]
    assert js("coins/state/places.js", "nudged", calls) == [
        {**lying, "x": 750},
        {**lying, "y": 650},
    ]


@pytest.mark.parametrize("writing", WRITINGS)
def test_amounts_are_written_alike(js, writing):
    calls, expected = [], []
    for case in MONEY:
        calls.append([case["amount"], DATA[case["currency"]], writing])
        expected.append(case[writing])
    for code, amount in product(DATA, range(0, 1300, 7)):
        calls.append([amount, DATA[code], writing])
        expected.append(in_writing(amount, code, writing))
    own = currency(TRAYS[-1]["currency"]).to_data()
    calls.append([141, own, writing])
    expected.append("141o")
    assert js("coins/state/amounts.js", "inWriting", calls) == expected


def test_coins_bear_the_same_signs(js):
    calls = [[coin, data] for data in DATA.values() for coin in data["coins"]]
    assert js("coins/state/amounts.js", "signOn", calls) == [
        sign_on(str(coin["worth"]), data) for coin, data in calls
    ]


@pytest.mark.parametrize(
    ("amount", "code", "words"),
    [
        (0, "usd", "0 cents"),
        (1, "usd", "1 cent"),
        (41, "usd", "41 cents"),
        (100, "usd", "1 dollar"),
        (141, "usd", "1 dollar and 41 cents"),
        (201, "gbp", "2 pounds and 1 penny"),
        (305, "eur", "3 euros and 5 cents"),
    ],
)
def test_an_amount_is_said_with_its_units(js, amount, code, words):
    assert js("coins/state/amounts.js", "spoken", [[amount, DATA[code]]]) == [words]


def told(worths, names):
    return {"worths": worths, "names": names}


def test_a_coin_is_called_what_its_face_tells_and_no_more(js):
    quarter = next(coin for coin in DATA["usd"]["coins"] if coin["name"] == "quarter")
    pound = next(coin for coin in DATA["gbp"]["coins"] if coin["worth"] == 100)
    calls = [
        [quarter, DATA["usd"], told(worths=True, names=True)],
        [quarter, DATA["usd"], told(worths=True, names=False)],
        [quarter, DATA["usd"], told(worths=False, names=True)],
        [quarter, DATA["usd"], told(worths=False, names=False)],
        [pound, DATA["gbp"], told(worths=False, names=False)],
    ]
    assert js("coins/state/amounts.js", "coinInWords", calls) == [
        "quarter, 25 cents",
        "25 cents",
        "quarter",
        "silver coin, 24 millimetres",
        "gold and silver coin, 23 millimetres, 12 sides",
    ]


@pytest.mark.parametrize("code", CURRENCIES)
def test_where_naming_is_asked_neither_name_nor_worth_is_said(js, code):
    keys = KEYS[code] * 2
    (told_all,) = js(
        "coins/state/amounts.js", "coinsInWords", [[keys, DATA[code], told(False, False)]]
    )
    for coin in CURRENCIES[code].coins:
        assert coin.name not in told_all
        assert coin.many not in told_all or not coin.many
    for unit in (CURRENCIES[code].minor, CURRENCIES[code].major):
        assert unit.one not in told_all


def test_coins_are_named_in_groups(js):
    calls = [
        [["1", "25", "1"], DATA["usd"], told(True, True)],
        [["1", "25", "1"], DATA["usd"], told(True, False)],
        [["200", "5", "5"], DATA["gbp"], told(False, True)],
        [[], DATA["usd"], told(True, True)],
    ]
    assert js("coins/state/amounts.js", "coinsInWords", calls) == [
        "1 quarter, 2 pennies",
        "1 coin of 25 cents, 2 coins of 1 cent",
        "1 two pound coin, 2 five pence coins",
        "no coins",
    ]


def test_a_tray_of_another_currency_does_not_fit(js):
    tray = tray_of("25 10")
    assert js("coins/state/tray.js", "fits", [[tray, DATA["usd"]], [tray, DATA["gbp"]]]) == [
        True,
        False,
    ]
