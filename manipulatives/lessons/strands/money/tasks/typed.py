"""Coins, amounts and prices that somebody typed, as what a task is about."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any, TypeVar

from manipulatives.lessons.problem import LessonProblem, quoted
from manipulatives.lessons.strands.money import pools
from manipulatives.maths.money.tray import check_coins

T = TypeVar("T")
Options = Mapping[str, Any]

# A typed task may have all that the skill allows.
WIDEST = {"kinds": "any", "most": 8}
_SALE = re.compile(r"\s*([0-9]{1,3})\s+from\s+([0-9]{1,3})\s*")
_AMOUNT = re.compile(r"\s*([0-9]{1,2})\s*")


def read_mixed(text: str, options: Options) -> pools.Group:
    """Return the coins that were typed by their worths, for counting.

    Raises:
        LessonProblem: these are no coins of the currency, or none that the skill asks about.

    Example:
        >>> read_mixed("10 25 1", {"currency": "usd"})
        (25, 10, 1)
    """
    return _one_of(pools.mixed({**options, **WIDEST}), _group(text, options), text)


def read_to_make_again(text: str, options: Options) -> pools.Group:
    """Return the coins that were typed by their worths, for making their amount another way.

    Raises:
        LessonProblem: these are no coins of the currency, or they cannot be traded.

    Example:
        >>> read_to_make_again("25 10", {"currency": "usd"})
        (25, 10)
    """
    return _one_of(pools.to_make_again(options), _group(text, options), text)


def _group(text: str, options: Options) -> pools.Group:
    try:
        return tuple(map(int, check_coins(text, options["currency"])))
    except ValueError as problem:
        raise LessonProblem(
            f"{quoted(text)} are no coins of this currency", remedy='type their worths: "25 10 1"'
        ) from problem


def reads_amounts(amounts: Callable[[Options], Sequence[int]]) -> Callable[[str, Options], int]:
    """Return what reads an amount in the smaller unit.

    Example:
        >>> reads_amounts(pools.amounts)("41", {"currency": "usd", "most": 20})
        41
    """

    def read(text: str, options: Options) -> int:
        match = _AMOUNT.fullmatch(text)
        if match is None:
            raise LessonProblem(
                f"{quoted(text)} is no amount", remedy='type the smaller unit alone: "41"'
            )
        every = amounts({**options, "most": pools.LARGEST})
        return _one_of(every, int(match[1]), text)

    return read


def read_sale(text: str, options: Options) -> pools.Sale:
    """Return the price and the payment that were typed.

    Raises:
        LessonProblem: it is no price and payment, or none that the skill asks about.

    Example:
        >>> read_sale("37 from 50", {"currency": "usd"})
        (37, 50)
    """
    match = _SALE.fullmatch(text)
    if match is None:
        raise LessonProblem(
            f"{quoted(text)} is no price and payment", remedy='type them like "37 from 50"'
        )
    sale = int(match[1]), int(match[2])
    every = pools.sales({**options, "paid": "any"})
    return _one_of(every, sale, text, joint=" from ")


def _one_of(every: Sequence[T], item: T, text: str, *, joint: str = " ") -> T:
    if item in every:
        return item
    other = every[len(every) // 2]
    such = joint.join(map(str, other)) if isinstance(other, tuple) else str(other)
    raise LessonProblem(
        f"{quoted(text)} cannot be asked here", remedy=f"type another, such as {quoted(such)}"
    )
