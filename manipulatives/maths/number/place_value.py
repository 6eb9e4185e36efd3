"""What a digit is worth, and a number as blocks: thousands, hundreds, tens and ones.

**Blocks** are a dict of counts, `{"thousands": 0, "hundreds": 0, "tens": 2, "ones": 15}`; a place
left out has none. A count may be more than nine: two tens and fifteen ones are 35, as three tens
and five ones are.
The blocks of a number are *canonical* when each count is a digit; then they are the fewest.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from manipulatives.maths.time.day import is_whole

PLACES = ("thousands", "hundreds", "tens", "ones")
"""The places, the largest first, as they are written."""

WORTH = {"thousands": 1000, "hundreds": 100, "tens": 10, "ones": 1}
BASE = 10
LARGEST = 9999


Blocks = dict[str, int]
"""How many blocks there are of each place, all four named, as in traits and files."""


def check_place(place: object) -> str:
    """Check a place and return it.

    Raises:
        ValueError: there is no such place.

    Example:
        >>> check_place("tens")
        'tens'
    """
    if isinstance(place, str) and place in PLACES:
        return place
    raise ValueError(f"A place is {', '.join(map(repr, PLACES))}, not {place!r}.")


def check_blocks(blocks: object) -> Blocks:
    """Check blocks and return a copy with all places; a place left out has none.

    Raises:
        ValueError: an unknown place, a count that is no whole number, or more than 9999 in all.

    Example:
        >>> check_blocks({"tens": 2, "ones": 15})
        {'thousands': 0, 'hundreds': 0, 'tens': 2, 'ones': 15}
    """
    if isinstance(blocks, Mapping) and set(blocks) <= set(PLACES):
        full = {place: blocks.get(place, 0) for place in PLACES}
        if all(is_whole(count, LARGEST + 1) for count in full.values()) and _worth(full) <= LARGEST:
            return full
    raise ValueError(
        'Blocks are counts such as {"hundreds": 3, "tens": 4, "ones": 5}, in whole numbers from 0 '
        f"and worth at most {LARGEST} in all, not {blocks!r}."
    )


def check_number(number: object) -> int:
    """Check a number that blocks can show, and return it.

    Raises:
        ValueError: it is no whole number from 0 to 9999.

    Example:
        >>> check_number(345)
        345
    """
    if is_whole(number, LARGEST + 1):
        return number
    raise ValueError(f"Blocks show a whole number from 0 to {LARGEST}, not {number!r}.")


def check_places(places: object) -> int:
    """Check a number of places, counted from the ones, and return it.

    Raises:
        ValueError: it is not 1, 2, 3 or 4.

    Example:
        >>> check_places(2)
        2
    """
    if is_whole(places, len(PLACES) + 1) and places > 0:
        return places
    raise ValueError(f"There are 1 to {len(PLACES)} places, the ones first, not {places!r}.")


def number_of(blocks: Blocks) -> int:
    """Return the number that blocks show.

    Raises:
        ValueError: no blocks.

    Example:
        >>> number_of({"tens": 2, "ones": 15})
        35
    """
    return _worth(check_blocks(blocks))


def _worth(blocks: Blocks) -> int:
    return sum(blocks[place] * worth for place, worth in WORTH.items())


def pieces_of(blocks: Blocks) -> int:
    """Return how many blocks there are, whatever they are worth.

    Raises:
        ValueError: no blocks.

    Example:
        >>> pieces_of({"tens": 2, "ones": 15})
        17
    """
    return sum(check_blocks(blocks).values())


def is_canonical(blocks: Blocks) -> bool:
    """Return whether each count is a digit, so that no fewer blocks show the number.

    Raises:
        ValueError: no blocks.

    Example:
        >>> is_canonical({"tens": 2, "ones": 15})
        False
    """
    return all(count < BASE for count in check_blocks(blocks).values())


def fewest(number: int, places: int = 4) -> Blocks:
    """Return the blocks that show a number with the fewest pieces: its digits.

    Args:
        number: 0 to 9999.
        places: how many places there are blocks of, the ones first; with tens and ones alone,
            345 is 34 tens and 5 ones.

    Raises:
        ValueError: no such number, or no such places.

    Example:
        >>> fewest(345)
        {'thousands': 0, 'hundreds': 3, 'tens': 4, 'ones': 5}
        >>> fewest(345, 2)
        {'thousands': 0, 'hundreds': 0, 'tens': 34, 'ones': 5}
    """
    return next(representations(number, places))


def representations(number: int, places: int = 4) -> Iterator[Blocks]:
    """Yield all blocks that show a number, one by one: first the fewest, last the ones alone.

    Args:
        number: 0 to 9999.
        places: how many places there are blocks of, the ones first.

    Raises:
        ValueError: no such number, or no such places.

    Example:
        >>> [(blocks["tens"], blocks["ones"]) for blocks in representations(35)]
        [(3, 5), (2, 15), (1, 25), (0, 35)]
    """
    check_number(number)
    most = [number // WORTH[place] for place in PLACES]
    for absent in range(len(PLACES) - check_places(places)):
        most[absent] = 0
    for thousands in range(most[0], -1, -1):
        below_thousands = number - 1000 * thousands
        for hundreds in range(min(most[1], below_thousands // 100), -1, -1):
            below_hundreds = below_thousands - 100 * hundreds
            for tens in range(min(most[2], below_hundreds // 10), -1, -1):
                ones = below_hundreds - 10 * tens
                counts = (thousands, hundreds, tens, ones)
                yield dict(zip(PLACES, counts, strict=True))


def ways(number: int, places: int = 4) -> int:
    """Return the number of ways to show a number with blocks, without making them all.

    It is the coefficient of x to the power of the number in 1/((1-x)(1-x^10)(1-x^100)(1-x^1000)),
    the usual generating function of such counts.

    Args:
        number: 0 to 9999.
        places: how many places there are blocks of, the ones first.

    Raises:
        ValueError: no such number, or no such places.

    Example:
        >>> ways(35), ways(100), ways(100, places=2)
        (4, 12, 11)
    """
    check_number(number)
    if check_places(places) == 1:
        return 1
    if places == 2:  # noqa: PLR2004 - tens and ones: as many tens as one likes
        return number // BASE + 1
    return sum(ways(rest, places - 1) for rest in range(number, -1, -(BASE ** (places - 1))))


def parts_of(blocks: Blocks, *, zeros: bool = False) -> list[int]:
    """Return what the blocks of each place are worth, the largest place first.

    Parts that are zero are left out, or written below the largest one with `zeros`; no blocks at
    all are one part, 0.

    Raises:
        ValueError: no blocks.

    Example:
        >>> parts_of(fewest(305)), parts_of(fewest(305), zeros=True)
        ([300, 5], [300, 0, 5])
        >>> parts_of({"tens": 2, "ones": 15})
        [20, 15]
    """
    parts = [count * WORTH[place] for place, count in check_blocks(blocks).items()]
    while len(parts) > 1 and parts[0] == 0:
        del parts[0]
    return parts if zeros else [part for part in parts if part] or [0]


def partitioned(blocks: Blocks, *, zeros: bool = False) -> str:
    """Return the number as the sum of what the blocks of each place are worth.

    Of canonical blocks it is the expanded form; other blocks partition the number in another way.

    Raises:
        ValueError: no blocks.

    Example:
        >>> partitioned({"tens": 2, "ones": 15})
        '20 + 15'
    """
    return " + ".join(map(str, parts_of(blocks, zeros=zeros)))


def expanded_form(number: int, *, zeros: bool = False) -> str:
    """Return a number in expanded form (Common Core State Standards, 2.NBT.A.3).

    Args:
        number: 0 to 9999.
        zeros: whether parts that are zero are written.

    Raises:
        ValueError: no such number.

    Example:
        >>> expanded_form(345), expanded_form(305), expanded_form(305, zeros=True)
        ('300 + 40 + 5', '300 + 5', '300 + 0 + 5')
    """
    return partitioned(fewest(number), zeros=zeros)
