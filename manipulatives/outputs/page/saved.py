"""The widgets of a page as plain data: code once per class, and for each widget what differs.

The input is what Jupyter calls widget state (model id → module, name, state, buffers), taken from
widgets in this process or from a notebook that was run; `saved.js` reads the output.
"""

from __future__ import annotations

import base64
import json
import math
import re
import zlib
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

import ipywidgets

from manipulatives.widgets.assemble import assemble

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    States = Mapping[str, Mapping[str, Any]]

HERE = Path(__file__).parent
_REFERENCES = ("anywidget:", "IPY_MODEL_")
_BOXES = {"BoxModel": "row", "HBoxModel": "row", "VBoxModel": "column"}


def packed(data: Mapping[str, Any]) -> str:
    """Return data compressed for a page: JSON, deflated, in base64.

    Example:
        >>> unpacked(packed({"models": {}}))
        {'models': {}}
    """
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
    return base64.b64encode(zlib.compress(text.encode(), 9)).decode("ascii")


def unpacked(text: str) -> dict[str, Any]:
    """Return the data that `packed` compressed."""
    data: dict[str, Any] = json.loads(zlib.decompress(base64.b64decode(text)))
    return data


def saved_in(page: str) -> dict[str, Any]:
    """Return the widgets that a page carries, from its text.

    Raises:
        ValueError: the text is no page of the kit.
    """
    found = re.search(r'id="kit-saved">([A-Za-z0-9+/=]+)</script>', page)
    if found is None:
        raise ValueError("This text is no page of the kit: it carries no widgets.")
    return unpacked(found[1])


class SavedWidgets:
    """Collects the widgets that a page shows, numbered in the order in which they are added.

    Args:
        states: widget state by model id; it may hold widgets that the page does not show.

    Example:
        >>> esm = "export default { render() {} }"
        >>> state = {"_esm": esm, "_anywidget_id": "market.Bell", "tone": "low"}
        >>> saved = SavedWidgets({"8f0c": {"model_module": "anywidget", "state": state}})
        >>> saved.add("8f0c")
        'm1'
        >>> saved.data()["models"]
        {'m1': {'kind': 'k1'}}
    """

    def __init__(self, states: States) -> None:
        self._states = states
        self._names: dict[str, str] = {}
        self._kinds: dict[tuple[str, str, str], str] = {}
        self._data: dict[str, dict[str, Any]] = {"kinds": {}, "models": {}}

    def can_show(self, model_id: str) -> bool:
        """Whether the page can show this widget without a kernel."""
        return model_id in self._states and _code(self._states[model_id]) is not None

    def add(self, model_id: str) -> str:
        """Add a widget and all that it refers to; return its name on the page."""
        if model_id in self._names:
            return self._names[model_id]
        name = self._names[model_id] = f"m{len(self._names) + 1}"
        given = self._states[model_id]
        code = _code(given)
        if code is None:
            raise KeyError(f"The page has no code for the widget {model_id}.")
        # Its entry comes before those of its children, so that a parent stands before its parts.
        entry: dict[str, Any] = {}
        self._data["models"][name] = entry
        traits = {key: self._renamed(value) for key, value in _traits(given).items()}
        kind = self._kind(given["state"], code, traits)
        usual = self._data["kinds"][kind]["usual"]
        own = {key: value for key, value in traits.items() if not _same(usual.get(key), value)}
        entry["kind"] = kind
        if own:
            entry["own"] = own
        if given.get("buffers"):
            entry["bytes"] = [
                {"path": buffer["path"], "data": buffer["data"]} for buffer in given["buffers"]
            ]
        return name

    def data(self) -> dict[str, Any]:
        """Return everything that was added, ready for JSON."""
        return self._data

    def script(self) -> str:
        """Return it as the text of a script element, compressed; `packed.js` reads it.

        Uncompressed, six manipulatives and a week's tasks would be four times too large for a page.
        """
        return packed(self._data)

    def _kind(self, state: Mapping[str, Any], code: str, traits: dict[str, Any]) -> str:
        # Two classes may have the same name, so the code decides.
        title, css = str(state.get("_anywidget_id", "a box")), str(state.get("_css", ""))
        known = self._kinds.get((title, code, css))
        if known is not None:
            return known
        key = self._kinds[title, code, css] = f"k{len(self._kinds) + 1}"
        kind = {"name": title.rpartition(".")[2], "code": code, "css": css, "usual": traits}
        self._data["kinds"][key] = {part: value for part, value in kind.items() if value != ""}
        return key

    def _renamed(self, value: object) -> object:
        """Return a trait's value with the page's names for the widgets it refers to."""
        match value:
            case str() if value.startswith(_REFERENCES):
                for form in _REFERENCES:
                    child = value.removeprefix(form)
                    if child != value and self.can_show(child):
                        return form + self.add(child)
            case list() | tuple():
                return [self._renamed(part) for part in value]
            case dict():
                return {key: self._renamed(part) for key, part in value.items()}
            case float() if not math.isfinite(value):
                return None  # JSON has no such number
        return value


def with_parts(widgets: Iterable[ipywidgets.Widget]) -> list[ipywidgets.Widget]:
    """Return widgets of this process and all the widgets that they hold, each once."""
    found: dict[str, ipywidgets.Widget] = {}
    waiting = list(widgets)
    while waiting:
        widget = waiting.pop(0)
        if widget.model_id not in found:
            found[widget.model_id] = widget
            waiting += _widgets_in(list(widget.trait_values(sync=True).values()))
    return list(found.values())


def states_of(widgets: Iterable[ipywidgets.Widget]) -> dict[str, Any]:
    """Return the state of widgets as a notebook that was run has it."""
    return ipywidgets.Widget.get_manager_state(widgets=widgets)["state"]


def _widgets_in(value: object) -> Iterator[ipywidgets.Widget]:
    match value:
        case ipywidgets.Widget():
            yield value
        case list() | tuple():
            for part in value:
                yield from _widgets_in(part)
        case dict():
            yield from _widgets_in(list(value.values()))


@cache
def _layout_traits() -> frozenset[str]:
    """Return the traits for the layout in a notebook; a page has a layout of its own."""
    return frozenset(ipywidgets.DOMWidget.class_trait_names(sync=True))


def _traits(given: Mapping[str, Any]) -> dict[str, Any]:
    state = given["state"]
    if given.get("model_name") in _BOXES:
        direction = _BOXES[given["model_name"]]
        return {"children": list(state.get("children", [])), "direction": direction}
    left_out = _layout_traits() | {"_esm", "_css", "_anywidget_id"}
    return {key: value for key, value in sorted(state.items()) if key not in left_out}


def _same(one: object, other: object) -> bool:
    """Whether two values are equal in JSON, where 1 and true differ; in Python they are equal."""
    return json.dumps(one, sort_keys=True) == json.dumps(other, sort_keys=True)


def _code(given: Mapping[str, Any]) -> str | None:
    """Return the JavaScript of a widget, or None for one that a page cannot show."""
    if given.get("model_module") == "anywidget":
        return given["state"].get("_esm")
    if given.get("model_name") in _BOXES:
        return assemble(HERE / "host" / "box.js")
    return None
