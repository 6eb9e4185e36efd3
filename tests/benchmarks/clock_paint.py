"""How soon a finger's move on the clock is seen.

    python tests/benchmarks/clock_paint.py

drags the minute hand of four clocks round and round with the browser's own pointer, a minute at
a time and sixty times a second, and prints for each how long it takes until a frame shows the
hand there: from the pointer's own time stamp, most of which is waiting for the screen's next
frame, and from the moment the page hears of it, which is the clock's own share:

* a bare one: an SVG with two hands and nothing else;
* the kit's, on a page from disk;
* the kit's, served by Voila;
* one of the same look drawn by matplotlib through ipympl, served by Voila.

All four are measured at full speed and with the page's processor slowed down four times, as on a
small tablet (a kernel keeps its speed). When all is well, the kit takes at most twice as long as
the bare clock, and the plotted one ten times as long as the kit (five times when slowed down);
nothing fails when it is otherwise. Needs Chromium and `pip install -e ".[test,benchmark]"`.
"""

from __future__ import annotations

import argparse
import contextlib
import importlib.util
import math
import socket
import statistics
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import nbformat
from nbformat.v4 import new_code_cell, new_notebook
from playwright.sync_api import sync_playwright

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE.parent))

from support.chromium import REMEDY, arguments, find_chromium, keep_inside  # noqa: E402 - just made reachable

if TYPE_CHECKING:
    from collections.abc import Iterator

    from playwright.sync_api import Browser, Page

RECORDER = (HERE / "clock" / "recorder.js").read_text("utf-8")
KIT = "from manipulatives import Clock\nClock(time='4:00', snap=1)"
TURNS = 3
RUNS = 3
PER_SECOND = 60
# A frame later than this belongs to another turn of the hand.
LATEST = 900
SLOWER = (1, 4)

# Where the dial is and where its hand is taken, and which minute is shown just now.
SVG_SHOWN = """() => {
  const { a, b } = new DOMMatrix(getComputedStyle(document.querySelector(HAND)).transform);
  return Math.round((Math.atan2(b, a) * 30) / Math.PI + 60) % 60;
}"""
# The hand is the one red thing on the canvas; its pixels are looked at where the finger holds it,
# and only after something was drawn.
CANVAS_SHOWN = """(() => {
  const canvas = document.querySelector(".jupyter-matplotlib canvas");
  const context = canvas.getContext("2d");
  const draw = context.drawImage.bind(context);
  let drawn = true;
  let minute = null;
  context.drawImage = (...given) => { drawn = true; draw(...given); };
  return () => {
    if (!drawn) return minute;
    drawn = false;
    const { width, height } = canvas;
    const { data } = context.getImageData(0, 0, width, height);
    for (let at = 0; at < 60; at += 1) {
      const x = Math.round(width / 2 + 0.3 * width * Math.sin((at * Math.PI) / 30));
      const y = Math.round(height / 2 - 0.3 * height * Math.cos((at * Math.PI) / 30));
      const [red, green, blue] = data.subarray(4 * (y * width + x));
      if (red > 200 && green < 60 && blue < 60) minute = at;
    }
    return minute;
  };
})()"""
BOX = """(selector) => {
  const { x, y, width, height } = document.querySelector(selector).getBoundingClientRect();
  return { x: x + width / 2, y: y + height / 2, width };
}"""


@dataclass(frozen=True)
class Subject:
    """A clock to measure: its address, its dial, its grip (or how far out it is) and its hand."""

    name: str
    address: str
    dial: str
    grip: str | float
    shown: str


@dataclass(frozen=True)
class Finding:
    """Milliseconds until the frame, and how many frames a second showed another minute."""

    stamped: list[float]
    heard: list[float]
    rate: float

    @classmethod
    def of_all(cls, runs: list[Finding]) -> Finding:
        """Several runs as one."""
        return cls(
            [lag for run in runs for lag in run.stamped],
            [lag for run in runs for lag in run.heard],
            statistics.mean(run.rate for run in runs),
        )

    def row(self) -> str:
        """The medians and what nineteen of twenty do not exceed."""
        return (
            "".join(
                f"{statistics.median(lags):11.1f}{statistics.quantiles(lags, n=20)[-1]:8.1f}"
                for lags in (self.stamped, self.heard)
            )
            + f"{self.rate:10.1f}"
        )


def measure(browser: Browser, subject: Subject, slower: int) -> Finding:
    """Drag a clock's minute hand round and see when it shows."""
    context = browser.new_context(viewport={"width": 1024, "height": 768})
    # What a stock template asks of others is refused at once and does not count here.
    keep_inside(context, [])
    page = context.new_page()
    page.set_default_timeout(60_000)
    page.goto(subject.address)
    page.wait_for_selector(subject.dial)
    page.wait_for_timeout(2000)
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slower})
    centre = page.evaluate(BOX, subject.dial)
    if isinstance(subject.grip, float):
        radius = subject.grip * centre["width"]
    else:
        grip = page.evaluate(BOX, subject.grip)
        radius = math.dist((centre["x"], centre["y"]), (grip["x"], grip["y"]))
    page.evaluate(RECORDER)
    point(page, centre, radius, 0)
    page.mouse.down()
    page.evaluate(f"recorder.begin({{ x: {centre['x']}, y: {centre['y']} }}, {subject.shown})")
    begun = time.perf_counter()
    for step in range(1, 60 * TURNS + 1):
        time.sleep(max(0, begun + step / PER_SECOND - time.perf_counter()))
        point(page, centre, radius, step)
    took = time.perf_counter() - begun
    page.wait_for_timeout(1000)
    seen = page.evaluate("recorder.end()")
    page.mouse.up()
    context.close()
    lags = [list(lags_of(seen["moves"], seen["frames"], since)) for since in ("at", "heard")]
    if len(lags[0]) < TURNS:
        raise SystemExit(f"{subject.name}: the hand was dragged and hardly moved.")
    return Finding(*lags, len(seen["frames"]) / took)


def point(page: Page, centre: dict[str, float], radius: float, minute: int) -> None:
    """Move the pointer to a minute."""
    angle = minute * math.pi / 30
    page.mouse.move(centre["x"] + radius * math.sin(angle), centre["y"] - radius * math.cos(angle))


def lags_of(moves: list[dict], frames: list[dict], since: str) -> Iterator[float]:
    """For each frame, how long ago the pointer was last where the frame shows it."""
    for frame in frames:
        at = [m[since] for m in moves if m["minute"] == frame["minute"] and m[since] <= frame["at"]]
        if at and frame["at"] - at[-1] < LATEST:
            yield frame["at"] - at[-1]


@contextlib.contextmanager
def served(folder: Path, *cells: str) -> Iterator[str]:
    """The address of a notebook that Voila serves."""
    notebook = new_notebook(cells=[new_code_cell(cell) for cell in cells])
    path = folder / "clock.ipynb"
    nbformat.write(notebook, path)
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    server = subprocess.Popen(
        [sys.executable, "-m", "voila", path, "--no-browser", f"--port={port}"],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        cwd=folder,
    )
    address = f"http://127.0.0.1:{port}/"
    try:
        for _ in range(120):
            with contextlib.suppress(urllib.error.URLError, ConnectionError):
                urllib.request.urlopen(f"{address}voila/static/favicons/favicon.ico")  # noqa: S310 - of this machine
                break
            time.sleep(0.25)
        yield address
    finally:
        server.terminate()
        server.wait(20)


def subjects(folder: Path, stack: contextlib.ExitStack) -> Iterator[Subject]:
    """The four clocks, ready to be opened."""
    bare = SVG_SHOWN.replace("HAND", '"#minute"')
    kit = SVG_SHOWN.replace("HAND", '"svg .clock-minute"')
    kit_parts = (".clock-disc", "svg .clock-minute .kit-grip", kit)
    yield Subject("bare", (HERE / "clock" / "bare.html").as_uri(), "svg", "#grip", bare)
    yield Subject("kit, page", kit_page(folder), *kit_parts)
    for name in ("voila", "plotted"):
        (folder / name).mkdir()
    address = stack.enter_context(served(folder / "voila", KIT))
    yield Subject("kit, Voila", address, *kit_parts)
    plotted = (HERE / "clock" / "plotted.py").read_text("utf-8")
    cells = ("%matplotlib widget", plotted)
    address = stack.enter_context(served(folder / "plotted", *cells))
    yield Subject("ipympl, Voila", address, ".jupyter-matplotlib canvas", 0.3, CANVAS_SHOWN)


def kit_page(folder: Path) -> str:
    """The address of a page from disk with the kit's clock on it."""
    notebook = folder / "page.ipynb"
    nbformat.write(new_notebook(cells=[new_code_cell(cell) for cell in KIT.split("\n")]), notebook)
    page = folder / "page.html"
    subprocess.run(
        [sys.executable, "-m", "manipulatives", "page", notebook, "-o", page], check=True
    )
    return page.as_uri()


def main() -> None:
    """Measure and print."""
    if importlib.util.find_spec("ipympl") is None:
        raise SystemExit('ipympl is missing: pip install -e ".[test,benchmark]"')
    parser = argparse.ArgumentParser(description="How soon a finger's move on the clock is seen.")
    parser.add_argument("--only", help="measure only the clocks whose name has this in it")
    only = parser.parse_args().only or ""
    with (
        sync_playwright() as playwright,
        tempfile.TemporaryDirectory() as folder,
        contextlib.ExitStack() as stack,
    ):
        executable = find_chromium(playwright)
        if executable is None:
            raise SystemExit(REMEDY)
        browser = playwright.chromium.launch(executable_path=executable, args=arguments())
        stack.callback(browser.close)
        clocks = [clock for clock in subjects(Path(folder), stack) if only in clock.name]
        for slower in SLOWER:
            print(f"\nprocessor {slower} times slower" if slower > 1 else "\nfull speed")
            print(
                f"{'':15}{'stamp: ms':>11}{'95 %':>8}{'heard: ms':>11}{'95 %':>8}{'frames/s':>10}"
            )
            # In turns, so that whatever else the machine does meets all of them.
            runs = [[measure(browser, clock, slower) for clock in clocks] for _ in range(RUNS)]
            found = {}
            for clock, *its in zip(clocks, *runs, strict=True):
                found[clock.name] = Finding.of_all(its)
                print(f"{clock.name:15}{found[clock.name].row()}")
            tell(found, slower)


def tell(found: dict[str, Finding], slower: int) -> None:
    """Print how the kit's clock stands beside the others."""
    if not {"bare", "kit, page", "ipympl, Voila"} <= set(found):
        return
    for since in ("stamped", "heard"):
        bare, ours, plotted = (
            statistics.median(getattr(found[name], since))
            for name in ("bare", "kit, page", "ipympl, Voila")
        )
        print(
            f"{since:8} kit / bare {ours / bare:.2f} (at most 2), "
            f"ipympl / kit {plotted / ours:.1f} (at least {10 if slower == 1 else 5})"
        )


if __name__ == "__main__":
    main()
