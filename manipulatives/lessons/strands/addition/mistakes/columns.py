"""Foreseeable mistakes of a written addition, each as one exact rule.

Carries that are never set back come from Brown & Burton 1978 (*Diagnostic models for procedural
bugs in basic mathematical skills*, Cognitive Science 2:155-192); most others are of the kinds that
Ashlock and Cox 1974 (ERIC ED092407) describe (these from memory). Taking away instead, and the
carry that is lost over a gap, are common practice, from no published table. The rules are our exact
statements, under names of our own. Where several rules lead to one answer, the first of the table
names it.

What a wrong answer suggests is a possibility, not a diagnosis: one item is weak evidence.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from manipulatives.lessons.tasks.rule import Rule
from manipulatives.maths.columns.faulty_addition import (
    Columns,
    Fault,
    Procedure,
    Total,
    in_columns,
)
from manipulatives.maths.columns.written_sum import BASE, digits_of

OnAdding = Rule[Callable[..., int | None]]


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


# From the general to the particular: where two faults meet, the more particular is done.
# What happens to the whole sum leaves no columns for a second fault.
FAULTS: dict[str, Fault] = {
    "carry_left_out": Fault(split=_carry_left_out),
    "total_written_whole": Fault(split=_total_written_whole),
    "ones_carried": Fault(split=_ones_carried),
    "carry_kept": Fault(split=_carry_kept),
    "always_one_carried": Fault(split=_always_one_carried),
    "carry_lost_over_gap": Fault(split=_carry_lost_over_gap),
    "from_the_left": Fault(from_left=True),
    "lined_up_left": Fault(lay=_lined_up_left),
    "small_number_in_every_column": Fault(lay=_small_number_in_every_column),
    "zero_makes_zero": Fault(add=_zero_makes_zero),
    "zero_makes_one_more": Fault(add=_zero_makes_one_more),
    "every_digit_added": Fault(whole=_every_digit_added),
    "taken_away_instead": Fault(whole=_taken_away_instead),
    "start_counted_on": Fault(whole=_start_counted_on),
}
COMBINED = tuple(name for name, fault in FAULTS.items() if not fault.whole)


def added(*rules: str) -> Callable[..., int | None]:
    """Return what comes out of an addition when one rule, or several at once, are at work.

    Args:
        rules: ids from `RULES`, in any order.

    Returns:
        A function of the addends. It gives what is written, which may be right, or None where
        that cannot be said.

    Example:
        >>> added("carry_left_out")(28, 17)
        35
    """
    answer = Procedure(*(FAULTS[rule] for rule in FAULTS if rule in rules)).answer

    def written(*addends: int) -> int | None:
        result = answer(*addends)
        return result if result >= 0 else None

    return written


def _rule(name: str, may_have: str, us: str, uk: str = "") -> OnAdding:
    answer = added(name)

    def wrong(*addends: int) -> int | None:
        written = answer(*addends)
        return None if written == sum(addends) else written

    return Rule(name, wrong, may_have=may_have, us=us, uk=uk)


RULES: tuple[OnAdding, ...] = (
    _rule(
        "carry_left_out",
        "left out the ten that goes to the next column",
        "You made ten. Add one to the next column.",
    ),
    _rule(
        "total_written_whole",
        "written both digits of a column's total side by side",
        "Each column has one digit. Regroup ten ones.",
        "Each column has one digit. Exchange ten ones.",
    ),
    _rule(
        "ones_carried",
        "written the ten and carried the ones",
        "Write the ones here. The ten goes left.",
    ),
    _rule(
        "carry_kept",
        "added what was carried once more in a later column",
        "Use what you carried once. Then it is gone.",
    ),
    _rule(
        "always_one_carried",
        "carried one to every column",
        "Did this column make ten? Only then carry one.",
    ),
    _rule(
        "carry_lost_over_gap",
        "left out the ten where only one digit is written in the next column",
        "You made a ten. Add it to that digit.",
    ),
    _rule(
        "from_the_left",
        "begun on the left and carried to the right",
        "Start with the ones, on the right.",
    ),
    _rule(
        "lined_up_left",
        "lined the numbers up on the left",
        "Put ones under ones and tens under tens.",
    ),
    _rule(
        "small_number_in_every_column",
        "added the one-digit number in every column",
        "It is only ones. Add it to the ones.",
    ),
    _rule(
        "zero_makes_zero",
        "written 0 where a zero is added",
        "Adding zero changes nothing. Keep the other digit.",
    ),
    _rule(
        "zero_makes_one_more",
        "counted one more where a zero is added",
        "Adding zero changes nothing. Keep the other digit.",
    ),
    _rule(
        "every_digit_added",
        "added all the digits as if they were ones",
        "Some digits are tens. Add tens with tens.",
    ),
    _rule(
        "taken_away_instead",
        "taken away instead of adding",
        "Look at the sign. Add this time.",
    ),
    _rule(
        "start_counted_on",
        "counted the number it started from when counting on",
        "Say the first number after one step on.",
    ),
)
