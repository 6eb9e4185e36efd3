"""The facts of a written sum: its answer, which places are right, and its marks."""

from __future__ import annotations

from manipulatives.maths.columns.difficulty import carries, upper_rewritten
from manipulatives.maths.columns.written_sum import (
    ADD,
    BASE,
    COLUMNS,
    LINE,
    NAMES,
    PARTS,
    Sum,
    answer_of,
    check_sum,
    digits_of,
    result_of,
    start_of,
)


def sum_facts(sum_: object) -> dict[str, int | str | bool | None]:
    """Return the facts of a sum, for goals and foreseen mistakes.

    Returns:
        `answer` and `number`, what the digits of the answer say, None while there is none or a
        square between them is empty; `done`, whether that is what comes out; `written`, how many
        digits there are; `marked`, in how many columns something is marked; `marks_right`,
        whether these are the marks of the written method, all of them and no others; `jumped`,
        how far the jumps went. For each place, `ones` to `ten_thousands`: its digit, None for
        none; with `_right` behind the name, whether that is right, None without a digit; with
        `_mark` behind it the mark that counts, None for none.

    Raises:
        ValueError: no sum.

    Example:
        >>> facts = sum_facts({"operation": "+", "numbers": [47, 38], "answer": [5, 7, None]})
        >>> facts["answer"], facts["done"], facts["ones_right"], facts["tens_right"]
        (75, False, True, False)
    """
    checked = check_sum(sum_)
    answer, result = answer_of(checked), result_of(checked)
    marks = [each[-1] if each else None for each in checked["marks"]]
    right = digits_of(result) + [0] * len(NAMES)
    facts: dict[str, int | str | bool | None] = {
        "answer": answer,
        "number": answer,
        "done": answer == result,
        "written": sum(digit is not None for digit in checked["answer"]),
        "marked": sum(mark is not None for mark in marks),
        "marks_right": marks == marks_needed(checked),
        "jumped": sum(checked["jumps"]),
    }
    for column, name in enumerate(NAMES):
        key, there = name.replace(" ", "_"), column < len(marks)
        digit = checked["answer"][column] if there else None
        facts[key] = digit
        facts[f"{key}_right"] = None if digit is None else digit == right[column]
        facts[f"{key}_mark"] = marks[column] if there else None
    return facts


def marks_needed(sum_: Sum) -> list[int | None]:
    """Return the mark that each column has in the end, None for none, the ones first.

    Example:
        >>> marks_needed(check_sum({"operation": "-", "numbers": [402, 178]}))
        [12, 9, 3]
    """
    width = len(sum_["answer"])
    if sum_["form"] == LINE or (sum_["form"] == PARTS and sum_["operation"] == ADD):
        return [None] * width
    if sum_["operation"] == ADD:
        return [None, *(carry or None for carry in carries(sum_["numbers"]))][:width]
    upper, lower = sum_["numbers"]
    final = [marks[-1] if marks else None for marks in upper_rewritten(upper, lower)]
    if sum_["form"] == COLUMNS:
        return final
    return [None if mark is None else mark * BASE**column for column, mark in enumerate(final)]


def jumped_to(sum_: Sum) -> int:
    """Return the number that the jumps on the number line have reached.

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum, written
        >>> jumped_to(written(new_sum("-", [83, 47], "line"), [["jumps", 40], ["jumps", 3]]))
        40
    """
    far = sum(sum_["jumps"])
    return start_of(sum_) + far if sum_["operation"] == ADD else start_of(sum_) - far
