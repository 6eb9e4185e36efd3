"""Foreseeable errors of paying and giving change, as pure functions, with all rules about money.

They are common practice of arithmetic, from no published table; the rules are our exact statements
of them. Those about coins have a file of their own, `coins`.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.strands.money.mistakes.coins import COUNTING, NAMING
from manipulatives.lessons.tasks.rule import Rule, rule_in, rules_in
from manipulatives.maths.money.amounts import change

TEN = 10


def ten_too_much(price: int, paid: int) -> int | None:
    """Return the change when ones and tens are each counted up to what was paid.

    From 63 up to 100 these are 7 and then 40, though the 7 have already led to 70.

    Example:
        >>> ten_too_much(63, 100), ten_too_much(60, 100), ten_too_much(17, 20)
        (47, None, 13)
    """
    return change(price, paid) + TEN if price % TEN and not paid % TEN else None


def price_and_paid(price: int, paid: int) -> int:
    """Return the change when the price is added to what was paid.

    Example:
        >>> price_and_paid(37, 50)
        87
    """
    return price + paid


def price_again(price: int, paid: int) -> int | None:
    """Return the change when it is thought to be the price.

    Example:
        >>> price_again(37, 50), price_again(25, 50)
        (37, None)
    """
    return None if change(price, paid) == price else price


def counted_price_too(price: int, paid: int) -> int:
    """Return the change when the price itself is counted as the first of the numbers after it.

    Example:
        >>> counted_price_too(37, 50)
        14
    """
    return change(price, paid) + 1


OnChange = Rule[Callable[[int, int], int | None]]
OnTray = Rule[Callable[[int], None]]

# Where several rules lead to one answer, the first of them names it.
CHANGE: tuple[OnChange, ...] = rules_in(
    FOLDER / "money", ten_too_much, price_and_paid, price_again, counted_price_too
)


def on_tray(_: int) -> None:
    """Return nothing: the error shows in the coins that are laid, not in a number.

    Example:
        >>> on_tray(41)
    """


AS_MANY_COINS: OnTray = rule_in(FOLDER / "money", "as_many_coins", on_tray)
SAME_NUMBER: OnTray = rule_in(FOLDER / "money", "same_number_of_coins", on_tray)
MORE_THAN_NEEDED: OnTray = rule_in(FOLDER / "money", "more_coins_than_needed", on_tray)
PAYING = (AS_MANY_COINS, SAME_NUMBER, MORE_THAN_NEEDED)

RULES: tuple[Rule[Any], ...] = (*NAMING, *COUNTING, *CHANGE, *PAYING)
