from __future__ import annotations

import itertools
from collections import Counter

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.maths.money.amounts import (
    change,
    check_amount,
    count_on,
    count_up,
    each_way,
    fewest,
    greedy,
    greedy_fails_at,
    greedy_is_right,
    total,
    ways,
)
from manipulatives.maths.money.coins import CURRENCIES

WORTHS = {code: [coin.worth for coin in money.coins] for code, money in CURRENCIES.items()}
AMOUNTS = (5, 10, 15, 20, 25, 30, 50, 75, 99, 100, 200)

purses = st.dictionaries(st.integers(1, 30), st.integers(0, 4), max_size=4)
coin_sets = st.sets(st.integers(1, 40), min_size=1, max_size=5).map(sorted)


def by_hand(amount, purse):
    """Every way to make an amount from a purse with an end, tried one after the other."""
    coins = sorted(purse, reverse=True)
    numbers = itertools.product(*(range(purse[coin] + 1) for coin in coins))
    return [
        tuple(itertools.chain.from_iterable((c,) * n for c, n in zip(coins, many, strict=True)))
        for many in numbers
        if sum(c * n for c, n in zip(coins, many, strict=True)) == amount
    ]


# On-Line Encyclopedia of Integer Sequences, by number; those without one are the coins of a
# country, computed from the generating function.
SEQUENCES = [
    ("A001299", [1, 5, 10, 25], [2, 4, 6, 9, 13, 18, 49, 121, 213, 242, 1463]),
    ("A001300", [1, 5, 10, 25, 50], [2, 4, 6, 9, 13, 18, 50, 134, 252, 292, 2435]),
    ("A169718", [1, 5, 10, 25, 50, 100], [2, 4, 6, 9, 13, 18, 50, 134, 252, 293, 2728]),
    ("A000008", [1, 2, 5, 10], [4, 11, 22, 40, 64, 98, 341, 984, 2090, 2156, 15211]),
    ("A001301", [1, 2, 5, 10, 25], [4, 11, 22, 40, 65, 102, 406, 1390, 3416, 3546, 39831]),
    ("A001302", [1, 2, 5, 10, 25, 50], [4, 11, 22, 40, 65, 102, 407, 1455, 3794, 3953, 58030]),
    ("A001313", [1, 2, 5, 10, 20, 50], [4, 11, 22, 41, 68, 109, 451, 1648, 4366, 4562, 69118]),
    ("gbp", WORTHS["gbp"], [4, 11, 22, 41, 68, 109, 451, 1648, 4366, 4563, 73682]),
    ("eur", WORTHS["eur"], [4, 11, 22, 41, 68, 109, 451, 1648, 4366, 4563, 73682]),
    ("no penny", [5, 10, 25], [1, 2, 2, 3, 4, 5, 10, 18, 0, 29, 97]),
    ("cad", WORTHS["cad"], [1, 2, 2, 3, 4, 5, 10, 18, 0, 30, 128]),
    ("aud", WORTHS["aud"], [1, 2, 2, 4, 4, 6, 13, 24, 0, 50, 293]),
    ("nzd", WORTHS["nzd"], [0, 1, 0, 2, 0, 2, 4, 0, 0, 11, 41]),
]


@pytest.mark.parametrize(("name", "coins", "known"), SEQUENCES, ids=[one[0] for one in SEQUENCES])
def test_ways_to_make_change_are_the_published_sequences(name, coins, known):
    del name
    assert [ways(amount, coins) for amount in AMOUNTS] == known


def test_a_dollar_has_two_hundred_and_ninety_two_changes():
    # Graham, Knuth and Patashnik, Concrete Mathematics, on changing a dollar: 292.
    assert ways(100, [1, 5, 10, 25, 50]) == 292


@pytest.mark.parametrize("code", WORTHS)
def test_ways_are_the_coefficients_of_the_generating_function(code):
    x = sympy.symbols("x")
    most = 60
    product = sympy.Integer(1)
    for worth in WORTHS[code]:
        powers = sum(x**power for power in range(0, most + 1, worth))
        product = sympy.Poly(sympy.expand(product * powers), x)
        product = sum(
            coefficient * x**power for (power,), coefficient in product.terms() if power <= most
        )
    known = sympy.Poly(product, x)
    assert [ways(amount, WORTHS[code]) for amount in range(most + 1)] == [
        known.coeff_monomial(x**amount) for amount in range(most + 1)
    ]


@given(st.integers(0, 120), purses)
def test_ways_from_a_purse_with_an_end_are_those_found_by_trying_all(amount, purse):
    found = by_hand(amount, purse)
    assert ways(amount, purse) == len(found)
    assert list(each_way(amount, purse)) == sorted(found, reverse=True)


@given(st.integers(0, 60), coin_sets)
def test_every_way_is_listed_once_and_makes_the_amount(amount, coins):
    listed = list(each_way(amount, coins))
    assert len(set(listed)) == len(listed) == ways(amount, coins)
    for way in listed:
        assert sum(way) == amount
        assert list(way) == sorted(way, reverse=True)


@given(st.integers(0, 120), purses)
def test_the_fewest_coins_are_the_shortest_way_with_the_largest_coins(amount, purse):
    found = by_hand(amount, purse)
    best = max(found, key=lambda way: (-len(way), way), default=None)
    assert fewest(amount, purse) == best


@given(st.integers(0, 200), coin_sets)
def test_the_fewest_coins_without_an_end_are_found_level_by_level(amount, coins):
    # Breadth-first search: all sums of one coin, of two coins, and so on.
    reached, level, steps = {0}, {0}, 0
    while amount not in reached and level:
        steps += 1
        level = {done + coin for done in level for coin in coins if done + coin <= amount} - reached
        reached |= level
    paid = fewest(amount, coins)
    if amount in reached:
        assert sum(paid) == amount
        assert len(paid) == steps
    else:
        assert paid is None


def test_a_purse_with_an_end_makes_the_largest_coin_first_a_bad_idea():
    purse = {25: 1, 10: 3}
    assert fewest(30, purse) == (10, 10, 10)
    assert greedy(30, purse) is None


# Canonical by exhausting all amounts up to the bound of Kozen and Zaks 1994.
@pytest.mark.parametrize(
    "coins",
    [
        *WORTHS.values(),
        [5, 10, 25, 50, 100],
        [1, 5, 10, 50, 100, 500],
        [5, 10, 20, 50, 100, 200, 500],
        [1],
        [7],
        [1, 9],
    ],
    ids=str,
)
def test_the_largest_coin_first_is_right_for_the_coins_of_many_countries(coins):
    assert greedy_is_right(coins)
    assert greedy_fails_at(coins) is None


@pytest.mark.parametrize(
    ("coins", "amount", "best", "taken"),
    [
        # Without nickels, 30 is three dimes and not a quarter with five pennies.
        ([1, 10, 25], 30, 3, 6),
        ([1, 5, 10, 20, 25], 40, 2, 3),
        ([1, 3, 4], 6, 2, 3),
        ([1, 6, 10], 12, 2, 3),
        ([1, 7, 10], 14, 2, 5),
        ([1, 15, 25], 30, 2, 6),
        # The half-crowns and florins of the United Kingdom before 1971, in halfpennies.
        ([1, 2, 6, 12, 24, 48, 60], 96, 2, 3),
    ],
    ids=str,
)
def test_the_largest_coin_first_is_wrong_for_some_sets(coins, amount, best, taken):
    assert greedy_fails_at(coins) == amount
    assert len(fewest(amount, coins)) == best
    assert len(greedy(amount, coins)) == taken


@given(coin_sets)
def test_the_bound_within_which_a_set_is_tried_misses_no_failure(coins):
    failing = (
        amount
        for amount in range(1, 4 * max(coins) + 1)
        if (best := fewest(amount, coins)) is not None
        and ((paid := greedy(amount, coins)) is None or len(paid) > len(best))
    )
    assert greedy_fails_at(coins) == next(failing, None)


@given(st.integers(0, 300), st.integers(0, 300))
def test_change_is_what_was_paid_beyond_the_price(price, beyond):
    assert change(price, price + beyond) == beyond
    coins = count_up(price, price + beyond, WORTHS["usd"])
    assert [price, *(price + said for said in count_on(coins))][-1] == price + beyond
    assert list(coins) == sorted(coins)
    assert Counter(coins) == Counter(fewest(beyond, WORTHS["usd"]))


def test_change_is_counted_up_from_the_price_to_what_was_paid():
    coins = count_up(63, 100, [25, 10, 5, 1])
    assert [63 + said for said in count_on(coins)] == [64, 65, 75, 100]
    assert count_up(63, 100, [10]) is None
    assert count_up(63, 63, [10]) == ()


@given(st.lists(st.sampled_from([1, 5, 10, 25, 50, 100]), max_size=30))
def test_counting_on_ends_at_the_total(coins):
    assert total(coins) == sum(coins)
    assert count_on(coins) == [sum(coins[: end + 1]) for end in range(len(coins))]


def test_less_than_the_price_does_not_pay():
    with pytest.raises(ValueError, match="50 does not pay for 63; pay at least the price"):
        change(63, 50)


@pytest.mark.parametrize("amount", [-1, 1.0, "41", None, True, 1_000_000])
@pytest.mark.parametrize(
    "use",
    [
        check_amount,
        lambda amount: ways(amount, [1]),
        lambda amount: list(each_way(amount, [1])),
        lambda amount: fewest(amount, [1]),
        lambda amount: greedy(amount, [1]),
        lambda amount: change(0, amount),
    ],
)
def test_an_amount_is_a_whole_number_of_the_smaller_unit(use, amount):
    with pytest.raises(ValueError, match="An amount is a whole number from 0 to 999999, not "):
        use(amount)


@pytest.mark.parametrize("coin", [0, -5, 2.5, "5", True])
@pytest.mark.parametrize(
    "use",
    [
        lambda coin: total([coin]),
        lambda coin: count_on([coin]),
        lambda coin: ways(5, [coin]),
        lambda coin: fewest(5, {coin: 2}),
        lambda coin: greedy_fails_at([coin]),
    ],
)
def test_a_coin_is_worth_a_whole_number_from_one_up(use, coin):
    with pytest.raises(ValueError, match="A coin is worth a whole number from 1 up, not "):
        use(coin)


def test_a_purse_holds_something_and_whole_numbers_of_it():
    with pytest.raises(ValueError, match="A purse holds at least one kind of coin"):
        ways(5, [])
    with pytest.raises(ValueError, match="A purse holds a whole number of each coin, not -1"):
        ways(5, {5: -1})
    assert ways(0, {}) == 1
    assert ways(5, {}) == 0
