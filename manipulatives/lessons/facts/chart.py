"""What is true of a counting chart, from its traits."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from manipulatives.maths.number.chart import Chart, chart_facts, check_marks, no_marks

MANIPULATIVE = "CountingChart"

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
"""The traits that make the chart itself, each with its default value."""


def facts(traits: Mapping[str, Any]) -> dict[str, Any]:
    """Return the facts of a counting chart.

    Raises:
        ValueError: there is no such chart, or the marks are none of it.

    Example:
        >>> facts({"step": 5, "chart": {"counted": [5, 10]}})["next"]
        15
    """
    chart = Chart(**{name: traits.get(name, value) for name, value in CHART.items()})
    marks = {**no_marks(), **traits.get("chart", {})}
    return {**chart_facts(check_marks(marks, chart), chart)}
