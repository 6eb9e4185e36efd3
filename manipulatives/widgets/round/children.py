"""Which widget a task means when it names its manipulative."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.lessons.checks import nearest
from manipulatives.lessons.problem import LessonProblem, quoted
from manipulatives.widgets.blocks.blocks import PlaceValueBlocks
from manipulatives.widgets.chart.chart import CountingChart
from manipulatives.widgets.clock.clock import Clock
from manipulatives.widgets.coins.coins import CoinTray
from manipulatives.widgets.columns.columns import ColumnBoard
from manipulatives.widgets.polygon.polygon import PolygonDrawer

if TYPE_CHECKING:
    from collections.abc import Mapping

    from manipulatives.widgets.manipulative import Manipulative

MANIPULATIVES: Mapping[str, type[Manipulative]] = {
    "Clock": Clock,
    "CoinTray": CoinTray,
    "ColumnBoard": ColumnBoard,
    "CountingChart": CountingChart,
    "PlaceValueBlocks": PlaceValueBlocks,
    "PolygonDrawer": PolygonDrawer,
}


def manipulative_called(name: str) -> type[Manipulative]:
    """Return the class of a manipulative.

    Raises:
        LessonProblem: the kit has none of that name.

    Example:
        >>> manipulative_called("Clock").__name__
        'Clock'
    """
    if name in MANIPULATIVES:
        return MANIPULATIVES[name]
    raise LessonProblem(
        f"there is no manipulative {quoted(name)}{nearest(name, list(MANIPULATIVES))}",
        remedy=f"choose one of {', '.join(MANIPULATIVES)}",
    )
