"""Amounts of money, exactly: what coins are worth, how an amount can be made, what comes back.

An amount is a whole number of the smaller unit: cents, pence. A *purse* says which coins there
are to pay with: a list of worths, as many of each as needed, or a dict with the number of each.
How amounts are written and spoken (`words.money`) and which coins a country has (`coins`) have
files of their own.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from itertools import accumulate

from manipulatives.maths.time.day import is_whole

Purse = Collection[int] | Mapping[int, int]

MOST = 1_000_000
_UNLIMITED = MOST


def check_amount(amount: object) -> int:
    """Check an amount and return it.

    Raises:
        ValueError: it is no whole number from 0 to 999 999.

    Example:
        >>> check_amount(41)
        41
    """
    if is_whole(amount, MOST):
        return amount
    raise ValueError(f"An amount is a whole number from 0 to {MOST - 1}, not {amount!r}.")


def total(coins: Collection[int]) -> int:
    """Return what coins are worth together.

    Raises:
        ValueError: one of them is no whole number from 1 up.

    Example:
        >>> total([25, 10, 5, 1])
        41
    """
    return sum(_worth(coin) for coin in coins)


def count_on(coins: Collection[int]) -> list[int]:
    """Return the running totals that are said when coins are counted on.

    Raises:
        ValueError: one of them is no whole number from 1 up.

    Example:
        >>> count_on([25, 10, 5, 1])
        [25, 35, 40, 41]
    """
    return list(accumulate(_worth(coin) for coin in coins))


def ways(amount: int, purse: Purse) -> int:
    """Return the number of ways to make an amount; the order of coins does not matter.

    Endless purses are counted by the generating function, the product of 1 / (1 - x^c) over all
    worths c: On-Line Encyclopedia of Integer Sequences, A001299 and its neighbours.

    Raises:
        ValueError: no amount, or no purse.

    Example:
        >>> ways(100, [50, 25, 10, 5, 1])
        292
    """
    found = [1] + [0] * check_amount(amount)
    for coin, most in _limits(purse).items():
        for made in range(coin, amount + 1):
            found[made] += found[made - coin]
        # For a limited number of a coin, subtract the ways that begin with one too many.
        for made in range(amount, coin * (most + 1) - 1, -1):
            found[made] -= found[made - coin * (most + 1)]
    return found[amount]


def each_way(amount: int, purse: Purse) -> Iterator[tuple[int, ...]]:
    """Yield the ways to make an amount, each with its largest coins first.

    They are in lexicographic order: the first has most of the largest coin.

    Raises:
        ValueError: no amount, or no purse.

    Example:
        >>> list(each_way(10, [10, 5, 1]))[:2]
        [(10,), (5, 5)]
    """
    return _each_way(check_amount(amount), list(_limits(purse).items()))


def _each_way(amount: int, coins: list[tuple[int, int]]) -> Iterator[tuple[int, ...]]:
    if not coins:
        if amount == 0:
            yield ()
        return
    (coin, most), *smaller = coins
    for many in range(min(most, amount // coin), -1, -1):
        for rest in _each_way(amount - many * coin, smaller):
            yield (coin,) * many + rest


def fewest(amount: int, purse: Purse) -> tuple[int, ...] | None:
    """Return the fewest coins that make an amount, or None when none do.

    The largest coins come first. Of several ways with as few coins, it is the one with larger
    coins.

    Raises:
        ValueError: no amount, or no purse.

    Example:
        >>> fewest(41, [25, 10, 5, 1])
        (25, 10, 5, 1)
        >>> fewest(30, {25: 1, 10: 3})
        (10, 10, 10)
    """
    limits = list(_limits(purse).items())
    # Dynamic programming: the smallest coin alone, then with the next larger one, and so on.
    layers = [[0] + [_UNLIMITED] * check_amount(amount)]
    for coin, most in reversed(limits):
        layers.append(_with_coin(layers[-1], coin, most))
    if layers[-1][amount] >= _UNLIMITED:
        return None
    paid: list[int] = []
    rest = amount
    for (coin, most), best, without in zip(limits, layers[:0:-1], layers[-2::-1], strict=True):
        many = min(most, rest // coin)
        while many + without[rest - many * coin] > best[rest]:
            many -= 1
        paid += [coin] * many
        rest -= many * coin
    return tuple(paid)


def _with_coin(best: list[int], coin: int, most: int) -> list[int]:
    """Return the fewest coins for each amount with up to `most` of one more coin."""
    best = best.copy()
    amount = len(best) - 1
    most = min(most, amount // coin)
    # Bundles of 1, 2, 4, … of them, and what is left: together they make every number up to most.
    bundle = 1
    while most:
        bundle = min(bundle, most)
        most -= bundle
        size = bundle * coin
        for made in range(amount, size - 1, -1):
            best[made] = min(best[made], best[made - size] + bundle)
        bundle *= 2
    return best


def greedy(amount: int, purse: Purse) -> tuple[int, ...] | None:
    """Return the coins when the largest that fits is taken each time, or None if that falls short.

    Raises:
        ValueError: no amount, or no purse.

    Example:
        >>> greedy(30, [25, 10, 1])
        (25, 1, 1, 1, 1, 1)
    """
    paid: list[int] = []
    rest = check_amount(amount)
    for coin, most in _limits(purse).items():
        many = min(most, rest // coin)
        paid += [coin] * many
        rest -= many * coin
    return None if rest else tuple(paid)


def greedy_fails_at(coins: Collection[int]) -> int | None:
    """Return the least amount for which taking the largest coin each time is not best.

    Either that needs more coins than necessary, or it falls short of an amount that can be made.
    None if there is no such amount, with as many of each coin as needed.

    If every worth is a multiple of the smallest, a least such amount is below the sum of the two
    largest worths (Kozen and Zaks 1994, *Optimal bounds for the change-making problem*, Theoretical
    Computer Science 123:377-388). If one is not, there is such an amount between the largest worth
    and that worth plus the smallest: a sum of that coin and smallest ones, or of smallest ones
    alone, lies there, and what is left of it after the largest coin is less than any coin.

    Raises:
        ValueError: no worths.

    Example:
        >>> greedy_fails_at([25, 10, 1]), greedy_fails_at([25, 10, 5, 1])
        (30, None)
    """
    worths = list(_limits(list(coins)))
    bound = sum(worths[:2]) if all(worth % worths[-1] == 0 for worth in worths) else 2 * worths[0]
    best = [0] + [_UNLIMITED] * bound
    for coin in worths:
        best = _with_coin(best, coin, _UNLIMITED)
    for amount in range(1, bound + 1):
        paid = greedy(amount, worths)
        if best[amount] < _UNLIMITED and (paid is None or len(paid) > best[amount]):
            return amount
    return None


def greedy_is_right(coins: Collection[int]) -> bool:
    """Return whether the largest coin that fits, each time, always makes the fewest coins.

    Raises:
        ValueError: no worths.

    Example:
        >>> greedy_is_right([200, 100, 50, 20, 10, 5, 2, 1]), greedy_is_right([60, 48, 24, 12, 1])
        (True, False)
    """
    return greedy_fails_at(coins) is None


def change(price: int, paid: int) -> int:
    """Return the change for a price.

    Raises:
        ValueError: no amount, or less was paid than the price.

    Example:
        >>> change(63, 100)
        37
    """
    if check_amount(paid) < check_amount(price):
        raise ValueError(f"{paid} does not pay for {price}; pay at least the price.")
    return paid - price


def count_up(price: int, paid: int, purse: Purse) -> tuple[int, ...] | None:
    """Return the coins that lead from a price up to what was paid, as a seller counts them out.

    They are the fewest that make the change, the smallest first; None when no coins do. The
    class says `count_on` with them, starting at the price.

    Raises:
        ValueError: no amount, no purse, or less was paid than the price.

    Example:
        >>> count_up(63, 100, [25, 10, 5, 1])
        (1, 1, 10, 25)
    """
    coins = fewest(change(price, paid), purse)
    return None if coins is None else coins[::-1]


def _limits(purse: Purse) -> dict[int, int]:
    """Return how many of each coin there are at most, the largest first."""
    if isinstance(purse, Mapping):
        for many in purse.values():
            if not is_whole(many, MOST):
                raise ValueError(f"A purse holds a whole number of each coin, not {many!r}.")
        limits = {_worth(coin): many for coin, many in purse.items()}
    else:
        limits = {_worth(coin): _UNLIMITED for coin in purse}
        if not limits:
            raise ValueError("A purse holds at least one kind of coin.")
    return dict(sorted(limits.items(), reverse=True))


def _worth(coin: object) -> int:
    if is_whole(coin, MOST) and coin > 0:
        return coin
    raise ValueError(f"A coin is worth a whole number from 1 up, not {coin!r}.")
