"""The lesson maker on a served board: one lesson put together by mouse, another by keys alone."""

from __future__ import annotations

import re

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.lessons.files import read_lesson
from manipulatives.lessons.makers import make_tasks
from manipulatives.lessons.settings import ClassSettings, settled
from manipulatives.maker.finding import skills_found
from manipulatives.outputs.notebook import lesson_of, open_notebook
from manipulatives.outputs.page.saved import saved_in
from support.pdf import pages_of
from support.server import serving

MAKER = "from manipulatives.maker.form import lesson_maker\n\nlesson_maker()"
SLOW = 120_000
FORMS = ("Page", "Sheet", "Key")
NUMBER = re.compile(r"\d+(?::\d+)?")


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    folder = tmp_path_factory.mktemp("Penny Cross")
    cells = [new_markdown_cell("# Make a lesson"), new_code_cell(MAKER)]
    nbformat.write(new_notebook(cells=cells), folder / "make-a-lesson.ipynb")
    return folder


@pytest.fixture(scope="module")
def server(folder):
    with serving(folder) as server:
        yield server


@pytest.fixture
def maker(quiet_page, server):
    """The form, with nothing on the table."""
    page = quiet_page
    page.set_default_timeout(30_000)
    page.goto(server.address)
    page.goto(f"{server.base}board/make-a-lesson")
    # The shelf asks before it runs a notebook with a call that it does not know.
    run = page.get_by_role("button", name="Run it", exact=True)
    form = page.locator(".kit-maker")
    run.or_(form).first.wait_for(timeout=SLOW)
    if run.is_visible():
        run.click()
    form.get_by_role("button", name="Save", exact=True).wait_for(timeout=SLOW)
    return page


def said(page, text):
    """Wait until the form has said something."""
    place = page.locator(".maker-said")
    wait(page, lambda: text in place.inner_text(), place.inner_text)


def until_rounds(page, *beginnings):
    """Wait until the list of rounds is this one."""
    wanted = [f"{place}. {text}" for place, text in enumerate(beginnings, start=1)]

    def found():
        texts = page.locator(".maker-rounds option").all_inner_texts()
        # Blanks in a list of the browser's do not break.
        plain = [text.replace("\u00a0", " ") for text in texts]
        pairs = [*zip(plain, wanted, strict=False)]
        return len(plain) == len(wanted) and all(one.startswith(other) for one, other in pairs)

    wait(page, found)


def wait(page, fact, instead=lambda: "nothing"):
    """Wait until something is so; the page goes on meanwhile."""
    for _ in range(SLOW // 100):
        if fact():
            return
        page.wait_for_timeout(100)
    pytest.fail(f"it did not come about; there is: {instead()}")


def search(page, words):
    """Wait until what is typed has been searched for: numbers in a list are those of its rows."""
    options = page.locator(".maker-skills .widget-select option")
    wait(page, lambda: options.count() == len(skills_found(words)), options.all_inner_texts)


def tasks_of(folder, name):
    """What the tasks of a saved lesson ask and answer, worked out from its file alone."""
    lesson = settled(read_lesson(folder / f"{name}.toml"), ClassSettings())
    return [
        (task.prompt, task.answer)
        for one in lesson.rounds
        for task in make_tasks(
            one.skill,
            seed=one.seed,
            count=one.tasks,
            vocabulary=lesson.vocabulary,
            options=one.options,
            instead=one.instead,
            twins=0,
        )
    ]


def on_page(folder, name):
    """What the tasks on a saved page ask and answer."""
    text = (folder / f"{name}.html").read_text("utf-8")
    data = saved_in(text)
    rounds = [data["models"][place] for place in re.findall(r'data-kit-view="(\w+)"', text)]
    return [
        (task["prompt"], task["answer"])
        for each in rounds
        for task in {**data["kinds"][each["kind"]]["usual"], **each.get("own", {})}["tasks"]
    ]


def printed(folder, name, form):
    pages = pages_of((folder / f"{name}.{form}.pdf").read_bytes())
    return [line.text for page in pages for line in page.lines]


def stands_in(lines, wanted):
    """Whether texts stand in lines in this order, with others between them."""
    left = iter(lines)
    return all(any(text == line for line in left) for text in wanted)


def check_agreement(folder, name):
    """Lesson, notebook, page and sheet agree in every number."""
    lesson = read_lesson(folder / f"{name}.toml")
    assert lesson_of(open_notebook(folder / f"{name}.ipynb")) == lesson
    tasks = tasks_of(folder, name)
    assert on_page(folder, name) == tasks
    asked = [(NUMBER.findall(prompt), answer) for prompt, answer in tasks]
    sheet = [number for numbers, _ in asked for number in numbers]
    assert stands_in(printed(folder, name, "sheet"), sheet)
    key = [text for numbers, answer in asked for text in (*numbers, answer)]
    assert stands_in(printed(folder, name, "key"), key)
    return tasks


def add_by_mouse(page):
    for words, title in (
        ("five minutes", "Read to five minutes"),
        ("count on fives", "Count on in fives"),
        ("hour half", "Read to the half hour"),
    ):
        page.get_by_label("Search").click()
        page.get_by_label("Search").fill(words)
        search(page, words)
        page.get_by_label("Skills").locator("option", has_text=title).click()
        page.get_by_role("button", name="Add this skill as a round").click()
        page.locator(".maker-rounds option", has_text=title).wait_for(state="attached")


def change_by_mouse(page):
    # The remark says what to do, and goes when it is done.
    remark = page.locator(".maker-remarks p", has_text="Move round 2 before it.")
    remark.wait_for()
    page.locator(".maker-rounds option").nth(1).click()
    page.locator(".maker-stage .kit-manipulative").wait_for()
    page.get_by_role("button", name="Up", exact=True).click()
    until_rounds(page, "Count on in fives", "Read to five minutes", "Read to the half hour")
    remark.wait_for(state="detached")
    # The preview follows what is chosen: four tasks instead of six.
    page.get_by_label("Tasks", exact=True).fill("4")
    page.get_by_label("Tasks", exact=True).press("Tab")
    page.locator(".maker-stage .round-head", has_text="1 of 4").wait_for()
    page.get_by_label("Numbers up to").select_option("120")
    before = page.locator(".maker-task").nth(1).inner_text()
    page.locator(".maker-task").nth(1).get_by_role("button", name="Draw again").click()
    wait(page, lambda: page.locator(".maker-task").nth(1).inner_text() != before)
    page.locator(".maker-rounds option").nth(1).click()
    page.get_by_label("Type task 1", exact=True).fill("4:35")
    page.get_by_label("Type task 1", exact=True).press("Enter")
    page.locator(".maker-task .maker-answer", has_text="4:35").wait_for()


def test_a_lesson_is_put_together_by_mouse_saved_opened_changed_and_saved_again(maker, folder):
    page = maker
    add_by_mouse(page)
    change_by_mouse(page)
    page.get_by_label("Title of the lesson").fill("Monday")
    page.get_by_label("Title of the lesson").press("Tab")
    wait(page, lambda: page.get_by_label("Save as").input_value() == "monday")
    for form in FORMS:
        page.get_by_label(form, exact=True).check()
    page.get_by_role("button", name="Save", exact=True).click()
    said(page, "Saved as monday")
    first = check_agreement(folder, "monday")
    lesson = read_lesson(folder / "monday.toml")
    assert [one.tasks for one in lesson.rounds] == [4, None, None]
    assert lesson.rounds[0].options == {"to": 120}
    assert lesson.rounds[0].instead == ("", 1)
    assert first[4][1] == "4:35"

    # Opened again, a round is taken out and the others draw other numbers.
    page.get_by_role("button", name="Begin a new one").click()
    said(page, "A new lesson is begun.")
    until_rounds(page)
    page.get_by_label("Lessons of this folder").select_option("monday")
    page.get_by_role("button", name="Open", exact=True).click()
    said(page, "Monday is open.")
    page.locator(".maker-rounds option").nth(2).click()
    page.get_by_role("button", name="Take out").click()
    until_rounds(page, "Count on in fives", "Read to five minutes")
    page.locator(".maker-rounds option").nth(0).click()
    before = page.locator(".maker-tasks").inner_text()
    page.get_by_role("button", name="Again: other numbers").click()
    wait(page, lambda: page.locator(".maker-tasks").inner_text() != before)
    page.get_by_role("button", name="Save", exact=True).click()
    said(page, "Saved as monday")
    second = check_agreement(folder, "monday")
    assert len(second) == 9
    assert second[:4] != first[:4]
    assert second[4:] == first[4:9]


FOCUSED = """() => {
  const here = document.activeElement;
  return (here.labels?.[0]?.innerText || here.innerText || "").trim();
}"""


def tab_to(page, name, *, back=False):
    """Go to something with the Tab key alone."""
    for _ in range(120):
        page.keyboard.press("Shift+Tab" if back else "Tab")
        if page.evaluate(FOCUSED) == name:
            return
    pytest.fail(f"{name} cannot be reached by keys")


def type_over(page, text):
    page.keyboard.press("Control+A")
    page.keyboard.type(text)


def add_by_keys(page, words, title):
    tab_to(page, "Search", back=True)
    type_over(page, words)
    search(page, words)
    tab_to(page, "Skills")
    page.keyboard.press("Home")
    page.keyboard.type(title)
    tab_to(page, "Add this skill as a round")
    page.keyboard.press("Enter")
    page.locator(".maker-rounds option", has_text=title).wait_for(state="attached")


def save_by_keys(page, name):
    tab_to(page, "Save as", back=True)
    type_over(page, name)
    tab_to(page, "Save")
    page.keyboard.press("Enter")


def test_a_lesson_is_put_together_by_keys_alone_and_replaces_another_only_when_told(maker, folder):
    page = maker
    tab_to(page, "Add this skill as a round")
    add_by_keys(page, "on in tens", "Count on in tens")
    add_by_keys(page, "on in ones", "Count on in ones")
    tab_to(page, "Up", back=True)
    page.keyboard.press("Enter")
    until_rounds(page, "Count on in ones", "Count on in tens")
    # The focus stays where it is, and so does the round that is chosen.
    assert page.evaluate(FOCUSED) == "Up"
    page.keyboard.press("Enter")
    said(page, "It is the first round already.")
    tab_to(page, "Tasks")
    type_over(page, "3")
    tab_to(page, "Draw again")
    page.locator(".maker-stage .round-head", has_text="1 of 3").wait_for()
    page.keyboard.press("Enter")
    tab_to(page, "Title of the lesson", back=True)
    type_over(page, "Tuesday")
    for form in reversed(FORMS):
        tab_to(page, form, back=True)
        page.keyboard.press("Space")
    save_by_keys(page, "tuesday")
    said(page, "Saved as tuesday")
    first = check_agreement(folder, "tuesday")
    assert len(first) == 3 + 5

    # A new lesson under the same name is asked about.
    tab_to(page, "Begin a new one", back=True)
    page.keyboard.press("Enter")
    said(page, "A new lesson is begun.")
    tab_to(page, "Add this skill as a round")
    add_by_keys(page, "back in ones", "Count back in ones")
    before = (folder / "tuesday.toml").read_bytes()
    save_by_keys(page, "tuesday")
    page.get_by_text("Shall it be replaced?").wait_for()
    assert (folder / "tuesday.toml").read_bytes() == before
    tab_to(page, "Keep it")
    page.keyboard.press("Enter")
    said(page, "It is kept.")
    save_by_keys(page, "tuesday")
    page.get_by_text("Shall it be replaced?").wait_for()
    tab_to(page, "Replace it")
    page.keyboard.press("Enter")
    said(page, "Saved as tuesday")
    assert check_agreement(folder, "tuesday") != first
    assert read_lesson(folder / "tuesday.toml").rounds[0].skill == "counting.back_in_ones"
