"""Interactive mathematics manipulatives for teachers of five- to eight-year-olds."""

from __future__ import annotations

from manipulatives.lessons.files import read_lesson, write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.widgets.blocks import PlaceValueBlocks
from manipulatives.widgets.chart import CountingChart
from manipulatives.widgets.clock import Clock
from manipulatives.widgets.coins import CoinTray
from manipulatives.widgets.columns import ColumnBoard
from manipulatives.widgets.polygon import PolygonDrawer
from manipulatives.widgets.round import play

__all__ = [
    "Clock",
    "CoinTray",
    "ColumnBoard",
    "CountingChart",
    "Lesson",
    "PlaceValueBlocks",
    "PolygonDrawer",
    "Round",
    "play",
    "read_lesson",
    "write_lesson",
]
