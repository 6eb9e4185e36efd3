"""Foreseeable mistakes of a written subtraction, each as one exact rule.

Most of them are described by Brown & Burton 1978 (*Diagnostic models for procedural bugs in basic
mathematical skills*, Cognitive Science 2:155-192) and VanLehn 1990 (*Mind Bugs*; from memory).
Counting the number one starts from is common practice of number lines, from no published table.
The rules are our exact statements, one reading each of what was described, under names of our own.
Where several rules lead to one answer, the first of the table names it.

What a wrong answer suggests is a possibility, not a diagnosis: one item is weak evidence.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.strands.sums.tasks import Found, found_by
from manipulatives.lessons.tasks.rule import Rule, rules_in
from manipulatives.maths.columns.faulty_subtraction import Procedure
from manipulatives.maths.columns.subtraction_faults import FAULTS

OnTaking = Rule[Callable[[int, int], int | None]]

# What happens to the whole sum leaves no columns for a second fault.
COMBINED = tuple(name for name, fault in FAULTS.items() if not fault.whole)

# Reported together in one pupil's work by Brown & Burton 1978 and VanLehn 1990 (from memory).
REPORTED_PAIRS = (
    ("larger_minus_smaller", "zero_stays_zero"),
    ("zero_shows_lower_digit", "zero_passed_over"),
    ("zero_shows_lower_digit", "zero_gives_nothing"),
    ("zero_shows_lower_digit", "lower_digit_gives"),
    ("zero_stays_zero", "zero_passed_over"),
    ("zero_stays_zero", "zero_gives_nothing"),
    ("zero_stays_zero", "lower_digit_gives"),
)


def subtracted(*rules: str) -> Callable[[int, int], int | None]:
    """Return what comes out of a subtraction when one rule, or several at once, are at work.

    Args:
        rules: ids from `RULES`, in any order.

    Returns:
        A function of the upper and the lower number. It gives what is written, which may be right,
        or None where that cannot be said.

    Example:
        >>> subtracted("zero_passed_over", "zero_shows_lower_digit")(602, 327)
        225
    """
    return Procedure(*(FAULTS[rule] for rule in FAULTS if rule in rules)).answer


def _wrong(name: str) -> Callable[[int, int], int | None]:
    answer = subtracted(name)

    def wrong(top: int, bottom: int) -> int | None:
        written = answer(top, bottom)
        return None if written == top - bottom else written

    return wrong


_ORDER = (
    "larger_minus_smaller",
    "ten_for_nothing",
    "zero_shows_lower_digit",
    "printed_zero_shows_lower_digit",
    "zero_stays_zero",
    "zero_when_too_small",
    "zero_turns_nine",
    "zero_turns_nine_unless_ten",
    "zero_passed_over",
    "zero_gives_nothing",
    "zero_turns_ten",
    "lower_digit_gives",
    "minus_zero_is_zero",
    "equal_digits_stay",
    "front_place_gives",
    "next_place_grows",
    "equal_digits_passed_over",
    "one_turns_nine",
    "one_turns_ten",
    "gap_gives_nothing",
    "keeps_taking",
    "ends_with_lower_number",
    "lower_digit_repeated",
    "added_instead",
    "start_counted_back",
)

RULES: tuple[OnTaking, ...] = rules_in(
    FOLDER / "subtraction", **{name: _wrong(name) for name in _ORDER}
)


def found_in(numbers: Sequence[int]) -> Found:
    """Return what can be foreseen to go wrong in a subtraction.

    Example:
        >>> {rule.id: wrong for rule, wrong in found_in((13, 4)).wrong}["start_counted_back"]
        10
    """
    upper, lower = numbers
    return found_by(RULES, numbers, "take", **{"from": upper, "take": lower})
