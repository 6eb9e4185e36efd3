"""A view that has ended leaves nothing behind: no listener, no observer, nothing that paints."""

from __future__ import annotations

import pytest
from browser.harness import open_widget

from manipulatives import PlaceValueBlocks
from manipulatives.widgets.round.children import MANIPULATIVES

WATCH = """(() => {
  const whole = ResizeObserver;
  window.observers = new Set();
  window.ResizeObserver = class extends whole {
    observe(...args) { window.observers.add(this); super.observe(...args); }
    disconnect() { window.observers.delete(this); super.disconnect(); }
  };
  window.endless = [];
  const listen = EventTarget.prototype.addEventListener;
  EventTarget.prototype.addEventListener = function (name, listener, options) {
    if (this instanceof Node && this.getRootNode() && !options?.signal) window.endless.push(name);
    return listen.call(this, name, listener, options);
  };
})()"""


@pytest.mark.parametrize("kind", MANIPULATIVES.values(), ids=lambda kind: kind.__name__)
def test_a_view_that_has_ended_leaves_nothing_behind(quiet_page, kind):
    quiet_page.add_init_script(WATCH)
    quiet_page.goto("about:blank")
    widget = kind()
    open_widget(quiet_page, widget)
    assert quiet_page.evaluate("kit.listeners()") > len(kind.class_own_traits()) / 2
    assert quiet_page.evaluate("observers.size") == 1
    assert quiet_page.evaluate("endless") == []
    quiet_page.evaluate("kit.end.abort()")
    assert quiet_page.evaluate("kit.listeners()") == 0
    assert quiet_page.evaluate("observers.size") == 0
    before = quiet_page.evaluate("document.querySelector('#place').innerHTML")
    for name in ("panel", "buttons", "vocabulary"):
        quiet_page.evaluate(
            "name => kit.outside(name, kit.get(name) === 'us' ? 'uk' : false)", name
        )
    assert quiet_page.evaluate("document.querySelector('#place').innerHTML") == before


def test_blocks_on_their_way_end_with_their_view(quiet_page):
    open_widget(quiet_page, PlaceValueBlocks(mat=[{"ones": 10}]))
    quiet_page.get_by_role("button", name="10 ones become 1 ten").click()
    assert quiet_page.locator(".blocks-air .block").count() > 0
    quiet_page.evaluate("kit.end.abort()")
    assert quiet_page.locator(".blocks-air .block").count() == 0
