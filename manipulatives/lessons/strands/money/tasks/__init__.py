"""The tasks of the money strand; `GENERATORS` makes those of each skill."""

from __future__ import annotations

from manipulatives.lessons.strands.money.tasks import (
    counting,
    naming,
    paying,
)

GENERATORS = {
    **naming.GENERATORS,
    **counting.GENERATORS,
    **paying.GENERATORS,
}
