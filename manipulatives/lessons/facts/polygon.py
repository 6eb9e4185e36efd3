"""What is true of a shape on paper, from the traits of the polygon drawer."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from manipulatives.maths.shapes.data import check_shape
from manipulatives.words.shape_facts import shape_facts
from manipulatives.words.shape_names import Wording

MANIPULATIVE = "PolygonDrawer"

EMPTY_PAPER = {"points": [], "closed": False}
"""The shape that there is before anything is drawn."""


def facts(traits: Mapping[str, Any]) -> dict[str, Any]:
    """Return the facts of the shape on the paper, and how it agrees with its guide.

    Raises:
        ValueError: the shape or the guide does not fit the grid.

    Example:
        >>> square = {"points": [[1, 1], [5, 1], [5, 5], [1, 5]], "closed": True}
        >>> facts({"shape": square})["sides"]
        4
    """
    grid = traits.get("grid", "square")
    wording = Wording(traits.get("vocabulary", "us"), traits.get("trapezoid", "inclusive"))
    guide = traits.get("guide")
    return {
        **shape_facts(
            check_shape(traits.get("shape", EMPTY_PAPER), grid),
            grid,
            wording,
            None if guide is None else check_shape(guide, grid),
        )
    }
