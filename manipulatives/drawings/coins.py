"""Coins on a mat, or by themselves, at their true size or as large as there is room."""

from __future__ import annotations

from collections.abc import Sequence

from manipulatives.drawings.coin_face import coin_face
from manipulatives.drawings.shapes import Box, Circle, Drawing, Paint, Shape, centred
from manipulatives.maths.money.coins import currency
from manipulatives.maths.money.places import LINE, MAT, Lying, reach
from manipulatives.maths.money.tray import check_tray, in_counting_order

MARGIN = 1.0
FIGURE = 6.2
_CORNER = 5.0
_RING = 1.4
_LEFT_BELOW = 1.0


def coins_drawing(
    tray: Sequence[Lying],
    money: object = "usd",
    *,
    worths: bool = True,
    names: bool = False,
    counts: bool | int = False,
    ring: str = "",
    mat: bool = True,
    width: float | None = None,
    least_type: float = 0.0,
) -> Drawing:
    """Coins as they lie on a tray.

    Args:
        tray: The coins and their places.
        money: Their currency: a code or a teacher's own.
        worths: Whether its worth is on each coin.
        names: Whether its name is on each coin that has room for it.
        counts: Whether the figures of counting on are below the coins, or below how many.
        ring: The coin that is asked about: a line is drawn around all of its kind.
        mat: Whether the mat is drawn; without it the drawing is as large as the coins need, and
            with no coins a line high.
        width: How wide the drawing is, in millimetres; None for coins of true size.
        least_type: Smallest type allowed, in millimetres; names that would be smaller are left out.

    Returns:
        The drawing. Its description says how many coins there are, not what they are worth.

    Raises:
        ValueError: If `tray` is no tray of the currency.

    Example:
        >>> from manipulatives.maths.money.tray import tray_of
        >>> coins_drawing(tray_of("25 10")).description
        '2 coins.'
    """
    units = currency(money)
    lying = check_tray(tray, money)
    figures = len(lying) if counts is True else int(counts)
    left, top, right, bottom = _extent(lying, money, mat=mat, figures=figures > 0)
    scale = 1.0 if width is None else width / (right - left)
    shapes: list[Shape] = []
    if mat:
        paint = Paint("sheet", "line", 0.5 * scale)
        side = MAT / 10 * scale
        corner = MARGIN * scale, MARGIN * scale
        shapes.append(Box(corner, side, side, _CORNER * scale, paint, "mat"))
    for one in lying:
        coin = units.coin(one["coin"])
        at = (one["x"] / 10 - left) * scale, (one["y"] / 10 - top) * scale
        shapes += coin_face(
            coin, units, at, worth=worths, name=names, scale=scale, least=least_type
        )
        if coin.key == ring:
            around = Paint(None, "move", 0.8 * scale, dashes=(3 * scale, 2 * scale))
            shapes.append(Circle(at, (coin.diameter / 2 + _RING) * scale, around, "ring"))
    all_so_far = 0
    for place in in_counting_order(lying)[:figures]:
        coin = units.coin(lying[place]["coin"])
        all_so_far += coin.worth
        size = max(FIGURE * scale, least_type)
        below = (lying[place]["y"] + reach(coin) + LINE) / 10 - _LEFT_BELOW
        base = (min(below, MAT / 10 - _LEFT_BELOW) - top) * scale - size * 0.35
        at = (lying[place]["x"] / 10 - left) * scale, base
        shapes.append(centred(at, str(all_so_far), size, halo=size / 12, role="count"))
    many = "1 coin." if len(lying) == 1 else f"{len(lying)} coins."
    return Drawing(
        (right - left) * scale, (bottom - top) * scale, tuple(shapes), "Coins on a tray", many
    )


def _extent(
    tray: Sequence[Lying], money: object, *, mat: bool, figures: bool
) -> tuple[float, float, float, float]:
    """Return left, top, right and bottom of what is drawn, in millimetres on the mat."""
    if mat or not tray:
        most = MAT / 10 + MARGIN
        return -MARGIN, -MARGIN, most, most if mat else LINE / 10
    units = currency(money)
    sides = [(one["x"], one["y"], reach(units.coin(one["coin"])) + 10) for one in tray]
    return (
        min(x - r for x, _, r in sides) / 10 - MARGIN,
        min(y - r for _, y, r in sides) / 10 - MARGIN,
        max(x + r for x, _, r in sides) / 10 + MARGIN,
        max(y + r for _, y, r in sides) / 10 + MARGIN + (LINE / 10 if figures else 0.0),
    )
