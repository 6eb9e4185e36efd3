"""A round as a teacher leads it: side by side, others like it, own numbers, counting and wiping."""

from __future__ import annotations

import re
from pathlib import Path
from urllib.parse import unquote, urlparse

import pytest
from browser.lesson_page import RoundOnPage, lesson_page

from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.outputs.page.saved import packed, unpacked
from support.accessibility import faults
from support.chromium import reload, visit
from support.server import serving

SIX = 'play("time.read_five_minutes", tasks=6, seconds=60, seed=90213, timer="shown")'
SET = 'play("time.set_hands", tasks=2, seed=13)'
COUNTED = 'play("time.read_hour", tasks=1, seed=90213, count_aloud=5)'
SCREENS = pytest.mark.screens("board", "tablet", "phone")
SAVED = re.compile(r'(<script[^>]*id="?kit-saved"?[^>]*>)(.*?)(</script>)', re.DOTALL)
PATIENCE = 60_000  # milliseconds in which a board comes on a slow machine
NINE = "2026-03-02T09:00:00"
FIVE_PAST = "2026-03-02T09:05:00"

# What a round tells the page around it, from its beginning.
LISTEN = """
window.told = [];
for (const name of ["kit:round", "kit:place", "kit:wipe"]) {
  document.addEventListener(name, (event) => window.told.push([name, event.detail]));
}
"""


@pytest.fixture
def round_(quiet_page):
    quiet_page.add_init_script(LISTEN)
    return RoundOnPage(quiet_page)


def with_round(address, change):
    """Let a page carry a round that is a little different; return its address."""
    file = Path(unquote(urlparse(address).path))
    text = file.read_text("utf-8")
    before, data, after = SAVED.search(text).groups()
    saved = unpacked(data)
    [kind] = [each for each in saved["kinds"].values() if each["name"] == "BoardRound"]
    change(kind["usual"])
    data = packed(saved)
    file.write_text(SAVED.sub(lambda _: before + data + after, text), "utf-8")
    return address


SUMS = ["58 + 37", "63 - 29", "347 + 285", "600 - 248", "9 + 6", "71 - 5"]
LONG = "Nora bakes 12 loaves. She sells 7 loaves. How many are left?"


def side_by_side(folder, together, prompts=SUMS, **more):
    """The page of a round that asks several sums at once."""

    def change(usual):
        usual["setup"]["together"] = together
        for task, prompt in zip(usual["tasks"], prompts, strict=True):
            task.update(prompt=prompt, **more)

    return with_round(lesson_page(folder, "## Minutes", SIX), change)


@pytest.fixture
def sums(round_, tmp_path):
    """Six sums, three at a time."""
    page = round_.page
    visit(page, side_by_side(tmp_path, 3))
    round_.root.locator(".round-card").first.wait_for()
    return round_


def told(page, name):
    return [detail for event, detail in page.evaluate("window.told") if event == name]


def cards(round_):
    return [
        text.replace("\n", " ") for text in round_.root.locator(".round-card").all_inner_texts()
    ]


def shown(round_):
    [current] = round_.root.locator(".round-card[aria-current]").all_inner_texts()
    return current.split()[0]


# Everything that is asked, said or pressed is on the screen, nothing over anything else.
LOST = """() => {
  const box = (part) => part.getBoundingClientRect();
  const needed = ".round-prompt, .round-parts, .round-card, .round-sum, .round-found, "
    + ".round-manipulative, .round-verdict, [aria-current=step], .round-everyone, .round-answer, "
    + ".round-more button, .round-numbers-field :is(button, input), .round-problem, "
    + ".round-cells li, .round-tempo button, .round-foot button";
  const parts = [...document.querySelectorAll(needed)].filter((part) =>
    part.checkVisibility() && part.textContent + part.tagName !== "P" && box(part).width);
  const inside = ({ left, top, right, bottom }) =>
    left >= -1 && top >= -1 && right <= innerWidth + 1 && bottom <= innerHeight + 1;
  const over = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1
    && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
  const bad = [
    ...parts.filter((part) => !inside(box(part))),
    ...parts.filter((part) => parts.some((other) => part !== other
      && !part.contains(other) && !other.contains(part) && over(box(part), box(other)))),
    ...parts.filter((part) => part.scrollWidth > part.clientWidth + 1
      && getComputedStyle(part).display !== "inline"),
  ];
  return bad.map((part) => `${part.className} ${part.textContent}`);
}"""


def nothing_is_lost(page):
    assert page.evaluate(LOST) == []
    assert page.evaluate("document.scrollingElement.scrollHeight <= innerHeight")
    assert page.evaluate("document.scrollingElement.scrollWidth <= innerWidth")


def sizes(page, what):
    return page.locator(f".kit-round:visible {what}").evaluate_all(
        "(all) => all.filter((each) => each.checkVisibility())"
        ".map((each) => parseFloat(getComputedStyle(each).fontSize))"
    )


def test_several_are_asked_together_and_then_shown_one_by_one(sums):
    page = sums.page
    assert cards(sums) == ["a 58 + 37", "b 63 − 29", "c 347 + 285"]  # noqa: RUF001 - a true minus
    assert not page.locator(".kit-manipulative").is_visible()
    assert sums.said("count") == "Questions 1 to 3 of 6"
    page.keyboard.press("PageDown")
    assert sums.phase == "work"
    walked = []
    while sums.phase != "ask":
        page.keyboard.press("PageDown")
        if sums.phase == "check":
            walked.append((shown(sums), len(sums.root.locator(".round-found:visible").all())))
    assert walked == [("a", 1), ("b", 2), ("c", 3)]
    assert cards(sums)[0] == "a 600 − 248"  # noqa: RUF001 - a true minus


def test_any_of_them_is_chosen_and_its_answer_stays(sums):
    sums.root.locator(".round-card").nth(1).click()
    assert (sums.phase, shown(sums)) == ("show", "b")
    assert sums.said("prompt") == "63 − 29"  # noqa: RUF001 - a true minus
    assert sums.page.locator(".kit-manipulative").is_visible()
    while sums.phase == "show":
        sums.next.click()
    task = sums.tasks[1]
    assert cards(sums)[1].endswith(task["answer"])
    assert sums.next.inner_text() == "Next one"
    # Those after it first, then those before.
    sums.next.click()
    assert (sums.phase, shown(sums)) == ("show", "c")


def test_answers_are_revealed_one_by_one_or_all(sums):
    page = sums.page
    page.keyboard.press("b")
    assert (sums.phase, shown(sums)) == ("check", "a")
    found = sums.root.locator(".round-found:visible")
    assert found.all_inner_texts() == [sums.tasks[0]["answer"]]
    page.keyboard.press("PageDown")
    assert found.count() == 2
    sums.root.get_by_role("button", name="All answers").click()
    assert found.all_inner_texts() == [task["answer"] for task in sums.tasks[:3]]
    assert not sums.root.get_by_role("button", name="All answers").is_visible()
    assert sums.next.inner_text() == "Next question"


def test_a_teacher_may_take_them_one_at_a_time_all_the_same(sums, tmp_path):
    sums.root.get_by_role("button", name="One at a time").click()
    assert sums.said("count") == "Question 1 of 6"
    assert sums.page.locator(".kit-manipulative").is_visible()
    assert sums.root.locator(".round-keys").is_visible()
    visit(sums.page, side_by_side(tmp_path, 3))
    sums.root.get_by_role("button", name="Side by side").click()
    assert sums.said("count") == "Questions 1 to 3 of 6"


@SCREENS
@pytest.mark.parametrize("together", [2, 3, 4])
def test_side_by_side_nothing_is_lost_and_all_is_large(round_, tmp_path, screen, together):
    page = round_.page
    visit(page, side_by_side(tmp_path, together))
    round_.root.locator(".round-card").first.wait_for()
    nothing_is_lost(page)
    # On a board 1.6 m wide digits of 60 px are 35 mm high: read from 10 m (25 mm for every 7 m,
    # from practice).
    least = {"board": 60, "tablet": 40, "phone": 30}[screen.name]
    [size] = {round(each) for each in sizes(page, ".round-sum")}
    assert size >= least
    seen = set()
    while round_.phase != "ask" or not seen - {"ask"}:
        seen.add(round_.phase)
        nothing_is_lost(page)
        assert min(min(pair) for pair in pressed(page)) >= 44
        page.keyboard.press("PageDown")
    assert seen == {"ask", "work", "show", "check"}


def pressed(page):
    return page.evaluate(
        """() => [...document.querySelectorAll(".kit-round button, .kit-round input")]
          .filter((each) => each.checkVisibility())
          .map((each) => each.getBoundingClientRect())
          .map(({ width, height }) => [width, height])"""
    )


@SCREENS
def test_stories_side_by_side_are_read_in_their_cards(round_, tmp_path):
    page = round_.page
    visit(page, side_by_side(tmp_path, 2, [LONG] * 6))
    round_.root.locator(".round-card").first.wait_for()
    nothing_is_lost(page)
    assert min(sizes(page, ".round-sum")) >= 18


@pytest.mark.parametrize("size", [(320, 640), (960, 540), (768, 1024), (3840, 2160)])
def test_nothing_is_lost_side_by_side_on_other_screens(round_, tmp_path, size):
    page = round_.page
    page.set_viewport_size({"width": size[0], "height": size[1]})
    visit(page, side_by_side(tmp_path, 3))
    round_.root.locator(".round-card").first.wait_for()
    nothing_is_lost(page)
    page.keyboard.press("b")
    round_.root.get_by_role("button", name="All answers").click()
    nothing_is_lost(page)


def test_side_by_side_survives_loading_anew(sums):
    page = sums.page
    sums.root.locator(".round-card").nth(2).click()
    page.keyboard.press("b")
    before = (sums.phase, cards(sums), shown(sums), sums.said("answer"))
    sums.again()
    assert (sums.phase, cards(sums), shown(sums), sums.said("answer")) == before


@SCREENS
def test_the_parts_of_a_question_are_a_numbered_list(round_, tmp_path):
    parts = ["Read it aloud.", "Write it in expanded form."]
    page = round_.open(side_by_side(tmp_path, 1, parts=parts)).page
    assert round_.root.locator(".round-parts li").all_inner_texts() == parts
    nothing_is_lost(page)
    page.keyboard.press("PageDown")
    page.keyboard.press("PageDown")
    assert not round_.root.locator(".round-parts").is_visible()


@SCREENS
def test_another_like_this_is_worked_in_place_without_a_kernel_and_left_again(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Minutes", SIX)).page
    task = round_.tasks[0]
    page.keyboard.press("b")
    here = round_.look()
    for twin in task["twins"]:
        round_.root.get_by_role("button", name="Another like this").click()
        assert (round_.phase, round_.said("count")) == ("ask", "Another like this")
        assert round_.said("prompt") == twin["prompt"]
        assert round_.facts()["minutes"] == twin["start"]["dial"]["hour"]
        for step in twin["steps"]:
            page.keyboard.press("PageDown")
            assert round_.root.locator("[aria-current='step']").inner_text() == step["say"]
        nothing_is_lost(page)
        page.keyboard.press("PageDown")
        assert round_.said("answer").split("\n")[0] == twin["answer"]
    assert round_.next.inner_text() == "Back to our question"
    # Loaded anew it is still there.
    reload(page)
    round_.root.locator(".kit-manipulative").wait_for()
    assert round_.said("answer").split("\n")[0] == task["twins"][-1]["answer"]
    page.keyboard.press("PageDown")
    assert round_.look() == here


def test_a_pupil_answers_another_like_this_and_is_told(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Minutes", SIX)).page
    page.keyboard.press("b")
    round_.root.get_by_role("button", name="Another like this").click()
    twin = round_.tasks[0]["twins"][0]
    round_.write(twin["answer"])
    round_.check()
    assert round_.verdict == f"Yes, {twin['spoken']}."
    round_.next.click()
    assert round_.said("count") == "Question 1 of 6"


@SCREENS
def test_a_page_without_a_kernel_says_so_when_numbers_would_be_typed(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Minutes", SIX)).page
    page.keyboard.press("b")
    round_.root.get_by_role("button", name="Own numbers").click()
    said = round_.said("problem")
    assert said == "Own numbers need Python. This page has none."
    assert not round_.root.locator(".round-own").is_visible()
    nothing_is_lost(page)


def test_the_field_for_own_numbers_is_left_by_keys(round_, tmp_path):
    address = lesson_page(tmp_path, "## Minutes", SIX)
    # As where Python is there.
    page = round_.open(with_round(address, lambda usual: usual.update(python=True))).page
    page.keyboard.press("b")
    round_.root.get_by_role("button", name="Own numbers").click()
    line = round_.root.locator(".round-own")
    # It takes what the clicker's keys would take elsewhere.
    page.keyboard.type("b.4:3")
    assert (line.input_value(), round_.phase) == ("b.4:3", "check")
    page.keyboard.press("Escape")
    assert not line.is_visible()
    assert page.evaluate("document.activeElement.className").split()[-1] == "is-go"


def test_where_no_numbers_can_be_typed_there_is_no_button_for_it(round_, tmp_path):
    address = lesson_page(tmp_path, "## Minutes", SIX)
    page = round_.open(with_round(address, lambda usual: usual["setup"].update(typed=False))).page
    page.keyboard.press("b")
    assert not round_.root.get_by_role("button", name="Own numbers").is_visible()


@pytest.fixture(scope="module")
def server(tmp_path_factory):
    folder = tmp_path_factory.mktemp("Penny Cross")
    rounds = (Round("time.read_five_minutes", seed=5, tasks=2, count_aloud=10),)
    write_lesson(Lesson("The ferry", seed=41, rounds=rounds), folder / "ferry.toml")
    with serving(folder) as server:
        yield server


def test_on_a_served_board_numbers_that_are_typed_are_worked(round_, server, noise):
    page = round_.page
    page.goto(server.address)
    page.goto(f"{server.base}board/ferry", timeout=PATIENCE)
    round_.root.locator(".kit-manipulative").wait_for(timeout=PATIENCE)
    page.keyboard.press("b")
    own = round_.root.get_by_role("button", name="Own numbers")
    own.click()
    page.keyboard.type("4:61")
    page.keyboard.press("Enter")
    told_ = round_.root.locator(".round-problem")
    told_.filter(has_text="4:61").wait_for()
    assert round_.phase == "check"
    round_.root.locator(".round-own").fill("4:35")
    round_.root.get_by_role("button", name="Work it").click()
    round_.root.get_by_text("Numbers of our own", exact=True).wait_for()
    assert not told_.is_visible()
    assert round_.facts()["minutes"] == 4 * 60 + 35
    while round_.phase != "check":
        page.keyboard.press("PageDown")
    assert round_.said("answer").split("\n") == ["4:35", "four thirty-five"]
    page.keyboard.press("PageDown")
    assert round_.said("count") == "Question 1 of 2"
    noise.clear()


@SCREENS
def test_the_class_counts_and_the_board_is_wiped(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Full hours", COUNTED)).page
    while round_.phase != "check":
        page.keyboard.press("PageDown")
    assert round_.next.inner_text() == "Count and wipe"
    page.keyboard.press("PageDown")
    cells = round_.root.locator(".round-cells li")
    assert cells.all_inner_texts() == [str(number) for number in range(5, 101, 5)]
    assert min(sizes(page, ".round-cells span")) >= 18
    nothing_is_lost(page)
    # By the clicker, by a tap anywhere, by the button.
    page.keyboard.press("PageDown")
    cells.nth(12).click()
    round_.next.click()
    assert round_.root.locator(".is-wiped").count() == 3
    assert round_.root.locator(".is-next").inner_text() == "20"
    assert told(page, "kit:wipe") == [{"done": done, "of": 20} for done in (1, 2, 3)]
    page.keyboard.press("PageUp")
    assert round_.root.locator(".is-wiped").count() == 2
    # Taken up again where it was.
    reload(page)
    round_.root.locator(".round-cells").wait_for()
    assert round_.root.locator(".is-wiped").count() == 2
    for _ in range(18):
        page.keyboard.press("PageDown")
    assert round_.root.locator(".is-wiped").count() == 20
    assert round_.said("end") == "End of the round"
    nothing_is_lost(page)


def test_each_number_is_said_to_those_who_listen(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Full hours", COUNTED)).page
    while round_.phase != "wipe":
        page.keyboard.press("PageDown")
    for number in ("5", "10"):
        page.keyboard.press("PageDown")
        page.wait_for_function(
            "(said) => document.querySelector('#kit-live').textContent === said", arg=number
        )


def test_a_beat_counts_as_fast_as_it_is_set(round_, tmp_path):
    page = round_.page
    page.clock.install(time=NINE)
    round_.open(lesson_page(tmp_path, "## Full hours", COUNTED))
    page.clock.pause_at(FIVE_PAST)
    while round_.phase != "wipe":
        page.keyboard.press("PageDown")
    wiped = round_.root.locator(".is-wiped")
    # It is off until somebody starts it.
    page.clock.run_for(5000)
    assert wiped.count() == 0
    assert round_.said("rate") == "60 a minute"
    for _ in range(6):
        round_.root.get_by_role("button", name="Faster").click()
    assert round_.said("rate") == "120 a minute"
    round_.root.get_by_role("button", name="Beat", exact=True).click()
    page.clock.run_for(2250)
    assert wiped.count() == 5
    round_.root.get_by_role("button", name="Stop").click()
    page.clock.run_for(5000)
    assert wiped.count() == 5
    round_.root.get_by_role("button", name="Beat", exact=True).click()
    page.clock.run_for(60_000)
    assert wiped.count() == 20
    assert not round_.root.locator(".round-tempo").is_visible()


def test_the_beat_stops_with_the_count(round_, tmp_path):
    page = round_.page
    page.clock.install(time=NINE)
    round_.open(lesson_page(tmp_path, "## Full hours", COUNTED))
    page.clock.pause_at(FIVE_PAST)
    while round_.phase != "wipe":
        page.keyboard.press("PageDown")
    round_.root.get_by_role("button", name="Beat", exact=True).click()
    page.clock.run_for(100)
    assert round_.root.locator(".is-wiped").count() == 1
    page.keyboard.press("PageUp")
    page.keyboard.press("PageUp")
    assert round_.phase == "check"
    page.clock.run_for(10_000)
    assert round_.phase == "check"


# A sound card of the test's own, which notes what is played.
SOUND = """
window.notes = [];
window.AudioContext = class { currentTime = 0; destination = {}; close() {} };
window.GainNode = class {
  gain = {
    setValueAtTime() {}, exponentialRampToValueAtTime() {},
    linearRampToValueAtTime: (loud) => window.notes.push(loud),
  };
  connect(to) { return to; }
};
window.OscillatorNode = class {
  constructor(_, { frequency }) { window.notes.push(frequency); }
  connect(to) { return to; }
  start() {}
  stop() {}
};
"""


@pytest.mark.parametrize("turned_on", [False, True])
def test_a_tone_sounds_softly_when_time_is_up_if_it_is_turned_on(round_, tmp_path, turned_on):
    page = round_.page
    page.add_init_script(SOUND)
    page.clock.install(time=NINE)
    round_.open(lesson_page(tmp_path, "## Minutes", SIX))
    page.clock.pause_at(FIVE_PAST)
    bell = round_.root.get_by_role("button", name="Tone when time is up")
    assert bell.get_attribute("aria-pressed") == "false"
    if turned_on:
        bell.click()
        assert bell.get_attribute("aria-pressed") == "true"
    round_.next.click()
    page.clock.run_for(59_000)
    assert page.evaluate("window.notes") == []
    page.clock.run_for(2_000)
    notes = page.evaluate("window.notes")
    assert bool(notes) == turned_on
    # Soft: at most an eighth of full loudness.
    assert all(note > 200 or note <= 0.125 for note in notes)


def test_a_round_tells_what_it_holds_and_where_it_stands(sums):
    page = sums.page
    [round_told] = told(page, "kit:round")
    assert (round_told["title"], round_told["skill"]) == ("Minutes", "time.read_five_minutes")
    assert (round_told["seed"], round_told["seconds"]) == (90213, 60)
    assert round_told["tasks"] == sums.tasks
    sums.root.locator(".round-card").nth(1).click()
    place = told(page, "kit:place")[-1]
    steps = len(sums.tasks[1]["steps"])
    assert place == {
        "task": 1, "phase": "show", "step": 1, "steps": steps, "tasks": 6, "group": [0, 1, 2],
        "extra": None,
    }  # fmt: skip
    sums.root.get_by_role("button", name="Another like this").click()
    place = told(page, "kit:place")[-1]
    assert (place["phase"], place["step"]) == ("ask", 0)
    assert place["extra"] == sums.tasks[1]["twins"][0]


BEGIN_AGAIN = "(root) => !root.dispatchEvent(new CustomEvent('kit:again', { cancelable: true }))"


def test_a_round_begins_again_when_the_page_asks(sums):
    page = sums.page
    for _ in range(4):
        page.keyboard.press("PageDown")
    assert sums.root.evaluate(BEGIN_AGAIN)
    assert (sums.phase, sums.said("digits"), sums.next.inner_text()) == ("ask", "1:00", "Start")


def test_what_was_made_of_the_first_question_is_not_there_when_a_round_begins_again(
    round_, tmp_path
):
    page = round_.open(lesson_page(tmp_path, "## Set", SET)).page
    beginning = round_.look()
    round_.root.locator("[role='slider']").first.focus()
    page.keyboard.press("ArrowRight")
    assert round_.look() != beginning
    assert round_.root.evaluate(BEGIN_AGAIN)
    assert round_.look() == beginning
    page.keyboard.press("PageDown")
    page.keyboard.press("PageUp")
    assert round_.look() == beginning


@SCREENS
def test_nothing_is_found_by_the_accessibility_check(sums):
    page = sums.page
    seen = set()
    while len(seen) < 4:
        if sums.phase not in seen:
            seen.add(sums.phase)
            assert faults(page) == [], sums.phase
        if sums.phase != "check":
            page.keyboard.press("PageDown")
    sums.root.get_by_role("button", name="Another like this").click()
    assert faults(page) == []


def test_steps_that_do_not_fit_are_scrolled_by_keys(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Set", SET)).page
    while round_.phase != "check":
        page.keyboard.press("PageDown")
    steps = round_.root.locator(".round-steps")
    assert faults(page) == []
    before = steps.evaluate("(list) => list.scrollTop")
    assert before > 0
    steps.focus()
    page.keyboard.press("Home")
    page.wait_for_function(
        "([list, before]) => list.scrollTop < before", arg=[steps.element_handle(), before]
    )


@SCREENS
def test_nothing_is_found_while_the_board_is_wiped(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Full hours", COUNTED)).page
    while round_.phase != "wipe":
        page.keyboard.press("PageDown")
    page.keyboard.press("PageDown")
    assert faults(page) == []


def test_the_focus_goes_from_the_questions_to_the_way_on(sums):
    page = sums.page
    page.evaluate("document.activeElement.blur()")
    sums.root.locator(".round-card").first.focus()
    order = []
    for _ in range(5):
        order.append(page.evaluate("document.activeElement.innerText.split('\\n')[0]"))
        page.keyboard.press("Tab")
    assert order == ["a", "b", "c", "All answers", "One at a time"]
    # Enter on a card shows it, and then Enter goes on.
    sums.root.locator(".round-card").nth(1).focus()
    page.keyboard.press("Enter")
    assert (sums.phase, shown(sums)) == ("show", "b")
