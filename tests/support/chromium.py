"""Chromium, and a page in it that may ask for nothing outside this machine."""

from __future__ import annotations

import contextlib
import os
import re
import shutil
from pathlib import Path
from typing import TYPE_CHECKING

from playwright.sync_api import sync_playwright

if TYPE_CHECKING:
    from collections.abc import Iterator

    from playwright.sync_api import Browser, BrowserContext, Page, Playwright, Route, WebSocketRoute

NAMES = ("chromium", "chromium-browser", "google-chrome")
VARIABLE = "MANIPULATIVES_CHROMIUM"
REMEDY = (
    "No Chromium was found for the browser tests. Install one (on Debian and Ubuntu: "
    f"apt-get install chromium), or say in {VARIABLE} where one is."
)
# A browser of its own accord looks for updates and variations; the tests ask for silence.
ARGUMENTS = (
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)
OUTSIDE = re.compile(
    r"^(?!file:|data:|blob:|about:|chrome-error:|(https?|wss?)://(127\.0\.0\.1|localhost|\[::1\])([:/?#]|$))"
)
TWO_FRAMES = """() => new Promise((done) => {
  requestAnimationFrame(() => requestAnimationFrame(done));
})"""


def visit(page: Page, address: str) -> None:
    """Open an address and wait until it was painted; before that, Chromium drops keys."""
    page.goto(address)
    page.wait_for_function(STARTED)
    page.evaluate(TWO_FRAMES)


def resize(page: Page, width: int, height: int) -> None:
    """Give the window another size and wait until that was painted, as `visit` does."""
    page.set_viewport_size({"width": width, "height": height})
    page.evaluate(TWO_FRAMES)


# A bare session says with this attribute that it has not begun.
STARTED = """() => !document.documentElement.hasAttribute("data-starting")"""
# Everything that a page carries is there; a page that carries nothing need not come to that.
SETTLED = """() => document.readyState === "complete" &&
  !document.documentElement.hasAttribute("data-starting") &&
  (!document.querySelector("#kit-saved") || document.querySelector("main:not([aria-busy])"))"""


def reload(page: Page) -> None:
    """Load a page again and wait until everything that it carries is there."""
    page.reload()
    page.wait_for_function(SETTLED)


def find_chromium(playwright: Playwright) -> str | None:
    """The Chromium to test with: the variable, the PATH, or the one that playwright installed."""
    said = os.environ.get(VARIABLE)
    if said:
        return said
    for name in NAMES:
        found = shutil.which(name)
        if found:
            return found
    own = playwright.chromium.executable_path
    return own if Path(own).is_file() else None


def arguments() -> list[str]:
    """How Chromium is started; its sandbox cannot be had by root."""
    root = hasattr(os, "geteuid") and os.geteuid() == 0
    return [*ARGUMENTS, "--no-sandbox"] if root else [*ARGUMENTS]


@contextlib.contextmanager
def chromium() -> Iterator[Browser]:
    """Start a Chromium for a benchmark; end with the remedy where there is none."""
    with sync_playwright() as playwright:
        executable = find_chromium(playwright)
        if executable is None:
            raise SystemExit(REMEDY)
        browser = playwright.chromium.launch(executable_path=executable, args=arguments())
        yield browser
        browser.close()


def keep_inside(context: BrowserContext, noise: list[str]) -> None:
    """Refuse everything outside this machine, and note what was asked for and what went wrong."""

    def refuse(route: Route) -> None:
        noise.append(f"asked for {route.request.url}")
        route.abort()

    def refuse_socket(socket: WebSocketRoute) -> None:
        noise.append(f"asked for {socket.url}")
        socket.close()

    context.route(OUTSIDE, refuse)
    context.route_web_socket(OUTSIDE, refuse_socket)
    context.on(
        "console",
        lambda message: (
            noise.append(f"console error: {message.text}") if message.type == "error" else None
        ),
    )
    context.on("weberror", lambda error: noise.append(f"page error: {error.error}"))
