from __future__ import annotations

from dataclasses import replace

import nbformat
import pytest
from nbformat.v4 import new_code_cell, new_markdown_cell

from manipulatives.lessons.editing import changed, with_task
from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.notebook.reading import lesson_of
from manipulatives.notebook.writing import notebook_of
from manipulatives.shelf.draft import Draft, draft_of_notebook, open_draft

FERRY = Lesson(
    "The ferry",
    seed=41,
    rounds=(
        Round("time.read_hour", seed=5, tasks=3, title="Full hours"),
        Round("time.set_hands", seed=6, tasks=2),
        Round("time.later", seed=7, tasks=2, options={"by": [5, 20]}),
    ),
)
PROGRAM = "import math\n\nprint(math.tau)"


def by_hand():
    """The notebook of the ferry after somebody worked on it."""
    notebook = notebook_of(FERRY)
    notebook.cells.insert(1, new_markdown_cell("For *Thursday*, when it rains."))
    notebook.cells.insert(5, new_code_cell(PROGRAM))
    notebook.cells.append(new_markdown_cell("Ask them to wave."))
    return notebook


def sources(notebook):
    return [cell.source for cell in notebook.cells]


def test_a_lesson_and_its_notebook_are_opened_alike(tmp_path):
    write_lesson(FERRY, tmp_path / "ferry.toml")
    nbformat.write(notebook_of(FERRY), tmp_path / "ferry.ipynb")
    assert open_draft(tmp_path / "ferry.toml").lesson == FERRY
    assert open_draft(tmp_path / "ferry.ipynb").lesson == FERRY


def test_an_unchanged_notebook_is_saved_as_it_was():
    notebook = by_hand()
    assert draft_of_notebook(notebook).notebook() == notebook


def test_a_notebook_is_not_run_when_it_is_opened(tmp_path):
    trap = tmp_path / "sprung"
    notebook = by_hand()
    notebook.cells.append(new_code_cell(f"open({str(trap)!r}, 'w')"))
    draft = draft_of_notebook(notebook)
    draft.moved(0, 2).notebook()
    assert draft.lesson == FERRY
    assert draft.foreign
    assert not trap.exists()


def test_only_other_code_is_foreign():
    assert not draft_of_notebook(notebook_of(FERRY)).foreign
    assert draft_of_notebook(by_hand()).foreign
    assert not Draft.of(FERRY).foreign


def test_other_cells_stay_at_their_places_when_rounds_move():
    before = sources(by_hand())
    after = sources(draft_of_notebook(by_hand()).moved(0, 2).notebook())
    assert len(after) == len(before)
    for text in (before[0], before[1], before[2], PROGRAM, "Ask them to wave."):
        assert after.index(text) == before.index(text)
    assert [
        one.skill for one in lesson_of(draft_of_notebook(by_hand()).moved(0, 2).notebook()).rounds
    ]
    assert after[3:5] == before[6:8]


def test_a_round_that_is_taken_out_leaves_what_stood_around_it():
    after = sources(draft_of_notebook(by_hand()).removed(0).notebook())
    assert after == [*sources(by_hand())[:3], *sources(by_hand())[5:]]


def test_a_changed_round_changes_its_own_cells_only():
    draft = draft_of_notebook(by_hand())
    lesson = changed(draft.lesson, 0, tasks=4, title="O'clock at the ferry")
    before, after = sources(by_hand()), sources(draft.changed(lesson).notebook())
    different = [place for place, text in enumerate(after) if text != before[place]]
    assert different == [3, 4]
    assert lesson_of(draft.changed(lesson).notebook()) == lesson


def test_what_is_typed_goes_into_the_notebook_and_comes_back():
    draft = draft_of_notebook(by_hand())
    lesson = with_task(with_task(draft.lesson, 0, 1, "4:00"), 1, 0, 2)
    notebook = draft.changed(lesson).notebook()
    assert 'instead=["", "4:00"]' in sources(notebook)[4]
    assert lesson_of(notebook) == lesson


def test_rounds_are_added_and_copied_at_their_places():
    draft = draft_of_notebook(by_hand()).copied(0).with_round("time.read_half")
    made = lesson_of(draft.notebook())
    assert made == draft.lesson
    assert [one.skill for one in made.rounds] == [
        "time.read_hour",
        "time.read_hour",
        "time.set_hands",
        "time.later",
        "time.read_half",
    ]
    ids = [cell.id for cell in draft.notebook().cells]
    assert len({*ids}) == len(ids)


@pytest.mark.parametrize(
    "what",
    [{"vocabulary": "uk"}, {"currency": "gbp"}, {"title": "The *other* ferry"}, {"paper": "a4"}],
)
def test_what_is_changed_for_the_whole_lesson_is_changed_in_its_notebook(what):
    draft = draft_of_notebook(by_hand())
    lesson = replace(draft.lesson, **what)
    notebook = draft.changed(lesson).notebook()
    assert lesson_of(notebook) == lesson
    assert PROGRAM in sources(notebook)


def test_the_name_that_somebody_gave_a_call_stays():
    notebook = notebook_of(FERRY)
    notebook.cells[3].source = f"first = {notebook.cells[3].source}\nfirst"
    draft = draft_of_notebook(notebook)
    after = draft.changed(changed(draft.lesson, 0, tasks=4)).notebook()
    assert after.cells[3].source.startswith("first = play(")
    assert after.cells[3].source.endswith("\nfirst")
    assert lesson_of(after).rounds[0].tasks == 4


def test_a_timer_that_somebody_set_in_a_call_stays():
    notebook = notebook_of(FERRY)
    notebook.cells[3].source = notebook.cells[3].source.replace("seed=", 'timer="shown", seed=')
    draft = draft_of_notebook(notebook)
    after = draft.changed(changed(draft.lesson, 0, tasks=4)).notebook()
    assert 'timer="shown"' in after.cells[3].source
    assert lesson_of(after).rounds[0].tasks == 4


def test_outputs_are_cleared_where_the_call_changed():
    notebook = by_hand()
    notebook.metadata["widgets"] = {"old": {}}
    notebook.cells[4].outputs = [nbformat.v4.new_output("stream", text="old")]
    draft = draft_of_notebook(notebook)
    after = draft.changed(changed(draft.lesson, 0, tasks=4)).notebook()
    assert after.cells[4].outputs == []
    assert "widgets" not in after.metadata
