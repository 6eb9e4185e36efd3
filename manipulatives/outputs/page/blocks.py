"""The blocks of a page: text, places for widgets, and what a program printed or drew."""

from __future__ import annotations

import base64
import re
from html import escape
from typing import TYPE_CHECKING, Any

from manipulatives.lessons.problem import quoted
from manipulatives.notebook import markdown

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from nbformat import NotebookNode

    from manipulatives.outputs.page.saved import SavedWidgets

    Report = Callable[[str], None]

VIEW = "application/vnd.jupyter.widget-view+json"
STATE = "application/vnd.jupyter.widget-state+json"
_PICTURES = ("image/png", "image/jpeg", "image/svg+xml")
_COLOUR_CODES = re.compile(r"\x1b\[[0-9;]*m")
_REPR = re.compile(r"<.*>", re.DOTALL)


def words(text: str, pictures: Mapping[str, Mapping[str, str]], report: Report) -> str:
    """Return a text cell as a block, "" for an empty one."""
    made, left_out = markdown.html(text, pictures)
    for source in left_out:
        name = quoted(source)
        report(f"the picture {name} is not in the notebook itself, so the page cannot carry it")
    return f'<div class="kit-words">{made}</div>' if made else ""


def view(name: str) -> str:
    """Return the element into which the host renders a widget."""
    return f'<div class="kit-view" data-kit-view="{escape(name)}"></div>'


def note(sentence: str) -> str:
    """Return a sentence in which the page says what it cannot show."""
    return f'<p class="kit-note">{escape(sentence)}</p>'


def output(shown: NotebookNode, saved: SavedWidgets, report: Report) -> str:
    """Return an output of a cell as a block, "" when there is nothing to read in it.

    Args:
        shown: one output of a cell that was run.
        saved: collects the widgets of the page.
        report: called with a sentence about each thing that has to be left out.
    """
    match shown.output_type:
        case "stream":
            return _text(shown.text) if shown.name == "stdout" else ""
        case "error":
            return _text(f"{shown.ename}: {shown.evalue}")
    return _widget(shown.data, saved, report) if VIEW in shown.data else _static(shown.data, report)


def _widget(data: Mapping[str, Any], saved: SavedWidgets, report: Report) -> str:
    model_id = data[VIEW].get("model_id", "")
    if saved.can_show(model_id):
        return view(saved.add(model_id))
    report("a widget of another library needs the notebook running, so it stays still on the page")
    return _picture(data) + note("This part moves only in the notebook.")


def _static(data: Mapping[str, Any], report: Report) -> str:
    if "text/markdown" in data:
        return words(data["text/markdown"], {}, report)
    plain = data.get("text/plain", "")
    picture = _picture(data)
    if not picture and "text/html" in data and _REPR.fullmatch(plain):
        report("it shows HTML of its own, which the page leaves out")
        return note("This part can be seen only in the notebook.")
    return picture or _text(plain)


def _text(text: str) -> str:
    plain = _COLOUR_CODES.sub("", text).rstrip()
    return f'<pre class="kit-text">{escape(plain)}</pre>' if plain else ""


def _picture(data: Mapping[str, Any]) -> str:
    for kind in _PICTURES:
        if kind in data:
            coded = data[kind] if kind != "image/svg+xml" else _in_base64(data[kind])
            coded = "".join(coded.split())
            plain = data.get("text/plain", "")
            alt = "" if _REPR.fullmatch(plain) else escape(plain)
            return f'<img class="kit-picture" alt="{alt}" src="data:{kind};base64,{escape(coded)}">'
    return ""


def _in_base64(text: str) -> str:
    return base64.b64encode(text.encode()).decode("ascii")
