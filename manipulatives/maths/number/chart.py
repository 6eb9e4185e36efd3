"""A counting chart and its marks: the numbers counted and the digits written.

What was done to a chart are its *marks*, a dict of three: `counted`, the numbers counted so far in
their order; `tapped`, the number tapped last when it was not the next one, else None; `written`,
the digits that were written into blank cells, by the number of the cell: `{"35": "53"}`.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TypedDict, TypeGuard

from manipulatives.maths.fields import fields_of
from manipulatives.maths.number.chart_cells import check_hidden, check_width, hidden_numbers
from manipulatives.maths.number.counting import (
    DIRECTIONS,
    check_range,
    check_start,
    check_step,
    count_of,
    is_among,
)

MODES = ("count", "wipe", "write")
MOST_DIGITS = 5


class Marks(TypedDict):
    """What was done to a chart."""

    counted: list[int]
    tapped: int | None
    written: dict[str, str]


@dataclass(frozen=True)
class Chart:
    """A chart to count on: its numbers, the count through them, and what is hidden.

    Attributes:
        first: its first number.
        last: its last number.
        width: how many numbers a row has.
        step: from each number of the count to the next.
        start: where the count begins; None for the first multiple of the step on the way.
        direction: "forward" or "back".
        hidden: a pattern by name (`chart_cells.PATTERNS`), or a list of numbers.
        mode: "count", "wipe" or "write".

    Raises:
        ValueError: one of them is not valid.

    Example:
        >>> Chart(1, 20, step=5).numbers
        [5, 10, 15, 20]
    """

    first: int = 1
    last: int = 100
    width: int = 10
    step: int = 1
    start: int | None = None
    direction: str = "forward"
    hidden: str | list[int] = "none"
    mode: str = "count"

    def __post_init__(self) -> None:
        check_range(self.first, self.last)
        check_width(self.width)
        check_step(self.step)
        check_start(self.start, self.first, self.last)
        check_hidden(self.hidden, self.first, self.last)
        for given, allowed in ((self.direction, DIRECTIONS), (self.mode, MODES)):
            if given not in allowed:
                raise ValueError(f"This is one of {', '.join(allowed)}, not {given!r}.")

    @cached_property
    def numbers(self) -> list[int]:
        """The numbers of the count, in the order in which they are said."""
        return count_of(self.first, self.last, self.step, self.start, self.direction)

    @cached_property
    def blanks(self) -> list[int]:
        """The numbers that are hidden, in order."""
        return hidden_numbers(self.hidden, self.first, self.last, self.width, self.numbers)


def no_marks() -> Marks:
    """Return the marks of a chart that nothing was done to."""
    return {"counted": [], "tapped": None, "written": {}}


def check_marks(data: object, chart: Chart) -> Marks:
    """Check the marks of a chart and return a copy of them.

    Marks that are left out are empty.

    Raises:
        ValueError: they are no marks, or not on this chart.

    Example:
        >>> check_marks({"counted": [5, 10]}, Chart(step=5))
        {'counted': [5, 10], 'tapped': None, 'written': {}}
    """
    given = {
        **no_marks(),
        **fields_of(data, "What was done to a chart", (), ("counted", "tapped", "written")),
    }
    counted, tapped, written = given["counted"], given["tapped"], given["written"]
    if not isinstance(counted, (list, tuple)):
        raise ValueError(f"Counted is a list of numbers, not {counted!r}.")  # noqa: TRY004 - a wrong value of whatever kind is a ValueError all over the kit
    for number in (*counted, *(() if tapped is None else (tapped,))):
        if not _on(number, chart):
            raise ValueError(f"The chart goes from {chart.first} to {chart.last}, not {number!r}.")
    if len(set(counted)) < len(counted):
        raise ValueError("Each number is counted once.")
    if not isinstance(written, Mapping):
        raise ValueError(f'Written is a dict such as {{"35": "53"}}, not {written!r}.')  # noqa: TRY004 - the same
    for number, digits in written.items():
        on_chart = isinstance(number, str) and number in _names(chart)
        if not on_chart:
            raise ValueError(
                f"What is written is kept by numbers of the chart as text, from "
                f'"{chart.first}" to "{chart.last}", not by {number!r}.'
            )
        if not _are_digits(digits):
            raise ValueError(f"A cell holds 1 to {MOST_DIGITS} digits as text, not {digits!r}.")
    return {"counted": list(counted), "tapped": tapped, "written": dict(written)}


def marks_left(marks: Marks, chart: Chart) -> Marks:
    """Return the marks without those that are not on the chart, after its numbers changed.

    Example:
        >>> marks_left({"counted": [5, 105], "tapped": 107, "written": {}}, Chart())
        {'counted': [5], 'tapped': None, 'written': {}}
    """
    tapped = marks["tapped"]
    return {
        "counted": [number for number in marks["counted"] if _on(number, chart)],
        "tapped": tapped if _on(tapped, chart) else None,
        "written": {
            number: digits for number, digits in marks["written"].items() if number in _names(chart)
        },
    }


def next_number(marks: Marks, chart: Chart) -> int | None:
    """Return the number that is counted next, or None at the end.

    Example:
        >>> next_number({"counted": [5, 10], "tapped": None, "written": {}}, Chart(step=5))
        15
    """
    counted = marks["counted"]
    if not counted:
        return chart.numbers[0]
    coming = counted[-1] + (-chart.step if chart.direction == "back" else chart.step)
    return coming if _on(coming, chart) and coming not in counted else None


def tap(marks: Marks, number: int, chart: Chart) -> Marks:
    """Return the marks after a number of the chart was tapped.

    A tap on the next number counts it; a tap on the number counted last takes it back. A tap on any
    other number is stored as `tapped` and changes nothing else.

    Example:
        >>> tap(no_marks(), 5, Chart(step=5))["counted"]
        [5]
        >>> tap(no_marks(), 6, Chart(step=5))["tapped"]
        6
    """
    counted = marks["counted"]
    if number == next_number(marks, chart):
        return {**marks, "counted": [*counted, number], "tapped": None}
    if counted and number == counted[-1]:
        return {**marks, "counted": counted[:-1], "tapped": None}
    return {**marks, "tapped": number}


def write(marks: Marks, number: int, digits: str) -> Marks:
    """Return the marks after digits were written into a cell; no digits clear it.

    Raises:
        ValueError: there are other signs than digits, or too many.

    Example:
        >>> write(no_marks(), 35, "53")["written"]
        {'35': '53'}
    """
    if digits and not _are_digits(digits):
        raise ValueError(f"A cell holds 1 to {MOST_DIGITS} digits as text, not {digits!r}.")
    others = {key: text for key, text in marks["written"].items() if key != str(number)}
    return {**marks, "written": {**others, **({str(number): digits} if digits else {})}}


def chart_facts(marks: Marks, chart: Chart) -> dict[str, int | str | bool | None]:
    """Return the facts of a chart, for goals and mistakes.

    `counted`: how many numbers; `at`: the one counted last; `next`: the one that comes next;
    `tapped`: a number tapped last that did not come next; `in_step`: whether what was counted
    is the count from its beginning; `total`: how many numbers the count has; `right`, `wrong`,
    `blank`: how many hidden cells are written like that; `finished`: all is counted, or written.

    Example:
        >>> facts = chart_facts(check_marks({"counted": [5, 10]}, Chart(step=5)), Chart(step=5))
        >>> facts["at"], facts["next"], facts["total"], facts["finished"]
        (10, 15, 20, False)
    """
    counted = marks["counted"]
    filled = [(number, marks["written"].get(str(number))) for number in chart.blanks]
    right = sum(digits == str(number) for number, digits in filled)
    blank = sum(digits is None for _, digits in filled)
    in_step = counted == chart.numbers[: len(counted)]
    done = in_step and len(counted) == len(chart.numbers)
    return {
        "counted": len(counted),
        "at": counted[-1] if counted else None,
        "next": next_number(marks, chart),
        "tapped": marks["tapped"],
        "in_step": in_step,
        "total": len(chart.numbers),
        "right": right,
        "wrong": len(filled) - right - blank,
        "blank": blank,
        "finished": right == len(filled) if chart.mode == "write" else done,
    }


def _on(number: object, chart: Chart) -> TypeGuard[int]:
    return is_among(number, chart.first, chart.last)


def _names(chart: Chart) -> set[str]:
    return {str(number) for number in range(chart.first, chart.last + 1)}


def _are_digits(text: object) -> bool:
    return isinstance(text, str) and re.fullmatch(r"[0-9]{1,5}", text) is not None
