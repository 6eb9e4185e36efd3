"""Coins as they are: worth, name, size, outline, metal and edge, in six currencies and your own.

Sizes are millimetres, as published: US Mint, *Coin specifications*; Council Regulation (EC) 975/98
and its summary (diameters of the euro coins); Reserve Bank of New Zealand (10c to 50c). Those of
the United Kingdom, Canada and Australia are what several reference works agree on; the outline of
the Canadian dollar (eleven sides, of constant width), and size and edge of the New Zealand dollars,
are from memory. The Australian 50 cents are published across their flat sides, 31.65; from corner
to corner that is 31.65 / cos 15°. What a face shows is left out: no portrait, no emblem.

A *currency* is one of the codes of `CURRENCIES`, or a dict that describes a teacher's own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from manipulatives.data import table
from manipulatives.maths.fields import fields_of, text_in
from manipulatives.maths.money.coin import Coin, Unit

WORTH_OF_MAJOR = 100
MOST_KINDS = 12


@dataclass(frozen=True)
class Currency:
    """A set of coins and how amounts of them are written.

    Attributes:
        name: of the currency.
        minor: the unit that worths are counted in: cents, pence.
        major: a hundred of those: dollars, pounds, euros; None when there is no such unit.
        coins: every coin, the largest worth first.
        usual: keys of the coins in the default purse.

    Example:
        >>> [coin.name for coin in CURRENCIES["usd"].coins]
        ['dollar', 'half dollar', 'quarter', 'dime', 'nickel', 'penny']
    """

    name: str
    minor: Unit
    major: Unit | None
    coins: tuple[Coin, ...]
    usual: tuple[str, ...]

    def coin(self, key: object) -> Coin:
        """Return the coin of that key, which is its worth in digits.

        Raises:
            ValueError: there is no such coin.

        Example:
            >>> CURRENCIES["usd"].coin("10").name
            'dime'
        """
        for coin in self.coins:
            if key == coin.key:
                return coin
        keys = ", ".join(f'"{coin.key}"' for coin in self.coins)
        raise ValueError(f"{self.name} have no coin {key!r}. The coins are {keys}.")

    def to_data(self) -> dict[str, Any]:
        """Return the currency as JSON-able data, from which `currency` makes it again.

        Example:
            >>> currency(CURRENCIES["nzd"].to_data()) == CURRENCIES["nzd"]
            True
        """
        return {
            "name": self.name,
            "minor": self.minor.to_data(),
            "major": None if self.major is None else self.major.to_data(),
            "coins": [coin.to_data() for coin in self.coins],
            "usual": list(self.usual),
        }


Money = str | Currency
"""A currency by its code, or as `currency` makes it of a description."""


def currency(given: object) -> Currency:
    """Return the currency of a code, or the one that a dict describes.

    Args:
        given: such as "usd", or {"name": …, "minor": {"sign": …, "one": …, "many": …}, "coins":
            [{"worth": …, "diameter": …, "metal": …}, …]}; `Coin` and `Unit` say what each may
            hold. "major" may be left out, and so may "usual": then every coin is usual. A
            `Currency` is returned as it is.

    Raises:
        ValueError: no such code, or a description with something wrong or missing.

    Example:
        >>> currency("gbp").coin("20").sides
        7
        >>> tokens = {
        ...     "name": "market tokens",
        ...     "minor": {"sign": "t", "one": "token", "many": "tokens"},
        ...     "coins": [{"worth": 1, "diameter": 20, "metal": "copper"}],
        ... }
        >>> currency(tokens).coins[0].name
        'one token'
    """
    if isinstance(given, Currency):
        return given
    if isinstance(given, Mapping):
        return _described(given)
    if isinstance(given, str) and given in CURRENCIES:
        return CURRENCIES[given]
    codes = ", ".join(f'"{code}"' for code in CURRENCIES)
    raise ValueError(f"The currency is {codes} or a dict with coins of your own, not {given!r}.")


def _described(given: Mapping[str, Any]) -> Currency:
    found = fields_of(given, "A currency", ("name", "minor", "coins"), ("major", "usual"))
    name = text_in(found["name"], "The name of a currency")
    minor = Unit.from_data(found["minor"])
    major = None if found.get("major") is None else Unit.from_data(found["major"])
    described = found["coins"]
    if not isinstance(described, (list, tuple)) or not 1 <= len(described) <= MOST_KINDS:
        raise ValueError(f'A currency has "coins": a list of 1 to {MOST_KINDS}, not {described!r}.')
    coins = sorted(
        (Coin.from_data(data, minor) for data in described),
        key=lambda coin: coin.worth,
        reverse=True,
    )
    keys = [coin.key for coin in coins]
    for key in keys:
        if keys.count(key) > 1:
            raise ValueError(f"Each coin has a worth of its own, but two are worth {key}.")
    usual = found.get("usual", keys)
    if not (isinstance(usual, (list, tuple)) and usual and all(key in keys for key in usual)):
        raise ValueError(f'"usual" is a list of the coins {", ".join(keys)}, not {usual!r}.')
    return Currency(name, minor, major, tuple(coins), tuple(key for key in keys if key in usual))


CURRENCIES: Mapping[str, Currency] = MappingProxyType(
    {code: _described(data) for code, data in table("coins").items()}
)
"""The currencies of the kit by their codes. In US dollars only what the standard for Grade 2 names
is usual: quarters, dimes, nickels, pennies (Common Core State Standards, 2.MD.C.8)."""
