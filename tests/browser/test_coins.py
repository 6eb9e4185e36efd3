"""The coin tray in a browser: by mouse, finger, taps and keys, and looked at on three screens."""

from __future__ import annotations

import base64
import gzip
from itertools import combinations

import pytest
from browser.harness import open_widget

from manipulatives.maths.money.places import MAT
from manipulatives.maths.money.tray import check_tray, tray_facts, tray_of
from manipulatives.widgets.coins import CoinTray
from support.touch import Fingers

# From a place on the mat to pixels.
SPOT = """([x, y]) => {
  const coins = document.querySelector(".coins-lying");
  const point = new DOMPoint(x, y).matrixTransform(coins.getScreenCTM());
  return [point.x, point.y];
}"""
BOX = """(selector) => {
  const { x, y, width, height } = document.querySelector(selector).getBoundingClientRect();
  return { x, y, width, height };
}"""
PURSE = ".coins-handle:not(.is-round)"
PICTURE = base64.b64decode(
    "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=="
)


class Table:
    """A coin tray on a page, and what a test does with it."""

    def __init__(self, page):
        self.page = page

    def show(self, coins=None, *, place="height: 100vh", **traits):
        """Show a coin tray; the panel is left out unless the test asks for it."""
        open_widget(self.page, CoinTray(coins, **{"panel": False, **traits}), place=place)

    @property
    def tray(self):
        """The tray that the model holds."""
        return self.page.evaluate("kit.get('tray')")

    @property
    def kinds(self):
        """The coins on the tray, the largest worth first."""
        return self.page.evaluate("document.querySelector('.kit-coins').facts().kinds")

    def spot(self, x, y):
        """Where on the page a place of the mat is."""
        return self.page.evaluate(SPOT, [x, y])

    def slot(self, index):
        """Where on the page a kind of the purse is."""
        box = self.page.locator(PURSE).nth(index).bounding_box()
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    def coin(self, index):
        """Where on the page a coin of the tray is."""
        lying = self.tray[index]
        return self.spot(lying["x"], lying["y"])

    def drag(self, start, end, *, let_go=True):
        """Drag with the mouse from one place on the page to another."""
        self.page.mouse.move(*start)
        self.page.mouse.down()
        for step in range(1, 6):
            self.page.mouse.move(*(a + (b - a) * step / 5 for a, b in zip(start, end, strict=True)))
        if let_go:
            self.page.mouse.up()

    def swipe(self, start, end):
        """Drag with a finger."""
        session = self.page.context.new_cdp_session(self.page)

        def touch(kind, *points):
            spots = [dict(zip("xy", point, strict=True)) for point in points]
            session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": spots})

        touch("touchStart", start)
        for step in range(1, 6):
            touch(
                "touchMove", tuple(a + (b - a) * step / 5 for a, b in zip(start, end, strict=True))
            )
        touch("touchEnd")

    def press(self, name):
        """Press a button, even one that says it has nothing to do."""
        self.page.get_by_role("button", name=name, exact=True).click(force=True)

    def option(self, index):
        """A coin of the tray as it takes the focus."""
        return self.page.get_by_role("option").nth(index)

    def says(self, sentence):
        """Wait until the live region says a sentence."""
        self.page.wait_for_function(
            "sentence => document.querySelector('#kit-live')?.textContent === sentence",
            arg=sentence,
        )

    def total(self):
        """The total that is shown, or nothing."""
        shown = self.page.locator(".coins-total")
        return shown.text_content() if shown.is_visible() else None


@pytest.fixture
def table(quiet_page):
    return Table(quiet_page)


def test_a_coin_is_dragged_from_the_purse_to_where_it_is_let_go(table):
    table.show()
    table.drag(table.slot(1), table.spot(1000, 900))
    assert table.tray == [{"coin": "10", "x": 1000, "y": 900}]
    assert table.total() == "10¢"
    table.says("10 cents on the tray. 10 cents.")


@pytest.mark.screens("tablet", "phone")
def test_a_coin_is_dragged_by_a_finger(table):
    table.show("25")
    table.swipe(table.slot(3), table.spot(1000, 900))
    table.swipe(table.coin(0), table.spot(500, 700))
    assert table.kinds == "25 1"
    at = {lying["coin"]: (lying["x"], lying["y"]) for lying in table.tray}
    assert at["1"] == pytest.approx((1000, 900), abs=8)
    assert at["25"] == pytest.approx((500, 700), abs=8)
    assert table.page.evaluate("scrollY") == 0


def test_a_coin_does_not_jump_to_the_finger(table):
    table.show("25")
    x, y = table.coin(0)
    table.drag((x + 20, y - 15), (x + 120, y + 185))
    scale = (table.spot(100, 0)[0] - table.spot(0, 0)[0]) / 100
    lying = tray_of("25")[0]
    assert table.tray[0]["x"] == pytest.approx(lying["x"] + 100 / scale, abs=2)
    assert table.tray[0]["y"] == pytest.approx(lying["y"] + 200 / scale, abs=2)


def test_a_coin_is_dragged_back_into_the_purse(table):
    table.show("25 10")
    table.drag(table.coin(0), table.slot(2))
    assert table.kinds == "10"
    table.says("25 cents back in the purse. 10 cents.")


def test_a_coin_of_the_purse_that_is_let_go_elsewhere_stays_in_it(table):
    table.show()
    table.drag(table.slot(0), (1900, 1070))
    table.drag(table.slot(0), table.slot(2))
    assert table.tray == []


def test_a_coin_of_the_tray_that_is_let_go_beyond_it_comes_back_to_its_edge(table):
    table.show("25")
    table.drag(table.coin(0), (1900, 700))
    (lying,) = table.tray
    assert lying["x"] == MAT - 122


def test_coins_never_cover_each_other_unreadably(table):
    table.show("25")
    at = table.coin(0)
    for _ in range(4):
        table.drag(table.slot(0), at)
    assert table.kinds == "25 25 25 25 25"
    assert check_tray(table.tray) == table.tray


def test_a_finger_beside_the_coins_scrolls_the_page(quiet_page):
    table = Table(quiet_page)
    table.page.set_viewport_size({"width": 360, "height": 740})
    table.show("25", place="height: 700px; margin-bottom: 1500px")
    session = table.page.context.new_cdp_session(table.page)
    x, y = table.spot(900, 900)
    for kind, down in (("touchStart", 0), *(("touchMove", step) for step in range(-10, -201, -10))):
        points = [{"x": x, "y": y + down}]
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    table.page.wait_for_function("scrollY > 100")
    assert table.kinds == "25"


def test_a_coin_is_tapped_and_goes_where_the_mat_is_tapped(table):
    table.show()
    table.page.mouse.click(*table.slot(2))
    assert table.tray == []
    assert table.page.locator(".coins-handle.is-picked").count() == 1
    table.page.mouse.click(*table.spot(700, 600))
    assert table.kinds == "5"
    assert (table.tray[0]["x"], table.tray[0]["y"]) == pytest.approx((700, 600), abs=3)
    assert table.page.locator(".is-picked").count() == 0


@pytest.mark.screens("tablet", "phone")
def test_a_coin_is_tapped_with_a_finger_as_well(table):
    table.show("25")
    table.page.touchscreen.tap(*table.slot(1))
    table.page.touchscreen.tap(*table.spot(900, 900))
    assert table.kinds == "25 10"
    # Onto a coin means: beside it.
    table.page.touchscreen.tap(*table.slot(1))
    table.page.touchscreen.tap(*table.coin(1))
    assert table.kinds == "25 10 10"
    assert check_tray(table.tray) == table.tray
    # And back into the purse.
    table.page.touchscreen.tap(*table.coin(0))
    table.page.touchscreen.tap(*table.slot(3))
    assert table.kinds == "10 10"


def test_a_coin_of_the_tray_is_tapped_and_moved(table):
    table.show("25 10")
    table.page.mouse.click(*table.coin(1))
    table.page.mouse.click(*table.spot(1100, 1000))
    moved = table.tray[1]
    assert moved["coin"] == "10"
    assert (moved["x"], moved["y"]) == pytest.approx((1100, 1000), abs=3)


def test_a_tap_that_trembles_is_a_tap(table):
    table.show("25")
    x, y = table.coin(0)
    table.page.mouse.move(x, y)
    table.page.mouse.down()
    table.page.mouse.move(x + 3, y - 2)
    table.page.mouse.move(x + 1, y + 3)
    table.page.mouse.up()
    assert table.tray == tray_of("25")
    assert table.option(0).get_attribute("aria-selected") == "true"
    table.says("Picked: 25 cents.")


def test_a_coin_that_is_tapped_twice_is_let_go(table):
    table.show("25")
    for place in (table.slot(0), table.coin(0)):
        for _ in range(2):
            table.page.mouse.click(*place)
        table.page.mouse.click(*table.spot(1000, 1000))
    assert table.tray == tray_of("25")


KEYS_ON_PURSE = [("Enter", "10"), (" ", "10")]


@pytest.mark.parametrize("key", ["Enter", " "])
def test_a_key_on_a_kind_of_the_purse_puts_a_coin_onto_the_tray(table, key):
    table.show()
    table.page.get_by_role("button", name="10 cents").focus()
    table.page.keyboard.press(key)
    table.page.keyboard.press(key)
    assert table.kinds == "10 10"
    table.says("10 cents on the tray. 20 cents.")


@pytest.mark.parametrize(("key", "kinds"), [("1", "25"), ("2", "10"), ("4", "1"), ("5", "")])
def test_a_number_key_puts_a_coin_onto_the_tray_from_wherever_the_focus_is(table, key, kinds):
    table.show()
    for name in ("25 cents", "Line up"):
        table.page.get_by_role("button", name=name).focus()
        table.page.keyboard.press(key)
    assert table.kinds == " ".join([kinds] * 2).strip()


KEYS = [
    ("ArrowRight", 0, 1),
    ("ArrowDown", 0, 1),
    ("ArrowRight", 3, 3),
    ("ArrowLeft", 1, 0),
    ("ArrowUp", 1, 0),
    ("ArrowLeft", 0, 0),
    ("Home", 2, 0),
    ("End", 1, 3),
]


@pytest.mark.parametrize(("key", "begin", "end"), KEYS)
def test_a_key_leads_from_coin_to_coin_in_the_order_of_counting(table, key, begin, end):
    table.show("25 10 5 1")
    table.option(begin).focus()
    table.page.keyboard.press(key)
    focused = "[...document.querySelectorAll('[role=option]')].indexOf(document.activeElement)"
    assert table.page.evaluate(focused) == end
    assert table.option(end).get_attribute("tabindex") == "0"
    assert table.page.locator("[role=option][tabindex='0']").count() == 1
    assert table.tray == tray_of("25 10 5 1")


@pytest.mark.parametrize(
    ("key", "way"),
    [
        ("Shift+ArrowRight", (50, 0)),
        ("Shift+ArrowLeft", (-50, 0)),
        ("Shift+ArrowUp", (0, -50)),
        ("Shift+ArrowDown", (0, 50)),
    ],
)
def test_shift_with_an_arrow_moves_a_coin_five_millimetres(table, key, way):
    table.show(tray=[{"coin": "25", "x": 700, "y": 700}])
    table.option(0).focus()
    table.page.keyboard.press(key)
    assert table.tray == [{"coin": "25", "x": 700 + way[0], "y": 700 + way[1]}]
    table.page.keyboard.press(key)
    assert table.tray == [{"coin": "25", "x": 700 + 2 * way[0], "y": 700 + 2 * way[1]}]


@pytest.mark.parametrize("key", ["Delete", "Backspace"])
def test_a_key_puts_a_coin_back_into_the_purse_and_the_focus_on_the_next(table, key):
    table.show("25 10 5")
    table.option(1).focus()
    for kinds in ("25 5", "25", ""):
        table.page.keyboard.press(key)
        assert table.kinds == kinds
    assert table.page.evaluate("document.activeElement.matches('.coins-handle:not(.is-round)')")


@pytest.mark.parametrize("key", ["Enter", " "])
def test_a_key_picks_a_coin_and_lets_it_go(table, key):
    table.show("25 10")
    table.option(1).focus()
    for picked in ("true", "false"):
        table.page.keyboard.press(key)
        assert table.option(1).get_attribute("aria-selected") == picked


def test_escape_brings_a_dragged_coin_back(table):
    table.show("25")
    table.drag(table.coin(0), table.spot(900, 900), let_go=False)
    assert table.page.locator(".coins-floating .coin").count() == 1
    table.page.keyboard.press("Escape")
    assert table.page.locator(".coins-floating .coin").count() == 0
    table.page.mouse.up()
    assert table.tray == tray_of("25")
    table.page.mouse.click(*table.slot(0))
    table.page.keyboard.press("Escape")
    table.page.mouse.click(*table.spot(900, 900))
    assert table.tray == tray_of("25")


@pytest.mark.parametrize("key", ["PageDown", "PageUp", "F5", ".", "b", "Control+ArrowRight", "Tab"])
def test_keys_of_the_board_and_the_browser_are_left_to_them(table, key):
    table.show("25")
    table.page.evaluate("""() => {
      window.heard = [];
      addEventListener("keydown", (event) => {
        heard.push([event.key, event.defaultPrevented]);
        event.preventDefault();
      });
    }""")
    for place in (table.option(0), table.page.locator(PURSE).first):
        place.focus()
        table.page.keyboard.press(key)
    heard = table.page.evaluate("heard.filter(([key]) => key !== 'Control')")
    assert heard == [[key.removeprefix("Control+"), False]] * 2
    assert table.tray == tray_of("25")


def test_everything_is_reached_with_the_tab_key(table):
    table.show("25 10", panel=True, trade=True)
    reached = []
    for _ in range(22):
        table.page.keyboard.press("Tab")
        reached.append(
            table.page.evaluate(
                "document.activeElement.getAttribute('aria-label') "
                "?? document.activeElement.textContent"
            )
        )
    assert reached[:16] == [
        *("25 cents", "10 cents", "5 cents", "1 cent"),
        "25 cents",
        *("Undo", "Reset", "Line up", "Sweep"),
        *("Total", "Worths", "Names", "Counts", "Trade"),
        "Written $1 and 41¢",
        reached[15],
    ]


def test_keys_alone_make_an_amount_line_it_up_and_trade_it(table):
    table.show(trade=True)
    table.page.keyboard.press("Tab")
    for key in "2234":
        table.page.keyboard.press(key)
    assert table.kinds == "10 10 5 1"
    table.page.get_by_role("button", name="Line up").focus()
    table.page.keyboard.press("Enter")
    assert table.tray == tray_of("10 10 5 1")
    table.option(0).focus()
    table.page.keyboard.press("Enter")
    for _ in range(2):
        table.page.keyboard.press("ArrowRight")
        table.page.keyboard.press("Enter")
    table.page.locator(".coins-offer").focus()
    table.page.keyboard.press("Enter")
    assert table.kinds == "25 1"
    table.says("Traded 2 coins of 10 cents, 1 coin of 5 cents for 1 coin of 25 cents. 26 cents.")
    # The coin that came of it has the focus.
    assert table.page.evaluate("document.activeElement.getAttribute('aria-label')") == "25 cents"


def test_a_screen_reader_that_clicks_puts_a_coin_onto_the_tray_and_picks_it(table):
    table.show()
    table.page.evaluate(
        "document.querySelector('.coins-handle').dispatchEvent("
        "new MouseEvent('click', { bubbles: true, detail: 0 }))"
    )
    assert table.kinds == "25"
    table.page.evaluate(
        "document.querySelector('[role=option]').dispatchEvent("
        "new MouseEvent('click', { bubbles: true, detail: 0 }))"
    )
    assert table.option(0).get_attribute("aria-selected") == "true"


def test_coins_are_lined_up_and_swept_and_all_of_it_is_undone(table):
    table.show()
    steps = [[]]
    for index, at in ((3, (300, 1000)), (0, (1100, 400)), (1, (700, 700)), (0, (400, 300))):
        table.drag(table.slot(index), table.spot(*at))
        steps.append(table.tray)
    table.press("Line up")
    assert table.tray == tray_of("25 25 10 1")
    steps.append(table.tray)
    table.press("Sweep")
    assert table.tray == []
    for before in reversed(steps):
        table.press("Undo")
        assert table.tray == before
    table.press("Undo")
    assert table.tray == []
    assert table.page.get_by_role("button", name="Undo").get_attribute("aria-disabled") == "true"


def test_undo_goes_all_the_way(table):
    table.show()
    table.page.locator(PURSE).nth(3).focus()
    for _ in range(12):
        table.page.keyboard.press("4")
        table.page.keyboard.press("1")
    for _ in range(24):
        table.press("Undo")
    assert table.tray == []


def test_reset_goes_to_the_beginning_and_can_be_undone(table):
    table.show("25")
    table.drag(table.slot(1), table.spot(900, 900))
    changed = table.tray
    table.press("Reset")
    assert table.tray == tray_of("25")
    table.press("Undo")
    assert table.tray == changed


def test_a_tray_from_outside_is_shown_and_is_a_new_beginning(table):
    table.show("25")
    table.drag(table.slot(1), table.spot(900, 900))
    table.page.evaluate("tray => kit.outside('tray', tray)", tray_of("10 5"))
    assert table.kinds == "10 5"
    assert table.page.get_by_role("option").count() == 2
    assert table.page.get_by_role("button", name="Undo").get_attribute("aria-disabled") == "true"
    table.press("Sweep")
    table.press("Reset")
    assert table.kinds == "10 5"


def test_a_tray_from_outside_ends_a_drag(table):
    table.show("25")
    table.drag(table.coin(0), table.spot(900, 900), let_go=False)
    table.page.evaluate("tray => kit.outside('tray', tray)", tray_of("10 5"))
    assert table.page.locator(".coins-floating .coin").count() == 0
    table.page.mouse.up()
    assert table.tray == tray_of("10 5")


def test_another_currency_is_shown_with_its_coins(table):
    table.show("25 10")
    # The two traits arrive one after the other.
    table.page.evaluate("kit.outside('currency', 'gbp')")
    table.page.evaluate("kit.outside('purse', ['200', '20'])")
    table.page.evaluate("tray => kit.outside('tray', tray)", tray_of("200 20", "gbp"))
    assert table.kinds == "200 20"
    assert table.total() == "£2 and 20p"
    assert table.page.locator(PURSE).count() == 2


def test_every_change_is_set_once_and_seen_before_it_is_told(table):
    table.show()
    table.page.evaluate("""() => {
      window.seen = [];
      document.querySelector(".kit-coins").addEventListener("kit:change", () => {
        seen.push(document.querySelectorAll("[role=option]").length);
      });
    }""")
    table.drag(table.slot(0), table.spot(900, 900))
    table.page.keyboard.press("2")
    assert table.page.evaluate("seen") == [1, 2]
    assert table.page.evaluate("kit.sets.map(([name]) => name)") == ["tray", "tray"]
    assert table.page.evaluate("kit.saves") == 2


@pytest.mark.parametrize("trait", ["running_total", "worths", "names", "counts", "trade"])
def test_a_switch_shows_and_hides(table, trait):
    table.show("25 10 5 1", panel=True)
    name = {"running_total": "Total"}.get(trait, trait.capitalize())
    tile = table.page.get_by_role("switch", name=name, exact=True)
    before = table.page.evaluate("trait => kit.get(trait)", trait)
    shown = tile.get_attribute("aria-checked")
    tile.click()
    assert table.page.evaluate("trait => kit.get(trait)", trait) is not before
    assert tile.get_attribute("aria-checked") != shown
    tile.click()
    assert table.page.evaluate("trait => kit.get(trait)", trait) is before


def test_the_total_is_written_in_three_ways(table):
    table.show("100 25 10 5 1", panel=True, purse="100 25")
    for shown in ("$1 and 41¢", "141¢", "$1.41", "$1 and 41¢"):
        assert table.total() == shown
        table.page.get_by_role("button", name="Written").click()


def test_figures_for_counting_on_line_the_coins_up_and_stand_below_them(table):
    table.show(
        tray=[
            {"coin": "1", "x": 300, "y": 900},
            {"coin": "10", "x": 900, "y": 300},
            {"coin": "25", "x": 900, "y": 900},
        ],
        panel=True,
    )
    table.page.get_by_role("switch", name="Counts").click()
    assert table.tray == tray_of("25 10 1")
    assert table.page.locator(".coins-figures text").all_text_contents() == ["25", "35", "36"]
    table.page.evaluate("kit.outside('counts', 2)")
    assert table.page.locator(".coins-figures text").all_text_contents() == ["25", "35"]
    boxes = [each.bounding_box() for each in table.page.locator(".coins-figures text").all()]
    coins = [each.bounding_box() for each in table.page.locator(".coin-metal").all()]
    assert all(box["y"] > 0 for box in boxes)
    assert len(coins) == 7


def test_what_is_asked_is_neither_shown_nor_told(table):
    table.show("10 1", running_total=False, worths=False, names=False, ring="10")
    assert table.total() is None
    text = table.page.locator(".kit-coins").inner_text()
    assert not any(letter.isdigit() for letter in text)
    labels = table.page.evaluate(
        "[...document.querySelectorAll('[aria-label]')].map((each) => each.ariaLabel).join()"
    )
    for word in ("dime", "penny", "cent", "10", "nickel", "quarter"):
        assert word not in labels
    assert "silver coin, 18 millimetres" in labels
    table.page.keyboard.press("Tab")
    table.page.keyboard.press("1")
    table.says("silver coin, 24 millimetres on the tray. 3 coins.")
    assert table.page.locator(".coin-ring").count() == 1


def test_without_worths_and_names_the_panel_says_that_real_coins_belong_beside_the_screen(table):
    table.show("10 1", panel=True)
    note = table.page.get_by_text("Real coins belong beside the screen.")
    assert not note.is_visible()
    table.page.get_by_role("switch", name="Worths").click()
    assert note.is_visible()


def test_a_purse_with_an_end_says_how_many_are_left(table):
    table.show("10", purse={"10": 3, "1": 1})
    assert table.page.locator(".coins-left").all_text_contents() == ["2", "1"]
    assert table.page.locator(PURSE).first.get_attribute("aria-label") == "10 cents, 2 left"
    table.drag(table.slot(0), table.spot(900, 900))
    table.page.keyboard.press("1")
    assert table.page.locator(".coins-left").all_text_contents() == ["0", "1"]
    assert table.page.locator(PURSE).first.get_attribute("aria-disabled") == "true"
    table.drag(table.slot(0), table.spot(900, 300))
    table.page.keyboard.press("1")
    table.says("There are no more of these.")
    assert table.kinds == "10 10 10"
    table.drag(table.coin(0), table.slot(1))
    assert table.page.locator(".coins-left").all_text_contents() == ["1", "1"]


def test_a_full_tray_says_so_and_takes_no_more(table):
    table.show(["50"] * 25, purse=["50"], currency="usd")
    for _ in range(12):
        table.page.locator(PURSE).focus()
        table.page.keyboard.press("1")
    table.says("The tray is full.")
    assert check_tray(table.tray) == table.tray
    before = table.tray
    table.drag(table.slot(0), table.spot(700, 700))
    assert table.tray == before


def test_coins_worth_another_are_tapped_and_traded(table):
    table.show("10 10 5 1", trade=True)
    assert table.page.locator(".coins-trades").inner_text() == "Tap coins to trade them."
    for index in range(2):
        table.page.mouse.click(*table.coin(index))
    assert table.page.locator(".coins-trades").inner_text() == "No coin is worth just that."
    table.page.mouse.click(*table.coin(2))
    table.page.locator(".coins-offer").click()
    assert table.kinds == "25 1"
    assert table.total() == "26¢"


def test_a_coin_is_broken_into_smaller_ones(table):
    table.show("25", trade=True)
    table.page.mouse.click(*table.coin(0))
    labels = [each.get_attribute("aria-label") for each in table.page.locator(".coins-offer").all()]
    assert labels == [
        "2 coins of 10 cents, 1 coin of 5 cents",
        "5 coins of 5 cents",
        "25 coins of 1 cent",
    ]
    table.page.locator(".coins-offer").first.click()
    assert table.kinds == "10 10 5"
    table.press("Undo")
    assert table.tray == tray_of("25")


def test_the_smallest_coin_cannot_be_broken(table):
    table.show("1", trade=True)
    table.page.mouse.click(*table.coin(0))
    assert table.page.locator(".coins-trades").inner_text() == "There is nothing smaller."


@pytest.mark.screens("board", "tablet", "phone")
def test_offers_of_a_trade_move_nothing(table):
    table.show("25 10 10 5", trade=True, panel=True)
    boxes = [table.page.evaluate(BOX, each) for each in (".coins-mat", ".coins-panel")]
    table.page.mouse.click(*table.coin(0))
    assert table.page.locator(".coins-offer").count() == 3
    assert [table.page.evaluate(BOX, each) for each in (".coins-mat", ".coins-panel")] == boxes


def test_a_photograph_of_a_teacher_is_in_the_place_of_the_face(table, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "dime.png").write_bytes(PICTURE)
    table.show("25 10", photographs={"10": "dime.png"}, names=True)
    assert table.page.locator("image").count() == 2
    coins = table.page.locator(".coins-lying > .coin")
    assert coins.nth(1).locator("text").count() == 0
    assert coins.nth(0).locator("text").all_text_contents() == ["25", "quarter"]


def test_a_tray_that_cannot_be_moved_is_a_picture_of_its_coins(table):
    table.show("25 10", movable=False, purse=[])
    assert table.page.get_by_role("option").count() == 0
    picture = table.page.get_by_role("img", name="1 coin of 25 cents, 1 coin of 10 cents")
    assert picture.count() == 1
    # No coin wastes the room: the larger one is a quarter of the height of the screen.
    assert table.page.locator(".coin-metal").first.bounding_box()["height"] > 270
    table.drag(table.spot(162, 162), table.spot(600, 300))
    table.page.keyboard.press("Tab")
    table.page.keyboard.press("1")
    assert table.tray == tray_of("25 10")


def test_without_a_purse_coins_are_moved_and_never_lost(table):
    table.show("25 10", purse=[])
    assert table.page.locator(PURSE).count() == 0
    assert table.page.get_by_role("button", name="Sweep").count() == 0
    table.drag(table.coin(1), table.spot(900, 900))
    table.option(0).focus()
    table.page.keyboard.press("Delete")
    assert table.kinds == "25 10"
    assert table.tray[1] == {"coin": "10", "x": 900, "y": 900}


def test_names_that_do_not_fit_on_coins_stand_below_them_in_the_purse(table):
    table.page.set_viewport_size({"width": 360, "height": 740})
    table.show("25", names=True)
    texts = table.page.locator(".coins-slots > g > text").all_text_contents()
    assert texts == ["quarter", "dime", "nickel", "penny"]
    assert "quarter" in table.option(0).get_attribute("aria-label")


READ = """() => document.querySelector(".kit-coins").facts()"""


def test_the_facts_in_the_browser_are_those_of_python(table):
    table.show("25 10", purse={"25": 2, "10": 3, "1": 5})
    for key in "331":
        table.page.keyboard.press("Tab")
        table.page.keyboard.press(key)
    assert table.page.evaluate(READ) == tray_facts(table.tray, "usd", {"25": 2, "10": 3, "1": 5})


SEEN = """() => {
  const held = document.querySelector(".coins-floating .coin-metal").getBoundingClientRect();
  return [held.x + held.width / 2, held.y + held.height / 2];
}"""
WATCH = """(seen) => {
  window.frames_seen = [];
  addEventListener("pointermove", () => requestAnimationFrame(() => {
    window.frames_seen.push(eval(seen)());
  }), { capture: true });
}"""


def test_a_drag_is_painted_in_the_frame_that_it_happens_in(table):
    kinds = ["25"] * 5 + ["10"] * 15 + ["5"] * 10 + ["1"] * 30
    table.show(kinds)
    session = table.page.context.new_cdp_session(table.page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": 4})
    start = table.coin(0)
    table.page.mouse.move(*start)
    table.page.mouse.down()
    table.page.mouse.move(start[0] + 20, start[1] + 20)
    table.page.evaluate(WATCH, SEEN)
    wanted = [(start[0] + 40 * step, start[1] + 30 * step) for step in range(1, 6)]
    for point in wanted:
        before = table.page.evaluate("window.frames_seen.length")
        table.page.mouse.move(*point)
        table.page.wait_for_function("(before) => window.frames_seen.length > before", arg=before)
    seen = table.page.evaluate("window.frames_seen")
    assert len(seen) == len(wanted)
    for point, stood in zip(wanted, seen, strict=True):
        assert stood == pytest.approx(point, abs=1.5)
    table.page.mouse.up()
    assert len(table.tray) == 60


def test_movement_is_still_for_those_who_want_it_so(table):
    table.page.emulate_media(reduced_motion="reduce")
    table.show("25 10 5 1")
    table.drag(table.coin(3), table.spot(1100, 1100))
    table.press("Line up")
    assert table.page.evaluate(
        "getComputedStyle(document.querySelector('[role=option]')).transitionDuration"
    ) in ("0s", "0s, 0s")
    assert table.page.evaluate("document.getAnimations().length") == 0


EVERYTHING = {"panel": True, "trade": True, "counts": True, "names": True}


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("currency", ["usd", "gbp", "eur"])
def test_whatever_is_pressed_or_taken_is_large_enough(table, currency):
    table.show("10 5 1" if currency != "usd" else "25 10 5 1", currency=currency, panel=True)
    for each in table.page.locator("button:visible, .coins-handle").all():
        box = each.bounding_box()
        assert min(box["width"], box["height"]) >= 44, each
    for each in table.page.locator("[role=option]").all():
        assert each.bounding_box()["width"] >= 44


CUT_OFF = """() => [...document.querySelectorAll(".kit-coins *")]
  .filter((each) => each instanceof HTMLElement && each.checkVisibility() &&
    each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0 &&
    getComputedStyle(each).overflowX !== "auto")
  .map((each) => each.className)"""


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("traits", [{}, {"panel": True}, EVERYTHING], ids=["plain", "panel", "all"])
@pytest.mark.parametrize("currency", ["usd", "gbp"])
def test_nothing_is_cut_off_or_lies_over_another(table, screen, traits, currency):
    table.show("10 5 1", currency=currency, **traits)
    assert table.page.evaluate(CUT_OFF) == []
    size = table.page.evaluate("[document.documentElement.scrollWidth, scrollX]")
    assert size[0] <= screen.width
    boxes = [
        each.bounding_box()
        for each in table.page.locator(
            ".coins-place, .coins-total:visible, .coins-side .kit-button:visible, "
            ".kit-switch:visible"
        ).all()
    ]
    for one, other in combinations(boxes, 2):
        apart = (
            one["x"] + one["width"] <= other["x"] + 1
            or other["x"] + other["width"] <= one["x"] + 1
            or one["y"] + one["height"] <= other["y"] + 1
            or other["y"] + other["height"] <= one["y"] + 1
        )
        assert apart, (one, other)


@pytest.mark.screens("board", "tablet", "phone")
def test_text_is_large_enough_for_children(table):
    table.show("25 10 5 1", counts=True, panel=True, purse={"25": 3, "10": 3, "5": 2, "1": 9})
    sizes = table.page.evaluate("""() => {
      const scale = document.querySelector(".coins-drawing").getScreenCTM().a;
      return [...document.querySelectorAll(".kit-coins text, .kit-coins button, .coins-total")]
        .filter((each) => each.checkVisibility())
        .map((each) => [each.textContent, parseFloat(getComputedStyle(each).fontSize) *
          (each.closest("svg.coins-drawing") ? scale : 1)]);
    }""")
    assert len(sizes) > 20
    assert [text for text, size in sizes if size < 17.5] == []


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("height", ["100vh", "auto"])
def test_it_fits_the_screen_whether_it_is_given_a_height_or_not(table, screen, height):
    table.show("25 10", place=f"height: {height}", panel=screen.name != "phone")
    box = table.page.evaluate(BOX, ".kit-coins")
    assert box["width"] <= screen.width
    assert box["height"] <= screen.height + 1
    drawing = table.page.evaluate(BOX, ".coins-mat")
    assert drawing["width"] > 0.4 * min(screen.width, screen.height)
    assert drawing["y"] + drawing["height"] <= screen.height


def test_the_font_of_the_kit_is_used_in_one_weight(table):
    table.show("25 10", panel=True)
    fonts = table.page.evaluate("""() => [...document.querySelectorAll(".kit-coins *")]
      .map((each) => getComputedStyle(each))
      .map(({ fontFamily, fontWeight }) => `${fontFamily.slice(0, 13)} ${fontWeight}`)""")
    assert set(fonts) == {'"Kit Reading" 400'}


def test_two_views_of_one_tray_agree_and_speak_through_one_region(table):
    table.show("25", place="height: 45vh")
    table.page.evaluate("""() => {
      const second = document.querySelector("#place").cloneNode();
      document.body.append(second);
      return kit.view(second);
    }""")
    for view, kinds in ((0, "25 10"), (1, "25 10 10")):
        table.page.locator(".kit-coins").nth(view).locator(PURSE).first.focus()
        table.page.keyboard.press("2")
        facts = table.page.evaluate(
            "[...document.querySelectorAll('.kit-coins')].map((each) => each.facts().kinds)"
        )
        assert facts == [kinds] * 2
        assert table.page.locator(".coins-lying > .coin").count() == 2 * len(kinds.split())
    table.says("10 cents on the tray. 45 cents.")
    assert table.page.locator("#kit-live").count() == 1


def test_two_fingers_hold_two_coins(table):
    table.show("25 10 5 1", panel=False)
    before = table.tray
    fingers = Fingers(table.page)
    fingers.down(1, table.coin(0))
    fingers.down(2, table.coin(2))
    fingers.move(1, table.spot(300, 900))
    fingers.move(2, table.spot(1000, 900))
    assert table.page.locator(".coins-floating .coin").count() == 2
    assert table.page.locator(".coins-lying .is-lifted").count() == 2
    fingers.up(2)
    assert table.page.locator(".coins-floating .coin").count() == 1
    assert table.page.locator(".coins-lying .is-lifted").count() == 1
    fingers.up(1)
    assert table.page.locator(".coins-floating .coin").count() == 0
    near = {lying["coin"]: (lying["x"], lying["y"]) for lying in table.tray}
    assert near["25"] == pytest.approx((300, 900), abs=10)
    assert near["5"] == pytest.approx((1000, 900), abs=10)
    # Each was a step of its own.
    table.press("Undo")
    table.press("Undo")
    assert table.tray == before


def test_a_coin_that_is_held_can_be_swept_away(table):
    table.show("25 10")
    fingers = Fingers(table.page)
    fingers.down(1, table.coin(0))
    fingers.move(1, table.spot(300, 900))
    table.page.evaluate("kit.outside('tray', [])")
    fingers.up(1)
    assert table.tray == []
    assert table.page.locator(".coins-floating").count() == 0


def test_a_view_that_has_ended_is_silent(table):
    table.show("25")
    table.page.evaluate("kit.end.abort()")
    table.page.evaluate("tray => kit.outside('tray', tray)", tray_of("10 5"))
    assert table.page.locator(".coins-lying .coin").count() == 1
    table.page.keyboard.press("Tab")
    table.page.keyboard.press("1")
    assert table.tray == tray_of("10 5")


def test_its_text_is_small_enough_to_be_carried_by_every_notebook():
    # 55 kB when this was written, 17 kB packed as servers send it.
    text = CoinTray._esm.encode()  # noqa: SLF001 - it is what hosts are sent
    assert len(text) < 58_000
    assert len(gzip.compress(text)) < 18_000
