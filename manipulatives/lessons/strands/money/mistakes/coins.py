"""Foreseeable errors of naming and counting coins, as pure functions.

That size is taken for worth, that coins are counted as ones and that the step is not changed with
the kind of coin is common knowledge of teachers, from no published table; the rules are our exact
statements of it. Sizes are those of `coins`: a dime is smaller than a penny.

What a wrong answer suggests is a possibility, not a diagnosis: one item is weak evidence.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache
from itertools import groupby

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.tasks.rule import Rule, rules_in
from manipulatives.maths.money.amounts import total
from manipulatives.maths.money.coin import Coin
from manipulatives.maths.money.coins import Currency, Money, currency


def like_by_size(key: str, money: Money = "usd") -> str | None:
    """Return the coin that a coin is taken for when larger coins are thought to be worth more.

    The coins of the usual purse are put in order by their size, and worths are given out in that
    order.

    Returns:
        The key of the other coin, or None where size and worth agree, or for a coin that is not in
        the usual purse.

    Raises:
        ValueError: the currency has no such coin, or there is no such currency.

    Example:
        >>> like_by_size("10"), like_by_size("1"), like_by_size("25")
        ('1', '5', None)
    """
    return _by_size(money).get(currency(money).coin(key).key)


@cache
def _by_size(money: Money) -> dict[str, str]:
    coins = _usual(currency(money))
    by_size = sorted(coins, key=lambda coin: coin.diameter)
    by_worth = sorted(coins, key=lambda coin: coin.worth)
    pairs = zip(by_size, by_worth, strict=True)
    return {one.key: other.key for one, other in pairs if one is not other}


def like_by_metal(key: str, money: Money = "usd") -> str | None:
    """Return the coin that a coin is taken for by its metal: the nearest in worth.

    Of two that are equally near it is the one that is worth less.

    Returns:
        The key of the other coin, or None where no coin of the usual purse has that metal.

    Raises:
        ValueError: as for `like_by_size`.

    Example:
        >>> like_by_metal("10"), like_by_metal("5"), like_by_metal("1")
        ('5', '10', None)
    """
    return _by_metal(money).get(currency(money).coin(key).key)


@cache
def _by_metal(money: Money) -> dict[str, str]:
    coins = _usual(currency(money))
    found = {}
    for coin in coins:
        like = [one for one in coins if one is not coin and _metal(one) == _metal(coin)]
        if like:
            found[coin.key] = min((_times(one, coin), one.worth, one.key) for one in like)[-1]
    return found


def _usual(units: Currency) -> list[Coin]:
    return [coin for coin in units.coins if coin.key in units.usual]


def _metal(coin: Coin) -> tuple[str, str]:
    return coin.metal, coin.centre


def _times(one: Coin, other: Coin) -> float:
    """Return how many times as much the one is worth as the other."""
    return max(one.worth, other.worth) / min(one.worth, other.worth)


def coins_as_ones(coins: Sequence[int], _: Money = "usd") -> int | None:
    """Return the total when every coin is counted as one.

    Args:
        coins: their worths, the largest first; so in the rules below.

    Returns:
        The wrong total, or None where the error does not show; so do the rules below.

    Example:
        >>> coins_as_ones([25, 10, 5, 1]), coins_as_ones([1, 1])
        (4, None)
    """
    return _unless(coins, len(coins))


def size_for_worth(coins: Sequence[int], money: Money = "usd") -> int | None:
    """Return the total when larger coins are thought to be worth more.

    Example:
        >>> size_for_worth([25, 10, 5, 1])
        >>> size_for_worth([25, 10, 1])
        31
    """
    return _unless(coins, sum(int(like_by_size(f"{one}", money) or one) for one in coins))


def metals_mixed_up(coins: Sequence[int], money: Money = "usd") -> int | None:
    """Return the total when coins of one kind are taken for others of the same metal.

    Example:
        >>> metals_mixed_up([10, 10, 1]), metals_mixed_up([1, 1])
        (11, None)
    """
    kinds = set(coins)
    if len(kinds - {1}) > 1:
        # Of several kinds it is not foreseen which one is taken for another.
        return None
    return _unless(coins, sum(int(like_by_metal(f"{one}", money) or one) for one in coins))


def kept_first_step(coins: Sequence[int], _: Money = "usd") -> int | None:
    """Return the total when the second kind of coin is still counted in the step of the first.

    Example:
        >>> kept_first_step([25, 10, 10, 1]), kept_first_step([10, 10])
        (76, None)
    """
    kinds = [(worth, len(list(same))) for worth, same in groupby(coins)]
    if len(kinds) == 1:
        return None
    (first, _many), (second, many), *_rest = kinds
    return total(coins) + many * (first - second)


def kept_last_step(coins: Sequence[int], _: Money = "usd") -> int | None:
    """Return the total when the last kind of coin is counted in the step of the kind before it.

    Example:
        >>> kept_last_step([25, 10, 1, 1]), kept_last_step([10, 1])
        (55, None)
    """
    kinds = [(worth, len(list(same))) for worth, same in groupby(coins)]
    if len(kinds) < 3:  # noqa: PLR2004 - of two kinds, the first step is the last before
        return None
    (before, _many), (last, many) = kinds[-2:]
    return total(coins) + many * (before - last)


def left_one_out(coins: Sequence[int], _: Money = "usd") -> int | None:
    """Return the total when the last coin is not counted.

    Example:
        >>> left_one_out([25, 10, 5]), left_one_out([25])
        (35, None)
    """
    return total(coins[:-1]) or None


def counted_one_twice(coins: Sequence[int], _: Money = "usd") -> int:
    """Return the total when the last coin is counted once more.

    Example:
        >>> counted_one_twice([25, 10, 5])
        45
    """
    return total(coins) + coins[-1]


def _unless(coins: Sequence[int], wrong: int) -> int | None:
    return None if wrong == total(coins) else wrong


OnCoin = Rule[Callable[[str, Money], str | None]]
OnCoins = Rule[Callable[[Sequence[int], Money], int | None]]

# In each table: where several rules lead to one answer, the first of them names it.
NAMING: tuple[OnCoin, ...] = rules_in(
    FOLDER / "money", coin_by_size=like_by_size, coin_by_metal=like_by_metal
)
COUNTING: tuple[OnCoins, ...] = rules_in(
    FOLDER / "money",
    coins_as_ones,
    kept_first_step,
    kept_last_step,
    size_for_worth,
    metals_mixed_up,
    left_one_out,
    counted_one_twice,
)
