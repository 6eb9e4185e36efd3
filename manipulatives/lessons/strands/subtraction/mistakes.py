"""Foreseeable mistakes of a written subtraction, each as one exact rule.

Most of them are described by Brown & Burton 1978 (*Diagnostic models for procedural bugs in basic
mathematical skills*, Cognitive Science 2:155-192) and VanLehn 1990 (*Mind Bugs*; from memory).
Counting the number one starts from is common practice of number lines, from no published table.
The rules are our exact statements, one reading each of what was described, under names of our own.
Where several rules lead to one answer, the first of the table names it.

What a wrong answer suggests is a possibility, not a diagnosis: one item is weak evidence.
"""

from __future__ import annotations

from collections.abc import Callable

from manipulatives.lessons.tasks.rule import Rule
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


def _rule(name: str, may_have: str, us: str, uk: str = "") -> OnTaking:
    answer = subtracted(name)

    def wrong(top: int, bottom: int) -> int | None:
        written = answer(top, bottom)
        return None if written == top - bottom else written

    return Rule(name, wrong, may_have=may_have, us=us, uk=uk)


RULES: tuple[OnTaking, ...] = (
    _rule(
        "larger_minus_smaller",
        "taken the smaller digit from the larger in each column",
        "Start with the top digit. Too small? Regroup a ten.",
        "Start with the top digit. Too small? Exchange a ten.",
    ),
    _rule(
        "ten_for_nothing",
        "gained a ten without taking it from the next column",
        "You gained ten ones. Now cross out one ten.",
    ),
    _rule(
        "zero_shows_lower_digit",
        "written the lower digit where the upper one is zero",
        "Zero is too small here. Regroup first, then subtract.",
        "Zero is too small here. Exchange first, then subtract.",
    ),
    _rule(
        "printed_zero_shows_lower_digit",
        "written the lower digit where a zero is printed above it",
        "Zero is too small here. Regroup first, then subtract.",
        "Zero is too small here. Exchange first, then subtract.",
    ),
    _rule(
        "zero_stays_zero",
        "written 0 where the upper digit is zero",
        "Zero is too small here. Regroup first, then subtract.",
        "Zero is too small here. Exchange first, then subtract.",
    ),
    _rule(
        "zero_when_too_small",
        "written 0 where the upper digit is too small",
        "The top digit is too small. Regroup a ten.",
        "The top digit is too small. Exchange a ten.",
    ),
    _rule(
        "zero_turns_nine",
        "turned a zero into 9 without taking one from the column before it",
        "Zero has none to give. Look further left first.",
    ),
    _rule(
        "zero_turns_nine_unless_ten",
        "turned a zero into 9 and taken nothing further left, but done it well in a leading 10",
        "Zero has none to give. Look further left first.",
    ),
    _rule(
        "zero_passed_over",
        "gone past a zero to the next column and left the zero as it was",
        "You took from the left. Now make zero nine.",
    ),
    _rule(
        "zero_gives_nothing",
        "gained ten at a zero without taking one anywhere",
        "Zero has none to give. Look further left first.",
    ),
    _rule(
        "zero_turns_ten",
        "turned a zero into 10 and forgotten that it gave one away",
        "The zero became ten. Then it gave one away.",
    ),
    _rule(
        "lower_digit_gives",
        "taken one from the lower digit because the upper one is zero",
        "Take from the top number. Look further left.",
    ),
    _rule(
        "minus_zero_is_zero",
        "written 0 where the lower digit is zero",
        "Taking away zero leaves the digit as it is.",
    ),
    _rule(
        "equal_digits_stay",
        "written the digit itself where both digits are the same",
        "Take all of them away. How many are left?",
    ),
    _rule(
        "front_place_gives",
        "taken each ten from the front digit instead of the next column",
        "Take from the column next to this one.",
    ),
    _rule(
        "next_place_grows",
        "added one to the next column instead of taking it away",
        "You took one from there. Make that digit smaller.",
    ),
    _rule(
        "equal_digits_passed_over",
        "gone past a column with two equal digits to take from the one after it",
        "Take from the column next to this one.",
    ),
    _rule(
        "one_turns_nine",
        "treated a 1 that is to give one as if it were a zero",
        "One gives one away. What is left of it?",
    ),
    _rule(
        "one_turns_ten",
        "made a 1 into 10 instead of 11",
        "One and ten more make eleven.",
    ),
    _rule(
        "gap_gives_nothing",
        "left a column as it was because nothing is written under it",
        "That digit gave one away. Make it smaller.",
    ),
    _rule(
        "keeps_taking",
        "gone on taking from the next column where it was not needed",
        "Is the top digit enough? Then just subtract.",
    ),
    _rule(
        "ends_with_lower_number",
        "stopped where the lower number ends",
        "Bring down the digits with nothing under them.",
    ),
    _rule(
        "lower_digit_repeated",
        "taken the last lower digit away again where nothing is written",
        "Nothing is under this digit. Keep it.",
    ),
    _rule(
        "added_instead",
        "added instead of taking away",
        "Look at the sign. Take away this time.",
    ),
    _rule(
        "start_counted_back",
        "counted the number it started from when counting back",
        "Say the first number after one step back.",
    ),
)
