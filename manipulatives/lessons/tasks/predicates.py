"""Goals and foreseen mistakes as data: small predicates on flat facts.

A predicate is a nested list, so that it travels as JSON and means the same in the browser, where
`widgets/shared/state/predicate.js` evaluates it:

    ["=", fact, value]   ["!=", fact, value]   ["in", fact, [value, …]]
    ["<" or "<=" or ">" or ">=", fact, whole number]
    ["and", predicate, …]   ["or", predicate, …]   ["not", predicate]

Nothing is converted: true is not 1 and 1 is not "1". A missing fact counts as None. `["and"]` is
true and `["or"]` is false.
"""

from __future__ import annotations

import operator
from typing import TYPE_CHECKING, Any, TypeAlias

from manipulatives.lessons.problem import LessonProblem, quoted

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

Fact: TypeAlias = int | str | bool | None
Predicate: TypeAlias = list[Any]

DEEPEST = 20
# Beyond it JavaScript no longer tells neighbouring whole numbers apart.
LARGEST = 2**53 - 1


def holds(predicate: Predicate, facts: Mapping[str, Fact]) -> bool:
    """Return whether a predicate is true of the facts.

    Args:
        predicate: one that `check_predicate` accepts.
        facts: of a manipulative, with the `answer` of the pupil.

    Raises:
        LessonProblem: it is no predicate.

    Example:
        >>> holds(["and", ["=", "meant", 275], ["<=", "lag", 7]], {"meant": 275, "lag": 3})
        True
    """
    match predicate:
        case ["and", *parts]:
            return all(holds(part, facts) for part in parts)
        case ["or", *parts]:
            return any(holds(part, facts) for part in parts)
        case ["not", part]:
            return not holds(part, facts)
        case ["in", str(fact), list(values)]:
            return any(_same(facts.get(fact), value) for value in values)
        case [str(order), str(fact), value] if order in _COMPARE:
            return _COMPARE[order](facts.get(fact), value)
    raise _broken(predicate, "")


def _same(one: object, other: object) -> bool:
    # Python alone would say that True == 1.
    return type(one) is type(other) and one == other


def _ordered(order: Callable[[int, int], bool]) -> Callable[[object, object], bool]:
    def compare(one: object, other: object) -> bool:
        return type(one) is int and type(other) is int and order(one, other)

    return compare


_COMPARE: dict[str, Callable[[object, object], bool]] = {
    "=": _same,
    "!=": lambda one, other: not _same(one, other),
    "<": _ordered(operator.lt),
    "<=": _ordered(operator.le),
    ">": _ordered(operator.gt),
    ">=": _ordered(operator.ge),
}


def check_predicate(predicate: object) -> Predicate:
    """Return the predicate that was given, if it is one.

    Raises:
        LessonProblem: it is no predicate; the message says which part is wrong.

    Example:
        >>> check_predicate(["=", "minutes", 275])
        ['=', 'minutes', 275]
    """
    _check(predicate, place=[])
    return predicate  # type: ignore[return-value]  # it was just checked


def _check(predicate: object, place: list[int]) -> None:
    if len(place) >= DEEPEST:
        raise LessonProblem(
            f"the predicate is nested more than {DEEPEST} deep", remedy="write it flatter"
        )
    match predicate:
        case ["=" | "!=", str(), value] if _is_value(value):
            return
        case ["in", str(), list(values)] if all(_is_value(value) for value in values):
            return
        case ["<" | "<=" | ">" | ">=", str(), number] if _is_number(number):
            return
        case ["and" | "or", *parts]:
            for number, part in enumerate(parts, start=1):
                _check(part, [*place, number])
            return
        case ["not", part]:
            _check(part, [*place, 1])
            return
    raise _broken(predicate, ".".join(map(str, place)))


def _broken(predicate: object, place: str) -> LessonProblem:
    return LessonProblem(
        f"{quoted(predicate)} is no predicate",
        remedy='write ["=", fact, value], ["in", fact, [value]], ["<", fact, whole number], '
        '["and", …], ["or", …] or ["not", …]',
        place=f"part {place} of the predicate" if place else "",
    )


def _is_value(value: object) -> bool:
    return value is None or isinstance(value, (str, bool)) or _is_number(value)


def _is_number(value: object) -> bool:
    return type(value) is int and abs(value) <= LARGEST


def spell_out(predicate: Predicate) -> str:
    """Return a predicate in words and signs, for error messages and tests.

    Raises:
        LessonProblem: it is no predicate.

    Example:
        >>> spell_out(["and", ["=", "minutes", 275], ["=", "half", "am"]])
        'minutes = 275 and half = am'
    """
    return _spell_out(check_predicate(predicate))


def _spell_out(predicate: Predicate) -> str:
    match predicate:
        case [("and" | "or") as word, *parts]:
            if not parts:
                return "always" if word == "and" else "never"
            return f" {word} ".join(_inside(part) for part in parts)
        case ["not", part]:
            return f"not {_inside(part)}"
        case ["in", fact, values]:
            return f"{fact} in {', '.join(_value(value) for value in values)}"
        case _:
            order, fact, value = predicate
            return f"{fact} {order} {_value(value)}"


def _inside(predicate: Predicate) -> str:
    text = _spell_out(predicate)
    several = predicate[0] in {"and", "or"} and len(predicate) > 2  # noqa: PLR2004 - word and part
    return f"({text})" if several else text


def _value(value: Fact) -> str:
    if value is None:
        return "none"
    return str(value).lower() if isinstance(value, bool) else str(value)
