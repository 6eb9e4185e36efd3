"""The column board in Python: what it takes, what it refuses, what it says of itself."""

from __future__ import annotations

import pytest
import traitlets

from manipulatives.lessons.strands.sums.columns.methods import METHODS, worked_steps
from manipulatives.maths.columns.written_sum import new_sum
from manipulatives.widgets.columns import ColumnBoard


def test_a_board_is_made_from_a_line():
    board = ColumnBoard("402 - 178")
    assert board.sum == new_sum("-", [402, 178])
    assert (board.result, board.answer, board.done) == (224, None, False)


def test_a_board_alone_has_a_sum():
    assert ColumnBoard().sum["numbers"] == [47, 38]
    assert ColumnBoard(method="expanded columns").sum["form"] == "parts"


@pytest.mark.parametrize("method", METHODS)
def test_the_steps_follow_from_sum_method_and_words(method):
    board = ColumnBoard("83 - 47", method=method, vocabulary="uk", term="borrow")
    expected = worked_steps("-", [83, 47], method, vocabulary="uk", term="borrow")
    assert board.steps == expected
    board.mode, board.step = "show", len(expected)
    assert (board.answer, board.done) == (36, True)


@pytest.mark.parametrize(
    "change",
    [
        {"method": "known facts"},
        {"vocabulary": "uk"},
        {"term": "borrow"},
        {"sum": {"operation": "-", "numbers": [52, 17]}},
    ],
)
def test_when_they_change_the_steps_begin_anew(change):
    board = ColumnBoard("83 - 47")
    before, board.step = board.steps, 3
    for name, value in change.items():
        setattr(board, name, value)
    assert board.step == 0
    assert board.steps != before
    words = {"vocabulary": board.vocabulary, "term": board.term}
    assert board.steps == worked_steps("-", board.sum["numbers"], board.method, **words)


def test_what_pupils_write_does_not_stop_the_showing():
    board = ColumnBoard("83 - 47")
    board.step = 3
    board.write("ones", 6)
    assert board.step == 3


def test_a_method_with_another_form_writes_the_sum_anew():
    board = ColumnBoard("47 + 38")
    board.write("ones", 5)
    board.method = "number line jumps"
    assert board.sum == new_sum("+", [47, 38], "line")


def test_showing_leaves_what_pupils_wrote_as_it_was():
    board = ColumnBoard("47 + 38")
    board.write("ones", 3)
    board.mode, board.step = "show", 3
    assert (board.answer, board.facts["ones"]) == (5, 5)
    board.mode = "try"
    assert (board.answer, board.facts["ones_right"]) == (3, False)


def test_a_digit_is_written_and_rubbed_out():
    board = ColumnBoard("47 + 38")
    board.write("ones", 5)
    board.write("tens", 8)
    assert (board.answer, board.done) == (85, True)
    board.write("tens", None)
    assert board.answer == 5
    with pytest.raises(ValueError, match="has the columns ones, tens, hundreds, not 'thousands'"):
        board.write("thousands", 1)
    with pytest.raises(traitlets.TraitError, match="The answer has a digit or None"):
        board.write("ones", 15)
    assert board.answer == 5


@pytest.mark.parametrize(
    ("traits", "problem"),
    [
        ({"sum": {"operation": "+", "numbers": [1]}}, "A sum with"),
        ({"sum": {"operation": "-", "numbers": [1, 2]}}, "it is larger"),
        ({"sum": 3}, "dict"),
        ({"method": "equal additions"}, "equal additions"),
        ({"term": "trade"}, "trade"),
        ({"mode": "play"}, "play"),
        ({"vocabulary": "fr"}, "fr"),
        ({"step": 99}, "There are"),
        ({"step": -1}, "There are"),
        ({"steps": [{"say": "x"}]}, "A step is a dict"),
        ({"headings": "yes"}, "headings"),
    ],
)
def test_a_wrong_trait_is_refused_and_changes_nothing(traits, problem):
    board = ColumnBoard("47 + 38", method="known facts")
    before = board.get_state()
    for name, value in traits.items():
        with pytest.raises(traitlets.TraitError, match=problem):
            setattr(board, name, value)
    assert board.get_state() == before


def test_a_board_says_what_it_takes():
    with pytest.raises(TypeError, match=r"has no 'metod'\. It takes text, blocks, buttons"):
        ColumnBoard("47 + 38", metod="known facts")
    with pytest.raises(TypeError, match="text or a sum, not both"):
        ColumnBoard("47 + 38", sum={"operation": "+", "numbers": [1, 2]})
    with pytest.raises(ValueError, match="is no sum"):
        ColumnBoard("47 * 38")


def test_whoever_listens_hears_of_what_is_written():
    board, heard = ColumnBoard("47 + 38"), []
    stop = board.on_change(lambda it: heard.append(it.answer))
    board.write("ones", 5)
    stop()
    stop()
    board.write("tens", 8)
    assert heard == [5]


def test_a_still_shows_what_is_on_the_board():
    board = ColumnBoard("402 - 178")
    board.mode, board.step = "show", 4
    picture = board.still()
    assert picture.startswith("<svg")
    assert ">12</text>" in picture
    assert ">224<" not in picture
    assert board._repr_mimebundle_()[0]["image/svg+xml"] == picture


def test_every_trait_says_what_it_is_for():
    for name, trait in ColumnBoard.class_own_traits().items():
        assert name.startswith("_") or trait.help, name
