"""Written addition as worked steps, column by column from the ones.

Counting on starts from the largest digit of the column, the upper one when two are equal, then
takes the others downwards and the carry last.
"""

from __future__ import annotations

from collections.abc import Callable

from manipulatives.lessons.strands.sums.columns.working import ColumnStep, Working
from manipulatives.maths.columns.written_sum import BASE, Sum, digits_of, result_of
from manipulatives.words.columns import full_ten, some, title

Said = list[tuple[str, str]]
"""Sentences, each with what the class answers."""


def adding_steps(sum_: Sum, way: str, term: str, vocabulary: str) -> list[ColumnStep]:
    """Return how numbers are added in columns.

    Args:
        sum_: the sum, with nothing written to it.
        way: how a column is added: "counting on", "known facts" or "bridging ten".
        term: the class's word for regrouping.
        vocabulary: "us" or "uk".

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> for step in adding_steps(new_sum("+", [47, 38]), "counting on", "regroup", "us"):
        ...     print(step["say"], "-", step["class"])
        Ones: start at the largest digit, 8. - 8
        Count on 7. - 9, 10, 11, 12, 13, 14, 15
        Regroup 10 ones as 1 ten. - 1 ten and 5 ones
        Tens: start at the largest digit, 4. - 4
        Count on 3. - 5, 6, 7
        Count on the carried 1. - 8
        Read it all: 47 + 38. - eighty-five
    """
    working, carry = Working(sum_, term), 0
    for column in range(len(sum_["answer"])):
        digits = column_digits(sum_, column)
        if not digits and not carry:
            break
        total = sum(digits) + carry
        *before, last = _column(digits, carry, column, way)
        for say, answer in before:
            working.step(say, answer, column)
        carry, digit = divmod(total, BASE)
        write = [["answer", column, digit]]
        if carry:
            working.step(*last, column)
            last = (
                full_ten(total, column, term),
                f"{some(carry, column + 1)} and {some(digit, column)}",
            )
            write.append(["marks", column + 1, carry])
        working.step(*last, column, write)
    return working.finish(vocabulary)


def adding_parts(sum_: Sum, term: str, vocabulary: str) -> list[ColumnStep]:
    """Return how numbers are added in expanded columns: all parts apart, then together.

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> for step in adding_parts(new_sum("+", [47, 38], "parts"), "regroup", "us"):
        ...     print(step["say"], "-", step["class"])
        Ones: what is 7 + 8? - 15
        Tens: what is 40 + 30? - 70
        Add the parts: 70 + 15. - 85
        Read it all: 47 + 38. - eighty-five
    """
    working, parts = Working(sum_, term), []
    for column in range(len(sum_["answer"])):
        values = [digit * BASE**column for digit in column_digits(sum_, column)]
        if not values:
            break
        parts.append(sum(values))
        write = [["parts", column, parts[-1]]]
        if len(values) == 1:
            working.step(f"{title(column)}: only {values[0]}.", f"{parts[-1]}", column, write)
            continue
        question = f"{title(column)}: what is {' + '.join(map(str, values))}?"
        working.step(question, _running(values), column, write)
    parts.reverse()
    digits = digits_of(result_of(sum_))
    write = [["answer", column, digit] for column, digit in enumerate(digits)]
    if len(parts) > 1:
        question = f"Add the parts: {' + '.join(map(str, parts))}."
        working.step(question, _running(parts), None, write)
        return working.finish(vocabulary)
    return working.finish(vocabulary, write=True)


def column_digits(sum_: Sum, column: int) -> list[int]:
    """Return the digits of one column, the upper one first; a number without one is left out.

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> column_digits(new_sum("+", [47, 8, 30]), 1)
        [4, 3]
    """
    return [
        number // BASE**column % BASE for number in sum_["numbers"] if column < len(str(number))
    ]


def _running(values: list[int]) -> str:
    """Return what is said when values are added one by one: all that has come out so far."""
    totals = [sum(values[: count + 1]) for count in range(1, len(values))]
    return ", ".join(map(str, totals))


def _column(digits: list[int], carry: int, column: int, way: str) -> Said:
    name = title(column)
    if not digits:
        return [(f"{name}: only the carried {carry}.", f"{carry}")]
    if len(digits) == 1 and not carry:
        return [(f"{name}: only the {digits[0]}.", f"{digits[0]}")]
    return _WAYS[way](digits, carry, name)


def from_largest(digits: list[int]) -> list[int]:
    """Return digits as they are counted on: the first of the largest, then the others downwards.

    Example:
        >>> from_largest([3, 8, 5, 8])
        [8, 3, 5, 8]
    """
    largest = digits.index(max(digits))
    return [digits[largest], *digits[:largest], *digits[largest + 1 :]]


def _counting_on(digits: list[int], carry: int, name: str) -> Said:
    total, *others = from_largest(digits)
    which = "the largest digit, " if digits.count(total) == 1 else "the upper "
    said = [(f"{name}: start at {which if others else ''}{total}.", f"{total}")]
    for digit in others:
        said.append((f"Count on {digit}.", _counted(total, digit)))
        total += digit
    if carry:
        said.append((f"Count on the carried {carry}.", _counted(total, carry)))
    return said


def _counted(start: int, count: int) -> str:
    """Return the numbers that are said; of none the start, which stays."""
    return ", ".join(map(str, range(start + 1, start + count + 1))) or f"{start}"


def _known_facts(digits: list[int], carry: int, name: str) -> Said:
    total, *others = digits
    said: Said = []
    for digit in others:
        said.append((_asked(name, f"{total} + {digit}", first=not said), f"{total + digit}"))
        total += digit
    return said + _carried(total, carry, name, first=not said)


def _bridging_ten(digits: list[int], carry: int, name: str) -> Said:
    total, *others = from_largest(digits)
    said: Said = []
    for digit in others:
        if bridges(total, digit):
            need = -total % BASE
            ten, question = total + need, f"{total} + {digit}. {total} needs {need} to make"
            said.append(
                (
                    f"{name}: {question} {ten}." if not said else f"{question} {ten}.",
                    _by_way_of(total, need, digit),
                ),
            )
        else:
            said.append((_asked(name, f"{total} + {digit}", first=not said), f"{total + digit}"))
        total += digit
    return said + _carried(total, carry, name, first=not said, bridging=True)


def bridges(total: int, digit: int) -> bool:
    """Return whether adding a digit goes past a full ten, from and to beyond it.

    Example:
        >>> bridges(8, 7), bridges(8, 2), bridges(10, 7)
        (True, False, False)
    """
    return total % BASE > 0 and total % BASE + digit > BASE


def _by_way_of(total: int, need: int, digit: int) -> str:
    ten, rest = total + need, digit - need
    return f"{total} + {need} = {ten}, {ten} + {rest} = {ten + rest}"


def _asked(name: str, question: str, *, first: bool) -> str:
    return f"{name}: what is {question}?" if first else f"What is {question}?"


def _carried(total: int, carry: int, name: str, *, first: bool, bridging: bool = False) -> Said:
    if not carry:
        return []
    begin = f"{name}: add" if first else "Add"
    if bridging and bridges(total, carry):
        need = -total % BASE
        say = f"{begin} the carried {carry}: {total} needs {need}."
        return [(say, _by_way_of(total, need, carry))]
    return [(f"{begin} the carried {carry} to {total}.", f"{total + carry}")]


_WAYS: dict[str, Callable[[list[int], int, str], Said]] = {
    "counting on": _counting_on,
    "known facts": _known_facts,
    "bridging ten": _bridging_ten,
}
