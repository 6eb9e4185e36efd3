"""The teacher's window and panel: in step with the board, from a disk and from a server."""

from __future__ import annotations

import functools
import http.server
import json
import threading

import pytest
from browser.bare_session import bare_session, round_block, telling
from browser.lesson_page import RoundOnPage, lesson_page

from support.accessibility import faults
from support.chromium import reload, resize, visit

STEPS = [
    {"say": "The short hand has passed the 4.", "class": "4", "show": {}},
    {"say": "Count in fives to the long hand.", "class": "5, 10, 15", "show": {}},
]
TASKS = [
    {
        "prompt": "What time does the bell tower show?",
        "say": "Which hand do we read first?",
        "answer": "4:15",
        "spoken": "quarter past four",
        "steps": STEPS,
        "mistakes": [{"rule": "x", "when": [], "answer": "5:15", "teacher": "Read the next hour."}],
    },
    {"prompt": "And now?", "say": "", "answer": "<b>6:00</b>", "spoken": "", "steps": []},
]
LESSON = (
    "<p>Bring slate and chalk.</p>"
    + round_block("Hours", "hours")
    + "<h2>Look</h2><p>A picture.</p>"
    + round_block("Ferry", "ferry")
)
HOURS = {
    "title": "Full hours",
    "skill": "time.read_hour",
    "seed": 11,
    "seconds": 180,
    "tasks": TASKS,
}
FERRY = {"title": "The ferry", "skill": "time.later", "seed": 12, "seconds": 120, "tasks": TASKS}
PLAN = telling(("hours", "kit:round", HOURS), ("ferry", "kit:round", FERRY))
# A browser lets a page open a window only while somebody presses something.
STRICT = """{
  const open = window.open.bind(window);
  window.open = (...given) => (navigator.userActivation.isActive ? open(...given) : null);
}"""


class Quiet(http.server.SimpleHTTPRequestHandler):
    """Serves a folder and says nothing about it."""

    def log_message(self, *_given):
        """Say nothing."""


@pytest.fixture
def address(tmp_path):
    """The page's folder on a server of this machine."""
    handler = functools.partial(Quiet, directory=tmp_path)
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}/"
        server.shutdown()


@pytest.fixture
def bare(quiet_page, tmp_path):
    """Opens a session of two rounds that only tell of themselves, and returns its page."""

    def opened(base="", *, begin=PLAN, **given):
        file = bare_session(tmp_path, LESSON, begin=begin, **given)
        visit(quiet_page, f"{base}{file.name}" if base else file.as_uri())
        return quiet_page

    return opened


def press(page, name):
    page.get_by_role("button", name=name, exact=True).click()


def heading(page):
    return page.locator(".session-heading").inner_text()


def apart(page):
    """Open the window as a teacher does, and return it."""
    press(page, "Teacher")
    with page.expect_popup() as opened:
        press(page, "Open the teacher's window")
    child = opened.value
    child.locator(".script").wait_for()
    return child


def place(page, name, **where):
    page.evaluate(telling((name, "kit:place", {"task": 0, "step": 0, "phase": "ask", **where})))


def test_the_window_holds_what_to_say_the_steps_and_the_answers(bare):
    page = bare()
    page.keyboard.press("PageDown")
    child = apart(page)
    assert child.title() == "Teacher: Market day"
    words = child.locator("body").inner_text()
    for said in (
        "What time does the bell tower show?",
        "Which hand do we read first?",
        "4:15 (quarter past four)",
        "The short hand has passed the 4.",
        "Class: 5, 10, 15",
        "Question 1 of 2",
        "Hours \u00b7 1 of 3",
    ):
        assert said in words
    child.get_by_text("What a wrong answer may mean").click()
    assert child.get_by_text("5:15: Read the next hour.").is_visible()
    # A task may hold any text; it is never read as HTML.
    assert child.locator(".script-answers li").all_inner_texts() == ["4:15", "<b>6:00</b>"]
    # The panel makes room once the window is there.
    assert not page.locator(".session-panel").is_visible()


def test_the_window_follows_the_board(bare):
    page = bare()
    child = apart(page)
    assert child.locator(".script-heading").inner_text() == "Market day"
    page.keyboard.press("PageDown")
    assert "Hours" in child.locator(".script-heading").inner_text()
    place(page, "hours", phase="show", step=2)
    current = child.locator(".script-secret ol").first.locator("[aria-current]")
    assert "Count in fives" in current.inner_text()
    place(page, "hours", task=1)
    assert child.locator(".script-prompt").inner_text() == "And now?"
    twin = {**TASKS[0], "prompt": "Another like this?", "answer": "7:15"}
    place(page, "hours", extra=twin)
    assert child.locator(".script-prompt").inner_text() == "Another like this?"
    assert "7:15" in child.locator(".script-answer").inner_text()
    place(page, "hours", group=[0, 1])
    prompts = ["What time does the bell tower show?", "And now?"]
    assert child.locator(".script-prompt").all_inner_texts() == prompts
    # A round may get other tasks.
    page.evaluate(
        telling(("hours", "kit:round", {**HOURS, "tasks": [{**TASKS[1], "prompt": "New?"}]}))
    )
    assert child.locator(".script-prompt").inner_text() == "New?"
    page.keyboard.press("PageDown")
    assert child.locator(".script-prompt").count() == 0
    assert not child.get_by_role("button", name="Few").is_visible()


def test_the_board_follows_the_window(bare):
    page = bare()
    child = apart(page)
    page.evaluate(
        """() => {
          window.asked = [];
          for (const name of ["answers", "timer"]) {
            document.querySelector(".kit-round")
              .addEventListener(`kit:${name}`, () => window.asked.push(name));
          }
        }"""
    )
    press(child, "Next")
    assert heading(page) == "Hours"
    press(child, "Answer on the board")
    press(child, "Start or pause the timer")
    assert page.evaluate("window.asked") == ["answers", "timer"]
    press(child, "Skip to the next")
    assert heading(page) == "Look"
    child.locator(".script-parts button").nth(2).click()
    assert heading(page) == "Ferry"
    # Who presses a button there can press it again.
    child.keyboard.press("Shift+Tab")
    child.keyboard.press("Enter")
    assert heading(page) == "Look"
    press(child, "Back")
    assert heading(page) == "Hours"


def test_the_clicker_works_with_the_window_in_front(bare):
    page = bare()
    child = apart(page)
    child.bring_to_front()
    child.locator("body").click(position={"x": 3, "y": 3})
    child.keyboard.press("PageDown")
    assert heading(page) == "Hours"
    page.evaluate(
        "document.querySelector('.kit-round').addEventListener('kit:timer', "
        "() => { window.asked = true; })"
    )
    child.keyboard.press("F5")
    assert page.evaluate("window.asked")
    assert child.locator(".script").is_visible()
    child.keyboard.press("PageUp")
    assert heading(page) == ""


def saved_session(page):
    """What is saved when a teacher asks for it in the panel beside the board."""
    with page.expect_download() as caught:
        press(page, "Save the session")
    return json.loads(caught.value.path().read_text("utf-8"))


def test_two_tabs_of_one_session_save_one_record_and_loading_it_again_too(bare):
    page = bare()
    other = page.context.new_page()
    visit(other, page.url)
    for each in (page, other):
        press(each, "Teacher")
    first = saved_session(page)
    assert (saved_session(page)["id"], saved_session(page)["revision"]) == (first["id"], 1)
    other.keyboard.press("PageDown")
    press(other, "Few")
    second = saved_session(other)
    assert (second["id"], second["revision"]) == (first["id"], 2)
    reload(page)
    press(page, "Teacher")
    third = saved_session(page)
    assert third["id"] == first["id"]
    assert third["revision"] in (2, 3)
    press(page, "Most had it")
    assert saved_session(page)["revision"] > third["revision"]


def test_marks_are_stored_and_saved_in_the_session_file(bare, quiet_page):
    quiet_page.clock.install(time="2026-11-25T09:00:00")
    page = bare()
    child = apart(page)
    page.clock.pause_at("2026-11-25T09:05:00")
    press(child, "Next")
    page.clock.run_for(75_200)
    press(child, "About half")
    assert child.get_by_role("button", name="About half").first.get_attribute("aria-pressed") == (
        "true"
    )
    child.locator(".script-parts button").nth(2).click()
    press(child, "Most had it")
    press(child, "Most had it")
    with child.expect_download() as caught:
        press(child, "Save the session")
    assert caught.value.suggested_filename == "session-market-day-2026-11-25.json"
    saved = json.loads(caught.value.path().read_text("utf-8"))
    assert saved["version"] == 2
    assert len(saved["id"]) == 32
    assert saved["revision"] == 1
    assert (saved["title"], saved["seed"], saved["date"]) == ("Market day", 7, "2026-11-25")
    taught = ("round", "title", "skill", "seed", "planned", "used", "mark")
    assert [tuple(each[name] for name in taught) for each in saved["rounds"]] == [
        (1, "Full hours", "time.read_hour", 11, 180, 75, "half"),
        # Pressed twice it is taken back.
        (2, "The ferry", "time.later", 12, 120, 0, None),
    ]
    for each in saved["rounds"]:
        assert all({"prompt", "asked"} == set(task) for task in each["tasks"])
    # The same stands there as text, for browsers that save nothing.
    assert json.loads(child.get_by_label("The session as text").input_value()) == saved
    page.keyboard.press("PageUp")
    page.keyboard.press("PageUp")
    reload(page)
    press(page, "Teacher")
    assert page.locator(".session-panel [aria-pressed='true']").inner_text() == "About half"


def test_where_saving_is_refused_the_text_can_be_copied(bare, quiet_page):
    quiet_page.add_init_script("URL.createObjectURL = () => { throw new Error('refused'); };")
    page = bare()
    page.keyboard.press("PageDown")
    press(page, "Teacher")
    press(page, "Few")
    press(page, "Save the session")
    assert page.get_by_text("This browser saves no file. Copy this text.").is_visible()
    text = page.get_by_label("The session as text")
    assert json.loads(text.input_value())["rounds"][0]["mark"] == "few"
    page.context.grant_permissions([])
    press(page, "Copy the text")
    page.get_by_text("The text is marked.").or_(page.get_by_text("Copied.")).wait_for()
    marked = text.evaluate("(area) => area.value.slice(area.selectionStart, area.selectionEnd)")
    assert marked == text.input_value()


def test_without_storage_marks_last_until_the_page_closes(bare):
    refused = "{ getItem() { throw new Error(); }, setItem() { throw new Error(); } }"
    page = bare(storage=f", store: {refused}")
    child = apart(page)
    press(child, "Next")
    press(child, "Few")
    press(child, "Save the session")
    saved = json.loads(child.get_by_label("The session as text").input_value())
    assert [each["mark"] for each in saved["rounds"]] == ["few", None]


def test_in_the_panel_answers_are_hidden_until_asked(bare):
    page = bare()
    page.keyboard.press("PageDown")
    toggle = page.get_by_role("button", name="Teacher", exact=True)
    panel = page.locator(".session-panel")
    assert not panel.is_visible()
    toggle.focus()
    page.keyboard.press("Enter")
    assert panel.is_visible()
    assert toggle.get_attribute("aria-expanded") == "true"
    assert page.evaluate("document.activeElement.classList.contains('session-panel')")
    for secret in ("4:15", "has passed the 4", "5, 10, 15", "next hour"):
        assert secret not in panel.inner_text()
    assert "Which hand do we read first?" in panel.inner_text()
    press(page, "Show the answers")
    assert "4:15" in panel.inner_text()
    page.keyboard.press("Escape")
    assert not panel.is_visible()
    assert toggle.evaluate("(button) => button === document.activeElement")
    # Opened again it begins hidden.
    page.keyboard.press("Enter")
    assert "4:15" not in panel.inner_text()
    # The clicker goes on over it.
    page.keyboard.press("PageDown")
    assert heading(page) == "Look"


def test_where_no_window_opens_the_panel_says_so_and_does_the_same(bare, quiet_page):
    quiet_page.add_init_script("window.open = () => null;")
    page = bare()
    press(page, "Teacher")
    press(page, "Open the teacher's window")
    assert page.get_by_text("The browser opened no window.").is_visible()
    press(page, "Next")
    assert heading(page) == "Hours"


def test_a_window_that_is_closed_can_be_opened_again(bare):
    page = bare()
    apart(page).close()
    again = apart(page)
    press(again, "Next")
    assert heading(page) == "Hours"


def test_after_a_reload_a_served_board_takes_over_its_window(bare, address):
    page = bare(address)
    child = apart(page)
    press(child, "Next")
    reload(page)
    child.get_by_role("button", name="Next", exact=True).wait_for()
    assert "Hours" in child.locator(".script-heading").inner_text()
    press(child, "Next")
    assert heading(page) == "Look"
    assert len(page.context.pages) == 2


def test_after_a_reload_on_a_disk_the_window_opens_again_with_the_next_press(bare, quiet_page):
    quiet_page.add_init_script(STRICT)
    page = bare()
    child = apart(page)
    press(child, "Next")
    reload(page)
    page.wait_for_function("document.querySelector('.session-heading').textContent === 'Hours'")
    assert child.is_closed()
    with page.expect_popup() as opened:
        page.keyboard.press("PageDown")
    assert heading(page) == "Look"
    press(opened.value, "Next")
    assert heading(page) == "Ferry"


def test_a_reloaded_window_is_filled_again(bare, address):
    page = bare(address)
    child = apart(page)
    child.reload()
    child.locator(".script").wait_for()
    press(child, "Next")
    assert heading(page) == "Hours"


def test_a_window_reloaded_on_a_disk_opens_again_with_the_next_press(bare):
    page = bare()
    child = apart(page)
    with child.expect_event("close"):
        child.reload()
    with page.expect_popup() as opened:
        page.keyboard.press("PageDown")
    press(opened.value, "Next")
    assert heading(page) == "Look"


def test_the_window_ends_with_the_session(bare):
    page = bare()
    child = apart(page)
    with child.expect_event("close"):
        page.evaluate("window.controller.abort()")


def test_the_window_reads_a_real_round_as_it_is_taught(quiet_page, tmp_path):
    page = quiet_page
    call = 'play("time.read_five_minutes", tasks=2, seconds=90, seed=11, timer="shown")'
    visit(page, lesson_page(tmp_path, "## Fives", call))
    round_ = RoundOnPage(page)
    round_.root.locator(".kit-manipulative").wait_for()
    first, second = round_.tasks
    child = apart(page)
    assert child.locator(".script-prompt").inner_text() == first["prompt"]
    assert first["answer"] in child.locator(".script-answer").inner_text()
    press(child, "Start or pause the timer")
    assert round_.phase == "work"
    assert "Time left: 1 minute" in child.locator(".script-clocks").inner_text()
    steps = []
    for _ in range(40):
        press(child, "Next")
        current = child.locator(".script-secret ol").first.locator("[aria-current]")
        if round_.phase == "show" and child.locator(".script-quiet").first.inner_text() == (
            "Question 1 of 2"
        ):
            steps.append(current.inner_text())
        if child.locator(".script-prompt").inner_text() == second["prompt"] and (
            "Question 2" in child.locator(".script-read").inner_text()
        ):
            break
    assert len(steps) == len(first["steps"])
    assert all(step["say"] in said for step, said in zip(first["steps"], steps, strict=True))
    assert second["answer"] in child.locator(".script-answer").inner_text()
    press(child, "Repeat this round")
    assert "Question 1 of 2" in child.locator(".script-read").inner_text()
    press(child, "Answer on the board")
    assert round_.phase == "check"


def test_a_lesson_is_restarted_only_after_a_confirmation(quiet_page, tmp_path):
    page = quiet_page
    calls = ("## Hours", 'play("time.read_hour", tasks=1, seed=11)')
    visit(page, lesson_page(tmp_path, *calls, "## Set", 'play("time.set_hands", tasks=1, seed=12)'))
    page.locator(".kit-round:visible .kit-manipulative").wait_for()
    first = RoundOnPage(page).look()
    for _ in range(3):
        page.keyboard.press("PageDown")
    press(page, "Pen")
    page.mouse.move(300, 300)
    page.mouse.down()
    page.mouse.move(500, 500)
    page.mouse.up()
    press(page, "Pen")
    press(page, "Teacher")
    press(page, "Few")
    press(page, "Start the lesson afresh")
    press(page, "Keep it")
    assert page.locator(".session-panel [aria-pressed='true']").inner_text() == "Few"
    press(page, "Start the lesson afresh")
    with page.expect_navigation():
        press(page, "Clear it")
    page.locator(".kit-round:visible .kit-manipulative").wait_for()
    assert RoundOnPage(page).look() == first
    assert page.locator(".ink-lines > g").count() == 0
    press(page, "Teacher")
    assert page.locator(".session-panel [aria-pressed='true']").count() == 0


@pytest.mark.screens("board", "tablet", "phone")
def test_nothing_is_found_on_panel_and_window_and_everything_can_be_pressed(bare, screen):
    page = bare()
    page.keyboard.press("PageDown")
    press(page, "Teacher")
    press(page, "Show the answers")
    press(page, "Save the session")
    press(page, "Start the lesson afresh")
    assert faults(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= screen.width
    panel = page.locator(".session-panel")
    box = panel.bounding_box()
    assert box["x"] >= 0
    assert box["y"] + box["height"] <= screen.height
    sizes = [part.bounding_box() for part in panel.locator("button:visible").all()]
    assert len(sizes) > 10
    assert all(size["width"] >= 44 and size["height"] >= 44 for size in sizes)
    with page.expect_popup() as opened:
        press(page, "Open the teacher's window")
    child = opened.value
    resize(child, min(screen.width, 900), 760)
    press(child, "Most had it")
    assert faults(child) == []


@pytest.mark.parametrize("width", [320, 450])
def test_on_a_small_screen_nothing_of_the_panel_is_lost(bare, width):
    # 450 is a window of 900 px at 200 %.
    page = bare()
    resize(page, width, 640)
    page.keyboard.press("PageDown")
    press(page, "Teacher")
    press(page, "Show the answers")
    assert page.locator(".session-panel").evaluate(
        "(panel) => [panel, ...panel.querySelectorAll('*')]"
        ".every((part) => part.clientWidth === 0 || part.scrollWidth <= part.clientWidth + 1)"
    )
    for name in ("Few", "Repeat this round", "Save the session", "Start the lesson afresh"):
        part = page.get_by_role("button", name=name, exact=True)
        part.scroll_into_view_if_needed()
        box = part.bounding_box()
        assert box["x"] >= 0
        assert box["x"] + box["width"] <= width
        assert box["y"] + box["height"] <= 640
