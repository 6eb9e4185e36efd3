"""How coins lie on the tray when a task begins."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Any

from manipulatives.lessons.strands.money.pools import purse_of
from manipulatives.lessons.tasks.chance import Chance
from manipulatives.maths.money.coins import Money
from manipulatives.maths.money.places import MAT
from manipulatives.maths.money.tray import tray_of

# Four rows of four places, in each of which every coin has room.
ROWS = 4
CELL = MAT // ROWS

Tray = list[dict[str, Any]]


def in_rows(worths: Sequence[int], money: Money) -> Tray:
    """Return a tray with coins lined up on it, the largest worth first.

    Example:
        >>> [lying["coin"] for lying in in_rows([10, 25], "usd")]
        ['25', '10']
    """
    return [{"coin": coin, "x": x, "y": y} for coin, x, y in _in_rows(tuple(worths), money)]


@cache
def _in_rows(worths: tuple[int, ...], money: Money) -> tuple[tuple[str, int, int], ...]:
    tray = tray_of([str(worth) for worth in worths], money)
    return tuple((lying["coin"], lying["x"], lying["y"]) for lying in tray)


def anywhere(keys: Sequence[str], chance: Chance) -> Tray:
    """Return a tray with up to sixteen coins here and there, none covering another.

    Their order tells nothing about what they are worth.

    Example:
        >>> len(anywhere(["25", "10"], Chance(7)))
        2
    """
    cells = chance.sample(range(ROWS * ROWS), len(keys))
    return [
        {"coin": key, "x": cell % ROWS * CELL + CELL // 2, "y": cell // ROWS * CELL + CELL // 2}
        for key, cell in zip(keys, cells, strict=True)
    ]


def to_read(tray: Tray, money: Money, *, worths: bool) -> dict[str, Any]:
    """Return the traits of a tray that is a picture to read: no total, no purse, nothing moves.

    Example:
        >>> to_read([], "usd", worths=True)["running_total"]
        False
    """
    return {
        "tray": tray,
        "currency": _plain(money),
        "purse": [],
        "running_total": False,
        "worths": worths,
        "movable": False,
        "buttons": False,
    }


def to_lay(tray: Tray, money: Money, *, total: bool) -> dict[str, Any]:
    """Return the traits of a tray that coins are laid on.

    Example:
        >>> to_lay([], "usd", total=True)["purse"]
        ['25', '10', '5', '1']
    """
    return {
        "tray": tray,
        "currency": _plain(money),
        "purse": purse_of(money),
        "running_total": total,
    }


def _plain(money: Money) -> str | dict[str, Any]:
    return money if isinstance(money, str) else money.to_data()
