"""How soon a coin in the hand is seen where the finger is.

    python tests/benchmarks/coins_paint.py

takes a coin and moves it about with the browser's own pointer, sixty times a second, and prints how
long it takes until a frame shows it there: from the pointer's own time stamp, most of which is
waiting for the screen's next frame, and from the moment the page hears of it, which is the widget's
own share. Measured are

* a bare one: an SVG with one disc that follows the pointer and nothing else;
* the kit's mat with 4 and with 60 coins.

All are measured at full speed and with the page's processor slowed down four times, as on a small
tablet; then how long the page works when one of 60 coins is put down, and when all are lined up.
When all is well, the kit takes at most twice as long as the bare disc; nothing fails when it is
otherwise. Needs Chromium.
"""

from __future__ import annotations

import statistics
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

sys.path.insert(0, str(Path(__file__).parents[1]))

from benchmarks.dragging import measure
from browser.harness import open_widget

from manipulatives.widgets.coins import CoinTray

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

BARE = """<!doctype html><style>body { margin: 0 } svg { width: 100vw; height: 100vh }</style>
<svg><circle class="seen" r="40" style="transform: translate(512px, 384px)"/></svg>
<script>
const disc = document.querySelector("circle");
disc.addEventListener("pointerdown", (event) => {
  disc.setPointerCapture(event.pointerId);
  disc.addEventListener("pointermove", ({ clientX, clientY }) => {
    disc.style.transform = `translate(${clientX}px, ${clientY}px)`;
  });
});
</script>"""
# A frame counts as painted when the browser's main thread has done its part of it: at the first
# task after the animation frame.
RECORDER = """(selector) => {
  globalThis.recorder = { moves: [], frames: [], going: true };
  addEventListener("pointermove", ({ clientX, timeStamp }) => {
    recorder.moves.push({ at: timeStamp, heard: performance.now(), x: clientX });
  }, { capture: true });
  const shown = () => parseFloat(document.querySelector(selector).style.transform.slice(10));
  let last = shown();
  const look = () => {
    const x = shown();
    if (x !== last) {
      last = x;
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => recorder.frames.push({ at: performance.now(), x });
      port2.postMessage(null);
    }
    if (recorder.going) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
  return last;
}"""
BUSY = """(key) => {
  const began = performance.now();
  document.activeElement.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true,
    shiftKey: key.startsWith("Arrow") }));
  document.body.getBoundingClientRect();
  return performance.now() - began;
}"""
LINE_UP = """() => {
  const began = performance.now();
  [...document.querySelectorAll("button")].find(({ textContent }) => textContent === "Line up")
    .click();
  document.body.getBoundingClientRect();
  return performance.now() - began;
}"""
PER_SECOND = 60
MOVES = 240
LATEST = 500


@dataclass(frozen=True)
class Subject:
    """What is measured: coins, or None for the bare disc."""

    name: str
    coins: list[str] | None


SIXTY = ["25"] * 5 + ["10"] * 15 + ["5"] * 10 + ["1"] * 30
SUBJECTS = (
    Subject("bare", None),
    Subject("4 coins", ["25", "10", "5", "1"]),
    Subject("60 coins", SIXTY),
)


def begin(page: Page, coins: list[str] | None, slower: int) -> None:
    """Open what is measured."""
    if coins is None:
        page.set_content(BARE)
    else:
        open_widget(page, CoinTray(coins, panel=False))
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slower})
    page.wait_for_timeout(500)


def drag(browser: Browser, subject: Subject, slower: int) -> tuple[list[float], list[float]]:
    """Milliseconds until the frame, from the pointer's time stamp and from when it was heard of."""
    page = browser.new_page(viewport={"width": 1024, "height": 768})
    begin(page, subject.coins, slower)
    taken, seen = (
        (".seen", ".seen") if subject.coins is None else ("[role=option]", ".coins-floating")
    )
    box = page.locator(taken).first.bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + 50, y + 50)
    page.wait_for_timeout(200)
    # How far what is seen of the coin is from the pointer.
    shift = page.evaluate(RECORDER, seen) - (x + 50)
    begun = time.perf_counter()
    for step in range(1, MOVES + 1):
        time.sleep(max(0, begun + step / PER_SECOND - time.perf_counter()))
        # Every place across is passed once: what is seen tells which move it shows.
        page.mouse.move(x + 60 + step, y + step % 100)
    page.wait_for_timeout(500)
    noted = page.evaluate("(recorder.going = false, recorder)")
    page.mouse.up()
    page.close()
    lags: tuple[list[float], list[float]] = ([], [])
    for frame in noted["frames"]:
        at = frame["x"] - shift
        moves = [m for m in noted["moves"] if abs(m["x"] - at) < 0.4 and m["at"] <= frame["at"]]
        if moves and frame["at"] - moves[-1]["at"] < LATEST:
            lags[0].append(frame["at"] - moves[-1]["at"])
            lags[1].append(frame["at"] - moves[-1]["heard"])
    if len(lags[0]) < MOVES / 4:
        raise SystemExit(f"{subject.name}: the coin was dragged and hardly moved.")
    return lags


def work(browser: Browser, slower: int) -> None:
    """Print how long the page works at a step with 60 coins."""
    page = browser.new_page(viewport={"width": 1024, "height": 768})
    begin(page, SIXTY, slower)
    page.locator("[role=option]").last.focus()
    took = [page.evaluate(BUSY, key) for key in ("ArrowUp", "ArrowRight", "ArrowDown") * 3]
    print(f"{'a coin put down':24}{statistics.median(took):8.1f} ms of work")
    took = []
    for _ in range(5):
        page.evaluate(BUSY, "ArrowRight")
        took.append(page.evaluate(LINE_UP))
    print(f"{'all lined up':24}{statistics.median(took):8.1f} ms of work")
    page.close()


if __name__ == "__main__":
    measure(SUBJECTS, drag, work)
