"""How soon a point that is dragged is seen where the finger is, with everything read out.

    python tests/benchmarks/polygon_paint.py

drags a vertex to and fro with the browser's own pointer, sixty times a second, and prints how long
it takes until a frame shows it there, counted from the pointer's own time stamp (most of which is
waiting for the screen's next frame), and how long the page works for one move. Measured are

* a bare one: an SVG with one dot that follows the pointer and nothing else;
* the kit's paper with 4 and with 24 vertices, all readings and marks shown.

All are measured at full speed and with the page's processor slowed down four times, as on a small
tablet. When all is well, the kit takes at most twice as long as the bare dot, and works less than
a frame (16.7 ms) for a move; nothing fails when it is otherwise. Needs Chromium.
"""

from __future__ import annotations

import math
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

sys.path.insert(0, str(Path(__file__).parents[1]))

from benchmarks.dragging import measure
from browser.harness import open_widget

from manipulatives.widgets.polygon import PolygonDrawer
from manipulatives.widgets.polygon.polygon import READINGS

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

BARE = """<!doctype html><style>body { margin: 0 } svg { width: 100vw; height: 100vh }</style>
<svg><circle class="polygon-point" r="30" style="translate: 700px 384px"/></svg>
<script>
const dot = document.querySelector("circle");
dot.addEventListener("pointerdown", (event) => {
  dot.setPointerCapture(event.pointerId);
  dot.addEventListener("pointermove", ({ clientX, clientY }) => {
    dot.style.translate = `${clientX}px ${clientY}px`;
  });
});
</script>"""
# For each move: its time stamp, how long the page worked until what follows it was laid out, and
# when the browser's main thread was done with the next frame.
RECORDER = """() => {
  const point = document.querySelector(".polygon-point");
  globalThis.noted = { work: [], frames: [] };
  let began = 0;
  document.addEventListener("pointermove", () => { began = performance.now(); }, true);
  document.addEventListener("pointermove", ({ timeStamp }) => {
    const before = point.style.translate;
    noted.work.push(performance.now() - began);
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => noted.frames.push(performance.now() - timeStamp);
      port2.postMessage(before);
    });
  });
}"""
PER_SECOND = 60
MOVES = 240


@dataclass(frozen=True)
class Subject:
    """What is measured: so many vertices, or a bare dot."""

    name: str
    vertices: int


SUBJECTS = (Subject("bare", 0), Subject("4 vertices", 4), Subject("24 vertices", 24))


def ring(many: int) -> list[list[int]]:
    """A regular polygon on plain paper."""
    turns = [math.tau * at / many for at in range(many)]
    return [[round(400 + 330 * math.cos(at)), round(400 + 330 * math.sin(at))] for at in turns]


def begin(page: Page, many: int, slower: int) -> None:
    """Open what is measured: so many vertices, or a bare dot."""
    if many:
        drawer = PolygonDrawer(ring(many), grid="plain", show=list(READINGS), panel=False)
        open_widget(page, drawer)
    else:
        page.set_content(BARE)
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slower})
    page.wait_for_timeout(500)


def drag(browser: Browser, subject: Subject, slower: int) -> tuple[list[float], list[float]]:
    """Milliseconds until the frame, and of work, for each move."""
    page = browser.new_page(viewport={"width": 1024, "height": 768})
    begin(page, subject.vertices, slower)
    box = page.locator(".polygon-point").first.bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x - 30, y)
    page.wait_for_timeout(200)
    page.evaluate(RECORDER)
    begun = time.perf_counter()
    for step in range(1, MOVES + 1):
        time.sleep(max(0, begun + step / PER_SECOND - time.perf_counter()))
        turn = math.tau * step / 60
        page.mouse.move(x - 90 - 60 * math.cos(turn), y + 60 * math.sin(turn))
    page.wait_for_timeout(300)
    noted = page.evaluate("noted")
    moved = page.locator(".polygon-point").first.bounding_box() != box
    page.mouse.up()
    page.close()
    if not moved or len(noted["frames"]) < MOVES / 4:
        raise SystemExit(f"{subject.name}: the point was dragged and hardly moved.")
    return noted["frames"], noted["work"]


if __name__ == "__main__":
    measure(SUBJECTS, drag, second="work")
