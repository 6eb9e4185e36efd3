# ruff: noqa: D102 - each method is named after the sentence that it understands
"""Reads the worked steps of coin tasks as a pupil would who counts every coin on the tray.

An opinion apart from the kit's: it knows coins by a table of its own, adds up what lies there, and
uses nothing of the kit. Where a step says what is not so, it raises AssertionError.
"""

from __future__ import annotations

import re
from functools import cache

from num2words import num2words

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
NUMBERS = {num2words(number): number for number in range(1, 100)}
SINGULAR = {"quarters": "quarter", "dimes": "dime", "nickels": "nickel", "pennies": "penny"}


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


def coins(words, money):
    """Coins in words: one quarter, two dimes, three 20p coins."""
    found = []
    for part in re.split(r", | and ", words):
        many, _, kind = part.partition(" ")
        number = NUMBERS[many.lower()]
        one = re.fullmatch(r"(\S+) coins?", kind)
        if one:
            worth = amount(one[1], money)
            assert kind.endswith("coin") == (number == 1), part
        else:
            assert (kind in SINGULAR) == (number > 1), part
            worth = next(w for name, w, *_ in TABLES[money] if name == SINGULAR.get(kind, kind))
        assert worth in by_worth(money)
        found += [worth] * number
    return found


def figures(text):
    return [int(figure) for figure in text.split(", ")]


class CoinReader:
    """Follows the steps of one task about coins."""

    def __init__(self, start, *, begins_at=0):
        self.money, self.ring = start["currency"], start.get("ring")
        self.tray = self.worths_on(start)
        self.start = list(self.tray)
        self.reached, self.said_coins, self.begins_at = 0, [], begins_at

    @staticmethod
    def worths_on(traits):
        return sorted((int(lying["coin"]) for lying in traits["tray"]), reverse=True)

    def follow(self, say, chant, show):
        self.before = self.tray
        if "tray" in show:
            self.tray = self.worths_on(show)
        self.chant = chant
        for pattern, handler in FORMS:
            match = re.fullmatch(pattern, say)
            if match:
                handler(self, *match.groups())
                return
        raise AssertionError(f"What does {say!r} mean?")

    # One coin among others

    @property
    def asked(self):
        return by_worth(self.money)[int(self.ring)]

    def colour(self, said):
        assert self.asked[1] == said

    def size(self, larger, smaller, sides):
        others = [by_worth(self.money)[worth][0] for worth in self.tray if worth != int(self.ring)]
        assert int(larger) == sum(other > self.asked[0] for other in others)
        assert int(smaller) == sum(other < self.asked[0] for other in others)
        assert int(sides or 0) == self.asked[2]

    def called(self, name):
        assert name == name_of(int(self.ring), self.money) == self.chant

    def worth(self, written):
        assert amount(written, self.money) == int(self.ring)

    # Coins on the tray

    def each(self, written):
        assert set(self.tray) == {amount(written, self.money)}

    def in_steps(self, many, step):
        assert int(many) == len(self.tray)
        scale = 100 if self.tray[0] >= 100 else 1
        assert int(step) * scale == self.tray[0]
        assert figures(self.chant) == [int(step) * one for one in range(1, int(many) + 1)]

    def sum_of_all(self, said, written):
        total = sum(self.tray)
        assert amount(written, self.money) == total
        if said is not None:
            scale = 100 if self.tray[-1] >= 100 else 1
            reached, expected = 0, []
            for worth in self.tray:
                reached += worth // scale
                expected.append(reached)
            assert figures(said) == expected

    def still(self, said, written):
        self.sum_of_all(said, written)
        assert sum(self.tray) == sum(self.start)
        assert self.tray != self.start

    def counted(self, words, reached):
        group = coins(words, self.money)
        self.said_coins += group
        self.count_on(group, reached)
        assert self.said_coins == self.tray[: len(self.said_coins)]

    def count_on(self, group, reached):
        expected = []
        for worth in group:
            self.reached += worth
            expected.append(self.begins_at + self.reached)
        assert figures(self.chant) == expected
        assert expected[-1] == int(reached)

    def laid(self, words, reached):
        group = coins(words, self.money)
        assert sorted([*self.before, *group], reverse=True) == self.tray
        self.count_on(group, reached)

    def make(self, written):
        assert amount(written, self.money) == sum(self.tray)

    def trade(self, given, taken):
        away, into = coins(given, self.money), coins(taken, self.money)
        assert sum(away) == sum(into)
        left = list(self.before)
        for worth in away:
            left.remove(worth)
        assert sorted([*left, *into], reverse=True) == self.tray

    def starts(self, price):
        self.begins_at = int(price)

    def change(self, parts, total, written):
        if parts is not None:
            # One number for each kind of coin, the smallest first.
            kinds = sorted(set(self.tray))
            assert [int(part) for part in parts.split(" + ")] == [
                kind * self.tray.count(kind) for kind in kinds
            ]
            assert int(total) == sum(self.tray)
        assert amount(written, self.money) == sum(self.tray)

    def none_fewer(self, many):
        worths = tuple(small_coins(self.money))
        assert int(many) == len(self.tray) == fewest(sum(self.tray), worths)


CHAIN = r"\d+(?:, \d+)*"
FORMS = [
    (r"Look at its colou?r: (.+)\.", CoinReader.colour),
    (
        r"Larger coins here: (\d+)\. Smaller coins here: (\d+)\.(?: Its sides: (\d+)\.)?",
        CoinReader.size,
    ),
    (r"It is called (?:a )?(.+)\.", CoinReader.called),
    (r"It is worth (.+)\.", CoinReader.worth),
    (r"Each coin is worth (.+)\.", CoinReader.each),
    (r"Count (\d+) coins in steps of (\d+)\.", CoinReader.in_steps),
    (rf"({CHAIN})\. That is still (.+)\.", CoinReader.still),
    (rf"(?:({CHAIN})\. )?That is (.+)\.", CoinReader.sum_of_all),
    (r"Begin with (.+): (\d+)\.", CoinReader.counted),
    (r"(.+): count on to (\d+)\.", CoinReader.counted),
    (r"Lay (.+): (\d+)\.", CoinReader.laid),
    (r"The coins make (.+)\.", CoinReader.make),
    (r"Trade (.+) for (.+)\.", CoinReader.trade),
    (r"Start at (\d+)\.", CoinReader.starts),
    (r"(?:(\d+(?: \+ \d+)+) = (\d+)\. )?The change is (.+)\.", CoinReader.change),
    (r"No way needs fewer than (\d+) coins\.", CoinReader.none_fewer),
]
