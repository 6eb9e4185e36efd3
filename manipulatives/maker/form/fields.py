"""The fields of the form: each with a label that is seen and read aloud."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from html import escape
from typing import Any

import ipywidgets as w

OWN_WIDTH = {"description_width": "initial"}


def text(label: str, *, hint: str = "", at_once: bool = False) -> w.Text:
    """A line to write on; it counts when it is left, or with every letter."""
    return w.Text(description=label, placeholder=hint, continuous_update=at_once, style=OWN_WIDTH)


def number(label: str, low: int, high: int) -> w.BoundedIntText:
    """A whole number in a range."""
    return w.BoundedIntText(
        value=low, description=label, min=low, max=high, continuous_update=False, style=OWN_WIDTH
    )


def choice(label: str, options: Sequence[tuple[str, Any]]) -> w.Dropdown:
    """One of several values; the first one to begin with."""
    return w.Dropdown(description=label, options=list(options), style=OWN_WIDTH)


def listing(label: str, rows: int) -> w.Select:
    """A list in which one item is selected."""
    return w.Select(description=label, options=[], rows=rows, style=OWN_WIDTH)


def button(
    label: str, action: Callable[[], None], *, hint: str = "", main: bool = False
) -> w.Button:
    """Something to press."""
    made = w.Button(description=label, tooltip=hint or label)
    made.on_click(lambda _: action())
    if main:
        made.add_class("maker-main")
    return made


def tick(label: str, *, on: bool = False) -> w.Checkbox:
    """A box to tick."""
    return w.Checkbox(value=on, description=label, indent=False)


def words(content: str = "", *, kind: str = "p") -> w.HTML:
    """A text; what it says is text, never HTML."""
    made = w.HTML()
    set_text(made, content, kind=kind)
    return made


def set_text(place: w.HTML, content: str, answer: str = "", *, kind: str = "p") -> None:
    """Show another text, with an answer set apart from it."""
    apart = f' <span class="maker-answer">{escape(answer)}</span>' if answer else ""
    place.value = f"<{kind}>{escape(content)}{apart}</{kind}>" if content else ""


def row(*children: w.Widget) -> w.HBox:
    """Fields side by side, in as many lines as they need."""
    made = w.HBox(list(children))
    made.add_class("maker-row")
    return made


def panel(title: str, name: str, *children: w.Widget) -> w.VBox:
    """A part of the form under its heading."""
    made = w.VBox([words(title, kind="h3"), *children])
    made.add_class("maker-panel")
    made.add_class(f"maker-{name}")
    return made


def set_options(place: w.Dropdown | w.Select, options: Sequence[tuple[str, Any]]) -> None:
    """Give a list other options, unless it has them already: the scroll position stays."""
    if tuple(place.options) != tuple(options):
        place.options = tuple(options)


class PausableObserver:
    """Observes widgets, except while the form itself sets their values.

    Example:
        >>> observer = PausableObserver()
        >>> with observer.paused():
        ...     observer.is_paused
        True
    """

    def __init__(self) -> None:
        self.is_paused = False

    @contextmanager
    def paused(self) -> Iterator[None]:
        """Call nothing inside the block."""
        before, self.is_paused = self.is_paused, True
        try:
            yield
        finally:
            self.is_paused = before

    def observe(
        self, widget: w.Widget, callback: Callable[[Any], None], trait: str = "value"
    ) -> None:
        """Call a function whenever somebody changes a widget."""

        def on_change(change: Any) -> None:  # noqa: ANN401 - what traitlets hands over
            if not self.is_paused:
                callback(change["new"])

        widget.observe(on_change, names=trait)
