"""Mistakes from rules: one for each wrong answer, with every rule that leads to it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Any, TypeVar

from manipulatives.lessons.tasks.predicates import Predicate
from manipulatives.lessons.tasks.rule import Rule, may_have
from manipulatives.lessons.tasks.task import Mistake, Numbers

Wrong = TypeVar("Wrong")


def foreseen(
    found: Iterable[tuple[Rule[Any], Wrong | None]],
    vocabulary: str,
    *,
    right: Wrong | None = None,
    named: Callable[[Wrong], str] = str,
    when: Callable[[Wrong], Predicate] | None = None,
    numbers: Callable[[Rule[Any], Wrong], Numbers] | None = None,
) -> tuple[Mistake, ...]:
    """Return one mistake for every wrong answer; the first rule that leads to it names it.

    Args:
        found: rules, each with the wrong answer it leads to, or None where it does not show.
        vocabulary: "us" or "uk".
        right: the right answer; there is no mistake for it.
        named: returns an answer as it is written.
        when: returns the predicate that an answer was given; by default, that it was typed or
            chosen.
        numbers: returns the procedure by which a rule leads to an answer, as data; see `done_with`.

    Example:
        >>> from manipulatives.lessons.strands.rules import RULES
        >>> rules = (RULES["went_earlier"], RULES["nearest_hour"])
        >>> [made] = foreseen([(rule, 47) for rule in rules], "us", right=12)
        >>> made.rule, made.when
        ('went_earlier', ['=', 'answer', '47'])
    """
    rules: dict[Wrong, list[Rule[Any]]] = {}
    for rule, wrong in found:
        if wrong is not None and wrong != right:
            rules.setdefault(wrong, []).append(rule)
    return tuple(
        mistake(
            leading,
            when(wrong) if when else ["=", "answer", named(wrong)],
            vocabulary,
            answer=named(wrong),
            numbers=numbers(leading[0], wrong) if numbers else None,
        )
        for wrong, leading in rules.items()
    )


def mistake(
    rules: Sequence[Rule[Any]],
    when: Predicate,
    vocabulary: str,
    *,
    answer: str | None = None,
    numbers: Numbers | None = None,
) -> Mistake:
    """Return the mistake to which several rules lead; it has the id of the first of them.

    Example:
        >>> from manipulatives.lessons.strands.rules import RULES
        >>> mistake([RULES["hour_only"]], ["=", "answer", "4:00"], "us", answer="4:00").rule
        'hour_only'
    """
    return Mistake(
        rule=rules[0].id,
        when=when,
        pupil=rules[0].for_pupil(vocabulary),
        teacher=may_have(*rules),
        answer=answer,
        numbers=numbers or {},
    )


def done_with(act: str, **given: Any) -> Callable[[Rule[Any], Any], Numbers]:
    """Return a function that describes as data how a rule leads to a wrong answer.

    Args:
        act: what is done, such as "read".
        given: what it is done to: the numbers of the task.

    Example:
        >>> from manipulatives.lessons.strands.rules import RULES
        >>> done_with("read", at=275)(RULES["hour_only"], 240)
        {'act': 'read', 'at': 275, 'minutes': 'none', 'wrong': 240}
    """

    def numbers(rule: Rule[Any], wrong: object) -> Numbers:
        return {"act": act, **given, **rule.does, "wrong": wrong}

    return numbers
