"""Works out the steps and mistakes of coin tasks again, by counting every coin on the tray.

An opinion apart from the kit's: it knows coins by a table of its own, adds up what lies there, and
uses nothing of the kit. Where a number is not so, it raises AssertionError.
"""

from __future__ import annotations

import re
from collections import Counter
from functools import cache
from itertools import accumulate

from support.sentences import numbers_said

# Name, worth, diameter in millimetres, colour, sides. US Mint, Coin specifications; Council
# Regulation (EC) 975/98; Reserve Bank of New Zealand; the others as reference works agree.
TABLES = {
    "usd": [
        ("quarter", 25, 24.26, "silver", 0), ("dime", 10, 17.91, "silver", 0),
        ("nickel", 5, 21.21, "silver", 0), ("penny", 1, 19.05, "copper", 0),
    ],
    "gbp": [
        ("two pounds", 200, 28.4, "gold around silver", 0),
        ("one pound", 100, 23.43, "gold around silver", 12),
        ("fifty pence", 50, 27.3, "silver", 7), ("twenty pence", 20, 21.4, "silver", 7),
        ("ten pence", 10, 24.5, "silver", 0), ("five pence", 5, 18.0, "silver", 0),
        ("two pence", 2, 25.9, "copper", 0), ("one penny", 1, 20.3, "copper", 0),
    ],
    "eur": [
        ("two euros", 200, 25.75, "silver around gold", 0),
        ("one euro", 100, 23.25, "gold around silver", 0), ("fifty cents", 50, 24.25, "gold", 0),
        ("twenty cents", 20, 22.25, "gold", 0), ("ten cents", 10, 19.75, "gold", 0),
        ("five cents", 5, 21.25, "copper", 0), ("two cents", 2, 18.75, "copper", 0),
        ("one cent", 1, 16.25, "copper", 0),
    ],
    "cad": [
        ("toonie", 200, 28.0, "silver around gold", 0), ("loonie", 100, 26.5, "gold", 11),
        ("quarter", 25, 23.88, "silver", 0), ("dime", 10, 18.03, "silver", 0),
        ("nickel", 5, 21.2, "silver", 0),
    ],
    "aud": [
        ("two dollars", 200, 20.5, "gold", 0), ("one dollar", 100, 25.0, "gold", 0),
        ("fifty cents", 50, 32.77, "silver", 12), ("twenty cents", 20, 28.65, "silver", 0),
        ("ten cents", 10, 23.6, "silver", 0), ("five cents", 5, 19.41, "silver", 0),
    ],
    "nzd": [
        ("two dollars", 200, 26.5, "gold", 0), ("one dollar", 100, 23.0, "gold", 0),
        ("fifty cents", 50, 24.75, "silver", 0), ("twenty cents", 20, 21.75, "silver", 0),
        ("ten cents", 10, 20.5, "copper", 0),
    ],
}  # fmt: skip
SIGNS = {"usd": "$¢", "gbp": "£p", "eur": "€c", "cad": "$¢", "aud": "$c", "nzd": "$c"}


def by_worth(money):
    return {worth: rest for _, worth, *rest in TABLES[money]}


def name_of(worth, money):
    return next(name for name, one, *_ in TABLES[money] if one == worth)


def small_coins(money):
    return [worth for _, worth, *_ in TABLES[money] if worth < 100]


@cache
def fewest(amount, worths):
    """How many coins an amount needs at least, by trying every last coin; None for no way."""
    if amount == 0:
        return 0
    tries = [fewest(amount - worth, worths) for worth in worths if worth <= amount]
    found = [many for many in tries if many is not None]
    return min(found) + 1 if found else None


def amount(text, money):
    """An amount as it is written: 41¢, $1, or $1 and 41¢."""
    large, small = SIGNS[money]
    match = re.fullmatch(rf"(?:{re.escape(large)}(\d+))?(?: and )?(?:(\d+){small})?", text)
    assert match, text
    assert match[1] or match[2], text
    return 100 * int(match[1] or 0) + int(match[2] or 0)


def written(amount):
    """The numbers that are said of an amount in both units: of 141 cents they are 1 and 41."""
    return {part for part in divmod(amount, 100) if part} or {0}


def figures(text):
    return [int(figure) for figure in text.split(", ")]


class CoinOracle:
    """Follows the steps of one task about coins."""

    def __init__(self, start):
        self.money, self.ring = start["currency"], start.get("ring")
        self.tray = self.worths_on(start)
        self.start = list(self.tray)
        self.reached, self.counted_coins = 0, []

    @staticmethod
    def worths_on(traits):
        """The worths of the coins that lie there, the largest first."""
        return sorted((int(lying["coin"]) for lying in traits["tray"]), reverse=True)

    def follow(self, step):
        """Check one step."""
        self.before = self.tray
        if "tray" in step.show:
            self.tray = self.worths_on(step.show)
        self.step, self.said = step, numbers_said(step.say)
        numbers = dict(step.numbers)
        act, begin = numbers.pop("act"), numbers.pop("from", None)
        if begin is not None:
            numbers["begin"] = begin
        getattr(self, f"_{act}")(**numbers)

    # One coin among others

    @property
    def asked(self):
        """Diameter, colour and sides of the coin that is asked about."""
        return by_worth(self.money)[int(self.ring)]

    def _colour(self, coin):
        assert coin == int(self.ring)
        assert self.step.say.endswith(f": {self.asked[1]}.")
        assert self.step.chant == self.asked[1]

    def _compare(self, coin, larger, smaller, sides):
        assert coin == int(self.ring)
        others = [by_worth(self.money)[worth][0] for worth in self.tray if worth != coin]
        assert larger == sum(other > self.asked[0] for other in others)
        assert smaller == sum(other < self.asked[0] for other in others)
        assert sides == self.asked[2]
        one, other = self.step.say.split(". ")[:2]
        assert "Larger" in one
        assert numbers_said(one) == {larger}
        assert "Smaller" in other
        assert numbers_said(other) == {smaller}
        assert ("sides" in self.step.say) == (sides > 0)
        assert self.said == {larger, smaller} | ({sides} if sides else set())

    def _name(self, coin):
        assert coin == int(self.ring)
        name = name_of(coin, self.money)
        assert self.step.chant == name
        assert self.step.say.endswith(f" {name}.")

    def _worth(self, coin):
        assert coin in ({int(self.ring)} if self.ring else set(self.tray))
        assert self.ring or set(self.tray) == {coin}
        assert self.said == written(coin)

    # Coins on the tray

    def _count(self, counted, begin, by=None, coins=None):
        assert begin == self.reached
        if by is not None:
            scale = 100 if self.tray[0] >= 100 else 1
            assert [by * scale] * len(counted) == self.tray
            assert counted == [by * one for one in range(1, len(counted) + 1)]
            assert self.said == {len(counted), by}
        else:
            self._on(coins, counted, begin)
            self.counted_coins += coins
            assert self.counted_coins == self.tray[: len(self.counted_coins)]
        assert figures(self.step.chant) == counted

    def _on(self, coins, counted, begin):
        assert len(set(coins)) == 1
        assert counted == list(accumulate(coins, initial=begin))[1:]
        self.reached = counted[-1]
        # How many coins, where the count has come to, and for some coins what each is worth.
        assert {len(coins), counted[-1]} <= self.said
        assert self.said <= {len(coins), counted[-1], coins[0], *written(coins[0])}
        assert figures(self.step.chant) == counted

    def _lay(self, coins, counted, begin):
        assert begin == self.reached
        assert sorted([*self.before, *coins], reverse=True) == self.tray
        self._on(coins, counted, begin)

    def _total(self, total, counted):
        assert total == sum(self.tray)
        scale = 100 if self.tray[-1] >= 100 else 1
        if counted:
            assert counted == [reached // scale for reached in accumulate(self.tray)]
            assert self.step.say.startswith(", ".join(map(str, counted)) + ". ")
        assert self.said == {*counted, *written(total)}

    def _still(self, total, counted):
        self._total(total, counted)
        assert total == sum(self.start)
        assert self.tray != self.start

    def _make(self, total, counted):
        assert counted == []
        self._total(total, counted)

    def _trade(self, give, take):
        assert sum(give) == sum(take)
        left = Counter(self.before)
        left.subtract(give)
        assert min(left.values()) >= 0
        assert sorted([*left.elements(), *take], reverse=True) == self.tray
        for side, words in zip((give, take), self.step.say.split(" for "), strict=True):
            many = Counter(side)
            worths = {number for worth in many for number in (worth, *written(worth))}
            assert {*many.values()} <= numbers_said(words) <= {*many.values()} | worths

    def _start(self, at):
        self.reached = at
        assert self.said == {at}
        assert self.step.chant == f"{at}"

    def _change(self, parts, total):
        # One number for each kind of coin, the smallest first.
        kinds = sorted(set(self.tray))
        assert parts == [kind * self.tray.count(kind) for kind in kinds]
        assert total == sum(parts) == sum(self.tray)
        shown = {*parts, total} if len(parts) > 1 else set()
        assert self.said == shown | written(total)

    def _fewest(self, coins):
        worths = tuple(small_coins(self.money))
        assert coins == len(self.tray) == fewest(sum(self.tray), worths)
        assert self.said == {coins}


USUAL = {"usd": (25, 10, 5, 1)}


def taken_for(worth, like, money):
    """What a coin is taken for: by size when larger is thought to be worth more, or by metal."""
    usual = USUAL.get(money, tuple(by_worth(money)))
    coins = {one: rest for one, rest in by_worth(money).items() if one in usual}
    if like == "size":
        by_size = sorted(coins, key=lambda one: coins[one][0])
        return sorted(coins)[by_size.index(worth)]
    same = [one for one in coins if one != worth and coins[one][1] == coins[worth][1]]
    near = sorted(same, key=lambda one: (max(one, worth) / min(one, worth), one))
    return near[0] if near else worth


def wrong_of(numbers, money):
    """Run the procedure of a mistake and return what comes out."""
    does = {key: value for key, value in numbers.items() if key not in {"act", "wrong", "unit"}}
    act = numbers["act"]
    if act == "name":
        return f"{taken_for(int(does['coin']), does['like'], money)}"
    if act == "change":
        return _wrong_change(**does)
    coins = does.pop("coins")
    if act == "lay":
        return sorted((_laid_for(one, does["like"], money) for one in coins), reverse=True)
    total = _wrong_total(coins, money, **does)
    return total if does == {"each": 1} else total // numbers.get("unit", 1)


def _laid_for(worth, like, money):
    """The coin of the purse that is laid for a worth, since it is taken for that."""
    usual = [one for one in USUAL.get(money, tuple(by_worth(money))) if one < 100]
    others = [one for one in usual if one != worth and taken_for(one, like, money) == worth]
    return min(others, default=worth)


def _wrong_total(coins, money, *, each=None, like=None, kept_step=None, times=1):
    kinds = sorted(set(coins), reverse=True)
    worths = [each or worth for worth in coins]
    if like:
        worths = [taken_for(worth, like, money) for worth in coins]
    if kept_step:
        old, new = (kinds[0], kinds[1]) if kept_step == "first" else (kinds[-2], kinds[-1])
        worths = [old if worth == new else worth for worth in coins]
    return sum(worths) + (times - 1) * worths[-1]


def _wrong_change(price, paid, *, tens=0, sign="-", gives=None, start_counted=False):
    if gives == "price":
        return price
    if sign == "+":
        return paid + price
    return sum(1 for _ in range(price, paid)) + 10 * tens + start_counted
