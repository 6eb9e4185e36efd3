"""Coins as they are: worth, name, size, outline, metal and edge, in six currencies and your own.

Sizes are millimetres, as published: US Mint, *Coin specifications*; Council Regulation (EC) 975/98
and its summary (diameters of the euro coins); Reserve Bank of New Zealand (10c to 50c). Those of
the United Kingdom, Canada and Australia are what several reference works agree on; the outline of
the Canadian dollar (eleven sides, of constant width), and size and edge of the New Zealand dollars,
are from memory. What a face shows is left out: no portrait, no emblem.

A *currency* is one of the codes of `CURRENCIES`, or a dict that describes a teacher's own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from manipulatives.maths.fields import fields_of, text_in
from manipulatives.maths.money.coin import METALS, Coin, Unit

WORTH_OF_MAJOR = 100
MOST_KINDS = 12


@dataclass(frozen=True)
class Currency:
    """A set of coins and how amounts of them are written.

    Attributes:
        name: what it is called.
        minor: the unit that worths are counted in: cents, pence.
        major: a hundred of those: dollars, pounds, euros; None when there is no such unit.
        coins: every coin, the largest worth first.
        usual: keys of the coins in a purse when nothing else is said.

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


_CENT = Unit("\N{CENT SIGN}", "cent", "cents")
_PLAIN_CENT = Unit("c", "cent", "cents")
_PENNY = Unit("p", "penny", "pence")
_DOLLAR = Unit("$", "dollar", "dollars")
_POUND = Unit("\N{POUND SIGN}", "pound", "pounds")
_EURO = Unit("\N{EURO SIGN}", "euro", "euros")
_COPPER, _SILVER, _GOLD = METALS

# In US dollars only what the standard for Grade 2 names is usual: quarters, dimes, nickels, pennies
# (Common Core State Standards, 2.MD.C.8).
# fmt: off
CURRENCIES: Mapping[str, Currency] = MappingProxyType({
    "usd": Currency("US dollars", _CENT, _DOLLAR, (
        Coin(100, "dollar", 26.49, _GOLD, edge="lettered", many="dollar coins"),
        Coin(50, "half dollar", 30.61, _SILVER, edge="milled", many="half dollars"),
        Coin(25, "quarter", 24.26, _SILVER, edge="milled", many="quarters"),
        Coin(10, "dime", 17.91, _SILVER, edge="milled", many="dimes"),
        Coin(5, "nickel", 21.21, _SILVER, many="nickels"),
        Coin(1, "penny", 19.05, _COPPER, many="pennies"),
    ), ("25", "10", "5", "1")),
    "gbp": Currency("pounds", _PENNY, _POUND, (
        Coin(200, "two pounds", 28.4, _GOLD, _SILVER, edge="milled", many="two pound coins"),
        Coin(100, "one pound", 23.43, _GOLD, _SILVER, edge="interrupted", sides=12, flats=23.03),
        Coin(50, "fifty pence", 27.3, _SILVER, sides=7),
        Coin(20, "twenty pence", 21.4, _SILVER, sides=7),
        Coin(10, "ten pence", 24.5, _SILVER, edge="milled"),
        Coin(5, "five pence", 18.0, _SILVER, edge="milled"),
        Coin(2, "two pence", 25.9, _COPPER),
        Coin(1, "one penny", 20.3, _COPPER),
    ), ("200", "100", "50", "20", "10", "5", "2", "1")),
    "eur": Currency("euros", _PLAIN_CENT, _EURO, (
        Coin(200, "two euros", 25.75, _SILVER, _GOLD, edge="milled", many="two euro coins"),
        Coin(100, "one euro", 23.25, _GOLD, _SILVER, edge="interrupted"),
        Coin(50, "fifty cents", 24.25, _GOLD, edge="scalloped", many="fifty cent coins"),
        Coin(20, "twenty cents", 22.25, _GOLD, notches=7, many="twenty cent coins"),
        Coin(10, "ten cents", 19.75, _GOLD, edge="scalloped", many="ten cent coins"),
        Coin(5, "five cents", 21.25, _COPPER, many="five cent coins"),
        Coin(2, "two cents", 18.75, _COPPER, edge="grooved", many="two cent coins"),
        Coin(1, "one cent", 16.25, _COPPER),
    ), ("200", "100", "50", "20", "10", "5", "2", "1")),
    "cad": Currency("Canadian dollars", _CENT, _DOLLAR, (
        Coin(200, "toonie", 28.0, _SILVER, _GOLD, edge="interrupted", many="toonies"),
        Coin(100, "loonie", 26.5, _GOLD, sides=11, many="loonies"),
        Coin(25, "quarter", 23.88, _SILVER, edge="milled", many="quarters"),
        Coin(10, "dime", 18.03, _SILVER, edge="milled", many="dimes"),
        Coin(5, "nickel", 21.2, _SILVER, many="nickels"),
    ), ("200", "100", "25", "10", "5")),
    "aud": Currency("Australian dollars", _PLAIN_CENT, _DOLLAR, (
        Coin(200, "two dollars", 20.5, _GOLD, edge="interrupted", many="two dollar coins"),
        Coin(100, "one dollar", 25.0, _GOLD, edge="interrupted"),
        # Published across its flat sides, 31.65; from corner to corner that is 31.65 / cos 15°.
        Coin(50, "fifty cents", 32.77, _SILVER, sides=12, flats=31.65, many="fifty cent coins"),
        Coin(20, "twenty cents", 28.65, _SILVER, edge="milled", many="twenty cent coins"),
        Coin(10, "ten cents", 23.6, _SILVER, edge="milled", many="ten cent coins"),
        Coin(5, "five cents", 19.41, _SILVER, edge="milled", many="five cent coins"),
    ), ("200", "100", "50", "20", "10", "5")),
    "nzd": Currency("New Zealand dollars", _PLAIN_CENT, _DOLLAR, (
        Coin(200, "two dollars", 26.5, _GOLD, edge="grooved", many="two dollar coins"),
        Coin(100, "one dollar", 23.0, _GOLD, edge="interrupted"),
        Coin(50, "fifty cents", 24.75, _SILVER, many="fifty cent coins"),
        Coin(20, "twenty cents", 21.75, _SILVER, notches=7, many="twenty cent coins"),
        Coin(10, "ten cents", 20.5, _COPPER, many="ten cent coins"),
    ), ("200", "100", "50", "20", "10")),
})
# fmt: on
