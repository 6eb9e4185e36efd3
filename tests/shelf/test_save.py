from __future__ import annotations

from dataclasses import replace

import nbformat
import pytest
from nbformat.v4 import new_code_cell

from manipulatives.lessons.files import read_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.settings import ClassSettings, class_settings
from manipulatives.notebook.reading import lesson_of, open_notebook
from manipulatives.shelf.draft import Draft
from manipulatives.shelf.find import lesson_names
from manipulatives.shelf.replace import AnotherFile
from manipulatives.shelf.save import (
    check_name,
    name_for,
    open_lesson,
    save,
    write_settings,
)

FERRY = Lesson("The ferry", seed=41, rounds=(Round("time.read_hour", seed=5, tasks=3),))
TIDES = Lesson("Tides", seed=42, rounds=(Round("time.read_half", seed=5, tasks=3),))


def held(folder):
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def test_lesson_and_notebook_are_saved_and_opened_again(tmp_path):
    place = save(Draft.of(FERRY), tmp_path, "ferry")
    assert sorted(held(tmp_path)) == ["ferry.ipynb", "ferry.toml"]
    assert read_lesson(tmp_path / "ferry.toml") == FERRY
    assert lesson_of(open_notebook(tmp_path / "ferry.ipynb")) == FERRY
    draft, again = open_lesson(tmp_path, "ferry")
    assert (draft.lesson, again) == (FERRY, place)


def test_page_sheet_key_and_script_come_along_when_they_are_wanted(tmp_path):
    save(Draft.of(FERRY), tmp_path, "ferry", outputs=["page", "sheet", "key", "script"])
    assert sorted(held(tmp_path)) == [
        "ferry.html",
        "ferry.ipynb",
        "ferry.key.pdf",
        "ferry.script.pdf",
        "ferry.sheet.pdf",
        "ferry.toml",
    ]


def test_another_lesson_is_not_replaced_without_permission(tmp_path):
    save(Draft.of(FERRY), tmp_path, "ferry")
    before = held(tmp_path)
    with pytest.raises(AnotherFile, match="a lesson of that name already"):
        save(Draft.of(TIDES), tmp_path, "ferry")
    assert held(tmp_path) == before
    save(Draft.of(TIDES), tmp_path, "ferry", replacing=True)
    assert read_lesson(tmp_path / "ferry.toml") == TIDES


def test_a_lesson_is_saved_again_without_asking_until_somebody_else_changes_it(tmp_path):
    place = save(Draft.of(FERRY), tmp_path, "ferry")
    place = save(Draft.of(FERRY).copied(0), tmp_path, "ferry", place=place)
    with (tmp_path / "ferry.toml").open("a") as file:
        file.write("# by hand\n")
    with pytest.raises(AnotherFile, match="somebody has changed"):
        save(Draft.of(FERRY), tmp_path, "ferry", place=place)
    assert "# by hand" in (tmp_path / "ferry.toml").read_text()


def test_a_page_that_the_kit_did_not_make_is_not_replaced(tmp_path):
    (tmp_path / "ferry.html").write_text("my holidays")
    with pytest.raises(AnotherFile, match="the kit did not make it"):
        save(Draft.of(FERRY), tmp_path, "ferry", outputs=["page"])
    assert sorted(held(tmp_path)) == ["ferry.html"]


def test_when_one_form_cannot_be_made_nothing_is_written(tmp_path):
    with pytest.raises(LessonProblem, match="nothing to print"):
        save(Draft.of(Lesson("Empty", seed=1)), tmp_path, "empty", outputs=["page", "sheet"])
    assert held(tmp_path) == {}


def test_a_page_is_not_made_of_a_notebook_that_would_have_to_be_run(tmp_path):
    save(Draft.of(FERRY), tmp_path, "ferry")
    notebook = open_notebook(tmp_path / "ferry.ipynb")
    notebook.cells.append(new_code_cell("print(6 * 7)"))
    nbformat.write(notebook, tmp_path / "ferry.ipynb")
    draft, place = open_lesson(tmp_path, "ferry")
    with pytest.raises(LessonProblem, match="page: the notebook holds code of its own"):
        save(draft, tmp_path, "ferry", outputs=["page"], place=place)
    save(draft, tmp_path, "ferry", outputs=["sheet"], place=place)
    assert "print(6 * 7)" in (tmp_path / "ferry.ipynb").read_text()


@pytest.mark.parametrize("name", ["", " ", ".hidden", "../up", "a/b", "a\\b", "class", "x\n"])
def test_what_is_no_name_for_a_file_is_refused(name):
    with pytest.raises(LessonProblem):
        check_name(name.replace("\n", "\n y"))


@pytest.mark.parametrize("title", ["Monday", "4:35 p.m.", "Café", "…", "class", "日本", "x" * 200])
def test_every_title_gives_a_name_for_a_file(title):
    assert check_name(name_for(title)) == name_for(title)


def test_class_settings_are_written_and_read(tmp_path):
    settings = ClassSettings(vocabulary="uk", currency="gbp", paper="a4", count_aloud=5)
    written = write_settings(settings, tmp_path)
    assert class_settings(tmp_path) == written == replace(settings, id=written.id)


def test_a_class_is_given_an_id_once(tmp_path):
    other = tmp_path / "other"
    other.mkdir()
    first = write_settings(ClassSettings(), tmp_path)
    assert first.id != write_settings(ClassSettings(), other).id
    again = write_settings(replace(class_settings(tmp_path), paper="a4"), tmp_path)
    assert again.id == first.id
    assert lesson_names(tmp_path) == []
