"""The tasks of the counting strand; `GENERATORS` makes those of each skill."""

from __future__ import annotations

from manipulatives.lessons.strands.counting.tasks import counts, gaps, objects, odd_even

GENERATORS = {
    **counts.GENERATORS,
    **gaps.GENERATORS,
    **odd_even.GENERATORS,
    **objects.GENERATORS,
}
