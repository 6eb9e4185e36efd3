"""Coins on a tray and in a purse: their facts, the coins left, and possible trades.

A *tray* is a list of coins with their places (`places`), a later one above an earlier one. A
*purse* is a list of coins, as many of each as needed, or a dict with the number of each,
including those on the tray; an empty list means no purse.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from manipulatives.maths.money.amounts import fewest, total
from manipulatives.maths.money.coins import Currency, currency
from manipulatives.maths.money.places import (
    MAT,
    MOST_COINS,
    Lying,
    lined_up,
    next_place,
    on_mat,
    place_near,
    reach,
    readable,
)
from manipulatives.maths.time.day import is_whole

MOST_PIECES = 25
MOST_OFFERS = 4

CoinPurse = list[str] | dict[str, int]


def check_coins(given: object, money: object = "usd") -> list[str]:
    """Check coins and return their keys, the largest worth first.

    Args:
        given: a list of keys or worths, or a text such as "25 10 10 1".
        money: their currency.

    Raises:
        ValueError: no coins, coins the currency has not, or too many.

    Example:
        >>> check_coins("10 25 1"), check_coins([5, "5"])
        (['25', '10', '1'], ['5', '5'])
    """
    units = currency(money)
    parts = given.split() if isinstance(given, str) else given
    if not isinstance(parts, (list, tuple)) or len(parts) > MOST_COINS:
        raise ValueError(
            f'Coins are a list of at most {MOST_COINS}, or a text such as "25 10 1", not {given!r}.'
        )
    keys = [_key(part, units) for part in parts]
    return sorted(keys, key=int, reverse=True)


def check_purse(given: object, money: object = "usd") -> CoinPurse:
    """Check a purse and return it, its largest coins first.

    Args:
        given: a list of coins or a text, as for `check_coins`, or a dict with how many there are.
            None is the usual purse of the currency.
        money: its currency.

    Raises:
        ValueError: no purse, or coins the currency has not.

    Example:
        >>> check_purse({"1": 10, "10": 3})
        {'10': 3, '1': 10}
        >>> check_purse(None)
        ['25', '10', '5', '1']
    """
    units = currency(money)
    if given is None:
        return list(units.usual)
    if not isinstance(given, Mapping):
        return list(dict.fromkeys(check_coins(given, money)))
    for key, many in given.items():
        if not is_whole(many, MOST_COINS + 1):
            allowed = f"a number from 0 to {MOST_COINS}"
            raise ValueError(f"A purse holds {allowed} of each coin, not {many!r} of {key!r}.")
    limits = {_key(key, units): many for key, many in given.items()}
    return {key: limits[key] for key in sorted(limits, key=int, reverse=True)}


def check_tray(given: object, money: object = "usd") -> list[Lying]:
    """Check a tray and return a copy of it.

    Raises:
        ValueError: no tray, coins the currency has not, or places where they cannot lie.

    Example:
        >>> check_tray([{"coin": "10", "x": 300, "y": 200}])
        [{'coin': '10', 'x': 300, 'y': 200}]
    """
    units = currency(money)
    if not isinstance(given, (list, tuple)) or len(given) > MOST_COINS:
        raise ValueError(f"A tray is a list of at most {MOST_COINS} coins, not {given!r}.")
    tray = [_check_lying(lying, units) for lying in given]
    for index, one in enumerate(tray):
        coin = units.coin(one["coin"])
        for other in tray[:index]:
            apart = one["x"] - other["x"], one["y"] - other["y"]
            if not readable(coin, units.coin(other["coin"]), *apart):
                raise ValueError(
                    f"{one} and {other} cover each other; move them apart, or give the coins "
                    "without places and they are lined up."
                )
    return tray


def _check_lying(given: object, units: Currency) -> Lying:
    match given:
        case {"coin": str(key), "x": x, "y": y, **rest} if (
            not rest and is_whole(x, MAT) and is_whole(y, MAT)
        ):
            coin = units.coin(key)
            if on_mat(coin, x, y):
                return Lying(coin=key, x=x, y=y)
            least = reach(coin)
            raise ValueError(
                f"The middle of coin {key} lies {least} to {MAT - least} tenths of a millimetre "
                f"from the left and from the top of the mat, not at {x}, {y}."
            )
    raise ValueError(
        'A coin on a tray is {"coin": …, "x": …, "y": …}, its place in whole tenths of a '
        f"millimetre on a mat of {MAT} by {MAT}, not {given!r}."
    )


def _key(given: object, units: Currency) -> str:
    return units.coin(str(given) if is_whole(given, MAT * MAT) else given).key


def tray_of(coins: object, money: object = "usd") -> list[Lying]:
    """Return a tray with coins lined up on it.

    Raises:
        ValueError: coins as `check_coins` refuses them, or more than the mat has room for.

    Example:
        >>> [lying["coin"] for lying in tray_of("10 25")]
        ['25', '10']
    """
    units = currency(money)
    keys = check_coins(coins, money)
    tray = lined_up(keys, units)
    if tray is None:
        raise ValueError(f"{len(keys)} such coins do not fit on the mat; take fewer.")
    return tray


def left_in(purse: CoinPurse, tray: Sequence[Lying]) -> dict[str, int | None]:
    """Return how many of each coin are left in a purse; None for an unlimited number.

    Example:
        >>> left_in({"10": 3}, [{"coin": "10", "x": 300, "y": 200}])
        {'10': 2}
    """
    if not isinstance(purse, dict):
        return dict.fromkeys(purse)
    there = Counter(lying["coin"] for lying in tray)
    return {key: max(0, many - there[key]) for key, many in purse.items()}


def in_counting_order(tray: Sequence[Lying]) -> list[int]:
    """Return the places of the coins in a tray in the order in which they are counted.

    That is the largest worth first, then from the top, then from the left.

    Example:
        >>> in_counting_order(tray_of("10 5")[::-1])
        [1, 0]
    """

    def turn(place: int) -> tuple[int, int, int]:
        lying = tray[place]
        return -int(lying["coin"]), lying["y"], lying["x"]

    return sorted(range(len(tray)), key=turn)


def tray_facts(
    tray: Sequence[Lying], money: object = "usd", purse: CoinPurse | None = None
) -> dict[str, int | str | bool | None]:
    """Return the facts of the coins on a tray, for goals and foreseen mistakes.

    Args:
        tray: the coins.
        money: their currency.
        purse: what else there is to pay with; None for the usual purse.

    Returns:
        `total`: what they are worth, in the smaller unit;
        `count`: how many there are;
        `fewest`: whether the amount cannot be made with fewer of the coins that there are, on the
        tray and in the purse;
        `kinds`: their keys, the largest worth first: "25 10 10 1";
        `count_25` and so on: how many there are of each coin of the currency.

    Raises:
        ValueError: coins the currency has not.

    Example:
        >>> facts = tray_facts(tray_of("10 10 5"), "usd", ["25", "10", "5"])
        >>> facts["total"], facts["kinds"], facts["fewest"]
        (25, '10 10 5', False)
    """
    units = currency(money)
    keys = check_coins([lying["coin"] for lying in tray], money)
    there = Counter(keys)
    amount = total([int(key) for key in keys])
    limits = {int(key): many for key, many in there.items()}
    for key, left in left_in(check_purse(purse, money), tray).items():
        worth = int(key)
        limits[worth] = there[key] + (amount // worth if left is None else left)
    least = fewest(amount, limits)
    return {
        "total": amount,
        "count": len(keys),
        "fewest": least is not None and len(least) == len(keys),
        "kinds": " ".join(keys),
        **{f"count_{coin.key}": there[coin.key] for coin in units.coins},
    }


def trades(
    given: Sequence[str], left: Mapping[str, int | None], money: object = "usd"
) -> list[list[str]]:
    """Return the possible trades for coins, the fewest coins first, at most four.

    One coin is broken into smaller ones: into the fewest, and into coins of one kind. Several
    coins become the one coin that is worth as much, if there is one.

    Args:
        given: the coins that are given away.
        left: how many of each coin there are to be had, None for no end (`left_in`).
        money: their currency.

    Raises:
        ValueError: coins the currency has not.

    Example:
        >>> endless = dict.fromkeys(["25", "10", "5", "1"])
        >>> trades(["10", "10", "5"], endless)
        [['25']]
        >>> [" ".join(offer) for offer in trades(["10"], endless)]
        ['5 5', '1 1 1 1 1 1 1 1 1 1']
    """
    keys = check_coins(list(given), money)
    amount = total([int(key) for key in keys])
    if len(keys) > 1:
        return [[key] for key, many in left.items() if int(key) == amount and many != 0]
    limits = {
        int(key): amount // int(key) if many is None else many
        for key, many in left.items()
        if int(key) < amount
    }
    offers = [fewest(amount, limits) or ()]
    for worth, many in limits.items():
        pieces = amount // worth
        if amount % worth == 0 and pieces <= many:
            offers.append((worth,) * pieces)
    possible = [offer for offer in dict.fromkeys(offers) if 0 < len(offer) <= MOST_PIECES]
    possible.sort(key=len)
    return [[str(worth) for worth in offer] for offer in possible[:MOST_OFFERS]]


def traded(
    tray: Sequence[Lying], places: Sequence[int], offer: Sequence[str], money: object = "usd"
) -> list[Lying] | None:
    """Return the tray after coins were traded, or None when there is no room for the new ones.

    The new coins are placed as near as possible to the middle of the old ones.

    Args:
        tray: the coins.
        places: which of them are given away, counted from 0.
        offer: what they become.
        money: their currency.

    Raises:
        ValueError: a place that the tray has not, or coins that are not worth the same.

    Example:
        >>> after = traded(tray_of("10 10 5"), [0, 1, 2], ["25"])
        >>> [lying["coin"] for lying in after]
        ['25']
    """
    units = currency(money)
    chosen = sorted(set(places))
    if not chosen or not all(is_whole(place, len(tray)) for place in chosen):
        raise ValueError(f"The tray has coins 0 to {len(tray) - 1} to trade, not {places!r}.")
    away = [tray[place] for place in chosen]
    worth = total([int(lying["coin"]) for lying in away])
    into = check_coins(list(offer), money)
    if total([int(key) for key in into]) != worth:
        raise ValueError(f"Coins worth {worth} are traded for coins worth as much, not {offer!r}.")
    x = sum(lying["x"] for lying in away) // len(away)
    y = sum(lying["y"] for lying in away) // len(away)
    after = [lying for place, lying in enumerate(tray) if place not in chosen]
    for key in into:
        lying = place_near(key, x, y, after, units, clear=True) or next_place(key, after, units)
        if lying is None:
            return None
        after.append(lying)
    return after
