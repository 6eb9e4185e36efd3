"""Hops on a number line: counting on, counting back, and counting up to a number.

Each hop is what is said, what the class answers, where the hops have been by then, and the numbers.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from manipulatives.lessons.strands.counting.steps import count_of, listed
from manipulatives.lessons.strands.sums.acts import added, hopped, started, stayed
from manipulatives.lessons.tasks.task import Numbers
from manipulatives.maths.columns.written_sum import MINUS

TEN, TWENTY, HUNDRED = 10, 20, 100
# Up to here the hops are single ones, in tens and ones beyond.
SMALL = TWENTY


class Hop(NamedTuple):
    """What happens at one press.

    Attributes:
        say: what the teacher says.
        chant: what the class answers.
        been: where the hops have been, the start first.
        numbers: what is done, as data.
    """

    say: str
    chant: str
    been: tuple[int, ...]
    numbers: Numbers


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


def line_end(largest: int) -> int:
    """Return how far the number line goes where numbers up to one are met.

    Example:
        >>> line_end(9), line_end(13), line_end(20), line_end(27), line_end(76)
        (10, 19, 20, 29, 100)
    """
    # Two full rows of ten, 0 to 9 and 10 to 19, where that is enough.
    ends = (TEN, TWENTY - 1, TWENTY, TWENTY + 9, HUNDRED)
    return next((end for end in ends if end >= largest), 2 * HUNDRED)


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
    return _counting(start, by, 1, method)


def counting_back(start: int, by: int, method: str) -> list[Hop]:
    """Return the hops from a number back.

    Example:
        >>> for hop in counting_back(13, 5, "bridging ten"):
        ...     print(hop.say, "-", hop.chant, hop.been)
        Start at 13. - 13 (13,)
        Take 3 to come to 10. - 13 − 3 = 10 (13, 10)
        5 is 3 and 2: hop 2 more. - 10 − 2 = 8 (13, 10, 8)
    """  # noqa: RUF002 - a true minus sign is said
    return _counting(start, by, -1, method)


def _counting(start: int, by: int, way: int, method: str) -> list[Hop]:
    word = "on" if way > 0 else "back"
    hops = [_start(start)]
    if not by:
        say = f"Count {word} 0: stay there."
        return [*hops, Hop(say, f"{start}", (start,), stayed(start))]
    tens, ones = _parts(start, by, way)
    if tens:
        say = f"Count {word} {tens * TEN} in tens."
        hops.append(_count(say, hops[-1].been, way * TEN, tens))
    been = hops[-1].been
    to_ten = -way * been[-1] % TEN
    if method != "counting on" and 0 < to_ten < ones:
        return [*hops, *_over_ten(been, way, to_ten, ones)]
    if ones:
        hops.append(_count(f"Count {word} {ones}.", been, way, ones))
    return hops


def _over_ten(been: tuple[int, ...], way: int, to_ten: int, ones: int) -> list[Hop]:
    """Return two hops, the first of them to the next full ten."""
    here, rest = been[-1], ones - to_ten
    ten = here + way * to_ten
    say = f"{here} needs {to_ten} to make {ten}." if way > 0 else f"Take {to_ten} to come to {ten}."
    first = _hop(say, been, way * to_ten)
    say = f"{ones} is {to_ten} and {rest}: hop {rest} more."
    return [first, _hop(say, first.been, way * rest, whole=ones, parts=[to_ten, rest])]


def _start(number: int) -> Hop:
    return Hop(f"Start at {number}.", f"{number}", (number,), started(number))


def _hop(say: str, been: tuple[int, ...], by: int, **more: Any) -> Hop:
    here, end = been[-1], been[-1] + by
    chant = f"{here} {'+' if by > 0 else MINUS} {abs(by)} = {end}"
    return Hop(say, chant, (*been, end), hopped(here, by, **more))


def _count(say: str, been: tuple[int, ...], by: int, times: int) -> Hop:
    said = tuple(been[-1] + by * time for time in range(1, times + 1))
    return Hop(say, listed(said), (*been, *said), count_of(said, by, been[-1]))


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
    hops = [_start(low)]
    distance = {"act": "far", "from": low, "to": high, "far": high - low}
    if low == high:
        return [*hops, Hop("It is there already: 0 hops.", "0", (low,), distance)]
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
        step, in_tens = (TEN, "in tens ") if tens else (1, "")
        say = f"Count on {in_tens}to {stop}."
        hops.append(_count(say, hops[-1].been, step, (stop - here) // step))
        parts.append(stop - here)
        here = stop
    far = high - low
    together = " + ".join(map(str, parts))
    several = len(parts) > 1
    say = f"{together} = {far}." if several else f"That is {far} {_steps(far)}."
    return [*hops, Hop(say, f"{far}", hops[-1].been, added(parts) if several else distance)]


def _steps(count: int) -> str:
    return "step" if count == 1 else "steps"


def _parts(start: int, by: int, way: int) -> tuple[int, int]:
    """Split how far the hops go into tens and ones; on a short line all are ones."""
    return (0, by) if max(start, start + way * by) <= SMALL else (by // TEN, by % TEN)
