"""The lesson maker in a browser: a lesson put together by mouse, and another by keys alone."""

from __future__ import annotations

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_markdown_cell
from pypdf import PdfReader

from manipulatives.lessons.files import read_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.round_tasks import tasks_for
from manipulatives.lessons.settings import class_settings
from manipulatives.notebook.reading import lesson_of, open_notebook
from manipulatives.notebook.writing import notebook_of
from manipulatives.outputs.page.saved import saved_in
from support.server import serving, until

FOCUSED = """() => {
  const { activeElement: at } = document;
  return [at.tagName, at.textContent.trim(), at.getAttribute("aria-label") ?? "",
    at.labels?.[0]?.textContent.trim() ?? at.closest(".widget-inline-hbox")
      ?.querySelector(".widget-label")?.textContent.trim() ?? ""];
}"""
MOST_STOPS = 120


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    return tmp_path_factory.mktemp("Penny Cross")


@pytest.fixture(scope="module")
def server(folder):
    with serving(folder) as server:
        yield server


@pytest.fixture
def page(quiet_page, server, forgiven):
    # anywidget gives a preview two seconds to load, which it may not have while sheets are made on
    # a busy machine; the next change shows another one.
    forgiven.append("Failed to initialize model")
    quiet_page.set_default_timeout(60_000)
    quiet_page.goto(server.address)
    return quiet_page


def begin(page):
    page.get_by_role("link", name="Make a lesson").click()
    page.get_by_label("Search").wait_for()


def labelled(page, name):
    return page.get_by_label(name, exact=True)


def press(page, name):
    page.get_by_role("button", name=name, exact=True).first.click()


def said(page, words):
    page.locator(".maker-message p", has_text=words).wait_for()


def rounds(page):
    return page.locator(".rows-line").all_inner_texts()


def orders(page):
    return [line.partition(" ")[2] for line in rounds(page)]


def numbers(folder, name):
    """What lesson, notebook and page ask, and the answers on the key; they must be the same."""
    lesson = read_lesson(folder / f"{name}.toml")
    assert lesson_of(open_notebook(folder / f"{name}.ipynb")) == lesson
    settings = class_settings(folder)
    asked = [
        [[task.prompt, task.answer] for task in tasks_for(one, lesson, settings)]
        for one in lesson.rounds
    ]
    saved = saved_in((folder / f"{name}.html").read_text("utf-8"))
    traits = [
        {**saved["kinds"][model["kind"]]["usual"], **model.get("own", {})}
        for model in saved["models"].values()
    ]
    on_page = [
        [[task["prompt"], task["answer"]] for task in each["tasks"]]
        for each in traits
        if "tasks" in each
    ]
    assert on_page == asked
    sheet, key = (
        # Digits stand in boxes of their own.
        "".join(page.extract_text() for page in PdfReader(folder / f"{name}.{form}.pdf").pages)
        .replace(" ", "")
        .replace("\n", "")
        for form in ("sheet", "key")
    )
    for tasks in asked:
        for prompt, answer in tasks:
            if "+" in prompt:
                assert prompt.replace(" ", "") in sheet
            assert answer.replace(" ", "") in key
    return asked


def test_a_lesson_is_put_together_and_changed_by_mouse(page, folder, server):
    begin(page)
    labelled(page, "Search").fill("five minutes")
    page.get_by_label("Skills").select_option(label="Read to five minutes (time)")
    press(page, "Add this skill as a round")
    page.locator(".maker-stage .kit-clock:visible").wait_for()
    labelled(page, "Search").fill("")
    labelled(page, "Strand").select_option(label="addition")
    page.get_by_label("Skills").select_option(index=0)
    press(page, "Add this skill as a round")
    until(lambda: len(rounds(page)) == 2, 20, "two rounds")

    page.locator(".maker-rounds").scroll_into_view_if_needed()
    handle = page.locator(".rows-handle").nth(1).bounding_box()
    target = page.locator(".rows-handle").nth(0).bounding_box()
    page.mouse.move(handle["x"] + 20, handle["y"] + 20)
    page.mouse.down()
    page.mouse.move(target["x"] + 20, target["y"] + 10, steps=6)
    page.mouse.up()
    until(lambda: "five minutes" in rounds(page)[1], 20, "the dragged round on top")

    labelled(page, "Title of the lesson").fill("Egg day")
    labelled(page, "Title of the lesson").blur()
    for form in ("Page", "Sheet", "Key"):
        labelled(page, form).check()
    until(lambda: labelled(page, "Save as").input_value() == "egg-day", 20, "a name for it")
    press(page, "Save")
    said(page, "Saved as egg-day")
    first = numbers(folder, "egg-day")
    assert len(first) == 2

    page.goto(server.base)
    page.locator("#egg-day").get_by_role("link", name="Change").click()
    said(page, "Egg day is open.")
    page.locator(".rows-line").nth(1).click()
    tasks = labelled(page, "Tasks")
    page.locator(".maker-stage .kit-clock:visible").wait_for()
    tasks.fill("2")
    tasks.blur()
    press(page, "Again: other numbers")
    typed = labelled(page, "Type task 1")
    typed.fill("4:35")
    typed.blur()
    page.locator(".maker-task", has_text="4:35").wait_for()
    for form in ("Page", "Sheet", "Key"):
        labelled(page, form).check()
    press(page, "Save")
    said(page, "Saved as egg-day")
    second = numbers(folder, "egg-day")
    assert second[0] == first[0]
    assert len(second[1]) == 2
    assert second[1][0][1] == "4:35"
    assert second[1][1] not in first[1]


def walk(page, wanted, key="Tab"):
    """Go on by one key until the focus is on something of that name."""
    for _ in range(MOST_STOPS):
        page.keyboard.press(key)
        if wanted in page.evaluate(FOCUSED):
            return
    pytest.fail(f"the keys do not reach {wanted!r}")


def test_a_lesson_is_put_together_and_changed_by_keys_alone(page, folder, server):
    walk(page, "Make a lesson")
    page.keyboard.press("Enter")
    page.get_by_label("Search").wait_for()
    for word in ("coins", "blocks"):
        walk(page, "Search", "Shift+Tab" if word == "blocks" else "Tab")
        page.keyboard.press("Control+A")
        page.keyboard.type(word)
        until(lambda: page.get_by_label("Skills").locator("option").count() < 20, 20, "a search")
        walk(page, "Skills")
        page.keyboard.press("Home")
        walk(page, "Add this skill as a round")
        page.keyboard.press("Enter")
        count = 1 + (word == "blocks")
        until(lambda count=count: len(rounds(page)) == count, 20, "another round")
    walk(page, "Rounds of the lesson", "Shift+Tab")
    before = orders(page)
    page.keyboard.press("Shift+ArrowUp")
    until(lambda: orders(page) == before[::-1], 20, "their order")
    walk(page, "Title of the lesson", "Shift+Tab")
    page.keyboard.press("Control+A")
    page.keyboard.type("Till day")
    walk(page, "Save as", "Shift+Tab")
    until(lambda: labelled(page, "Save as").input_value() == "till-day", 20, "a name for it")
    for form in ("Page", "Sheet", "Key"):
        walk(page, form)
        page.keyboard.press("Space")
    walk(page, "Save")
    page.keyboard.press("Enter")
    said(page, "Saved as till-day")
    first = numbers(folder, "till-day")

    page.goto(server.base)
    page.locator("#till-day").wait_for()
    while page.evaluate("document.activeElement.closest('#till-day') === null"):
        page.keyboard.press("Tab")
    walk(page, "Change")
    page.keyboard.press("Enter")
    said(page, "Till day is open.")
    for form in ("Page", "Sheet", "Key"):
        walk(page, form)
        page.keyboard.press("Space")
    walk(page, "Copy")
    page.keyboard.press("Enter")
    until(lambda: len(rounds(page)) == 3, 20, "a copy")
    walk(page, "Save", "Shift+Tab")
    page.keyboard.press("Enter")
    said(page, "Saved as till-day")
    second = numbers(folder, "till-day")
    assert [second[0], second[2]] == first
    assert second[1] != first[0]


def test_a_notebook_with_foreign_code_is_changed_without_being_run(page, folder, server):
    ferry = Lesson(
        "The ferry",
        seed=41,
        rounds=(Round("time.read_hour", seed=5), Round("money.name_coins", seed=6)),
    )
    path, proof = folder / "ferry.ipynb", folder / "ran"
    notebook = notebook_of(ferry)
    notebook.cells.insert(2, new_code_cell(f"open({str(proof)!r}, 'w')"))
    notebook.cells.append(new_markdown_cell("Then *tidy up*."))
    nbformat.write(notebook, path)
    page.goto(server.base + "maker/ferry")
    said(page, "The ferry is open.")
    until(lambda: len(rounds(page)) == 2, 20, "its rounds")
    before = orders(page)
    press(page, "Down")
    until(lambda: orders(page) == before[::-1], 20, "another order")
    press(page, "Save")
    said(page, "Saved as ferry")
    sources = [cell.source for cell in nbformat.read(path, 4).cells]
    assert sources[2] == f"open({str(proof)!r}, 'w')"
    assert sources[-1] == "Then *tidy up*."
    saved = lesson_of(open_notebook(path))
    assert saved.rounds == ferry.rounds[::-1]
    assert not proof.exists()
