from __future__ import annotations

import dataclasses
import json
import os
import shlex
import shutil
import subprocess
import sys

import nbformat
import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.annotations import FreeText

from manipulatives.cli import COMMANDS, main
from manipulatives.commands import serve as command
from manipulatives.commands.shared import writing
from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.settings import ClassSettings
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.notebook.writing import notebook_of
from manipulatives.outputs import page
from manipulatives.outputs.page import page_of
from manipulatives.outputs.sheet import sheet_of

MONDAY = Lesson("Monday", seed=7, rounds=(Round("time.read_hour", seed=11, tasks=2),))
MARKET = Lesson(
    "Market",
    seed=9,
    rounds=(MONDAY.rounds[0], Round("money.count_like", seed=12, tasks=2)),
)
TUESDAY = Lesson("Tuesday", seed=8, rounds=(Round("addition.make_ten", seed=12, tasks=2),))


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """A folder with one lesson, monday.toml."""
    monkeypatch.chdir(tmp_path)
    write_lesson(MONDAY, tmp_path / "monday.toml")
    return tmp_path


def contents(folder):
    return {path.name: path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_a_lesson_becomes_a_notebook(folder, capsys):
    assert main(["notebook", "monday.toml", "-o", "other.ipynb"]) == 0
    assert nbformat.read(folder / "other.ipynb", as_version=4) == notebook_of(MONDAY)
    assert capsys.readouterr() == ("The notebook is written: other.ipynb.\n", "")


def test_a_lesson_becomes_a_page(folder, capsys):
    assert main(["page", "monday.toml", "-o", "other.html"]) == 0
    assert (folder / "other.html").read_text("utf-8") == page_of(notebook_of(MONDAY))
    said = capsys.readouterr()
    assert said.out.startswith("The page is written: other.html (")
    assert (said.out.count("\n"), said.err) == (1, "")


def test_a_notebook_becomes_the_same_page(folder):
    assert main(["notebook", "monday.toml"]) == 0
    assert main(["page", "monday.toml", "-o", "one.html"]) == 0
    assert main(["page", "monday.ipynb", "-o", "other.html"]) == 0
    assert (folder / "one.html").read_bytes() == (folder / "other.html").read_bytes()


def test_a_lesson_becomes_a_sheet_and_its_key(folder, capsys):
    assert main(["sheet", "monday.toml"]) == 0
    assert main(["sheet", "monday.toml", "--key"]) == 0
    assert capsys.readouterr().out == (
        "The sheet is written: monday.sheet.pdf.\nThe key is written: monday.key.pdf.\n"
    )
    written = contents(folder)
    assert written["monday.sheet.pdf"] == sheet_of(MONDAY, ClassSettings())
    assert written["monday.key.pdf"] == sheet_of(MONDAY, ClassSettings(), key=True)


def test_a_sheet_can_be_larger_on_other_paper_and_with_other_numbers(folder):
    assert main(["sheet", "monday.toml", "--large-print", "--paper", "a4", "-o", "a.pdf"]) == 0
    expected = sheet_of(MONDAY, ClassSettings(), large_print=True, paper="a4")
    assert (folder / "a.pdf").read_bytes() == expected
    assert main(["sheet", "monday.toml", "--seed", "8", "-o", "b.pdf"]) == 0
    assert (folder / "b.pdf").read_bytes() != sheet_of(MONDAY, ClassSettings())


def test_without_a_name_it_goes_beside_the_lesson(folder):
    (folder / "week").mkdir()
    write_lesson(MONDAY, folder / "week" / "monday.toml")
    assert main(["notebook", "week/monday.toml"]) == 0
    assert main(["page", "week/monday.toml"]) == 0
    assert sorted(path.name for path in (folder / "week").iterdir()) == [
        "monday.html",
        "monday.ipynb",
        "monday.toml",
    ]


def test_a_changed_notebook_is_replaced_only_with_force(folder, capsys):
    changed = notebook_of(MONDAY)
    changed.cells[0].source = "# Tuesday"
    nbformat.write(changed, folder / "monday.ipynb")
    before = contents(folder)
    assert main(["notebook", "monday.toml"]) == 2
    assert contents(folder) == before
    assert "there already, with other content; move it away" in capsys.readouterr().err
    assert main(["notebook", "monday.toml", "-o", "monday.ipynb"]) == 2
    assert main(["notebook", "monday.toml", "--force"]) == 0
    assert contents(folder) != before
    assert main(["notebook", "monday.toml"]) == 0


def test_a_lesson_with_a_notebook_becomes_another_one_only_when_that_is_said(folder, capsys):
    nbformat.write(notebook_of(dataclasses.replace(MONDAY, title="Tuesday")), "monday.ipynb")
    before = contents(folder)
    assert main(["notebook", "monday.toml", "-o", "copy.ipynb"]) == 2
    assert contents(folder) == before
    assert capsys.readouterr().err == (
        "monday.toml: its notebook monday.ipynb is there, so that is the lesson; "
        "copy that notebook, or say --force to make one from monday.toml.\n"
    )
    assert main(["notebook", "monday.toml", "-o", "copy.ipynb", "--force"]) == 0
    assert nbformat.read("copy.ipynb", as_version=4) == notebook_of(MONDAY)


FOREIGN = {
    "page": (["page", "monday.toml"], "monday.html"),
    "pupils": (["page", "monday.toml", "--for", "pupils"], "monday.pupils.html"),
    "sheet": (["sheet", "monday.toml"], "monday.sheet.pdf"),
    "key": (["sheet", "monday.toml", "--key"], "monday.key.pdf"),
    "version": (["sheet", "monday.toml", "--version", "B"], "monday.sheet-B.pdf"),
    "steps": (["sheet", "monday.toml", "--form", "steps"], "monday.steps.pdf"),
    "script": (["script", "monday.toml"], "monday.script.pdf"),
    "cutouts": (["cutouts", "monday.toml"], "monday.cutouts.pdf"),
    "named": (["page", "monday.toml", "-o", "mine.html"], "mine.html"),
    "notebook": (["notebook", "monday.toml"], "monday.ipynb"),
}


@pytest.mark.parametrize(("typed", "name"), FOREIGN.values(), ids=FOREIGN)
def test_a_file_that_the_kit_did_not_make_is_replaced_only_with_force(folder, capsys, typed, name):
    write_lesson(MARKET, folder / "monday.toml")
    (folder / name).write_bytes(b"my own notes")
    assert main(typed) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.startswith(f"{name}: {name} is there already")
    # A second notebook would not be the lesson.
    remedy = "move it away or rename it" if "notebook" in typed else "give another name with -o"
    assert said.err.endswith(f"{remedy}, or --force to replace it.\n")
    assert (folder / name).read_bytes() == b"my own notes"
    assert main([*typed, "--force"]) == 0
    assert (folder / name).read_bytes() != b"my own notes"
    # Files that the kit made are replaced without a message.
    if name != "monday.ipynb":
        assert main(typed) == 0


def test_make_replaces_a_file_that_the_kit_did_not_make_only_with_force(folder, capsys):
    (folder / "monday.html").write_bytes(b"my own notes")
    before = contents(folder)
    assert main(["make", "monday.toml"]) == 2
    assert capsys.readouterr().err == (
        "monday.toml: monday.html is there already and the kit did not make it; "
        "move it away or rename it, or --force to replace it.\n"
    )
    assert contents(folder) == before
    assert main(["make", "monday.toml", "--force"]) == 0
    assert b"my own notes" not in (folder / "monday.html").read_bytes()


def test_a_page_of_the_kit_may_take_the_place_of_one_for_others(folder):
    assert main(["page", "monday.toml"]) == 0
    assert main(["page", "monday.toml", "--for", "pupils", "-o", "monday.html"]) == 0
    assert b'data-kit-session="pupils"' in (folder / "monday.html").read_bytes()


def test_a_sheet_that_somebody_wrote_notes_into_is_not_replaced(folder, capsys):
    assert main(["sheet", "monday.toml", "--key"]) == 0
    reader = PdfReader(folder / "monday.key.pdf")
    notes = PdfWriter(reader, incremental=True)
    notes.add_annotation(0, FreeText(text="Ann: again", rect=(50, 50, 200, 100)))
    notes.write(folder / "monday.key.pdf")
    assert main(["sheet", "monday.toml", "--key"]) == 2
    assert "the kit did not make it" in capsys.readouterr().err


@pytest.mark.parametrize(
    "command",
    [["page"], ["sheet"], ["sheet", "--key"], ["script"], ["cutouts"], ["check"], ["make"]],
)
def test_the_notebook_rules_in_every_command_once_it_is_there(folder, capsys, command):
    changed = notebook_of(dataclasses.replace(MARKET, title="Changed by hand"))
    write_lesson(MARKET, folder / "monday.toml")
    nbformat.write(changed, folder / "monday.ipynb")
    assert main([command[0], "monday.toml", *command[1:]]) == 0
    said = capsys.readouterr()
    assert said.err == ("monday.toml: its notebook monday.ipynb is there, so that is the lesson.\n")
    made = {path.name: path.read_bytes() for path in folder.glob("monday.*")}
    (folder / "monday.toml").unlink()
    assert main([command[0], "monday.ipynb", *command[1:], *FORCED.get(command[0], ())]) == 0
    assert capsys.readouterr().out == said.out.replace("monday.toml", "monday.ipynb")
    for path in folder.glob("monday.*"):
        assert path.read_bytes() == made[path.name]


FORCED = {"make": ["--again"]}


@pytest.mark.parametrize(
    ("typed", "stream", "status"),
    [
        (["skills"], "stdout", {141}),
        ([], "stdout", {141}),
        (["page", "nowhere.toml"], "stderr", {141}),
        (["skills"], "stderr", {0}),
        # What the parser itself prints fails silently when it is not buffered.
        (["skills", "--help"], "stdout", {141, 0}),
        (["skills", "--fast"], "stderr", {141, 2}),
    ],
    ids=repr,
)
def test_a_reader_who_leaves_ends_a_command_quietly(typed, stream, status):
    reads, writes = os.pipe()
    # A reader that closes its end at once, as `head` does after its lines.
    os.close(reads)
    streams = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE, stream: writes}
    with os.fdopen(writes):
        done = subprocess.run(
            [sys.executable, "-m", "manipulatives", *typed], check=False, **streams
        )
    assert done.returncode in status
    assert not done.stderr


@pytest.mark.skipif(not shutil.which("sh"), reason="needs a shell")
@pytest.mark.parametrize("closed", ["<&- >&-", "2>&-", ">&- 2>&-"])
def test_a_command_without_anything_to_print_to_is_done_all_the_same(closed):
    command = f"{shlex.quote(sys.executable)} -m manipulatives skills {closed}"
    done = subprocess.run(["sh", "-c", command], capture_output=True, check=False)  # noqa: S607
    assert (done.returncode, done.stderr) == (0, b"")


BAD = {
    "no such lesson": (["page", "tuesday.toml"], "tuesday.toml: the file cannot be opened"),
    "no such notebook": (["page", "tuesday.ipynb"], "tuesday.ipynb: the file cannot be opened"),
    "no such file": (["notebook", "tuesday.toml"], "tuesday.toml: the file cannot be opened"),
    "a folder": (["page", "week", "-o", "a.html"], "week: this is a folder"),
    "this folder": (["page", "."], ".: this is a folder"),
    "nothing between quotes": (["notebook", ""], ".: this is a folder"),
    "a name that is too long": (["page", "m" * 5000 + ".toml"], "File name too long"),
    "a name that no text is": (["page", "m\udcff.toml"], "cannot be shown, rename it"),
    "a folder named like a lesson": (["page", "folder.toml"], "folder.toml: this is a folder"),
    "a picture": (["page", "picture.png"], "picture.png: this is neither a lesson nor a notebook"),
    "a lesson as notebook": (["notebook", "monday.ipynb"], "this is a notebook already"),
    "broken toml": (["page", "torn.toml"], "torn.toml, line 2: the file is no TOML"),
    "broken lesson": (["notebook", "unknown.toml"], "[[rounds]] 1, skill: there is no skill"),
    "broken json": (["page", "broken.ipynb"], "broken.ipynb: the file is no notebook"),
    "broken call": (["page", "call.ipynb"], "call.ipynb, cell 1, skill: there is no skill"),
    "broken settings": (["page", "week/monday.toml"], "class.toml, vocabulary: 'fr' is not"),
    "another ending": (["page", "monday.toml", "-o", "a.pdf"], "a.pdf: that is the name of"),
    "another ending still": (["notebook", "monday.toml", "-o", "a"], "a: that is the name of"),
    "a folder as target": (["page", "monday.toml", "-o", "week.html"], "week.html: that is a f"),
    "no such folder": (["page", "monday.toml", "-o", "no/a.html"], "there is no folder no"),
    "a file as folder": (["page", "monday.toml", "-o", "picture.png/a.html"], "there is no folder"),
    "no lesson": (["page"], "arguments are required"),
    "no such command": (["pages", "monday.toml"], "invalid choice"),
    "no such option": (["page", "monday.toml", "--fast"], "unrecognized arguments"),
    "nothing to print": (["sheet", "empty.toml"], "empty.toml: there is nothing to print"),
    "a sheet of no paper": (["sheet", "monday.toml", "--paper", "a5"], "invalid choice"),
    "a sheet as a page": (["sheet", "monday.toml", "-o", "a.html"], "a.html: that is the name of"),
    "a seed that is none": (["sheet", "monday.toml", "--seed", "-3"], "seed: -3 is not allowed"),
    "a shelf that is not there": (["serve", "nowhere"], "nowhere: there is no such folder"),
    "a port that is none": (["serve", ".", "--port", "70000"], "there is no port 70000"),
    "no file after -o": (["page", "monday.toml", "-o"], "expected one argument"),
}


@pytest.mark.parametrize(("typed", "sentence"), BAD.values(), ids=BAD)
def test_bad_input_gets_one_sentence_and_writes_nothing(folder, capsys, typed, sentence):
    (folder / "week").mkdir()
    (folder / "week.html").mkdir()
    (folder / "folder.toml").mkdir()
    (folder / "picture.png").write_bytes(b"\x89PNG")
    (folder / "torn.toml").write_text('title = "Monday"\nseed =\n', "utf-8")
    (folder / "broken.ipynb").write_text('{"cells": [', "utf-8")
    (folder / "week" / "class.toml").write_text('vocabulary = "fr"\n', "utf-8")
    write_lesson(MONDAY, folder / "week" / "monday.toml")
    unknown = 'title = "Monday"\nseed = 7\n[[rounds]]\nskill = "time.read_minds"\n'
    (folder / "unknown.toml").write_text(unknown, "utf-8")
    (folder / "empty.toml").write_text('title = "Empty"\nseed = 7\n', "utf-8")
    call = nbformat.v4.new_code_cell('play("time.read_minds", seed=1)')
    nbformat.write(nbformat.v4.new_notebook(cells=[call]), folder / "call.ipynb")
    before = contents(folder)
    try:
        status = main(typed)
    except SystemExit as end:  # what argparse itself refuses
        status = end.code
    said = capsys.readouterr()
    assert status == 2
    assert said.out == ""
    assert sentence in said.err
    assert len(said.err.splitlines()) == 1
    assert contents(folder) == before


def test_a_folder_that_may_not_be_written_in_gets_one_sentence(folder, capsys, monkeypatch):
    def refuse(path, _content):
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr(writing, "atomic_write", refuse)
    assert main(["page", "monday.toml"]) == 2
    assert capsys.readouterr().err == (
        "monday.html: it cannot be written (Permission denied); "
        "choose a folder that you may write in.\n"
    )
    assert list(contents(folder)) == ["monday.toml"]


def test_a_failing_cell_is_reported_and_nothing_is_written(folder, capfd):
    cells = [nbformat.v4.new_code_cell(source) for source in ("price = 57", "prise")]
    nbformat.write(nbformat.v4.new_notebook(cells=cells), folder / "mine.ipynb")
    before = contents(folder)
    assert main(["page", "mine.ipynb"]) == 2
    assert capfd.readouterr().err.splitlines() == [
        "mine.ipynb: it holds code of its own (first in cell 1), so it is run now.",
        (
            "mine.ipynb, cell 2: NameError: name 'prise' is not defined; "
            "mend the cell or take it out, then try again."
        ),
    ]
    assert contents(folder) == before


def test_control_c_ends_it_quietly(folder, capsys, monkeypatch):
    def interrupted(*_given, **_named):
        raise KeyboardInterrupt

    monkeypatch.setattr(page, "page_of_file", interrupted)
    assert main(["page", "monday.toml"]) == 130
    assert capsys.readouterr() == ("", "")
    assert list(contents(folder)) == ["monday.toml"]


def test_help_names_every_command(capsys):
    with pytest.raises(SystemExit) as end:
        main(["--help"])
    assert end.value.code == 0
    said = capsys.readouterr().out
    assert all(f"\n    {name} " in said for name in COMMANDS)


def test_nothing_typed_shows_the_same_help(capsys):
    with pytest.raises(SystemExit):
        main(["--help"])
    helped = capsys.readouterr().out
    assert main([]) == 0
    assert capsys.readouterr().out == helped


@pytest.mark.usefixtures("folder")
@pytest.mark.parametrize("name", COMMANDS)
def test_help_of_a_command_has_an_example_that_works(capsys, monkeypatch, name):
    # The shelf stays open until it is closed; that it opens is for its own tests to see.
    monkeypatch.setattr(command, "serve", lambda folder, **_: f"The shelf of {folder} is closed.")
    with pytest.raises(SystemExit) as end:
        main([name, "--help"])
    assert end.value.code == 0
    (example,) = [line for line in capsys.readouterr().out.splitlines() if "Example:" in line]
    write_lesson(TUESDAY, "tuesday.toml")
    typed = shlex.split(example.removeprefix("Example: manipulatives "))
    assert main(typed) == 0


def test_it_runs_as_a_module_too(folder):
    done = subprocess.run(
        [sys.executable, "-m", "manipulatives", "page", "monday.toml"],
        cwd=folder,
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert (folder / "monday.html").is_file()


@pytest.mark.usefixtures("folder")
def test_a_page_loads_nothing_that_it_does_not_need():
    code = (
        "import sys; from manipulatives.cli import main; main(['page', 'monday.toml']); "
        "print(sorted({'matplotlib', 'pandas', 'nbclient', 'voila'} & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, timeout=120, check=True
    )
    assert done.stdout.splitlines()[-1] == "[]"


def test_skills_are_listed_and_filtered(capsys):
    assert main(["skills", "--json"]) == 0
    listed = json.loads(capsys.readouterr().out)
    assert [one["id"] for one in listed] == list(SKILLS)
    assert all({"id", "strand", "standards"} <= set(one) for one in listed)
    assert main(["skills", "--standard", "2.MD.7", "--strand", "time", "quarter", "--json"]) == 0
    assert [one["id"] for one in json.loads(capsys.readouterr().out)] == ["time.read_quarter"]
    assert main(["skills", "half past"]) == 0
    assert capsys.readouterr().out.startswith("time.read_half  Read to the half hour\n")
    assert main(["skills", "abacus"]) == 0
    assert capsys.readouterr().out == "No skill is like that.\n"
    assert main(["skills", "--standard", "9.Z.9"]) == 2
    assert "there is no standard like '9.Z.9'" in capsys.readouterr().err


def test_tasks_are_shown_with_all_their_data(capsys):
    asked = ["tasks", "time.later", "--seed", "7", "--count", "2", "--set", "by=20,35"]
    assert main([*asked, "--json"]) == 0
    tasks = json.loads(capsys.readouterr().out)
    made = make_tasks("time.later", seed=7, count=2, options={"by": [20, 35]}, twins=0)
    assert tasks == [task.to_data() for task in made]
    assert main(asked) == 0
    text = capsys.readouterr().out
    for task in made:
        assert f"{task.prompt}  {task.answer}" in text
        assert all(step.say in text for step in task.steps)
        assert all(mistake.teacher in text for mistake in task.mistakes)


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        (["tasks", "time.latter"], "did you mean 'time.later'"),
        (["tasks", "time.later", "--set", "by=7"], "by: 7 is not allowed"),
        (["tasks", "time.read_hour", "--count", "13"], "has only 12 different tasks"),
    ],
)
def test_tasks_that_there_are_not_are_refused(typed, says, capsys):
    assert main(typed) == 2
    assert says in capsys.readouterr().err


def test_an_option_is_typed_with_a_sign_between(capsys):
    with pytest.raises(SystemExit) as left:
        main(["tasks", "time.later", "--set", "by"])
    assert left.value.code == 2
    assert "An option is typed like by=5" in capsys.readouterr().err


def test_wrong_answers_are_explained_and_the_next_sum_is_named(capsys):
    """63 - 29 = 46 is the smaller digit from the larger (VanLehn, 1990, as others quote it)."""
    typed = ["why", "63 - 29 = 46", "81 - 38 = 57", "52 - 17 = 45"]
    assert main([*typed, "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert set(found) >= {"explanations", "unexplained", "next_items"}
    assert max(one["explains"] for one in found["explanations"]) == 3
    assert main(typed) == 0
    assert "may" in capsys.readouterr().out.lower()
    assert main(["why", "63 - 29"]) == 2


def test_a_plain_command_loads_neither_jupyter_nor_drawing():
    code = (
        "import sys; from manipulatives.cli import main; main(['skills', '--json']); "
        "loud = {'nbformat', 'traitlets', 'anywidget', 'matplotlib'} & set(sys.modules); "
        "sys.exit(str(loud) if loud else 0)"
    )
    assert (
        subprocess.run([sys.executable, "-c", code], check=False, capture_output=True).stderr == b""
    )
