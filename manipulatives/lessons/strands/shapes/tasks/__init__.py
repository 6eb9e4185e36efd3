"""The tasks of the shapes strand; `GENERATORS` makes those of each skill."""

from __future__ import annotations

from manipulatives.lessons.strands.shapes.tasks import (
    angles,
    counting,
    curved,
    drawing,
    folding,
    naming,
    sharing,
    squares,
)

GENERATORS = {
    **naming.GENERATORS,
    **counting.GENERATORS,
    **drawing.GENERATORS,
    **angles.GENERATORS,
    **folding.GENERATORS,
    **sharing.GENERATORS,
    **curved.GENERATORS,
    **squares.GENERATORS,
}
