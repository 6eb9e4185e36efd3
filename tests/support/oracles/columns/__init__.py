"""Works out the steps of written sums again, from the numbers as they stand in squares.

Nothing of the kit is used; answers are written out with num2words. Where a number is not so, or its
sentence says another one, it raises AssertionError.
"""

from __future__ import annotations

from support.oracles.columns.adding import Adding
from support.oracles.columns.hopping import Hopping
from support.oracles.columns.taking import Taking


def column_oracle(operation, numbers, method, vocabulary, term=None):
    """Return what follows the steps of one sum."""
    ways = {"+": Adding, "-": Taking}
    follow = Hopping if method == "number line jumps" else ways[operation]
    return follow(operation, numbers, method, vocabulary, term)
