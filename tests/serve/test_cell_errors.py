from __future__ import annotations

from manipulatives.serve.board.cell_errors import MAX_REASON_LENGTH, CellErrors


def said(kind, value="", number=3):
    errors = CellErrors(5, timeout_s=30)
    return errors.sentence(number, {"ename": kind, "evalue": value}), errors.summary


def test_a_cell_that_failed_is_named_with_its_reason():
    sentence, summary = said("ValueError", "give \x1b[31mone\x1b[0m\nor two.")
    assert sentence == "Cell 3 of 5 stopped: ValueError: give one or two. The other cells went on."
    assert summary == "Cell 3 stopped; the reason stands in its place. The rest works."


def test_a_cell_that_was_stopped_says_after_how_long():
    sentence, _ = said("KeyboardInterrupt")
    assert sentence.startswith("Cell 3 of 5 was not done after 30 seconds and was stopped.")


def test_a_reason_without_words_is_named_by_its_kind():
    assert said("AssertionError")[0].startswith("Cell 3 of 5 stopped: AssertionError. The")


def test_a_long_reason_is_cut_off():
    sentence, _ = said("ValueError", "no " * 500)
    assert len(sentence) < MAX_REASON_LENGTH + 80
    assert "\N{HORIZONTAL ELLIPSIS}" in sentence


def test_several_cell_errors_are_one_sentence_and_none_are_no_sentence():
    errors = CellErrors(9, timeout_s=30)
    assert errors.summary == ""
    for number in (2, 5, 5, 7):
        errors.sentence(number, {"ename": "ValueError", "evalue": ""})
    assert errors.summary.startswith("Cells 2, 5 and 7 stopped; the reasons stand in")


def test_the_cell_that_ended_python_is_distinguished_from_those_after_it():
    errors = CellErrors(4, timeout_s=30)
    dead = {"ename": "DeadKernelError", "evalue": "Kernel died"}
    assert (
        errors.sentence(2, dead) == "Cell 2 of 4 ended Python, so the cells after it did not run."
    )
    assert errors.sentence(3, dead) == "Cell 3 of 4 did not run, because Python has stopped."
    assert errors.summary == "Cell 2 ended Python; what came before it works."
