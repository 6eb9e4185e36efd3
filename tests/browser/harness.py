"""A bare page with one widget on it, for tests in a browser: no notebook, no kernel.

The widget's text is imported from a `data:` URL, as hosts do, and rendered with a model that
holds plain data and tells its listeners. What the widget does to the model is noted in
`window.kit.sets` (a list of `[name, value]`) and `window.kit.saves` (a number); whoever stands in
for Python sets a trait with `window.kit.outside(name, value)`, and `window.kit.view(element)` shows
the same widget once more.
"""

from __future__ import annotations

import base64
import json
from typing import TYPE_CHECKING, Any

from support.chromium import TWO_FRAMES
from support.files import PACKAGE

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from manipulatives.widgets.manipulative import KitWidget

FONT = PACKAGE / "data" / "font" / "kit-reading.woff2"

MODEL = """
const state = STATE, listeners = new Map();
const tell = (name) => (listeners.get("change:" + name) ?? []).forEach((listener) => listener());
const put = (name, value) => {
  const changed = JSON.stringify(state[name]) !== JSON.stringify(value);
  state[name] = value;
  if (changed) tell(name);
};
const kit = { sets: [], saves: 0, outside: put, ready: false, get: (name) => state[name] };
kit.listeners = () => [...listeners.values()].flat().length;
const model = {
  get: (name) => state[name],
  set(name, value) { kit.sets.push([name, structuredClone(value)]); put(name, value); },
  save_changes() { kit.saves += 1; },
  on(name, listener) { listeners.set(name, [...(listeners.get(name) ?? []), listener]); },
  off(name, listener) {
    listeners.set(name, (listeners.get(name) ?? []).filter((other) => other !== listener));
  },
};
window.kit = kit;
kit.end = new AbortController();
const { default: widget } = await import(CODE);
kit.view = (el) => widget.render({ model, el, signal: kit.end.signal });
await kit.view(document.querySelector("#place"));
await document.fonts.load("20px 'Kit Reading'");
kit.ready = true;
"""


def open_widget(page: Page, widget: KitWidget, *, place: str = "height: 100vh") -> None:
    """Show a widget on a page.

    Args:
        page: an empty page of the browser.
        widget: its class gives code and style, its traits the state to begin with.
        place: the style of the element that it is put in; the screen unless said otherwise.
    """
    page.set_content(widget_page(widget, place))
    page.wait_for_function("window.kit?.ready")
    page.evaluate(TWO_FRAMES)


def widget_page(widget: KitWidget, place: str) -> str:
    """Return the page as HTML text."""
    code = "data:text/javascript;base64," + base64.b64encode(widget._esm.encode()).decode()  # noqa: SLF001 - it is what hosts are sent
    state = {
        name: value
        for name, value in widget.get_state().items()
        if not name.startswith("_") and isinstance(value, (dict, list, str, int, float, type(None)))
    }
    script = MODEL.replace("STATE", in_script(state)).replace("CODE", in_script(code))
    font = base64.b64encode(FONT.read_bytes()).decode()
    return f"""<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>One widget</title>
<style>
@font-face {{ font-family: "Kit Reading"; src: url(data:font/woff2;base64,{font}); }}
body {{ margin: 0; background: #f6f2e8; }}
{widget._css}
</style>
<div id="place" style="{place}"></div>
<script type="module">{script}</script>
</html>"""  # noqa: SLF001 - it is what hosts are sent


def in_script(data: Any) -> str:
    """Return data as JSON that cannot end the script it stands in."""
    return json.dumps(data).replace("<", "\\u003c")
