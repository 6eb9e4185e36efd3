from __future__ import annotations

import argparse
import os
import re

import pytest

from manipulatives.commands import (
    check as commands_check,
)
from manipulatives.commands import (
    make as commands_make,
)
from manipulatives.commands import (
    new as commands_new,
)
from manipulatives.commands.shared.progress import Progress
from manipulatives.lessons.files import read_lesson, write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.notebook.writing import notebook_of
from manipulatives.shelf import make as building
from manipulatives.shelf.outputs import notebook_text

FERRY = Lesson("The ferry", seed=41, rounds=(Round("time.read_hour", seed=5, tasks=2),))
FORMS = [".html", ".ipynb", ".key.pdf", ".script.pdf", ".sheet.pdf"]


def run(command, *typed):
    parser = argparse.ArgumentParser()
    command.arguments(parser)
    return command.run(parser.parse_args([str(word) for word in typed]))


@pytest.fixture
def ferry(tmp_path):
    path = tmp_path / "ferry.toml"
    write_lesson(FERRY, path)
    return path


def test_new_begins_a_lesson_with_a_round_for_every_skill_and_strand(tmp_path):
    path = tmp_path / "monday.toml"
    said = run(
        commands_new, "time.read_half", "Counting", "--title", "Monday", "--seed", 7, "-o", path
    )
    lesson = read_lesson(path)
    assert (lesson.title, lesson.seed) == ("Monday", 7)
    assert lesson.rounds[0].skill == "time.read_half"
    assert lesson.rounds[1].skill.startswith("counting.")
    assert lesson.rounds[1].skill in said


def test_new_shares_minutes_out_among_the_rounds():
    lesson = commands_new.new_lesson(["time.read_hour", "time.set_hands"], seed=7, minutes=9)
    # They usually take 2 and 4 minutes.
    assert [one.seconds for one in lesson.rounds] == [180, 360]


def test_a_strand_given_twice_means_two_of_its_skills():
    lesson = commands_new.new_lesson(["time", "time", "time"], seed=7)
    assert len({one.skill for one in lesson.rounds}) == 3


def test_new_begins_no_lesson_that_a_notebook_of_its_name_would_hide(ferry):
    ferry.unlink()
    ferry.with_suffix(".ipynb").write_bytes(notebook_text(notebook_of(FERRY)))
    with pytest.raises(LessonProblem, match=r"its notebook .*ferry\.ipynb is there"):
        run(commands_new, "time", "-o", ferry, "--force")
    assert not ferry.exists()


def test_new_replaces_nothing(ferry):
    before = ferry.read_bytes()
    with pytest.raises(LessonProblem, match="already"):
        run(commands_new, "time", "-o", ferry)
    assert ferry.read_bytes() == before


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        (["time.read_hours"], "time.read_hour"),
        (["baking"], "no skill 'baking'"),
        (["time", "--date", "Monday"], "2026-03-02"),
        (["time", "--title", ""], None),
    ],
)
def test_new_says_what_is_wrong(tmp_path, typed, says):
    path = tmp_path / "x.toml"
    if says is None:
        run(commands_new, *typed, "-o", path)
        assert read_lesson(path).title == "Time"
        return
    with pytest.raises(LessonProblem, match=says):
        run(commands_new, *typed, "-o", path)
    assert not path.exists()


def test_make_makes_everything_and_then_has_nothing_to_do(ferry, tmp_path):
    into = tmp_path / "ready"
    assert run(commands_make, ferry, "--into", into) == "5 files written."
    assert sorted(path.name for path in into.iterdir()) == [f"ferry{end}" for end in FORMS]
    assert run(commands_make, ferry, "--into", into) == (
        "Nothing was to do; 1 lesson was there already."
    )
    assert run(commands_make, ferry, "--into", into, "--again") == "4 files written."


def test_make_makes_again_what_is_older_than_its_lesson_or_missing(ferry, tmp_path):
    run(commands_make, ferry)
    (tmp_path / "ferry.key.pdf").unlink()
    assert run(commands_make, ferry) == "1 file written."
    (tmp_path / "ferry.ipynb").unlink()
    write_lesson(Lesson("The other ferry", seed=41, rounds=FERRY.rounds), ferry)
    later = (tmp_path / "ferry.html").stat().st_mtime + 5
    os.utime(ferry, (later, later))
    assert run(commands_make, ferry) == "5 files written."
    assert "The other ferry" in (tmp_path / "ferry.html").read_text()


def test_make_takes_the_notebook_once_it_is_there_even_when_the_lesson_file_is_newer(
    ferry, tmp_path, capsys
):
    run(commands_make, ferry)
    notebook = (tmp_path / "ferry.ipynb").read_bytes()
    write_lesson(Lesson("The other ferry", seed=41, rounds=FERRY.rounds), ferry)
    later = (tmp_path / "ferry.html").stat().st_mtime + 5
    os.utime(ferry, (later, later))
    capsys.readouterr()
    assert run(commands_make, ferry) == "4 files written."
    assert capsys.readouterr().err == (
        f"{ferry}: its notebook {tmp_path / 'ferry.ipynb'} is there, so that is the lesson.\n"
    )
    assert (tmp_path / "ferry.ipynb").read_bytes() == notebook
    assert "The other ferry" not in (tmp_path / "ferry.html").read_text()


def test_make_uses_later_changes_of_the_notebook(ferry, tmp_path):
    run(commands_make, ferry)
    notebook = tmp_path / "ferry.ipynb"
    notebook.write_text(notebook.read_text().replace("The ferry", "The late ferry"))
    later = (tmp_path / "ferry.html").stat().st_mtime + 5
    os.utime(notebook, (later, later))
    assert run(commands_make, ferry) == "4 files written."
    assert "The late ferry" in (tmp_path / "ferry.html").read_text()


def test_make_does_not_replace_a_file_that_somebody_wrote_by_hand(ferry, tmp_path):
    run(commands_make, ferry)
    notebook = tmp_path / "ferry.ipynb"
    text = notebook.read_text().replace("# The ferry", "# The ferry\\n\\nTake a whistle along.")
    notebook.write_text(text)
    os.utime(notebook, (1, 1))
    run(commands_make, ferry, "--again")
    assert notebook.read_text() == text
    assert "Take a whistle along." in (tmp_path / "ferry.html").read_text()


def test_make_makes_the_other_lessons_when_one_is_broken_and_reports_every_problem(tmp_path):
    write_lesson(FERRY, tmp_path / "a.toml")
    (tmp_path / "b.toml").write_text("title = \n")
    (tmp_path / "c.toml").write_text('title = "C"\nseed = 1\n[[rounds]]\nskill = "time.x"\n')
    with pytest.raises(LessonProblem) as told:
        run(commands_make, tmp_path)
    lines = str(told.value).splitlines()
    assert len(lines) == 2
    assert "b.toml" in lines[0] + lines[1]
    assert "c.toml, [[rounds]] 1, skill" in lines[0] + lines[1]
    assert (tmp_path / "a.key.pdf").is_file()


def test_several_processes_make_what_one_makes(tmp_path):
    lessons = []
    for number in range(5):
        path = tmp_path / f"day-{number}.toml"
        rounds = (Round("time.read_hour", seed=number, tasks=2),)
        write_lesson(Lesson(f"Day {number}", seed=number, rounds=rounds), path)
        lessons.append(path)
    one, two = tmp_path / "one", tmp_path / "two"
    for folder, processes in ((one, 1), (two, 2)):
        folder.mkdir()
        made = [*building.make_all(lessons, into=folder, processes=processes)]
        assert {each.lesson for each in made} == {*lessons}
        assert [each.problem for each in made] == [None] * 5
    names = sorted(path.name for path in one.iterdir())
    assert len(names) == 25
    assert names == sorted(path.name for path in two.iterdir())
    pages = [name for name in names if not name.endswith(".pdf")]
    assert [(one / name).read_bytes() for name in pages] == [
        (two / name).read_bytes() for name in pages
    ]


def test_two_lessons_of_one_name_are_not_made_into_one_folder(tmp_path, ferry):
    other = tmp_path / "more"
    other.mkdir()
    write_lesson(FERRY, other / "ferry.toml")
    with pytest.raises(LessonProblem, match="into the same files"):
        run(commands_make, ferry, other / "ferry.toml", "--into", tmp_path / "ready")


def test_check_says_how_long_a_lesson_is_and_what_could_be_better(tmp_path):
    rounds = (Round("time.read_half", seed=1), Round("time.read_hour", seed=2))
    write_lesson(Lesson("Upside down", seed=1, rounds=rounds), tmp_path / "down.toml")
    lines = run(commands_check, tmp_path / "down.toml").splitlines()
    assert lines[0] == "Upside down: 2 rounds, 4 min 30 s. It can be made."
    assert any("Move round 2 before it." in line for line in lines[1:])
    assert any(
        "1 min 30 s more" in line
        for line in run(commands_check, tmp_path / "down.toml", "--minutes", 3).splitlines()
    )


def test_check_reports_every_problem_with_file_place_and_remedy(tmp_path):
    path = tmp_path / "broken.toml"
    path.write_text(
        'title = ""\nseed = 1\n'
        '[[rounds]]\nskill = "time.read_hours"\n'
        '[[rounds]]\nskill = "time.read_hour"\ntasks = 0\n'
        '[[rounds]]\nskill = "time.read_hour"\ninstead = ["9:17"]\n'
    )
    with pytest.raises(LessonProblem) as told:
        run(commands_check, path)
    lines = str(told.value).splitlines()
    assert len(lines) == 4
    assert all(line.startswith(f"{path}, ") and "; " in line for line in lines)
    places = ["title", "[[rounds]] 1, skill", "[[rounds]] 2, tasks", "[[rounds]] 3, task 1"]
    for line, place in zip(lines, places, strict=True):
        assert place in line


def test_check_reports_every_problem_of_a_notebook_and_runs_nothing(tmp_path):
    notebook = notebook_of(Lesson("The ferry", seed=41, rounds=FERRY.rounds * 2))
    notebook.cells[3].source = 'play("time.read_hour", tasks=99, seed=5)'
    notebook.cells[5].source = 'play("time.no_such", tasks=2, seed=5)'
    path = tmp_path / "ferry.ipynb"
    path.write_bytes(notebook_text(notebook))
    with pytest.raises(LessonProblem) as told:
        run(commands_check, path)
    lines = str(told.value).splitlines()
    assert [re.search(r"cell \d", line)[0] for line in lines] == ["cell 4", "cell 6"]


@pytest.mark.parametrize("content", ["", "title = 1", "rounds = 5", "[[rounds]]\nx = 1", "\x00"])
def test_check_survives_any_file(tmp_path, content):
    path = tmp_path / "any.toml"
    path.write_text(content)
    with pytest.raises(LessonProblem, match=r"any\.toml"):
        run(commands_check, path)


def test_a_progress_bar_is_shown_on_a_terminal_during_long_work(monkeypatch):
    class Terminal:
        written = ""

        def isatty(self):
            return True

        def write(self, text):
            self.written += text

        def flush(self):
            pass

    now = [0.0]
    monkeypatch.setattr("time.monotonic", lambda: now[0])
    terminal = Terminal()
    with Progress(4, "lessons", terminal) as progress:
        now[0] = 0.5
        progress.step()
        assert terminal.written == ""
        now[0] = 3.0
        progress.step()
        assert "2 of 4 lessons, about 3 s left" in terminal.written
