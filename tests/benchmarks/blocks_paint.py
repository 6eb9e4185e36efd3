"""How soon a block in the hand is seen where the finger is.

    python tests/benchmarks/blocks_paint.py

takes a block and moves it to and fro with the browser's own pointer, sixty times a second, and
prints how long it takes until a frame shows it there: from the pointer's own time stamp, most of
which is waiting for the screen's next frame, and from the moment the page hears of it, which is the
widget's own share. Measured are

* a bare one: an SVG with one square that follows the pointer and nothing else;
* the kit's mat with 12, with 200 and with the 36 blocks of 9999;
* 9999 ones, most of them in boxes.

All are measured at full speed and with the page's processor slowed down four times, as on a small
tablet; then how long the page works when a ten breaks and when ten ones become a ten. When all is
well, the kit takes at most twice as long as the bare square; nothing fails when it is otherwise.
Needs Chromium.
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

from manipulatives.widgets.blocks import PlaceValueBlocks

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

BARE = """<!doctype html><style>svg { width: 100vw; height: 100vh }</style>
<svg><rect class="blocks-hand" x="0" y="0" width="40" height="40" transform="translate(0 0)"/></svg>
<script>
const hand = document.querySelector("rect");
hand.addEventListener("pointerdown", (event) => {
  hand.setPointerCapture(event.pointerId);
  hand.addEventListener("pointermove", ({ clientX, clientY }) => {
    const to = [clientX - event.clientX, clientY - event.clientY];
    hand.style.transform = `translate(${to[0]}px,${to[1]}px)`;
  });
});
</script>"""
RECORDER = """(from) => {
  globalThis.recorder = { moves: [], frames: [], going: true };
  addEventListener("pointermove", ({ clientX, timeStamp }) => {
    recorder.moves.push({ at: timeStamp, heard: performance.now(), x: Math.round(clientX - from) });
  }, { capture: true });
  const hand = document.querySelector(".blocks-hand");
  const shown = () => Math.round(parseFloat(hand.style.transform.slice(10)));
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
}"""
BUSY = """(press) => new Promise((done) => {
  const began = performance.now();
  document.querySelector(`[aria-label="${press}"]`).click();
  document.body.getBoundingClientRect();
  done(performance.now() - began);
})"""
PER_SECOND = 60
MOVES = 240
FAR = 300
LATEST = 500


@dataclass(frozen=True)
class Subject:
    """What is measured, and which block is taken."""

    name: str
    blocks: dict[str, int] | None
    taken: str = ".blocks-hand"


SUBJECTS = (
    Subject("bare", None),
    Subject("12 blocks", {"hundreds": 3, "tens": 4, "ones": 5}, ".block-ones"),
    Subject("200 blocks", {"hundreds": 9, "tens": 91, "ones": 100}, ".block-ones"),
    Subject("9999", {"thousands": 9, "hundreds": 9, "tens": 9, "ones": 9}, ".block-hundreds"),
    Subject("9999 ones", {"ones": 9999}, ".block-ones"),
)


def begin(page: Page, subject: Subject, slower: int) -> None:
    """Open what is measured."""
    if subject.blocks is None:
        page.set_content(BARE)
    else:
        open_widget(page, PlaceValueBlocks(mat=[subject.blocks], places=4))
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slower})
    page.wait_for_timeout(500)


def drag(browser: Browser, subject: Subject, slower: int) -> tuple[list[float], list[float]]:
    """Milliseconds until the frame, from the pointer's time stamp and from when it was heard of."""
    page = browser.new_page(viewport={"width": 1024, "height": 768})
    begin(page, subject, slower)
    inside = ".blocks-field " if subject.blocks else ""
    box = page.locator(inside + subject.taken).last.bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.evaluate(RECORDER, x)
    begun = time.perf_counter()
    for step in range(1, MOVES + 1):
        time.sleep(max(0, begun + step / PER_SECOND - time.perf_counter()))
        # To and fro, every place once: what is seen tells which move it shows.
        page.mouse.move(x - (step * 7) % FAR, y + step % 100)
    page.wait_for_timeout(500)
    seen = page.evaluate("(recorder.going = false, recorder)")
    page.mouse.up()
    page.close()
    lags: tuple[list[float], list[float]] = ([], [])
    for frame in seen["frames"]:
        moves = [m for m in seen["moves"] if m["x"] == frame["x"] and m["at"] <= frame["at"]]
        if moves and frame["at"] - moves[-1]["at"] < LATEST:
            lags[0].append(frame["at"] - moves[-1]["at"])
            lags[1].append(frame["at"] - moves[-1]["heard"])
    if len(lags[0]) < MOVES / 4:
        raise SystemExit(f"{subject.name}: the block was dragged and hardly moved.")
    return lags


def trade(browser: Browser, slower: int) -> None:
    """Print how long the page works at a trade with about 200 blocks."""
    page = browser.new_page(viewport={"width": 1024, "height": 768})
    begin(page, Subject("", {"hundreds": 9, "tens": 81, "ones": 100}), slower)
    for press in ("1 ten becomes 10 ones", "10 ones become 1 ten"):
        took = [page.evaluate(BUSY, press) for _ in range(5)]
        print(f"{press:24}{statistics.median(took):8.1f} ms of work")
    page.close()


if __name__ == "__main__":
    measure(SUBJECTS, drag, trade)
