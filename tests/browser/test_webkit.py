"""Pages in WebKit, the browser of many tablets: nothing leaves its place, everything moves."""

from __future__ import annotations

import math
import os
import time

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.settings import ClassSettings
from manipulatives.notebook.writing import notebook_of
from manipulatives.outputs.page import page_of, page_of_file
from support.files import ROOT
from support.overflow import LEAVING
from support.screens import SCREENS
from support.webkit import resize, webkit

pytestmark = pytest.mark.skipif(
    "SLOW_TESTS" not in os.environ, reason="set SLOW_TESTS=1 to try the pages in WebKit"
)
PAGE_DOWN = "\ue00f"
A_PAGE = 10  # skills of one lesson
STILL = 4  # presses that change nothing: the lesson is at its end
MOST_PRESSES = 400
LISTEN = """
  window.noise = [];
  addEventListener("error", (event) => noise.push(event.message));
  addEventListener("unhandledrejection", (event) => noise.push(String(event.reason)));
  const told = console.error;
  console.error = (...words) => { noise.push(words.join(" ")); told(...words); };
"""
LOOK = r"return document.body.innerText.replace(/\d+ of \d+ min|\d+ min/g, '')"
CENTRE = """
  const [where, index] = arguments;
  const box = document.querySelectorAll(where)[index].getBoundingClientRect();
  return [box.x + box.width / 2, box.y + box.height / 2];
"""
BUTTON = """
  const [name] = arguments;
  return [...document.querySelectorAll("button")]
    .find((each) => each.checkVisibility() && (each.ariaLabel ?? each.textContent) === name);
"""


@pytest.fixture(scope="module")
def driver():
    with webkit() as driver:
        yield driver


@pytest.fixture
def visit(driver, tmp_path):
    """Open a page of a lesson or of a notebook, and hear what it complains of."""

    def visit(html, screen="tablet"):
        file = tmp_path / "page.html"
        file.write_text(html, "utf-8")
        resize(driver, SCREENS[screen].width, SCREENS[screen].height)
        # A lesson that is left behind keeps its place; another page forgets it for this one.
        empty = tmp_path / "empty.html"
        empty.write_text("<!doctype html><title>empty</title>", "utf-8")
        driver.get(empty.as_uri())
        driver.execute_script("localStorage.clear()")
        driver.get(file.as_uri())
        until(lambda: driver.execute_script("return !document.querySelector('main[aria-busy]')"))
        driver.execute_script(LISTEN)

    yield visit
    assert driver.execute_script("return noise") == []


def until(fact, seconds=5):
    """Wait for a fact."""
    end = time.monotonic() + seconds
    while not (found := fact()):
        assert time.monotonic() < end, "it never came"
        time.sleep(0.05)
    return found


def press(driver, key):
    actions = chain(driver)
    actions.send_keys(key).perform()


def chain(driver):
    chains = pytest.importorskip("selenium.webdriver.common.action_chains")
    return chains.ActionChains(driver, duration=20)


def drag(driver, *spots):
    """Press at the first spot, go by the others and let go at the last."""
    actions = chain(driver)
    hand = actions.w3c_actions.pointer_action
    hand.move_to_location(*map(round, spots[0])).pointer_down()
    for spot in spots[1:]:
        hand.move_to_location(*map(round, spot))
    hand.pointer_up()
    actions.perform()


def between(start, end, steps=8):
    """The places of a hand that goes from one spot to another."""
    return [
        tuple(a + (b - a) * step / steps for a, b in zip(start, end, strict=True))
        for step in range(steps + 1)
    ]


@pytest.mark.parametrize("screen", list(SCREENS))
@pytest.mark.parametrize("first", range(0, len(SKILLS), A_PAGE))
def test_nothing_of_any_skill_leaves_its_place(visit, driver, first, screen):
    rounds = tuple(Round(skill, seed=31, tasks=1) for skill in list(SKILLS)[first : first + A_PAGE])
    lesson = Lesson("Market day", seed=7, rounds=rounds)
    visit(page_of(notebook_of(lesson), settings=ClassSettings()), screen)
    seen, still, looked = set(), 0, ""
    for _ in range(MOST_PRESSES):
        press(driver, PAGE_DOWN)
        look = driver.execute_script(LOOK)
        still = still + 1 if look == looked else 0
        if still == STILL:
            break
        seen.add(looked := look)
        time.sleep(0.1)
        assert driver.execute_script(f"return {LEAVING}") == [], look
    assert len(seen) > 3 * A_PAGE


def test_what_is_too_wide_is_found(visit, driver):
    visit(page_of_file(ROOT / "notebooks" / "free-play-blocks.ipynb"))
    assert driver.execute_script(f"return {LEAVING}") == []
    driver.execute_script("document.querySelector('.blocks-work').style.minInlineSize = '200%'")
    assert driver.execute_script(f"return {LEAVING}") != []


def test_a_hand_of_the_clock_is_dragged(visit, driver):
    visit(page_of_file(ROOT / "notebooks" / "free-play-clock.ipynb"))
    read = "return document.querySelector('.kit-clock').facts().minutes"
    before = driver.execute_script(read)
    x, y = driver.execute_script(CENTRE, ".clock-face > svg", 0)
    radius = y * 0.5
    spots = [
        (x + radius * math.sin(turn), y - radius * math.cos(turn))
        for turn in (math.radians(before % 60 * 6 + step * 5) for step in range(19))
    ]
    drag(driver, *spots)
    assert driver.execute_script(read) == before + 15


def test_a_coin_is_dragged_to_the_tray(visit, driver):
    visit(page_of_file(ROOT / "notebooks" / "free-play-coins.ipynb"))
    read = "return document.querySelector('.kit-coins').facts().total"
    before = driver.execute_script(read)
    coin = driver.execute_script(CENTRE, ".coins-handle:not(.is-round)", 1)
    drag(driver, *between(coin, (coin[0] + 250, coin[1])))
    assert driver.execute_script(read) == before + 10


def test_a_ten_is_dragged_to_the_tens(visit, driver):
    visit(page_of_file(ROOT / "notebooks" / "free-play-blocks.ipynb"))
    read = "return document.querySelector('.kit-blocks').facts().number"
    before = driver.execute_script(read)
    source = "[aria-label='Take a ten']"
    end = driver.execute_script(CENTRE, "[aria-label='Tens'].blocks-column", 0)
    drag(driver, *between(driver.execute_script(CENTRE, source, 0), end))
    assert driver.execute_script(read) == before + 10


def test_a_pupil_answers_and_carries_on_after_a_reload(visit, driver):
    lesson = Lesson("Market day", seed=7, rounds=(Round("counting.on_in_twos", seed=5, tasks=2),))
    visit(page_of(notebook_of(lesson), settings=ClassSettings(), audience="pupils"))

    def tap(name):
        until(lambda: driver.execute_script(BUTTON, name)).click()

    for name in ("Start", "My turn", "9", "9", "Check"):
        tap(name)
    until(lambda: "Not yet." in driver.execute_script(LOOK))
    driver.refresh()
    tap("Carry on")
    until(lambda: "Not yet." in driver.execute_script(LOOK))
    driver.execute_script(LISTEN)
    tap("Finish")
    until(lambda: "0 of 1 right" in driver.execute_script(LOOK))
    tap("Finished, next pupil")
