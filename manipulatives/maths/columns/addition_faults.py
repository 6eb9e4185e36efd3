"""The single faults of a written addition, each one small function.

A fault of *splitting* says what is written of the total of a column and what is carried on; a fault
of *laying* how the numbers are put into columns; a fault of *adding* what the digits of one column
make. Some leave no columns at all.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from manipulatives.maths.columns.faulty_addition import Columns, Fault, Total, in_columns
from manipulatives.maths.columns.written_sum import BASE, digits_of


def _carry_left_out(column: Total) -> tuple[int, int]:
    return column.total % BASE, 0


def _total_written_whole(column: Total) -> tuple[int, int]:
    return column.total, 0


def _ones_carried(column: Total) -> tuple[int, int] | None:
    return (column.total // BASE, column.total % BASE) if column.total >= BASE else None


def _carry_kept(column: Total) -> tuple[int, int]:
    return column.total % BASE, column.carried + column.total // BASE


def _always_one_carried(column: Total) -> tuple[int, int]:
    return column.total % BASE, 1


def _carry_lost_over_gap(column: Total) -> tuple[int, int] | None:
    return (column.total % BASE, 0) if column.next_digits == 1 else None


def _small_number_in_every_column(addends: Sequence[int]) -> Columns | None:
    small = [each for each in addends if each < BASE]
    if len(small) == len(addends) or not small:
        return None
    first, *others = in_columns(addends)
    return [first, *([*digits, *small] for digits in others)]


def _lined_up_left(addends: Sequence[int]) -> Columns:
    rows = [digits_of(each)[::-1] for each in addends]
    width = max(len(row) for row in rows)
    return [[row[at] for row in rows if at < len(row)] for at in reversed(range(width))]


def _zero_makes_zero(digits: list[int]) -> int | None:
    return 0 if len(digits) > 1 and 0 in digits else None


def _zero_makes_one_more(digits: list[int]) -> int | None:
    return sum(digits) + 1 if 0 in digits and any(digits) else None


def _every_digit_added(addends: Sequence[int]) -> int:
    return sum(sum(digits_of(each)) for each in addends)


def _taken_away_instead(addends: Sequence[int]) -> int:
    return max(addends) * 2 - sum(addends)


def _start_counted_on(addends: Sequence[int]) -> int:
    return sum(addends) - 1


def _named(*faults: Callable[..., object]) -> dict[str, Any]:
    """Return functions by their names, which are the names of the faults."""
    return {fault.__name__.removeprefix("_"): fault for fault in faults}


_SPLITS = _named(
    _carry_left_out,
    _total_written_whole,
    _ones_carried,
    _carry_kept,
    _always_one_carried,
    _carry_lost_over_gap,
)
_LAYS = _named(_lined_up_left, _small_number_in_every_column)
_ADDS = _named(_zero_makes_zero, _zero_makes_one_more)
_WHOLES = _named(_every_digit_added, _taken_away_instead, _start_counted_on)

# From the general to the particular: where two faults meet, the more particular is done.
FAULTS: dict[str, Fault] = {
    **{name: Fault(split=split) for name, split in _SPLITS.items()},
    "from_the_left": Fault(from_left=True),
    **{name: Fault(lay=lay) for name, lay in _LAYS.items()},
    **{name: Fault(add=add) for name, add in _ADDS.items()},
    **{name: Fault(whole=whole) for name, whole in _WHOLES.items()},
}
