"""Penny Cross, the small market town where the tasks take place."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Event:
    """Something that happens in town, in two words for who and one for what.

    So short, every prompt about it keeps to ten words.

    Attributes:
        who: such as "The ferry".
        does: such as "leaves".
        did: such as "left".

    Example:
        >>> Event("The ferry", "leaves", "left").in_minutes(20)
        'The ferry leaves in 20 minutes.'
    """

    who: str
    does: str
    did: str

    def at(self, time: str) -> str:
        """Say when it happens.

        Example:
            >>> EVENTS[0].at("4:35")
            'The ferry leaves at 4:35.'
        """
        return f"{self.who} {self.does} at {time}."

    def in_minutes(self, by: int) -> str:
        """Say that it will happen.

        Example:
            >>> EVENTS[0].in_minutes(5)
            'The ferry leaves in 5 minutes.'
        """
        return f"{self.who} {self.does} in {by} minutes."

    def minutes_ago(self, by: int) -> str:
        """Say that it has happened.

        Example:
            >>> EVENTS[0].minutes_ago(5)
            'The ferry left 5 minutes ago.'
        """
        return f"{self.who} {self.did} {by} minutes ago."


EVENTS = (
    Event("The ferry", "leaves", "left"),
    Event("The baker", "opens", "opened"),
    Event("The bell", "rings", "rang"),
    Event("The cheese", "arrives", "arrived"),
    Event("The market", "starts", "started"),
    Event("The band", "plays", "played"),
)

CLOCKS = (
    "What time does the bell tower show?",
    "The ferry leaves. What time is it?",
    "What time does the baker's clock show?",
    "The market starts. What time is it?",
    "What time does the ferry clock show?",
    "The baker opens. What time is it?",
    "What time does the market clock show?",
    "The cheese arrives. What time is it?",
)


@dataclass(frozen=True)
class Goods:
    """Something that is made, sold or found in town, and what happens to it.

    Each word is one word or two, so that every sentence about it keeps to ten words.

    Attributes:
        one: such as "bun".
        many: such as "buns".
        gets: how somebody comes to have more, and the same after "did": ("bakes", "bake").
        loses: how somebody comes to have fewer, and the same after "did".
        kinds: two kinds of it.
        places: two places where it is put, each with the word in front of it.

    Example:
        >>> GOODS[0].some(1), GOODS[0].some(8)
        ('1 bun', '8 buns')
    """

    one: str
    many: str
    gets: tuple[str, str]
    loses: tuple[str, str]
    kinds: tuple[str, str]
    places: tuple[str, str]

    def some(self, count: int) -> str:
        """Say how many there are.

        Example:
            >>> GOODS[1].some(13)
            '13 apples'
        """
        return f"{count} {self.one if count == 1 else self.many}"


TRAYS = ("on one tray", "on the other")
BASKETS = ("in one basket", "in the other")
SHELVES = ("on one shelf", "on the other")

GOODS = (
    Goods("bun", "buns", ("bakes", "bake"), ("sells", "sell"), ("plain", "sticky"), TRAYS),
    Goods("apple", "apples", ("picks", "pick"), ("eats", "eat"), ("red", "green"), BASKETS),
    Goods("cheese", "cheeses", ("makes", "make"), ("sells", "sell"), ("soft", "hard"), SHELVES),
    Goods("shell", "shells", ("finds", "find"), ("loses", "lose"), ("small", "large"), BASKETS),
    Goods("candle", "candles", ("makes", "make"), ("sells", "sell"), ("white", "blue"), SHELVES),
    Goods("egg", "eggs", ("finds", "find"), ("cooks", "cook"), ("brown", "white"), BASKETS),
    Goods("ribbon", "ribbons", ("buys", "buy"), ("uses", "use"), ("long", "short"), TRAYS),
    Goods("loaf", "loaves", ("bakes", "bake"), ("sells", "sell"), ("round", "square"), SHELVES),
    Goods("ticket", "tickets", ("prints", "print"), ("sells", "sell"), ("blue", "yellow"), TRAYS),
    Goods("flag", "flags", ("sews", "sew"), ("hangs up", "hang up"), ("red", "white"), BASKETS),
    Goods("plum", "plums", ("picks", "pick"), ("eats", "eat"), ("ripe", "green"), TRAYS),
)
# More people than goods and no common factor, so that pairs of both take long to come back.
PEOPLE = (
    "Nell",
    "Kofi",
    "Mab",
    "Ravi",
    "Tansy",
    "Bram",
    "Amina",
    "Ivo",
    "Hettie",
    "Sami",
    "Dot",
    "Juno",
    "Odo",
)
