"""The column board in a browser: written to by mouse, finger and keys, and shown step by step."""

from __future__ import annotations

import pytest
from browser.harness import open_widget

from manipulatives.lessons.strands.sums.columns.methods import METHODS, worked_steps
from manipulatives.widgets.columns import ColumnBoard


class Board:
    """A column board on a page, and what a test does with it."""

    def __init__(self, page):
        self.page = page

    def show(self, text="47 + 38", *, place="height: 100vh", **traits):
        """Show a board; the panel is left out unless the test asks for it."""
        open_widget(self.page, ColumnBoard(text, **{"panel": False, **traits}), place=place)

    @property
    def sum(self):
        """The sum that the model holds."""
        return self.page.evaluate("kit.get('sum')")

    @property
    def facts(self):
        """What the board says is true."""
        return self.page.evaluate("document.querySelector('.kit-columns').facts()")

    def square(self, label):
        """A square by the beginning of its name."""
        return self.page.locator(f'[role="gridcell"][aria-label^="{label}"]')

    def press(self, name):
        """Press a button, even one that says it has nothing to do."""
        self.page.get_by_role("button", name=name, exact=True).click(force=True)

    def tap(self, name):
        """Tap a button with a finger."""
        self.page.get_by_role("button", name=name, exact=True).tap()

    def type(self, *keys):
        """Press keys."""
        for key in keys:
            self.page.keyboard.press(key)

    def says(self, sentence):
        """Wait until the live region says a sentence."""
        self.page.wait_for_function(
            "sentence => document.querySelector('#kit-live')?.textContent === sentence",
            arg=sentence,
        )

    def row(self, kind):
        """What is written in a row of the sheet, from left to right."""
        return self.page.locator(f".has-{kind} [role='gridcell']").evaluate_all(
            "squares => squares.map((square) => square.innerText.replaceAll('\\n', ' ').trim())"
        )

    def strip(self):
        """The blocks in words."""
        return self.page.locator(".columns-strip").get_attribute("aria-label")


@pytest.fixture
def board(quiet_page):
    return Board(quiet_page)


def test_a_sum_is_written_by_mouse_in_any_order(board):
    board.show()
    board.square("Answer, tens").click()
    board.press("8")
    board.square("Carry, tens").click()
    board.press("1")
    board.square("Answer, ones").click()
    board.press("5")
    assert board.sum["answer"] == [5, 8, None]
    assert board.sum["marks"] == [[], [1], []]
    assert board.facts["done"]
    assert board.facts["marks_right"]


@pytest.mark.screens("tablet", "phone")
def test_a_sum_is_written_by_tapping(board):
    board.show("83 - 47")
    for label, keys in [
        ("Rewritten, tens", "7"),
        ("Rewritten, ones", "13"),
        ("Answer, ones", "6"),
        ("Answer, tens", "3"),
    ]:
        board.square(label).tap()
        for key in keys:
            board.tap(key)
    assert board.sum["answer"] == [6, 3]
    assert board.sum["marks"] == [[13], [7]]
    assert board.facts["done"]
    assert board.row("number")[:3] == ["", "8", "3"]
    assert board.page.locator(".is-number .is-crossed").count() == 2


@pytest.mark.screens("tablet")
def test_a_finger_on_the_glass_writes_where_it_is(board):
    board.show()
    box = board.square("Answer, tens").bounding_box()
    session = board.page.context.new_cdp_session(board.page)
    spot = {"x": box["x"] + box["width"] / 2, "y": box["y"] + box["height"] / 2}
    session.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [spot]})
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    board.type("8")
    assert board.sum["answer"] == [None, 8, None]


def test_a_sum_is_written_by_keys_alone(board):
    board.show()
    board.type("Tab", "5", "ArrowLeft", "8", "ArrowUp", "ArrowUp", "ArrowUp", "1")
    assert board.sum["answer"] == [5, 8, None]
    assert board.sum["marks"] == [[], [1], []]


KEYS = [
    ("ArrowLeft", "Answer, tens"),
    ("ArrowUp", "38, ones"),
    ("Home", "Answer, hundreds"),
    ("ArrowRight", "Answer, ones"),
    ("ArrowDown", "Answer, ones"),
]


@pytest.mark.parametrize(("key", "there"), KEYS)
def test_a_key_leads_to_the_next_square(board, key, there):
    board.show()
    board.type("Tab", key)
    assert board.page.evaluate("document.activeElement.ariaLabel").startswith(there)


def test_end_leads_to_the_last_square_of_the_row(board):
    board.show()
    board.type("Tab", "Home", "End")
    assert board.page.evaluate("document.activeElement.ariaLabel").startswith("Answer, ones")


def test_digits_write_and_the_other_keys_rub_out(board):
    board.show("83 - 47")
    board.square("Rewritten, ones").click()
    board.type("1", "3")
    assert board.sum["marks"] == [[13], []]
    board.type("Backspace")
    assert board.sum["marks"] == [[1], []]
    board.type("Delete")
    assert board.sum["marks"] == [[], []]


def test_enter_checks_the_place_alone(board):
    board.show()
    board.type("Tab", "5", "ArrowLeft", "7", "Enter")
    board.says("Look at the tens once more.")
    assert board.square("Answer, tens").get_attribute("class").count("is-again") == 1
    assert board.square("Answer, ones").get_attribute("class").count("is-right") == 0


def test_the_sheet_is_one_stop_of_the_tab_key(board):
    board.show(blocks=False)
    board.type("Tab", "Tab")
    assert board.page.evaluate("document.activeElement.textContent") == "1"
    assert board.page.locator("[role='gridcell'][tabindex='0']").count() == 1


@pytest.mark.parametrize("key", ["PageUp", "PageDown", ".", "b", "F5", "Escape"])
def test_keys_of_the_board_are_left_alone(board, key):
    board.show()
    board.type("Tab")
    board.page.evaluate(
        "window.seen = []; document.body.addEventListener('keydown', (event) => "
        "{ seen.push([event.key, event.defaultPrevented]); event.preventDefault(); })"
    )
    board.type(key)
    assert board.page.evaluate("seen") == [[key, False]]


def test_each_place_is_checked_by_itself(board):
    board.show("347 + 285")
    for label, key in [("Answer, ones", "2"), ("Answer, tens", "2"), ("Answer, hundreds", "6")]:
        board.square(label).click()
        board.press(key)
    board.press("Check")
    board.says("Look at the tens once more.")
    assert [
        ("is-right" in cls, "is-again" in cls)
        for cls in (
            board.square(f"Answer, {place}").get_attribute("class")
            for place in ("ones", "tens", "hundreds")
        )
    ] == [(True, False), (False, True), (True, False)]
    assert board.square("Answer, tens: 2, look once more").count() == 1
    board.square("Answer, tens").click()
    board.press("3")
    # What was right stays so; what was written anew is not judged yet.
    assert board.page.locator(".is-right").count() == 2
    assert board.page.locator(".is-again").count() == 0
    board.press("Check")
    board.says("All places are right.")


def test_undo_goes_all_the_way_and_reset_can_be_undone(board):
    board.show()
    board.type("Tab", "5", "ArrowLeft", "8")
    board.press("Undo")
    assert board.sum["answer"] == [5, None, None]
    board.press("Reset")
    assert board.sum["answer"] == [None, None, None]
    board.press("Undo")
    board.press("Undo")
    assert board.sum["answer"] == [None, None, None]
    board.type("Tab")
    assert board.page.get_by_role("button", name="Undo").get_attribute("aria-disabled") == "true"


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("text", ["478 + 367", "502 - 178"])
def test_the_steps_are_shown_forward_and_back(board, text, method):
    board.show(text, mode="show", method=method)
    steps = ColumnBoard(text, method=method).steps
    looks = []
    for step in [None, *steps]:
        if step:
            board.press("Next step")
            assert board.page.locator(".columns-say").inner_text() == step["say"]
            assert board.page.locator(".columns-class strong").inner_text() == step["class"]
        looks.append([board.row("answer"), board.row("marks"), board.row("parts"), board.strip()])
    assert board.facts["done"]
    assert board.page.evaluate("kit.get('step')") == len(steps)
    for look in reversed(looks[:-1]):
        board.press("Back")
        now = [board.row("answer"), board.row("marks"), board.row("parts"), board.strip()]
        assert now == look
    assert board.sum["answer"].count(None) == len(board.sum["answer"])


def test_the_blocks_go_with_the_digits(board):
    board.show("402 - 178", mode="show", method="known facts")
    for _ in range(4):
        board.press("Next step")
    assert board.row("marks") == ["", "3", "10 9", "12"]
    assert board.strip() == ("Blocks. Left: 3 hundreds, 9 tens, 12 ones. Taken away: none.")
    # A one has one face, a ten and a hundred have one each.
    assert board.page.locator(".is-left .block-face").count() == 3 + 9 + 12
    board.press("Next step")
    assert board.page.locator(".is-left .block-face").count() == 3 + 9 + 4
    assert board.page.locator(".is-taken .block-face").count() == 8


def test_a_step_is_said_to_those_who_listen(board):
    board.show(mode="show", method="known facts")
    board.press("Next step")
    board.says("Ones: what is 7 + 8? 15")


def test_show_and_try_keep_what_was_written(board):
    board.show(panel=True)
    board.type("Tab", "3")
    board.press("Show")
    assert board.row("answer") == ["", "", ""]
    for _ in range(3):
        board.press("Next step")
    assert board.row("answer") == ["", "", "5"]
    board.press("Try")
    assert board.row("answer") == ["", "", "3"]


def test_the_switches_show_and_hide(board):
    board.show(panel=True)
    page = board.page
    for name, what in [
        ("Headings", ".columns-heads"),
        ("Marks", ".has-marks"),
        ("Blocks", ".columns-strip"),
    ]:
        assert page.locator(what).is_visible()
        page.get_by_role("switch", name=name).click()
        assert not page.locator(what).is_visible()
    assert [page.evaluate(f"kit.get('{name}')") for name in ("headings", "marks", "blocks")] == [
        False,
        False,
        False,
    ]


def test_a_board_that_is_not_writable_is_a_picture(board):
    board.show(writable=False)
    board.square("Answer, ones").click()
    board.type("5")
    assert board.sum["answer"] == [None, None, None]
    assert not board.page.locator(".columns-keys").is_visible()


def test_a_new_sum_from_outside_begins_anew(board):
    board.show()
    board.type("Tab", "5")
    other = ColumnBoard("12 + 34 + 56")
    board.page.evaluate("sum => kit.outside('sum', sum)", other.sum)
    assert board.row("answer") == ["", "", ""]
    assert board.page.locator(".has-number").count() == 3
    undo = board.page.get_by_role("button", name="Undo")
    assert undo.get_attribute("aria-disabled") == "true"


def test_what_is_written_is_saved_once_a_key(board):
    board.show()
    board.type("Tab", "5", "5")
    assert board.page.evaluate("kit.saves") == 1
    assert board.page.evaluate("kit.sets.map(([name]) => name)") == ["sum"]


def test_after_its_end_a_board_does_nothing_more(board):
    board.show()
    board.page.evaluate("kit.end.abort()")
    board.type("Tab", "5")
    board.page.evaluate("kit.outside('headings', false)")
    assert board.sum["answer"] == [None, None, None]
    assert board.page.locator(".columns-heads").is_visible()


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize(
    "traits",
    [
        {"text": "47 + 38"},
        {"text": "5003 - 8", "method": "expanded columns"},
        {"text": "9876 + 5432 + 1098 + 7654", "panel": True},
    ],
    ids=lambda traits: traits["text"],
)
def test_what_is_pressed_is_large_enough_and_nothing_leaves_the_page(board, traits):
    board.show(**traits)
    page = board.page
    small = page.evaluate(
        """[...document.querySelectorAll("button, .is-free")].filter((each) => {
          const { width, height } = each.getBoundingClientRect();
          return each.checkVisibility() && (width < 44 || height < 44);
        }).map((each) => each.ariaLabel || each.textContent)"""
    )
    assert small == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    little = page.evaluate(
        """[...document.querySelectorAll(".kit-columns *")].filter((each) =>
          each.childElementCount === 0 && each.textContent.trim() && each.checkVisibility() &&
          !each.closest("svg") && parseFloat(getComputedStyle(each).fontSize) < 18
        ).map((each) => each.textContent)"""
    )
    assert little == []


@pytest.mark.screens("board", "tablet")
def test_a_board_beside_other_things_never_scrolls(board):
    board.show("9876 + 5432 + 1098 + 7654", mode="show", panel=True)
    assert board.page.evaluate("document.documentElement.scrollHeight <= innerHeight")


@pytest.mark.screens("phone")
@pytest.mark.parametrize("text", ["9876 + 5432 + 1098 + 7654", "347 + 285"])
def test_in_a_round_on_a_phone_the_keys_never_cover_the_squares(board, text):
    board.show(text, place="height: 380px")
    board.page.evaluate("document.querySelector('#place').className = 'kit kit-round'")

    def top_and_foot(locator):
        box = locator.bounding_box()
        return box["y"], box["y"] + box["height"]

    above, below = top_and_foot(board.page.locator(".columns-sheet"))
    assert below <= top_and_foot(board.page.locator(".columns-keys"))[0]
    board.square("Answer, ones").focus()
    for key in (None, *["ArrowUp"] * 5, *["ArrowDown"] * 5):
        if key:
            board.type(key)
        top, foot = top_and_foot(board.page.locator(":focus"))
        assert above <= top + 1
        assert foot - 1 <= below
        assert foot - top >= 44


def test_a_press_paints_in_its_frame_on_a_slow_machine(board):
    """At 4 times slower the digit is there before the next frame is drawn."""
    board.show("9876 + 5432 + 1098 + 7654")
    session = board.page.context.new_cdp_session(board.page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": 4})
    board.type("Tab")
    written = board.page.evaluate(
        """() => new Promise((done) => {
          const square = document.activeElement;
          square.dispatchEvent(new KeyboardEvent("keydown", { key: "7", bubbles: true }));
          const now = square.textContent;
          requestAnimationFrame(() => done([now, square.textContent]));
        })"""
    )
    assert written == ["7", "7"]


def test_steps_are_those_of_python(board):
    board.show("83 - 47", mode="show")
    assert board.page.evaluate("kit.get('steps')") == worked_steps("-", [83, 47])
