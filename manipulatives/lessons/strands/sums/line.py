"""Hops on a number line: counting on, counting back, and counting up to a number.

Each hop is what is said, what the class answers and where the hops have been by then.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from manipulatives.maths.columns.written_sum import MINUS

TEN = 10
# Up to here the hops are single ones, in tens and ones beyond.
SMALL = 20


class Hop(NamedTuple):
    """What happens at one press.

    Attributes:
        say: what the teacher says.
        chant: what the class answers.
        been: where the hops have been, the start first.
    """

    say: str
    chant: str
    been: tuple[int, ...]


def line(last: int, start: int | None = None, *, back: bool = False) -> dict[str, Any]:
    """Return the traits of a counting chart that shows a number line, with nothing hopped yet.

    Args:
        last: the largest number; the line begins at 0.
        start: where counting begins; None for 0.
        back: whether it goes back.

    Example:
        >>> line(10, 4)["start"], line(20, 13, back=True)["direction"]
        (4, 'back')
    """
    traits: dict[str, Any] = {**at([]), "first": 0, "last": last, "line": True}
    if last == TEN:
        # One row, with the zero in it.
        traits["width"] = TEN + 1
    if last > SMALL + TEN:
        # Pieces of such a line are long enough for a hop of ten.
        traits["step"] = TEN
    if start is not None:
        traits["start"] = start
    if back:
        traits["direction"] = "back"
    return traits


def at(been: list[int]) -> dict[str, Any]:
    """Return the trait of a chart on whose line these numbers were hopped to.

    Example:
        >>> at([8, 10])
        {'chart': {'counted': [8, 10], 'tapped': None, 'written': {}}}
    """
    return {"chart": {"counted": been, "tapped": None, "written": {}}}


def counting_on(start: int, by: int, method: str) -> list[Hop]:
    """Return the hops from a number on.

    Args:
        start: where they begin.
        by: how far they go.
        method: how the class works; "counting on" goes by ones, the others land on a full ten.

    Example:
        >>> for hop in counting_on(8, 5, "bridging ten"):
        ...     print(hop.say, "-", hop.chant, hop.been)
        Start at 8. - 8 (8,)
        8 needs 2 to make 10. - 8 + 2 = 10 (8, 10)
        5 is 2 and 3: hop 3 more. - 10 + 3 = 13 (8, 10, 13)
    """
    hops = [Hop(f"Start at {start}.", f"{start}", (start,))]
    if not by:
        return [*hops, Hop("Count on 0: stay there.", f"{start}", (start,))]
    tens, ones = _parts(start, by, 1)
    been = _in_tens(hops, start, tens, 1)
    here = been[-1]
    need = -here % TEN
    if method != "counting on" and 0 < need < ones:
        ten, end = here + need, here + ones
        been = (*been, ten)
        hops.append(Hop(f"{here} needs {need} to make {ten}.", f"{here} + {need} = {ten}", been))
        rest = ones - need
        say = f"{ones} is {need} and {rest}: hop {rest} more."
        hops.append(Hop(say, f"{ten} + {rest} = {end}", (*been, end)))
    elif ones:
        said = range(here + 1, here + ones + 1)
        hops.append(Hop(f"Count on {ones}.", listed(said), (*been, *said)))
    return hops


def counting_back(start: int, by: int, method: str) -> list[Hop]:
    """Return the hops from a number back.

    Example:
        >>> for hop in counting_back(13, 5, "bridging ten"):
        ...     print(hop.say, "-", hop.chant, hop.been)
        Start at 13. - 13 (13,)
        Take 3 to come to 10. - 13 − 3 = 10 (13, 10)
        5 is 3 and 2: hop 2 more. - 10 − 2 = 8 (13, 10, 8)
    """  # noqa: RUF002 - a true minus sign is said
    hops = [Hop(f"Start at {start}.", f"{start}", (start,))]
    if not by:
        return [*hops, Hop("Count back 0: stay there.", f"{start}", (start,))]
    tens, ones = _parts(start, by, -1)
    been = _in_tens(hops, start, tens, -1)
    here = been[-1]
    over = here % TEN
    if method != "counting on" and 0 < over < ones:
        ten, end = here - over, here - ones
        been = (*been, ten)
        chant = f"{here} {MINUS} {over} = {ten}"
        hops.append(Hop(f"Take {over} to come to {ten}.", chant, been))
        rest = ones - over
        say = f"{ones} is {over} and {rest}: hop {rest} more."
        hops.append(Hop(say, f"{ten} {MINUS} {rest} = {end}", (*been, end)))
    elif ones:
        said = range(here - 1, here - ones - 1, -1)
        hops.append(Hop(f"Count back {ones}.", listed(said), (*been, *said)))
    return hops


def counting_up(low: int, high: int, method: str) -> list[Hop]:
    """Return the hops from a number up to another, and how far they go together.

    Example:
        >>> for hop in counting_up(27, 63, "counting on"):
        ...     print(hop.say, "-", hop.chant, hop.been)
        Start at 27. - 27 (27,)
        Count on to 30. - 28, 29, 30 (27, 28, 29, 30)
        Count on in tens to 60. - 40, 50, 60 (27, 28, 29, 30, 40, 50, 60)
        Count on to 63. - 61, 62, 63 (27, 28, 29, 30, 40, 50, 60, 61, 62, 63)
        3 + 30 + 3 = 36. - 36 (27, 28, 29, 30, 40, 50, 60, 61, 62, 63)
    """
    been: tuple[int, ...] = (low,)
    hops = [Hop(f"Start at {low}.", f"{low}", been)]
    if low == high:
        return [*hops, Hop("It is there already: 0 hops.", "0", been)]
    next_ten, last_ten = low + -low % TEN, high // TEN * TEN
    by_ten = method != "counting on" or high > SMALL or high - low > TEN
    stops = [high]
    if by_ten and next_ten <= last_ten:
        stops = [next_ten, last_ten, high]
    here, parts = low, []
    for stop in stops:
        if stop == here:
            continue
        tens = by_ten and here % TEN == 0 and stop % TEN == 0
        said = range(here + TEN, stop + 1, TEN) if tens else range(here + 1, stop + 1)
        been = (*been, *said)
        in_tens = "in tens " if tens else ""
        hops.append(Hop(f"Count on {in_tens}to {stop}.", listed(said), been))
        parts.append(stop - here)
        here = stop
    far = high - low
    together = " + ".join(map(str, parts))
    say = f"{together} = {far}." if len(parts) > 1 else f"That is {far} {_steps(far)}."
    return [*hops, Hop(say, f"{far}", been)]


def listed(numbers: range | tuple[int, ...]) -> str:
    """Return numbers as they are counted aloud.

    Example:
        >>> listed(range(9, 14))
        '9, 10, 11, 12, 13'
    """
    return ", ".join(map(str, numbers))


def _steps(count: int) -> str:
    return "step" if count == 1 else "steps"


def _parts(start: int, by: int, way: int) -> tuple[int, int]:
    """Split how far the hops go into tens and ones; on a short line all are ones."""
    return (0, by) if max(start, start + way * by) <= SMALL else (by // TEN, by % TEN)


def _in_tens(hops: list[Hop], start: int, tens: int, way: int) -> tuple[int, ...]:
    """Append the hops of ten, and return where all hops have been."""
    if not tens:
        return (start,)
    said = tuple(start + way * TEN * ten for ten in range(1, tens + 1))
    word = "on" if way > 0 else "back"
    hops.append(Hop(f"Count {word} {tens * TEN} in tens.", listed(said), (start, *said)))
    return (start, *said)
