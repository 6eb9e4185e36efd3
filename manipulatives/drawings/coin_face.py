"""A coin's face as plain shapes: its outline, its edge, its text."""

from __future__ import annotations

import math
from dataclasses import dataclass

from manipulatives.data import table
from manipulatives.drawings.shapes import (
    Circle,
    Paint,
    Point,
    Polygon,
    Shape,
    Text,
    around,
    centred,
)
from manipulatives.maths.money.coin import Coin
from manipulatives.maths.money.coins import Currency
from manipulatives.words.money import sign_on

FACE = table("coin_face")
"""Proportions of a coin: shares of its radius; `tooth` is in millimetres and `half`, of a notch, in
radians."""

_LETTER_HEIGHT = 0.52
_LEADING = 0.95
_TWO_LINES = 0.8
_STEP = math.radians(3)


@dataclass(frozen=True)
class Corners:
    """The corners of a coin and how the sides between them are bowed.

    Attributes:
        corner: how far the corners are from the middle, in millimetres.
        bow: the radius of the sides, infinite for straight ones.
        turns: the angles of the corners, in radians from twelve; a round coin has three that
            cannot be seen.
    """

    corner: float
    bow: float
    turns: tuple[float, ...]


def corners_of(coin: Coin) -> Corners:
    """Return the corners of a coin without notches.

    Sides of an odd number are bowed around the opposite corner: then the coin is equally wide all
    around (a Reuleaux polygon).

    Example:
        >>> corners_of(Coin(5, "nickel", 21.21, "silver")).bow
        10.605
    """
    radius, sides = coin.diameter / 2, coin.sides
    if sides == 0:
        return Corners(radius, radius, _turns(3))
    if sides % 2:
        corner = radius / math.cos(math.pi / 2 / sides)
        return Corners(corner, coin.diameter, _turns(sides))
    half = math.pi / sides
    flat = radius * math.cos(half)
    rise = (coin.flats / 2 if coin.flats else flat) - flat
    chord = radius * math.sin(half)
    bow = (chord**2 + rise**2) / 2 / rise if rise > 0.05 else math.inf  # noqa: PLR2004 - less cannot be seen
    return Corners(radius, bow, tuple(turn + half for turn in _turns(sides)))


def outline(coin: Coin, share: float = 1.0) -> tuple[Point, ...]:
    """Return points along the outline of a coin around the origin, in millimetres.

    Args:
        coin: the coin.
        share: how large it is to be, as a share of the coin.

    Example:
        >>> len(outline(Coin(5, "nickel", 21.21, "silver")))
        120
    """
    points = _notched(coin) if coin.notches else _cornered(corners_of(coin))
    return tuple((share * x, share * y) for x, y in points)


def _cornered(corners: Corners) -> list[Point]:
    points: list[Point] = []
    ends = [*corners.turns[1:], corners.turns[0] + 2 * math.pi]
    for start, end in zip(corners.turns, ends, strict=True):
        points += _bowed(_at(corners.corner, start), _at(corners.corner, end), corners.bow)
    return points


def _notched(coin: Coin) -> list[Point]:
    radius, half = coin.diameter / 2, FACE["notch"]["half"]
    points: list[Point] = []
    turns = _turns(coin.notches)
    for start, end in zip(turns, [*turns[1:], 2 * math.pi], strict=True):
        before, after, far = (
            _at(radius, turn) for turn in (start - half, start + half, end - half)
        )
        points += _bowed(before, after, FACE["notch"]["dent"] * radius, inward=True)
        points += _bowed(after, far, radius)
    return points


def _bowed(start: Point, end: Point, bow: float, *, inward: bool = False) -> list[Point]:
    """Return points from a start up to before an end, along an arc around a point further in."""
    if math.isinf(bow):
        return [start]
    chord = math.dist(start, end)
    middle = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
    depth = math.sqrt(max(0.0, bow**2 - chord**2 / 4))
    length = math.hypot(*middle)
    out = -1 if inward else 1
    centre = (
        middle[0] - out * depth * middle[0] / length,
        middle[1] - out * depth * middle[1] / length,
    )
    begin = math.atan2(start[1] - centre[1], start[0] - centre[0])
    sweep = out * 2 * math.asin(min(1.0, chord / 2 / bow))
    steps = max(1, math.ceil(abs(sweep) / _STEP - 1e-9))
    return [
        (
            centre[0] + bow * math.cos(begin + sweep * step / steps),
            centre[1] + bow * math.sin(begin + sweep * step / steps),
        )
        for step in range(steps)
    ]


def teeth(coin: Coin) -> tuple[float, ...]:
    """Return the teeth of an edge: dashes and gaps in millimetres that go once around.

    Returns:
        The lengths, or none for an edge without teeth.

    Example:
        >>> len(teeth(Coin(10, "dime", 17.91, "silver", edge="milled")))
        2
    """
    if coin.edge not in ("milled", "scalloped", "interrupted"):
        return ()
    round_ = math.pi * FACE["edge"]["radius"] * coin.diameter
    tooth = FACE["scallop" if coin.edge == "scalloped" else "edge"]["tooth"]
    # An even number of pairs, in six groups and six gaps where they are interrupted. Halves are
    # rounded up, as the browser does.
    pairs = 12 * math.floor(round_ / tooth / 12 + 0.5)
    half = round_ / pairs / 2
    if coin.edge != "interrupted":
        return (half, half)
    group = [half, half] * (pairs // 12)
    group[-1] += round_ / 12
    return tuple(group)


def coin_face(
    coin: Coin, money: Currency, at: Point, *, worth: bool, name: bool, scale: float, least: float
) -> list[Shape]:
    """Return a coin as shapes.

    Args:
        coin: the coin.
        money: its currency.
        at: where its middle is.
        worth: whether its worth is on it.
        name: whether its name is on it, if it is large enough for that.
        scale: how large it is drawn.
        least: the smallest type allowed, in millimetres as drawn.

    Returns:
        The shapes, the later ones over the earlier ones.
    """
    r = coin.diameter / 2 * scale

    def moved(points: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple((at[0] + scale * x, at[1] + scale * y) for x, y in points)

    rim = f"{coin.metal}-rim"
    body = Paint(coin.metal, rim, FACE["rim"]["width"] * r)
    shapes: list[Shape] = [Polygon(moved(outline(coin)), body, role=f"coin {coin.key}")]
    dashes = teeth(coin)
    if dashes:
        look = Paint(
            None,
            rim,
            FACE["edge"]["width"] * r,
            dashes=tuple(round(scale * dash, 4) for dash in dashes),
        )
        shapes.append(Circle(at, FACE["edge"]["radius"] * r, look, "edge"))
    line = Paint(None, rim, FACE["line"]["width"] * r)
    shapes.append(Polygon(moved(outline(coin, FACE["line"]["radius"])), line, role="line"))
    if coin.centre:
        look = Paint(coin.centre, f"{coin.centre}-rim", FACE["centre"]["width"] * r)
        shapes.append(Circle(at, FACE["centre"]["radius"] * r, look, "centre"))
    named = _name(coin, at, scale, alone=not worth) if name else []
    if any(text.size < least for text in named):
        named = []
    if worth:
        shapes.append(_numeral(sign_on(coin.key, money), at, r, named=bool(named)))
    return [*shapes, *named]


def _numeral(sign: str, at: Point, r: float, *, named: bool) -> Text:
    place = FACE["numeral_named" if named else "numeral"]
    size = r * place["size"] * FACE["fit"][min(len(sign), len(FACE["fit"])) - 1]
    return centred((at[0], at[1] + r * place["below"]), sign, size, role="worth")


def _name(coin: Coin, at: Point, scale: float, *, alone: bool) -> list[Text]:
    place = FACE["name_alone" if alone else "name"]
    lines = coin.name.split()
    r = coin.diameter / 2 * scale
    most = place["size"] * (_TWO_LINES if len(lines) > 1 else 1)
    size = r * min(most, place["breadth"] / max(map(len, lines)) / FACE["letter"])
    middle = at[1] + r * place["below"] + size * _LETTER_HEIGHT / 2
    return [
        Text(
            (at[0], middle + (index - (len(lines) - 1) / 2) * size * _LEADING),
            line,
            size,
            "middle",
            role="name",
        )
        for index, line in enumerate(lines)
    ]


def _turns(many: int) -> tuple[float, ...]:
    return tuple(2 * math.pi * index / many for index in range(many))


def _at(radius: float, turn: float) -> Point:
    return around((0.0, 0.0), radius, math.degrees(turn))
