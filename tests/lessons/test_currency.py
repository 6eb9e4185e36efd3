"""A teacher's own coins, described in a lesson file, are counted like any others."""

from __future__ import annotations

import pytest

from manipulatives import play
from manipulatives.lessons.files import read_lesson, write_lesson
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.settings import ClassSettings
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.lessons.tasks.playing import is_solved, play_steps
from manipulatives.notebook.reading import lesson_of
from manipulatives.notebook.writing import notebook_of
from manipulatives.outputs.page import page_of
from manipulatives.outputs.sheet import sheet_of

TOKENS = """
title = "Tokens of the fair"
seed = 12

[currency]
name = "fair tokens"

[currency.minor]
sign = "t"
one = "token"
many = "tokens"

[[currency.coins]]
worth = 1
diameter = 18.0
metal = "copper"

[[currency.coins]]
worth = 4
diameter = 21.0
metal = "silver"
sides = 8

[[currency.coins]]
worth = 20
diameter = 25.0
metal = "gold"

[[rounds]]
skill = "money.count_mixed"
tasks = 2
seed = 5

[[rounds]]
skill = "money.make_amount"
tasks = 2
seed = 6
"""


@pytest.fixture
def lesson(tmp_path):
    """A lesson with tokens of the fair for coins."""
    (tmp_path / "fair.toml").write_text(TOKENS, "utf-8")
    return read_lesson(tmp_path / "fair.toml")


def test_a_lesson_file_can_describe_coins(lesson, tmp_path):
    write_lesson(lesson, tmp_path / "again.toml")
    assert read_lesson(tmp_path / "again.toml") == lesson
    assert lesson_of(notebook_of(lesson)) == lesson


def test_the_tasks_are_about_these_coins(lesson):
    for skill in ("money.name_coins", "money.count_like", "money.count_mixed", "money.change"):
        for task in make_tasks(skill, seed=4, count=2, currency=lesson.currency):
            assert is_solved(task, play_steps(task))
            assert {coin["coin"] for coin in task.start["tray"]} <= {"1", "4", "20"}
            assert task.start["currency"]["name"] == "fair tokens"


def test_a_round_a_page_and_a_sheet_are_made_with_them(lesson):
    round_ = play("money.make_amount", tasks=2, seed=6, currency=lesson.currency)
    assert round_.manipulative.currency["name"] == "fair tokens"
    assert page_of(notebook_of(lesson)).startswith("<!doctype html>")
    assert sheet_of(lesson, ClassSettings(), key=True).startswith(b"%PDF")


@pytest.mark.parametrize(
    ("table", "says"),
    [
        ({"name": "tokens"}, "currency: "),
        ("francs", "currency: 'francs' is not allowed"),
        ({"name": "t", "minor": {}, "coins": []}, "currency: "),
    ],
)
def test_invalid_coins_are_refused_with_the_reason(table, says):
    with pytest.raises(LessonProblem, match=f"^{says}"):
        play("money.make_amount", tasks=2, seed=6, currency=table)
