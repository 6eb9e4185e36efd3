"""The places of coins on a mat: all readable, or lined up for counting.

The mat is square, 140 millimetres wide. Places are whole tenths of a millimetre from its top left
corner, x to the right and y downward, and tell where the middle of a coin is. Everything here is
calculated in whole numbers, so that the browser finds exactly the same places.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypedDict

from manipulatives.maths.money.coin import Coin
from manipulatives.maths.money.coins import Currency

MAT = 1400
"""How wide and how high the mat is, in tenths of a millimetre."""
MOST_COINS = 100
"""How many coins a tray holds at most."""

EDGE = 40
CROWDED_EDGE = 10
GAP = 20
LINE = 80
_STEP = 10
_LINES = 4


class Lying(TypedDict):
    """A coin on the mat; a plain dict, as it is stored and sent."""

    coin: str
    x: int
    y: int


def reach(coin: Coin) -> int:
    """Return the radius of a coin in tenths of a millimetre, rounded up.

    Example:
        >>> reach(Coin(25, "quarter", 24.26, "silver"))
        122
    """
    return _up(_hundredths(coin), 20)


def on_mat(coin: Coin, x: int, y: int) -> bool:
    """Return whether the whole coin lies on the mat.

    Example:
        >>> on_mat(Coin(25, "quarter", 24.26, "silver"), 121, 700)
        False
    """
    least, most = reach(coin), MAT - reach(coin)
    return least <= x <= most and least <= y <= most


def readable(one: Coin, other: Coin, right: int, down: int) -> bool:
    """Return whether two coins at this distance can both be read, whichever lies above.

    Of the lower coin the middle stays visible, up to 0.55 of its radius, where its worth is.

    Args:
        one: a coin.
        other: another.
        right: how far its middle is from the other's, across.
        down: the same, downward.

    Example:
        >>> dime = Coin(10, "dime", 17.91, "silver")
        >>> readable(dime, dime, 139, 0), readable(dime, dime, 138, 0)
        (True, False)
    """
    return right * right + down * down >= _least(one, other, clear=False)


def apart(one: Coin, other: Coin, right: int, down: int) -> bool:
    """Return whether two coins at this distance leave at least two millimetres between them.

    Example:
        >>> dime = Coin(10, "dime", 17.91, "silver")
        >>> apart(dime, dime, 200, 0), apart(dime, dime, 199, 0)
        (True, False)
    """
    return right * right + down * down >= _least(one, other, clear=True)


def _least(one: Coin, other: Coin, *, clear: bool) -> int:
    """Return the least square of the distance between two coins, in tenths of a millimetre."""
    large, small = sorted((_hundredths(one), _hundredths(other)), reverse=True)
    if clear:
        return _up((large + small + 20 * GAP) ** 2, 400)
    return _up((20 * large + 11 * small) ** 2, 160_000)


def place_near(
    key: str, x: int, y: int, others: Sequence[Lying], money: Currency, *, clear: bool = False
) -> Lying | None:
    """Return the place for a coin that is put down, or None when there is no room.

    It is the wanted place if all coins stay readable, otherwise the nearest that a search in steps
    of a millimetre finds.

    Args:
        key: the coin.
        x: the place, to be moved onto the mat if it is not.
        y: the same, downward.
        others: the coins that lie there.
        money: their currency.
        clear: whether the coin must not touch others.

    Raises:
        ValueError: the currency has no such coin.

    Example:
        >>> from manipulatives.maths.money.coins import CURRENCIES
        >>> place_near("10", 0, 700, [], CURRENCIES["usd"])
        {'coin': '10', 'x': 90, 'y': 700}
    """
    coin = money.coin(key)
    least, most = reach(coin), MAT - reach(coin)
    x, y = (min(max(part, least), most) for part in (x, y))
    limits = _limits(coin, others, money, clear=clear)
    best: tuple[int, int, int] | None = None
    for ring in range(MAT // _STEP if len(others) < MOST_COINS else 0):
        if best is not None and ring * ring > best[0]:
            break
        for i, j in _square(ring):
            at = x + _STEP * i, y + _STEP * j
            # Of two equally near places take the one nearer to its row, then the one on the right.
            near = i * i + j * j, j * j, -i - j
            inside = least <= min(at) and max(at) <= most
            if inside and (best is None or near < best) and _free(*at, limits):
                best, place = near, at
    return None if best is None else Lying(coin=key, x=place[0], y=place[1])


def _limits(
    coin: Coin, others: Sequence[Lying], money: Currency, *, clear: bool
) -> list[tuple[int, int, int]]:
    """Return where other coins lie and how near the coin may come to each, squared."""
    return [
        (other["x"], other["y"], _least(coin, money.coin(other["coin"]), clear=clear))
        for other in others
    ]


def _free(x: int, y: int, limits: list[tuple[int, int, int]]) -> bool:
    return all((x - ox) ** 2 + (y - oy) ** 2 >= least for ox, oy, least in limits)


def _square(ring: int) -> list[tuple[int, int]]:
    """Return the steps to the outline of a square around the middle."""
    if ring == 0:
        return [(0, 0)]
    ends = [(i, j) for i in range(-ring, ring + 1) for j in (-ring, ring)]
    return ends + [(i, j) for j in range(1 - ring, ring) for i in (-ring, ring)]


def next_place(key: str, others: Sequence[Lying], money: Currency) -> Lying | None:
    """Return the automatic place of the next coin, or None when there is no room.

    It is beside the coins before it, on one of four lines. When these are full, it is where it
    covers others least, as near to the middle of the mat as possible.

    Raises:
        ValueError: the currency has no such coin.

    Example:
        >>> from manipulatives.maths.money.coins import CURRENCIES
        >>> next_place("25", [], CURRENCIES["usd"])
        {'coin': '25', 'x': 162, 'y': 188}
    """
    coin = money.coin(key)
    r = reach(coin)
    limits = _limits(coin, others, money, clear=True)
    beside = [other["x"] + reach(money.coin(other["coin"])) + r + GAP for other in others]
    columns = sorted(x for x in {EDGE + r, *beside} if x + r + EDGE <= MAT)
    for shelf in range(1, _LINES + 1):
        y = shelf * MAT // _LINES - EDGE - r
        for x in columns if len(others) < MOST_COINS else []:
            if _free(x, y, limits):
                return Lying(coin=key, x=x, y=y)
    return place_near(key, MAT // 2, MAT // 2, others, money)


def lined_up(keys: Sequence[str], money: Currency) -> list[Lying] | None:
    """Return coins in rows, the largest worth first, or None when the mat has no room for that.

    Coins of all kinds stand in one row if they fit; else each kind begins a row of its own; else
    the kinds follow each other, at last covering each other a little. Below each row there is a
    line for figures, as long as the mat is not crowded.

    Raises:
        ValueError: the currency has no such coin.

    Example:
        >>> from manipulatives.maths.money.coins import CURRENCIES
        >>> [lying["x"] for lying in lined_up(["10", "25"], CURRENCIES["usd"])]
        [162, 414]
    """
    coins = sorted((money.coin(key) for key in keys), key=lambda coin: -coin.worth)
    in_one = _rows(coins)
    crowded = _rows(coins, cover=True)
    for rows, line in (
        (in_one[:1], LINE),
        (_rows(coins, by_kind=True), LINE),
        (in_one, LINE),
        (crowded, LINE),
        (crowded, 0),
        (crowded, None),
    ):
        found = _stacked(rows, line, CROWDED_EDGE if rows is crowded else EDGE)
        if found is not None and len(found) == len(coins):
            return found
    return None


Row = list[tuple[Coin, int]]


def _rows(coins: list[Coin], *, by_kind: bool = False, cover: bool = False) -> list[Row]:
    """Return coins and how far right each is, row by row."""
    edge = CROWDED_EDGE if cover else EDGE
    rows: list[Row] = []
    for coin in coins:
        if rows:
            before, x = rows[-1][-1]
            alike = before.key == coin.key
            x += _covering(before, coin) if cover else reach(before) + reach(coin) + GAP
            x += 0 if alike or cover else GAP
            if x + reach(coin) + edge <= MAT and (alike or not by_kind):
                rows[-1].append((coin, x))
                continue
        rows.append([(coin, edge + reach(coin))])
    return rows


def _covering(one: Coin, other: Coin) -> int:
    """Return the least distance in a row at which both can be read."""
    large, small = sorted((_hundredths(one), _hundredths(other)), reverse=True)
    return _up(20 * large + 11 * small, 400)


def _stacked(rows: list[Row], line: int | None, edge: int) -> list[Lying] | None:
    """Return the rows below each other, the coins of each standing on one line.

    Args:
        rows: the rows.
        line: how much room is left below each; None lets each cover the one above a little.
        edge: how much room is left above the first, and below the last.
    """
    lying: list[Lying] = []
    base = edge
    above: Row = []
    for row in rows:
        if line is None and above:
            base += max(
                _covering(coin, other) + reach(coin) - reach(other)
                for coin, _ in row
                for other, _ in above
            )
        else:
            base += 2 * max(reach(coin) for coin, _ in row)
        lying += [Lying(coin=coin.key, x=x, y=base - reach(coin)) for coin, x in row]
        base += line or 0
        above = row
    return lying if base + (0 if line else edge) <= MAT else None


def _hundredths(coin: Coin) -> int:
    return round(100 * coin.diameter)


def _up(number: int, divisor: int) -> int:
    """Return a quotient, rounded up."""
    return -(-number // divisor)
