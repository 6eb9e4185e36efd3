from __future__ import annotations

from decimal import Decimal

import pytest
from babel.numbers import format_currency
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words

from manipulatives.maths.money.coins import CURRENCIES
from manipulatives.words.money import (
    WRITINGS,
    amount_in_words,
    coins_in_words,
    in_writing,
    sign_on,
)
from support.cases import cases

CASES = cases("money")
# Where each currency is used, for a library that asks.
LOCALES = {
    "usd": "en_US",
    "gbp": "en_GB",
    "eur": "en_IE",
    "cad": "en_CA",
    "aud": "en_AU",
    "nzd": "en_NZ",
}
AMOUNTS = st.integers(0, 99_999)
TOKENS = {
    "name": "market tokens",
    "minor": {"sign": "t", "one": "token", "many": "tokens"},
    "coins": [{"worth": 1, "diameter": 20, "metal": "copper"}],
}


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case['amount']} {case['currency']}")
def test_an_amount_is_written_and_spoken_as_in_the_cases(case):
    amount, money = case["amount"], case["currency"]
    for writing in WRITINGS:
        assert in_writing(amount, money, writing) == case[writing]
    assert amount_in_words(amount, money) == case["us"]
    assert amount_in_words(amount, money, "uk") == case["uk"]


@pytest.mark.parametrize("code", LOCALES)
@given(amount=AMOUNTS)
def test_decimals_are_written_as_a_general_library_writes_them(code, amount):
    known = format_currency(Decimal(amount) / 100, code.upper(), "\xa4#0.00", locale=LOCALES[code])
    assert in_writing(amount, code, "decimal") == known


@pytest.mark.parametrize("code", ["usd", "gbp", "eur", "cad", "aud"])
@given(amount=st.integers(1, 19_999))
def test_amounts_are_said_as_a_general_library_says_them(code, amount):
    known = num2words(
        Decimal(amount) / 100, to="currency", currency=code.upper(), separator=" and", lang="en_GB"
    )
    # It names the pound in full, always names both units, and has no plural for the euro.
    known = known.replace(" sterling", "").replace(",", "")
    known = known.removesuffix(" and zero cents").removesuffix(" and zero pence")
    for zero in ("zero dollars and ", "zero pounds and ", "zero euro and "):
        known = known.removeprefix(zero)
    if code == "eur" and amount >= 200:
        known = known.replace(" euro", " euros", 1)
    assert amount_in_words(amount, code, "uk") == known


@given(AMOUNTS, st.sampled_from(list(LOCALES)))
def test_both_units_together_are_the_amount(amount, code):
    money = CURRENCIES[code]
    parts = in_writing(amount, code).split(" and ")
    large = [int(part[1:]) for part in parts if part[0] == money.major.sign]
    small = [int(part[:-1]) for part in parts if part[-1] == money.minor.sign]
    assert 100 * sum(large) + sum(small) == amount
    assert len(large) + len(small) == len(parts)
    assert all(part < 100 for part in small)
    assert in_writing(amount, code, "small") == f"{amount}{money.minor.sign}"


@pytest.mark.parametrize("writing", WRITINGS)
def test_a_currency_with_one_unit_is_written_in_that(writing):
    assert in_writing(141, TOKENS, writing) == "141t"
    assert amount_in_words(1, TOKENS) == "one token"
    assert amount_in_words(141, TOKENS, "uk") == "one hundred and forty-one tokens"
    assert sign_on("1", TOKENS) == "1"


def test_coins_are_named_by_kind_the_largest_first():
    assert coins_in_words(["1", "25", "1", "10"]) == "one quarter, one dime and two pennies"
    assert coins_in_words(["200", "5", "5"], "gbp") == (
        "one two pound coin and two five pence coins"
    )
    with pytest.raises(ValueError, match="US dollars have no coin '3'"):
        coins_in_words(["3"])


def test_a_coin_says_its_worth_in_its_own_unit():
    assert [sign_on(coin.key, "gbp") for coin in CURRENCIES["gbp"].coins] == [
        "\N{POUND SIGN}2",
        "\N{POUND SIGN}1",
        *("50", "20", "10", "5", "2", "1"),
    ]
    assert sign_on("100", "eur") == "\N{EURO SIGN}1"


def test_there_are_three_ways_to_write_an_amount():
    with pytest.raises(ValueError, match='written "mixed", "small", "decimal", not \'long\''):
        in_writing(5, "usd", "long")
    with pytest.raises(ValueError, match="An amount is a whole number"):
        in_writing(-5)
    with pytest.raises(ValueError, match="An amount is a whole number"):
        amount_in_words(1.5)
