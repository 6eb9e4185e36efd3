"""The tasks of the place value strand; `GENERATORS` makes those of each skill."""

from __future__ import annotations

from manipulatives.lessons.strands.place_value.tasks import (
    comparing,
    digit_worth,
    one_number,
    teens,
)

GENERATORS = {
    **one_number.GENERATORS,
    **teens.GENERATORS,
    **digit_worth.GENERATORS,
    **comparing.GENERATORS,
}
