from __future__ import annotations

import copy
import dataclasses
import json

import pytest

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.lessons.tasks.task import Mistake, Step, Task

[TASK] = make_tasks("time.read_five_minutes", seed=90213, count=1, options={"answer": "choice"})
FIELDS = [
    "skill", "kind", "prompt", "say", "manipulative", "start", "ask", "goal", "answer", "spoken",
    "steps", "mistakes", "twins",
]  # fmt: skip


def with_change(change):
    data = TASK.to_data()
    change(data)
    return data


def test_a_task_comes_back_from_json_as_it_was():
    assert Task.from_data(json.loads(json.dumps(TASK.to_data()))) == TASK


def test_the_data_have_the_agreed_fields():
    data = TASK.to_data()
    assert list(data) == FIELDS
    fields = {name for step in data["steps"] for name in step}
    assert fields == {"say", "class", "show", "answer", "numbers"}
    assert list(data["steps"][0]) == ["say", "class", "show", "numbers"]
    assert all(
        list(mistake) == ["rule", "when", "answer", "pupil", "teacher", "numbers"]
        for mistake in data["mistakes"]
    )


def test_changing_the_data_does_not_change_the_task():
    before = copy.deepcopy(TASK)
    data = TASK.to_data()
    data["start"]["dial"]["hour"] = 0
    data["goal"].append("x")
    data["ask"]["choices"].clear()
    data["steps"][0]["show"]["sector"] = "x"
    data["mistakes"][0]["when"].clear()
    assert before == TASK


def test_a_task_cannot_be_changed():
    with pytest.raises(dataclasses.FrozenInstanceError):
        TASK.answer = "5:35"


@pytest.mark.parametrize(
    ("change", "place", "says"),
    [
        (lambda d: d.pop("goal"), "", "the field 'goal' is missing"),
        (lambda d: d.update(gaol=1), "", "no field 'gaol' (did you mean 'goal'?)"),
        (lambda d: d.update(prompt=""), "prompt", "has 0 letters"),
        (lambda d: d.update(prompt=" ".join("abcdefghijk")), "prompt", "has 11 words"),
        (lambda d: d.update(prompt="one\ntwo"), "prompt", "line break"),
        (lambda d: d.update(prompt=7), "prompt", "7 is not text"),
        (lambda d: d.update(answer=435), "answer", "435 is not text"),
        (lambda d: d.update(start=[]), "start", "[] is no table"),
        (lambda d: d.update(start={"dial": {1: 2}}), "start", "no plain data"),
        (lambda d: d.update(start={"dial": (1,)}), "start", "no plain data"),
        (lambda d: d.update(start={"snap": float("nan")}), "start", "no plain data"),
        (lambda d: d.update(ask={}), "ask, by", "None is not allowed"),
        (lambda d: d.update(ask={"by": "voice"}), "ask, by", "'voice' is not allowed"),
        (lambda d: d.update(ask={"by": "keypad"}), "ask", "the field 'form' is missing"),
        (lambda d: d.update(ask={"by": "keypad", "form": "date"}), "ask, form", "'date'"),
        (lambda d: d.update(ask={"by": "choice", "choices": "4:35"}), "ask, choices", "no list"),
        (lambda d: d.update(ask={"by": "choice", "choices": ["1:00"]}), "ask, choices", "among"),
        (lambda d: d["ask"]["choices"].append(d["answer"]), "ask, choices", "different"),
        (lambda d: d.update(ask={"by": "manipulative", "x": 1}), "ask", "no field 'x'"),
        (lambda d: d.update(goal=["=", "answer"]), "goal", "is no predicate"),
        (lambda d: d.update(steps={}), "steps", "{} is no list"),
        (lambda d: d["steps"].append(1), "steps 4", "1 is no table"),
        (lambda d: d["steps"][1].update(say=""), "steps 2, say", "has 0 letters"),
        (lambda d: d["steps"][1].update(show=1), "steps 2, show", "1 is no table"),
        (lambda d: d["steps"][1].update(answer=4), "steps 2, answer", "4 is not text"),
        (lambda d: d["steps"][1].update(numbers=4), "steps 2, numbers", "4 is no table"),
        (lambda d: d["steps"][1].update(numbers={"to": 4}), "steps 2, numbers", 'add an "act"'),
        (lambda d: d["mistakes"][0].update(when=[]), "mistakes 1, when", "is no predicate"),
        (lambda d: d["mistakes"][0].update(pupil="no " * 11), "mistakes 1, pupil", "11 words"),
        (lambda d: d["mistakes"][0].pop("answer"), "mistakes 1", "'answer' is missing"),
    ],
)
def test_data_that_are_no_task_are_refused_with_the_place(change, place, says):
    with pytest.raises(LessonProblem) as caught:
        Task.from_data(with_change(change))
    assert caught.value.place == place
    assert says in str(caught.value)


@pytest.mark.parametrize("data", [None, 1, "task", [], [TASK.to_data()]])
def test_what_is_no_table_is_no_task(data):
    with pytest.raises(LessonProblem, match="is no table of fields"):
        Task.from_data(data)


def test_the_constructor_checks_as_the_reader_does():
    with pytest.raises(LessonProblem, match=r"^say: '' has 0 letters"):
        Step(say="")
    with pytest.raises(LessonProblem, match=r"^when: "):
        Mistake("hour_only", ["="], "Look again.", "May have left out the minutes.")
    with pytest.raises(LessonProblem, match=r"^prompt: "):
        dataclasses.replace(TASK, prompt="")


def test_the_numbers_of_steps_and_mistakes_travel_with_the_task_unless_they_are_left_out():
    count = {"act": "count", "from": 10, "by": 10, "to": 40}
    slip = {"act": "count", "from": 10, "by": 10, "to": 50}
    step = Step(say="Count on in tens.", numbers=count)
    mistake = Mistake("one_beyond", ["=", "answer", "50"], "Look again.", "May have …", "50", slip)
    task = dataclasses.replace(TASK, steps=(step,), mistakes=(mistake,))
    task = dataclasses.replace(task, twins=(task,))
    data = json.loads(json.dumps(task.to_data()))
    assert data["steps"][0]["numbers"] == data["twins"][0]["steps"][0]["numbers"] == count
    assert data["mistakes"][0]["numbers"] == slip
    assert Task.from_data(data) == task
    assert "numbers" not in json.dumps(task.to_data(numbers=False))
