"""What can be foreseen to go wrong with places, digits and number words, and what to say of it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from manipulatives.lessons.strands.place_value.mistakes import comparing as mistakes_comparing
from manipulatives.lessons.strands.place_value.mistakes import digits
from manipulatives.lessons.tasks.rule import Rule
from manipulatives.maths.number.place_value import Blocks

OnNumber = Rule[Callable[[int], int | None]]
OnForm = Rule[Callable[[int], str | None]]
OnBlocks = Rule[Callable[[Blocks], int | None]]
OnParts = Rule[Callable[[Sequence[int]], int | None]]
OnDigit = Rule[Callable[[int, int], int | None]]

DIGITS_ADDED: OnNumber = Rule(
    "digits_added",
    digits.digits_added,
    may_have="counted the blocks, or added the digits, whatever they are worth",
    us="A ten is worth ten ones.",
    does={"digits": "added"},
)
PARTS_BESIDE: OnNumber = Rule(
    "parts_beside",
    digits.parts_beside,
    may_have="written the worth of each place beside the others",
    us="Write one digit for each place.",
    does={"parts": "beside"},
)
SAID_LITERALLY: OnNumber = Rule(
    "said_literally",
    digits.said_literally,
    may_have="written the number as it is said, part after part",
    us="Write one digit for each place.",
    does={"parts": "as said"},
)
ZERO_LEFT_OUT: OnNumber = Rule(
    "zero_left_out",
    digits.zero_left_out,
    may_have="left out a place with nothing in it",
    us="Write 0 where a place is empty.",
    does={"zeros": "left out"},
)
TEEN_REVERSED: OnNumber = Rule(
    "teen_reversed",
    digits.teen_reversed,
    may_have="written the ones of a teen number first, as they are said",
    us="Write the ten first, then the ones.",
    does={"digits": "swapped"},
)
TENS_ONES_SWAPPED: OnNumber = Rule(
    "tens_ones_swapped",
    digits.tens_ones_swapped,
    may_have="changed tens and ones round",
    us="Tens stand on the left of the ones.",
    does={"digits": "swapped"},
)
FROM_THE_RIGHT: OnNumber = Rule(
    "from_the_right",
    digits.from_the_right,
    may_have="read the digits from the right",
    us="The largest place stands on the left.",
    does={"digits": "from the right"},
)
TEEN_FOR_TY: OnNumber = Rule(
    "teen_for_ty",
    digits.teen_for_ty,
    may_have="taken a teen number for tens, or tens for a teen number",
    us="Listen to the end: is it teen or ty?",
    does={"heard": "teen for ty"},
)

# In each table: where several rules lead to one answer, the first of them names it.
READING: tuple[OnNumber, ...] = (
    DIGITS_ADDED,
    ZERO_LEFT_OUT,
    TEEN_REVERSED,
    TENS_ONES_SWAPPED,
    FROM_THE_RIGHT,
    PARTS_BESIDE,
)
WORDS: tuple[OnNumber, ...] = (
    ZERO_LEFT_OUT,
    TEEN_FOR_TY,
    TEEN_REVERSED,
    TENS_ONES_SWAPPED,
    SAID_LITERALLY,
    PARTS_BESIDE,
    DIGITS_ADDED,
)
BUILDING: tuple[OnNumber, ...] = (
    DIGITS_ADDED,
    TEEN_REVERSED,
    TENS_ONES_SWAPPED,
    FROM_THE_RIGHT,
    ZERO_LEFT_OUT,
    TEEN_FOR_TY,
)
FROM_PARTS: tuple[OnNumber, ...] = (PARTS_BESIDE, ZERO_LEFT_OUT, DIGITS_ADDED, TENS_ONES_SWAPPED)
COMPOSING: tuple[OnNumber, ...] = (PARTS_BESIDE, TEEN_REVERSED, DIGITS_ADDED)

COUNTS_BESIDE: OnBlocks = Rule(
    "counts_beside",
    digits.counts_beside,
    may_have="written how many blocks there are of each place, above nine too",
    us="Trade ten of a place first.",
    uk="Exchange ten of a place first.",
    does={"counts": "beside"},
)

DECOMPOSING: tuple[OnNumber, ...] = (
    Rule(
        "whole_teen",
        digits.whole_teen,
        may_have="given the whole number and not what comes with the ten",
        us="Take the ten away: what is left?",
        does={"takes": "all"},
    ),
    Rule(
        "ten_counted_too",
        digits.ten_counted_too,
        may_have="begun to count with the ten itself",
        us="Begin with eleven when you count on.",
        does={"start_counted": True},
    ),
)

EXPANDING: tuple[OnForm, ...] = (
    Rule(
        "digits_without_place",
        digits.digits_without_place,
        may_have="written the digits and not what they are worth",
        us="Write what each digit is worth.",
        does={"each": "digit"},
    ),
    Rule(
        "zero_as_part",
        digits.zero_as_part,
        may_have="written a zero as a part",
        us="An empty place adds nothing: leave it out.",
        does={"zeros": "as parts"},
    ),
    Rule(
        "place_closed_up",
        digits.place_closed_up,
        may_have="passed over the zero and taken each digit one place too low",
        us="Name the place of each digit first.",
        does={"zeros": "left out"},
    ),
    Rule(
        "plus_left_out",
        digits.plus_left_out,
        may_have="written the parts beside each other",
        us="Put a plus between the parts.",
        does={"parts": "beside"},
    ),
)

AS_THEY_COME: OnParts = Rule(
    "as_they_come",
    digits.as_they_come,
    may_have="taken the digits in the order of the parts",
    us="Put the largest part first.",
    does={"order": "as they come"},
)

WORTH: tuple[OnDigit, ...] = (
    Rule(
        "digit_alone",
        digits.digit_alone,
        may_have="read the digit without its place",
        us="Name the place of the digit first.",
        does={"worth": "digit"},
    ),
    Rule(
        "rest_with_it",
        digits.rest_with_it,
        may_have="read on to the end of the number",
        us="Ask for one digit only.",
        does={"worth": "rest"},
    ),
    Rule(
        "place_above",
        digits.place_above,
        may_have="taken the place to the left",
        us="Name the places from the right: ones, tens, hundreds.",
        does={"places": 1},
    ),
    Rule(
        "place_below",
        digits.place_below,
        may_have="taken the place to the right",
        us="Name the places from the right: ones, tens, hundreds.",
        does={"places": -1},
    ),
)

RULES: tuple[Rule[Any], ...] = (
    DIGITS_ADDED,
    PARTS_BESIDE,
    SAID_LITERALLY,
    ZERO_LEFT_OUT,
    TEEN_REVERSED,
    TENS_ONES_SWAPPED,
    FROM_THE_RIGHT,
    TEEN_FOR_TY,
    COUNTS_BESIDE,
    *DECOMPOSING,
    *EXPANDING,
    AS_THEY_COME,
    *WORTH,
    *mistakes_comparing.RULES,
)
