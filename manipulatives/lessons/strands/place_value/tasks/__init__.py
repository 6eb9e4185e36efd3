"""The tasks of the place value strand; `GENERATORS` makes those of each skill."""

from __future__ import annotations

from manipulatives.lessons.strands.place_value.tasks import comparing, digits, one_number

GENERATORS = {**one_number.GENERATORS, **digits.GENERATORS, **comparing.GENERATORS}
