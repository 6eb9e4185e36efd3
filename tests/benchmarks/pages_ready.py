"""How long the pages of a week take to make, and how soon each can be used once it is opened.

    python tests/benchmarks/pages_ready.py

makes the page of every day of the ready week, for the board and for pupils, prints seconds and
kilobytes, then opens each from the disk and prints the milliseconds until the first manipulative is
there and nothing more is to come: at full speed, and with the page's processor slowed down four
times. Each is opened several times and the median counts. Needs Chromium.
"""

from __future__ import annotations

import statistics
import sys
import tempfile
import time
from pathlib import Path

from playwright.sync_api import Browser

sys.path.insert(0, str(Path(__file__).parents[1]))

from manipulatives.outputs.page import page_of_file
from support.chromium import chromium
from support.files import ROOT

OPENINGS = 5
SLOWER = (1, 4)
# Noted in the page itself; its clock begins with the page.
READY = """addEventListener("DOMContentLoaded", () => {
  const look = () => {
    const all = document.querySelector("main:not([aria-busy])");
    if (all?.querySelector(".kit-manipulative")) {
      globalThis.ready = performance.now();
    } else {
      requestAnimationFrame(look);
    }
  };
  look();
});"""


def milliseconds(browser: Browser, file: Path, slower: int) -> float:
    """Open a page and return how long it took until it could be used."""
    page = browser.new_page(viewport={"width": 1920, "height": 1080})
    page.add_init_script(READY)
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slower})
    page.goto(file.as_uri())
    # The page lets nobody wait inside it: its policy refuses code that comes as text.
    while (found := page.evaluate("() => globalThis.ready")) is None:
        page.wait_for_timeout(100)
    page.close()
    return found


def main() -> None:
    """Measure and print."""
    days = sorted((ROOT / "notebooks").glob("week-*.ipynb"))
    with tempfile.TemporaryDirectory() as name, chromium() as browser:
        files = []
        for audience in ("board", "pupils"):
            since = time.perf_counter()
            for day in days:
                files.append(Path(name) / f"{day.stem} for {audience}.html")
                files[-1].write_text(page_of_file(day, audience=audience), "utf-8")
            print(f"{len(days)} pages for {audience}: {time.perf_counter() - since:.1f} s")
        for file in files:
            medians = [
                statistics.median(milliseconds(browser, file, slower) for _ in range(OPENINGS))
                for slower in SLOWER
            ]
            told = ", ".join(
                f"{found:.0f} ms at {slower} times slower"
                for found, slower in zip(medians, SLOWER, strict=True)
            )
            print(f"{file.stem:32} {file.stat().st_size / 1000:.0f} kB, {told}")


if __name__ == "__main__":
    main()
