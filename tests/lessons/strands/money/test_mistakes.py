from __future__ import annotations

from itertools import combinations_with_replacement, product

import pytest

from manipulatives.lessons.strands.money.mistakes.coins import (
    COUNTING,
    NAMING,
    coins_as_ones,
    counted_one_twice,
    kept_first_step,
    kept_last_step,
    left_one_out,
    like_by_metal,
    like_by_size,
    metals_mixed_up,
    size_for_worth,
)
from manipulatives.lessons.strands.money.mistakes.paying import (
    CHANGE,
    RULES,
    counted_price_too,
    price_again,
    price_and_paid,
    ten_too_much,
)
from manipulatives.maths.money.coins import CURRENCIES

GROUPS = [
    group[::-1]
    for many in range(1, 6)
    for group in combinations_with_replacement((1, 5, 10, 25), many)
]


def test_larger_coins_are_taken_to_be_worth_more():
    """US Mint: dime 17.91, penny 19.05, nickel 21.21, quarter 24.26 millimetres."""
    assert {key: like_by_size(key) for key in ("10", "1", "5", "25")} == {
        "10": "1", "1": "5", "5": "10", "25": None,
    }  # fmt: skip


def test_in_new_zealand_size_and_worth_agree_but_for_the_dollar():
    """By the Reserve Bank: 10c 20.5, 20c 21.75, 50c 24.75; $1 23 and $2 26.5 millimetres."""
    found = {key: like_by_size(key, "nzd") for key in ("10", "20", "50", "100", "200")}
    assert found == {"10": None, "20": None, "50": "100", "100": "50", "200": None}


@pytest.mark.parametrize("money", CURRENCIES)
def test_by_size_the_coins_change_places_with_each_other(money):
    usual = CURRENCIES[money].usual
    taken = [like_by_size(key, money) or key for key in usual]
    assert sorted(taken) == sorted(usual)
    sizes = {coin.key: coin.diameter for coin in CURRENCIES[money].coins}
    in_order = sorted(usual, key=sizes.__getitem__)
    assert [int(like_by_size(key, money) or key) for key in in_order] == sorted(map(int, usual))


@pytest.mark.parametrize("money", CURRENCIES)
def test_by_metal_a_coin_is_taken_for_one_that_looks_like_it(money):
    coins = {coin.key: coin for coin in CURRENCIES[money].coins}
    for key in CURRENCIES[money].usual:
        other = like_by_metal(key, money)
        if other is not None:
            assert other != key
            assert coins[other].metal == coins[key].metal
            assert coins[other].centre == coins[key].centre


def test_a_coin_that_is_not_usual_is_taken_for_nothing():
    assert like_by_size("50") is None
    assert like_by_metal("100") is None


def test_a_coin_that_the_currency_has_not_is_refused():
    for rule in NAMING:
        with pytest.raises(ValueError, match="no coin '3'"):
            rule.wrong("3", "usd")


ON_COINS = (
    coins_as_ones, size_for_worth, metals_mixed_up, kept_first_step, kept_last_step, left_one_out,
    counted_one_twice,
)  # fmt: skip


@pytest.mark.parametrize(
    ("coins", "totals"),
    [
        ((25, 10, 5, 1), [4, None, None, 56, 45, 40, 42]),
        ((25, 10, 10, 1), [4, 32, None, 76, 55, 45, 47]),
        ((10, 10, 1), [3, 7, 11, 30, None, 20, 22]),
        ((5, 5, 5), [3, 30, 30, None, None, 10, 20]),
        ((1, 1), [None, 10, None, None, None, 1, 3]),
        ((25,), [1, None, 10, None, None, None, 50]),
    ],
)
def test_coins_are_miscounted_as_the_rules_say(coins, totals):
    """Worked by hand: 25, 10, 5 and 1 in the old step make 25, 50, 55, 56 or 25, 35, 40, 45.

    By size 25, 10, 10 and 1 are 25, 1, 1 and 5, and by metal two dimes are two nickels.
    """
    assert [rule(coins) for rule in ON_COINS] == totals


def test_no_rule_of_counting_gives_the_right_total():
    for coins in GROUPS:
        for rule in COUNTING:
            assert rule.wrong(coins, "usd") != sum(coins), (rule.id, coins)


def test_the_old_step_is_kept_by_counting_it_out():
    """Each coin said one by one, the second kind in the step of the first."""
    for coins in GROUPS:
        kinds = sorted(set(coins), reverse=True)
        said = 0
        for coin in coins:
            said += kinds[0] if len(kinds) > 1 and coin == kinds[1] else coin
        assert kept_first_step(coins) == (said if len(kinds) > 1 else None)


@pytest.mark.parametrize(
    ("price", "paid", "back"),
    [
        (63, 100, [47, 163, 63, 38]),
        (37, 50, [23, 87, 37, 14]),
        (25, 50, [35, 75, None, 26]),
        (60, 100, [None, 160, 60, 41]),
    ],
)
def test_change_goes_wrong_as_the_rules_say(price, paid, back):
    """From 63 seven lead to 70; with four tens more the change seems to be 47."""
    rules = (ten_too_much, price_and_paid, price_again, counted_price_too)
    assert [rule(price, paid) for rule in rules] == back


def test_no_rule_of_change_gives_the_right_change():
    for price, paid in product(range(1, 100), (20, 50, 100)):
        if price < paid:
            for rule in CHANGE:
                assert rule.wrong(price, paid) != paid - price, (rule.id, price, paid)


def test_change_from_less_than_the_price_is_refused():
    with pytest.raises(ValueError, match="20 does not pay for 37"):
        ten_too_much(37, 20)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_a_rule_about_money_speaks_kindly_and_modestly(rule):
    for vocabulary in ("us", "uk"):
        sentence = rule.for_pupil(vocabulary)
        assert 1 <= len(sentence.split()) <= 10
        assert sentence[0].isupper()
        assert sentence[-1] in ".?"
        assert sum(sentence.count(mark) for mark in ".?!") == 1
        assert not {"wrong", "no", "not", "mistake", "bad"} & set(sentence.lower().split())
    assert rule.for_teacher.startswith("May have ")
    assert rule.for_teacher.endswith(".")


def test_rules_about_money_have_names_of_their_own():
    names = [rule.id for rule in RULES]
    assert len(set(names)) == len(names) == 16
