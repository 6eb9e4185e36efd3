"""What tasks about money can ask about: coins, groups of coins, amounts, prices."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from itertools import combinations
from typing import Any

from manipulatives.maths.money.amounts import fewest
from manipulatives.maths.money.coin import Coin
from manipulatives.maths.money.coins import WORTH_OF_MAJOR, Money, currency
from manipulatives.maths.money.tray import trades

Options = Mapping[str, Any]
# A kind of coin, and the others that lie around it.
Among = tuple[str, tuple[str, ...]]
# Worths, the largest first.
Group = tuple[int, ...]
# A price, and what is paid for it.
Sale = tuple[int, int]
# What is given away, and what it becomes.
Trade = tuple[tuple[str, ...], tuple[str, ...]]

MOST_OTHERS = 3
MOST_ALIKE = 10
MOST_MAJOR = 20
MOST_TO_CHANGE = 5
LARGEST = WORTH_OF_MAJOR - 1
PAID = (20, 50, 100)


@cache
def coins_of(money: Money) -> tuple[Coin, ...]:
    """Return the usual coins of a currency, the largest worth first.

    Example:
        >>> [coin.name for coin in coins_of("usd")]
        ['quarter', 'dime', 'nickel', 'penny']
    """
    units = currency(money)
    return tuple(coin for coin in units.coins if coin.key in units.usual)


@cache
def small_worths(money: Money) -> Group:
    """Return what the usual coins below the larger unit are worth, the largest first.

    Example:
        >>> small_worths("nzd")
        (50, 20, 10)
    """
    large = WORTH_OF_MAJOR if currency(money).major else LARGEST + 1
    return tuple(coin.worth for coin in coins_of(money) if coin.worth < large)


def purse_of(money: Money) -> list[str]:
    """Return the purse that amounts below the larger unit are paid from.

    Example:
        >>> purse_of("usd")
        ['25', '10', '5', '1']
    """
    return [str(worth) for worth in small_worths(money)]


def among_others(options: Options) -> tuple[Among, ...]:
    """Return each coin with one to three others beside it, so that its size can be seen.

    Example:
        >>> among_others({"currency": "usd"})[0]
        ('25', ('10',))
    """
    return _among_others(options["currency"])


@cache
def _among_others(money: Money) -> tuple[Among, ...]:
    keys = [coin.key for coin in coins_of(money)]
    return tuple(
        (key, others)
        for key in keys
        for many in range(1, MOST_OTHERS + 1)
        for others in combinations([one for one in keys if one != key], many)
    )


def alike(options: Options) -> tuple[tuple[str, int], ...]:
    """Return kinds of coins, each with how many of them lie there.

    Example:
        >>> alike({"currency": "usd"})[:3]
        (('25', 2), ('25', 3), ('10', 2))
    """
    return _alike(options["currency"])


@cache
def _alike(money: Money) -> tuple[tuple[str, int], ...]:
    small = small_worths(money)
    return tuple(
        (coin.key, many)
        for coin in coins_of(money)
        for many in range(2, MOST_ALIKE + 1)
        if coin.worth * many <= (LARGEST if coin.worth in small else MOST_MAJOR * WORTH_OF_MAJOR)
    )


def mixed(options: Options) -> tuple[Group, ...]:
    """Return groups of coins of several kinds, below the larger unit altogether.

    Example:
        >>> mixed({"currency": "usd", "kinds": 4, "most": 4})
        ((25, 10, 5, 1),)
    """
    kinds = 0 if options["kinds"] == "any" else options["kinds"]
    return _mixed(options["currency"], kinds, options["most"])


@cache
def _mixed(money: Money, kinds: int, most: int) -> tuple[Group, ...]:
    def wanted(group: Group) -> bool:
        many = len(set(group))
        return many == kinds if kinds else many > 1

    return tuple(group for group in _groups(small_worths(money), most, LARGEST) if wanted(group))


def _groups(worths: Group, most: int, amount: int) -> list[Group]:
    """Return the groups of at most so many coins that are worth no more than an amount."""
    if not worths:
        return [()]
    first, *others = worths
    return [
        (first,) * many + rest
        for many in range(min(most, amount // first) + 1)
        for rest in _groups(tuple(others), most - many, amount - many * first)
    ]


@cache
def paid_with(amount: int, money: Money) -> Group:
    """Return the fewest coins below the larger unit that make an amount; none if none do.

    Example:
        >>> paid_with(41, "usd"), paid_with(41, "nzd")
        ((25, 10, 5, 1), ())
    """
    return fewest(amount, small_worths(money)) or ()


def amounts(options: Options) -> tuple[int, ...]:
    """Return amounts that can be paid, up to the most that is wanted.

    Example:
        >>> amounts({"currency": "cad", "most": 20})
        (5, 10, 15, 20)
    """
    return _amounts(options["currency"], options["most"], 1)


def amounts_of_several(options: Options) -> tuple[int, ...]:
    """Return amounts that no one coin makes.

    Example:
        >>> amounts_of_several({"currency": "cad", "most": 20})
        (15, 20)
    """
    return _amounts(options["currency"], options["most"], 2)


@cache
def _amounts(money: Money, most: int, least_coins: int) -> tuple[int, ...]:
    every = range(1, most + 1)
    return tuple(amount for amount in every if len(paid_with(amount, money)) >= least_coins)


def to_make_again(options: Options) -> tuple[Group, ...]:
    """Return groups of up to five coins that can be traded for others.

    Example:
        >>> to_make_again({"currency": "usd"})[0]
        (1, 1, 1, 1, 1)
    """
    return _to_make_again(options["currency"])


@cache
def _to_make_again(money: Money) -> tuple[Group, ...]:
    groups = _groups(small_worths(money), MOST_TO_CHANGE, LARGEST)
    return tuple(group for group in groups if trade_for(group, money))


def trade_for(group: Group, money: Money) -> Trade | None:
    """Return a trade that leads to another way of making the same amount, or None.

    The largest coin that can be is changed into as few others as possible; where none can be,
    several of the smallest become one.

    Example:
        >>> trade_for((25, 10), "usd"), trade_for((1, 1, 1, 1, 1), "usd")
        ((('25',), ('10', '10', '5')), (('1', '1', '1', '1', '1'), ('5',)))
    """
    for worth in group:
        smaller = _broken(str(worth), money)
        if smaller:
            return (str(worth),), smaller
    least = small_worths(money)[-1]
    for worth in small_worths(money)[-2::-1]:
        many, rest = divmod(worth, least)
        if not rest and many <= group.count(least):
            return (str(least),) * many, (str(worth),)
    return None


@cache
def _broken(key: str, money: Money) -> tuple[str, ...]:
    offers = trades([key], dict.fromkeys(purse_of(money)), money)
    return tuple(offers[0]) if offers else ()


def sales(options: Options) -> tuple[Sale, ...]:
    """Return prices with what is paid, where coins can make the change.

    Example:
        >>> sales({"currency": "nzd", "paid": 50})
        ((10, 50), (20, 50), (30, 50), (40, 50))
    """
    return _sales(options["currency"], options["paid"])


@cache
def _sales(money: Money, paid: int | str) -> tuple[Sale, ...]:
    payable = set(_amounts(money, LARGEST, 1))
    return tuple(
        (price, most)
        for most in PAID
        if paid in ("any", most)
        for price in range(1, most)
        if {price, most - price} <= payable
    )
