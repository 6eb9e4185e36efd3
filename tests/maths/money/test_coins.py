from __future__ import annotations

import math
import re

import pytest

from manipulatives.maths.money.coin import Coin, Unit
from manipulatives.maths.money.coins import CURRENCIES, currency

TOKENS = {
    "name": "market tokens",
    "minor": {"sign": "t", "one": "token", "many": "tokens"},
    "coins": [
        {"worth": 1, "diameter": 20, "metal": "copper"},
        {"worth": 12, "name": "dozen", "many": "dozens", "diameter": 28.5, "metal": "gold"},
    ],
}


def facts_of(code):
    return {
        coin.key: (coin.diameter, coin.metal, coin.centre, coin.edge, coin.sides or coin.notches)
        for coin in CURRENCIES[code].coins
    }


def test_united_states_coins_are_as_the_mint_specifies():
    # United States Mint, Coin specifications: diameter, and reeded, plain or lettered edge.
    assert facts_of("usd") == {
        "1": (19.05, "copper", "", "plain", 0),
        "5": (21.21, "silver", "", "plain", 0),
        "10": (17.91, "silver", "", "milled", 0),
        "25": (24.26, "silver", "", "milled", 0),
        "50": (30.61, "silver", "", "milled", 0),
        "100": (26.49, "gold", "", "lettered", 0),
    }


def test_euro_coins_are_as_the_regulation_specifies():
    # Council Regulation (EC) 975/98 and its summary: diameters, colours, edges of the two largest;
    # the other edges as reference works agree.
    assert facts_of("eur") == {
        "1": (16.25, "copper", "", "plain", 0),
        "2": (18.75, "copper", "", "grooved", 0),
        "5": (21.25, "copper", "", "plain", 0),
        "10": (19.75, "gold", "", "scalloped", 0),
        "20": (22.25, "gold", "", "plain", 7),
        "50": (24.25, "gold", "", "scalloped", 0),
        "100": (23.25, "gold", "silver", "interrupted", 0),
        "200": (25.75, "silver", "gold", "milled", 0),
    }


def test_coins_of_the_united_kingdom_are_as_reference_works_agree():
    assert facts_of("gbp") == {
        "1": (20.3, "copper", "", "plain", 0),
        "2": (25.9, "copper", "", "plain", 0),
        "5": (18.0, "silver", "", "milled", 0),
        "10": (24.5, "silver", "", "milled", 0),
        "20": (21.4, "silver", "", "plain", 7),
        "50": (27.3, "silver", "", "plain", 7),
        "100": (23.43, "gold", "silver", "interrupted", 12),
        "200": (28.4, "gold", "silver", "milled", 0),
    }
    assert CURRENCIES["gbp"].coin("100").flats == 23.03


def test_coins_of_canada_australia_and_new_zealand_are_as_reference_works_agree():
    # New Zealand 10c to 50c: Reserve Bank of New Zealand. Size and edge of its dollars are from
    # memory, and so is that the Canadian dollar's eleven sides are a curve of constant width.
    assert facts_of("cad") == {
        "5": (21.2, "silver", "", "plain", 0),
        "10": (18.03, "silver", "", "milled", 0),
        "25": (23.88, "silver", "", "milled", 0),
        "100": (26.5, "gold", "", "plain", 11),
        "200": (28.0, "silver", "gold", "interrupted", 0),
    }
    assert facts_of("aud") == {
        "5": (19.41, "silver", "", "milled", 0),
        "10": (23.6, "silver", "", "milled", 0),
        "20": (28.65, "silver", "", "milled", 0),
        "50": (32.77, "silver", "", "plain", 12),
        "100": (25.0, "gold", "", "interrupted", 0),
        "200": (20.5, "gold", "", "interrupted", 0),
    }
    assert facts_of("nzd") == {
        "10": (20.5, "copper", "", "plain", 0),
        "20": (21.75, "silver", "", "plain", 7),
        "50": (24.75, "silver", "", "plain", 0),
        "100": (23.0, "gold", "", "interrupted", 0),
        "200": (26.5, "gold", "", "grooved", 0),
    }


def test_the_australian_fifty_cents_measure_31_65_across_their_flat_sides():
    coin = CURRENCIES["aud"].coin("50")
    assert coin.flats == 31.65
    assert coin.diameter == pytest.approx(coin.flats / math.cos(math.pi / 12), abs=0.005)


@pytest.mark.parametrize(
    ("code", "by_size"),
    [
        # The dime is smaller than the penny, the euro's 50 cents larger than its euro.
        ("usd", "10 1 5 25 100 50"),
        ("gbp", "5 1 20 100 10 2 50 200"),
        ("eur", "1 2 10 5 20 100 50 200"),
        ("aud", "5 200 10 100 20 50"),
    ],
)
def test_the_order_of_size_is_not_that_of_worth(code, by_size):
    coins = sorted(CURRENCIES[code].coins, key=lambda coin: coin.diameter)
    assert " ".join(coin.key for coin in coins) == by_size


def test_the_usual_purse_in_united_states_dollars_is_what_the_standard_names():
    # Common Core State Standards, 2.MD.C.8: quarters, dimes, nickels, and pennies.
    usual = [CURRENCIES["usd"].coin(key).name for key in CURRENCIES["usd"].usual]
    assert usual == ["quarter", "dime", "nickel", "penny"]


@pytest.mark.parametrize("code", CURRENCIES)
def test_a_currency_comes_back_from_its_data(code):
    money = CURRENCIES[code]
    assert currency(code) is money
    assert currency(money.to_data()) == money
    worths = [coin.worth for coin in money.coins]
    assert worths == sorted(set(worths), reverse=True)


@pytest.mark.parametrize("code", CURRENCIES)
def test_coins_differ_in_more_than_their_worth(code):
    looks = [
        (coin.diameter, coin.metal, coin.centre, coin.sides) for coin in CURRENCIES[code].coins
    ]
    assert len(set(looks)) == len(looks)


def test_a_teacher_describes_coins_of_her_own():
    money = currency(TOKENS)
    assert [coin.key for coin in money.coins] == ["12", "1"]
    assert money.usual == ("12", "1")
    assert money.coin("1").name == "one token"
    assert money.coin("1").counted(3) == "three one token coins"
    assert money.coin("12").counted(3) == "three dozens"
    assert currency(money.to_data()) == money


@pytest.mark.parametrize(
    ("broken", "said"),
    [
        ("dem", 'The currency is "usd", "gbp", "eur", "cad", "aud", "nzd" or a dict'),
        (None, "The currency is "),
        ({}, 'A currency needs the field "name".'),
        ({**TOKENS, "metal": "tin"}, "A currency has no field 'metal'."),
        ({**TOKENS, "minor": "t"}, 'A unit is a dict that has "sign", "one", "many", not \'t\'.'),
        ({**TOKENS, "minor": {"sign": "t", "one": "token"}}, 'A unit needs the field "many".'),
        ({**TOKENS, "name": ""}, "The name of a currency is a text of 1 to 24 letters"),
        ({**TOKENS, "name": "two\nlines"}, "The name of a currency is a text"),
        ({**TOKENS, "coins": []}, 'A currency has "coins": a list of 1 to 12'),
        ({**TOKENS, "coins": TOKENS["coins"] * 2}, "Each coin has a worth of its own"),
        ({**TOKENS, "usual": ["5"]}, '"usual" is a list of the coins 12, 1, not'),
        ({**TOKENS, "usual": [[]]}, '"usual" is a list of the coins 12, 1, not'),
    ],
    ids=str,
)
def test_an_invalid_currency_is_refused_with_the_reason(broken, said):
    with pytest.raises(ValueError, match=re.escape(said)):
        currency(broken)


@pytest.mark.parametrize(
    ("field", "value", "said"),
    [
        ("worth", 0, 'The "worth" of a coin is a whole number from 1'),
        ("worth", 2.5, 'The "worth" of a coin is'),
        ("worth", True, 'The "worth" of a coin is'),
        ("name", "", "The name of a coin is"),
        ("name", 5, "The name of a coin is"),
        ("many", " dimes", 'The "many" of a coin is'),
        ("diameter", 5, 'The "diameter" of a coin is 10 to 40 millimetres, not 5.'),
        ("diameter", float("nan"), 'The "diameter" of a coin is'),
        ("diameter", "20", 'The "diameter" of a coin is'),
        ("metal", "tin", 'The "metal" of a coin is "copper" or "silver" or "gold", not'),
        ("centre", "tin", 'The "centre" of a coin is'),
        ("edge", "sharp", 'The "edge" of a coin is "plain" or "milled" or'),
        ("sides", 2, 'The "sides" of a coin is 0, or a whole number from 3 to 13, not 2.'),
        ("notches", 20, 'The "notches" of a coin is'),
        ("flats", 20, 'The "flats" of a coin is left out unless its sides are an even number'),
        ("shape", "round", "A coin has no field 'shape'."),
    ],
)
def test_an_invalid_coin_is_refused_with_what_is_allowed(field, value, said):
    coin = {"worth": 1, "name": "token", "diameter": 20, "metal": "copper", field: value}
    with pytest.raises(ValueError, match=re.escape(said)):
        Coin.from_data(coin)


def test_flat_sides_lie_between_straight_ones_and_a_circle():
    with pytest.raises(ValueError, match=r"18\.47 to 20 millimetres, not 18"):
        Coin(1, "token", 20, "copper", sides=8, flats=18)
    assert Coin(1, "token", 20, "copper", sides=8, flats=18.48).flats == 18.48
    with pytest.raises(ValueError, match="flats"):
        Coin(1, "token", 20, "copper", sides=7, flats=19)
    with pytest.raises(ValueError, match="notches"):
        Coin(1, "token", 20, "copper", sides=7, notches=7)


def test_what_several_are_called():
    assert CURRENCIES["usd"].coin("1").counted(2) == "two pennies"
    assert CURRENCIES["usd"].coin("100").counted(1) == "one dollar coin"
    assert CURRENCIES["gbp"].coin("5").counted(2) == "two five pence coins"
    assert Unit("p", "penny", "pence").counted(1) == "one penny"


def test_a_coin_that_a_currency_has_not_is_refused_with_those_it_has():
    with pytest.raises(ValueError, match=r"US dollars have no coin '20'\. The coins are \"100\""):
        CURRENCIES["usd"].coin("20")
