"""Whether counts are as even as chance would have them: Pearson's chi-squared test."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections import Counter
    from collections.abc import Collection, Hashable


def chi_squared(counts: Counter[Hashable], cells: Collection[Hashable]) -> float:
    """Return how far counts are from even; a cell needs five or more to be judged."""
    total = sum(counts.values())
    expected = total / len(cells)
    assert set(counts) <= set(cells)
    assert expected >= 5
    return sum((counts[cell] - expected) ** 2 / expected for cell in cells)


def too_uneven(cells: Collection[Hashable]) -> float:
    """Return the value that chi-squared passes once in ten thousand (Wilson and Hilferty, 1931)."""
    degrees = len(cells) - 1
    part = 2 / (9 * degrees)
    return degrees * (1 - part + 3.719 * part**0.5) ** 3
