"""What can be foreseen to go wrong with places, digits and number words, for each kind of task."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.strands.place_value.mistakes.digits import (
    as_they_come,
    counts_beside,
    digit_alone,
    digits_added,
    digits_without_place,
    from_the_right,
    parts_beside,
    place_above,
    place_below,
    place_closed_up,
    plus_left_out,
    rest_with_it,
    said_literally,
    teen_for_ty,
    teen_reversed,
    ten_counted_too,
    tens_ones_swapped,
    whole_teen,
    zero_as_part,
    zero_left_out,
)
from manipulatives.lessons.tasks.rule import Rule, rules_in
from manipulatives.maths.number.place_value import Blocks

OnNumber = Rule[Callable[[int], int | None]]
OnForm = Rule[Callable[[int], str | None]]
OnBlocks = Rule[Callable[[Blocks], int | None]]
OnParts = Rule[Callable[[Sequence[int]], int | None]]
OnDigit = Rule[Callable[[int, int], int | None]]

STRAND = FOLDER / "place_value"

# In each table: where several rules lead to one answer, the first of them names it.
READING: tuple[OnNumber, ...] = rules_in(
    STRAND,
    digits_added,
    zero_left_out,
    teen_reversed,
    tens_ones_swapped,
    from_the_right,
    parts_beside,
)
# About blocks of which a place may have more than nine.
READING_BLOCKS: tuple[OnBlocks, ...] = rules_in(STRAND, counts_beside)
WORDS: tuple[OnNumber, ...] = rules_in(
    STRAND,
    zero_left_out,
    teen_for_ty,
    teen_reversed,
    tens_ones_swapped,
    said_literally,
    parts_beside,
    digits_added,
)
BUILDING: tuple[OnNumber, ...] = rules_in(
    STRAND,
    digits_added,
    teen_reversed,
    tens_ones_swapped,
    from_the_right,
    zero_left_out,
    teen_for_ty,
)
FROM_PARTS: tuple[OnNumber, ...] = rules_in(
    STRAND, parts_beside, zero_left_out, digits_added, tens_ones_swapped
)
# About parts in the order in which they are given.
FROM_PARTS_IN_ORDER: tuple[OnParts, ...] = rules_in(STRAND, as_they_come)
COMPOSING: tuple[OnNumber, ...] = rules_in(STRAND, parts_beside, teen_reversed, digits_added)
DECOMPOSING: tuple[OnNumber, ...] = rules_in(STRAND, whole_teen, ten_counted_too)
EXPANDING: tuple[OnForm, ...] = rules_in(
    STRAND, digits_without_place, zero_as_part, place_closed_up, plus_left_out
)
VALUE: tuple[OnDigit, ...] = rules_in(STRAND, digit_alone, rest_with_it, place_above, place_below)
