"""The charts of counting tasks, as traits: their numbers, and what can be done on them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

HUNDRED = 100
THOUSAND = 1000
# A longer chart shows only the hundreds that are needed.
LARGEST_WHOLE_CHART = 120
# So long a step leads beyond every chart, so that there is nothing to count.
STEP_WITHOUT_COUNT = THOUSAND


def ends_around(low: int, high: int, to: int) -> dict[str, int]:
    """Return the traits `first` and `last` of a chart that has some numbers.

    Up to 120 it is the whole chart; beyond, the hundred or hundreds around the numbers. It begins
    with 0 only where 0 is needed, so that its rows end with the tens.

    Args:
        low: the smallest number that is needed.
        high: the largest number that is needed.
        to: the largest number of the skill.

    Example:
        >>> ends_around(35, 60, 100), ends_around(0, 15, 100), ends_around(395, 410, 1000)
        ({'first': 1, 'last': 100}, {'first': 0, 'last': 100}, {'first': 301, 'last': 500})
    """
    first = 1 if low else 0
    if to <= LARGEST_WHOLE_CHART:
        return {"first": first, "last": to}
    if high - low > HUNDRED:
        return {"first": first, "last": to}
    first += (low - first) // HUNDRED * HUNDRED
    return {"first": first, "last": -(-high // HUNDRED) * HUNDRED}


def counted(numbers: Iterable[int]) -> dict[str, Any]:
    """Return the trait that says which numbers were counted.

    Example:
        >>> counted([35, 40])
        {'chart': {'counted': [35, 40], 'tapped': None, 'written': {}}}
    """
    return {"chart": {"counted": list(numbers), "tapped": None, "written": {}}}


def blank_chart(numbers: Sequence[int], ends: dict[str, int]) -> dict[str, Any]:
    """Return the traits of an empty chart on which only some numbers are shown; nothing moves.

    Example:
        >>> blank_chart([35, 40], {"first": 1, "last": 100})["hidden"]
        'all'
    """
    return {
        **ends,
        "step": STEP_WITHOUT_COUNT,
        "hidden": "all",
        "movable": False,
        "buttons": False,
        # Where a step is a hundred, a line shows it better than a chart of a thousand cells.
        "line": ends["last"] - ends["first"] >= THOUSAND - 1,
        **counted(numbers),
    }


def tapping_chart(start: int, by: int, ends: dict[str, int]) -> dict[str, Any]:
    """Return the traits of a chart to count on by tapping, from a number that is counted already.

    Args:
        start: that number.
        by: the step; below 0 it goes back.
        ends: of the chart.

    Example:
        >>> tapping_chart(35, -5, {"first": 1, "last": 100})["direction"]
        'back'
    """
    return {
        **ends,
        "step": abs(by),
        "start": start,
        "direction": "forward" if by > 0 else "back",
        "buttons": False,
        "line": ends["last"] - ends["first"] >= THOUSAND - 1,
        **counted([start]),
    }
