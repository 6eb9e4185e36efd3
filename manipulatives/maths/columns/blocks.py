"""The blocks for a written sum: for each digit as many blocks as it says.

Blocks are rows of counts, the ones first, by what they stand for. They always show what is written,
right or wrong, so that digits and blocks agree.
"""

from __future__ import annotations

from functools import cache

from manipulatives.maths.columns.written_sum import (
    ADD,
    BASE,
    LINE,
    PARTS,
    SUBTRACT,
    Sum,
    answer_of,
    digits_of,
    result_of,
    start_of,
)

Rows = dict[str, list[int]]
"""Counts of blocks by what they stand for, each from the ones on."""


def blocks_of(sum_: Sum, *, working: bool = False) -> Rows:
    """Return the blocks for the written digits.

    Args:
        sum_: the sum.
        working: whether it is still worked out, column by column. If not, the squares in front of
            a right answer count as 0, because the answer to 83 - 80 may be 3 or 03.

    Returns:
        Of an addition: `"1"` to `"4"`, the digits of each number that are not added yet;
        `"carried"`, the carry marks that are not added yet; `"parts"`, what came out in the
        columns, until the answer is begun; `"answer"`, its digits. Of a subtraction: `"left"`, the
        upper number as it has been rewritten, and the digits of the answer in their place;
        `"taken"`, what was taken away. On the number line: `"here"`, where the jumps have come to,
        and `"rest"`, how far it still is; of a subtraction `"left"` and `"taken"`.

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum, written
        >>> blocks_of(written(new_sum("-", [83, 47]), [["marks", 1, 7], ["marks", 0, 13]]))
        {'left': [13, 7], 'taken': [0, 0]}
    """
    width = len(sum_["answer"])
    if sum_["form"] == LINE:
        return _on_the_line(sum_, width)
    if sum_["operation"] == SUBTRACT:
        return _taking_away(sum_, width, front=not working)
    return _adding(sum_, width)


def worth_of(rows: Rows) -> int:
    """Return the total worth of the blocks in all rows.

    Example:
        >>> worth_of({"left": [13, 7], "taken": [0, 0]})
        83
    """
    return sum(count * BASE**column for row in rows.values() for column, count in enumerate(row))


def _adding(sum_: Sum, width: int) -> Rows:
    answer, parts = sum_["answer"], sum_["parts"] or [None] * width
    open_ = [digit is None and part is None for digit, part in zip(answer, parts, strict=True)]
    rows: Rows = {}
    for place, number in enumerate(sum_["numbers"], 1):
        digits = _spread(number, width)
        rows[str(place)] = [
            digit if is_open else 0 for digit, is_open in zip(digits, open_, strict=True)
        ]
    carried = [0] * width
    for column, marks in enumerate(sum_["marks"]):
        if marks and answer[column] is None:
            _lay(carried, column, marks[-1], sum_["form"])
    rows["carried"] = carried
    if sum_["form"] == PARTS:
        rows["parts"] = row = [0] * width
        if all(digit is None for digit in answer):
            for column, part in enumerate(parts):
                _lay(row, column, part or 0, PARTS)
    rows["answer"] = [digit or 0 for digit in answer]
    return rows


def _taking_away(sum_: Sum, width: int, *, front: bool) -> Rows:
    upper, lower = (_spread(number, width) for number in sum_["numbers"])
    left, taken = [0] * width, [0] * width
    done = front and answer_of(sum_) == result_of(sum_)
    for column in range(width):
        digit, marks = sum_["answer"][column], sum_["marks"][column]
        part = sum_["parts"][column] if sum_["parts"] else None
        if done or digit is not None or part is not None:
            taken[column] = lower[column]
        if done or digit is not None:
            left[column] += digit or 0
        elif part is not None:
            _lay(left, column, part, PARTS)
        elif marks:
            _lay(left, column, marks[-1], sum_["form"])
        else:
            left[column] += upper[column]
    return {"left": left, "taken": taken}


def _on_the_line(sum_: Sum, width: int) -> Rows:
    start, far = start_of(sum_), sum(sum_["jumps"])
    adding = sum_["operation"] == ADD
    here = [digit or 0 for digit in sum_["answer"]]
    if all(digit is None for digit in sum_["answer"]):
        here = [*_spread(start + far if adding else start - far, width)]
    if adding:
        rest = sum(sum_["numbers"]) - start - far
        return {"here": here, "rest": [*_spread(rest, width)]}
    return {"left": here, "taken": [*_spread(far, width)]}


@cache
def _spread(number: int, width: int) -> tuple[int, ...]:
    """Return the digits of a number, one for each column; cached, because every step uses it."""
    digits = digits_of(number)
    return (*digits, *[0] * (width - len(digits)))


def _lay(row: list[int], column: int, number: int, form: str) -> None:
    """Add the blocks of a number that stands in a column.

    A digit gives the number of blocks. A part gives their worth; one that no
    blocks of the column can show, such as 7 among the tens, is shown by its own digits.
    """
    if form != PARTS:
        row[column] += number
        return
    count, rest = divmod(number, BASE**column)
    if not rest:
        row[column] += count
        return
    for place, digit in enumerate(digits_of(number)):
        row[min(place, len(row) - 1)] += digit * BASE ** max(0, place - len(row) + 1)
