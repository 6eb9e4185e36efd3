"""A lesson stage by stage in a browser: by a clicker's keys, by hand, and while it still comes."""

from __future__ import annotations

import pytest
from browser.bare_session import bare_session, round_block, telling
from browser.lesson_page import RoundOnPage, lesson_page

from support.chromium import TWO_FRAMES, reload, resize, visit

HOURS = 'play("time.read_hour", tasks=1, seed=11)'
SET = 'play("time.set_hands", tasks=1, seed=12)'
TIMED = 'play("time.read_half", tasks=1, seed=13, timer="shown")'
CLOCK = 'Clock(time="4:35")'


@pytest.fixture
def lesson(quiet_page, tmp_path):
    """Opens a lesson of the cells given, and returns its page."""

    def opened(*cells):
        visit(quiet_page, lesson_page(tmp_path, *cells))
        quiet_page.locator("main:not([aria-busy])").wait_for()
        return quiet_page

    return opened


@pytest.fixture
def bare(quiet_page, tmp_path):
    """Opens a page that is nothing but a session, of either kind, over blocks given as HTML."""

    def opened(body, **given):
        visit(quiet_page, bare_session(tmp_path, body, **given).as_uri())
        return quiet_page

    return opened


def heading(page):
    return page.locator(".session-heading").inner_text()


def shown(page):
    """The text of the blocks that are seen."""
    return [
        block.inner_text().strip() for block in page.locator("main > *").all() if block.is_visible()
    ]


def add(page, html):
    """Let another block come."""
    page.evaluate(
        "(html) => document.querySelector('main').insertAdjacentHTML('beforeend', html)", html
    )


def presses_to_the_end(page):
    """Where each press of PageDown leads, as heading and phase, until one leads nowhere."""
    places, look = [], None
    while look != (look := page.locator("body").inner_text()):
        phase = page.locator(".kit-round:visible")
        at = phase.get_attribute("data-phase") if phase.count() else None
        places.append((heading(page), at))
        page.keyboard.press("PageDown")
    return places


def test_a_lesson_is_taught_to_its_end_by_one_key(lesson):
    page = lesson("Bring slate and chalk.", "## Hours", HOURS, "## Look", CLOCK, "## Set", SET)
    seen = presses_to_the_end(page)
    headings = list(dict.fromkeys(at for at, _ in seen))
    assert headings == ["", "Hours", "Look", "Set"]
    for name in ("Hours", "Set"):
        phases = [phase for at, phase in seen if at == name]
        assert list(dict.fromkeys(phases)) == ["ask", "show", "check"]
    assert ("Look", None) in seen


def test_back_leads_through_the_whole_lesson_too(lesson):
    page = lesson("## Hours", HOURS, "## Set", SET)
    looks = []
    round_ = RoundOnPage(page)
    for _ in range(30):
        look = (heading(page), round_.look())
        if look in looks:
            break
        looks.append(look)
        page.keyboard.press("PageDown")
    assert len(looks) > 8
    for look in reversed(looks):
        assert (heading(page), round_.look()) == look
        page.keyboard.press("PageUp")
    assert (heading(page), round_.look()) == looks[0]


def test_four_keys_are_enough(lesson):
    page = lesson("## Half past", TIMED, "## Set", SET)
    round_ = RoundOnPage(page)
    page.keyboard.press("F5")
    assert round_.phase == "work"
    assert round_.root.locator(".round-bar").get_by_role("button", name="Pause").is_visible()
    page.keyboard.press("F5")
    assert round_.root.locator(".round-bar").get_by_role("button", name="Go on").is_visible()
    page.keyboard.press(".")
    assert round_.phase == "check"
    page.keyboard.press(".")
    assert round_.phase == "work"
    page.keyboard.press("b")
    page.keyboard.press("PageDown")
    assert heading(page) == "Set"
    page.keyboard.press("PageUp")
    assert (heading(page), round_.phase) == ("Half past", "check")


@pytest.mark.screens("board", "phone")
def test_the_title_shows_what_is_to_come_and_leads_anywhere(lesson):
    page = lesson("Bring slate and chalk.", "## Hours", HOURS, "## Set", SET)
    assert page.locator("h1").is_visible()
    assert page.get_by_text("Bring slate and chalk.").is_visible()
    parts = page.locator(".session-contents button")
    assert parts.all_inner_texts() == ["Hours", "Set"]
    parts.nth(1).click()
    assert heading(page) == "Set"
    back = page.locator(".round-back:visible")
    back.click()
    assert heading(page) == "Hours"
    back.click()
    page.get_by_role("button", name="Begin").click()
    assert heading(page) == "Hours"


def test_any_round_can_be_reached_by_its_pip(lesson):
    page = lesson("## Hours", HOURS, "## Look", CLOCK, "## Set", SET)
    pips = page.locator(".session-pips button")
    assert [pip.get_attribute("aria-label") for pip in pips.all()] == ["Hours", "Look", "Set"]
    for number, name in ((2, "Set"), (0, "Hours"), (1, "Look")):
        pips.nth(number).click()
        assert heading(page) == name
        current = page.locator(".session-pips [aria-current='step']")
        assert current.get_attribute("aria-label") == name
        assert page.locator(".session-count").inner_text() == f"{number + 1} of 3"


def test_one_stage_is_seen_at_a_time_and_a_round_has_the_whole_screen(lesson):
    page = lesson("## Hours", HOURS, "## Set", SET)
    assert page.locator(".kit-round").count() == 2
    assert page.locator(".kit-round:visible").count() == 1
    box = page.locator(".kit-round:visible").bounding_box()
    assert box["y"] < 100
    assert box["y"] + box["height"] == pytest.approx(1080, abs=1)


def test_the_buttons_of_a_round_lead_on_and_nowhere_beyond_the_lesson(lesson):
    page = lesson("## Hours", HOURS, "## Set", SET)
    round_ = RoundOnPage(page)
    assert not round_.root.locator(".round-back").is_visible()
    while round_.next.inner_text() != "Next round":
        round_.next.click()
    round_.next.focus()
    page.keyboard.press("Enter")
    assert heading(page) == "Set"
    # Who goes on by Enter can go on going on.
    page.keyboard.press("Enter")
    assert round_.phase == "show"
    while round_.next.is_visible():
        round_.next.click()
    assert round_.said("end") == "End of the round"
    for _ in range(8):
        round_.root.locator(".round-back").click()
    assert heading(page) == "Hours"


def test_after_a_reload_the_lesson_is_where_it_was(lesson):
    page = lesson("## Hours", HOURS, "## Set", SET)
    page.locator(".session-pips button").nth(1).click()
    page.keyboard.press("PageDown")
    here = RoundOnPage(page).look()
    reload(page)
    page.locator(".kit-round:visible .kit-manipulative").wait_for()
    assert (heading(page), RoundOnPage(page).look()) == ("Set", here)


def test_without_storage_the_lesson_goes_on(lesson, quiet_page):
    quiet_page.add_init_script(
        "Object.defineProperty(window, 'localStorage', "
        "{ get() { throw new DOMException('refused', 'SecurityError'); } });"
    )
    page = lesson("## Hours", HOURS, "## Set", SET)
    page.locator(".session-pips button").nth(1).click()
    assert heading(page) == "Set"
    reload(page)
    page.locator(".kit-round:visible .kit-manipulative").wait_for()
    assert heading(page) == "Hours"


def test_arrows_turn_the_page_unless_a_manipulative_has_them(lesson):
    page = lesson("## Set", SET)
    round_ = RoundOnPage(page)
    page.keyboard.press("ArrowRight")
    assert round_.phase == "show"
    page.keyboard.press("ArrowLeft")
    assert round_.phase == "ask"
    hand = round_.root.locator("[role='slider']").first
    hand.focus()
    before = round_.facts()
    page.keyboard.press("ArrowRight")
    assert round_.facts() != before
    assert round_.phase == "work"
    # The clicker's own keys are the board's, whoever has the focus.
    page.keyboard.press("PageDown")
    assert round_.phase == "show"


def test_a_page_without_a_round_shows_everything_and_takes_no_keys(lesson):
    page = lesson("## One clock", CLOCK, "## Another", 'Clock(time="8:00")', "That is all.")
    assert page.locator(".kit-clock:visible").count() == 2
    assert not page.locator(".session-bar").is_visible()
    assert page.locator("h1").is_visible()
    assert page.get_by_role("heading", name="Another").is_visible()
    for key in ("PageDown", ".", "F5", "ArrowRight"):
        prevented = page.evaluate(
            "(key) => !document.body.dispatchEvent("
            "new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }))",
            key,
        )
        assert not prevented


ROUND = '<div><div class="kit-round">round</div></div>'


def test_rounds_that_come_later_are_staged_as_they_come(bare):
    page = bare("<p>Welcome</p>", busy=True)
    assert shown(page) == ["Welcome"]
    add(page, "<h2>Hours</h2>")
    add(page, ROUND)
    assert shown(page) == ["Welcome"]
    page.keyboard.press("PageDown")
    assert shown(page) == ["Hours", "round"]
    add(page, "<h2>Minutes</h2>")
    assert shown(page) == ["Hours", "round"]
    assert page.locator(".session-pips button").count() == 3
    # A round may also come into a block that is there already.
    add(page, "<div id=cell></div>")
    page.evaluate("document.querySelector('#cell').innerHTML = '<div class=kit-round>late</div>'")
    page.keyboard.press("PageDown")
    assert shown(page) == ["Minutes", "late"]


def test_after_a_reload_the_last_stage_is_shown_once_it_has_loaded(bare, tmp_path):
    page = bare("<h2>Hours</h2>" + ROUND + "<h2>Minutes</h2>" + ROUND)
    page.keyboard.press("PageDown")
    assert heading(page) == "Minutes"
    bare_session(tmp_path, "<h2>Hours</h2>" + ROUND, busy=True)
    reload(page)
    assert heading(page) == "Hours"
    add(page, "<h2>Minutes</h2>" + ROUND)
    page.wait_for_function("document.querySelector('.session-heading').textContent === 'Minutes'")


def test_a_loaded_page_without_rounds_shows_everything(bare):
    page = bare("<h2>One</h2><p>first</p><h2>Two</h2><p>second</p>", busy=True)
    assert shown(page) == ["One", "first"]
    page.evaluate("document.querySelector('main').removeAttribute('aria-busy')")
    page.wait_for_function("!document.documentElement.hasAttribute('data-kit-staged')")
    assert shown(page) == ["One", "first", "Two", "second"]


def test_on_a_board_no_key_of_the_clicker_reloads_the_page(bare):
    prevented = (
        "() => !document.body.dispatchEvent("
        "new KeyboardEvent('keydown', { key: 'F5', bubbles: true, cancelable: true }))"
    )
    assert bare("<h2>Hours</h2>" + ROUND).evaluate(prevented)
    # On a page it does what it always does, where the round has no timer.
    assert not bare("<h2>Hours</h2>" + ROUND, kind="page").evaluate(prevented)


def test_a_round_is_asked_before_the_lesson_moves(bare):
    page = bare("<h2>Hours</h2>" + ROUND + "<h2>Minutes</h2>" + ROUND)
    page.evaluate(
        """() => {
          const round = document.querySelector(".kit-round");
          window.asked = [];
          let left = 2;
          for (const name of ["next", "back", "answers", "timer"]) {
            round.addEventListener(`kit:${name}`, (event) => {
              window.asked.push(name);
              if (name !== "next" || left-- > 0) event.preventDefault();
            });
          }
        }"""
    )
    for key in ("PageDown", "b", ".", "F5", "PageUp", "PageDown"):
        page.keyboard.press(key)
    asked = ["next", "answers", "answers", "timer", "back", "next"]
    assert page.evaluate("window.asked") == asked
    assert heading(page) == "Hours"
    page.keyboard.press("PageDown")
    assert heading(page) == "Minutes"


def test_a_round_may_ask_the_lesson_to_move(bare):
    page = bare("<h2>Hours</h2>" + ROUND + "<h2>Minutes</h2>" + ROUND)
    send = (
        "(name) => [...document.querySelectorAll('.kit-round')].find((e) => e.checkVisibility())"
        ".dispatchEvent(new CustomEvent(name, { bubbles: true }))"
    )
    page.evaluate(send, "kit:onward")
    assert heading(page) == "Minutes"
    page.evaluate(send, "kit:onward")
    assert heading(page) == "Minutes"
    page.evaluate(send, "kit:backward")
    assert heading(page) == "Hours"


def test_a_key_that_is_held_down_turns_one_page(bare):
    page = bare("".join(f"<h2>Part {number}</h2>{ROUND}" for number in range(1, 5)))
    page.keyboard.down("PageDown")
    page.keyboard.down("PageDown")
    page.keyboard.down("PageDown")
    page.keyboard.up("PageDown")
    assert heading(page) == "Part 2"


def test_a_long_text_is_read_to_its_end_before_the_page_is_turned(bare):
    long = "<h2>Story</h2>" + "<p>The ferry waits for the baker.</p>" * 60
    page = bare(long + "<h2>Hours</h2>" + ROUND)
    page.keyboard.press("PageDown")
    assert heading(page) == "Story"
    assert page.evaluate("scrollY") > 300
    presses = 1
    while heading(page) == "Story":
        page.keyboard.press("PageDown")
        presses += 1
    assert presses > 2
    assert page.evaluate("scrollY") == 0


def test_a_full_stop_can_be_typed_into_a_text_field(bare):
    page = bare("<h2>Hours</h2><div><textarea></textarea></div>" + ROUND)
    page.evaluate(
        "document.querySelector('.kit-round').addEventListener('kit:answers', () => {"
        " window.asked = true; })"
    )
    page.locator("main textarea").focus()
    page.keyboard.type("about 4.30")
    assert page.locator("main textarea").input_value() == "about 4.30"
    assert not page.evaluate("window.asked")


def test_combinations_with_other_keys_are_left_to_the_browser(bare):
    page = bare("<h2>Hours</h2>" + ROUND + "<h2>Minutes</h2>" + ROUND)
    for key in ("Control+PageDown", "Alt+ArrowRight", "Shift+PageDown"):
        page.keyboard.press(key)
        assert heading(page) == "Hours"


def test_what_a_widget_paints_inside_rearranges_nothing(bare):
    page = bare("<h2>Hours</h2>" + ROUND + "<h2>Minutes</h2>" + ROUND)
    page.evaluate("document.querySelector('.session-pips button').dataset.same = 'yes'")
    page.evaluate("document.querySelector('.kit-round').innerHTML = '<h2>Inside</h2><p>x</p>'")
    page.evaluate(TWO_FRAMES)
    assert page.locator(".session-pips button").count() == 2
    assert page.locator("[data-same]").count() == 1


def test_at_its_end_a_session_leaves_nothing_behind(bare):
    page = bare("<h2>Hours</h2>" + ROUND + "<h2>Minutes</h2>" + ROUND)
    page.evaluate("window.controller.abort()")
    assert page.locator(".kit-session").count() == 0
    page.keyboard.press("PageDown")
    assert shown(page) == ["Hours", "round"]


def test_the_stage_is_stored_in_the_given_storage(bare):
    storage = (
        ", store: { getItem: (name) => (name === 'market 7/stage' ? '1' : null), "
        "setItem: (name, text) => { (window.kept ??= {})[name] = text; } }"
    )
    page = bare("<h2>Hours</h2>" + ROUND + "<h2>Minutes</h2>" + ROUND, storage=storage)
    assert heading(page) == "Minutes"
    page.keyboard.press("PageUp")
    assert page.evaluate("window.kept['market 7/stage']") == "0"


LESSON = round_block("Hours", "hours") + round_block("Ferry", "ferry")
PLAN = telling(
    ("hours", "kit:round", {"title": "Full hours", "skill": "time.read_hour", "seconds": 180}),
    ("ferry", "kit:round", {"title": "The ferry", "skill": "time.later", "seconds": 120}),
)


def time_shown(page):
    return page.locator(".session-time").inner_text()


def test_the_line_tells_the_time_taken_against_the_time_planned(bare, quiet_page):
    quiet_page.clock.install()
    page = bare(LESSON, begin=PLAN)
    assert time_shown(page) == "5 min"
    # Before anything is done the teacher may wait for the class.
    page.clock.run_for(100_000)
    assert time_shown(page) == "5 min"
    page.keyboard.press("PageDown")
    assert time_shown(page) == "0 of 5 min"
    page.clock.run_for(61_500)
    assert time_shown(page) == "1 of 5 min"
    assert page.locator(".session-time.is-over").count() == 0
    page.clock.run_for(300_000)
    assert time_shown(page) == "6 of 5 min"
    assert page.locator(".session-time.is-over").count() == 1


def test_after_a_reload_the_time_goes_on_where_it_was(bare, quiet_page):
    quiet_page.clock.install()
    page = bare(LESSON, begin=PLAN)
    page.keyboard.press("PageDown")
    page.clock.run_for(125_000)
    reload(page)
    assert time_shown(page) == "2 of 5 min"
    page.clock.run_for(60_000)
    assert time_shown(page) == "3 of 5 min"


def test_working_on_a_round_starts_the_time(bare, quiet_page):
    quiet_page.clock.install()
    page = bare(LESSON, begin=PLAN)
    page.evaluate(telling(("hours", "kit:place", {"task": 0, "phase": "ask", "step": 0})))
    assert time_shown(page) == "5 min"
    page.evaluate(telling(("hours", "kit:place", {"task": 0, "phase": "work", "step": 0})))
    assert time_shown(page) == "0 of 5 min"


def test_pressing_the_current_part_repeats_it(lesson):
    page = lesson("## Hours", HOURS, "## Set", SET)
    pips = page.locator(".session-pips button")
    pips.nth(1).click()
    first = RoundOnPage(page).look()
    for _ in range(4):
        page.keyboard.press("PageDown")
    assert RoundOnPage(page).look() != first
    pips.nth(1).click()
    assert heading(page) == "Set"
    assert RoundOnPage(page).look() == first


def test_full_screen_is_switched_with_one_press(bare):
    page = bare(LESSON)
    button = page.get_by_role("button", name="Full screen")
    button.click()
    page.wait_for_function("document.fullscreenElement === document.documentElement")
    page.get_by_role("button", name="Full screen", pressed=True).wait_for()
    button.click()
    page.wait_for_function("document.fullscreenElement === null")
    page.get_by_role("button", name="Full screen", pressed=False).wait_for()


# What the style sheet says, as hundredths of the screen's shorter side: capitals that are seen
# under 10 and 15 minutes of arc from six times the screen's height. Common practice.
LEAST, AMPLE = 2.5, 3.7


@pytest.mark.screens("board", "tablet")
def test_the_line_and_the_title_can_be_read_from_the_last_row(lesson, screen):
    page = lesson("Bring slate and chalk.", "## Hours", HOURS, "## Set", SET)
    size = (
        "(part) => parseFloat(getComputedStyle(document.querySelector(part)).fontSize) * 100 / "
        + str(screen.height)
    )
    for part in ("h1", ".session-contents button"):
        assert page.evaluate(size, part) >= AMPLE - 0.01
    for part in (".kit-words p", ".session-foot button"):
        assert page.evaluate(size, part) >= LEAST - 0.01
    page.keyboard.press("PageDown")
    for part in (".session-heading", ".session-count", ".session-time"):
        assert page.evaluate(size, part) >= LEAST - 0.01


@pytest.mark.parametrize(("width", "height"), [(320, 640), (360, 740), (1024, 768), (1920, 1080)])
def test_the_line_fits_and_its_buttons_are_large_enough(bare, width, height):
    page = bare(LESSON, begin=PLAN)
    resize(page, width, height)
    page.keyboard.press("PageDown")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    parts = page.locator(".session-bar button:visible")
    assert parts.count() >= 3
    boxes = [part.bounding_box() for part in parts.all()]
    assert all(box["width"] >= 44 and box["height"] >= 44 for box in boxes)
    assert all(box["x"] >= 0 and box["x"] + box["width"] <= width for box in boxes)
    words = page.locator(".session-state").bounding_box()
    assert words["x"] + words["width"] <= min(box["x"] for box in boxes[-3:]) + 1


def test_four_keys_lead_through_a_lesson_and_reload_leaves_it_there(lesson):
    page = lesson("Bring slate and chalk.", "## Half past", TIMED, "## Set", SET)
    for key in ("PageDown", "F5", "PageDown", ".", "PageDown", "PageUp", "PageDown"):
        page.keyboard.press(key)
    here = (heading(page), RoundOnPage(page).look(), time_shown(page))
    assert here[0] == "Set"
    reload(page)
    page.locator(".kit-round:visible .kit-manipulative").wait_for()
    assert (heading(page), RoundOnPage(page).look(), time_shown(page)) == here
