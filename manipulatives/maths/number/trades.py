"""Trading blocks: ten of one place are one of the next, and the number stays what it is.

Each trade changes how many blocks there are by nine. Grouping ten goes *up* a place, breaking one
goes *down*; both are named by the place that is given away.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

from manipulatives.maths.number.place_names import some
from manipulatives.maths.number.place_value import (
    BASE,
    PLACES,
    Blocks,
    check_blocks,
    check_place,
    check_places,
    number_of,
    partitioned,
)

MINUS = "\N{MINUS SIGN}"


class Trade(NamedTuple):
    """A trade between two neighbouring places.

    Attributes:
        place: the place of the blocks that are given away.
        way: "up", ten become one of the next larger place; "down", one becomes ten smaller.
        times: how often it is done at once.
    """

    place: str
    way: Literal["up", "down"]
    times: int = 1


def trade_up(blocks: Blocks, place: str) -> Blocks:
    """Return the blocks after ten of a place became one of the next larger place.

    Raises:
        ValueError: no blocks, no place, fewer than ten, or no larger place.

    Example:
        >>> trade_up({"tens": 2, "ones": 15}, "ones")
        {'thousands': 0, 'hundreds': 0, 'tens': 3, 'ones': 5}
    """
    full = check_blocks(blocks)
    larger = _next(place, -1)
    if larger is None:
        raise ValueError(f"There is no place above the {place}; ten of them stay ten.")
    there = full[place]
    if there < BASE:
        raise ValueError(
            f"Ten {place} become {some(1, larger)}; there are {there}. Put more in first."
        )
    return _moved(full, Trade(place, "up"))


def trade_down(blocks: Blocks, place: str) -> Blocks:
    """Return the blocks after one of a place became ten of the next smaller place.

    Raises:
        ValueError: no blocks, no place, none there, or no smaller place.

    Example:
        >>> trade_down({"tens": 3, "ones": 5}, "tens")
        {'thousands': 0, 'hundreds': 0, 'tens': 2, 'ones': 15}
    """
    full = check_blocks(blocks)
    if _next(place, 1) is None:
        raise ValueError(f"There is no place below the {place}; a one does not break.")
    if full[place] == 0:
        raise ValueError(f"There are no {place} to break. Trade for one first.")
    return _moved(full, Trade(place, "down"))


def trades_of(blocks: Blocks, places: int = 4) -> list[Trade]:
    """Return every trade that can be made, from the ones on.

    Args:
        blocks: the blocks.
        places: how many places there are, the ones first; nothing is traded into others.

    Raises:
        ValueError: no blocks, or no such places.

    Example:
        >>> [trade.way for trade in trades_of({"tens": 2, "ones": 15})]
        ['up', 'down']
    """
    full = check_blocks(blocks)
    found = []
    for low in range(len(PLACES) - 1, len(PLACES) - check_places(places), -1):
        smaller, larger = PLACES[low], PLACES[low - 1]
        if full[smaller] >= BASE:
            found.append(Trade(smaller, "up"))
        if full[larger] > 0:
            found.append(Trade(larger, "down"))
    return found


def trade_between(before: Blocks, after: Blocks) -> Trade | None:
    """Return the trade that leads from one to the other, or None when no trade does.

    Raises:
        ValueError: no blocks.

    Example:
        >>> twelve = {"tens": 1, "ones": 2}
        >>> trade_between(twelve, {"tens": 0, "ones": 12})
        Trade(place='tens', way='down', times=1)
    """
    old, new = check_blocks(before), check_blocks(after)
    change = {place: new[place] - old[place] for place in PLACES}
    touched = [place for place in PLACES if change[place]]
    if len(touched) != 2:  # noqa: PLR2004 - a trade is between two places
        return None
    larger, smaller = touched
    up = change[larger]
    if _next(larger, 1) != smaller or change[smaller] != -BASE * up:
        return None
    return Trade(smaller, "up", up) if up > 0 else Trade(larger, "down", -up)


def trade_equation(trade: Trade) -> str:
    """Return the equation of a trade in blocks.

    Raises:
        ValueError: no such trade.

    Example:
        >>> trade_equation(Trade("ones", "up")), trade_equation(Trade("hundreds", "down", 2))
        ('10 ones = 1 ten', '2 hundreds = 20 tens')
    """
    other = _next(trade.place, -1 if trade.way == "up" else 1)
    if other is None:
        raise ValueError(f"There is no trade of {trade.place} {trade.way}.")
    gave, got = (BASE, 1) if trade.way == "up" else (1, BASE)
    return f"{some(gave * trade.times, trade.place)} = {some(got * trade.times, other)}"


def step_equation(before: Blocks, after: Blocks) -> str:
    """Return the equation of a step on one mat, or "" when nothing changed.

    A trade has one equation in blocks and one in numbers; blocks that were put in or taken away
    make a sum or a difference.

    Raises:
        ValueError: no blocks.

    Example:
        >>> mat = {"tens": 2, "ones": 15}
        >>> step_equation(mat, trade_up(mat, "ones"))
        '10 ones = 1 ten; 20 + 15 = 30 + 5'
        >>> step_equation(mat, {**mat, "ones": 12})
        '35 \u2212 3 = 32'
    """
    trade = trade_between(before, after)
    if trade is not None:
        return f"{trade_equation(trade)}; {partitioned(before)} = {partitioned(after)}"
    old, new = number_of(before), number_of(after)
    if old == new:
        same = check_blocks(before) == check_blocks(after)
        return "" if same else f"{partitioned(before)} = {partitioned(after)}"
    return f"{old} {'+' if new > old else MINUS} {abs(new - old)} = {new}"


def _next(place: str, step: int) -> str | None:
    index = PLACES.index(check_place(place)) + step
    return PLACES[index] if 0 <= index < len(PLACES) else None


def _moved(blocks: Blocks, trade: Trade) -> Blocks:
    gave, got, step = (BASE, 1, -1) if trade.way == "up" else (1, BASE, 1)
    other = PLACES[PLACES.index(trade.place) + step]
    moved = {**blocks}
    moved[trade.place] -= gave
    moved[other] += got
    return moved
