"""What is true of place value blocks, from their traits."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from manipulatives.maths.number.mats import check_mat, mat_facts

MANIPULATIVE = "PlaceValueBlocks"


def facts(traits: Mapping[str, Any]) -> dict[str, Any]:
    """Return the facts of place value blocks.

    Raises:
        ValueError: the mat is none.

    Example:
        >>> facts({"mat": [{"tens": 2, "ones": 15}]})["number"]
        35
    """
    return {**mat_facts(check_mat(traits.get("mat", [{}])))}
