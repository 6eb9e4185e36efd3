from __future__ import annotations

import pickle

import pytest

from manipulatives.lessons.problem import LessonProblem, at, in_file, quoted


def test_a_problem_is_one_sentence_with_file_place_and_remedy():
    with (
        pytest.raises(LessonProblem) as caught,
        in_file("monday.toml"),
        at("[[rounds]] 2"),
        at("tasks"),
    ):
        raise LessonProblem("0 is not allowed", remedy="give 1 or more")
    problem = caught.value
    assert str(problem) == "monday.toml, [[rounds]] 2, tasks: 0 is not allowed; give 1 or more."
    assert (problem.file, problem.place) == ("monday.toml", "[[rounds]] 2, tasks")
    assert (problem.what, problem.remedy) == ("0 is not allowed", "give 1 or more")


def test_a_problem_of_no_file_begins_with_what_is_wrong():
    assert str(LessonProblem("x is odd", remedy="mend it")) == "x is odd; mend it."


def test_other_errors_pass_as_they_are():
    with pytest.raises(KeyError), in_file("monday.toml"), at("tasks"):
        raise KeyError("tasks")


def test_a_problem_travels_between_processes():
    problem = LessonProblem("x is odd", remedy="mend it", place="line 3", file="monday.toml")
    again = pickle.loads(pickle.dumps(problem))  # noqa: S301 - made in the line itself
    assert str(again) == str(problem)
    assert again.place == "line 3"


@pytest.mark.parametrize("value", ["a\nb", "\x1b[31mred", "x" * 500, ["y" * 500], "\u2028"])
def test_what_was_given_is_quoted_short_and_on_one_line(value):
    text = quoted(value)
    assert len(text) <= 80
    assert text.isprintable()
