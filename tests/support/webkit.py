"""WebKit, the browser of many tablets, for a thorough run: Debian's, on a screen of its own."""

from __future__ import annotations

import contextlib
import os
import shutil
import subprocess
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from collections.abc import Iterator

REMEDY = (
    "The tests in WebKit need Debian's (apt-get install webkit2gtk-driver xvfb) and what speaks "
    "to it (pip install selenium)."
)
BROWSER = "lib/*/webkit2gtk-*/MiniBrowser"  # beside the folder of its driver
BAR = 38  # pixels that its line of addresses takes


@contextlib.contextmanager
def webkit() -> Iterator[object]:
    """A WebKit with an empty store, as Selenium's driver; skips where it is not there."""
    selenium = pytest.importorskip("selenium.webdriver", reason=REMEDY)
    driver, screen = shutil.which("WebKitWebDriver"), shutil.which("Xvfb")
    browser = driver and next(Path(driver).parents[1].glob(BROWSER), None)
    if not (screen and browser):
        pytest.skip(REMEDY)
    given = subprocess.Popen(
        [screen, "-displayfd", "1", "-screen", "0", "2200x1300x24"],
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    )
    try:
        # In a container WebKit cannot create the namespaces for its sandbox.
        settings = os.environ | {
            "DISPLAY": f":{given.stdout.readline().strip()}",
            "WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS": "1",
        }
        options = selenium.WebKitGTKOptions()
        options.binary_location = str(browser)
        options.add_argument("--automation")
        service = selenium.webkitgtk.service.Service(driver, env=settings)
        found = selenium.WebKitGTK(options=options, service=service)
        try:
            yield found
        finally:
            found.quit()
    finally:
        given.kill()
        given.wait()


def resize(driver: object, width: int, height: int) -> None:
    """Give the page a size; WebKit's window is never narrower than 447 pixels."""
    driver.set_window_rect(0, 0, width, height + BAR)
