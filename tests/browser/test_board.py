"""The served board: a lesson taught by a clicker, edited, broken, and left without its kernel."""

from __future__ import annotations

import contextlib
import math
import os
import re
import signal
import socket
import threading
import time

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from support.chromium import TWO_FRAMES
from support.server import serving, until

FERRY = Lesson(
    "The ferry",
    seed=41,
    rounds=(
        Round("time.read_hour", seed=5, tasks=2, seconds=60, title="Full hours"),
        Round("time.set_hands", seed=6, tasks=1, seconds=60, title="Set the clock"),
    ),
)
TICK = """
import anywidget, traitlets

class Tick(anywidget.AnyWidget):
    _esm = '''WAIT
    export default { render({ model, el }) {
      const button = document.createElement("button");
      button.className = "tick";
      const paint = () => { button.textContent = `${model.get("n")} ${model.get("said")}`; };
      button.addEventListener("click", () => {
        model.set("n", model.get("n") + 1);
        model.save_changes();
      });
      model.on("change:n", paint); model.on("change:said", paint); paint();
      el.append(button);
    } };'''
    n = traitlets.Int(0).tag(sync=True)
    said = traitlets.Unicode("").tag(sync=True)

    @traitlets.observe("n")
    def _say(self, change):
        self.said = f"Python heard {change.new}"

Tick()
"""
# As on a computer that has a great deal to load.
SLOW = TICK.replace("WAIT", "await new Promise((done) => setTimeout(done, 3000));")
TICK = TICK.replace("WAIT", "")
LOOK = """() => {
  const round = [...document.querySelectorAll(".kit-round")].find((each) => each.checkVisibility());
  const heading = document.querySelector(".session-heading").textContent;
  return [heading, round.dataset.phase, round.innerText];
}"""
PLACE = """(selector) => {
  const { x, y, width, height } = document.querySelector(selector).getBoundingClientRect();
  return [x + width / 2, y + height / 2];
}"""
SEEN = """() => {
  const hand = document.querySelector(".clock-minute");
  const { a, b } = new DOMMatrix(getComputedStyle(hand).transform);
  return (Math.atan2(b, a) * 180 / Math.PI + 360) % 360;
}"""
NOTICED = 3_000  # milliseconds in which a lost kernel has to be told


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    folder = tmp_path_factory.mktemp("Penny Cross")
    write_lesson(FERRY, folder / "ferry.toml")
    cells = [
        new_markdown_cell("# The bell tower\n\nWind it *slowly*. <script>alert(1)</script>"),
        new_code_cell('from manipulatives import Clock\n\nClock(time="4:00", snap=1)'),
    ]
    nbformat.write(new_notebook(cells=cells), folder / "bell.ipynb")
    cells = [
        new_code_cell(source) for source in (TICK, "no_such_ferry", "Tick(n=5)", "print('ashore')")
    ]
    nbformat.write(new_notebook(cells=cells), folder / "tides.ipynb")
    nbformat.write(new_notebook(cells=[new_code_cell(SLOW)]), folder / "slow.ipynb")
    return folder


@pytest.fixture(scope="module")
def server(folder):
    with serving(folder) as server:
        yield server


@pytest.fixture
def page(quiet_page, server):
    quiet_page.goto(server.address)
    return quiet_page


def open_board(page, server, name, ready=".kit-manipulative:visible"):
    page.goto(f"{server.base}board/{name}")
    agree = page.get_by_role("button", name="Run it", exact=True)
    if agree.count():
        agree.click()
    page.locator(ready).first.wait_for(timeout=30_000)


def kernel_of(page, server):
    """The process of the kernel behind a board."""
    config = page.locator("#jupyter-config-data").text_content()
    return server.kernels()[re.search(r'"kernelId": "([^"]+)"', config)[1]]


def test_a_lesson_is_taught_from_the_shelf_to_its_end_by_one_key(page):
    page.locator("#ferry").get_by_role("link", name="Board").click()
    page.locator(".kit-round:visible .kit-manipulative").wait_for(timeout=30_000)
    seen = []
    for _ in range(60):
        look = page.evaluate(LOOK)
        if seen and look == seen[-1]:
            break
        seen.append(look)
        page.keyboard.press("PageDown")
    assert [title for title, *_ in seen] == sorted(title for title, *_ in seen)
    assert {title for title, *_ in seen} == {"Full hours", "Set the clock"}
    for title in ("Full hours", "Set the clock"):
        phases = [phase for name, phase, _ in seen if name == title]
        assert {"show", "check"} <= set(phases)
    # The last press changed nothing: the lesson is at its end, and one press back is not.
    page.keyboard.press("PageUp")
    assert page.locator(".kit-round:visible").inner_text() != seen[-1][2]


def test_after_a_reload_a_board_is_where_it_was(page, server):
    open_board(page, server, "ferry")
    for _ in range(4):
        page.keyboard.press("PageDown")
    before = page.locator(".kit-round:visible").inner_text()
    page.reload()
    page.locator(".kit-round:visible .kit-manipulative").wait_for(timeout=30_000)
    assert page.locator(".kit-round:visible").inner_text() == before
    page.evaluate("localStorage.clear()")


@pytest.mark.screens("board", "tablet", "phone")
def test_a_board_fits_the_screen_and_names_the_way_back(page, server, screen):
    open_board(page, server, "ferry")
    wide, high = page.evaluate(
        "[document.documentElement.scrollWidth, document.documentElement.scrollHeight]"
    )
    assert wide <= screen.width
    assert high <= screen.height
    page.get_by_role("link", name="Shelf").click()
    page.get_by_role("heading", name="The ferry").wait_for()


@pytest.mark.screens("board", "tablet")
def test_a_manipulative_by_itself_need_not_be_scrolled(page, server, screen):
    open_board(page, server, "bell")
    box = page.locator(".clock-disc").bounding_box()
    assert box["y"] + box["height"] <= screen.height
    assert box["height"] >= screen.height / 2


def test_text_from_a_notebook_is_text(page, server):
    open_board(page, server, "bell")
    words = page.locator(".kit-words")
    assert "<script>alert(1)</script>" in words.inner_text()
    assert words.locator("script").count() == 0
    assert page.get_by_role("heading", name="The bell tower").count() == 1


def test_what_is_moved_on_a_board_reaches_python(page, server):
    open_board(page, server, "tides", ".tick")
    page.locator(".tick").first.click()
    page.get_by_text("1 Python heard 1").wait_for()


def test_a_slowly_loading_widget_still_receives_changes_from_python(page, server):
    open_board(page, server, "slow", ".tick")
    page.locator(".tick").click()
    page.get_by_text("1 Python heard 1").wait_for()
    page.locator("main:not([aria-busy])").wait_for()
    assert page.evaluate("AbortSignal.timeout.toString().includes('[native code]')")


def test_killing_the_kernel_during_a_drag_changes_nothing_under_the_finger(page, server):
    open_board(page, server, "bell")
    centre = page.evaluate(PLACE, ".clock-disc")
    grip = page.evaluate(PLACE, ".clock-minute .kit-grip")
    radius = math.dist(centre, grip)

    def move(minute):
        turn = math.radians(6 * minute)
        page.mouse.move(centre[0] + radius * math.sin(turn), centre[1] - radius * math.cos(turn))
        # Moves are handed out with the next frame, which the second one has behind it.
        page.evaluate(TWO_FRAMES)
        return page.evaluate(SEEN) / 6, page.evaluate(PLACE, ".clock-disc")

    page.mouse.move(*grip)
    page.mouse.down()
    assert [round(move(minute)[0]) for minute in (2, 5)] == [2, 5]
    os.kill(kernel_of(page, server), signal.SIGKILL)
    notice = page.get_by_text("Python has stopped.")
    notice.wait_for(timeout=NOTICED)
    for minute in (8, 12, 20, 26):
        stood, disc = move(minute)
        assert stood == pytest.approx(minute, abs=0.1)
        assert disc == centre
    page.mouse.up()
    facts = page.locator(".kit-manipulative").evaluate("(root) => root.facts()")
    assert facts["minute_hand"] == 26
    assert "goes on working" in notice.inner_text()
    assert "stands still" in notice.inner_text()

    page.get_by_role("button", name="Load again").click()
    page.locator(".kit-manipulative").wait_for(timeout=30_000)
    assert notice.count() == 0


def test_a_round_goes_on_to_its_end_without_a_kernel(page, server):
    open_board(page, server, "ferry")
    os.kill(kernel_of(page, server), signal.SIGKILL)
    page.get_by_text("Python has stopped.").wait_for(timeout=NOTICED)
    page.get_by_role("button", name="Close").click()
    assert not page.get_by_text("Python has stopped.").is_visible()
    for _ in range(40):
        page.keyboard.press("PageDown")
    assert page.evaluate(LOOK)[0] == "Set the clock"
    page.evaluate("localStorage.clear()")


def test_a_closed_shelf_is_reported_and_the_board_goes_on(quiet_page, tmp_path, forgiven):
    # Nobody is there to answer, which the browser notes again and again.
    forgiven += ["ERR_CONNECTION_REFUSED", "WebSocket"]
    write_lesson(FERRY, tmp_path / "ferry.toml")
    with serving(tmp_path) as server:
        quiet_page.goto(server.address)
        open_board(quiet_page, server, "ferry")
        server.stop()
        quiet_page.get_by_text("The shelf is closed.").wait_for(timeout=NOTICED)
        before = quiet_page.locator(".kit-round:visible").inner_text()
        quiet_page.keyboard.press("PageDown")
        assert quiet_page.locator(".kit-round:visible").inner_text() != before


def test_an_edit_is_on_the_board_that_is_opened_next(page, server, folder):
    until(
        lambda: page.reload() and page.locator('#ferry[data-warm="yes"]').count(),
        30,
        "a warm board",
    )
    title = "The ferry at low tide"
    write_lesson(Lesson(title, seed=41, rounds=FERRY.rounds[1:]), folder / "ferry.toml")
    try:
        open_board(page, server, "ferry")
        assert page.title() == title
        assert page.locator(".kit-round").count() == 1
        assert page.locator(".kit-round").get_attribute("aria-label") == "Set the clock"
    finally:
        write_lesson(FERRY, folder / "ferry.toml")


@contextlib.contextmanager
def black_hole():
    """A proxy that takes every connection and never says a word."""
    with socket.create_server(("127.0.0.1", 0)) as door:
        held = []

        def take():
            with contextlib.suppress(OSError):
                while True:
                    held.append(door.accept()[0])

        threading.Thread(target=take, daemon=True).start()
        yield f"http://127.0.0.1:{door.getsockname()[1]}"
        for one in held:
            one.close()


@contextlib.contextmanager
def shut_door():
    """The address of a proxy that is not there."""
    with socket.create_server(("127.0.0.1", 0)) as door:
        address = f"http://127.0.0.1:{door.getsockname()[1]}"
    yield address


@pytest.mark.parametrize("outside", [shut_door, black_hole])
def test_an_error_in_cell_2_of_4_leaves_3_and_4_with_the_network_gone(browser, server, outside):
    with outside() as proxy:
        context = browser.new_context(proxy={"server": proxy, "bypass": "127.0.0.1"})
        # The network is as it should be for this test.
        begun = time.monotonic()
        with pytest.raises(Exception, match="Timeout" if outside is black_hole else "ERR_"):
            context.new_page().goto("http://elsewhere.example/", timeout=1500)
        assert (time.monotonic() - begun > 1.4) == (outside is black_hole)

        page = context.new_page()
        asked = []
        page.on("request", lambda request: asked.append(request.url))
        page.goto(server.address)
        begun = time.monotonic()
        open_board(page, server, "tides", ".tick >> nth=1")
        assert time.monotonic() - begun < 15
        assert "Cell 2 of 4 stopped: NameError: name 'no_such_ferry' is not defined" in (
            page.locator("main").inner_text()
        )
        assert [text.split()[0] for text in page.locator(".tick").all_inner_texts()] == ["0", "5"]
        assert "ashore" in page.locator("main").inner_text()
        assert "Cell 2 stopped" in page.locator(".kit-say").inner_text()
        assert [url for url in asked if not url.startswith((server.base, "data:", "blob:"))] == []
        context.close()


@pytest.mark.parametrize("outside", [shut_door, black_hole])
def test_a_lesson_comes_up_promptly_with_the_network_gone(browser, server, outside):
    with outside() as proxy:
        context = browser.new_context(proxy={"server": proxy, "bypass": "127.0.0.1"})
        page = context.new_page()
        asked = []
        page.on("request", lambda request: asked.append(request.url))
        page.goto(server.address)
        begun = time.monotonic()
        open_board(page, server, "ferry")
        assert time.monotonic() - begun < 15
        assert page.evaluate("document.fonts.check('20px \"Kit Reading\"')")
        assert [url for url in asked if not url.startswith((server.base, "data:", "blob:"))] == []
        context.close()


def test_a_board_that_does_not_load_completely_says_so(page, server, noise):
    page.route("**/anywidget/static/**", lambda route: route.abort())
    page.clock.install()
    page.goto(f"{server.base}board/ferry")
    page.locator("main[aria-busy]").wait_for()
    page.clock.fast_forward(31_000)
    said = page.get_by_text("Some of the board did not load: this computer may be busy.")
    said.wait_for()
    page.unroute("**/anywidget/static/**")
    page.get_by_role("button", name="Load again").click()
    page.locator(".kit-manipulative:visible").first.wait_for(timeout=30_000)
    assert not said.is_visible()
    noise.clear()
