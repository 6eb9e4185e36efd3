"""Coins at their true size to add up, and space to draw coins in."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from manipulatives.drawings.coin_face import coin_face
from manipulatives.drawings.shapes import Box, Circle, Drawing, Paint, Shape, Text
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.money.coin import Coin
from manipulatives.maths.money.coins import Currency, currency
from manipulatives.outputs.sheet.layout.paper import Size
from manipulatives.outputs.sheet.pdf.letters import text_width
from manipulatives.outputs.sheet.tasks.printed import Manner, Printed
from manipulatives.outputs.sheet.tasks.solved import solved
from manipulatives.outputs.sheet.tasks.words import asked, on_paper

MANIPULATIVE = "CoinTray"

APART = 3.0
INSTRUCTIONS = "Draw the coins in the box."
LABEL = "Coins:"
WIDEST = 164.0

_BELOW = 2.0
_RING = 1.4
_EDGE = Paint(fill="sheet", stroke="edge", width=0.4, dashes=(2.0, 1.5))


def printed(task: Task, manner: Manner) -> Printed:
    """Return a task with coins as it is printed."""
    tray = task.start.get("tray", [])
    if task.ask["by"] != "manipulative":
        picture = _row(task.start, manner.room, manner.size) if tray else None
        return asked(task, manner, picture=picture)
    end = solved(task)["tray"] if manner.key else []
    space = _space({**task.start, "worths": True, "tray": end}, manner)
    if tray:
        row = _row(task.start, manner.room, manner.size)
        below = row.height + _BELOW
        shapes = (*row.shapes, *space.at(0, below))
        picture = Drawing(space.width, below + space.height, shapes)
        return Printed(on_paper(task.prompt), INSTRUCTIONS, "picture", picture)
    given = _purse(task.start, manner)
    return Printed(on_paper(task.prompt), INSTRUCTIONS, "picture", space, given=given)


def _row(traits: dict[str, Any], room: float, size: Size) -> Drawing:
    """Return coins at their true size, in the order of the tray, in as many rows as they need."""
    money = currency(traits.get("currency", "usd"))
    lying = [money.coin(one["coin"]) for one in traits["tray"]]
    ring = traits.get("ring", "")
    around = _RING + 0.4 if ring else 0.0
    shapes: list[Shape] = []
    rows = _rows(lying, room - 2 * around)
    top, widest = around, 0.0
    for each in rows:
        high = max(coin.diameter for coin in each)
        left = around
        for coin in each:
            at = left + coin.diameter / 2, top + high / 2
            shapes += _coin(coin, money, at, traits, size)
            if coin.key == ring:
                look = Paint(None, "move", 0.8, dashes=(3, 2))
                shapes.append(Circle(at, coin.diameter / 2 + _RING, look, "ring"))
            left += coin.diameter + APART
        widest = max(widest, left - APART + around)
        top += high + APART
    return Drawing(widest, top - APART + around, tuple(shapes))


def _rows(lying: Sequence[Coin], room: float) -> list[list[Coin]]:
    rows: list[list[Coin]] = []
    left = room
    for coin in lying:
        if left + coin.diameter > room:
            rows.append([])
            left = 0.0
        rows[-1].append(coin)
        left += coin.diameter + APART
    return rows


def _coin(
    coin: Coin, money: Currency, at: tuple[float, float], traits: dict[str, Any], size: Size
) -> list[Shape]:
    return coin_face(
        coin,
        money,
        at,
        worth=traits.get("worths", True),
        name=traits.get("names", False),
        scale=1.0,
        least=size.note,
    )


def _space(traits: dict[str, Any], manner: Manner) -> Drawing:
    """Return a box to draw coins in; in a key it holds the coins."""
    room, inset = min(manner.room, WIDEST), 1.5
    laid = Drawing(0, 0)
    if traits["tray"]:
        laid = _row(traits, room - 2 * inset, manner.size)
    height = max(manner.size.coins, laid.height + 2 * inset)
    shapes = (Box((0, 0), room, height, 3, _EDGE, "space"), *laid.at(inset, inset))
    return Drawing(room, height, shapes)


def _purse(traits: dict[str, Any], manner: Manner) -> Drawing:
    """Return one of each coin of the purse, so that pupils know which they may draw."""
    money = currency(traits.get("currency", "usd"))
    purse = traits.get("purse") or money.usual
    size = manner.size
    wide = text_width(LABEL, size.note) + size.note
    tray = [{"coin": key} for key in purse]
    row = _row({**traits, "tray": tray}, manner.room - wide, size)
    at = 0.0, row.height / 2 + 0.35 * size.note
    shapes = (Text(at, LABEL, size.note, colour="quiet"), *row.at(wide, 0))
    return Drawing(wide + row.width, row.height, shapes)
