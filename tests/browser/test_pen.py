"""The pen over a lesson: by mouse, finger and pen, wiped, taken back, and kept."""

from __future__ import annotations

import pytest
from browser.bare_session import bare_session, round_block, telling
from browser.lesson_page import lesson_page

from support.accessibility import faults
from support.chromium import reload, visit

LESSON = round_block("Hours", "hours") + round_block("Ferry", "ferry")
STROKES = ".ink-lines > g"
# Where the ink lies, in hundredths of the page's breadth and height.
PLACE = """(index) => {
  const paper = document.querySelector(".session-ink").getBoundingClientRect();
  const { left, right, top, bottom } =
    document.querySelectorAll(".ink-lines > g")[index].getBoundingClientRect();
  return [(left - paper.left) / paper.width, (right - paper.left) / paper.width,
    (top - paper.top) / paper.height, (bottom - paper.top) / paper.height]
    .map((share) => Math.round(1000 * share) / 10);
}"""


@pytest.fixture
def bare(quiet_page, tmp_path):
    """Opens a session of two rounds that do nothing, and returns its page."""

    def opened(**given):
        visit(quiet_page, bare_session(tmp_path, LESSON, **given).as_uri())
        return quiet_page

    return opened


def pen(page):
    return page.get_by_role("button", name="Pen", exact=True)


def tool(page, name):
    return page.get_by_role("group", name="Pen").get_by_role("button", name=name)


def draw(page, *points):
    page.mouse.move(*points[0])
    page.mouse.down()
    for point in points[1:]:
        page.mouse.move(*point, steps=4)
    page.mouse.up()


def strokes(page):
    return page.locator(STROKES).count()


def breadth(page, index):
    """How broad a stroke is where it is broadest, in pixels."""
    widths = page.locator(STROKES).nth(index).locator("path").all()
    return max(float(path.get_attribute("stroke-width")) for path in widths)


def wipe(page, done, of):
    page.evaluate(telling(("hours", "kit:wipe", {"done": done, "of": of})))


def test_what_is_drawn_is_seen_where_it_is_drawn(bare):
    page = bare()
    pen(page).click()
    draw(page, (400, 300), (800, 600))
    assert strokes(page) == 1
    left, right, top, bottom = page.evaluate(PLACE, 0)
    assert (left, right) == pytest.approx((100 * 400 / 1920, 100 * 800 / 1920), abs=0.5)
    assert (top, bottom) == pytest.approx((100 * 300 / 1080, 100 * 600 / 1080), abs=0.8)
    draw(page, (900, 300), (900, 300))
    assert strokes(page) == 2


def test_while_the_pen_is_off_nothing_covers_the_lesson(bare):
    page = bare()
    page.evaluate(
        "document.querySelectorAll('main button').forEach((each) => each.addEventListener("
        "'click', () => { window.pressed = (window.pressed ?? 0) + 1; }))"
    )
    within = page.get_by_role("button", name="In hours")
    within.click()
    pen(page).click()
    draw(page, (400, 300), (800, 600))
    box = within.bounding_box()
    page.mouse.click(box["x"] + 5, box["y"] + 5)
    assert page.evaluate("window.pressed") == 1
    assert strokes(page) == 2
    pen(page).click()
    within.click()
    assert page.evaluate("window.pressed") == 2
    draw(page, (400, 300), (800, 600))
    assert strokes(page) == 2
    styles = page.evaluate(
        "(({ pointerEvents, touchAction }) => [pointerEvents, touchAction])"
        "(getComputedStyle(document.querySelector('.session-ink')))"
    )
    assert styles == ["none", "auto"]


def test_undo_takes_back_stroke_by_stroke_and_the_wiping_too(bare):
    page = bare()
    pen(page).click()
    assert tool(page, "Undo").get_attribute("aria-disabled") == "true"
    assert tool(page, "Wipe").get_attribute("aria-disabled") == "true"
    for left in (200, 400, 600):
        draw(page, (left, 300), (left + 100, 400))
    tool(page, "Undo").click()
    assert strokes(page) == 2
    tool(page, "Wipe").click()
    assert strokes(page) == 0
    tool(page, "Undo").click()
    assert strokes(page) == 2
    tool(page, "Undo").click()
    tool(page, "Undo").click()
    assert strokes(page) == 0
    assert tool(page, "Undo").get_attribute("aria-disabled") == "true"


def test_each_part_has_its_own_strokes_and_they_are_stored(bare):
    page = bare()
    pen(page).click()
    draw(page, (400, 300), (800, 600))
    here = page.evaluate(PLACE, 0)
    page.keyboard.press("PageDown")
    assert page.locator(".session-heading").inner_text() == "Ferry"
    assert strokes(page) == 0
    draw(page, (100, 300), (100, 600))
    draw(page, (200, 300), (200, 600))
    page.keyboard.press("PageUp")
    assert strokes(page) == 1
    reload(page)
    assert strokes(page) == 1
    assert page.evaluate(PLACE, 0) == here
    assert pen(page).get_attribute("aria-pressed") == "false"
    page.keyboard.press("PageDown")
    assert strokes(page) == 2
    # What was drawn before the page was loaded anew can be taken back as well.
    pen(page).click()
    tool(page, "Undo").click()
    assert strokes(page) == 1


def test_it_grows_and_shrinks_with_the_board(bare):
    page = bare()
    pen(page).click()
    draw(page, (480, 540), (1440, 540))
    before, broad = page.evaluate(PLACE, 0), breadth(page, 0)
    page.set_viewport_size({"width": 960, "height": 540})
    page.wait_for_function("document.querySelector('.session-ink').clientWidth === 960")
    assert page.evaluate(PLACE, 0) == pytest.approx(before, abs=0.5)
    assert breadth(page, 0) == pytest.approx(broad / 2, rel=0.1)


def test_the_count_aloud_wipes_it_share_by_share(bare):
    page = bare()
    pen(page).click()
    for left in range(100, 1100, 100):
        draw(page, (left, 300), (left + 50, 400))
    left = []
    for done in range(6):
        wipe(page, done, 5)
        left.append(strokes(page))
    assert left == [10, 8, 6, 4, 2, 0]
    # Who counts back gets back, and one undo brings all of it.
    wipe(page, 3, 5)
    assert strokes(page) == 4
    wipe(page, 5, 5)
    tool(page, "Undo").click()
    assert strokes(page) == 10
    # What is written meanwhile goes at the end, too.
    wipe(page, 2, 4)
    assert strokes(page) == 5
    draw(page, (100, 700), (150, 800))
    wipe(page, 3, 4)
    wipe(page, 4, 4)
    assert strokes(page) == 0
    reload(page)
    assert strokes(page) == 0


def test_a_round_that_is_away_wipes_nothing(bare):
    page = bare()
    page.keyboard.press("PageDown")
    pen(page).click()
    draw(page, (400, 300), (800, 600))
    wipe(page, 5, 5)
    assert strokes(page) == 1


def test_a_finger_draws_and_a_second_one_does_not_disturb_it(bare):
    page = bare()
    pen(page).click()
    cdp = page.context.new_cdp_session(page)

    def touch(kind, *points):
        found = [{"x": x, "y": y, "id": number} for number, (x, y) in enumerate(points)]
        cdp.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": found})

    touch("touchStart", (300, 300))
    touch("touchMove", (400, 350))
    touch("touchStart", (400, 350), (900, 900))
    touch("touchMove", (500, 400), (950, 950))
    touch("touchEnd")
    assert strokes(page) == 1
    left, right, *_ = page.evaluate(PLACE, 0)
    assert (left, right) == pytest.approx((15.6, 26), abs=0.6)


def test_a_pen_draws_broader_where_it_is_pressed_and_the_hand_beside_it_draws_nothing(bare):
    page = bare()
    pen(page).click()
    cdp = page.context.new_cdp_session(page)

    def stroke(y, force):
        common = {"pointerType": "pen", "button": "left", "y": y, "force": force}
        cdp.send("Input.dispatchMouseEvent", {"type": "mousePressed", "x": 300, **common})
        for x in range(320, 620, 20):
            cdp.send(
                "Input.dispatchMouseEvent", {"type": "mouseMoved", "x": x, "buttons": 1, **common}
            )
        cdp.send("Input.dispatchMouseEvent", {"type": "mouseReleased", "x": 620, **common})

    stroke(300, 0.2)
    stroke(500, 0.9)
    assert strokes(page) == 2
    assert breadth(page, 1) > 1.5 * breadth(page, 0)
    points = [{"x": 900, "y": 900}]
    cdp.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": points})
    cdp.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    assert strokes(page) == 2


def test_a_hand_on_the_glass_does_not_prevent_the_pen_from_writing(bare):
    page = bare()
    pen(page).click()
    cdp = page.context.new_cdp_session(page)

    def palm(kind, *points):
        found = [{"x": x, "y": y} for x, y in points]
        cdp.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": found})

    def write(kind, x):
        common = {"pointerType": "pen", "button": "left", "buttons": 1, "y": 300, "force": 0.5}
        cdp.send("Input.dispatchMouseEvent", {"type": kind, "x": x, **common})

    palm("touchStart", (900, 900))
    palm("touchMove", (920, 910))
    write("mousePressed", 300)
    for x in range(320, 620, 20):
        write("mouseMoved", x)
    palm("touchMove", (940, 920))
    assert strokes(page) == 1
    palm("touchEnd")
    write("mouseMoved", 640)
    write("mouseReleased", 640)
    assert strokes(page) == 1
    left, right, *_ = page.evaluate(PLACE, 0)
    assert (left, right) == pytest.approx((100 * 300 / 1920, 100 * 640 / 1920), abs=0.6)


def test_keys_turn_it_on_and_off_and_the_clicker_goes_on(bare):
    page = bare()
    for _ in range(10):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.textContent") == "Pen":
            break
    page.keyboard.press("Enter")
    assert pen(page).get_attribute("aria-pressed") == "true"
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "Next"
    page.keyboard.press("Enter")
    assert page.locator(".session-heading").inner_text() == "Ferry"
    page.keyboard.press("PageUp")
    assert page.locator(".session-heading").inner_text() == "Hours"
    pen(page).focus()
    page.keyboard.press("Space")
    assert pen(page).get_attribute("aria-pressed") == "false"
    assert not page.get_by_role("group", name="Pen").is_visible()


def test_without_storage_the_pen_still_writes(bare):
    refused = "{ getItem() { throw new Error(); }, setItem() { throw new Error(); } }"
    page = bare(storage=f", store: {refused}")
    pen(page).click()
    draw(page, (400, 300), (800, 600))
    assert strokes(page) == 1
    page.keyboard.press("PageDown")
    page.keyboard.press("PageUp")
    # Only as long as the part is shown: there is nowhere to keep it.
    assert strokes(page) == 0


def test_stored_strokes_that_are_broken_are_left_out(bare):
    kept = "(key) => (key.includes('ink') ? '[[1,2],7,[500,500,100]]' : null)"
    page = bare(storage=f", store: {{ getItem: {kept}, setItem() {{}} }}")
    assert strokes(page) == 1


def test_a_class_that_counts_aloud_wipes_the_board(quiet_page, tmp_path):
    page = quiet_page
    call = 'play("time.read_hour", tasks=1, seed=11, count_aloud=5)'
    visit(page, lesson_page(tmp_path, "## Hours", call))
    round_ = page.locator(".kit-round:visible")
    round_.locator(".kit-manipulative").wait_for()
    pen(page).click()
    for left in range(200, 1400, 200):
        draw(page, (left, 300), (left + 100, 500))
    seen = []
    for _ in range(60):
        page.keyboard.press("PageDown")
        if round_.get_attribute("data-phase") == "wipe":
            seen.append(strokes(page))
    assert len(set(seen)) > 3
    assert seen == sorted(seen, reverse=True)
    assert seen[-1] == 0
    tool(page, "Undo").click()
    assert strokes(page) == 6


@pytest.mark.screens("board", "tablet", "phone")
def test_its_tools_are_large_fit_and_say_what_they_are(quiet_page, tmp_path, screen):
    page = quiet_page
    visit(page, lesson_page(tmp_path, "## Hours", 'play("time.read_hour", tasks=1, seed=11)'))
    page.locator(".kit-round .kit-manipulative").wait_for()
    pen(page).click()
    draw(page, (100, 200), (200, 300), (120, 350))
    group = page.get_by_role("group", name="Pen")
    for button in group.get_by_role("button").all():
        box = button.bounding_box()
        assert box["width"] >= 44
        assert box["height"] >= 44
        assert box["x"] >= 0
        assert box["x"] + box["width"] <= screen.width
        assert box["y"] + box["height"] <= screen.height
    for name in ("Undo", "Wipe", "Back", "Next"):
        assert group.get_by_role("button", name=name).is_visible()
    assert page.evaluate("document.documentElement.scrollWidth") <= screen.width
    assert page.evaluate("document.documentElement.scrollHeight") <= screen.height
    assert faults(page) == []
