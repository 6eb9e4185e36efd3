"""Foreseeable errors of judging whether a statement with an equal sign is true.

That the equal sign is read as "now comes the answer", studies of equations describe (Carpenter,
Franke and Levi 2003, *Thinking Mathematically*, from memory). The rules are our exact statements
of that; the others are common practice of arithmetic, from no published table.

What a wrong answer suggests is a possibility, not a diagnosis: one item is weak evidence.
"""

from __future__ import annotations

from collections.abc import Callable

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.rule import Rule, rules_in
from manipulatives.lessons.tasks.task import Mistake

OnStatement = Rule[Callable[[str, int, int, int, int], str | None]]
"""A rule on a statement: see `is_true`."""

TRUE, FALSE = "true", "false"


def is_true(form: str, a: int, b: int, c: int, d: int) -> bool:
    """Return whether a statement with an equal sign is true.

    Args:
        form: how it is written: "sum first", a + b = c; "sum last", c = a + b; "both sides",
            a + b = c + d; "turned sum", a + b = b + a; "turned difference", a - b = b - a.
        a: the first number of the first sum.
        b: its second number.
        c: what stands on the other side.
        d: what is added there, or 0.

    Raises:
        KeyError: there is no such form.

    Example:
        >>> is_true("both sides", 4, 1, 5, 2), is_true("turned sum", 5, 2, 2, 5)
        (False, True)
    """
    return {
        "sum first": a + b == c,
        "sum last": a + b == c,
        "both sides": a + b == c + d,
        "turned sum": True,
        "turned difference": a == b,
    }[form]


def wants_sum_first(form: str, a: int, b: int, c: int, d: int) -> str | None:
    """Return how a true statement is judged by who expects the answer on the right.

    Example:
        >>> wants_sum_first("sum last", 3, 4, 7, 0), wants_sum_first("sum first", 3, 4, 7, 0)
        ('false', None)
    """
    return FALSE if form == "sum last" and is_true(form, a, b, c, d) else None


def stops_at_number(form: str, a: int, b: int, c: int, d: int) -> str | None:
    """Return how a statement is judged by who stops at the number behind the equal sign.

    Example:
        >>> stops_at_number("both sides", 8, 4, 12, 5), stops_at_number("both sides", 8, 4, 7, 5)
        ('true', 'false')
    """
    if form != "both sides":
        return None
    return _other_than(is_true(form, a, b, c, d), a + b == c)


def order_matters(form: str, _a: int, _b: int, _c: int, _d: int) -> str | None:
    """Return how an addition is judged by who thinks that its order counts.

    Example:
        >>> order_matters("turned sum", 8, 5, 5, 8)
        'false'
    """
    return FALSE if form == "turned sum" else None


def order_is_free(form: str, a: int, b: int, _c: int, _d: int) -> str | None:
    """Return how a subtraction is judged by who thinks that its order does not count.

    Example:
        >>> order_is_free("turned difference", 8, 5, 5, 8)
        'true'
    """
    return TRUE if form == "turned difference" and a != b else None


def off_by_one(form: str, a: int, b: int, c: int, d: int) -> str | None:
    """Return how a statement is judged when one side is counted one too many or too few.

    Example:
        >>> off_by_one("sum first", 8, 5, 12, 0), off_by_one("sum first", 8, 5, 13, 0)
        ('true', 'false')
    """
    if form not in ("sum first", "sum last", "both sides") or abs(a + b - c - d) > 1:
        return None
    return FALSE if is_true(form, a, b, c, d) else TRUE


def _other_than(right: bool, judged: bool) -> str | None:  # noqa: FBT001 - two answers are compared
    if right == judged:
        return None
    return TRUE if judged else FALSE


# Where several rules lead to one answer, the first of them names it.
RULES: tuple[OnStatement, ...] = rules_in(
    FOLDER / "addition",
    equal_sum_first=wants_sum_first,
    equal_stops=stops_at_number,
    equal_order_counts=order_matters,
    equal_order_free=order_is_free,
    equal_off_by_one=off_by_one,
)


def statement_mistakes(
    statement: tuple[str, int, int, int, int], answer: str, vocabulary: str
) -> tuple[Mistake, ...]:
    """Return what can be foreseen to go wrong when a statement is judged.

    Args:
        statement: its form and its numbers; see `is_true`.
        answer: the right answer.
        vocabulary: "us" or "uk".

    Example:
        >>> [made] = statement_mistakes(("sum last", 3, 4, 7, 0), "true", "us")
        >>> made.rule, made.answer
        ('equal_sum_first', 'false')
    """
    form, *numbers = statement
    found = [(rule, rule.wrong(*statement)) for rule in RULES]
    procedure = done_with("judge", form=form, numbers=numbers)
    return foreseen(found, vocabulary, right=answer, numbers=procedure)
