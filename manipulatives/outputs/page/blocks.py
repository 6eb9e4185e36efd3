"""The pieces that a page is a row of: text, places for widgets, what a program printed or drew."""

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

    Say = Callable[[str], None]

VIEW = "application/vnd.jupyter.widget-view+json"
STATE = "application/vnd.jupyter.widget-state+json"
_PICTURES = ("image/png", "image/jpeg", "image/svg+xml")
_COLOURS = re.compile(r"\x1b\[[0-9;]*m")
_NAMELESS = re.compile(r"<.*>", re.DOTALL)


def words(text: str, pictures: Mapping[str, Mapping[str, str]], say: Say) -> str:
    """Return a text cell as a block; nothing for an empty one."""
    made, left_out = markdown.html(text, pictures)
    for source in left_out:
        name = quoted(source)
        say(f"the picture {name} is not in the notebook itself, so the page cannot carry it")
    return f'<div class="kit-words">{made}</div>' if made else ""


def view(name: str) -> str:
    """Return the place where the host puts a widget."""
    return f'<div class="kit-view" data-kit-view="{escape(name)}"></div>'


def note(sentence: str) -> str:
    """Return a sentence of the page's own about what it cannot show."""
    return f'<p class="kit-note">{escape(sentence)}</p>'


def output(shown: NotebookNode, kept: SavedWidgets, say: Say) -> str:
    """Return what a cell shows as a block; nothing where there is nothing for a reader.

    Args:
        shown: one output of a cell that was run.
        kept: takes the widgets that the page brings to life.
        say: hears what has to be left out.
    """
    match shown.output_type:
        case "stream":
            return _text(shown.text) if shown.name == "stdout" else ""
        case "error":
            return _text(f"{shown.ename}: {shown.evalue}")
    return _widget(shown.data, kept, say) if VIEW in shown.data else _still(shown.data, say)


def _widget(data: Mapping[str, Any], kept: SavedWidgets, say: Say) -> str:
    model_id = data[VIEW].get("model_id", "")
    if kept.can_show(model_id):
        return view(kept.add(model_id))
    say("a widget of another library needs the notebook running, so it stays still on the page")
    return _picture(data) + note("This part moves only in the notebook.")


def _still(data: Mapping[str, Any], say: Say) -> str:
    if "text/markdown" in data:
        return words(data["text/markdown"], {}, say)
    plain = data.get("text/plain", "")
    picture = _picture(data)
    if not picture and "text/html" in data and _NAMELESS.fullmatch(plain):
        say("it shows HTML of its own, which the page leaves out")
        return note("This part can be seen only in the notebook.")
    return picture or _text(plain)


def _text(text: str) -> str:
    plain = _COLOURS.sub("", text).rstrip()
    return f'<pre class="kit-text">{escape(plain)}</pre>' if plain else ""


def _picture(data: Mapping[str, Any]) -> str:
    for kind in _PICTURES:
        if kind in data:
            coded = data[kind] if kind != "image/svg+xml" else _coded(data[kind])
            coded = "".join(coded.split())
            plain = data.get("text/plain", "")
            alt = "" if _NAMELESS.fullmatch(plain) else escape(plain)
            return f'<img class="kit-picture" alt="{alt}" src="data:{kind};base64,{escape(coded)}">'
    return ""


def _coded(text: str) -> str:
    return base64.b64encode(text.encode()).decode("ascii")
