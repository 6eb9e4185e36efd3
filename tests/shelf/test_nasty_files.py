"""One bad file is one card that says so, and one sentence of a command; whatever it raises."""

from __future__ import annotations

import os
import unicodedata
from pathlib import Path

import pytest

from manipulatives.cli import main
from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem, quoted
from manipulatives.outputs import page
from manipulatives.shelf.item_outputs import notebook_path, write_output
from manipulatives.shelf.items import Shelf
from manipulatives.shelf.save import others_in
from support.nasty import CLASSES, LESSONS, NAMES, NOTEBOOKS, notebook

GOOD = Lesson("The good one", seed=7, rounds=(Round("time.read_hour", seed=8, tasks=2),))
FILES = {
    **{f"lesson: {name}": ("nasty.toml", text) for name, text in LESSONS.items()},
    **{f"notebook: {name}": ("nasty.ipynb", text) for name, text in NOTEBOOKS.items()},
}


def lay(folder, name, text):
    content = text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass")
    (folder / name).write_bytes(content)


def can_be_shown(sentence):
    """Whether a sentence can be sent, and holds nothing that turns or hides what is around it."""
    sentence.encode()
    return not any(unicodedata.category(letter) in ("Cc", "Cf", "Cs") for letter in sentence)


@pytest.mark.parametrize(("name", "text"), FILES.values(), ids=FILES)
def test_a_nasty_file_is_one_card_and_the_others_are_there(tmp_path, name, text):
    write_lesson(GOOD, tmp_path / "good.toml")
    lay(tmp_path, name, text)
    items = {item.name: item for item in Shelf(tmp_path).items()}
    assert set(items) == {"good", "nasty"}
    assert (items["good"].title, items["good"].problem) == ("The good one", "")
    nasty = items["nasty"]
    # What cannot be read as a call is a program of others, which a board asks about first.
    assert nasty.problem or nasty.foreign or "Clock" in str(text)
    assert can_be_shown(nasty.title + nasty.problem)
    assert len(nasty.problem) < 400


@pytest.mark.parametrize("name", NAMES.values(), ids=NAMES)
def test_a_nasty_name_is_a_card_that_says_how_to_mend_it(tmp_path, name):
    write_lesson(GOOD, tmp_path / "good.toml")
    content = notebook(("code", "1 + 1")).encode() if name.endswith(b"b") else b"title = 1"
    (tmp_path / os.fsdecode(name)).write_bytes(content)
    shelf = Shelf(tmp_path)
    nasty = next(item for item in shelf.items() if item.name != "good")
    assert nasty.problem.endswith("its name holds what cannot be shown; rename the file.")
    assert can_be_shown(nasty.name + nasty.title + nasty.file + nasty.problem)
    assert shelf.find(nasty.name) == nasty
    assert shelf.find("good").problem == ""
    with pytest.raises(LessonProblem):
        notebook_path(nasty)


def test_an_unreadable_file_is_left_out(tmp_path, monkeypatch):
    write_lesson(GOOD, tmp_path / "good.toml")
    for name in ("secret.toml", "below"):
        (tmp_path / name).mkdir()
    true = Path.is_file

    def secret(path):
        if path.name in ("secret.toml", "pyvenv.cfg"):
            raise PermissionError(13, "Permission denied", str(path))
        return true(path)

    monkeypatch.setattr(Path, "is_file", secret)
    assert [item.name for item in Shelf(tmp_path).items()] == ["good"]


def test_a_lesson_is_checked_and_opened_beside_any_file(tmp_path, capsys):
    write_lesson(GOOD, tmp_path / "good.toml")
    for number, (ending, text) in enumerate(FILES.values()):
        lay(tmp_path, f"{number} {ending}", text)
    assert main(["check", str(tmp_path / "good.toml")]) == 0
    assert capsys.readouterr().out.startswith("The good one: 1 round")
    assert len(others_in(tmp_path, "good")) > 0


def test_whatever_a_page_raises_is_one_sentence_of_the_shelf(tmp_path, monkeypatch):
    write_lesson(GOOD, tmp_path / "good.toml")
    item = Shelf(tmp_path).find("good")

    def breaks(*_, **__):
        raise RecursionError("maximum depth")

    monkeypatch.setattr(page, "page_of", breaks)
    with pytest.raises(LessonProblem, match=r"good\.toml: it cannot be read .RecursionError"):
        write_output(item, "page")
    assert [path.name for path in tmp_path.iterdir()] == ["good.toml"]


@pytest.mark.parametrize("text", CLASSES.values(), ids=CLASSES)
def test_nasty_class_settings_are_reported_on_each_card_and_other_folders_work(tmp_path, text):
    write_lesson(GOOD, tmp_path / "good.toml")
    (tmp_path / "week").mkdir()
    write_lesson(GOOD, tmp_path / "week" / "monday.toml")
    lay(tmp_path / "week", "class.toml", text)
    items = {item.name: item for item in Shelf(tmp_path).items()}
    assert items["good"].problem == ""
    assert items["week/monday"].problem.startswith("class.toml")
    assert can_be_shown(items["week/monday"].problem)


@pytest.mark.parametrize("command", ["check", "page", "make", "sheet"])
@pytest.mark.parametrize("file", FILES)
def test_a_nasty_file_ends_a_command_with_a_sentence(tmp_path, capsys, monkeypatch, command, file):
    name, text = FILES[file]
    monkeypatch.chdir(tmp_path)
    lay(tmp_path, name, text)
    before = {path.name for path in tmp_path.iterdir()}
    ended = main([command, name])
    said = capsys.readouterr()
    if ended == 0:
        # A call that cannot be made does not matter on paper, nor a title where none is read.
        assert command in ("check", "page", "sheet")
        assert name == "nasty.ipynb"
        return
    assert ended == 2
    assert said.out == ""
    assert said.err.startswith(name)
    assert "Traceback" not in said.err
    assert can_be_shown(said.err.replace("\n", ""))
    assert len(said.err) < 400
    assert {path.name for path in tmp_path.iterdir()} == before


@pytest.mark.parametrize("text", CLASSES.values(), ids=CLASSES)
@pytest.mark.parametrize("command", ["check", "page", "make", "sheet"])
def test_nasty_class_settings_end_a_command_with_a_sentence(
    tmp_path, capsys, monkeypatch, command, text
):
    monkeypatch.chdir(tmp_path)
    write_lesson(GOOD, tmp_path / "good.toml")
    lay(tmp_path, "class.toml", text)
    assert main([command, "good.toml"]) == 2
    said = capsys.readouterr().err
    assert said.startswith(("class.toml", "good.toml"))
    assert can_be_shown(said.replace("\n", ""))
    assert sorted(path.name for path in tmp_path.iterdir()) == ["class.toml", "good.toml"]


@pytest.mark.parametrize(
    ("given", "shown"),
    [
        ("caf\u00e9", "'caf\u00e9'"),
        ("a\u202eb", "'a\\u202eb'"),
        ("\u200b\u2066", "'\\u200b\\u2066'"),
        ("\x00\x9b", "'\\x00\\x9b'"),
        ("\ud800", "'\\ud800'"),
        (["\u202e"], "['\\u202e']"),
        (10**5000, "a value of the kind int that is too long to show"),
    ],
    ids=["accent", "direction", "unseen", "control", "half a letter", "in a list", "digits"],
)
def test_what_is_quoted_can_be_seen(given, shown):
    assert quoted(given) == shown


@pytest.mark.parametrize("source", ["Clock(comm=1)", 'Clock(time="25:99")', "Clock(hands=3)"])
def test_a_call_that_cannot_be_made_is_found_by_check(tmp_path, capsys, source):
    lay(tmp_path, "bell.ipynb", notebook(("markdown", "# Bell"), ("code", source)))
    assert main(["check", str(tmp_path / "bell.ipynb")]) == 2
    said = capsys.readouterr()
    assert "bell.ipynb, cell 2: Clock(…) cannot be made (" in said.err
    assert len(said.err.splitlines()) == 1


def test_a_file_name_is_escaped_in_a_sentence(tmp_path, capsys):
    assert main(["check", str(tmp_path / "day\x1b[31m\u202e\n.toml")]) == 2
    said = capsys.readouterr().err
    assert "day\\x1b[31m\\u202e\\n.toml: the file cannot be opened" in said
    assert can_be_shown(said.rstrip("\n"))


def test_what_is_quoted_has_eighty_letters_at_most():
    assert len(quoted("x" * 500)) == 80
    assert len(quoted(["\u202e"] * 500)) == 80
