"""What a teacher saved of a lesson is read, and what cannot be right is refused in a sentence."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.records.sessions import read_session

ROUND_1 = {
    "title": "Half past",
    "skill": "time.read_half",
    "seed": 4351,
    "planned": 120,
    "used": 135,
    "mark": "half",
}
TASK = {
    "prompt": "What time is it?",
    "asked": {"start": {"dial": {"hour": 270}}, "goal": ["=", "answer", "4:30"], "answer": "4:30"},
}
ROUND_2 = {**ROUND_1, "round": 1, "options": {"answer": "choice"}, "tasks": [TASK]}
FILE_1 = {
    "format": "manipulatives session",
    "version": 1,
    "title": "Market clock",
    "seed": 4350,
    "date": "2026-11-25",
    "rounds": [ROUND_1],
}
FILE_2 = {
    **FILE_1,
    "version": 2,
    "id": "a0" * 16,
    "revision": 2,
    "kit": "0.1.0",
    "class": None,
    "lesson": "0123456789abcdef",
    "rounds": [ROUND_2],
}


def test_both_versions_are_read():
    old, new = read_session(json.dumps(FILE_1)), read_session(json.dumps(FILE_2))
    assert old.origin is None
    assert new.origin.revision == 2
    assert (old.rounds[0].used, old.rounds[0].mark) == (135, "half")
    assert (old.rounds[0].round, old.rounds[0].tasks) == (None, ())
    assert new.rounds[0].tasks[0].asked["answer"] == "4:30"
    assert new.rounds[0].options == {"answer": "choice"}


def test_a_round_that_did_not_say_what_it_is_about_is_read():
    silent = {**ROUND_2, "skill": "", "seed": None, "planned": None, "mark": None, "tasks": []}
    [one] = read_session(json.dumps({**FILE_2, "date": None, "rounds": [silent]})).rounds
    assert (one.skill, one.seed, one.planned, one.mark) == ("", None, None, None)


@pytest.mark.parametrize("text", ["", "[]", "null", '{"format": "manipulatives results"}'])
def test_what_is_no_session_file_is_refused(text):
    with pytest.raises(LessonProblem, match="no session file"):
        read_session(text)


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("title", ""),
        ("skill", None),
        ("seed", -1),
        ("planned", "long"),
        ("used", -3),
        ("used", 1.5),
        ("mark", "all"),
        ("round", 0),
        ("options", []),
        ("tasks", {}),
        ("tasks", [{"prompt": "x"}]),
        ("tasks", [{**TASK, "asked": {}}]),
        ("child", "a name"),
    ],
)
def test_a_wrong_round_is_refused_with_its_number(name, value):
    with pytest.raises(LessonProblem, match="round 1"):
        read_session(json.dumps({**FILE_2, "rounds": [{**ROUND_2, name: value}]}))


ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
    lambda part: st.lists(part) | st.dictionaries(st.text(), part),
    max_leaves=8,
)


@given(st.dictionaries(st.sampled_from([*FILE_2, *ROUND_2]), ANYTHING), st.booleans())
def test_whatever_comes_is_read_or_refused(change, in_round):
    changed = {**FILE_2, "rounds": [{**ROUND_2, **change}]} if in_round else {**FILE_2, **change}
    try:
        session = read_session(json.dumps(changed))
    except LessonProblem:
        return
    assert all(one.used >= 0 for one in session.rounds)
