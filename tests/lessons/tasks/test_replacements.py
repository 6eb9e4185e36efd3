"""Tasks that are typed or drawn once more, carried by a lesson and its files."""

from __future__ import annotations

import pytest

from manipulatives.lessons.files import read_lesson, write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.notebook.reading import lesson_of
from manipulatives.notebook.writing import notebook_of
from manipulatives.widgets.round import play

TYPED = ("", "4:35", 2)
BELLS = Round("time.read_five_minutes", seed=5, tasks=4, instead=TYPED)


def answers(**given):
    made = make_tasks("time.read_five_minutes", seed=5, count=4, twins=0, **given)
    return [task.answer for task in made]


def test_what_is_asked_instead_is_carried_by_data_file_and_notebook(tmp_path):
    lesson = Lesson("Bells", seed=1, rounds=(BELLS,))
    assert Round.from_data(BELLS.to_data()) == BELLS
    write_lesson(lesson, tmp_path / "bells.toml")
    assert 'instead = ["", "4:35", 2]' in (tmp_path / "bells.toml").read_text()
    assert read_lesson(tmp_path / "bells.toml") == lesson
    assert lesson_of(notebook_of(lesson)) == lesson


def test_a_round_without_it_says_nothing_of_it():
    assert "instead" not in Round("time.read_hour", seed=5).to_data()


def test_the_other_tasks_are_those_of_the_seed():
    usual, other = answers(), answers(instead=TYPED)
    assert [other[0], other[3]] == [usual[0], usual[3]]
    assert other[1] == "4:35"
    assert other[2] not in usual


def test_the_round_on_the_board_asks_it_too():
    shown = play("time.read_five_minutes", seed=5, tasks=4, instead=[*TYPED])
    assert [task["answer"] for task in shown.tasks] == answers(instead=TYPED)
    # What was answered belongs to these tasks and to no others.
    assert shown.setup["key"] != play("time.read_five_minutes", seed=5, tasks=4).setup["key"]


@pytest.mark.parametrize(
    ("instead", "says"),
    [
        ("4:35", "no list"),
        (["", "", "", "", "4:35"], "for 5 tasks"),
        ([1.5], "whole number"),
        ([True], "whole number"),
        ([-1], "whole number"),
        (["x" * 61], "61 letters"),
        (["4:35\n"], "line break"),
    ],
)
def test_what_cannot_be_is_refused_with_its_place(instead, says):
    with pytest.raises(LessonProblem, match=f"instead.*{says}"):
        Round("time.read_five_minutes", seed=5, tasks=4, instead=instead)


def test_nothing_is_drawn_that_was_asked_already():
    usual = make_tasks("time.read_five_minutes", seed=5, count=4, twins=0)
    asked = {
        make_tasks("time.read_five_minutes", seed=5, count=4, instead=["", times], twins=0)[1].asks
        for times in (1, 2)
    }
    again = make_tasks(
        "time.read_five_minutes", seed=5, count=4, asked=asked, instead=["", 1], twins=0
    )
    assert again[1].asks not in asked
    assert [again[0], *again[2:]] == [usual[0], *usual[2:]]
