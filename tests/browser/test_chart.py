"""The counting chart in a browser: counted, wiped and written by mouse, finger, keys and beat."""

from __future__ import annotations

import pytest
from browser.harness import open_widget

from manipulatives.maths.number.counting import count_of
from manipulatives.widgets.chart import CountingChart


class Board:
    """A chart on a page, and what a test does with it."""

    def __init__(self, page):
        self.page = page

    def show(self, *ends, place="height: 100vh", **traits):
        """Show a chart; the panel is left out unless the test asks for it."""
        open_widget(self.page, CountingChart(*ends, **{"panel": False, **traits}), place=place)

    @property
    def marks(self):
        """What the model holds."""
        return self.page.evaluate("kit.get('chart')")

    @property
    def counted(self):
        """The numbers counted so far."""
        return self.marks["counted"]

    @property
    def facts(self):
        """What the root says is true."""
        return self.page.evaluate("document.querySelector('.kit-chart').facts()")

    def cell(self, number):
        """The cell of a number."""
        first = self.page.evaluate("kit.get('first')")
        return self.page.locator(".chart-cell").nth(number - first)

    def state(self, number):
        """How the cell of a number looks."""
        return self.cell(number).get_attribute("data-state")

    @property
    def at(self):
        """What the cell with the focus is called."""
        return self.page.evaluate("document.activeElement.getAttribute('aria-label')")

    def stand_on(self, number):
        """Put the keys on a number, without tapping it."""
        self.cell(number).focus()

    def keys(self, *keys):
        """Press keys, one after the other."""
        for key in keys:
            self.page.keyboard.press(key)

    def press(self, name):
        """Press a button, even one that says it has nothing to do."""
        self.page.get_by_role("button", name=name, exact=True).click(force=True)

    def said(self):
        """What is written beside the chart."""
        return self.page.locator(".chart-said").inner_text()

    def hears(self, sentence):
        """Wait until the live region says a sentence."""
        self.page.wait_for_function(
            "sentence => document.querySelector('#kit-live')?.textContent === sentence",
            arg=sentence,
        )


@pytest.fixture
def board(quiet_page):
    return Board(quiet_page)


COUNTS = [
    ({"step": 10}, (1, 100)),
    ({"step": 25, "direction": "back"}, (0, 99)),
    ({"step": 20, "start": 7}, (1, 120)),
    ({"step": 25, "line": True}, (901, 1000)),
]


@pytest.mark.parametrize("mode", ["count", "wipe"])
@pytest.mark.parametrize(("traits", "ends"), COUNTS, ids=repr)
def test_a_count_is_tapped_to_its_end_by_mouse(board, traits, ends, mode):
    board.show(*ends, mode=mode, **traits)
    numbers = count_of(*ends, **traits_of_the_count(traits))
    for number in numbers:
        board.cell(number).click()
        last = "at" if number == board.counted[-1] else "counted"
        assert board.state(number) == ("wiped" if mode == "wipe" else last)
    assert board.counted == numbers
    assert board.facts["finished"] is True
    assert board.said() == "All is counted."


def traits_of_the_count(traits):
    return {name: value for name, value in traits.items() if name != "line"}


@pytest.mark.screens("tablet", "phone")
def test_a_count_is_tapped_to_its_end_by_a_finger(board):
    board.show(1, 120, step=20)
    for number in range(20, 121, 20):
        board.cell(number).tap()
    assert board.counted == list(range(20, 121, 20))
    assert board.page.evaluate("scrollY") == 0


def test_a_count_is_made_with_the_button_alone(board):
    board.show(1, 20, step=5)
    board.page.get_by_role("button", name="Count next").focus()
    board.keys("Enter", "Space", "Enter", "Space", "Enter")
    assert board.counted == [5, 10, 15, 20]
    assert board.page.locator(".chart-next").get_attribute("aria-disabled") == "true"
    board.hears("twenty. All is counted.")


def test_each_count_is_spoken_in_words(board):
    board.show(1, 120, start=104, vocabulary="uk")
    board.press("Count next")
    board.hears("one hundred and four")
    assert board.cell(104).get_attribute("aria-label") == "one hundred and four, counted last"
    board.press("Count next")
    assert board.cell(104).get_attribute("aria-label") == "one hundred and four, counted"


def test_a_number_that_does_not_come_next_brings_a_hint_and_lights_nothing(board):
    board.show(step=5)
    board.press("Count next")
    board.cell(6).click()
    assert board.counted == [5]
    assert board.state(6) == "tapped"
    assert board.said() == "Count on 5 from 5."
    board.hears("Count on 5 from 5.")
    assert board.facts["tapped"] == 6
    board.cell(10).click()
    assert board.counted == [5, 10]
    assert board.state(6) == "plain"
    assert board.said() == ""


def test_the_last_number_is_taken_back_by_a_tap(board):
    board.show(step=5)
    board.press("Count next")
    board.press("Count next")
    board.cell(10).click()
    board.hears("Taken back.")
    assert board.counted == [5]
    assert board.state(10) == "plain"
    assert board.state(5) == "at"


ARROWS = [
    ("ArrowRight", 46),
    ("ArrowLeft", 44),
    ("ArrowDown", 55),
    ("ArrowUp", 35),
    ("Home", 41),
    ("End", 50),
    ("Shift+Home", 1),
    ("Shift+End", 100),
]
WORDS = {
    46: "forty-six",
    44: "forty-four",
    55: "fifty-five",
    35: "thirty-five",
    41: "forty-one",
    50: "fifty",
    1: "one",
    100: "one hundred",
}


@pytest.mark.parametrize(("key", "to"), ARROWS)
def test_a_key_walks_the_chart(board, key, to):
    board.show()
    board.stand_on(45)
    board.keys(key)
    assert board.at == WORDS[to]
    assert board.page.locator(".chart-cell[tabindex='0']").count() == 1
    assert board.counted == []


@pytest.mark.parametrize(
    ("number", "key"), [(1, "ArrowLeft"), (5, "ArrowUp"), (100, "ArrowRight"), (95, "ArrowDown")]
)
def test_at_the_edge_a_key_stays(board, number, key):
    board.show()
    board.stand_on(number)
    before = board.at
    board.keys(key)
    assert board.at == before


def test_space_counts_the_next_number_wherever_the_keys_are(board):
    board.show(step=10)
    board.stand_on(45)
    board.keys("Space", "Space")
    assert board.counted == [10, 20]
    assert board.at == "forty-five"


def test_enter_counts_the_number_that_the_keys_are_on(board):
    board.show(step=10)
    board.stand_on(10)
    board.keys("Enter", "ArrowDown", "Enter", "ArrowRight", "Enter")
    assert board.counted == [10, 20]
    assert board.facts["tapped"] == 21


def test_backspace_takes_back_the_last_count(board):
    board.show(step=10)
    board.stand_on(10)
    board.keys("Backspace", "Space", "Space", "Backspace")
    assert board.counted == [10]


@pytest.mark.parametrize("key", ["PageDown", "PageUp", ".", "b", "F5", "Control+Home"])
@pytest.mark.parametrize("mode", ["count", "write"])
def test_the_keys_of_the_board_are_left_alone(board, mode, key):
    board.show(mode=mode, hidden="cross")
    board.page.evaluate("""() => {
      window.left = [];
      document.addEventListener("keydown", (event) => {
        window.left.push(event.defaultPrevented);
        event.preventDefault();
      });
    }""")
    board.stand_on(45)
    board.keys(key)
    assert board.page.evaluate("left")[-1] is False
    assert board.marks == {"counted": [], "tapped": None, "written": {}}


def test_tab_goes_to_the_chart_and_on_to_the_buttons(board):
    board.show(step=5)
    board.keys("Tab")
    assert board.at == "five"
    board.keys("Tab")
    assert board.page.evaluate("document.activeElement.textContent") == "Count next"


def test_cells_are_written_to_the_end_by_keyboard_alone(board):
    board.show(1, 20, mode="write", hidden=[4, 11, 12])
    board.keys("Tab")
    assert board.at == "blank"
    board.keys("4", "Enter", "1", "1", "Enter", "1", "2", "Enter")
    assert board.marks["written"] == {"4": "4", "11": "11", "12": "12"}
    assert board.facts["finished"] is True
    assert board.said() == "All is written."
    board.hears("All is written.")


@pytest.mark.screens("board", "tablet", "phone")
def test_cells_are_written_to_the_end_with_the_keypad_alone(board, screen):
    board.show(1, 20, mode="write", hidden=[4, 12])
    tap = "tap" if screen.touch else "click"
    for number, digits in ((12, "12"), (4, "4")):
        getattr(board.cell(number), tap)()
        for name in (*digits, "Done"):
            getattr(board.page.get_by_role("button", name=name, exact=True), tap)()
    assert board.facts["finished"] is True
    assert [board.state(number) for number in (4, 12)] == ["right", "right"]


def test_what_is_not_right_gets_a_hint_from_its_neighbours_and_can_be_written_anew(board):
    board.show(mode="write", hidden=[35, 36])
    board.stand_on(35)
    board.keys("5", "3")
    assert board.state(35) == "open", "it is not judged while it is written"
    board.keys("Enter")
    assert board.state(35) == "wrong"
    assert board.said() == "One more than 34."
    board.hears("One more than 34.")
    board.keys("3", "5", "Enter")
    assert board.state(35) == "right"
    assert board.at == "blank", "the next blank has the keys"
    board.stand_on(35)
    board.keys("7", "Backspace", "Delete")
    assert board.marks["written"] == {"35": "35"}, "what is right stays"


def test_going_elsewhere_ends_the_writing(board):
    board.show(mode="write", hidden=[35])
    board.stand_on(35)
    board.keys("5", "3", "ArrowRight")
    assert board.state(35) == "wrong"
    board.stand_on(35)
    assert board.said() == "One more than 34."


def test_backspace_and_delete_clear_what_is_written(board):
    board.show(mode="write", hidden=[35])
    board.stand_on(35)
    board.keys("1", "2", "3", "Backspace")
    assert board.marks["written"] == {"35": "12"}
    board.keys("Delete")
    assert board.marks["written"] == {}
    board.keys("1", "2", "3", "4", "5", "6")
    assert board.marks["written"] == {"35": "12345"}


def test_a_cell_that_is_not_blank_takes_no_digits(board):
    board.show(mode="write", hidden=[35])
    board.stand_on(34)
    board.keys("7", "Enter")
    assert board.marks["written"] == {}


def test_hidden_numbers_are_covered_and_not_spoken_until_they_are_counted(board):
    board.show(hidden="thirds", step=3)
    assert board.cell(3).inner_text() == ""
    assert board.cell(3).get_attribute("aria-label") == "hidden"
    board.press("Count next")
    assert board.cell(3).inner_text() == "3"
    assert board.cell(6).inner_text() == ""


def test_the_class_counts_to_a_beat_that_stops_at_the_end(board):
    board.show(1, 20, step=5, beat=120)
    board.press("Beat 120")
    board.page.wait_for_function("kit.get('chart').counted.length === 3")
    assert board.page.get_by_role("button", name="Stop").count() == 1
    board.page.wait_for_function("kit.get('chart').counted.length === 4")
    board.page.get_by_role("button", name="Beat 120").wait_for()
    assert board.counted == [5, 10, 15, 20]


@pytest.fixture
def still(board):
    """A board whose time the test turns, and which counts to a beat of half a second."""
    board.page.clock.install(time="2026-11-25T09:00:00")
    board.show(beat=120)
    board.page.clock.pause_at("2026-11-25T09:05:00")
    board.press("Beat 120")
    return board


def test_a_beat_comes_when_it_is_due(still):
    clock = still.page.clock
    struck = []
    for milliseconds in (1, 498, 1, 1499, 1):
        clock.run_for(milliseconds)
        struck.append(len(still.counted))
    assert struck == [1, 1, 2, 4, 5]
    # As a page that slept: what it missed is not made up for, and then it keeps time again.
    clock.fast_forward(20_000)
    assert len(still.counted) == 6
    clock.run_for(1001)
    assert len(still.counted) == 8
    still.press("Stop")
    clock.run_for(2000)
    assert len(still.counted) == 8, "it stands still"


def test_a_beat_ends_with_the_widget(still):
    still.page.clock.run_for(1)
    still.page.evaluate("kit.end.abort()")
    still.page.clock.run_for(2000)
    assert len(still.counted) == 1


def test_the_line_hops_with_the_count(board):
    board.show(0, 20, step=5, line=True)
    for _ in range(3):
        board.press("Count next")
    hops = board.page.locator(".chart-hops").get_attribute("d")
    assert hops.count("M") == 2
    assert board.page.locator(".chart-named").text_content() == "10"
    assert board.page.locator(".chart-length").text_content() == "+5"
    name = board.page.locator(".chart-line svg").get_attribute("aria-label")
    assert name == "Number line: 2 hops from 0 to 10"


def test_a_tap_on_the_line_makes_the_next_hop(board):
    board.show(0, 20, step=5, line=True)
    board.page.locator(".chart-line").click()
    board.page.locator(".chart-line").click()
    assert board.counted == [0, 5]


def test_hidden_numbers_are_not_on_the_line_either(board):
    board.show(0, 20, line=True, hidden=[6])
    labels = board.page.locator(".chart-labels text").all_text_contents()
    assert "5" in labels
    assert "6" not in labels


def test_all_steps_are_undone_and_reset_is_one(board):
    board.show(step=5)
    for _ in range(3):
        board.press("Count next")
    board.press("Reset")
    assert board.counted == []
    board.press("Undo")
    assert board.counted == [5, 10, 15]
    for _ in range(5):
        board.press("Undo")
    assert board.counted == []


def test_every_change_is_set_once_and_seen_before_it_is_told(board):
    board.show(step=5)
    board.page.evaluate("""() => {
      window.seen = [];
      document.querySelector(".kit-chart").addEventListener("kit:change", (event) => {
        const lit = document.querySelectorAll("[data-state=at], [data-state=counted]").length;
        window.seen.push([event.currentTarget.facts().counted, lit, kit.sets.length]);
      });
    }""")
    board.press("Count next")
    board.press("Count next")
    assert board.page.evaluate("seen") == [[1, 1, 1], [2, 2, 2]]
    assert board.page.evaluate("kit.saves") == 2


def test_marks_from_outside_are_shown_and_are_a_new_beginning(board):
    board.show(step=5)
    board.press("Count next")
    outside = {"counted": [5, 10, 15], "tapped": None, "written": {}}
    board.page.evaluate("marks => kit.outside('chart', marks)", outside)
    assert board.state(15) == "at"
    board.press("Undo")
    assert board.counted == [5, 10, 15]


def test_other_numbers_from_outside_are_shown_whichever_end_comes_first(board):
    board.show()
    for ends in ((901, 1000), (0, 99), (1, 20)):
        for name, end in zip(("first", "last"), ends, strict=True):
            board.page.evaluate("([name, end]) => kit.outside(name, end)", [name, end])
        cells = board.page.locator(".chart-cell")
        assert cells.count() == ends[1] - ends[0] + 1
        assert cells.first.inner_text() == str(ends[0])


def test_in_free_play_the_first_tap_is_the_start(board):
    board.show(panel=True, step=10)
    board.cell(7).click()
    board.press("Count next")
    assert board.counted == [7, 17]
    assert board.page.evaluate("kit.get('start')") == 7


def test_the_panel_sets_numbers_step_direction_and_what_is_hidden(board):
    board.show(panel=True)
    board.press("Steps: after")
    board.press("Numbers: after")
    board.press("Hidden: after")
    board.page.get_by_role("switch", name="Back").click()
    board.page.get_by_role("switch", name="Line").click()
    board.press("Count next")
    traits = ("first", "last", "step", "direction", "hidden", "line")
    values = [board.page.evaluate("name => kit.get(name)", name) for name in traits]
    assert values == [0, 99, 2, "back", "thirds", True]
    assert board.counted == [98]
    board.press("Steps: after")
    assert board.counted == [], "another count begins anew"
    board.press("Write")
    assert board.page.locator(".chart-keypad").is_visible()
    assert board.page.locator(".chart-next").is_hidden()


@pytest.mark.parametrize(("step", "way", "after"), [(13, "after", 15), (13, "before", 12)])
def test_a_step_of_a_teachers_own_has_its_place_among_the_others(board, step, way, after):
    board.show(panel=True, step=step)
    board.press(f"Steps: {way}")
    assert board.page.evaluate("kit.get('step')") == after


def test_a_thousand_cells_are_painted_in_the_frame_of_the_press_and_not_made_anew(board):
    """On a processor four times as slow."""
    board.show(1, 1000, step=3, line=True)
    board.page.context.new_cdp_session(board.page).send(
        "Emulation.setCPUThrottlingRate", {"rate": 4}
    )
    board.page.evaluate("""() => {
      window.made = 0;
      new MutationObserver((all) => all.forEach(({ addedNodes }) => {
        window.made += [...addedNodes].filter((node) => node.nodeType === 1).length;
      })).observe(document.querySelector(".chart-grid"), { childList: true, subtree: true });
      window.frames = [];
      document.addEventListener("keydown", () => {
        requestAnimationFrame(() => {
          const lit = document.querySelector("[data-state=at]");
          window.frames.push([Number(lit.textContent), kit.get("chart").counted.at(-1)]);
        });
      }, true);
    }""")
    board.stand_on(1)
    for press in range(1, 31):
        board.keys("Space")
        board.page.wait_for_function("many => frames.length === many", arg=press)
    assert board.page.evaluate("frames") == [[3 * press, 3 * press] for press in range(1, 31)]
    assert board.page.evaluate("made") == 0


@pytest.mark.screens("board", "phone")
def test_a_long_chart_follows_the_count_and_leaves_the_page_alone(board):
    board.show(1, 1000, step=100)
    for number in range(100, 1001, 100):
        board.press("Count next")
        inside = board.cell(number).evaluate("""(cell) => {
          const { top, bottom, left, right } = cell.getBoundingClientRect();
          const area = cell.closest(".chart-area").getBoundingClientRect();
          return top >= area.top - 1 && bottom <= area.bottom + 1 &&
            left >= area.left - 1 && right <= area.right + 3;
        }""")
        assert inside, number
    assert board.page.evaluate("scrollY") == 0


SHOWN = [
    {},
    {"line": True, "step": 5, "beat": 60, "panel": True},
    {"mode": "write", "hidden": "patch", "panel": True},
]


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("traits", SHOWN, ids=repr)
def test_everything_is_on_the_screen_and_large_enough(board, traits, screen):
    board.show(1, 120, place="height: 100vh" if screen.name != "phone" else "", **traits)
    found = board.page.evaluate("""() => {
      const small = [];
      for (const one of document.querySelectorAll(".kit-chart button")) {
        const { width, height } = one.getBoundingClientRect();
        if (width && Math.min(width, height) < 44) small.push([one.textContent, width, height]);
      }
      const type = [...document.querySelectorAll(".kit-chart *")]
        .filter((one) => one.getClientRects().length)
        .map((one) => parseFloat(getComputedStyle(one).fontSize));
      const { width, height } = document.querySelector(".chart-cell").getBoundingClientRect();
      const overfull = [...document.querySelectorAll(".chart-cell")]
        .filter((one) => one.scrollWidth > one.clientWidth + 1).length;
      const page = document.documentElement;
      return { small, type: Math.min(...type), width, height, overfull,
        wider: page.scrollWidth > innerWidth, higher: page.scrollHeight > innerHeight };
    }""")
    assert found["small"] == []
    assert found["type"] >= 18
    assert found["overfull"] == 0
    assert found["wider"] is False
    # Ten numbers beside each other are what makes a cell of a phone narrow.
    assert found["width"] >= (32 if screen.name == "phone" else 44)
    assert found["height"] >= 41
    assert screen.name == "phone" or found["higher"] is False


def test_text_is_told_from_what_is_behind_it(board):
    board.show(
        step=5,
        hidden=[34, 35],
        mode="write",
        chart={"counted": [5, 10], "written": {"34": "34", "35": "53"}, "tapped": 6},
    )
    ratios = board.page.evaluate("""() => {
      const light = (text) => {
        const [red, green, blue] = text.match(/[0-9.]+/g).map((part) => {
          const share = Number(part) / 255;
          return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
        });
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
      };
      return Object.fromEntries([...document.querySelectorAll(".chart-cell")].map((cell) => {
        const { color, backgroundColor } = getComputedStyle(cell);
        const [one, other] = [light(color), light(backgroundColor)].sort((a, b) => b - a);
        return [cell.dataset.state, (one + 0.05) / (other + 0.05)];
      }));
    }""")
    assert set(ratios) == {"plain", "counted", "at", "tapped", "right", "wrong"}
    assert min(ratios.values()) >= 4.5, ratios


def test_a_chart_that_is_only_looked_at_is_walked_and_not_changed(board):
    done = {"counted": [5, 10], "tapped": None, "written": {}}
    board.show(1, 100, step=5, line=True, movable=False, chart=done)
    assert board.counted == [5, 10]
    for number in (15, 10, 44):
        board.cell(number).click()
    board.page.locator(".chart-line").click()
    board.keys("Space", "Enter", "Backspace", "7")
    assert board.counted == [5, 10]
    assert board.said() == ""
    assert board.page.locator(".kit-chart").get_by_role("button").count() == 0
    board.stand_on(44)
    board.keys("ArrowRight")
    assert board.page.evaluate("document.activeElement.textContent") == "45"
