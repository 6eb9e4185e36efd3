"""Interactive mathematics manipulatives for teachers of five- to eight-year-olds."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from manipulatives.lessons.files import read_lesson, write_lesson
    from manipulatives.lessons.lesson import Lesson, Round
    from manipulatives.maker.lesson_maker import lesson_maker
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
    "lesson_maker",
    "play",
    "read_lesson",
    "write_lesson",
]

_HOME = {
    "Clock": "widgets.clock",
    "CoinTray": "widgets.coins",
    "ColumnBoard": "widgets.columns",
    "CountingChart": "widgets.chart",
    "Lesson": "lessons.lesson",
    "PlaceValueBlocks": "widgets.blocks",
    "PolygonDrawer": "widgets.polygon",
    "Round": "lessons.lesson",
    "lesson_maker": "maker.lesson_maker",
    "play": "widgets.round",
    "read_lesson": "lessons.files",
    "write_lesson": "lessons.files",
}


def __getattr__(name: str) -> object:
    """Load what a name stands for when it is first asked for: mathematics needs no Jupyter."""
    if name in _HOME:
        thing = globals()[name] = getattr(import_module(f"{__name__}.{_HOME[name]}"), name)
        return thing
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def __dir__() -> list[str]:
    """Return the public names."""
    return __all__
