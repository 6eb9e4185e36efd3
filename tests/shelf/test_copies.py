from __future__ import annotations

import nbformat
import pytest
from nbformat.v4 import new_code_cell

from manipulatives.lessons import editing
from manipulatives.lessons.editing import seed_by_chance
from manipulatives.lessons.files import read_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.notebook.reading import lesson_of, open_notebook
from manipulatives.notebook.writing import notebook_of
from manipulatives.shelf.copies import renumber
from manipulatives.shelf.items import Shelf

BELL = """\
# The bell tower, for Thursday
title = "The bell tower"
seed = 4

[[rounds]]
skill = "time.read_hour"
seed = 77 # the first

[[ rounds ]] # copied and pasted
skill = "time.read_hour"
title = "Once more [seed = 1]"
seed = 77 # the second
[rounds.options]
answer = "choice"

[[rounds]]
skill = "time.read_half"
seed = 77
"""


@pytest.fixture
def bell(tmp_path):
    (tmp_path / "bell.toml").write_text(BELL)
    return tmp_path / "bell.toml"


def item_at(path):
    return Shelf(path.parent).find(path.stem)


def test_a_round_is_a_copy_when_skill_and_seed_were_there_before(bell):
    assert item_at(bell).copies == ((2, 1),)


def test_other_numbers_change_one_number_in_a_lesson_file_and_nothing_else(bell):
    seed = renumber(item_at(bell), "2")
    assert bell.read_text() == BELL.replace("seed = 77 # the second", f"seed = {seed} # the second")
    assert item_at(bell).copies == ()


def test_new_numbers_are_not_those_of_any_other_round(bell, monkeypatch):
    monkeypatch.setattr(editing.secrets, "token_hex", lambda _: "the same each time")
    drawn = seed_by_chance()
    bell.write_text(BELL.replace("seed = 77\n", f"seed = {drawn}\n"))
    again = renumber(item_at(bell), "2")
    assert again == seed_by_chance({drawn})
    assert again != drawn


def test_a_lesson_file_on_one_line_is_written_again(bell):
    bell.write_text(
        'title = "Bell"\nseed = 4\n'
        'rounds = [{skill = "time.later", seed = 5}, {skill = "time.later", seed = 5}]\n'
    )
    seed = renumber(item_at(bell), "2")
    assert [each.seed for each in read_lesson(bell).rounds] == [5, seed]


def test_a_seed_in_a_text_of_several_lines_is_no_seed(bell):
    bell.write_text(BELL.replace('title = "Once more [seed = 1]"', 'title = """\\\nseed = 3"""'))
    seed = renumber(item_at(bell), "2")
    assert [each.seed for each in read_lesson(bell).rounds] == [77, seed, 77]
    assert read_lesson(bell).rounds[1].title == "seed = 3"


def test_other_numbers_change_one_word_of_a_notebook(tmp_path):
    path = tmp_path / "bell.ipynb"
    twice = Round("time.later", seed=5, tasks=3, options={"by": 20})
    notebook = notebook_of(Lesson("Bell", seed=1, rounds=(twice, twice)))
    notebook.cells[-1].outputs = [nbformat.v4.new_output("stream", text="stale")]
    nbformat.write(notebook, path)
    seed = renumber(item_at(path), "2")
    after = open_notebook(path)
    sources = [cell.source for cell in notebook.cells]
    sources[-1] = sources[-1].replace("seed=5", f"seed={seed}")
    assert [cell.source for cell in after.cells] == sources
    assert after.cells[-1].outputs == []
    assert after.metadata == notebook.metadata
    assert [each.seed for each in lesson_of(after).rounds] == [5, seed]


def test_a_call_beside_other_letters_is_changed_at_the_right_place(tmp_path):
    path = tmp_path / "bell.ipynb"
    notebook = notebook_of(Lesson("Bell", seed=1, rounds=(Round("time.later", seed=5),)))
    notebook.cells.append(
        new_code_cell(
            'play(\n    "time.later", title="Fünf \x0c nach 5 & größer", seed=5)\n# seed=5'
        )
    )
    notebook.cells[-1].source = notebook.cells[-1].source.replace("\x0c ", "")
    nbformat.write(notebook, path)
    seed = renumber(item_at(path), "2")
    assert open_notebook(path).cells[-1].source == (
        f'play(\n    "time.later", title="Fünf nach 5 & größer", seed={seed})\n# seed=5'
    )


def test_one_round_shown_twice_is_not_changed_and_the_error_says_what_to_do(tmp_path):
    path = tmp_path / "bell.ipynb"
    notebook = notebook_of(Lesson("Bell", seed=1))
    notebook.cells += [
        new_code_cell('later = play("time.later", seed=5)\nlater'),
        new_code_cell("later"),
    ]
    nbformat.write(notebook, path)
    before = path.read_bytes()
    item = item_at(path)
    assert item.copies == ((2, 1),)
    with pytest.raises(LessonProblem, match="give that round another seed"):
        renumber(item, "2")
    assert path.read_bytes() == before


@pytest.mark.parametrize("which", ["1", "3", "9", "-1", "", "2 ", "zwei"])
def test_only_a_copy_gets_other_numbers(bell, which):
    with pytest.raises(LessonProblem, match="numbers of its own"):
        renumber(item_at(bell), which)
    assert bell.read_text() == BELL


def test_a_file_that_cannot_be_written_is_not_damaged(bell, monkeypatch):
    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(OSError, match="No space"):
        renumber(item_at(bell), "2")
    assert bell.read_text() == BELL
    assert [path.name for path in bell.parent.iterdir()] == ["bell.toml"]
