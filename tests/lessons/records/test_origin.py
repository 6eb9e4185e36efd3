"""A record that is read twice counts once."""

from __future__ import annotations

from itertools import permutations

import pytest

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.records.origin import (
    Origin,
    check_class_id,
    lesson_id,
    new_id,
    without_duplicates,
)
from manipulatives.lessons.records.results import Result, Results

LESSON = lesson_id("Market morning", 7)


def results(record, revision, code="K7"):
    origin = record and Origin(record, revision, "0.1.0", None, LESSON)
    return Results("Market morning", 7, code, "2026-11-25", origin=origin)


def test_of_a_record_the_last_revision_counts_in_whatever_order_they_are_read():
    mine, yours = new_id(), new_id()
    records = [results(mine, 1), results(mine, 3), results(mine, 2), results(yours, 1)]
    for order in permutations(records):
        once = without_duplicates(order)
        assert sorted((one.origin.id, one.origin.revision) for one in once) == sorted(
            [(mine, 3), (yours, 1)]
        )


def test_the_same_file_read_twice_counts_once():
    one = results(new_id(), 2)
    assert without_duplicates([one, one, results(one.origin.id, 2)]) == [one]


def test_of_version_1_only_equal_files_are_the_same():
    task = Result("time.read_hour", "What time is it?", ("4:00",), 1, True)
    one, other = results(None, 0), results(None, 0, code="K8")
    longer = Results("Market morning", 7, "K7", "2026-11-25", (task,))
    assert without_duplicates([one, other, longer, one, longer]) == [one, other, longer]


def test_a_lesson_id_depends_on_title_and_seed():
    ids = {lesson_id(title, seed) for title in ("a", "b", "a\n1", "x" * 500) for seed in (1, 11)}
    assert len(ids) == 8
    assert lesson_id("\ud800", 1) == lesson_id("\ud800", 1)


@pytest.mark.parametrize("value", ["", "-a", "a b", "é", "x" * 41, None, 7])
def test_what_is_no_id_of_a_class_is_refused(value):
    with pytest.raises(LessonProblem, match="no id of a class"):
        check_class_id(value)
