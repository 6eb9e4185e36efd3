"""The pieces of the form: each with a label that is seen and read aloud."""

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
    """A list of which one is chosen."""
    return w.Select(description=label, options=[], rows=rows, style=OWN_WIDTH)


def button(label: str, act: Callable[[], None], *, hint: str = "", main: bool = False) -> w.Button:
    """Something to press."""
    made = w.Button(description=label, tooltip=hint or label)
    made.on_click(lambda _: act())
    if main:
        made.add_class("maker-main")
    return made


def tick(label: str, *, on: bool = False) -> w.Checkbox:
    """A box to tick."""
    return w.Checkbox(value=on, description=label, indent=False)


def words(content: str = "", *, kind: str = "p") -> w.HTML:
    """A text; what it says is text, never HTML."""
    made = w.HTML()
    say(made, content, kind=kind)
    return made


def say(place: w.HTML, content: str, answer: str = "", *, kind: str = "p") -> None:
    """Put another text in its place, with an answer set apart from it."""
    apart = f' <span class="maker-answer">{escape(answer)}</span>' if answer else ""
    place.value = f"<{kind}>{escape(content)}{apart}</{kind}>" if content else ""


def row(*children: w.Widget) -> w.HBox:
    """Pieces side by side, in as many lines as they need."""
    made = w.HBox(list(children))
    made.add_class("maker-row")
    return made


def panel(title: str, name: str, *children: w.Widget) -> w.VBox:
    """A part of the form under its heading."""
    made = w.VBox([words(title, kind="h3"), *children])
    made.add_class("maker-panel")
    made.add_class(f"maker-{name}")
    return made


def options_are(place: w.Dropdown | w.Select, options: Sequence[tuple[str, Any]]) -> None:
    """Give a list other options, unless it has them already: its place in the list stays."""
    if tuple(place.options) != tuple(options):
        place.options = tuple(options)


class Quiet:
    """Lets values be shown without being heard as if somebody had changed them.

    Example:
        >>> quiet = Quiet()
        >>> with quiet.showing():
        ...     quiet.is_showing
        True
    """

    def __init__(self) -> None:
        self.is_showing = False

    @contextmanager
    def showing(self) -> Iterator[None]:
        """Be quiet inside the block."""
        before, self.is_showing = self.is_showing, True
        try:
            yield
        finally:
            self.is_showing = before

    def on(self, widget: w.Widget, act: Callable[[Any], None], what: str = "value") -> None:
        """Do something whenever somebody changes a widget."""

        def heard(change: Any) -> None:  # noqa: ANN401 - what traitlets tells
            if not self.is_showing:
                act(change["new"])

        widget.observe(heard, names=what)
