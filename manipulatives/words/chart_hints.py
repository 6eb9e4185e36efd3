"""Hints on a counting chart: how to get from the nearest visible number to the one to find."""

from __future__ import annotations

from manipulatives.maths.number.chart import Chart, Marks, next_number
from manipulatives.maths.number.words import number_in_words


def can_be_read(number: int, marks: Marks, chart: Chart) -> bool:
    """Return whether a number can be read on the chart.

    A hidden number can be read after it was written correctly or, where none is written, counted.

    Example:
        >>> from manipulatives.maths.number.chart import no_marks
        >>> can_be_read(35, no_marks(), Chart(hidden=[35]))
        False
    """
    if number not in chart.blanks:
        return True
    if chart.mode == "write":
        return marks["written"].get(str(number)) == str(number)
    return number in marks["counted"]


def neighbours(number: int, chart: Chart) -> list[int]:
    """Return the numbers around a cell: before, after, above, below.

    The last number of a row and the first of the next row are neighbours, too.

    Example:
        >>> neighbours(40, Chart()), neighbours(1, Chart())
        ([39, 41, 30, 50], [2, 11])
    """
    near = (number - 1, number + 1, number - chart.width, number + chart.width)
    return [other for other in near if chart.first <= other <= chart.last]


def cell_hint(number: int, marks: Marks, chart: Chart) -> str:
    """Return a hint for the number of a cell, from the nearest number that can be read.

    Example:
        >>> from manipulatives.maths.number.chart import no_marks
        >>> cell_hint(35, no_marks(), Chart(hidden=[35]))
        'One more than 34.'
        >>> cell_hint(35, no_marks(), Chart(hidden=[34, 35, 36]))
        'Ten more than 25.'
    """
    for other in neighbours(number, chart):
        if can_be_read(other, marks, chart):
            way = "more" if number > other else "less"
            gap = number_in_words(abs(number - other)).capitalize()
            return f"{gap} {way} than {other}."
    for before in range(number - 1, chart.first - 1, -1):
        if can_be_read(before, marks, chart):
            return f"Count on from {before}."
    for after in range(number + 1, chart.last + 1):
        if can_be_read(after, marks, chart):
            return f"Count back from {after}."
    return f"The chart goes from {chart.first} to {chart.last}."


def count_hint(marks: Marks, chart: Chart) -> str:
    """Return a hint for the number that is counted next.

    Example:
        >>> count_hint({"counted": [5, 10], "tapped": 11, "written": {}}, Chart(step=5))
        'Count on 5 from 10.'
    """
    coming = next_number(marks, chart)
    if coming is None:
        return "All is counted."
    if not marks["counted"]:
        return f"Begin with {coming}."
    way = "back" if chart.direction == "back" else "on"
    return f"Count {way} {chart.step} from {marks['counted'][-1]}."
