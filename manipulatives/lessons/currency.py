"""The currency of a lesson: one that the kit knows, or coins described by a teacher."""

from __future__ import annotations

from collections.abc import Mapping
from copy import deepcopy
from typing import Any

from manipulatives.lessons.checks import check_one_of, check_plain
from manipulatives.lessons.problem import LessonProblem, quoted
from manipulatives.maths.money.coins import CURRENCIES, Currency, currency

Money = str | dict[str, Any]
"""Such as "usd", or a table as `maths.money.coins.currency` takes it."""


def check_money(value: object) -> Money:
    """Check a currency and return it.

    Raises:
        LessonProblem: there is no such currency, or the table does not describe one.

    Example:
        >>> check_money("gbp")
        'gbp'
        >>> check_money({"name": "tokens"})
        Traceback (most recent call last):
        manipulatives.lessons.problem.LessonProblem: ...
    """
    if not isinstance(value, Mapping):
        return check_one_of(value, tuple(CURRENCIES))
    check_plain(dict(value))
    try:
        currency(value)
    except ValueError as problem:
        raise LessonProblem(
            str(problem).rstrip("."), remedy="see coins of your own in the guide change-a-lesson"
        ) from None
    return deepcopy(dict(value))


def money_of(value: object) -> str | Currency:
    """Return the currency in a hashable form: its name, or the one that a table describes.

    Raises:
        LessonProblem: there is no such currency, or the table does not describe one.

    Example:
        >>> money_of("gbp")
        'gbp'
    """
    checked = check_money(value)
    return checked if isinstance(checked, str) else currency(checked)


def called(value: Money) -> str:
    """Return the name of a currency, for the random seed of its tasks.

    Example:
        >>> called("gbp")
        'gbp'
    """
    return value if isinstance(value, str) else quoted(currency(value).name)
