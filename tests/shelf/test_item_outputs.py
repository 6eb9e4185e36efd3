from __future__ import annotations

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_notebook

from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.notebook.writing import notebook_of
from manipulatives.shelf.item_outputs import notebook_path, output_path, read_output, write_output
from manipulatives.shelf.items import Shelf
from manipulatives.shelf.outputs import OUTPUTS

CHEESE = Lesson("The cheese stall", seed=3, rounds=(Round("time.read_hour", seed=8, tasks=3),))


@pytest.fixture
def folder(tmp_path):
    write_lesson(CHEESE, tmp_path / "cheese.toml")
    return tmp_path


def item_in(folder):
    return Shelf(folder).find("cheese")


@pytest.mark.parametrize("output", OUTPUTS)
def test_every_output_is_written_beside_the_lesson_and_recognised(folder, output):
    item = item_in(folder)
    assert read_output(item, output) is None
    path = write_output(item, output)
    assert path == output_path(item, output)
    assert read_output(item, output) == path.read_bytes()
    assert {each.name for each in folder.iterdir()} == {"cheese.toml", path.name}


def test_an_existing_output_is_made_again(folder):
    first = write_output(item_in(folder), "page").read_bytes()
    write_lesson(Lesson("The cheese stall, later", seed=3), folder / "cheese.toml")
    assert write_output(item_in(folder), "page").read_bytes() != first


@pytest.mark.parametrize("output", OUTPUTS)
def test_a_file_of_that_name_that_the_kit_did_not_make_stays_as_it_is(folder, output):
    item = item_in(folder)
    output_path(item, output).write_text("my own notes")
    with pytest.raises(LessonProblem, match="did not make it; move it away"):
        write_output(item, output)
    assert output_path(item, output).read_text() == "my own notes"
    assert read_output(item, output) is None


def test_a_link_is_not_written_through(folder, tmp_path_factory):
    elsewhere = tmp_path_factory.mktemp("elsewhere") / "page.html"
    elsewhere.write_bytes(write_output(item_in(folder), "page").read_bytes())
    kept = elsewhere.read_bytes()
    output_path(item_in(folder), "page").unlink()
    output_path(item_in(folder), "page").symlink_to(elsewhere)
    write_lesson(Lesson("Other", seed=3), folder / "cheese.toml")
    with pytest.raises(LessonProblem):
        write_output(item_in(folder), "page")
    assert elsewhere.read_bytes() == kept
    assert read_output(item_in(folder), "page") is None


def test_a_lesson_without_rounds_gives_no_sheet_and_leaves_nothing(folder):
    write_lesson(Lesson("Empty", seed=3), folder / "cheese.toml")
    with pytest.raises(LessonProblem, match="nothing to print"):
        write_output(item_in(folder), "sheet")
    assert [path.name for path in folder.iterdir()] == ["cheese.toml"]


def test_the_notebook_of_a_lesson_is_written_once_and_then_holds(folder):
    assert notebook_path(item_in(folder)) == "cheese.ipynb"
    nbformat.write(notebook_of(Lesson("By hand", seed=3)), folder / "cheese.ipynb")
    before = (folder / "cheese.ipynb").read_bytes()
    assert notebook_path(item_in(folder)) == "cheese.ipynb"
    assert (folder / "cheese.ipynb").read_bytes() == before
    assert item_in(folder).title == "By hand"


def test_a_notebook_that_appears_meanwhile_is_not_replaced(folder):
    item = item_in(folder)
    nbformat.write(new_notebook(cells=[new_code_cell("1")]), folder / "cheese.ipynb")
    before = (folder / "cheese.ipynb").read_bytes()
    with pytest.raises(LessonProblem, match="something of that name"):
        notebook_path(item)
    assert (folder / "cheese.ipynb").read_bytes() == before


def test_the_page_of_a_notebook_is_made_from_the_notebook(folder):
    nbformat.write(notebook_of(Lesson("Baked by hand", seed=3)), folder / "cheese.ipynb")
    assert b"Baked by hand" in write_output(item_in(folder), "page").read_bytes()
