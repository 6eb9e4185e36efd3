"""What pupils hand in is read, and whatever cannot be right is refused in one clear sentence."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.records.origin import Origin
from manipulatives.lessons.records.results import read_results

TASK = {
    "skill": "money.make_amount",
    "prompt": "The bun costs 4¢. Pay it.",
    "given": [{"total": 5}, {"total": 4}],
    "tries": 2,
    "right": True,
    "rule": None,
    "hints": 1,
    "twin": False,
}
FILE = {
    "format": "manipulatives results",
    "version": 1,
    "title": "Market morning",
    "seed": 7,
    "code": "K7",
    "date": "2026-11-25",
    "tasks": [TASK],
}


def read(**changes):
    return read_results(json.dumps({**FILE, **changes}))


def test_a_results_file_is_read():
    results = read()
    assert (results.title, results.seed, results.code, results.date) == (
        "Market morning",
        7,
        "K7",
        "2026-11-25",
    )
    [task] = results.tasks
    assert task.given == ({"total": 5}, {"total": 4})
    assert (task.tries, task.right, task.rule, task.hints, task.twin) == (2, True, None, 1, False)


ORIGIN = {
    "id": "0f" * 16,
    "revision": 3,
    "kit": "0.1.0",
    "class": "owls",
    "lesson": "0123456789abcdef",
}
TASK_2 = {
    **TASK,
    "round": 1,
    "options": {"answer": "tray"},
    "asked": {"start": {"snap": 5}, "goal": ["=", "total", 4], "answer": "4¢"},
}
FILE_2 = {**FILE, **ORIGIN, "version": 2, "tasks": [TASK_2]}


def test_version_2_says_what_was_asked_and_where_it_comes_from():
    results = read_results(json.dumps(FILE_2))
    [task] = results.tasks
    assert (task.round, task.options, task.asked) == (
        1,
        {"answer": "tray"},
        {"start": {"snap": 5}, "goal": ["=", "total", 4], "answer": "4¢"},
    )
    assert results.origin == Origin("0f" * 16, 3, "0.1.0", "owls", "0123456789abcdef")


@pytest.mark.parametrize("name", [*ORIGIN, "title", "tasks"])
def test_a_field_of_version_2_that_is_missing_is_named(name):
    short = {key: value for key, value in FILE_2.items() if key != name}
    with pytest.raises(LessonProblem, match=name):
        read_results(json.dumps(short))


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("id", "0F" * 16),
        ("id", None),
        ("revision", 0),
        ("revision", True),
        ("kit", ""),
        ("kit", "../kit"),
        ("class", "a b"),
        ("class", ""),
        ("lesson", "7"),
    ],
)
def test_an_origin_that_cannot_be_is_refused_with_its_field(name, value):
    with pytest.raises(LessonProblem, match=name):
        read_results(json.dumps({**FILE_2, name: value}))


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("round", 0),
        ("round", None),
        ("options", None),
        ("options", [1]),
        ("asked", None),
        ("asked", {}),
        ("asked", {"start": {}, "goal": 4, "answer": "4"}),
        ("asked", {"start": {}, "goal": ["=", "total", 4], "answer": 4}),
    ],
)
def test_what_was_asked_is_checked_in_version_2(name, value):
    with pytest.raises(LessonProblem, match=f"task 1, {name}"):
        read_results(json.dumps({**FILE_2, "tasks": [{**TASK_2, name: value}]}))


def test_version_1_may_not_hold_fields_of_version_2():
    with pytest.raises(LessonProblem, match="round"):
        read(tasks=[TASK_2])


def test_a_pupil_need_not_have_a_code():
    assert read(code=None).code is None


@pytest.mark.parametrize(
    "text",
    ["", "{", "[]", "7", "null", '{"format": "manipulatives session"}', json.dumps(FILE)[:80]],
)
def test_what_is_no_results_file_is_refused(text):
    with pytest.raises(LessonProblem, match="no results file"):
        read_results(text)


@pytest.mark.parametrize(
    ("change", "place"),
    [
        ({"version": 3}, "version"),
        ({"version": 0}, "version"),
        ({"version": True}, "version"),
        ({"title": ""}, "title"),
        ({"title": "two\nlines"}, "title"),
        ({"seed": -1}, "seed"),
        ({"seed": "7"}, "seed"),
        ({"code": "a b"}, "code"),
        ({"code": "ABCDEFGHI"}, "code"),
        ({"code": 7}, "code"),
        ({"date": "2026-13-01"}, "date"),
        ({"date": "20261125"}, "date"),
        ({"date": None}, "date"),
        ({"tasks": {}}, "tasks"),
        ({"tasks": [3]}, "task 1"),
        ({"name": "x"}, "name"),
    ],
)
def test_a_wrong_field_is_refused_with_its_name(change, place):
    with pytest.raises(LessonProblem, match=place):
        read(**change)


@pytest.mark.parametrize(
    "change",
    [
        {"tries": 3},
        {"tries": -1},
        {"given": "4"},
        {"given": [4, 5]},
        {"given": [{"total": []}, {"total": 4}]},
        {"right": 1},
        {"right": "yes"},
        {"twin": None},
        {"rule": 4},
        {"hints": 1.5},
        {"prompt": None},
        {"pupil": "a name"},
    ],
)
def test_a_wrong_task_is_refused_with_its_number(change):
    with pytest.raises(LessonProblem, match="task 1"):
        read(tasks=[{**TASK, **change}])


@pytest.mark.parametrize("name", [name for name in FILE if name not in ("format", "version")])
def test_a_field_that_is_missing_is_named(name):
    short = {key: value for key, value in FILE.items() if key != name}
    with pytest.raises(LessonProblem, match=name):
        read_results(json.dumps(short))


def test_a_file_far_too_long_is_not_even_parsed():
    with pytest.raises(LessonProblem, match="too long"):
        read_results("[" * 2_000_001)


ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
    lambda part: st.lists(part) | st.dictionaries(st.text(), part),
    max_leaves=8,
)


@given(st.dictionaries(st.sampled_from([*FILE, *TASK]), ANYTHING), st.booleans())
def test_nothing_that_comes_is_an_accident(change, in_task):
    changed = {**FILE, "tasks": [{**TASK, **change}]} if in_task else {**FILE, **change}
    try:
        results = read_results(json.dumps(changed))
    except LessonProblem:
        return
    assert all(len(task.given) == task.tries for task in results.tasks)
