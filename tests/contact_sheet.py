"""Takes a picture of every phase of every round of a lesson, and puts them on one contact sheet.

    python tests/contact_sheet.py notebooks/week-1-monday.ipynb
    python tests/contact_sheet.py notebooks/week-*.ipynb --screen phone

writes build/looks/week-1-monday-board.png: a row for each round, in it the phases from left to
right (ask, work, the first and the last step, check, the count-aloud half-way).
"""

from __future__ import annotations

import argparse
import io
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING

from PIL import Image
from playwright.sync_api import sync_playwright

from manipulatives.outputs.page import page_of_file
from support.chromium import REMEDY, arguments, find_chromium, keep_inside
from support.screens import SCREENS, Screen

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

LOOKS = Path("build") / "looks"
WIDTH = 480
GAP = 8
MOST_PRESSES = 120


def pictures(page: Page) -> list[list[Image.Image]]:
    """Teach a lesson with one key; return the pictures of each round."""
    rows: list[list[Image.Image]] = []
    parts = page.locator(".session-pips button").count()
    for part in range(parts):
        page.locator(".session-pips button").nth(part).dispatch_event("click")
        root = page.locator(".kit-round:visible")
        root.locator(".kit-manipulative").wait_for(state="attached")
        rows.append(_phases(page))
    return rows


def _phases(page: Page) -> list[Image.Image]:
    """Go through the first question of a round; keep the first and last look of each phase."""
    root = page.locator(".kit-round:visible")
    name = root.get_attribute("data-kit-round")
    kept: list[tuple[str, Image.Image]] = []
    for _ in range(MOST_PRESSES):
        phase = str(root.get_attribute("data-phase"))
        page.wait_for_timeout(350)
        look = Image.open(io.BytesIO(page.screenshot()))
        again = [number for number, (known, _) in enumerate(kept) if known == phase]
        if len(again) > 1:
            kept[again[-1]] = (phase, look)
        else:
            kept.append((phase, look))
        if phase == "check":
            break
        page.keyboard.press("PageDown")
        if root.get_attribute("data-kit-round") != name:
            break
    return [look for _, look in kept]


def sheet(rows: list[list[Image.Image]], screen: Screen) -> Image.Image:
    """Put rows of pictures on one."""
    height = round(WIDTH * screen.height / screen.width)
    across = max(len(row) for row in rows)
    whole = Image.new(
        "RGB", (across * (WIDTH + GAP) + GAP, len(rows) * (height + GAP) + GAP), "#444444"
    )
    for down, row in enumerate(rows):
        for right, look in enumerate(row):
            small = look.convert("RGB").resize((WIDTH, height), Image.Resampling.LANCZOS)
            whole.paste(small, (GAP + right * (WIDTH + GAP), GAP + down * (height + GAP)))
    return whole


def look(browser: Browser, lesson: Path, screen: Screen, into: Path) -> Path:
    """Make the contact sheet of a lesson; return its file."""
    noise: list[str] = []
    context = browser.new_context(
        viewport={"width": screen.width, "height": screen.height}, has_touch=screen.touch
    )
    keep_inside(context, noise)
    page = context.new_page()
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "lesson.html"
        file.write_text(page_of_file(lesson), "utf-8")
        page.goto(file.as_uri())
        page.locator("main:not([aria-busy])").wait_for(state="attached")
        rows = pictures(page)
    context.close()
    target = into / f"{lesson.stem}-{screen.name}.png"
    sheet(rows, screen).save(target)
    for complaint in noise:
        print("  complained:", complaint)
    return target


def main() -> None:
    """Make contact sheets of the lessons that were named."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("lessons", nargs="+", type=Path, metavar="LESSON")
    parser.add_argument("--screen", choices=SCREENS, default="board")
    parser.add_argument("--into", type=Path, default=LOOKS, metavar="FOLDER")
    given = parser.parse_args()
    given.into.mkdir(parents=True, exist_ok=True)
    with sync_playwright() as playwright:
        executable = find_chromium(playwright)
        if executable is None:
            raise SystemExit(REMEDY)
        browser = playwright.chromium.launch(executable_path=executable, args=arguments())
        for lesson in given.lessons:
            print(look(browser, lesson, SCREENS[given.screen], given.into))
        browser.close()


if __name__ == "__main__":
    main()
