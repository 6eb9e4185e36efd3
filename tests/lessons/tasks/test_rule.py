"""Rules get their sentences from the file of their strand."""

from __future__ import annotations

import pytest

from manipulatives.lessons.tasks.rule import rules_in

TEXT = """
[one_more]
may_have = "counted one too many"
us = "Regroup once more."
uk = "Exchange once more."
does.more = 1

[twice]
may_have = "counted twice"
us = "Count once."
"""


def one_more(number):
    return number + 1


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "mistakes.toml").write_text(TEXT, "utf-8")
    return tmp_path


def test_a_function_has_the_sentences_of_its_name_or_of_the_id_it_is_given(folder):
    first, second = rules_in(folder, one_more, twice=lambda number: 2 * number)
    assert (first.id, first.wrong(3), first.for_pupil("us")) == (
        "one_more",
        4,
        "Regroup once more.",
    )
    assert first.for_pupil("uk") == "Exchange once more."
    assert first.for_teacher == "May have counted one too many."
    assert first.does == {"more": 1}
    assert (second.id, second.wrong(3), second.for_pupil("uk")) == ("twice", 6, "Count once.")
    assert second.does == {}


def test_a_rule_without_sentences_is_refused(folder):
    with pytest.raises(KeyError, match="left_out"):
        rules_in(folder, left_out=one_more)
