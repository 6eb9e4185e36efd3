"""The facts of each manipulative, computed from its traits; goals and mistakes are about them.

A trait that is not given has its default value.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from manipulatives.lessons.strands.sums.columns.working import played
from manipulatives.lessons.tasks.predicates import Fact
from manipulatives.maths.columns.facts import sum_facts
from manipulatives.maths.money.tray import check_purse, tray_facts
from manipulatives.maths.number.chart import Chart, chart_facts, check_marks, no_marks
from manipulatives.maths.number.mats import check_mat, mat_facts
from manipulatives.maths.shapes.data import check_shape
from manipulatives.maths.time.dial import dial_facts
from manipulatives.words.shape_facts import shape_facts
from manipulatives.words.shape_names import Wording

Traits = Mapping[str, Any]

CHART = {
    "first": 1,
    "last": 100,
    "width": 10,
    "step": 1,
    "start": None,
    "direction": "forward",
    "hidden": "none",
    "mode": "count",
}
EMPTY_PAPER = {"points": [], "closed": False}


def _clock(traits: Traits) -> dict[str, Any]:
    return dial_facts(traits["dial"])


def _tray(traits: Traits) -> dict[str, Any]:
    currency = traits.get("currency", "usd")
    purse = check_purse(traits.get("purse"), currency)
    return tray_facts(traits.get("tray", []), currency, purse)


def _blocks(traits: Traits) -> dict[str, Any]:
    return {**mat_facts(check_mat(traits.get("mat", [{}])))}


def _chart(traits: Traits) -> dict[str, Any]:
    chart = Chart(**{name: traits.get(name, value) for name, value in CHART.items()})
    marks = {**no_marks(), **traits.get("chart", {})}
    return chart_facts(check_marks(marks, chart), chart)


def _columns(traits: Traits) -> dict[str, Any]:
    sum_ = traits["sum"]
    if traits.get("mode", "try") == "show":
        sum_ = played(sum_, traits["steps"][: traits.get("step", 0)])
    return sum_facts(sum_)


def _polygon(traits: Traits) -> dict[str, Any]:
    grid = traits.get("grid", "square")
    wording = Wording(traits.get("vocabulary", "us"), traits.get("trapezoid", "inclusive"))
    guide = traits.get("guide")
    return shape_facts(
        check_shape(traits.get("shape", EMPTY_PAPER), grid),
        grid,
        wording,
        None if guide is None else check_shape(guide, grid),
    )


FACTS: Mapping[str, Callable[[Traits], dict[str, Any]]] = {
    "Clock": _clock,
    "CoinTray": _tray,
    "ColumnBoard": _columns,
    "CountingChart": _chart,
    "PlaceValueBlocks": _blocks,
    "PolygonDrawer": _polygon,
}
"""For each manipulative the function that computes its facts from its traits."""


def facts_of(manipulative: str, traits: Traits, answer: str | None = None) -> dict[str, Fact]:
    """Return the facts that goals and mistakes are evaluated on.

    Args:
        manipulative: such as "Clock".
        traits: its state.
        answer: what the pupil has answered, tidied (`answers.tidy`); None until then.

    Raises:
        KeyError: there is no such manipulative, or a trait without a default value is missing.
        ValueError: the value of a trait is not allowed.

    Example:
        >>> facts_of("Clock", {"dial": {"hour": 275, "minute": 35, "half": "am"}})["meant"]
        275
        >>> facts_of("PlaceValueBlocks", {"mat": [{"tens": 2, "ones": 15}]})["number"]
        35
    """
    return {**FACTS[manipulative](traits), "answer": answer}
