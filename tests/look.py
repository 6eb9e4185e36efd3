"""Takes a picture of a page on each of the three screens.

    python tests/look.py build/market-clock.html

writes market-clock-board.png, -tablet.png and -phone.png into build/looks/. An address works as
well as a file, so a served board can be looked at too; only this machine is asked.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from playwright.sync_api import sync_playwright

from support.chromium import REMEDY, arguments, find_chromium, keep_inside
from support.screens import SCREENS

LOOKS = Path("build") / "looks"


def look(address: str, into: Path, name: str, wait: float) -> None:
    """Save a picture a screen and say what the page complained about."""
    into.mkdir(parents=True, exist_ok=True)
    with sync_playwright() as playwright:
        executable = find_chromium(playwright)
        if executable is None:
            raise SystemExit(REMEDY)
        browser = playwright.chromium.launch(executable_path=executable, args=arguments())
        for screen in SCREENS.values():
            noise: list[str] = []
            context = browser.new_context(
                viewport={"width": screen.width, "height": screen.height}, has_touch=screen.touch
            )
            keep_inside(context, noise)
            page = context.new_page()
            page.goto(address)
            page.wait_for_timeout(wait * 1000)
            target = into / f"{name}-{screen.name}.png"
            page.screenshot(path=target)
            print(target, *noise, sep="\n  ")
            context.close()
        browser.close()


def main() -> None:
    """Read the command line."""
    parser = argparse.ArgumentParser(description="Look at a page on the three screens.")
    parser.add_argument("page", help="a file, or an address on this machine")
    parser.add_argument("--into", type=Path, default=LOOKS, help="folder of the pictures")
    parser.add_argument("--wait", type=float, default=1, help="seconds before the picture")
    given = parser.parse_args()
    if "://" in given.page:
        look(given.page, given.into, "page", given.wait)
        return
    path = Path(given.page).resolve()
    if not path.is_file():
        parser.error(f"There is no file {given.page}.")
    look(path.as_uri(), given.into, path.stem, given.wait)


if __name__ == "__main__":
    main()
