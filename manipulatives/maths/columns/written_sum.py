"""A written sum: its numbers in columns, and what has been written to it so far.

A **sum** is a dict:

* `operation`: "+" or "-";
* `form`: "columns", with a digit in each square; "parts", with what each digit is worth (40 and 7
  for 47); or "line", worked out with jumps on a number line;
* `numbers`: two to four to be added, or two, the second taken away from the first;
* `answer`: the digits of the answer, `None` where none is written;
* `marks`: what is written beside the columns, a list for each. In an addition that is what was
  carried to the column; in a subtraction what the upper digit has become, where the last number
  counts and those before it are crossed out, as the digit itself is;
* `parts`: with the form "parts" what came out in each column, `None` where nothing is written;
* `jumps`: with the form "line" how far each jump went, one after the other.

All lists of columns begin with the ones. There is one column for each digit of the longest
number, and in an addition one more, whether something is carried into it or not.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any, TypedDict

from manipulatives.data import table
from manipulatives.maths.fields import fields_of
from manipulatives.maths.time.day import is_whole

MINUS = "\u2212"
ADD, SUBTRACT = "+", "-"
OPERATIONS = (ADD, SUBTRACT)
COLUMNS, PARTS, LINE = "columns", "parts", "line"
FORMS = (COLUMNS, PARTS, LINE)
BASE = 10
LARGEST = 9999
MOST_NUMBERS = 4
# Four numbers of four digits are less than 40 000, so an answer has five digits at most.
NAMES: tuple[str, ...] = tuple(table("place_words")["names"])
"""The names of the columns, the ones first."""

_MARKED_BELOW = 10 * BASE ** len(NAMES)
_MOST_JUMPS = 24
_WRITTEN = re.compile(r"\s*([0-9]{1,4})((?:\s*[-+\u2212\u2013]\s*[0-9]{1,4}){1,3})\s*")


class Sum(TypedDict):
    """A written sum as it is stored and sent; see above."""

    operation: str
    form: str
    numbers: list[int]
    answer: list[int | None]
    marks: list[list[int]]
    parts: list[int | None]
    jumps: list[int]


def read_sum(text: str) -> tuple[str, list[int]]:
    """Return the operation and the numbers of a sum that was written in one line.

    Args:
        text: such as "47 + 38", "402 - 178" or "12 + 34 + 56".

    Raises:
        ValueError: it is no such sum.

    Example:
        >>> read_sum("402 - 178")
        ('-', [402, 178])
    """
    found = _WRITTEN.fullmatch(text) if isinstance(text, str) else None
    signs = set(re.findall(r"[-+\u2212\u2013]", found[2])) if found else set()
    if found is None or len(signs) != 1:
        raise ValueError(
            f'{text!r} is no sum. Write it like "47 + 38", "12 + 34 + 56" or "402 - 178", with '
            f"numbers up to {LARGEST}."
        )
    operation = ADD if signs == {ADD} else SUBTRACT
    return operation, check_numbers(operation, [int(each) for each in re.findall("[0-9]+", text)])


def check_numbers(operation: object, numbers: object) -> list[int]:
    """Check the numbers of a sum and return a copy of them.

    Raises:
        ValueError: they cannot.

    Example:
        >>> check_numbers("-", [47, 83])
        Traceback (most recent call last):
            ...
        ValueError: 83 cannot be taken away from 47 here: it is larger.
    """
    if operation not in OPERATIONS:
        raise ValueError(f'An operation is "+" or "-", not {operation!r}.')
    most = MOST_NUMBERS if operation == ADD else 2
    if not isinstance(numbers, (list, tuple)) or not 2 <= len(numbers) <= most:  # noqa: PLR2004 - what a sum needs
        some = f"2 to {most} numbers" if operation == ADD else "2 numbers"
        raise ValueError(f"A sum with {operation} has {some} in a list, not {numbers!r}.")
    for number in numbers:
        if not is_whole(number, LARGEST + 1):
            raise ValueError(
                f"The numbers of a sum are whole, from 0 to {LARGEST}, not {number!r}."
            )
    if operation == SUBTRACT and numbers[0] < numbers[1]:
        raise ValueError(f"{numbers[1]} cannot be taken away from {numbers[0]} here: it is larger.")
    return list(numbers)


def new_sum(operation: str, numbers: Sequence[int], form: str = COLUMNS) -> Sum:
    """Return a sum with nothing written yet.

    Raises:
        ValueError: such a sum cannot be written here.

    Example:
        >>> new_sum("+", [47, 38])["answer"]
        [None, None, None]
    """
    checked = check_numbers(operation, numbers)
    if form not in FORMS:
        raise ValueError(f'A form is "columns", "parts" or "line", not {form!r}.')
    width = width_of(operation, checked)
    return Sum(
        operation=operation,
        form=form,
        numbers=checked,
        answer=[None] * width,
        marks=[[] for _ in range(width)],
        parts=[None] * width if form == PARTS else [],
        jumps=[],
    )


def width_of(operation: str, numbers: Sequence[int]) -> int:
    """Return how many columns a sum has.

    Example:
        >>> width_of("+", [47, 9]), width_of("-", [47, 9])
        (3, 2)
    """
    return max(len(str(number)) for number in numbers) + (operation == ADD)


def digits_of(number: int) -> list[int]:
    """Return the digits of a number, the ones first.

    Example:
        >>> digits_of(402)
        [2, 0, 4]
    """
    return [int(digit) for digit in reversed(str(number))]


def result_of(sum_: Sum) -> int:
    """Return the result of a sum.

    Example:
        >>> result_of(new_sum("-", [402, 178]))
        224
    """
    first, *others = sum_["numbers"]
    return first + sum(others) if sum_["operation"] == ADD else first - sum(others)


def answer_of(sum_: Sum) -> int | None:
    """Return the number in the squares of the answer, or None when they hold no number.

    Squares before the first digit may be empty, others may not.

    Example:
        >>> answer_of(check_sum({"operation": "+", "numbers": [7, 8], "answer": [5, 1]}))
        15
        >>> answer_of(check_sum({"operation": "+", "numbers": [7, 8], "answer": [None, 1]}))
    """
    value = 0
    gone = True
    for digit in reversed(sum_["answer"]):
        if digit is None and not gone:
            return None
        if digit is not None:
            gone = False
            value = value * BASE + digit
    return None if gone else value


def start_of(sum_: Sum) -> int:
    """Return where jumps on the number line begin: at the largest number, or the upper one.

    Example:
        >>> start_of(new_sum("+", [38, 47], "line"))
        47
    """
    return max(sum_["numbers"]) if sum_["operation"] == ADD else sum_["numbers"][0]


def check_sum(given: object) -> Sum:
    """Check a sum and return a copy of it.

    Its digits and marks may be right or wrong.

    Raises:
        ValueError: it is no sum.

    Example:
        >>> check_sum({"operation": "+", "numbers": [47, 38], "answer": [15, None, None]})
        Traceback (most recent call last):
            ...
        ValueError: The answer has a digit or None for each of 3 columns, not [15, None, None].
    """
    optional = ("form", "answer", "marks", "parts", "jumps")
    fields = fields_of(given, "A sum", ("operation", "numbers"), optional)
    fresh = new_sum(fields["operation"], fields["numbers"], fields.get("form", COLUMNS))
    width = len(fresh["answer"])
    if "answer" in fields:
        fresh["answer"] = _row(fields["answer"], width, BASE, "The answer has a digit")
    if "parts" in fields:
        size = width if fresh["form"] == PARTS else 0
        fresh["parts"] = _row(fields["parts"], size, _MARKED_BELOW, "The parts have a number")
    if "marks" in fields:
        fresh["marks"] = _marks(fields["marks"], width)
    if "jumps" in fields:
        fresh["jumps"] = _jumps(fields["jumps"], fresh)
    return fresh


def _row(given: object, width: int, below: int, what: str) -> list[int | None]:
    if (
        isinstance(given, (list, tuple))
        and len(given) == width
        and all(value is None or is_whole(value, below) for value in given)
    ):
        return list(given)
    raise ValueError(f"{what} or None for each of {width} columns, not {given!r}.")


def _marks(given: object, width: int) -> list[list[int]]:
    if (
        isinstance(given, (list, tuple))
        and len(given) == width
        and all(isinstance(marks, (list, tuple)) for marks in given)
        and all(is_whole(mark, _MARKED_BELOW) for marks in given for mark in marks)
    ):
        return [list(marks) for marks in given]
    raise ValueError(f"The marks are a list of numbers for each of {width} columns, not {given!r}.")


def _jumps(given: object, sum_: Sum) -> list[int]:
    far = sum(sum_["numbers"]) - start_of(sum_)
    if (
        sum_["form"] == LINE
        and isinstance(given, (list, tuple))
        and len(given) <= _MOST_JUMPS
        and all(is_whole(jump, far + 1) for jump in given)
        and sum(given) <= far
    ) or given == []:
        return list(given)
    raise ValueError(
        f'The jumps of a sum with the form "line" are numbers that make up {far} at most, not '
        f"{given!r}."
    )


def written(sum_: Sum, writes: Sequence[Sequence[Any]]) -> Sum:
    """Return a sum with more written into it.

    Args:
        sum_: the sum before, which is not changed.
        writes: what is written, each as a list: `["answer", column, digit]` or
            `["parts", column, number]` into an empty square or over what is there, with None to
            rub that out; `["marks", column, number]` after the marks of a column,
            `["jumps", number]`.

    Example:
        >>> written(new_sum("+", [47, 38]), [["answer", 0, 5], ["marks", 1, 1]])["answer"]
        [5, None, None]
    """
    after = Sum(
        operation=sum_["operation"],
        form=sum_["form"],
        numbers=sum_["numbers"],
        answer=list(sum_["answer"]),
        marks=[list(marks) for marks in sum_["marks"]],
        parts=list(sum_["parts"]),
        jumps=list(sum_["jumps"]),
    )
    for row, *rest in writes:
        if row == "jumps":
            after["jumps"].append(rest[0])
        elif row == "marks":
            after["marks"][rest[0]].append(rest[1])
        elif row == "parts":
            after["parts"][rest[0]] = rest[1]
        else:
            after["answer"][rest[0]] = rest[1]
    return after


def in_signs(sum_: Sum) -> str:
    """Return a sum as it is written in one line.

    Example:
        >>> in_signs(new_sum("+", [12, 34, 56]))
        '12 + 34 + 56'
    """
    sign = " + " if sum_["operation"] == ADD else f" {MINUS} "
    return sign.join(map(str, sum_["numbers"]))
