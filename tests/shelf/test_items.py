from __future__ import annotations

import json
from datetime import datetime

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.notebook.writing import notebook_of
from manipulatives.serve.board.board import Board
from manipulatives.serve.wording import by_folder, can_make, cells, length
from manipulatives.shelf import items as shelf_module
from manipulatives.shelf import stamp
from manipulatives.shelf.items import Shelf

FERRY = Lesson(
    "The ferry to Penny Cross",
    seed=41,
    rounds=(
        Round("time.read_half", seed=5, tasks=4, seconds=100),
        Round("time.later", seed=6, tasks=3, seconds=200),
    ),
)


def write_notebook(path, *cells_):
    nbformat.write(new_notebook(cells=list(cells_)), path)


@pytest.fixture
def folder(tmp_path):
    write_lesson(FERRY, tmp_path / "ferry.toml")
    return tmp_path


def only(folder):
    (item,) = Shelf(folder).items()
    return item


def test_a_lesson_file_says_what_it_teaches_and_how_long_it_is(folder):
    item = only(folder)
    assert (item.name, item.title) == ("ferry", "The ferry to Penny Cross")
    assert item.strands == ("time",)
    assert (item.rounds, item.minutes) == (2, 5)
    assert length(item) == "5 min · 2 rounds"
    assert item.kit_only
    assert not item.problem


def test_a_notebook_replaces_the_lesson_file_it_was_made_from(folder):
    other = Lesson("The ferry, changed by hand", seed=41, rounds=FERRY.rounds[:1])
    nbformat.write(notebook_of(other), folder / "ferry.ipynb")
    item = only(folder)
    assert item.title == "The ferry, changed by hand"
    assert item.rounds == 1
    assert item.ignored_toml == "ferry.toml"


def test_lessons_are_found_a_little_below_the_folder_and_listed_by_folder(folder):
    for name in ("autumn", "autumn/week", "autumn/week/deeper", ".hidden", "node_modules"):
        (folder / name).mkdir()
        write_lesson(FERRY, folder / name / "bell.toml")
    (folder / "python" / "lib").mkdir(parents=True)
    (folder / "python" / "pyvenv.cfg").touch()
    write_lesson(FERRY, folder / "python" / "lib" / "bell.toml")
    listed = by_folder(Shelf(folder).items())
    assert [(where, [item.name for item in items]) for where, items in listed] == [
        ("", ["ferry"]),
        ("autumn", ["autumn/bell"]),
        ("autumn/week", ["autumn/week/bell"]),
    ]


def test_what_has_no_rounds_comes_after_the_lessons(folder):
    bell = new_notebook(cells=[new_code_cell("from manipulatives import Clock\n\nClock()")])
    nbformat.write(bell, folder / "bell.ipynb")
    [(_, items)] = by_folder(Shelf(folder).items())
    assert [item.name for item in items] == ["ferry", "bell"]


def test_lessons_stand_in_the_order_in_which_people_count(folder):
    for name in ("week 10", "week 2", "Week 1"):
        write_lesson(FERRY, folder / f"{name}.toml")
    names = [item.name for item in Shelf(folder).items()]
    assert names == ["ferry", "Week 1", "week 2", "week 10"]


def test_class_settings_projects_and_hidden_files_are_no_lessons(folder):
    (folder / "class.toml").write_text('vocabulary = "uk"\n')
    (folder / "pyproject.toml").write_text("[project]\n")
    (folder / ".draft.toml").write_text("title = 1\n")
    (folder / "folder.toml").mkdir()
    assert only(folder).name == "ferry"


def test_a_link_to_another_place_is_no_lesson(folder, tmp_path_factory):
    elsewhere = tmp_path_factory.mktemp("elsewhere") / "secret.toml"
    write_lesson(FERRY, elsewhere)
    (folder / "link.toml").symlink_to(elsewhere)
    (folder / "below").symlink_to(elsewhere.parent)
    (folder / "again.toml").symlink_to(folder / "ferry.toml")
    assert [item.name for item in Shelf(folder).items()] == ["again", "ferry"]


def test_a_broken_file_is_listed_with_one_sentence_and_nothing_can_be_made_of_it(folder):
    (folder / "ferry.toml").write_text(
        'title = "Ferry"\nseed = 1\n[[rounds]]\nskill = "time.fly"\n'
    )
    (folder / "torn.ipynb").write_text('{"cells": [')
    torn, ferry = sorted(Shelf(folder).items(), key=lambda item: item.name == "ferry")
    assert ferry.problem.startswith("ferry.toml, [[rounds]] 1, skill: there is no skill 'time.fly'")
    assert torn.problem.startswith("torn.ipynb: the file is no notebook")
    for item in (torn, ferry):
        assert "\n" not in item.problem
        assert str(folder) not in item.problem
        assert not item.kit_only
        assert not any(can_make(item, form) for form in ("page", "sheet", "key"))


def test_class_settings_that_cannot_be_read_are_the_problem_of_every_lesson_beside_them(folder):
    (folder / "class.toml").write_text('vocabulary = "fr"\n')
    assert only(folder).problem.startswith("class.toml, vocabulary:")


def test_a_notebook_with_a_broken_round_can_still_be_shown(folder):
    write_notebook(folder / "ferry.ipynb", new_code_cell('play("time.fly", seed=1)'))
    item = only(folder)
    assert "time.fly" in item.problem
    assert item.kit_only
    assert Board.of(item).notebook.cells


@pytest.mark.parametrize(
    ("source", "foreign"),
    [
        ("from manipulatives import Clock, play", ()),
        ('play("time.read_hour", seed=3)', ()),
        ('tower = Clock(time="4:35")\ntower', ()),
        ("1 + 1", (2,)),
        ("import os", (2,)),
        ('play("time.read_hour", seed=print(3))', (2,)),
        ("from manipulatives import cli", (2,)),
        ("%time 1", (2,)),
        ("!ls", (2,)),
        ("", ()),
    ],
)
def test_anything_but_a_plain_call_of_the_kit_is_foreign_code(folder, source, foreign):
    (folder / "ferry.toml").unlink()
    write_notebook(folder / "bell.ipynb", new_markdown_cell("# Bell"), new_code_cell(source))
    item = only(folder)
    assert item.foreign == foreign
    assert item.kit_only == (not foreign)


def test_a_notebook_cannot_declare_itself_safe(folder):
    notebook = notebook_of(FERRY)
    notebook.cells[1].source = "import os; os.remove('bell')"
    nbformat.write(notebook, folder / "ferry.ipynb")
    assert only(folder).foreign == (2,)


def test_the_stamp_changes_with_the_file_and_with_the_class_settings(folder):
    shelf = Shelf(folder)
    stamps = [shelf.find("ferry").stamp]
    (folder / "class.toml").write_text('vocabulary = "uk"\n')
    stamps.append(shelf.find("ferry").stamp)
    with (folder / "ferry.toml").open("a") as file:
        file.write("# a word\n")
    stamps.append(shelf.find("ferry").stamp)
    (folder / "class.toml").unlink()
    stamps.append(shelf.find("ferry").stamp)
    assert len(set(stamps)) == 4


def test_a_listing_shows_a_change_at_once(folder):
    shelf = Shelf(folder)
    assert [item.title for item in shelf.items()] == [FERRY.title]
    (folder / "ferry.toml").write_text('title = "Cheese"\nseed = 1\n')
    assert [item.title for item in shelf.items()] == ["Cheese"]
    (folder / "class.toml").write_text("currency = 1\n")
    assert [bool(item.problem) for item in shelf.items()] == [True]
    nbformat.write(notebook_of(FERRY), folder / "ferry.ipynb")
    (folder / "class.toml").unlink()
    assert [item.ignored_toml for item in shelf.items()] == ["ferry.toml"]
    (folder / "ferry.toml").unlink()
    assert [item.ignored_toml for item in shelf.items()] == [""]
    (folder / "ferry.ipynb").unlink()
    assert shelf.items() == []


def test_only_names_on_the_shelf_are_found(folder):
    shelf = Shelf(folder)
    assert shelf.find("ferry")
    for name in ("", "ferry.toml", "./ferry", "../x/ferry", "Ferry", "ferry/", "/ferry", "ferry\0"):
        assert shelf.find(name) is None


def test_todays_lesson_is_recognised_by_its_date(folder):
    today = datetime.now().astimezone().date()
    write_lesson(Lesson("Today", seed=1, date=today), folder / "today.toml")
    found = {item.name: item.today for item in Shelf(folder).items()}
    assert found == {"ferry": False, "today": True}


def test_content_and_stamp_agree_even_while_somebody_writes(folder, monkeypatch):
    (folder / "ferry.toml").unlink()
    path = folder / "bell.ipynb"
    write_notebook(path, new_code_cell("1 + 1"))
    harmless = only(folder).stamp
    read = shelf_module.open_notebook
    writes = iter(["2 + 2", "3 + 3"])

    def meanwhile(given):
        notebook = read(given)
        if (source := next(writes, None)) is not None:
            write_notebook(path, new_code_cell(source))
        return notebook

    monkeypatch.setattr(shelf_module, "open_notebook", meanwhile)
    item = Shelf(folder).find("bell")
    assert item.stamp != harmless
    assert item.notebook.cells[0].source == "3 + 3"

    writes = iter(map(str, range(99)))
    item = Shelf(folder).find("bell")
    assert item.notebook is None
    assert item.problem == "bell.ipynb is being written; look again."


def test_a_write_that_was_interrupted_is_undone_when_the_shelf_is_opened(folder):
    (folder / "autumn").mkdir()
    for place in (folder, folder / "autumn"):
        (place / ".bell.html.0123abcd.part").write_bytes(b"<html>")
        plan = {"token": "0123abcd", "files": {"bell.html": [None, "a digest"]}}
        (place / ".kit-write-0123abcd.json").write_text(f"{json.dumps(plan)}\n")
    Shelf(folder).items()
    assert sorted(path.name for path in folder.rglob("*")) == ["autumn", "ferry.toml"]


def test_a_shelf_too_full_says_how_much_it_leaves_out(folder, monkeypatch):
    monkeypatch.setattr(shelf_module, "MOST", 3)
    for number in range(5):
        write_lesson(FERRY, folder / f"day {number}.toml")
    shelf = Shelf(folder)
    assert len(shelf.items()) == 3
    assert shelf.left_out == 3


def test_a_file_too_large_is_not_read(folder, monkeypatch):
    monkeypatch.setattr(stamp, "LARGEST", 20)
    assert "more than 20 bytes" in only(folder).problem


def test_a_notebook_without_rounds_gets_a_page_and_no_paper(folder):
    (folder / "ferry.toml").unlink()
    write_notebook(folder / "guide.ipynb", new_markdown_cell("# How to wind the bell"))
    item = only(folder)
    assert item.title == "How to wind the bell"
    assert [form for form in ("page", "sheet", "key") if can_make(item, form)] == ["page"]


def test_a_notebook_that_is_a_program_in_another_language_is_not_the_kits_own(folder):
    (folder / "ferry.toml").unlink()
    notebook = new_notebook(cells=[new_code_cell("x <- 3")])
    notebook.metadata["kernelspec"] = {"name": "ir", "display_name": "R", "language": "R"}
    (folder / "tides.ipynb").write_text(json.dumps(notebook))
    assert only(folder).foreign == (1,)


def test_cells_are_named_as_people_name_them():
    assert [cells(some) for some in ((3,), (2, 5), (2, 5, 7))] == [
        "cell 3",
        "cells 2 and 5",
        "cells 2, 5 and 7",
    ]
