"""Place value blocks in a browser: by mouse, finger, taps and keys, on three screens."""

from __future__ import annotations

import math
from random import Random

import pytest
from browser.harness import open_widget

from manipulatives.maths.number.mats import mat_facts
from manipulatives.maths.number.place_value import PLACES, check_blocks, number_of, partitioned
from manipulatives.maths.number.words import number_in_words
from manipulatives.outputs.page.blocks import view
from manipulatives.outputs.page.document import document
from manipulatives.outputs.page.saved import SavedWidgets, states_of, with_parts
from manipulatives.widgets.blocks import PlaceValueBlocks
from support.blocks import random_blocks
from support.chromium import visit
from support.touch import Fingers

BOX = """([at, place, index]) => {
  const mat = document.querySelectorAll(".blocks-mat")[at];
  const faces = mat.querySelectorAll(`.blocks-field .block-${place} > .block-face`);
  const { x, y, width, height } = faces[index < 0 ? faces.length + index : index]
    .getBoundingClientRect();
  return { x, y, width, height };
}"""
FREE = """([at, place]) => {
  const mat = document.querySelectorAll(".blocks-mat")[at];
  const column = mat.querySelector(`[aria-label="${place}"]`).getBoundingClientRect();
  return [column.x + column.width / 2, column.y + column.height - 12];
}"""
STILL = """() => document.getAnimations().every(({ playState }) => playState === "finished") &&
  document.querySelector(".is-coming") === null"""
ODD = [{"tens": 2, "ones": 15}]


class Table:
    """A mat on a page, and what a test does with it."""

    def __init__(self, page):
        self.page = page

    def show(self, number=None, *, place="height: 100vh", **traits):
        """Show blocks; the panel is left out unless the test asks for it."""
        widget = PlaceValueBlocks(number, **{"panel": False, **traits})
        open_widget(self.page, widget, place=place)

    @property
    def mat(self):
        """What the model holds, without the places that have none."""
        return [
            {place: count for place, count in blocks.items() if count}
            for blocks in self.page.evaluate("kit.get('mat')")
        ]

    def settle(self):
        """Wait until nothing moves any more."""
        self.page.wait_for_function(STILL)

    def box(self, place, index=-1, at=0):
        """The box of a block's face."""
        return self.page.evaluate(BOX, [at, place, index])

    def block(self, place, index=-1, at=0):
        """The middle of a block."""
        box = self.box(place, index, at)
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    def free(self, place, at=0):
        """A free spot at the foot of a column."""
        return self.page.evaluate(FREE, [at, place.capitalize()])

    def source(self, place):
        """The middle of a block in the box."""
        name = f"Take a {place[:-1]}"
        box = self.page.get_by_role("button", name=name, exact=True).bounding_box()
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    def drag(self, start, *ways, let_go=True):
        """Drag by mouse from spot to spot."""
        self.page.mouse.move(*start)
        self.page.mouse.down()
        for spot in ways:
            self.page.mouse.move(*spot, steps=6)
        if let_go:
            self.page.mouse.up()

    def swipe(self, start, *ways):
        """Drag with a finger from spot to spot."""
        session = self.page.context.new_cdp_session(self.page)

        def touch(kind, *points):
            spots = [dict(zip("xy", point, strict=True)) for point in points]
            session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": spots})

        touch("touchStart", start)
        last = start
        for spot in ways:
            for step in range(1, 7):
                share = step / 6
                touch(
                    "touchMove", tuple(a + (b - a) * share for a, b in zip(last, spot, strict=True))
                )
            last = spot
        touch("touchEnd")

    def round(self, place, indices, at=0, margin=7):
        """The corners of a way round some blocks, back to where it begins."""
        boxes = [self.box(place, index, at) for index in indices]
        left = min(box["x"] for box in boxes) - margin
        top = min(box["y"] for box in boxes) - margin
        right = max(box["x"] + box["width"] for box in boxes) + margin
        # The next row may be near.
        foot = max(box["y"] + box["height"] for box in boxes) + min(margin, 2)
        start = (left - 8, top - 8)
        return start, (right, top), (right, foot), (left, foot), start

    def press(self, name):
        """Press a button, even one that says it has nothing to do."""
        self.page.get_by_role("button", name=name, exact=True).click(force=True)

    def column(self, place, at=0):
        """What takes the focus for a column."""
        return self.page.get_by_role("spinbutton", name=place.capitalize()).nth(at)

    def note(self):
        """What stands there for the child."""
        return self.page.locator(".blocks-note").text_content()

    def text(self, part):
        """What a reading says."""
        return self.page.locator(f".blocks-{part}").inner_text()

    def says(self, sentence):
        """Wait until the live region says a sentence."""
        self.page.wait_for_function(
            "sentence => document.querySelector('#kit-live')?.textContent === sentence",
            arg=sentence,
        )


@pytest.fixture
def table(quiet_page):
    return Table(quiet_page)


# From the box or a column, to a column or beside the mats, and what then lies there.
DRAGS = [
    ("box", "tens", "tens", {"tens": 3, "ones": 15}),
    ("box", "hundreds", "hundreds", {"hundreds": 1, "tens": 2, "ones": 15}),
    ("box", "tens", "ones", {"tens": 2, "ones": 25}),
    ("mat", "tens", "ones", {"tens": 1, "ones": 25}),
    ("mat", "tens", None, {"tens": 1, "ones": 15}),
    ("mat", "ones", None, {"tens": 2, "ones": 14}),
    ("mat", "ones", "ones", {"tens": 2, "ones": 15}),
    ("mat", "ones", "tens", {"tens": 2, "ones": 15}),
]


def ends(table, start, place, target):
    begin = table.source(place) if start == "box" else table.block(place)
    return begin, table.source("ones") if target is None else table.free(target)


@pytest.mark.parametrize(("start", "place", "target", "after"), DRAGS)
def test_a_block_is_dragged_by_mouse(table, start, place, target, after):
    table.show(mat=ODD)
    table.drag(*ends(table, start, place, target))
    assert table.mat == [after]


@pytest.mark.screens("tablet", "phone")
@pytest.mark.parametrize(("start", "place", "target", "after"), DRAGS)
def test_a_block_is_dragged_by_a_finger(table, start, place, target, after):
    table.show(mat=ODD)
    table.swipe(*ends(table, start, place, target))
    assert table.mat == [after]
    assert table.page.evaluate("scrollY") == 0


@pytest.mark.parametrize(("start", "place", "target", "after"), DRAGS)
def test_a_block_is_tapped_and_then_the_place_where_it_goes(table, start, place, target, after):
    table.show(mat=ODD)
    begin, end = ends(table, start, place, target)
    table.page.mouse.click(*begin)
    table.page.mouse.click(*end)
    assert table.mat == [after]


@pytest.mark.screens("phone")
@pytest.mark.parametrize(("start", "place", "target", "after"), DRAGS)
def test_taps_with_a_finger_do_the_same(table, start, place, target, after):
    table.show(mat=ODD)
    begin, end = ends(table, start, place, target)
    table.page.touchscreen.tap(*begin)
    table.page.touchscreen.tap(*end)
    assert table.mat == [after]


def test_a_block_of_the_box_can_be_put_down_again_and_again(table):
    table.show(12)
    table.page.mouse.click(*table.source("tens"))
    for _ in range(3):
        table.page.mouse.click(*table.free("tens"))
    assert table.mat == [{"tens": 4, "ones": 2}]
    table.page.mouse.click(*table.source("tens"))
    table.page.mouse.click(*table.free("tens"))
    assert table.mat == [{"tens": 4, "ones": 2}], "it was let go"


def test_several_blocks_are_tapped_and_go_together(table):
    table.show(mat=ODD)
    for index in (0, 3, 7):
        table.page.mouse.click(*table.block("ones", index))
    assert table.note() == "3 ones. Now tap where they go."
    table.page.mouse.click(*table.block("ones", 3))
    assert table.note() == "2 ones. Now tap where they go."
    table.page.mouse.click(*table.source("hundreds"))
    assert table.mat == [{"tens": 2, "ones": 13}]


def test_picked_blocks_are_dragged_together(table):
    table.show(mat=ODD)
    for index in (0, 1, 2):
        table.page.mouse.click(*table.block("ones", index))
    table.drag(table.block("ones", 1), table.source("hundreds"))
    assert table.mat == [{"tens": 2, "ones": 12}]


def test_ten_counted_by_tapping_become_one_in_the_next_column(table):
    table.show(mat=ODD)
    for index in range(10):
        table.page.mouse.click(*table.block("ones", index))
    table.page.mouse.click(*table.free("tens"))
    assert table.mat == [{"tens": 3, "ones": 5}]


def test_a_ring_round_ten_ones_makes_a_ten(table):
    table.show(mat=ODD, equation=True)
    start, *way = table.round("ones", range(10))
    table.drag(start, *way)
    assert table.mat == [{"tens": 3, "ones": 5}]
    assert table.text("steps") == "10 ones = 1 ten\n20 + 15 = 30 + 5"
    assert table.page.locator(".blocks-ring[d]").count() == 0


@pytest.mark.screens("tablet", "phone")
def test_a_ring_is_drawn_with_a_finger_too(table):
    table.show(mat=ODD)
    start, *way = table.round("ones", range(10))
    table.swipe(start, *way)
    assert table.mat == [{"tens": 3, "ones": 5}]


@pytest.mark.parametrize(
    ("place", "before", "after"),
    [
        ("tens", {"tens": 11, "ones": 2}, {"hundreds": 1, "tens": 1, "ones": 2}),
        ("hundreds", {"hundreds": 10}, {"thousands": 1}),
    ],
)
def test_a_ring_round_ten_of_any_place_makes_one_of_the_next(table, place, before, after):
    table.show(mat=[before], places=4)
    start, *way = table.round(place, range(10), margin=3)
    table.drag(start, *way)
    assert table.mat == [after]


def test_a_ring_round_seven_picks_them_and_says_what_is_missing(table):
    table.show(mat=[{"ones": 7}])
    start, *way = table.round("ones", range(7))
    table.drag(start, *way)
    assert table.mat == [{"ones": 7}]
    assert table.note() == "You ringed 7 ones. Ten make a ten."
    table.drag(table.block("ones", 0), table.source("ones"))
    assert table.mat == [{}]


def test_a_ring_that_is_not_closed_or_goes_round_two_kinds_says_so(table):
    table.show(mat=ODD)
    start, right, foot, *_ = table.round("ones", range(10))
    table.drag(start, right, foot)
    assert table.note() == "Bring the ring back to where it began."
    box, far = table.box("tens", 0), table.free("ones")
    left = box["x"] - 14
    table.drag(
        (left, box["y"] - 12), (far[0] + 150, box["y"] - 12), far, (left, far[1]), (left, box["y"])
    )
    assert table.note() == "Ring one kind of block."
    assert table.mat == [{"tens": 2, "ones": 15}]


def test_ten_tens_that_have_no_column_to_go_to_stay_ten(table):
    table.show(mat=[{"ones": 12}], places=1)
    start, *way = table.round("ones", range(10))
    table.drag(start, *way)
    assert table.mat == [{"ones": 12}]


@pytest.mark.screens("phone")
def test_a_finger_beside_the_blocks_scrolls_the_page(table):
    table.show(3, place="height: 700px; margin-bottom: 1500px")
    x, y = table.free("tens")
    table.swipe((x, y), (x, y - 300))
    table.page.wait_for_function("scrollY > 100")
    assert table.mat == [{"ones": 3}]


@pytest.mark.parametrize(
    ("name", "before", "after"),
    [
        ("10 ones become 1 ten", {"tens": 2, "ones": 15}, {"tens": 3, "ones": 5}),
        ("1 ten becomes 10 ones", {"tens": 2, "ones": 5}, {"tens": 1, "ones": 15}),
        ("10 tens become 1 hundred", {"tens": 12}, {"hundreds": 1, "tens": 2}),
        ("1 hundred becomes 10 tens", {"hundreds": 1}, {"tens": 10}),
        ("10 hundreds become 1 thousand", {"hundreds": 10}, {"thousands": 1}),
        ("1 thousand becomes 10 hundreds", {"thousands": 1}, {"hundreds": 10}),
    ],
)
def test_a_button_trades(table, name, before, after):
    table.show(mat=[before], places=4)
    table.press(name)
    assert table.mat == [after]
    table.press("Undo")
    assert table.mat == [before]


def test_a_trade_that_cannot_be_made_has_a_button_without_use(table):
    table.show(mat=[{"ones": 9}], places=2)
    for name in ("10 ones become 1 ten", "1 ten becomes 10 ones"):
        button = table.page.get_by_role("button", name=name)
        assert button.get_attribute("aria-disabled") == "true"
        table.press(name)
    assert table.mat == [{"ones": 9}]
    table.press("One one more")
    button = table.page.get_by_role("button", name="10 ones become 1 ten")
    assert button.get_attribute("aria-disabled") == "false"


@pytest.mark.parametrize("trades", ["ring", "button", "none"])
def test_blocks_are_traded_only_as_the_lesson_says(table, trades):
    table.show(mat=ODD, trades=trades)
    buttons = table.page.locator(".blocks-bridge:visible").count()
    assert buttons == (2 if trades == "button" else 0)
    start, *way = table.round("ones", range(10))
    table.drag(start, *way)
    by_ring = trades == "ring"
    assert table.mat == [{"tens": 3, "ones": 5} if by_ring else {"tens": 2, "ones": 15}]
    table.drag(table.block("tens"), table.free("ones"))
    assert (table.note() == "Tens belong in their own column.") == (not by_ring)
    table.column("tens").focus()
    before = table.mat
    table.page.keyboard.press("Shift+ArrowRight")
    assert (table.mat == before) == (trades == "none")


def test_steps_put_in_and_take_away(table):
    table.show(35, numeral=True)
    table.press("One ten more")
    table.press("One one less")
    assert table.mat == [{"tens": 4, "ones": 4}]
    assert table.text("number") == "44"
    table.press("One hundred less")
    assert table.mat == [{"tens": 4, "ones": 4}]


def test_a_mat_that_is_full_says_so(table):
    table.show(9999, places=4)
    table.press("One one more")
    assert table.mat == [dict.fromkeys(PLACES, 9)]
    assert table.note() == "A mat holds 9999 at most."


KEYS = [
    ("ArrowUp", {"tens": 13, "ones": 5}),
    ("+", {"tens": 13, "ones": 5}),
    ("ArrowDown", {"tens": 11, "ones": 5}),
    ("-", {"tens": 11, "ones": 5}),
    ("Delete", {"tens": 11, "ones": 5}),
    ("Backspace", {"tens": 11, "ones": 5}),
    ("7", {"tens": 7, "ones": 5}),
    ("0", {"ones": 5}),
    ("Shift+ArrowLeft", {"hundreds": 1, "tens": 2, "ones": 5}),
    ("Shift+ArrowRight", {"tens": 11, "ones": 15}),
]


@pytest.mark.parametrize(("key", "after"), KEYS)
def test_a_key_changes_the_column_that_has_the_focus(table, key, after):
    table.show(mat=[{"tens": 12, "ones": 5}])
    table.column("tens").focus()
    table.page.keyboard.press(key)
    assert table.mat == [after]
    table.press("Undo")
    assert table.mat == [{"tens": 12, "ones": 5}]


@pytest.mark.parametrize(("key", "place"), [("ArrowLeft", "Hundreds"), ("ArrowRight", "Ones")])
def test_right_and_left_go_from_column_to_column(table, key, place):
    table.show(35)
    table.column("tens").focus()
    table.page.keyboard.press(key)
    assert table.page.evaluate("document.activeElement.ariaLabel") == place
    table.page.keyboard.press(key)
    assert table.page.evaluate("document.activeElement.ariaLabel") == place, "that is the last"


@pytest.mark.parametrize("key", ["Enter", " "])
def test_enter_and_space_pick_blocks_and_put_them_down(table, key):
    table.show(35)
    table.column("tens").focus()
    table.page.keyboard.press(key)
    table.page.keyboard.press(key)
    assert table.note() == "2 tens. Now tap where they go."
    table.page.keyboard.press("ArrowRight")
    table.page.keyboard.press(key)
    assert table.mat == [{"tens": 1, "ones": 25}]


def test_shift_with_up_and_down_moves_a_block_to_the_other_mat(table):
    table.show([52, 0], pair="take")
    table.column("tens").focus()
    table.page.keyboard.press("Shift+ArrowDown")
    assert table.mat == [{"tens": 4, "ones": 2}, {"tens": 1}]
    table.column("tens", at=1).focus()
    table.page.keyboard.press("Shift+ArrowUp")
    assert table.mat == [{"tens": 5, "ones": 2}, {}]


def test_escape_lets_go_of_what_is_picked_and_of_what_is_dragged(table):
    table.show(35)
    table.page.mouse.click(*table.block("tens"))
    table.page.keyboard.press("Escape")
    table.page.mouse.click(*table.free("ones"))
    assert table.mat == [{"tens": 3, "ones": 5}]
    table.drag(table.block("tens"), table.free("ones"), let_go=False)
    table.page.keyboard.press("Escape")
    table.page.mouse.up()
    assert table.mat == [{"tens": 3, "ones": 5}]
    assert table.page.locator(".is-away, .blocks-hand .block").count() == 0


@pytest.mark.parametrize("key", ["PageUp", "PageDown", "F5", ".", "b", "Control+ArrowUp"])
def test_keys_of_the_board_and_the_browser_are_left_to_them(table, key):
    table.show(35)
    table.page.evaluate("""() => document.addEventListener("keydown", (event) => {
      window.heard = [event.key, event.defaultPrevented];
      event.preventDefault();
    })""")
    table.column("tens").focus()
    table.page.keyboard.press(key)
    assert table.page.evaluate("heard") == [key.removeprefix("Control+"), False]
    assert table.mat == [{"tens": 3, "ones": 5}]


def test_what_a_key_cannot_trade_it_explains(table):
    table.show(35)
    table.column("ones").focus()
    table.page.keyboard.press("Shift+ArrowLeft")
    assert table.note() == "Ten ones make a ten. You have 5."
    table.page.keyboard.press("Shift+ArrowRight")
    assert table.note() == "A one does not break."
    assert table.mat == [{"tens": 3, "ones": 5}]


def test_everything_is_reached_with_the_tab_key(table):
    table.show(35, panel=True)
    reached = []
    for _ in range(40):
        table.page.keyboard.press("Tab")
        reached.append(
            table.page.evaluate(
                "document.activeElement.ariaLabel ?? document.activeElement.innerText"
            )
        )
    assert reached[:3] == ["Hundreds", "Tens", "Ones"]
    assert {
        "One ten more", "Take a ten", "10 ones become 1 ten", "Undo", "Reset", "Digits",
        "3 columns", "Take away",
    } <= set(reached)  # fmt: skip


def test_undo_goes_all_the_way_back_and_reset_can_be_undone(table):
    table.show(mat=ODD)
    table.press("10 ones become 1 ten")
    table.drag(table.block("tens"), table.free("ones"))
    table.column("hundreds").focus()
    for _ in range(5):
        table.page.keyboard.press("ArrowUp")
    moved = table.mat
    assert moved == [{"hundreds": 5, "tens": 2, "ones": 15}]
    table.press("Reset")
    assert table.mat == ODD
    table.press("Undo")
    assert table.mat == moved
    for _ in range(7):
        table.press("Undo")
    assert table.mat == ODD
    undo = table.page.get_by_role("button", name="Undo")
    assert undo.get_attribute("aria-disabled") == "true"


def test_every_change_is_set_once_and_seen_before_it_is_told(table):
    table.show(35)
    table.page.evaluate("""() => {
      window.seen = [];
      document.querySelector(".kit-blocks").addEventListener("kit:change", (event) => {
        const shown = document.querySelectorAll(".blocks-field .block-ones").length;
        window.seen.push([event.currentTarget.facts().ones, shown, kit.sets.length]);
      });
    }""")
    table.column("ones").focus()
    table.page.keyboard.press("ArrowUp")
    table.drag(table.block("ones"), table.source("ones"))
    assert table.page.evaluate("seen") == [[6, 6, 1], [5, 5, 2]]
    assert table.page.evaluate("kit.saves") == 2


def test_a_mat_from_outside_is_shown_and_is_a_new_beginning(table):
    table.show(35, numeral=True)
    table.press("One ten more")
    table.page.evaluate("mat => kit.outside('mat', mat)", [{"hundreds": 1, "ones": 2}])
    assert table.text("number") == "102"
    table.press("Undo")
    assert table.page.evaluate("document.querySelector('.kit-blocks').facts().number") == 102


def test_a_mat_from_outside_ends_a_drag(table):
    table.show(35)
    table.drag(table.block("tens"), table.free("ones"), let_go=False)
    table.page.evaluate("mat => kit.outside('mat', mat)", [{"tens": 1}])
    table.page.mouse.up()
    assert table.mat == [{"tens": 1}]


def test_the_step_from_outside_is_told_but_not_a_new_beginning(table):
    table.show(mat=ODD, equation=True)
    table.page.evaluate("mat => kit.outside('mat', mat)", [{"tens": 3, "ones": 5}])
    assert table.text("steps") == "10 ones = 1 ten\n20 + 15 = 30 + 5"
    table.page.evaluate("mat => kit.outside('mat', mat)", [{"hundreds": 1, "tens": 8, "ones": 1}])
    assert table.text("steps") == ""


def test_steps_of_a_lesson_are_told_each_by_itself(table):
    table.show(200, equation=True)
    for blocks, step in (({"tens": 4}, "200 + 40 = 240"), ({"tens": 5}, "240 + 10 = 250")):
        table.page.evaluate("mat => kit.outside('mat', mat)", [{"hundreds": 2, **blocks}])
        assert table.text("steps") == step


def test_blocks_of_another_column_begin_another_step(table):
    table.show(29, equation=True)
    table.press("One hundred more")
    table.press("One one more")
    table.press("One one more")
    assert table.text("steps") == "129 + 2 = 131"


def test_ones_taken_away_one_by_one_are_told_as_one_step(table):
    table.show(35, equation=True)
    for left in (34, 33, 32):
        table.press("One one less")
        assert table.text("steps") == f"35 \N{MINUS SIGN} {35 - left} = {left}"
    table.press("1 ten becomes 10 ones")
    table.press("One one less")
    assert table.text("steps") == "32 \N{MINUS SIGN} 1 = 31"


def test_what_was_traded_leaves_a_trace_and_what_it_became_stands_out(table):
    table.show(mat=ODD)
    table.press("10 ones become 1 ten")
    table.settle()
    assert table.page.locator(".blocks-traces .block-ones").count() == 10
    assert table.page.locator(".block-tens.is-new").count() == 1
    table.press("One ten more")
    assert table.page.locator(".blocks-traces .block").count() == 0
    assert table.page.locator(".is-new").count() == 0


def test_with_reduced_motion_nothing_flies_and_the_trade_is_still_seen(table):
    table.page.emulate_media(reduced_motion="reduce")
    table.show(mat=ODD)
    table.press("1 ten becomes 10 ones")
    assert table.page.evaluate("document.getAnimations().length") == 0
    assert table.page.locator(".blocks-air .block").count() == 0
    assert table.page.locator(".blocks-traces .block-tens").count() == 1
    assert table.page.locator(".block-ones.is-new").count() == 10


def test_blocks_fly_to_what_they_become(table):
    """Ten ones end exactly where the ten's ten parts are."""
    table.show(mat=ODD)
    table.press("10 ones become 1 ten")
    assert table.page.locator(".blocks-air .block-ones").count() == 10
    assert table.page.locator(".block-tens.is-coming").count() == 1
    table.page.evaluate("""() => {
      for (const each of document.getAnimations()) { each.pause(); each.currentTime = 1e4 - 1; }
    }""")
    ten = table.box("tens", 2)
    parts = table.page.evaluate(
        """() => [...document.querySelectorAll(".blocks-air .block-face")].map((face) => {
          const { x, y, width, height } = face.getBoundingClientRect();
          return [x, y, width, height];
        })"""
    )
    edge = 2.5
    for index, (x, y, wide, high) in enumerate(parts):
        assert x == pytest.approx(ten["x"], abs=edge)
        assert wide == pytest.approx(ten["width"], abs=edge)
        assert high == pytest.approx(ten["height"] / 10, abs=edge)
        assert y == pytest.approx(ten["y"] + ten["height"] * index / 10, abs=edge)


def test_a_step_taken_while_blocks_fly_is_not_lost(table):
    table.show(mat=[{"tens": 2, "ones": 25}])
    table.press("10 ones become 1 ten")
    table.press("10 ones become 1 ten")
    table.settle()
    assert table.mat == [{"tens": 4, "ones": 5}]
    assert table.page.locator(".blocks-field .block-tens").count() == 4
    assert table.page.locator(".blocks-air .block").count() == 0


def test_the_browser_knows_the_facts_that_python_knows(table):
    table.show(mat=ODD)
    chance = Random(7)  # noqa: S311 - examples, not secrets
    mats = [[random_blocks(chance) for _ in range(chance.choice([1, 2]))] for _ in range(300)]
    found = table.page.evaluate(
        """(mats) => mats.map((mat) => {
          kit.outside("mat", mat);
          return document.querySelector(".kit-blocks").facts();
        })""",
        mats,
    )
    assert found == [mat_facts(mat) for mat in mats]


@pytest.mark.parametrize("vocabulary", ["us", "uk"])
def test_what_is_read_in_the_browser_is_what_python_says(table, vocabulary):
    table.show(mat=ODD, numeral=True, expanded=True, words=True, vocabulary=vocabulary)
    chance = Random(13)  # noqa: S311 - examples, not secrets
    some = [random_blocks(chance) for _ in range(1000)]
    found = table.page.evaluate(
        """(some) => some.map((blocks) => {
          kit.outside("mat", [blocks]);
          return ["number", "parts", "words"].map((part) =>
            document.querySelector(`.blocks-${part}`).textContent);
        })""",
        some,
    )
    assert found == [
        [str(number_of(b)), partitioned(b), number_in_words(number_of(b), vocabulary)] for b in some
    ]


def test_readings_are_those_of_the_mat(table):
    table.show(mat=ODD, numeral=True, expanded=True, words=True, vocabulary="uk")
    assert table.text("number") == "35"
    assert table.text("parts") == "20 + 15"
    assert table.text("words") == "thirty-five"
    table.press("10 ones become 1 ten")
    assert table.text("parts") == "30 + 5"
    table.page.evaluate("kit.outside('mat', [{ hundreds: 3, ones: 5 }])")
    assert table.text("words") == "three hundred and five"
    assert table.text("parts") == "300 + 5"
    table.page.evaluate("kit.outside('zeros', true)")
    assert table.text("parts") == "300 + 0 + 5"
    table.page.evaluate("kit.outside('vocabulary', 'us')")
    assert table.text("words") == "three hundred five"


def test_digits_say_how_many_there_are_and_frame_what_is_no_digit(table):
    table.show(mat=[{"tens": 12, "ones": 3}])
    digits = table.page.locator(".blocks-digit:visible")
    assert digits.all_inner_texts() == ["", "12", "3"]
    framed = table.page.locator(".blocks-digit.is-many")
    assert framed.all_inner_texts() == ["12"]


PARTS = {
    "digits": ".blocks-digit",
    "numeral": ".blocks-number",
    "expanded": ".blocks-parts",
    "words": ".blocks-words",
    "equation": ".blocks-steps",
    "buttons": ".blocks-tools",
    "panel": ".blocks-panel",
}


@pytest.mark.parametrize("name", PARTS)
def test_each_part_is_shown_alone_or_hidden_alone(table, name):
    table.show(mat=ODD, **dict.fromkeys(PARTS, False))

    def visible():
        return {
            part
            for part, where in PARTS.items()
            if table.page.locator(f"{where}:visible").count() > 0
        }

    assert visible() == set()
    table.page.evaluate("name => kit.outside(name, true)", name)
    assert visible() == {name}


def test_two_mats_are_compared_and_the_sign_can_be_left_out(table):
    table.show([345, 287], numeral=True)
    assert table.page.locator(".blocks-number span").all_inner_texts() == ["345", ">", "287"]
    table.page.evaluate("kit.outside('result', false)")
    assert table.page.locator(".blocks-number span").all_inner_texts() == ["345", "", "287"]
    assert ">" not in table.page.locator("body").inner_text()


def test_two_mats_are_put_together_and_traded(table):
    table.show([27, 35], pair="add", numeral=True, equation=True, places=2)
    table.press("Put together")
    assert table.mat == [{"tens": 5, "ones": 12}, {}]
    assert table.text("steps") == "27 + 35 = 62"
    table.press("10 ones become 1 ten")
    assert table.mat == [{"tens": 6, "ones": 2}, {}]
    table.settle()
    assert table.page.locator(".blocks-field .block-tens").count() == 6


def test_blocks_are_dragged_from_mat_to_mat(table):
    table.show([52, 0], pair="take", places=2, numeral=True)
    table.drag(table.block("tens"), table.free("tens", at=1))
    assert table.mat == [{"tens": 4, "ones": 2}, {"tens": 1}]
    assert table.text("number").split() == ["52", "\N{MINUS SIGN}", "10", "=", "42"]


def test_regrouping_to_take_away(table):
    """52 - 7: a ten breaks, then seven ones are taken away."""
    table.show([52, 0], pair="take", places=2)
    table.drag(table.block("tens"), table.free("ones"))
    for index in range(7):
        table.page.mouse.click(*table.block("ones", index))
    table.page.mouse.click(*table.free("ones", at=1))
    assert table.mat == [{"tens": 4, "ones": 5}, {"ones": 7}]


def test_buttons_work_on_the_mat_that_was_touched_last(table):
    table.show([35, 35], pair="add", places=2)
    table.column("tens", at=1).focus()
    table.press("1 ten becomes 10 ones")
    assert table.mat == [{"tens": 3, "ones": 5}, {"tens": 2, "ones": 15}]
    assert table.page.locator(".blocks-mat.is-active").get_attribute("aria-label") == "Mat B"


def test_what_is_done_is_said(table):
    table.show(mat=ODD)
    table.press("10 ones become 1 ten")
    table.says("3 tens, 5 ones.")
    table.page.evaluate("kit.outside('numeral', true)")
    table.press("One one more")
    table.says("3 tens, 6 ones. 36")
    assert table.page.locator("#kit-live").get_attribute("role") == "status"


def test_columns_are_spin_buttons_with_their_count_in_words(table):
    table.show(mat=[{"tens": 1, "ones": 15}])
    tens, ones = table.column("tens"), table.column("ones")
    assert tens.get_attribute("aria-valuetext") == "1 ten"
    assert ones.get_attribute("aria-valuetext") == "15 ones"
    assert ones.get_attribute("aria-valuenow") == "15"


def test_blocks_that_cannot_be_moved_are_a_picture(table):
    table.show(mat=ODD, movable=False)
    page = table.page
    assert page.get_by_role("spinbutton").count() == 0
    assert page.get_by_role("button").count() == 0
    assert page.get_by_role("img").get_attribute("aria-label") == "2 tens, 15 ones"
    table.drag(table.block("tens"), (5, 5))
    assert table.mat == ODD


def test_switches_choose_what_is_shown(table):
    table.show(345, panel=True)
    page = table.page
    page.get_by_role("switch", name="Number").click()
    assert table.text("number") == "345"
    page.get_by_role("button", name="4 columns").click()
    assert page.locator(".blocks-head:visible").all_inner_texts() == [
        "Thousands", "Hundreds", "Tens", "Ones",
    ]  # fmt: skip
    page.get_by_role("button", name="Add", exact=True).click()
    assert page.locator(".blocks-mat:visible").count() == 2
    assert page.evaluate("kit.get('pair')") == "add"
    page.get_by_role("button", name="One", exact=True).click()
    assert page.locator(".blocks-mat:visible").count() == 1
    assert table.mat == [{"hundreds": 3, "tens": 4, "ones": 5}]


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("count", [201, 345, 9999])
def test_too_many_to_lie_apart_are_in_boxes_that_say_how_many(table, count):
    table.show(mat=[{"ones": count}])
    assert table.page.locator(".blocks-field .block-ones").count() == 10 + count % 10
    in_boxes, size = 0, 0
    for part in table.page.evaluate(
        """() => [...document.querySelectorAll(".blocks-boxes > *")]
          .map((each) => each.tagName === "text" ? each.textContent : "box")"""
    ):
        if part == "box":
            in_boxes += size
        else:
            size = int(part.split()[0])
    assert in_boxes + 10 + count % 10 == count
    assert table.page.locator(".blocks-digit.is-many").inner_text() == str(count)


def test_blocks_can_be_taken_and_traded_beside_boxes(table):
    table.show(mat=[{"ones": 345}], places=2)
    table.press("10 ones become 1 ten")
    assert table.mat == [{"tens": 1, "ones": 335}]
    table.settle()
    table.drag(table.block("ones"), table.source("ones"))
    assert table.mat == [{"tens": 1, "ones": 334}]


def test_two_fingers_carry_blocks_at_once(table):
    table.show(mat=[{"tens": 3, "ones": 4}], trades="none")
    fingers = Fingers(table.page)
    ten, one = table.block("tens", 0), table.block("ones", 0)
    box = table.page.locator(".blocks-box").bounding_box()
    away = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    fingers.down(1, ten)
    fingers.down(2, one)
    fingers.move(1, away)
    fingers.move(2, away)
    assert table.page.locator(".is-away").count() == 2
    assert table.page.locator(".blocks-hand .block").count() == 2
    fingers.up(1)
    assert table.mat == [{"tens": 2, "ones": 4}]
    assert table.page.locator(".blocks-hand .block").count() == 1
    fingers.up(2)
    assert table.mat == [{"tens": 2, "ones": 3}]
    assert table.page.locator(".is-away, .blocks-hand .block").count() == 0


def test_a_drag_is_painted_in_the_frame_that_it_happens_in(table):
    """On a processor four times as slow, with two hundred blocks on the mat."""
    table.show(mat=[{"hundreds": 9, "tens": 91, "ones": 100}])
    assert table.page.locator(".blocks-field .block").count() == 200
    table.page.context.new_cdp_session(table.page).send(
        "Emulation.setCPUThrottlingRate", {"rate": 4}
    )
    start = table.block("ones", 0)
    table.page.evaluate(
        """(from) => {
          window.frames = [];
          // Told before the blocks hear of it; asked when the same frame is about to be drawn.
          document.addEventListener("pointermove", (event) => requestAnimationFrame(() => {
            const { e, f } = new DOMMatrix(
              getComputedStyle(document.querySelector(".blocks-hand")).transform);
            window.frames.push([e, f, event.clientX - from[0], event.clientY - from[1]]);
          }), true);
        }""",
        start,
    )
    way = [(start[0] - 10 * step, start[1] + 5 * (step % 7)) for step in range(1, 41)]
    table.page.mouse.move(*start)
    table.page.mouse.down()
    for spot in way:
        table.page.mouse.move(*spot)
    frames = [frame for frame in table.page.evaluate("frames") if math.hypot(*frame[2:]) >= 6]
    table.page.mouse.up()
    assert len(frames) >= 30
    for across, down, right, foot in frames:
        assert (across, down) == pytest.approx((right, foot), abs=0.01)


LOOKS = {
    "three columns": {"number": 345, "panel": True},
    "four columns": {"number": 9999, "places": 4, "numeral": True, "expanded": True},
    "two mats": {"number": [345, 287], "numeral": True, "words": True},
    "many": {"mat": [{"tens": 23, "ones": 57}], "places": 2, "equation": True},
    "a picture": {"number": 47, "places": 2, "movable": False},
}
SIZES = """() => {
  const seen = (each) => each.checkVisibility() && each.getBoundingClientRect().width > 1;
  const all = [...document.querySelectorAll(".kit-blocks *")].filter(seen);
  const words = all.filter((each) => each.childNodes.length &&
    [...each.childNodes].some((node) => node.nodeType === 3 && node.data.trim()));
  const targets = all.filter((each) => each.matches("button, [role=spinbutton]"));
  return {
    type: Math.min(...words.map((each) => parseFloat(getComputedStyle(each).fontSize))),
    target: Math.min(...targets.flatMap((each) => {
      const { width, height } = each.getBoundingClientRect();
      return [width, height];
    })),
    wide: document.documentElement.scrollWidth - innerWidth,
  };
}"""


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("look", LOOKS.values(), ids=LOOKS)
def test_type_and_targets_are_large_enough_and_nothing_sticks_out(table, look):
    table.show(**look)
    sizes = table.page.evaluate(SIZES)
    assert sizes["type"] >= 18
    assert sizes["target"] is None or sizes["target"] >= 40
    assert sizes["wide"] <= 0


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("room", ["width: 100%; height: 310px", "width: 340px; height: 460px"])
@pytest.mark.parametrize("number", [345, [345, 287]])
def test_it_fills_the_room_that_a_round_gives_it_and_no_more(table, room, number):
    table.show(number, place=room, places=3)
    inner, outer = table.page.evaluate("""() => {
      const { height, width } = document.querySelector(".blocks-body").getBoundingClientRect();
      const place = document.querySelector("#place").getBoundingClientRect();
      return [[height, width], [place.height, place.width]];
    }""")
    assert inner == pytest.approx(outer, abs=1)
    for block in table.page.locator(".blocks-field .block:visible").all():
        box = block.bounding_box()
        assert box["height"] >= 1
    overflow = table.page.evaluate("""() => {
      const place = document.querySelector("#place").getBoundingClientRect();
      return [...document.querySelectorAll(".blocks-mat, .blocks-shelf, .blocks-side")]
        .filter((each) => each.checkVisibility())
        .map((each) => each.getBoundingClientRect().bottom - place.bottom);
    }""")
    assert max(overflow) <= 1


def test_a_page_from_a_disk_needs_nothing_else(table, tmp_path):
    blocks = PlaceValueBlocks(mat=ODD, numeral=True)
    saved = SavedWidgets(states_of(with_parts([blocks])))
    body = [view(saved.add(blocks.model_id))]
    path = tmp_path / "blocks.html"
    path.write_text(
        document(title="Blocks", key="blocks", language="en-US", body=body, saved=saved.script()),
        encoding="utf-8",
    )
    visit(table.page, path.as_uri())
    table.page.wait_for_selector(".blocks-field .block-ones")
    start, *way = table.round("ones", range(10))
    table.drag(start, *way)
    table.column("ones").focus()
    table.page.keyboard.press("ArrowUp")
    facts = table.page.evaluate("document.querySelector('.kit-blocks').facts()")
    assert (facts["number"], facts["tens"], facts["ones"]) == (36, 3, 6)
    assert table.text("number") == "36"


def test_two_views_of_one_mat_agree(table):
    table.show(35, place="height: 45vh")
    table.page.evaluate("""() => {
      const second = document.querySelector("#place").cloneNode();
      document.body.append(second);
      return kit.view(second);
    }""")
    table.page.get_by_role("button", name="One ten more").nth(0).click()
    counts = table.page.locator("[role=spinbutton][aria-label=Tens]:visible")
    assert [counts.nth(view).get_attribute("aria-valuenow") for view in range(2)] == ["4", "4"]


def test_nothing_happens_any_more_when_the_host_ends_it(table):
    table.show(35)
    table.page.evaluate("kit.end.abort()")
    table.press("One ten more")
    table.drag(table.block("tens"), table.free("ones"))
    table.page.evaluate("kit.outside('mat', [{ tens: 7 }])")
    assert table.page.locator(".blocks-field .block-tens").count() == 3
    assert table.page.evaluate("kit.sets.length") == 0


def test_steps_by_chance_never_leave_what_python_would_not_take(table):
    """Hundreds of keys and buttons pressed at random: each mat is one, and is shown as it is."""
    table.show(mat=ODD, places=3)
    chance = Random(11)  # noqa: S311 - examples, not secrets
    keys = [key for key, _ in KEYS] + ["ArrowLeft", "ArrowRight", "Enter", "Escape"]
    table.column("ones").focus()
    for _ in range(300):
        table.page.keyboard.press(chance.choice(keys))
    blocks = check_blocks(table.mat[0])
    shown = {
        place: int(table.column(place).get_attribute("aria-valuenow"))
        for place in PLACES
        if table.page.locator(f"[aria-label={place.capitalize()}]:visible").count()
    }
    assert {place: count for place, count in blocks.items() if place in shown} == shown
    assert table.page.evaluate("document.querySelector('.kit-blocks').facts().number") == number_of(
        blocks
    )
