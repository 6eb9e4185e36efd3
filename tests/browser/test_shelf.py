"""The shelf in a browser: looked at on three screens, and everything on it pressed."""

from __future__ import annotations

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.lessons.files import read_lesson, write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from support.server import serving

TWICE = Round("time.read_hour", seed=8, tasks=2, seconds=120)
CHEESE = Lesson(
    "The cheese stall opens, and nobody at the market knows when it will close again",
    seed=3,
    rounds=(TWICE, Round("time.later", seed=9, tasks=2, seconds=240), TWICE),
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    folder = tmp_path_factory.mktemp("Penny Cross")
    write_lesson(CHEESE, folder / "cheese.toml")
    (folder / "torn.toml").write_text("title = \n")
    cells = [new_markdown_cell("# Tides"), new_code_cell("print(6 * 7)")]
    nbformat.write(new_notebook(cells=cells), folder / "tides.ipynb")
    return folder


@pytest.fixture(scope="module")
def server(folder):
    with serving(folder) as server:
        yield server


@pytest.fixture
def shelf(quiet_page, server):
    quiet_page.goto(server.address)
    return quiet_page


def book(shelf, name):
    return shelf.locator(f"#{name}")


@pytest.mark.screens("board", "tablet", "phone")
def test_the_shelf_fits_the_screen_and_everything_on_it_can_be_hit(shelf, screen):
    assert shelf.evaluate("document.documentElement.scrollWidth") <= screen.width
    pressed = shelf.locator("a, button")
    assert pressed.count() >= 8
    for each in pressed.all():
        box = each.bounding_box()
        assert box["height"] >= 44
        assert box["width"] >= 44
    sizes = shelf.locator("main :not(input)").evaluate_all(
        "(all) => all.map((each) => parseFloat(getComputedStyle(each).fontSize))"
    )
    assert min(sizes) >= 18
    weights = shelf.evaluate(
        "[...document.querySelectorAll('*')].map((e) => getComputedStyle(e).fontWeight)"
    )
    assert set(weights) == {"400"}
    assert shelf.evaluate("document.fonts.check('20px \"Kit Reading\"')")


def test_the_address_that_is_left_in_the_browser_holds_no_key(shelf, server):
    assert shelf.url == server.base


def test_a_lesson_says_what_it_is(shelf):
    text = book(shelf, "cheese").inner_text()
    assert CHEESE.title in text
    assert "8 min · 3 rounds · time" in text
    assert "the file is no TOML" in book(shelf, "torn").inner_text()
    assert book(shelf, "torn").get_by_role("link").count() == 0


def test_the_page_opens_beside_the_shelf_and_works_though_it_may_not_act_as_the_shelf(shelf, noise):
    with shelf.context.expect_page() as opened:
        book(shelf, "cheese").get_by_role("button", name="Page", exact=True).click()
    page = opened.value
    page.locator(".kit-round:visible .kit-manipulative").wait_for()
    assert page.url.endswith("/made/page/cheese")
    before = page.locator(".kit-round:visible").inner_text()
    page.keyboard.press("PageDown")
    assert page.locator(".kit-round:visible").inner_text() != before
    assert page.evaluate("origin") == "null"
    # What the shelf answers is out of its reach.
    assert page.evaluate("fetch('/').then(() => 'read', () => 'refused')") == "refused"
    # The browser says so too, and nothing else is wrong.
    assert all("Content Security Policy" in one for one in noise)
    noise.clear()


@pytest.mark.parametrize("name", ["Sheet", "Key"])
def test_paper_opens_beside_the_shelf(shelf, folder, name):
    with shelf.context.expect_page() as opened:
        book(shelf, "cheese").get_by_role("button", name=name).click()
    opened.value.wait_for_url(f"**/made/{name.lower()}/cheese")
    assert (folder / f"cheese.{name.lower()}.pdf").is_file()


def test_a_copied_round_is_given_other_numbers_at_one_press(shelf, folder):
    card = book(shelf, "cheese")
    assert "Round 3 asks the same as round 1." in card.inner_text()
    card.get_by_role("button", name="Give it other numbers").click()
    shelf.get_by_text("has other numbers now.").wait_for()
    assert "asks the same" not in book(shelf, "cheese").inner_text()
    after = read_lesson(folder / "cheese.toml")
    assert after.rounds[:2] == CHEESE.rounds[:2]
    assert after.rounds[2].seed != TWICE.seed


def test_foreign_code_runs_only_after_a_question(shelf):
    card = book(shelf, "tides")
    assert "You are asked before it runs." in card.inner_text()
    card.get_by_role("link", name="Board").click()
    shelf.get_by_text("it can do whatever you can.").wait_for()
    shelf.get_by_role("link", name="Not now").click()
    book(shelf, "tides").get_by_role("link", name="Board").click()
    shelf.get_by_role("button", name="Run it", exact=True).click()
    shelf.locator("pre", has_text="42").wait_for(timeout=30_000)


def test_the_shelf_works_by_keys_and_without_its_script(browser, server):
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(server.address)
    page.locator("#cheese").get_by_role("link", name="Board").focus()
    page.keyboard.press("Tab")
    with context.expect_page() as opened:
        page.keyboard.press("Enter")
    opened.value.wait_for_url("**/made/page/cheese")
    context.close()
