"""The clock in a browser: taken by mouse, finger and keys, and looked at on three screens."""

from __future__ import annotations

from time import time

import pytest
from browser.harness import open_widget

from manipulatives.maths.time.dial import dial_at
from manipulatives.widgets.clock import Clock
from support.touch import Fingers

# From degrees and hundredths of the dial's radius to pixels.
SPOT = """([degrees, radius]) => {
  const turn = degrees * Math.PI / 180;
  const point = new DOMPoint(radius * Math.sin(turn), -radius * Math.cos(turn));
  const drawing = document.querySelector(".clock-face > svg");
  const { x, y } = point.matrixTransform(drawing.getScreenCTM());
  return [x, y];
}"""
ALL_SHOWN = dict.fromkeys(
    ("minute_numbers", "digital", "words", "sector", "arc", "half_day", "panel"),
    True,
)
WRONG = {"hour": 240, "minute": 35, "half": "am"}


class Board:
    """A clock on a page, and what a test does with it."""

    def __init__(self, page):
        self.page = page

    def show(self, time=None, *, place="height: 100vh", **traits):
        """Show a clock; the panel is left out unless the test asks for it."""
        open_widget(self.page, Clock(time, **{"panel": False, **traits}), place=place)

    @property
    def dial(self):
        """The dial that the model holds."""
        return self.page.evaluate("kit.get('dial')")

    @property
    def time(self):
        """The time that the dial shows."""
        dial = self.dial
        assert dial["hour"] % 60 == dial["minute"], "no clock could show it"
        return f"{dial['hour'] // 60 or 12}:{dial['minute']:02} {dial['half']}"

    def spot(self, degrees, radius):
        """Where on the page a place of the face is."""
        return self.page.evaluate(SPOT, [degrees, radius])

    def angle(self, hand):
        """The angle of a hand."""
        return {"hour": self.dial["hour"] / 2, "minute": self.dial["minute"] * 6}[hand]

    def drag(self, hand, turn, *, radius=None, let_go=True):
        """Drag a hand around by so many degrees, with the mouse."""
        radius = radius or {"hour": 35, "minute": 75}[hand]
        start = self.angle(hand)
        self.page.mouse.move(*self.spot(start, radius))
        self.page.mouse.down()
        for degrees in way(turn):
            self.page.mouse.move(*self.spot(start + degrees, radius))
        if let_go:
            self.page.mouse.up()

    def swipe(self, hand, turn):
        """Drag a hand around by so many degrees, with a finger."""
        radius = {"hour": 35, "minute": 75}[hand]
        start = self.angle(hand)
        session = self.page.context.new_cdp_session(self.page)

        def touch(kind, *points):
            spots = [dict(zip("xy", self.spot(*point), strict=True)) for point in points]
            session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": spots})

        touch("touchStart", (start, radius))
        for degrees in way(turn):
            touch("touchMove", (start + degrees, radius))
        touch("touchEnd")

    def press(self, name):
        """Press a button, even one that says it has nothing to do."""
        self.page.get_by_role("button", name=name, exact=True).click(force=True)

    def handle(self, hand):
        """The slider of a hand."""
        return self.page.get_by_role(
            "slider", name={"hour": "Short hand", "minute": "Long hand"}[hand]
        )

    def says(self, sentence):
        """Wait until the live region says a sentence."""
        self.page.wait_for_function(
            "sentence => document.querySelector('#kit-live')?.textContent === sentence",
            arg=sentence,
        )


def way(turn):
    """The degrees that a finger passes on its way, five at a time."""
    steps = max(1, round(abs(turn) / 5))
    return [turn * step / steps for step in range(1, steps + 1)]


@pytest.fixture
def board(quiet_page):
    return Board(quiet_page)


MOVES = [
    ({}, "4:00", "minute", 90, {"hour": 255, "minute": 15, "half": "am"}),
    ({}, "4:00", "hour", 45, {"hour": 330, "minute": 30, "half": "am"}),
    ({"hour_drag": "steps"}, "4:35", "hour", 62, {"hour": 395, "minute": 35, "half": "am"}),
    ({"mode": "free"}, "4:00", "minute", 90, {"hour": 240, "minute": 15, "half": "am"}),
    ({"mode": "free"}, "4:00", "hour", 20, {"hour": 280, "minute": 0, "half": "am"}),
    ({}, "11:50", "minute", 120, {"hour": 10, "minute": 10, "half": "pm"}),
    ({}, "12:10", "minute", -120, {"hour": 710, "minute": 50, "half": "am"}),
    ({}, "11:00", "hour", 60, {"hour": 60, "minute": 0, "half": "pm"}),
    ({}, "1:00 pm", "hour", -60, {"hour": 660, "minute": 0, "half": "am"}),
]


@pytest.mark.parametrize("move", MOVES, ids=repr)
def test_a_hand_is_dragged_by_mouse(board, move):
    traits, time, hand, turn, after = move
    board.show(time, **traits)
    board.drag(hand, turn)
    assert board.dial == after


@pytest.mark.screens("tablet", "phone")
@pytest.mark.parametrize("move", MOVES, ids=repr)
def test_a_hand_is_dragged_by_a_finger(board, move):
    traits, time, hand, turn, after = move
    board.show(time, **traits)
    board.swipe(hand, turn)
    assert board.dial == after
    assert board.page.evaluate("scrollY") == 0


@pytest.mark.screens("phone")
def test_a_finger_beside_the_hands_scrolls_the_page(board):
    board.show("4:35", place="height: 700px; margin-bottom: 1500px")
    x, y = board.spot(300, 80)
    session = board.page.context.new_cdp_session(board.page)
    for kind, down in (("touchStart", 0), *(("touchMove", step) for step in range(-10, -201, -10))):
        points = [{"x": x, "y": y + down}]
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    board.page.wait_for_function("scrollY > 100")
    assert board.time == "4:35 am"


@pytest.mark.parametrize("hand", ["hour", "minute"])
@pytest.mark.parametrize("radius", [20, 30, 40, 48])
def test_a_hand_is_taken_anywhere_along_its_length(board, hand, radius):
    board.show("4:35", mode="free")
    board.drag(hand, 30, radius=radius)
    expected = {"hour": {**dial_at(275), "hour": 335}, "minute": {**dial_at(275), "minute": 40}}
    assert board.dial == expected[hand]


def test_a_hand_does_not_jump_to_the_finger(board):
    board.show("4:35", mode="free", snap=1)
    beside = board.angle("minute") + 5
    board.page.mouse.move(*board.spot(beside, 75))
    board.page.mouse.down()
    assert board.dial == dial_at(275)
    board.page.mouse.move(*board.spot(beside + 6, 75))
    assert board.dial["minute"] == 36
    board.page.mouse.move(*board.spot(beside, 75))
    assert board.dial == dial_at(275)
    board.page.mouse.up()


@pytest.mark.parametrize(("radius", "hand"), [(24, "hour"), (80, "minute")])
@pytest.mark.parametrize("time", ["12:00", "1:05", "10:55"])
def test_of_two_hands_together_each_can_be_taken(board, time, radius, hand):
    board.show(time, mode="free")
    before = board.dial
    board.drag(hand, 30, radius=radius)
    other = "minute" if hand == "hour" else "hour"
    assert board.dial[hand] != before[hand]
    assert board.dial[other] == before[other]


def test_a_finger_that_slips_off_the_clock_still_moves_the_hand(board):
    board.show("12:00", place="width: 500px; height: 500px")
    board.drag("minute", 0, let_go=False)
    board.page.mouse.move(1500, board.spot(0, 0)[1])
    board.page.mouse.up()
    assert board.time == "12:15 pm"


def test_every_change_is_set_once_and_seen_before_it_is_told(board):
    board.show("12:00")
    board.page.evaluate("""() => {
      const handle = document.querySelectorAll(".clock-handle")[1];
      window.seen = [];
      document.querySelector(".kit-clock").addEventListener("kit:change", (event) => {
        const { minutes } = event.currentTarget.facts();
        window.seen.push([minutes, Number(handle.getAttribute("aria-valuenow")), kit.sets.length]);
      });
    }""")
    board.drag("minute", 60)
    assert board.page.evaluate("seen") == [[5, 5, 1], [10, 10, 2]]
    assert [value["minute"] for _, value in board.page.evaluate("kit.sets")] == [5, 10]
    assert board.page.evaluate("kit.saves") == 2


def test_a_drag_is_painted_in_the_frame_that_it_happens_in(board):
    """On a processor four times as slow the hand has moved before the frame is made."""
    board.show("12:00", snap=1, words=True, digital=True, arc=True, sector=True)
    board.page.context.new_cdp_session(board.page).send(
        "Emulation.setCPUThrottlingRate", {"rate": 4}
    )
    board.page.evaluate("""() => {
      const hand = document.querySelector("g.clock-minute");
      window.frames = [];
      // Told before the clock hears of the move; asked when the same frame is about to be drawn.
      document.addEventListener("pointermove", () => requestAnimationFrame(() => {
        const [across, down] = getComputedStyle(hand).transform.match(/-?[0-9.]+/g).map(Number);
        const shown = (Math.atan2(down, across) * 180 / Math.PI + 360) % 360;
        window.frames.push([shown, kit.get("dial").minute * 6]);
      }), true);
    }""")
    board.drag("minute", 300)
    shown = board.page.evaluate("frames")
    assert len(shown) >= 30
    assert [angle for angle, _ in shown] == pytest.approx([angle for _, angle in shown], abs=0.01)
    assert shown[-1][1] == 300


def test_a_whole_drag_is_one_step_back(board):
    board.show("4:35")
    board.drag("minute", 200)
    board.drag("hour", 60)
    moved = board.time
    board.press("Undo")
    board.press("Undo")
    assert board.time == "4:35 am"
    assert board.page.get_by_role("button", name="Undo").get_attribute("aria-disabled") == "true"
    board.press("Undo")
    assert board.time == "4:35 am"
    assert moved != "4:35 am"


def test_reset_goes_to_the_beginning_and_can_be_undone(board):
    board.show("4:35")
    board.drag("minute", 90)
    board.drag("minute", 90)
    moved = board.time
    board.press("Reset")
    assert board.time == "4:35 am"
    board.press("Undo")
    assert board.time == moved


def test_a_dial_from_outside_is_shown_and_is_a_new_beginning(board):
    board.show("4:35", digital=True)
    board.drag("minute", 90)
    board.page.evaluate("dial => kit.outside('dial', dial)", dial_at(600))
    assert board.page.locator(".clock-digits").inner_text() == "10:00"
    board.press("Undo")
    assert board.time == "10:00 am"
    board.drag("minute", 90)
    board.press("Reset")
    assert board.time == "10:00 am"
    assert board.page.evaluate("document.querySelector('.kit-clock').facts().minutes") == 600


def test_a_dial_from_outside_ends_a_drag(board):
    board.show("4:35")
    board.drag("minute", 60, let_go=False)
    board.page.evaluate("dial => kit.outside('dial', dial)", dial_at(600))
    board.page.mouse.move(*board.spot(0, 75))
    board.page.mouse.up()
    assert board.time == "10:00 am"


@pytest.mark.parametrize("again", [False, True])
def test_a_hand_is_tapped_and_goes_where_the_face_is_tapped(board, again):
    board.show("4:00", mode="free")
    board.page.mouse.click(*board.spot(0, 75))
    board.says("Now tap where the hand goes.")
    if again:
        board.page.mouse.click(*board.spot(0, 75))
    board.page.mouse.click(*board.spot(212, 60))
    assert board.dial["minute"] == (0 if again else 35)
    assert board.dial["hour"] == 240
    board.page.mouse.click(*board.spot(90, 60))
    assert board.dial["minute"] == (0 if again else 35), "it was put down"
    board.press("Undo")
    assert board.time == "4:00 am"


def test_a_hand_that_is_moved_a_little_and_slowly_is_not_tapped(board):
    board.show("4:00", mode="free", snap=1)
    x, y = board.spot(120, 45)
    protocol = board.page.context.new_cdp_session(board.page)
    now = time()
    for kind, by, later in (("Pressed", 0, 0), ("Moved", 4, 0.4), ("Released", 4, 0.4)):
        protocol.send(
            "Input.dispatchMouseEvent",
            {
                "type": f"mouse{kind}",
                "x": x - by / 4,
                "y": y + by,
                "button": "left",
                "buttons": 1,
                "clickCount": 1,
                "timestamp": now + later,
            },
        )
    assert 240 < board.dial["hour"] < 246
    assert board.page.locator(".is-picked").count() == 0


@pytest.mark.screens("phone")
def test_a_hand_is_tapped_with_a_finger_as_well(board):
    board.show("4:00")
    board.page.touchscreen.tap(*board.spot(0, 75))
    board.page.touchscreen.tap(*board.spot(180, 75))
    assert board.time == "4:30 am"


@pytest.mark.parametrize(
    ("name", "after"),
    [
        ("Long hand on", "4:40 am"),
        ("Long hand back", "4:30 am"),
        ("Short hand on", "5:35 am"),
        ("Short hand back", "3:35 am"),
    ],
)
def test_a_step_button_steps_a_hand(board, name, after):
    board.show("4:35")
    board.press(name)
    assert board.time == after
    board.press("Undo")
    assert board.time == "4:35 am"


KEYS = [
    ("minute", "ArrowRight", "4:40 am"),
    ("minute", "ArrowUp", "4:40 am"),
    ("minute", "ArrowLeft", "4:30 am"),
    ("minute", "ArrowDown", "4:30 am"),
    ("minute", "Shift+ArrowRight", "4:50 am"),
    ("minute", "Shift+ArrowUp", "4:50 am"),
    ("minute", "Shift+ArrowLeft", "4:20 am"),
    ("minute", "Shift+ArrowDown", "4:20 am"),
    ("minute", "Home", "4:00 am"),
    ("minute", "End", "4:55 am"),
    ("hour", "ArrowRight", "4:40 am"),
    ("hour", "ArrowLeft", "4:30 am"),
    ("hour", "Shift+ArrowRight", "5:35 am"),
    ("hour", "Shift+ArrowLeft", "3:35 am"),
    ("hour", "Home", "12:00 am"),
    ("hour", "End", "11:55 am"),
]


@pytest.mark.parametrize(("hand", "key", "after"), KEYS)
def test_a_key_moves_the_hand_that_has_the_focus(board, hand, key, after):
    board.show("4:35")
    board.handle(hand).focus()
    board.page.keyboard.press(key)
    assert board.time == after
    board.press("Undo")
    assert board.time == "4:35 am"


def test_keys_go_round_through_twelve(board):
    board.show("11:55")
    board.handle("minute").focus()
    board.page.keyboard.press("ArrowRight")
    assert board.time == "12:00 pm"
    board.page.keyboard.press("ArrowLeft")
    assert board.time == "11:55 am"


def test_escape_brings_a_dragged_hand_back(board):
    board.show("4:35")
    board.drag("minute", 90, let_go=False)
    assert board.time == "4:50 am"
    board.page.keyboard.press("Escape")
    assert board.time == "4:35 am"
    board.page.mouse.move(*board.spot(0, 75))
    board.page.mouse.up()
    assert board.time == "4:35 am"


@pytest.mark.parametrize("key", ["PageUp", "PageDown", "F5", ".", "b", "Control+ArrowRight"])
def test_keys_of_the_board_and_the_browser_are_left_to_them(board, key):
    board.show("4:35")
    board.page.evaluate("""() => document.addEventListener("keydown", (event) => {
      window.heard = [event.key, event.defaultPrevented];
      event.preventDefault();
    })""")
    board.handle("minute").focus()
    board.page.keyboard.press(key)
    assert board.page.evaluate("heard") == [key.removeprefix("Control+"), False]
    assert board.time == "4:35 am"


def test_everything_is_reached_with_the_tab_key(board):
    board.show("4:35", panel=True)
    reached = []
    for _ in range(30):
        board.page.keyboard.press("Tab")
        reached.append(
            board.page.evaluate(
                "document.activeElement.ariaLabel ?? document.activeElement.innerText"
            )
        )
    assert reached[:8] == [
        "Short hand",
        "Long hand",
        "Short hand back",
        "Short hand on",
        "Long hand back",
        "Long hand on",
        "Undo",
        "Reset",
    ]
    assert {"Gears", "Fives", "Steps of 15"} <= set(reached)


def test_hands_are_sliders_with_their_place_in_words(board):
    board.show("4:37", snap=1)
    hour, minute = board.handle("hour"), board.handle("minute")
    assert hour.get_attribute("aria-valuetext") == "between 4 and 5, nearer 5"
    assert minute.get_attribute("aria-valuetext") == "2 marks past the 7"
    assert [hour.get_attribute(f"aria-value{end}") for end in ("min", "now", "max")] == [
        "0",
        "277",
        "719",
    ]
    assert [minute.get_attribute(f"aria-value{end}") for end in ("min", "now", "max")] == [
        "0",
        "37",
        "59",
    ]


def test_a_clock_that_reads_out_says_the_time(board):
    board.show("4:35", words=True, vocabulary="uk")
    board.press("Long hand on")
    board.says("twenty to five")
    assert board.page.locator("#kit-live").get_attribute("role") == "status"


def test_a_clock_that_asks_for_the_time_does_not_say_it(board):
    board.show("4:35")
    board.press("Long hand on")
    board.says("Short hand between 4 and 5, nearer 5. Long hand exactly on the 8.")
    assert "forty" not in board.page.locator("body").inner_text()


def test_two_views_of_one_clock_agree_and_speak_through_one_region(board):
    board.show("4:35", place="height: 45vh")
    board.page.evaluate("""() => {
      const second = document.querySelector("#place").cloneNode();
      document.body.append(second);
      return kit.view(second);
    }""")
    buttons = board.page.get_by_role("button", name="Long hand on")
    assert buttons.count() == 2
    for index, place in ((0, 8), (1, 9)):
        buttons.nth(index).click()
        board.says(f"Short hand between 4 and 5, nearer 5. Long hand exactly on the {place}.")
        shown = board.page.locator("[role=slider][aria-label='Long hand']")
        for view in range(2):
            text = shown.nth(view).get_attribute("aria-valuetext")
            assert text == f"exactly on the {place}"
    assert board.page.locator("#kit-live").count() == 1


def test_free_hands_that_do_not_fit_are_told_what_is_wrong(board):
    board.show(dial=WRONG, mode="free", digital=True)
    digits = board.page.locator(".clock-digits").inner_text()
    assert not any(digit in digits for digit in "0123456789")
    assert board.page.locator(".clock-words").inner_text() == (
        "The short hand belongs between 3 and 4, nearer 4."
    )
    assert board.page.evaluate("document.querySelector('.kit-clock').facts().minutes") is None


def test_a_clock_that_cannot_be_moved_is_a_picture(board):
    board.show("4:35", movable=False)
    page = board.page
    assert page.get_by_role("slider").count() == 0
    assert page.get_by_role("button").count() == 0
    assert page.locator("svg .kit-grip:visible").count() == 0
    picture = page.get_by_role("img")
    assert picture.get_attribute("aria-label") == (
        "Short hand between 4 and 5, nearer 5. Long hand exactly on the 7."
    )
    board.drag("minute", 90)
    assert board.time == "4:35 am"


PARTS = {
    "numerals": "text[stroke-width]",
    "ticks": ".clock-minute_ticks",
    "minute_numbers": ".clock-five",
    "digital": ".clock-digits",
    "words": ".clock-words",
    "sector": ".clock-sector",
    "arc": ".clock-arc",
    "buttons": ".clock-stepper",
    "panel": ".clock-panel",
}


@pytest.mark.parametrize("name", PARTS)
def test_each_part_is_shown_alone_or_hidden_alone(board, name):
    board.show("4:35", **dict.fromkeys(PARTS, False))
    visible = {
        part for part, where in PARTS.items() if board.page.locator(where).first.is_visible()
    }
    assert visible == set()
    board.page.evaluate("name => kit.outside(name, true)", name)
    visible = {
        part for part, where in PARTS.items() if board.page.locator(where).first.is_visible()
    }
    assert visible == {name}


@pytest.mark.parametrize(
    ("switch", "trait"),
    [
        ("Hours", "numerals"),
        ("Minutes", "minute_numbers"),
        ("Marks", "ticks"),
        ("Digits", "digital"),
        ("Words", "words"),
        ("Sector", "sector"),
        ("Fives", "arc"),
    ],
)
def test_a_switch_shows_and_hides(board, switch, trait):
    board.show("4:35", panel=True)
    tile = board.page.get_by_role("switch", name=switch)
    before = board.page.evaluate("name => kit.get(name)", trait)
    assert tile.get_attribute("aria-checked") == str(before).lower()
    tile.click()
    assert board.page.evaluate("name => kit.get(name)", trait) is not before
    assert tile.get_attribute("aria-checked") == str(not before).lower()
    assert board.page.locator(PARTS[trait]).first.is_visible() is not before


def test_the_snap_is_chosen(board):
    board.show("4:35", panel=True)
    board.press("Steps of 15")
    assert board.page.evaluate("kit.get('snap')") == 15
    assert board.page.locator("[aria-pressed=true]").inner_text() == "15"
    board.press("Long hand on")
    assert board.time == "4:45 am"


def test_gears_that_take_hold_again_are_one_step(board):
    board.show(dial={**WRONG, "hour": 280}, mode="free", panel=True)
    gears = board.page.get_by_role("switch", name="Gears")
    assert gears.get_attribute("aria-checked") == "false"
    gears.click()
    assert board.time == "4:35 am"
    board.press("Undo")
    assert board.dial["hour"] == 280
    gears.click()
    assert board.page.evaluate("kit.get('mode')") == "free"


def test_movement_is_still_for_those_who_want_it_so(board):
    board.show("4:35")
    style = "getComputedStyle(document.querySelector('g.clock-minute')).transitionDuration"
    assert board.page.evaluate(style) != "0s"
    board.page.emulate_media(reduced_motion="reduce")
    assert board.page.evaluate(style) in ("0s", "none", "")
    board.press("Long hand on")
    shown = board.page.evaluate(
        "getComputedStyle(document.querySelector('g.clock-minute')).transform"
    )
    assert shown.startswith("matrix(-0.5, -0.866025,"), "it is at 240 degrees at once"


def test_a_step_of_an_hour_turns_the_minute_hand_all_the_way(board):
    board.show("4:35")
    turns = "document.querySelector('g.clock-minute').style.transform"
    assert board.page.evaluate(turns) == "rotate(-150deg)"
    board.press("Short hand on")
    assert board.page.evaluate(turns) == "rotate(210deg)"


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("traits", [{}, ALL_SHOWN], ids=["plain", "everything"])
def test_whatever_is_pressed_is_large_enough(board, traits):
    board.show("1:05", **traits)
    small = board.page.evaluate("""() => [...document.querySelectorAll("button, [role=slider]")]
      .filter((each) => each.checkVisibility())
      .map((each) => [each.textContent || each.ariaLabel, each.offsetWidth, each.offsetHeight])
      .filter(([, width, height]) => width < 44 || height < 44)""")
    assert small == []
    assert board.page.locator("button:visible").count() >= 6


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("traits", [{}, ALL_SHOWN], ids=["plain", "everything"])
@pytest.mark.parametrize("vocabulary", ["us", "uk"])
def test_nothing_is_cut_off_or_lies_over_another(board, screen, traits, vocabulary):
    board.show("12:23 pm", snap=1, vocabulary=vocabulary, **traits)
    found = board.page.evaluate("""() => {
      const shown = (where) => [...document.querySelectorAll(where)]
        .filter((each) => each.checkVisibility())
        .map((each) => [each.textContent || each.className, each.getBoundingClientRect()]);
      const parts = shown(".clock-face, .clock-digits, .clock-words, .clock-stepper, " +
        ".clock-row > .kit-button, .kit-switch, .clock-snaps .kit-button");
      const inside = ({ left, top, right, bottom }) =>
        left >= 0 && top >= 0 && right <= innerWidth + 0.5 && bottom <= innerHeight + 0.5;
      const apart = (one, other) => one.right <= other.left + 0.5 || other.right <= one.left + 0.5
        || one.bottom <= other.top + 0.5 || other.bottom <= one.top + 0.5;
      const texts = shown(".clock-face text");
      return {
        count: parts.length,
        outside: [...parts, ...texts].filter(([, box]) => !inside(box)).map(([name]) => name),
        over: parts.flatMap(([name, box], index) => parts.slice(index + 1)
          .filter(([, other]) => !apart(box, other)).map(([other]) => [name, other])),
        touching: texts.flatMap(([name, box], index) => texts.slice(index + 1)
          .filter(([, other]) => !apart(box, other)).map(([other]) => [name, other])),
        spilt: shown("button").map(([name]) => name).filter((name, index) => {
          const button = [...document.querySelectorAll("button")]
            .filter((each) => each.checkVisibility())[index];
          return button.scrollWidth > button.clientWidth + 1;
        }),
        scrolls: document.documentElement.scrollHeight > innerHeight
          || document.documentElement.scrollWidth > innerWidth,
      };
    }""")
    assert found.pop("count") >= 5
    assert found == {"outside": [], "over": [], "touching": [], "spilt": [], "scrolls": False}
    assert screen.name in ("board", "tablet", "phone")


@pytest.mark.screens("board", "tablet", "phone")
def test_text_is_large_enough_for_children(board):
    board.show("12:23 pm", snap=1, **ALL_SHOWN)
    sizes = board.page.evaluate("""() => {
      const scale = document.querySelector(".clock-face > svg").getScreenCTM().a;
      return [...document.querySelectorAll(".kit-clock *")]
        .filter((each) => each.checkVisibility() && [...each.childNodes]
          .some((child) => child.nodeType === 3 && child.data.trim()))
        .map((each) => [each.textContent, parseFloat(getComputedStyle(each).fontSize)
          * (each.tagName === "text" ? scale : 1)]);
    }""")
    assert len(sizes) > 24
    assert [text for text in sizes if text[1] < 17.5] == []


@pytest.mark.screens("board", "tablet")
def test_the_face_fills_the_height_that_it_is_given(board, screen):
    board.show("4:35", buttons=False)
    box = board.page.locator(".clock-disc").bounding_box()
    assert box["height"] > 0.94 * screen.height
    board.show("4:35", buttons=False, place="height: 400px")
    assert 370 < board.page.locator(".clock-disc").bounding_box()["height"] <= 400


def test_given_no_height_it_takes_no_more_than_the_screen(board, screen):
    board.show("4:35", panel=True, place="")
    assert board.page.evaluate("document.documentElement.scrollHeight") <= screen.height


def test_the_font_of_the_kit_is_used_in_one_weight(board):
    board.show("4:35", **ALL_SHOWN)
    styles = board.page.evaluate("""() => [...document.querySelectorAll(".kit-clock *")]
      .map((each) => getComputedStyle(each))
      .map(({ fontFamily, fontWeight }) => fontFamily.split(",")[0] + " " + fontWeight)""")
    assert set(styles) == {'"Kit Reading" 400'}


def test_a_long_sentence_moves_no_button(board):
    """Free hands are stepped out of fitting each other; the button stays under the finger."""
    for place in ("height: 100vh", "width: 360px; height: 740px"):
        board.show("4:00", mode="free", digital=True, place=place)
        button = board.page.get_by_role("button", name="Long hand on")
        before = button.bounding_box()
        button.click()
        assert board.page.locator(".clock-words").inner_text().startswith("The short hand belongs")
        assert button.bounding_box() == before


def test_a_half_of_the_day_stays_on_the_line_of_the_digits(board):
    for shown in ("midnight", "12:57 pm"):
        board.show(shown, digital=True, half_day=True, place="width: 1000px; height: 700px")
        height = board.page.locator(".clock-digits").bounding_box()["height"]
        board.show("1:00 am", digital=True, half_day=True, place="width: 1000px; height: 700px")
        assert board.page.locator(".clock-digits").bounding_box()["height"] == height


def test_two_fingers_hold_the_two_hands_of_a_free_clock(board):
    board.show("3:00", mode="free")
    fingers = Fingers(board.page)
    fingers.down(1, board.spot(90, 35))
    fingers.down(2, board.spot(0, 75))
    for degrees in range(10, 61, 10):
        fingers.move(1, board.spot(90 + degrees, 35))
        fingers.move(2, board.spot(-degrees, 75))
    assert board.dial == {"hour": 300, "minute": 50, "half": "am"}
    fingers.up(1)
    fingers.move(2, board.spot(-90, 75))
    fingers.up(2)
    assert board.dial == {"hour": 300, "minute": 45, "half": "am"}
    # What both did together is one step.
    board.press("Undo")
    assert board.dial == {"hour": 180, "minute": 0, "half": "am"}


def test_of_geared_hands_a_second_finger_takes_none(board):
    board.show("3:00")
    fingers = Fingers(board.page)
    fingers.down(1, board.spot(0, 75))
    fingers.down(2, board.spot(90, 35))
    fingers.move(2, board.spot(150, 35))
    assert board.time == "3:00 am"
    fingers.move(1, board.spot(30, 75))
    assert board.time == "3:05 am"
    fingers.up(2)
    fingers.up(1)
    assert board.time == "3:05 am"


def test_a_view_that_has_ended_is_silent(board):
    board.show("4:35")
    board.page.evaluate("kit.end.abort()")
    board.handle("minute").focus()
    board.page.keyboard.press("ArrowRight")
    board.drag("minute", 90)
    board.press("Long hand on")
    assert board.time == "4:35 am"
    board.page.evaluate("dial => kit.outside('dial', dial)", dial_at(600))
    assert board.handle("hour").get_attribute("aria-valuenow") == "275"


def test_its_text_is_small_enough_to_be_carried_by_every_notebook():
    assert len(Clock._esm.encode()) < 27_000  # noqa: SLF001 - it is what hosts are sent
