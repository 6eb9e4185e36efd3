"""Written addition as worked steps, column by column from the ones.

Counting on starts from the largest digit of the column, the upper one when two are equal, then
takes the others downwards and the carry last.
"""

from __future__ import annotations

from collections.abc import Callable

from manipulatives.lessons.strands.counting.steps import count_of, listed
from manipulatives.lessons.strands.sums.acts import added, bridged, regrouped, started, stayed
from manipulatives.lessons.strands.sums.columns.working import Said, Working
from manipulatives.maths.columns.written_sum import BASE, NAMES, Sum, digits_of, result_of
from manipulatives.words.columns import full_ten, some, title


def adding_steps(sum_: Sum, way: str, term: str, vocabulary: str) -> Working:
    """Return how numbers are added in columns.

    Args:
        sum_: the sum, with nothing written to it.
        way: how a column is added: "counting on", "known facts" or "bridging ten".
        term: the class's word for regrouping.
        vocabulary: "us" or "uk".

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> for step in adding_steps(new_sum("+", [47, 38]), "counting on", "regroup", "us").steps:
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
        for said in before:
            working.step(said, column)
        carry, digit = divmod(total, BASE)
        write = [["answer", column, digit]]
        if carry:
            working.step(last, column)
            last = _regrouped(total, column, term)
            write.append(["marks", column + 1, carry])
        working.step(last, column, write)
    return working.finish(vocabulary)


def _regrouped(total: int, column: int, term: str) -> Said:
    carry, digit = divmod(total, BASE)
    return Said(
        full_ten(total, column, term),
        f"{some(carry, column + 1)} and {some(digit, column)}",
        regrouped(NAMES[column], NAMES[column + 1], count=total - digit, left=digit, gives=carry),
    )


def adding_parts(sum_: Sum, term: str, vocabulary: str) -> Working:
    """Return how numbers are added in expanded columns: all parts apart, then together.

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> for step in adding_parts(new_sum("+", [47, 38], "parts"), "regroup", "us").steps:
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
            digit, worth = values[0] // BASE**column, values[0]
            numbers = {"act": "digit", "digit": digit, "worth": worth}
            said = Said(f"{title(column)}: only {worth}.", f"{worth}", numbers)
        else:
            question = f"{title(column)}: what is {' + '.join(map(str, values))}?"
            said = Said(question, _running(values), added(values))
        working.step(said, column, write)
    parts.reverse()
    digits = digits_of(result_of(sum_))
    write = [["answer", column, digit] for column, digit in enumerate(digits)]
    if len(parts) > 1:
        question = f"Add the parts: {' + '.join(map(str, parts))}."
        working.step(Said(question, _running(parts), added(parts)), None, write)
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


def _column(digits: list[int], carry: int, column: int, way: str) -> list[Said]:
    name = title(column)
    if not digits:
        numbers = {"act": "digit", "digit": carry, "carried": True}
        return [Said(f"{name}: only the carried {carry}.", f"{carry}", numbers)]
    if len(digits) == 1 and not carry:
        [digit] = digits
        return [Said(f"{name}: only the {digit}.", f"{digit}", {"act": "digit", "digit": digit})]
    return _WAYS[way](digits, carry, name)


def from_largest(digits: list[int]) -> list[int]:
    """Return digits as they are counted on: the first of the largest, then the others downwards.

    Example:
        >>> from_largest([3, 8, 5, 8])
        [8, 3, 5, 8]
    """
    largest = digits.index(max(digits))
    return [digits[largest], *digits[:largest], *digits[largest + 1 :]]


def _counting_on(digits: list[int], carry: int, name: str) -> list[Said]:
    total, *others = from_largest(digits)
    which = "the largest digit, " if digits.count(total) == 1 else "the upper "
    say = f"{name}: start at {which if others else ''}{total}."
    said = [Said(say, f"{total}", started(total))]
    for digit in others:
        said.append(_counted(f"Count on {digit}.", total, digit))
        total += digit
    if carry:
        last = _counted(f"Count on the carried {carry}.", total, carry)
        said.append(last._replace(numbers={**last.numbers, "carried": True}))
    return said


def _counted(say: str, start: int, count: int) -> Said:
    """Return a step in which numbers are said; where none are, the start, which stays."""
    numbers = range(start + 1, start + count + 1)
    if not numbers:
        return Said(say, f"{start}", stayed(start))
    return Said(say, listed(numbers), count_of(numbers, 1, start))


def _known_facts(digits: list[int], carry: int, name: str) -> list[Said]:
    total, *others = digits
    said: list[Said] = []
    for digit in others:
        said.append(_asked(name, total, digit, first=not said))
        total += digit
    return said + _carried(total, carry, name, first=not said)


def _bridging_ten(digits: list[int], carry: int, name: str) -> list[Said]:
    total, *others = from_largest(digits)
    said: list[Said] = []
    for digit in others:
        if bridges(total, digit):
            need = -total % BASE
            say = f"{total} + {digit}. {total} needs {need} to make {total + need}."
            said.append(_by_way_of(say if said else f"{name}: {say}", total, digit))
        else:
            said.append(_asked(name, total, digit, first=not said))
        total += digit
    return said + _carried(total, carry, name, first=not said, bridging=True)


def bridges(total: int, digit: int) -> bool:
    """Return whether adding a digit goes past a full ten, from and to beyond it.

    Example:
        >>> bridges(8, 7), bridges(8, 2), bridges(10, 7)
        (True, False, False)
    """
    return total % BASE > 0 and total % BASE + digit > BASE


def _by_way_of(say: str, total: int, digit: int) -> Said:
    need = -total % BASE
    ten, rest = total + need, digit - need
    answer = f"{total} + {need} = {ten}, {ten} + {rest} = {ten + rest}"
    return Said(say, answer, bridged(total, need, rest))


def _asked(name: str, total: int, digit: int, *, first: bool) -> Said:
    begin = f"{name}: what" if first else "What"
    say = f"{begin} is {total} + {digit}?"
    return Said(say, f"{total + digit}", added([total, digit]))


def _carried(
    total: int, carry: int, name: str, *, first: bool, bridging: bool = False
) -> list[Said]:
    if not carry:
        return []
    begin = f"{name}: add" if first else "Add"
    if bridging and bridges(total, carry):
        say = f"{begin} the carried {carry}: {total} needs {-total % BASE}."
        said = _by_way_of(say, total, carry)
    else:
        say = f"{begin} the carried {carry} to {total}."
        said = Said(say, f"{total + carry}", added([total, carry]))
    return [said._replace(numbers={**said.numbers, "carried": True})]


_WAYS: dict[str, Callable[[list[int], int, str], list[Said]]] = {
    "counting on": _counting_on,
    "known facts": _known_facts,
    "bridging ten": _bridging_ten,
}
