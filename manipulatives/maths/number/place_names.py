"""How many blocks there are of each place, with the names of the places."""

from __future__ import annotations

from manipulatives.maths.number.place_value import Blocks, check_blocks


def counted(blocks: Blocks) -> str:
    """Return how many blocks there are of each place, in figures and the places' names.

    Places without a block are left out.

    Raises:
        ValueError: no blocks.

    Example:
        >>> from manipulatives.maths.number.place_value import fewest
        >>> counted(fewest(301)), counted(fewest(0))
        ('3 hundreds, 1 one', 'no blocks')
    """
    named = [some(count, place) for place, count in check_blocks(blocks).items() if count]
    return ", ".join(named) or "no blocks"


def some(count: int, place: str) -> str:
    """Return a number of blocks of one place in words of a lesson.

    Example:
        >>> some(1, "tens"), some(10, "ones")
        ('1 ten', '10 ones')
    """
    return f"{count} {place[:-1] if count == 1 else place}"
