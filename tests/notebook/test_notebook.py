from __future__ import annotations

import copy
import datetime as dt
import json
import re
from pathlib import Path

import nbformat
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.files import read_lesson, write_lesson
from manipulatives.lessons.lesson import CURRENCIES, PAPERS, Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.maths.vocabulary import VOCABULARIES
from manipulatives.notebook.calls import Call
from manipulatives.notebook.cells import CodeCell, TextCell, items_of, rounds_of
from manipulatives.notebook.reading import lesson_of, notebook_at, open_notebook
from manipulatives.notebook.writing import notebook_of

SHELF = Path(__file__).parents[2] / "notebooks"

TITLES = st.text(
    st.characters(exclude_categories=["Cs", "Cc", "Cf", "Cn", "Co", "Zl", "Zp", "Zs"])
    | st.sampled_from(" *_`#$<>[]\\&~!|"),
    min_size=1,
    max_size=80,
).filter(lambda text: text.strip() and text.isprintable())
SEEDS = st.integers(0, 999_999_999)


@st.composite
def rounds(draw):
    skill = draw(st.sampled_from(sorted(SKILLS)))
    options = {
        name: draw(st.sampled_from(values))
        for name, values in SKILLS[skill].options.items()
        if draw(st.booleans())
    }
    try:
        return Round(
            skill,
            seed=draw(SEEDS),
            title=draw(st.none() | TITLES | st.just(SKILLS[skill].name)),
            tasks=draw(st.none() | st.integers(1, 8)),
            seconds=draw(st.none() | st.integers(10, 3600)),
            count_aloud=draw(st.none() | st.integers(0, 100)),
            options=options,
        )
    except LessonProblem:
        # There are not so many different tasks with these options.
        assume(False)
        raise


LESSONS = st.builds(
    Lesson,
    title=TITLES,
    seed=SEEDS,
    rounds=st.lists(rounds(), max_size=4).map(tuple),
    date=st.none() | st.dates(),
    vocabulary=st.sampled_from([None, *VOCABULARIES]),
    currency=st.sampled_from([None, *CURRENCIES]),
    paper=st.sampled_from([None, *PAPERS]),
)

MARKET = Lesson(
    "Market clock",
    seed=7,
    rounds=(
        Round("time.read_hour", seed=11, tasks=4),
        Round("time.later", seed=12, title="After the ferry", options={"by": 20}),
        Round("time.read_half", seed=13, seconds=90, count_aloud=5),
    ),
    date=dt.date(2026, 3, 5),
)


def changed(lesson=MARKET):
    """A notebook to be changed by hand."""
    return copy.deepcopy(notebook_of(lesson))


def by_hand(*sources):
    """A notebook of somebody else: text where it begins with a #, code otherwise."""
    cells = [
        new_markdown_cell(source) if source.startswith("#") else new_code_cell(source)
        for source in sources
    ]
    return new_notebook(cells=cells)


@given(LESSONS)
def test_from_lesson_to_notebook_to_lesson_nothing_is_lost(lesson):
    assert lesson_of(notebook_of(lesson)) == lesson


@given(LESSONS)
def test_the_way_through_a_file_loses_nothing_either(tmp_path_factory, lesson):
    path = tmp_path_factory.mktemp("market") / "lesson.ipynb"
    path.write_text(nbformat.writes(notebook_of(lesson)), encoding="utf-8")
    assert lesson_of(open_notebook(path)) == lesson


@given(LESSONS)
def test_the_notebook_is_well_formed_and_the_same_each_time(lesson):
    notebook = notebook_of(lesson)
    nbformat.validate(notebook)
    assert nbformat.writes(notebook) == nbformat.writes(notebook_of(lesson))
    ids = [cell.id for cell in notebook.cells]
    assert len(set(ids)) == len(ids)


@given(LESSONS)
def test_nothing_in_it_is_foreign(lesson):
    items = items_of(notebook_of(lesson))
    assert not [item for item in items if isinstance(item, CodeCell)]
    assert len([item for item in items if isinstance(item, Call)]) == len(lesson.rounds)


def test_it_reads_as_a_teacher_would_write_it():
    assert [cell.source for cell in notebook_of(MARKET).cells] == [
        "# Market clock",
        "from manipulatives import Clock, play",
        "## O'clock",
        'play("time.read_hour", tasks=4, seed=11)',
        "## After the ferry",
        'play("time.later", by=20, seed=12)',
        "## Half past",
        'play("time.read_half", seconds=90, count_aloud=5, seed=13)',
    ]


def test_it_opens_with_the_usual_kernel_and_carries_no_state():
    notebook = notebook_of(MARKET)
    assert notebook.metadata.kernelspec.name == "python3"
    assert "widgets" not in notebook.metadata
    assert not any(cell.get("outputs") for cell in notebook.cells)


def test_its_metadata_hold_what_no_call_says():
    header = {"title": "Market clock", "seed": 7, "date": "2026-03-05"}
    assert notebook_of(MARKET).metadata["manipulatives"] == header


def test_every_call_says_the_vocabulary_that_the_lesson_sets():
    lesson = Lesson("Market", seed=7, rounds=MARKET.rounds, vocabulary="uk")
    calls = [item for item in items_of(notebook_of(lesson)) if isinstance(item, Call)]
    assert [call.kwargs["vocabulary"] for call in calls] == ["uk", "uk", "uk"]


def pairs(notebook):
    """Heading and call of each round, two cells each."""
    return [notebook.cells[start : start + 2] for start in range(2, len(notebook.cells), 2)]


@given(st.permutations(range(3)), st.integers(0, 3))
def test_moving_and_deleting_rounds_changes_no_other_number(order, count):
    notebook = changed()
    parts = pairs(notebook)
    notebook.cells[2:] = [cell for place in order[:count] for cell in parts[place]]
    assert lesson_of(notebook).rounds == tuple(MARKET.rounds[place] for place in order[:count])


def test_a_copied_call_is_another_round_with_the_skills_own_name():
    notebook = changed()
    notebook.cells.insert(6, copy.deepcopy(notebook.cells[5]))
    first, second = lesson_of(notebook).rounds[1:3]
    assert (first.title, second.title) == ("After the ferry", None)
    assert (first.seed, second.seed) == (12, 12)


def test_titles_changed_by_hand_are_the_titles():
    notebook = changed()
    notebook.cells[0].source = "For Miss Ash\n\n# Bell *tower* day"
    notebook.cells[2].source = "## Whole hours\n\nCopy first."
    lesson = lesson_of(notebook)
    assert lesson.title == "Bell tower day"
    assert [each.title for each in lesson.rounds] == ["Whole hours", "After the ferry", None]


def test_a_heading_that_was_deleted_leaves_the_skills_own_name():
    notebook = changed()
    del notebook.cells[4]
    assert lesson_of(notebook).rounds[1].title is None


def test_a_title_in_the_call_counts_where_there_is_no_heading():
    notebook = by_hand('play("time.read_hour", title="Bells", seed=1)')
    assert lesson_of(notebook).rounds[0].title == "Bells"


def test_a_lesson_can_be_read_out_of_any_notebook():
    notebook = by_hand("# My own", "import math", 'play("time.read_hour", seed=1)', "math.pi")
    lesson = lesson_of(notebook)
    assert (lesson.title, lesson.seed) == ("My own", 0)
    assert lesson.rounds == (Round("time.read_hour", seed=1),)


def test_what_has_no_title_is_called_as_the_caller_says():
    assert lesson_of(new_notebook(), title="monday").title == "monday"


def test_one_vocabulary_in_all_calls_is_that_of_the_lesson():
    notebook = by_hand(*[f'play("time.read_hour", vocabulary="uk", seed={n})' for n in (1, 2)])
    assert lesson_of(notebook).vocabulary == "uk"


def test_two_vocabularies_are_no_lesson():
    notebook = changed()
    notebook.cells[5].source = 'play("time.later", vocabulary="uk", seed=12)'
    with pytest.raises(LessonProblem, match="cell 6: its vocabulary is not that of"):
        lesson_of(notebook)


@pytest.mark.parametrize(
    ("source", "sentence"),
    [
        ('play("time.read_hour")', "cell 1: the field 'seed' is missing"),
        ("play(seed=1)", "cell 1: the field 'skill' is missing"),
        ('play("time.read_hours", seed=1)', "cell 1, skill: there is no skill"),
        ('play("time.read_hour", seed=-1)', "cell 1, seed: -1 is not allowed"),
        ('play("time.read_hour", seed=True)', "cell 1, seed: True is not allowed"),
        ('play("time.read_hour", seed=1, tasks=400)', "cell 1, tasks: 400 is not allowed"),
        ('play("time.read_hour", seed=1, bye=20)', "cell 1, options: there is no field 'bye'"),
        ('play("time.read_hour", 3, seed=1)', "cell 1: only the skill may stand without a name"),
        ('play(["time.read_hour"], seed=1)', "cell 1, skill: there is no skill"),
        ('play("time.read_hour", seed=1, vocabulary="fr")', "vocabulary: 'fr' is not allowed"),
    ],
)
def test_a_call_that_cannot_be_is_named_by_its_cell(source, sentence):
    with pytest.raises(LessonProblem, match=re.escape(sentence)):
        lesson_of(by_hand(source))


@pytest.mark.parametrize(
    ("header", "sentence"),
    [
        ({"seed": "7"}, "the notebook's metadata, seed: '7' is not allowed"),
        ({"date": "5 March"}, "the notebook's metadata, date: '5 March' is no date"),
        ({"vocabulary": "fr"}, "the notebook's metadata, vocabulary: 'fr' is not allowed"),
        ({"colour": "red"}, "the notebook's metadata: there is no field 'colour'"),
    ],
)
def test_metadata_that_cannot_be_are_named(header, sentence):
    notebook = changed()
    notebook.metadata["manipulatives"] = header
    with pytest.raises(LessonProblem, match=re.escape(sentence)):
        lesson_of(notebook)


@pytest.mark.parametrize("header", ["Monday", 7, None, ["seed"], {"title": 7}])
def test_metadata_of_another_shape_do_not_matter(header):
    notebook = changed()
    notebook.metadata["manipulatives"] = header
    assert lesson_of(notebook).title == "Market clock"


def test_reading_never_runs_anything(tmp_path):
    trap = tmp_path / "sprung"
    notebook = by_hand("# Trap", f"open({str(trap)!r}, 'w').close()", "raise SystemExit", "!ls")
    path = tmp_path / "trap.ipynb"
    nbformat.write(notebook, path)
    items = items_of(open_notebook(path))
    assert [type(item) for item in items] == [TextCell, CodeCell, CodeCell, CodeCell]
    assert [item.cell for item in items] == [1, 2, 3, 4]
    assert lesson_of(open_notebook(path)).rounds == ()
    assert not trap.exists()


def test_rounds_stand_under_the_last_second_level_heading_before_them():
    notebook = by_hand(
        "# Title\n\n## First\n\n## Second", "Clock()", 'play("time.read_hour", seed=1)'
    )
    assert [words for _, words in rounds_of(items_of(notebook))] == ["Second"]


def test_raw_cells_show_nothing():
    notebook = by_hand("# Title")
    notebook.cells.append(nbformat.v4.new_raw_cell("play('time.read_hour', seed=1)"))
    assert items_of(notebook) == [TextCell(1, "# Title")]


def test_a_notebook_of_an_older_format_is_read(tmp_path):
    cells = [
        {"cell_type": "heading", "level": 1, "source": ["Old ", "market"], "metadata": {}},
        {
            "cell_type": "code",
            "input": ['play("time.read_hour",\n', "     seed=1)"],
            "outputs": [],
            "language": "python",
            "metadata": {},
        },
    ]
    old = {
        "nbformat": 3,
        "nbformat_minor": 0,
        "metadata": {"name": "old"},
        "worksheets": [{"cells": cells, "metadata": {}}],
    }
    path = tmp_path / "old.ipynb"
    path.write_text(json.dumps(old), encoding="utf-8")
    lesson = lesson_of(open_notebook(path))
    assert (lesson.title, lesson.rounds) == ("Old market", (Round("time.read_hour", seed=1),))


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"{",
        b"[]",
        b"7",
        b'"words"',
        b"{}",
        b'{"cells": []}',
        b'{"nbformat": 4, "nbformat_minor": 5, "metadata": {}}',
        b'{"nbformat": 4, "nbformat_minor": 5, "metadata": {}, "cells": {}}',
        b'{"nbformat": 4, "nbformat_minor": 5, "metadata": {}, "cells": [7]}',
        b'{"nbformat": 4, "nbformat_minor": 5, "metadata": [], "cells": []}',
        b'{"nbformat": "4", "nbformat_minor": 5, "metadata": {}, "cells": []}',
        b'{"nbformat": 99, "nbformat_minor": 5, "metadata": {}, "cells": []}',
        b'{"nbformat": -1}',
        b"[" * 100_000,
        b"\xff\xfe",
        b"\x89PNG\r\n",
    ],
)
def test_a_file_that_is_no_notebook_gets_one_sentence(tmp_path, content, capsys):
    path = tmp_path / "broken.ipynb"
    path.write_bytes(content)
    with pytest.raises(LessonProblem) as caught:
        open_notebook(path)
    sentence = str(caught.value)
    assert sentence.startswith(f"{path}: the file is no")
    assert len(sentence.splitlines()) == 1
    assert len(sentence) < 400 + len(str(path))
    assert capsys.readouterr() == ("", "")


@given(st.binary(max_size=200))
def test_no_bytes_at_all_break_the_reader(tmp_path_factory, content):
    path = tmp_path_factory.mktemp("any") / "any.ipynb"
    path.write_bytes(content)
    with pytest.raises(LessonProblem):
        open_notebook(path)


@pytest.mark.parametrize("lesson", sorted(SHELF.glob("*.toml")), ids=lambda path: path.stem)
def test_a_ready_lesson_has_its_notebook_beside_it(lesson):
    notebook = lesson.with_suffix(".ipynb")
    made = nbformat.writes(notebook_of(read_lesson(lesson))) + "\n"
    remedy = f"make it afresh: manipulatives notebook {lesson.name} -o {notebook.name}"
    assert notebook.read_text("utf-8") == made, remedy


def test_free_play_needs_no_kernel_and_asks_nothing():
    items = items_of(open_notebook(SHELF / "free-play-clock.ipynb"))
    calls = [item for item in items if isinstance(item, Call)]
    assert calls
    assert {call.name for call in calls} == {"Clock"}
    assert not [item for item in items if isinstance(item, CodeCell)]


def test_a_lesson_file_is_read_as_its_notebook(tmp_path):
    path = tmp_path / "market.toml"
    write_lesson(MARKET, path)
    assert notebook_at(path) == notebook_of(MARKET)


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("market.pdf", "this is neither a lesson nor a notebook"),
        ("market", "this is neither a lesson nor a notebook"),
        ("", "this is a folder"),
        ("market.toml", "the file cannot be opened (No such file or directory)"),
        ("market.ipynb", "the file cannot be opened (No such file or directory)"),
    ],
)
def test_another_kind_of_file_gets_one_sentence(tmp_path, name, sentence):
    path = tmp_path / name
    with pytest.raises(LessonProblem, match=re.escape(f"{path}: {sentence}")):
        notebook_at(path)
