"""What is true of a column board, from its traits."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from manipulatives.lessons.strands.sums.columns.working import played
from manipulatives.maths.columns.facts import sum_facts

MANIPULATIVE = "ColumnBoard"


def facts(traits: Mapping[str, Any]) -> dict[str, Any]:
    """Return the facts of a column board: of what is written, or of the steps that are shown.

    Raises:
        KeyError: the sum is missing, or the steps are that are to be shown.

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> facts({"sum": new_sum("+", [47, 38])})["done"]
        False
    """
    sum_ = traits["sum"]
    if traits.get("mode", "try") == "show":
        sum_ = played(sum_, traits["steps"][: traits.get("step", 0)])
    return {**sum_facts(sum_)}
