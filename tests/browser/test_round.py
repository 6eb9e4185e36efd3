"""A round in a browser: taught by a clicker, worked through by touch and by keys, timed, kept."""

from __future__ import annotations

import json

import pytest
from browser.lesson_page import RoundOnPage, lesson_page

READ = 'play("time.read_five_minutes", tasks=3, seconds=60, seed=90213)'
TIMED = 'play("time.read_five_minutes", tasks=3, seconds=60, seed=90213, timer="shown")'
CHOOSE = 'play("time.read_five_minutes", tasks=3, seed=90213, answer="choice")'
SET = 'play("time.set_hands", tasks=2, seed=4, hands="geared")'
# Pages open at nine; then time stands still until the test lets it pass.
NINE = "2026-03-02T09:00:00"
FIVE_PAST = "2026-03-02T09:05:00"

# Every sentence that a pupil may meet beside the tasks' own.
MOST_WORDS = 10


@pytest.fixture
def round_(quiet_page):
    return RoundOnPage(quiet_page)


def wrong_answer(task):
    return next(mistake for mistake in task["mistakes"] if mistake["answer"])


def test_a_whole_round_is_taught_by_one_key(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Minutes", READ)).page
    for number, task in enumerate(round_.tasks):
        assert (round_.phase, round_.task) == ("ask", number)
        assert round_.said("prompt") == task["prompt"]
        assert round_.facts()["minutes"] is not None
        for step in task["steps"]:
            page.keyboard.press("PageDown")
            assert round_.phase == "show"
            assert round_.root.locator("[aria-current='step']").inner_text() == step["say"]
            assert round_.said("aloud") == (step["class"] or None)
        page.keyboard.press("PageDown")
        assert round_.phase == "check"
        assert round_.said("answer").split("\n") == [task["answer"], task["spoken"]]
        page.keyboard.press("PageDown")
    # At the end of the lesson the key does nothing more.
    assert (round_.phase, round_.task) == ("check", 2)
    assert round_.said("end") == "End of the round"
    assert not round_.next.is_visible()


def test_the_button_says_what_it_does_next(round_, tmp_path):
    round_.open(lesson_page(tmp_path, "## Minutes", TIMED, "## Set", SET))
    said = []
    while round_.root.locator(".round-reply").get_attribute("data-by") == "keypad":
        said.append(round_.next.inner_text())
        round_.next.click()
    one = ["Start", "First step", "Next step", "Next step", "Show the answer", "Next question"]
    assert said == [*one, *one, *one[:-1], "Next round"]


@pytest.mark.screens("board", "phone")
def test_back_goes_back_exactly(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Minutes", READ)).page
    seen = []
    for _ in range(14):
        seen.append(round_.look())
        page.keyboard.press("PageDown")
    assert len({json.dumps(look) for look in seen}) == 14
    for look in reversed(seen):
        round_.root.locator(".round-back").click()
        assert round_.look() == look


@pytest.mark.screens("tablet", "phone")
def test_a_pupil_works_through_a_round_by_touch(round_, tmp_path):
    round_.open(lesson_page(tmp_path, "## Minutes", READ))
    one, two, three = round_.tasks
    tap = lambda name: round_.root.locator(name).tap()  # noqa: E731 - a finger, in a word
    tap(".round-check")
    assert round_.verdict == "Write your answer first."
    mistake = wrong_answer(one)
    for letter in mistake["answer"]:
        tap(f'[data-key="{letter}"]')
    tap(".round-check")
    assert round_.verdict == mistake["pupil"]
    assert round_.phase == "work"
    for _ in mistake["answer"]:
        tap('[data-key="back"]')
    # What was said still stands while the answer is mended.
    assert round_.verdict == mistake["pupil"]
    for letter in one["answer"]:
        tap(f'[data-key="{letter}"]')
    tap(".round-check")
    assert round_.verdict == f"Yes, {one['spoken']}."
    assert round_.next.inner_text() == "Next question"
    tap(".round-next")
    # The second: a look at the steps, then the answer.
    assert round_.task == 1
    tap('[data-key="1"]')
    tap(".round-next")
    assert round_.root.locator("[aria-current='step']").inner_text() == two["steps"][0]["say"]
    tap(".round-back")
    assert round_.root.locator(".round-typed").input_value() == "1"
    tap('[data-key="back"]')
    for letter in two["answer"]:
        tap(f'[data-key="{letter}"]')
    tap(".round-check")
    assert round_.verdict == f"Yes, {two['spoken']}."
    tap(".round-explain")
    assert round_.phase == "show"
    tap(".round-back")
    tap(".round-next")
    assert round_.said("prompt") == three["prompt"]


# What is off the screen, or over something else that is needed.
LOST = """() => {
  const inside = ({ left, top, right, bottom }) =>
    left >= 0 && top >= 0 && right <= innerWidth + 1 && bottom <= innerHeight + 1;
  const over = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1
    && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
  const box = (part) => part.getBoundingClientRect();
  const needed = ".round-prompt, .clock-face, .clock-side, .round-typed, .round-check, "
    + ".round-key, .round-choice, .round-verdict, .round-explain, [aria-current=step], "
    + ".round-everyone, .round-answer, .round-foot button";
  const seen = [...document.querySelectorAll(needed)].filter((part) =>
    part.checkVisibility() && box(part).width);
  return [
    ...seen.filter((part) => !inside(box(part))),
    ...seen.filter((part) => seen.some((other) => part !== other
      && !(part.matches(".clock-face, .clock-side") && other.matches(".clock-face, .clock-side"))
      && over(box(part), box(other)))),
  ].map((part) => part.getAttribute("class"));
}"""


def nothing_is_lost(page):
    assert page.evaluate(LOST) == []
    assert page.evaluate("document.scrollingElement.scrollHeight <= innerHeight")
    assert page.evaluate("document.scrollingElement.scrollWidth <= innerWidth")


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("call", [TIMED, CHOOSE, SET])
def test_everything_needed_is_on_the_screen_in_every_phase(round_, tmp_path, call):
    page = round_.open(lesson_page(tmp_path, "## Minutes", call)).page
    nothing_is_lost(page)
    for _ in range(2):
        # Nothing chosen, a wrong answer, the hands where they were: each is told something.
        if call is TIMED:
            round_.write(wrong_answer(round_.tasks[0])["answer"])
        round_.check()
        nothing_is_lost(page)
    face = page.locator(".clock-face").bounding_box()
    assert min(face["width"], face["height"]) >= 160
    while round_.task == 0:
        page.keyboard.press("PageDown")
        nothing_is_lost(page)


@pytest.mark.parametrize("size", [(960, 540), (320, 640), (768, 1024), (1366, 640), (3840, 2160)])
def test_nothing_is_lost_on_other_screens_and_when_magnified(round_, tmp_path, size):
    round_.page.set_viewport_size({"width": size[0], "height": size[1]})
    page = round_.open(lesson_page(tmp_path, "## Minutes", TIMED)).page
    round_.write(wrong_answer(round_.tasks[0])["answer"])
    round_.check()
    nothing_is_lost(page)
    while round_.task == 0:
        page.keyboard.press("PageDown")
        nothing_is_lost(page)


def test_nothing_is_lost_with_the_spacing_that_some_readers_need(round_, tmp_path):
    # WCAG 2.2, success criterion 1.4.12: lines 1.5, letters 0.12 em, words 0.16 em.
    page = round_.open(lesson_page(tmp_path, "## Minutes", TIMED)).page
    page.add_style_tag(
        content="* { line-height: 1.5 !important; letter-spacing: 0.12em !important; "
        "word-spacing: 0.16em !important; }"
    )
    for _ in range(7):
        nothing_is_lost(page)
        page.keyboard.press("PageDown")


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("call", [TIMED, CHOOSE, SET])
def test_what_is_pressed_is_large_and_what_is_read_is_too(round_, tmp_path, call):
    page = round_.open(lesson_page(tmp_path, "## Minutes", call)).page
    for _ in range(7):
        sizes = page.evaluate(
            """() => [...document.querySelectorAll(".kit-round button, .round-typed")]
              .filter((e) => e.checkVisibility())
              .map((e) => [e.getBoundingClientRect().width, e.getBoundingClientRect().height])"""
        )
        assert sizes
        assert min(min(size) for size in sizes) >= 44
        letters = page.evaluate(
            """() => {
              const walk = document.createTreeWalker(
                document.querySelector(".kit-round"), NodeFilter.SHOW_TEXT);
              const sizes = [];
              while (walk.nextNode()) {
                const at = walk.currentNode.parentElement;
                if (walk.currentNode.data.trim() && at.checkVisibility() && !at.closest("svg")) {
                  sizes.push(parseFloat(getComputedStyle(at).fontSize));
                }
              }
              return sizes;
            }"""
        )
        assert min(letters) >= 18
        page.keyboard.press("PageDown")


def test_an_answer_is_chosen_from_buttons(round_, tmp_path):
    round_.open(lesson_page(tmp_path, "## Minutes", CHOOSE))
    task = round_.tasks[0]
    assert round_.root.locator(".round-choice").all_inner_texts() == task["ask"]["choices"]
    round_.check()
    assert round_.verdict == "Choose an answer first."
    mistake = wrong_answer(task)
    round_.root.get_by_role("button", name=mistake["answer"], exact=True).click()
    chosen = round_.root.locator(".round-choice[aria-pressed='true']")
    assert chosen.all_inner_texts() == [mistake["answer"]]
    round_.check()
    assert round_.verdict == mistake["pupil"]
    round_.root.get_by_role("button", name=task["answer"], exact=True).click()
    assert chosen.all_inner_texts() == [task["answer"]]
    round_.check()
    assert round_.verdict == f"Yes, {task['spoken']}."


def test_the_hands_are_the_answer_and_come_back_as_they_were_left(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Set", SET)).page
    task = round_.tasks[0]
    [meant] = [part[2] for part in task["goal"] if part[0] == "=" and part[1] == "meant"]
    minute = round_.root.locator("[role='slider']").nth(1)
    minute.focus()
    page.keyboard.press("ArrowRight")
    assert round_.phase == "work"
    left_at = round_.facts()
    round_.check()
    assert round_.verdict
    round_.next.click()
    assert round_.phase == "show"
    assert round_.facts() != left_at
    round_.root.locator(".round-back").click()
    assert round_.facts() == left_at
    # By keys to the goal, an hour or five minutes a press.
    hour = round_.root.locator("[role='slider']").nth(0)
    hour.focus()
    for _ in range((meant // 60 - left_at["meant"] // 60) % 12):
        page.keyboard.press("Shift+ArrowRight")
    minute.focus()
    page.keyboard.press("Home")
    for _ in range(meant % 60 // 5):
        page.keyboard.press("ArrowRight")
    assert round_.facts()["meant"] == meant
    round_.check()
    assert round_.verdict == f"Yes, {task['spoken']}."


def test_a_round_is_worked_through_by_keys_alone(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Minutes", READ)).page
    for number, task in enumerate(round_.tasks):
        assert round_.task == number
        # Wherever the focus is, digits go to the answer.
        page.keyboard.type(wrong_answer(task)["answer"])
        page.keyboard.press("Enter")
        assert round_.verdict == wrong_answer(task)["pupil"]
        page.keyboard.press("ControlOrMeta+a")
        page.keyboard.type(task["answer"])
        page.keyboard.press("Enter")
        assert round_.verdict == f"Yes, {task['spoken']}."
        # The focus has gone to what leads on.
        page.keyboard.press("Enter")


def test_after_a_key_on_the_screen_enter_checks(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Minutes", READ)).page
    task = round_.tasks[0]
    round_.write(task["answer"])
    page.keyboard.press("Enter")
    assert round_.verdict == f"Yes, {task['spoken']}."


def test_the_keypad_takes_no_letters_and_no_keys_of_the_clicker(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Minutes", READ)).page
    line = round_.root.locator(".round-typed")
    line.focus()
    page.keyboard.type("4x:-3")
    assert line.input_value() == "4:3"
    page.keyboard.press(".")
    assert round_.phase == "check"
    page.keyboard.press("b")
    assert round_.phase == "work"
    assert line.input_value() == "4:3"


def test_the_answer_is_shown_and_hidden_without_losing_the_place(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Minutes", READ)).page
    page.keyboard.press("PageDown")
    here = round_.look()
    page.keyboard.press("b")
    assert round_.said("answer").split("\n")[0] == round_.tasks[0]["answer"]
    page.keyboard.press("b")
    assert round_.look() == here


def on_a_clock_that_the_test_turns(round_, address):
    """Open a page whose time stands still, but for `pass_time`."""
    round_.page.clock.install(time=NINE)
    round_.open(address)
    round_.page.clock.pause_at(FIVE_PAST)
    return round_


@pytest.fixture
def timed(round_, tmp_path):
    """A round with a timer of a minute."""
    return on_a_clock_that_the_test_turns(round_, lesson_page(tmp_path, "## Minutes", TIMED))


def pass_time(timed, seconds):
    # The digits change just after a full second: look a tenth of a second later.
    timed.page.clock.run_for(seconds * 1000 + 100)


def glass(timed):
    """How full the bar is, in hundredths, as it is painted when its movement is over."""
    return float(
        timed.root.locator(".round-gauge-fill").evaluate("(e) => e.style.inlineSize.slice(0, -1)")
    )


def press(timed, words):
    timed.root.locator(".round-bar").get_by_role("button", name=words, exact=True).click()


def test_the_timer_shrinks_while_the_question_is_worked_on(timed):
    assert (glass(timed), timed.said("digits")) == (100, "1:00")
    pass_time(timed, 30)
    assert timed.said("digits") == "1:00"
    timed.next.click()
    pass_time(timed, 15)
    assert timed.said("digits") == "0:45"
    assert glass(timed) == pytest.approx(75, abs=1)
    # It rests while the answer is shown.
    timed.next.click()
    pass_time(timed, 100)
    assert timed.said("digits") == "0:45"


def test_the_timer_is_stretched_by_fifteen_seconds(timed):
    timed.next.click()
    pass_time(timed, 20)
    press(timed, "15 seconds more")
    assert timed.said("digits") == "0:55"
    assert glass(timed) == pytest.approx(100 * 55 / 75, abs=1)


def test_the_timer_is_paused_and_goes_on(timed):
    timed.next.click()
    pass_time(timed, 20)
    press(timed, "Pause")
    pass_time(timed, 100)
    assert timed.said("digits") == "0:40"
    press(timed, "Go on")
    pass_time(timed, 10)
    assert timed.said("digits") == "0:30"
    # The key of a clicker does the same.
    timed.page.keyboard.press("F5")
    pass_time(timed, 100)
    timed.page.keyboard.press("F5")
    pass_time(timed, 5)
    assert timed.said("digits") == "0:25"


def test_the_timer_is_hidden_shown_again_and_turned_off(timed):
    timed.next.click()
    pass_time(timed, 10)
    press(timed, "Hide")
    assert timed.said("glass") is None
    assert timed.said("digits") is None
    pass_time(timed, 10)
    press(timed, "Show timer")
    assert timed.said("digits") == "0:40"
    press(timed, "Hide")
    press(timed, "No timer")
    pass_time(timed, 100)
    assert timed.root.locator(".round-bar button:visible").all_inner_texts() == ["Timer"]
    press(timed, "Timer")
    assert timed.said("digits") == "0:40"


def test_running_out_loses_nothing_and_says_so_kindly(timed):
    timed.next.click()
    timed.write("8:1")
    pass_time(timed, 61)
    said = timed.said("digits")
    assert said == "Time is up. Take the time you need."
    assert len(said.split()) <= MOST_WORDS
    assert timed.page.locator("#kit-live").inner_text() == said
    assert timed.root.locator(".round-typed").input_value() == "8:1"
    task = timed.tasks[0]
    timed.root.locator(".round-typed").fill(task["answer"])
    timed.check()
    assert timed.verdict == f"Yes, {task['spoken']}."
    timed.next.click()
    # The next question needs no start, and may be given time again.
    assert timed.next.inner_text() == "First step"
    press(timed, "15 seconds more")
    assert timed.said("digits") == "0:15"
    pass_time(timed, 5)
    assert timed.said("digits") == "0:10"


def test_the_timer_rests_while_another_round_is_shown(round_, tmp_path):
    address = lesson_page(tmp_path, "## Minutes", TIMED, "## Set", SET)
    on_a_clock_that_the_test_turns(round_, address)
    round_.next.click()
    pass_time(round_, 10)
    round_.page.locator(".session-pips button").nth(1).click()
    pass_time(round_, 30)
    round_.page.locator(".session-pips button").nth(0).click()
    # Away from it, it rested at the next change of its digits.
    assert round_.said("digits") == "0:49"
    press(round_, "Go on")
    pass_time(round_, 9)
    assert round_.said("digits") == "0:40"


def test_nothing_of_the_timer_flashes(timed):
    timed.next.click()
    colours = set()
    for _ in range(64):
        pass_time(timed, 1)
        colours.add(
            timed.root.locator(".round-bar").evaluate(
                "(e) => [e, ...e.querySelectorAll('*')].map((part) => {"
                " const { color, backgroundColor, animationName } = getComputedStyle(part);"
                " return [color, backgroundColor, animationName].join(); }).join(' ')"
            )
        )
    # Running and run out: two looks in a minute, and no animation in either.
    assert len(colours) <= 2
    assert all("none" in look for look in colours)


def test_a_round_without_a_timer_shows_none_and_lets_the_page_be_loaded_anew(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Minutes", READ)).page
    assert not round_.root.locator(".round-bar").is_visible()
    prevented = page.evaluate(
        """() => !document.body.dispatchEvent(
          new KeyboardEvent("keydown", { key: "F5", bubbles: true, cancelable: true }))"""
    )
    assert not prevented


def test_loaded_anew_a_round_stands_where_it_stood(round_, tmp_path):
    page = on_a_clock_that_the_test_turns(round_, lesson_page(tmp_path, "## Minutes", TIMED)).page
    task = round_.tasks[0]
    page.keyboard.press("PageDown")
    round_.write(wrong_answer(task)["answer"])
    round_.check()
    press(round_, "15 seconds more")
    press(round_, "Pause")
    here = round_.look()
    round_.again()
    assert round_.look() == here
    assert round_.said("digits") == "1:15"
    for _ in range(2):
        page.keyboard.press("PageDown")
    shown = round_.look()
    round_.again()
    assert round_.look() == shown
    # And the way back is the way that led here.
    page.keyboard.press("PageUp")
    page.keyboard.press("PageUp")
    assert round_.look()[2:4] == here[2:4]
    assert round_.verdict == wrong_answer(task)["pupil"]


def test_hands_in_the_middle_of_the_work_are_kept(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Set", SET)).page
    round_.root.locator("[role='slider']").nth(1).focus()
    for _ in range(3):
        page.keyboard.press("ArrowRight")
    here = round_.facts()
    round_.again()
    assert (round_.facts(), round_.phase) == (here, "work")


REFUSED = """
Object.defineProperty(window, "localStorage", {
  get() { throw new DOMException("refused", "SecurityError"); },
});
"""
FULL = """
Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
"""
NONSENSE = """
Storage.prototype.getItem = () => "{ not what we wrote";
"""


@pytest.mark.parametrize("trouble", [REFUSED, FULL, NONSENSE])
def test_where_keeping_is_refused_a_round_works_all_the_same(round_, tmp_path, trouble):
    page = round_.page
    page.add_init_script(trouble)
    round_.open(lesson_page(tmp_path, "## Minutes", READ, "## Set", SET))
    while round_.root.locator(".round-reply").get_attribute("data-by") == "keypad":
        page.keyboard.press("PageDown")
    assert round_.said("prompt").endswith("Set the clock.")


VOICES = """
Object.defineProperty(window, "speechSynthesis", { value: {
  getVoices: () => [
    { lang: "en-US", localService: false, name: "far" },
    { lang: "en-GB", localService: LOCAL, name: "here" },
  ],
  cancel() {},
  speak: (said) => { window.said = [said.voice.name, said.text]; },
} });
window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
"""


def test_a_voice_on_the_device_reads_what_stands_there(round_, tmp_path):
    page = round_.page
    page.add_init_script(VOICES.replace("LOCAL", "true"))
    round_.open(lesson_page(tmp_path, "## Minutes", READ))
    task = round_.tasks[0]
    listen = round_.root.get_by_role("button", name="Listen")
    listen.click()
    assert page.evaluate("window.said") == ["here", task["prompt"]]
    round_.write(wrong_answer(task)["answer"])
    round_.check()
    listen.click()
    said = page.evaluate("window.said")[1]
    assert said == f"{task['prompt']} {wrong_answer(task)['pupil']}"


def test_a_voice_elsewhere_is_not_asked(round_, tmp_path):
    round_.page.add_init_script(VOICES.replace("LOCAL", "false"))
    round_.open(lesson_page(tmp_path, "## Minutes", READ))
    assert not round_.root.get_by_role("button", name="Listen").is_visible()


def test_what_happens_is_said_to_those_who_listen(round_, tmp_path):
    page = round_.open(lesson_page(tmp_path, "## Minutes", READ)).page
    task = round_.tasks[0]
    live = page.locator("#kit-live")

    def hears(sentence):
        page.wait_for_function(
            "(said) => document.querySelector('#kit-live').textContent === said", arg=sentence
        )

    page.keyboard.press("PageDown")
    step = task["steps"][0]
    hears(f"{step['say']} {step['class']}".strip())
    page.keyboard.press("b")
    hears(task["spoken"])
    assert live.get_attribute("role") == "status"
