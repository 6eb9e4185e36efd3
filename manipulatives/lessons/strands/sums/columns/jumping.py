"""A sum worked out on a number line: with a jump for each part of what comes or goes.

The largest parts jump first. A jump of ones that would pass a full ten lands on it and goes on.
"""

from __future__ import annotations

from manipulatives.lessons.strands.sums.acts import hopped, started, stayed
from manipulatives.lessons.strands.sums.columns.adding import bridges
from manipulatives.lessons.strands.sums.columns.working import Said, Working
from manipulatives.maths.columns.written_sum import ADD, BASE, Sum, digits_of, start_of


def jumping_steps(sum_: Sum, term: str, vocabulary: str) -> Working:
    """Return the jumps from the largest number on, or back from the upper one.

    Args:
        sum_: the sum, with nothing written to it.
        term: the class's word for regrouping; no jump needs it.
        vocabulary: "us" or "uk".

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> for step in jumping_steps(new_sum("+", [38, 47], "line"), "regroup", "us").steps:
        ...     print(step["say"], "-", step["class"])
        Start at the largest number, 47. - 47
        Jump on 30. - 77
        Jump on 3 to 80. - 80
        Jump on 5. - 85
        Read it all: 38 + 47. - eighty-five
    """
    working = Working(sum_, term)
    here, numbers = start_of(sum_), list(sum_["numbers"])
    adding = sum_["operation"] == ADD
    way = "Jump on" if adding else "Jump back"
    if not adding:
        which = ""
    elif numbers.count(here) == 1:
        which = "the largest number, "
    else:
        which = "the upper "
    working.step(Said(f"Start at {which}{here}.", f"{here}", started(here)))
    del numbers[numbers.index(here)]
    for number in numbers:
        if not number:
            said = Said(f"{way} 0: stay there.", f"{here}", stayed(here))
            working.step(said, None, [["jumps", 0]])
        for jump, to_ten in jumps_of(here, number, 1 if adding else -1):
            hop = hopped(here, jump if adding else -jump)
            here = hop["to"]
            say = f"{way} {jump} to {here}." if to_ten else f"{way} {jump}."
            working.step(Said(say, f"{here}", hop), None, [["jumps", jump]])
    return working.finish(vocabulary, write=True)


def jumps_of(start: int, number: int, way: int) -> list[tuple[int, bool]]:
    """Return the jumps for a number, and of each whether it lands on a full ten to go on.

    Args:
        start: where they begin.
        number: how far they go together.
        way: 1 for on, -1 for back.

    Example:
        >>> jumps_of(47, 38, 1)
        [(30, False), (3, True), (5, False)]
        >>> jumps_of(85, 38, -1)
        [(30, False), (5, True), (3, False)]
    """
    ones, *larger = digits_of(number)
    jumps = [
        (digit * BASE**column, False)
        for column, digit in reversed([*enumerate(larger, 1)])
        if digit
    ]
    # Whole tens have left the ones as they were at the start.
    need = (-way * start) % BASE
    to_next = bridges(start, ones) if way > 0 else 0 < need < ones
    if to_next:
        return [*jumps, (need, True), (ones - need, False)]
    return [*jumps, (ones, False)] if ones else jumps
