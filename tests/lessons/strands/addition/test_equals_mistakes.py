"""Statements with an equal sign, judged by Python's own arithmetic."""

from __future__ import annotations

import pytest

from manipulatives.lessons.strands.addition.mistakes.equals import RULES, is_true


@pytest.mark.parametrize(
    ("statement", "true"),
    [
        # The four examples of standard 1.OA.D.7, Common Core State Standards (2010), as far as
        # there is a form for them.
        (("turned sum", 5, 2, 2, 5), True),
        (("both sides", 4, 1, 5, 2), False),
        (("sum last", 3, 4, 7, 0), True),
        (("sum first", 3, 4, 8, 0), False),
        (("turned difference", 8, 5, 5, 8), False),
        (("turned difference", 5, 5, 5, 5), True),
    ],
)
def test_a_statement_is_true_when_both_sides_are_worth_the_same(statement, true):
    assert is_true(*statement) is true


def test_a_form_that_there_is_not_is_refused():
    with pytest.raises(KeyError):
        is_true("product", 2, 3, 6, 0)


def test_every_rule_judges_wrongly_or_not_at_all():
    forms = ("sum first", "sum last", "both sides", "turned sum", "turned difference")
    fired = set()
    for form in forms:
        for a in range(1, 10):
            for b in range(1, 10):
                for c in range(1, 20):
                    d = b if form == "both sides" else 0
                    if form.startswith("turned"):
                        c, d = b, a  # noqa: PLW2901 - the same numbers the other way round
                    right = "true" if is_true(form, a, b, c, d) else "false"
                    for rule in RULES:
                        wrong = rule.wrong(form, a, b, c, d)
                        assert wrong in ("true", "false", None)
                        assert wrong != right
                        if wrong:
                            fired.add(rule.id)
    assert fired == {rule.id for rule in RULES}


@pytest.mark.parametrize(
    ("rule", "statement", "judged"),
    [
        ("equal_sum_first", ("sum last", 3, 4, 7, 0), "false"),
        ("equal_stops", ("both sides", 8, 4, 12, 5), "true"),
        ("equal_stops", ("both sides", 8, 4, 7, 5), "false"),
        ("equal_order_counts", ("turned sum", 8, 5, 5, 8), "false"),
        ("equal_order_free", ("turned difference", 8, 5, 5, 8), "true"),
        ("equal_off_by_one", ("sum first", 8, 5, 12, 0), "true"),
        ("equal_off_by_one", ("sum first", 8, 5, 11, 0), None),
    ],
)
def test_what_a_rule_makes_of_a_statement(rule, statement, judged):
    [one] = [each for each in RULES if each.id == rule]
    assert one.wrong(*statement) == judged


def test_pupils_read_one_kind_sentence_of_ten_words_at_most():
    for rule in RULES:
        for sentence in rule.for_pupil().replace("? ", "?|").split("|"):
            assert len(sentence.split()) <= 10
