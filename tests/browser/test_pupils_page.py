"""A page for pupils, worked through as they do: by touch and by keys, rightly and wrongly."""

from __future__ import annotations

import functools
import http.server
import json
import threading
from datetime import datetime
from pathlib import Path

import pytest

from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.records.origin import lesson_id
from manipulatives.lessons.records.results import read_results
from manipulatives.lessons.settings import ClassSettings
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.notebook.writing import notebook_of
from manipulatives.outputs.page import page_of
from support.accessibility import faults
from support.chromium import reload, visit

FIVES = Round("counting.on_in_fives", seed=11, tasks=2)
COINS = Round("money.make_amount", seed=12, tasks=1)
SHAPES = Round("shapes.name_shapes", seed=13, tasks=2)
EXPANDED = Round("place_value.expanded_form", seed=14, tasks=1)
CLOCKS = Round("time.read_five_minutes", seed=15, tasks=2)
MORNING = Lesson("Market morning", seed=7, rounds=(FIVES, COINS, SHAPES, EXPANDED, CLOCKS))

VOICES = """
  window.spoken = [];
  const voices = VOICES;
  Object.defineProperty(speechSynthesis, "getVoices", { value: () => voices });
  Object.defineProperty(speechSynthesis, "speak", { value: ({ text }) => spoken.push(text) });
  window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
"""
HERE = '[{ lang: "en-US", localService: true }]'
ELSEWHERE = '[{ lang: "en-US", localService: false }]'
REFUSED = """
  for (const name of ["localStorage", "sessionStorage"]) {
    const get = () => { throw new DOMException("no", "SecurityError"); };
    Object.defineProperty(window, name, { get });
  }
"""
# From a place on the mat to pixels.
SPOT = """([x, y]) => {
  const coins = document.querySelector(".coins-lying");
  const point = new DOMPoint(x, y).matrixTransform(coins.getScreenCTM());
  return [point.x, point.y];
}"""
TOTAL = "() => document.querySelector('.kit-coins').facts().total"


def tasks_of(planned):
    """The questions of a round, which Python and the page know alike."""
    return make_tasks(planned.skill, seed=planned.seed, count=planned.tasks)


class Pupil:
    """Somebody who works on a page for pupils."""

    def __init__(self, page, folder):
        self.page = page
        self.folder = folder
        self.round = page.locator(".kit-round:visible")
        self.next = self.round.locator(".round-next")
        self.keyed = False

    def open(self, *rounds, **settings):
        """Go to the page of a lesson."""
        lesson = Lesson(MORNING.title, seed=MORNING.seed, rounds=rounds or MORNING.rounds)
        file = self.folder / "pupils.html"
        file.write_text(
            page_of(notebook_of(lesson), audience="pupils", settings=ClassSettings(**settings)),
            "utf-8",
        )
        visit(self.page, file.as_uri())
        self.ready()
        return self

    def ready(self):
        """Wait for everything that the page carries."""
        self.page.wait_for_selector("main:not([aria-busy])", state="attached")

    def press(self, name):
        """Press a button by its words."""
        self.touch(self.page.get_by_role("button", name=name, exact=True))

    def touch(self, place):
        """Press it with a finger where there is one."""
        if self.page.evaluate("navigator.maxTouchPoints > 0"):
            place.tap()
        else:
            place.click()

    def begin(self, code=""):
        """Start fresh."""
        self.page.get_by_label("Code from your teacher").fill(code)
        self.press("Start")

    def onward(self, words):
        """Press the button that leads on, which says this."""
        assert self.next.inner_text() == words
        self.touch(self.next)

    def answer(self, task, text):
        """Type or choose an answer and have it checked."""
        if task.ask["by"] == "choice":
            self.touch(self.round.locator(f'[data-choice="{text}"]'))
        else:
            for letter in text.replace(" ", ""):
                self.touch(self.round.locator(f'[data-key="{letter}"]'))
        self.touch(self.round.locator(".round-check"))

    @property
    def asked(self):
        """The question."""
        return self.round.locator(".round-prompt").inner_text().replace("\u2212", "-")

    @property
    def said(self):
        """What is said to the answer."""
        return self.round.locator(".round-verdict span").first.inner_text()

    @property
    def steps(self):
        """The worked steps in sight, and those before them."""
        return self.round.locator(".round-steps li").all_text_contents()

    def pay(self, coins):
        """Lay coins by tapping the purse and then the mat."""
        for index, (kind, x, y) in enumerate(coins):
            self.touch(self.round.locator(".coins-handle:not(.is-round)").nth(kind))
            spot = self.page.evaluate(SPOT, [x, y])
            self.page.touchscreen.tap(*spot)
            self.page.wait_for_function(
                "count => document.querySelector('.kit-coins').facts().count === count",
                arg=index + 1,
            )
        self.touch(self.round.locator(".round-check"))

    def see_money(self):
        """Wait until something lies on the tray."""
        self.page.wait_for_function("() => document.querySelector('.kit-coins').facts().total > 0")

    def results(self):
        """The file that is saved."""
        with self.page.expect_download() as coming:
            self.press("Save the results")
        assert coming.value.suggested_filename.endswith(".json")
        return Path(coming.value.path()).read_text("utf-8")


@pytest.fixture
def pupil(quiet_page, tmp_path):
    return Pupil(quiet_page, tmp_path)


def work_the_fives(pupil):
    """One mistake and then right; two mistakes, the steps, and the twin at the end."""
    first, second = tasks_of(FIVES)
    pupil.onward("My turn")
    assert pupil.asked == first.prompt
    pupil.answer(first, first.mistakes[0].answer)
    assert pupil.said == first.mistakes[0].pupil
    pupil.answer(first, first.answer)
    assert pupil.said == f"Yes, {first.spoken}."
    pupil.onward("Next")

    assert pupil.asked == second.prompt
    pupil.answer(second, second.mistakes[0].answer)
    pupil.answer(second, second.mistakes[1].answer)
    assert pupil.said == second.mistakes[1].pupil
    assert not pupil.round.locator(".round-reply").is_visible()
    assert second.spoken not in pupil.page.locator("main").inner_text()
    pupil.onward("See the steps")
    assert pupil.steps == [second.steps[0].say]
    assert pupil.round.locator(".round-answer").text_content() == ""
    pupil.onward("Next step")
    assert pupil.steps == [step.say for step in second.steps]
    assert pupil.round.locator(".round-answer strong").inner_text() == second.answer
    pupil.onward("Next")

    twin = second.twins[-1]
    pupil.onward("Try it")
    assert pupil.asked == twin.prompt
    pupil.answer(twin, twin.answer)
    pupil.onward("Next")


def work_with_coins(pupil):
    """A hint shows a step, and the tray is the pupil's own again after it."""
    [ticket] = tasks_of(COINS)
    pupil.onward("My turn")
    pupil.press("Hint")
    assert pupil.steps == [ticket.steps[0].say]
    assert pupil.page.evaluate(TOTAL) == 25
    pupil.onward("My turn")
    assert pupil.page.evaluate(TOTAL) == 0
    pupil.pay([(0, 300, 300), (1, 700, 300)])
    assert pupil.said
    pupil.press("Undo")
    pupil.press("Undo")
    pupil.pay([(0, 300, 300), (1, 700, 300), *((3, 200 + 300 * at, 800) for at in range(3))])
    assert pupil.said == f"Yes, {ticket.spoken}."
    pupil.onward("Next")


def work_with_shapes(pupil):
    """The page is loaded anew while something is chosen and not checked."""
    circle, triangle = tasks_of(SHAPES)
    pupil.onward("My turn")
    pupil.answer(circle, circle.answer)
    pupil.onward("Next")
    pupil.touch(pupil.round.locator('[data-choice="square"]'))

    reload(pupil.page)
    pupil.ready()
    assert pupil.page.get_by_label("Code from your teacher").input_value() == "K7"
    pupil.press("Carry on")
    assert pupil.asked == triangle.prompt
    assert pupil.round.locator(".round-count").inner_text() == "2 of 2"
    chosen = pupil.round.locator('[data-choice][aria-pressed="true"]')
    assert chosen.inner_text() == "square"
    pupil.touch(pupil.round.locator(".round-check"))
    pupil.answer(triangle, triangle.answer)
    pupil.onward("Next")


def work_rightly(pupil, planned):
    """Every answer is right at once."""
    pupil.onward("My turn")
    for task in tasks_of(planned):
        pupil.answer(task, task.answer)
        pupil.onward("Next")


@pytest.mark.screens("tablet", "phone")
def test_a_whole_page_is_worked_through_by_touch(pupil):
    pupil.open().begin("k 7")
    work_the_fives(pupil)
    work_with_coins(pupil)
    work_with_shapes(pupil)
    work_rightly(pupil, EXPANDED)
    work_rightly(pupil, CLOCKS)

    summed = pupil.page.locator(".pupils-sums li").all_inner_texts()
    assert [line.split("\n")[1] for line in summed] == [
        "2 of 3 right",
        "1 of 1 right",
        "2 of 2 right",
        "1 of 1 right",
        "2 of 2 right",
    ]
    results = read_results(pupil.results())
    assert (results.title, results.seed, results.code) == ("Market morning", 7, "K7")
    assert results.date == datetime.now().astimezone().date().isoformat()
    (first, second), [ticket], [circle, triangle] = map(tasks_of, (FIVES, COINS, SHAPES))
    asked = [first, second, second.twins[-1], ticket, circle, triangle]
    asked += [*tasks_of(EXPANDED), *tasks_of(CLOCKS)]
    assert [(task.skill, task.prompt) for task in results.tasks] == [
        (task.skill, task.prompt) for task in asked
    ]
    assert [task.asked["answer"] for task in results.tasks] == [task.answer for task in asked]
    assert [task.round for task in results.tasks] == [1, 1, 1, 2, 3, 3, 4, 5, 5]
    assert results.origin.lesson_id == lesson_id("Market morning", 7)
    assert [(task.tries, task.right, task.hints, task.twin) for task in results.tasks] == [
        (2, True, 0, False),
        (2, False, 0, False),
        (1, True, 0, True),
        (2, True, 1, False),
        (1, True, 0, False),
        (2, True, 0, False),
        *[(1, True, 0, False)] * 3,
    ]
    mistakes = first.mistakes[0], second.mistakes[1]
    assert [task.rule for task in results.tasks[:2]] == [mistake.rule for mistake in mistakes]
    assert results.tasks[0].given == (first.mistakes[0].answer, first.answer)
    assert results.tasks[3].given == ({"total": 35}, {"total": 38})
    assert results.tasks[5].given == ("square", "triangle")

    pupil.press("Finished, next pupil")
    pupil.ready()
    code = pupil.page.get_by_label("Code from your teacher")
    assert code.input_value() == ""
    code.fill("K7")
    assert pupil.page.get_by_role("button", name="Start", exact=True).is_visible()
    assert pupil.page.evaluate("Object.keys(localStorage)") == []


def test_a_round_is_worked_by_keys_alone(pupil):
    page = pupil.page
    pupil.open(CLOCKS)
    page.get_by_label("Code from your teacher").focus()
    page.keyboard.press("Enter")
    page.wait_for_selector('[data-stage="watch"]:visible')
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    for task in tasks_of(CLOCKS):
        assert pupil.asked == task.prompt
        page.keyboard.type("1:00" if task.answer != "1:00" else "2:00")
        page.keyboard.press("Enter")
        assert pupil.said != ""
        page.keyboard.type(task.answer)
        page.keyboard.press("Enter")
        assert pupil.said == f"Yes, {task.spoken}."
        page.keyboard.press("Enter")
    assert page.get_by_text("You did it all.").is_visible()


@pytest.mark.screens("tablet")
def test_without_storage_it_says_so_and_shows_the_results(pupil):
    page = pupil.page
    page.add_init_script(REFUSED)
    pupil.open(CLOCKS)
    assert page.get_by_text("Do it all in one go.").is_visible()
    pupil.begin("B2")
    pupil.onward("My turn")
    clock = tasks_of(CLOCKS)[0]
    pupil.answer(clock, clock.answer)
    pupil.press("Finish")
    results = read_results(page.get_by_label("The results to copy").input_value())
    assert results.code == "B2"
    assert [task.given for task in results.tasks] == [(clock.answer,)]
    pupil.press("Carry on")
    assert pupil.said == f"Yes, {clock.spoken}."


def test_work_is_stored_separately_for_each_code(pupil):
    page = pupil.page
    pupil.open(CLOCKS).begin("A1")
    pupil.onward("My turn")
    clock = tasks_of(CLOCKS)[0]
    pupil.answer(clock, clock.answer)
    reload(page)
    pupil.ready()
    field = page.get_by_label("Code from your teacher")
    carry = page.get_by_role("button", name="Carry on")
    assert carry.is_visible()
    field.fill("A2")
    assert not carry.is_visible()
    field.fill("a1")
    assert carry.is_visible()

    # What was done is not lost to one press.
    pupil.press("Start fresh")
    assert page.get_by_text("The old work will be gone.").is_visible()
    pupil.press("Yes, start fresh")
    assert pupil.next.inner_text() == "My turn"


def test_results_that_were_not_saved_are_not_cleared_by_one_press(pupil):
    page = pupil.page
    pupil.open(CLOCKS).begin()
    pupil.onward("My turn")
    clock = tasks_of(CLOCKS)[0]
    pupil.answer(clock, clock.answer)
    pupil.press("Finish")
    pupil.press("Finished, next pupil")
    assert page.get_by_text("The results are not saved.").is_visible()
    pupil.press("Yes, clear them")
    pupil.ready()
    assert page.get_by_role("button", name="Start", exact=True).is_visible()


def test_the_results_can_be_printed(pupil):
    page = pupil.page
    page.add_init_script("window.print = () => { window.printed = true; };")
    pupil.open(CLOCKS).begin("P3")
    pupil.onward("My turn")
    clock = tasks_of(CLOCKS)[0]
    pupil.answer(clock, clock.mistakes[0].answer)
    pupil.answer(clock, clock.answer)
    pupil.press("Finish")
    pupil.press("Print")
    assert page.evaluate("printed")
    page.emulate_media(media="print")
    assert "code P3" in page.locator(".pupils-headline").inner_text()
    row = page.locator("tbody tr:visible").all_inner_texts()
    assert [line.split("\t") for line in row] == [
        [clock.prompt, f"{clock.mistakes[0].answer}, {clock.answer}", "yes", "0"]
    ]
    assert page.locator("button:visible").count() == 0


def test_everything_said_to_a_pupil_can_be_listened_to(pupil):
    page = pupil.page
    page.add_init_script(VOICES.replace("VOICES", HERE))
    pupil.open(CLOCKS).begin()
    pupil.onward("My turn")
    clock = tasks_of(CLOCKS)[0]
    listen = pupil.round.get_by_role("button", name="Listen")
    assert listen.count() == 1
    pupil.press("Hint")
    assert listen.count() == 2
    listen.nth(0).click()
    listen.nth(1).click()
    pupil.answer(clock, clock.mistakes[0].answer)
    listen.nth(1).click()
    assert page.evaluate("spoken") == [
        clock.prompt,
        clock.steps[0].say,
        clock.mistakes[0].pupil,
    ]


def test_a_voice_that_is_not_on_the_device_is_never_offered(pupil):
    pupil.page.add_init_script(VOICES.replace("VOICES", ELSEWHERE))
    pupil.open(CLOCKS).begin()
    pupil.onward("My turn")
    assert pupil.page.get_by_role("button", name="Listen").count() == 0


def test_the_example_plays_by_itself_and_has_no_words(pupil):
    page = pupil.page
    pupil.open(COINS).begin()
    assert page.get_by_role("button", name="Stop the example").is_visible()
    pupil.see_money()
    words = page.locator("main").inner_text()
    [task] = tasks_of(COINS)
    assert task.twins[0].answer in words
    assert task.prompt not in words
    assert task.twins[0].prompt not in words
    pupil.onward("My turn")
    assert page.evaluate(TOTAL) == 0


def test_where_less_movement_is_wished_for_the_example_waits(pupil):
    page = pupil.page
    page.clock.install()
    page.emulate_media(reduced_motion="reduce")
    pupil.open(COINS).begin()
    page.clock.run_for(2500)
    assert page.evaluate(TOTAL) == 0
    page.get_by_role("button", name="Play the example").click()
    pupil.see_money()


def test_there_is_a_timer_only_where_the_teacher_set_one(pupil):
    pupil.open(CLOCKS).begin()
    pupil.onward("My turn")
    assert not pupil.round.get_by_role("timer").is_visible()
    pupil.open(CLOCKS, timer="shown").begin("T")
    pupil.onward("My turn")
    assert pupil.round.get_by_role("timer").is_visible()
    pupil.press("Hide")
    assert not pupil.round.get_by_role("timer").is_visible()


def test_over_http_it_asks_for_itself_alone(pupil, tmp_path):
    asked = []

    class Handler(http.server.SimpleHTTPRequestHandler):
        def log_request(self, code="-", _size="-"):
            asked.append((self.path, int(code)))

    pupil.open(CLOCKS)
    handler = functools.partial(Handler, directory=tmp_path)
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        pupil.page.goto(f"http://127.0.0.1:{server.server_port}/pupils.html")
        pupil.ready()
        pupil.begin()
        pupil.onward("My turn")
    finally:
        server.shutdown()
        server.server_close()
    assert asked == [("/pupils.html", 200)]


def test_stored_work_that_cannot_be_read_is_ignored(pupil):
    page = pupil.page
    pupil.open(CLOCKS).begin()
    pupil.onward("My turn")
    [name] = page.evaluate("Object.keys(localStorage)")
    kept = json.loads(page.evaluate("name => localStorage.getItem(name)", name))
    [part] = kept["parts"].values()
    part["saved"]["items"][0] = {"of": 99}
    part["saved"]["at"] = "x"
    page.evaluate("([name, text]) => localStorage.setItem(name, text)", [name, json.dumps(kept)])
    reload(page)
    pupil.ready()
    pupil.press("Carry on")
    assert pupil.next.inner_text() == "My turn"


# What a reader may set without losing anything: Web Content Accessibility Guidelines 2.2, 1.4.12.
SPACED = """* { line-height: 1.5 !important; letter-spacing: 0.12em !important;
  word-spacing: 0.16em !important; } p { margin-block-end: 2em !important; }"""
PLAIN = "/* as it is */"
READERS = {
    "320 pixels": ((320, 640), PLAIN),
    "200 %": ((512, 384), PLAIN),
    "spaced text": ((360, 740), SPACED),
    "a tablet": ((1024, 768), PLAIN),
}


@pytest.mark.parametrize(("size", "style"), READERS.values(), ids=READERS)
def test_every_screen_of_it_passes_the_accessibility_check_and_loses_nothing(pupil, size, style):
    page = pupil.page
    page.add_init_script(VOICES.replace("VOICES", HERE))
    page.set_viewport_size({"width": size[0], "height": size[1]})

    def look():
        assert faults(page) == []
        lost = page.evaluate(
            """() => [...document.querySelectorAll("button, input, .round-prompt, .round-verdict")]
              .filter((one) => one.checkVisibility() && !one.closest(".is-unseen"))
              .filter((one) => {
                one.scrollIntoView({ block: "center", behavior: "instant" });
                const { left, right, top, bottom } = one.getBoundingClientRect();
                const x = (left + right) / 2, y = (top + bottom) / 2;
                const there = document.elementFromPoint(x, y);
                return left < -1 || right > innerWidth + 1 || !there || !one.contains(there);
              }).map((one) => one.outerHTML.slice(0, 200))"""
        )
        assert lost == []
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")

    pupil.open(FIVES, CLOCKS)
    page.add_style_tag(content=style)
    look()
    pupil.begin()
    look()
    pupil.onward("My turn")
    look()
    pupil.press("Hint")
    look()
    task = tasks_of(FIVES)[0]
    pupil.answer(task, task.mistakes[0].answer)
    look()
    pupil.answer(task, task.mistakes[1].answer)
    look()
    pupil.onward("See the steps")
    pupil.onward("Next step")
    look()
    pupil.onward("Next")
    pupil.answer(tasks_of(FIVES)[1], tasks_of(FIVES)[1].answer)
    look()
    pupil.onward("Next")
    assert pupil.next.inner_text() == "Try it"
    look()
    pupil.press("Go on")
    pupil.onward("My turn")
    look()
    pupil.press("Finish")
    look()
    page.get_by_text("All answers").click()
    look()
    reload(page)
    pupil.ready()
    look()
