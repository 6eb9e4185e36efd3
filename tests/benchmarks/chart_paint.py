"""How soon a count on the chart is seen.

    python tests/benchmarks/chart_paint.py

counts on three pages with the space bar, once a count is painted the next: a bare one, a thousand
cells of which each press lights one and nothing else; the kit's chart of a hundred numbers; the
kit's of a thousand, with the number line. It prints for each how long the page's own work took and
how long it was from the key to the frame that shows the count, at full speed and with the processor
slowed down four times, and how many times the bare page's these are. Nothing fails when they are
more; 16 ms of work is what fits into one frame of a screen. Needs Chromium.
"""

from __future__ import annotations

import statistics
import sys
from pathlib import Path
from typing import TYPE_CHECKING

sys.path.insert(0, str(Path(__file__).parents[1]))

from browser.harness import widget_page

from manipulatives.widgets.chart import CountingChart
from support.chromium import chromium

if TYPE_CHECKING:
    from playwright.sync_api import Page

BARE = """<!doctype html>
<style>
#grid { display: grid; grid-template-columns: repeat(10, 60px); height: 900px; overflow: auto; }
.lit { background: #d5e9ea; }
</style>
<div id="grid" tabindex="0"></div>
<script>
const grid = document.querySelector("#grid");
for (let number = 1; number <= 1000; number += 1) {
  grid.append(Object.assign(document.createElement("div"), { textContent: number }));
}
let at = 0;
grid.addEventListener("keydown", () => grid.children[at++].classList.add("lit"));
</script>"""
# Work is over when all who listen have heard the key; the frame is there when a message sent just
# before it was drawn comes back.
RECORD = """() => {
  window.times = [];
  let from = 0;
  document.addEventListener("keydown", (event) => { from = event.timeStamp; }, true);
  document.addEventListener("keydown", () => {
    window.begun = performance.now();
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => window.times.push([window.worked, performance.now() - from]);
      channel.port2.postMessage(null);
    });
  }, true);
}"""
WORK = """(selector) => {
  const element = document.querySelector(selector);
  const stop = Event.prototype.stopPropagation;
  const done = () => { window.worked = performance.now() - window.begun; };
  Event.prototype.stopPropagation = function () { done(); return stop.call(this); };
  element.addEventListener("keydown", done);
}"""
PRESSES = 60
SLOWER = (1, 4)


def measured(page: Page, selector: str, slower: int) -> tuple[float, float]:
    """Count and return the medians of the page's own work and of the way to the frame, in ms."""
    page.evaluate(RECORD)
    page.evaluate(WORK, selector)
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": slower})
    page.locator(selector).focus()
    for press in range(1, PRESSES + 1):
        page.keyboard.press("Space")
        page.wait_for_function("many => times.length >= many", arg=press)
    session.send("Emulation.setCPUThrottlingRate", {"rate": 1})
    times = page.evaluate("times")
    return tuple(statistics.median(column) for column in zip(*times, strict=True))


def main() -> None:
    """Measure all, and print what was found."""
    place = "height: 100vh"
    pages = {
        "bare, 1000 cells": (BARE, "#grid"),
        "chart of 100": (
            widget_page(CountingChart(1, 100, panel=False), place),
            "[tabindex='0'].chart-cell",
        ),
        "chart of 1000 with line": (
            widget_page(CountingChart(1, 1000, panel=False, line=True), place),
            "[tabindex='0'].chart-cell",
        ),
    }
    with chromium() as browser:
        for slower in SLOWER:
            print(f"processor slowed down {slower} times")
            bare: tuple[float, float] | None = None
            for name, (text, selector) in pages.items():
                page = browser.new_page(viewport={"width": 1920, "height": 1080})
                page.set_content(text)
                if "window.kit" in text:
                    page.wait_for_function("window.kit?.ready")
                work, frame = measured(page, selector, slower)
                bare = bare or (work, frame)
                print(
                    f"  {name:24} work {work:5.1f} ms, to the frame {frame:5.1f} ms "
                    f"({frame / bare[1]:.1f} times the bare page)"
                )
                page.close()


if __name__ == "__main__":
    main()
