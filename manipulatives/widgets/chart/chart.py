"""The counting chart as a widget: which numbers it has, and what can be done to them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import traitlets

from manipulatives.drawings.chart import chart_drawing
from manipulatives.drawings.svg import svg_of
from manipulatives.maths.number.chart import (
    MODES,
    Chart,
    Marks,
    chart_facts,
    check_marks,
    marks_left,
    next_number,
    no_marks,
    tap,
    write,
)
from manipulatives.maths.number.chart_cells import check_hidden, check_width
from manipulatives.maths.number.counting import DIRECTIONS, check_range, check_start, check_step
from manipulatives.maths.vocabulary import VOCABULARIES
from manipulatives.widgets.manipulative import Manipulative, value_errors_as_trait_errors

if TYPE_CHECKING:
    from traitlets.utils.bunch import Bunch

FASTEST_BEAT = 120


class Given(traitlets.Any):
    """A trait that a check of its own decides on."""


class CountingChart(Manipulative, folder="chart", state="chart"):
    """A chart of numbers that light as a class counts, by finger, mouse, pen, keys or a beat.

    The count goes forward or back in steps from any start. The next number is counted by a tap on
    it, with the button, or on every `beat`; a tap on the last one takes it back, a tap on any
    other lights nothing and brings a hint. With `line` the same numbers are a number line with a
    hop for every count. In the mode "wipe" numbers are cleared as they are counted; in "write"
    the hidden cells are to be filled in: what is right stays, what is not gets a hint from its
    neighbours. With `panel`, the first tap may be on any number: the count starts there.

    | key on the chart | what it does |
    | --- | --- |
    | Tab | to the chart, to the buttons |
    | Right, Left; Down, Up | to the number after, before; below, above |
    | Home; End | to the first, to the last number of the row |
    | Shift with Home; with End | to the first, to the last number of the chart |
    | Space | counts the next number, wherever the keys are |
    | Enter | counts this number; in "write": what is written is done |
    | Backspace | takes back the last count; in "write": the last digit |
    | Delete | in "write": clears the cell |
    | 0 to 9 | in "write": a digit into the cell |

    PageUp and PageDown are not used: they turn the board. A clicker whose button can be set to
    Space or Enter counts with the button "Count next" when that has the focus.

    Args:
        first: the first number of the chart.
        last: the last number of the chart.
        traits: any of the traits below by name.

    Raises:
        traitlets.TraitError: a trait is given what it cannot be.
        TypeError: there is no such trait.

    Example:
        >>> chart = CountingChart(1, 120, step=5)
        >>> chart.count()
        5
        >>> chart.count(), chart.counted, chart.next_number
        (10, [5, 10], 15)
    """

    chart = traitlets.Dict(
        help="What was done to the chart: `counted`, the numbers counted so far in their order; "
        "`tapped`, the number tapped last when it was not the next one, else None; `written`, the "
        'digits in hidden cells by number, {"35": "53"}.',
    ).tag(sync=True)
    first = traitlets.Int(1, help="The first number of the chart, 0 or more.").tag(sync=True)
    last = traitlets.Int(
        100, help="The last number of the chart, 10 000 at most; a chart has up to 1001 numbers."
    ).tag(sync=True)
    width = traitlets.Int(10, help="How many numbers a row has, 2 to 20.").tag(sync=True)
    step = traitlets.Int(1, help="From each number of the count to the next, 1 to 1000.").tag(
        sync=True
    )
    start = traitlets.Int(
        None,
        allow_none=True,
        help="The number that the count begins with; None: the first multiple of the step on the "
        "way, 5 for fives on a chart from 1.",
    ).tag(sync=True)
    direction = traitlets.Enum(
        DIRECTIONS, "forward", help="forward: the numbers grow. back: they shrink."
    ).tag(sync=True)
    hidden = Given(
        "none",
        help="What is hidden: none; thirds, every third number; cross; patch, as if torn out; "
        "counts, the numbers of the count; all; or a list of numbers.",
    ).tag(sync=True)
    mode = traitlets.Enum(
        MODES,
        "count",
        help="count: numbers light as they are counted. wipe: they are cleared. write: hidden "
        "cells are to be filled in.",
    ).tag(sync=True)
    line = traitlets.Bool(
        False, help="Whether the numbers are shown as a number line with hops, too."
    ).tag(sync=True)
    beat = traitlets.Int(
        0, help=f"Counts a minute by themselves, up to {FASTEST_BEAT}; 0: there is no beat."
    ).tag(sync=True)
    vocabulary = traitlets.Enum(
        VOCABULARIES, "us", help="us: one hundred five. uk: one hundred and five."
    ).tag(sync=True)
    movable = traitlets.Bool(
        True, help="Whether numbers can be counted and written; if not, it is only to be looked at."
    ).tag(sync=True)
    buttons = traitlets.Bool(True, help="Whether there are buttons to count, undo and reset.").tag(
        sync=True
    )
    panel = traitlets.Bool(
        True, help="Whether there are switches for the numbers, the count and what is hidden."
    ).tag(sync=True)

    def __init__(self, first: int | None = None, last: int | None = None, **traits: Any) -> None:
        ends = {"first": first, "last": last}
        given = {name: end for name, end in ends.items() if end is not None}
        super().__init__(**given, **traits)

    @property
    def settings(self) -> Chart:
        """The numbers of the chart, the count and what is hidden, as `maths` knows them."""
        names = ("first", "last", "width", "step", "start", "direction", "hidden", "mode")
        return Chart(**{name: getattr(self, name) for name in names})

    @property
    def counted(self) -> list[int]:
        """The numbers counted so far, in their order."""
        return list(self.chart["counted"])

    @property
    def next_number(self) -> int | None:
        """The number that is counted next, None at the end."""
        return next_number(self._marks, self.settings)

    @property
    def written(self) -> dict[int, str]:
        """The digits that stand in hidden cells, by their number."""
        return {int(number): digits for number, digits in self.chart["written"].items()}

    @property
    def finished(self) -> bool:
        """Whether all is counted or, in the mode "write", written rightly."""
        return bool(self.facts["finished"])

    @property
    def facts(self) -> dict[str, int | str | bool | None]:
        """What is true of the chart, as goals and mistakes ask for it: see `chart_facts`."""
        return chart_facts(self._marks, self.settings)

    def count(self) -> int | None:
        """Count the next number.

        Returns:
            The number, or None when all is counted.
        """
        coming = self.next_number
        if coming is not None:
            self.tap(coming)
        return coming

    def tap(self, number: int) -> None:
        """Tap a number: the next one is counted, the last one taken back, any other noted.

        Raises:
            ValueError: it is not on the chart.
        """
        settings = self.settings
        check_marks({"tapped": number}, settings)
        self.chart = {**tap(self._marks, number, settings)}

    def write(self, number: int, digits: str) -> None:
        """Write digits into the cell of a number; no digits clear it.

        Raises:
            ValueError: there is no such cell, or these are no digits.
        """
        settings = self.settings
        check_marks({"written": {str(number): digits or "0"}}, settings)
        self.chart = {**write(self._marks, number, digits)}

    def show_range(self, first: int, last: int) -> None:
        """Show other numbers; the marks on those that stay are not changed.

        Example:
            >>> chart = CountingChart()
            >>> chart.show_range(901, 1000)
            >>> chart.next_number
            901
        """
        with self.hold_trait_notifications():
            self.first, self.last = first, last
            if self.start is not None and not first <= self.start <= last:
                self.start = None

    def still(self) -> str:
        """Return a picture of the chart as SVG text, for readers without a live host."""
        return svg_of(chart_drawing(self.settings, self._marks, line=self.line))

    @property
    def _marks(self) -> Marks:
        return {
            "counted": self.chart["counted"],
            "tapped": self.chart["tapped"],
            "written": self.chart["written"],
        }

    @traitlets.default("chart")
    def _untouched(self) -> dict[str, Any]:
        return {**no_marks()}

    @traitlets.validate("chart")
    def _check_chart(self, proposal: Bunch) -> dict[str, Any]:
        with value_errors_as_trait_errors():
            return {**check_marks(proposal["value"], self.settings)}

    @traitlets.validate("first", "last")
    def _check_range(self, proposal: Bunch) -> int:
        ends = {"first": self.first, "last": self.last, proposal["trait"].name: proposal["value"]}
        with value_errors_as_trait_errors():
            check_range(ends["first"], ends["last"])
        return proposal["value"]

    @traitlets.validate("width")
    def _check_width(self, proposal: Bunch) -> int:
        with value_errors_as_trait_errors():
            return check_width(proposal["value"])

    @traitlets.validate("step")
    def _check_step(self, proposal: Bunch) -> int:
        with value_errors_as_trait_errors():
            return check_step(proposal["value"])

    @traitlets.validate("start")
    def _check_start(self, proposal: Bunch) -> int | None:
        with value_errors_as_trait_errors():
            return check_start(proposal["value"], self.first, self.last)

    @traitlets.validate("hidden")
    def _check_hidden(self, proposal: Bunch) -> str | list[int]:
        with value_errors_as_trait_errors():
            return check_hidden(proposal["value"], self.first, self.last)

    @traitlets.validate("beat")
    def _check_beat(self, proposal: Bunch) -> int:
        beat = proposal["value"]
        if isinstance(beat, bool) or not 0 <= beat <= FASTEST_BEAT:
            raise traitlets.TraitError(
                f"A beat is 0 to {FASTEST_BEAT} counts a minute, not {beat!r}; 0 is no beat."
            )
        return beat

    @traitlets.observe("first", "last")
    def _change_numbers(self, _: Bunch) -> None:
        """Drop what is not on the chart with other numbers."""
        on = range(self.first, self.last + 1)
        if self.start is not None and self.start not in on:
            self.start = None
        if isinstance(self.hidden, list):
            self.hidden = [number for number in self.hidden if number in on]
        self.chart = {**marks_left(self._marks, self.settings)}
