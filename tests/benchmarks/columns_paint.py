"""How long the column board takes to show what is pressed, beside a page that does nothing else.

    python tests/benchmarks/columns_paint.py

prints, at a processor four times slower, the milliseconds from a key to the end of its frame's
style and layout (the mean of 240 keys) on the largest sum that there is, with blocks and without,
and the same for a step of the showing; and how many times that is what one digit in one bare box
takes.
"""

from __future__ import annotations

import sys
from pathlib import Path

from playwright.sync_api import Page

sys.path.insert(0, str(Path(__file__).parents[1]))

from browser.harness import open_widget

from manipulatives.widgets.columns import ColumnBoard
from support.chromium import chromium

LARGEST = "9876 + 5432 + 1098 + 7654"
TIMES = 240

# Each press: the work of its listeners, and the style and layout that follow from it. All are
# timed together, for the browser's clock is too coarse for one.
MEASURE = """([what, times]) => {
  const begin = performance.now();
  for (let at = 0; at < times; at += 1) {
    const key = String(1 + at % 9);
    if (what === "bare") {
      document.querySelector("#box").textContent = key;
    } else if (what === "step") {
      document.querySelector(".columns-stepper button:nth-child(" + (at % 2 ? 1 : 2) + ")").click();
    } else {
      const target = document.querySelector("[role=gridcell][tabindex='0']");
      target.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true }));
    }
    document.documentElement.getBoundingClientRect();
  }
  return (performance.now() - begin) / times;
}"""


def mean(page: Page, what: str) -> float:
    """Return the mean time of a press in milliseconds."""
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": 4})
    spent = page.evaluate(MEASURE, [what, TIMES])
    session.send("Emulation.setCPUThrottlingRate", {"rate": 1})
    return spent


def main() -> None:
    """Measure and print."""
    with chromium() as browser:
        page = browser.new_page(viewport={"width": 1920, "height": 1080})
        page.set_content("<div id='box' style='font-size: 90px'>0</div>")
        bare = mean(page, "bare")
        print(f"one digit in a bare box      {bare:6.2f} ms")
        for name, what, traits in (
            ("a key, blocks shown", "key", {}),
            ("a key, no blocks", "key", {"blocks": False}),
            ("a step of the showing", "step", {"mode": "show"}),
        ):
            open_widget(page, ColumnBoard(LARGEST, **traits))
            spent = mean(page, what)
            print(f"{name:28} {spent:6.2f} ms, {spent / bare:6.0f} times the bare box")


if __name__ == "__main__":
    main()
