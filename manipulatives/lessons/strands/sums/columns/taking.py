"""Written subtraction as worked steps, column by column from the ones.

The first question is whether the upper digit is enough. Equal digits give 0. Only when it is not
enough, one of the next place is regrouped, through any run of zeros; then it is taken away.
"""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.strands.counting.steps import count_of
from manipulatives.lessons.strands.counting.steps import listed as counted_aloud
from manipulatives.lessons.strands.sums.acts import added, bridged, regrouped, stayed, worked_out
from manipulatives.lessons.strands.sums.columns.working import Said, Working
from manipulatives.lessons.tasks.task import Numbers
from manipulatives.maths.columns.written_sum import (
    BASE,
    MINUS,
    NAMES,
    PARTS,
    SUBTRACT,
    Sum,
    digits_of,
    result_of,
)
from manipulatives.maths.number.mats import compared
from manipulatives.words.columns import broken_ten, listed, some, title


def taking_steps(sum_: Sum, way: str, term: str, vocabulary: str) -> Working:
    """Return how a number is taken away in columns, with digits or with parts.

    Args:
        sum_: the sum, with nothing written to it; its form says whether the parts are written.
        way: how a column is worked out: "counting on", "known facts" or "bridging ten".
        term: the class's word for regrouping.
        vocabulary: "us" or "uk".

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> fresh = new_sum("-", [402, 178])
        >>> for step in taking_steps(fresh, "known facts", "regroup", "us").steps:
        ...     print(step["say"], "-", step["class"])
        Ones: is 2 enough to take away 8? - no
        The tens are 0: go to the hundreds. - 4 hundreds
        Regroup 1 hundred as 10 tens. - 3 hundreds and 10 tens
        Regroup 1 ten as 10 ones. - 9 tens and 12 ones
        Ones: what is 12 − 8? - 4
        Tens: is 9 enough to take away 7? - yes
        Tens: what is 9 − 7? - 2
        Hundreds: is 3 enough to take away 1? - yes
        Hundreds: what is 3 − 1? - 2
        Read it all: 402 − 178. - two hundred twenty-four
    """  # noqa: RUF002 - a true minus sign is written
    return _Taking(sum_, way, term).worked(vocabulary)


class _Taking:
    """A subtraction while it is worked out."""

    def __init__(self, sum_: Sum, way: str, term: str) -> None:
        self.working = Working(sum_, term)
        self.way = way
        self.parts = sum_["form"] == PARTS
        upper, lower = sum_["numbers"]
        self.now = digits_of(upper)
        self.lower = digits_of(lower)
        self.result = result_of(sum_)

    def worked(self, vocabulary: str) -> Working:
        for column in range(len(self.now)):
            if column < len(self.lower):
                self._take(column)
            else:
                self._keep(column)
        if not self.parts:
            return self.working.finish(vocabulary)
        digits = digits_of(self.result)
        parts = [digit * BASE**column for column, digit in enumerate(digits) if digit]
        parts.reverse()
        if len(parts) > 1:
            write = [["answer", column, digit] for column, digit in enumerate(digits)]
            question = f"Join the parts: {' + '.join(map(str, parts))}."
            self.working.step(Said(question, f"{self.result}", added(parts)), None, write)
            return self.working.finish(vocabulary)
        return self.working.finish(vocabulary, write=True)

    def _worth(self, digit: int, column: int) -> int:
        """What a digit is written as: with parts, what it is worth."""
        return digit * BASE**column if self.parts else digit

    def _writes(self, digit: int, column: int) -> list[list[Any]]:
        return [["parts" if self.parts else "answer", column, self._worth(digit, column)]]

    def _keep(self, column: int) -> None:
        """Work out a column where nothing is taken away."""
        digit, name = self.now[column], title(column)
        if digit or any(self.now[column:]):
            worth = self._worth(digit, column)
            numbers: Numbers = {"act": "digit", "digit": digit}
            if self.parts:
                numbers["worth"] = worth
            said = Said(f"{name}: nothing to take away.", f"{worth}", numbers)
            self.working.step(said, column, self._writes(digit, column))
        else:
            said = Said(f"{name}: nothing is left.", "nothing", {"act": "empty"})
            self.working.step(said, column)

    def _take(self, column: int) -> None:
        digits = self.now[column], self.lower[column]
        upper, lower = (self._worth(digit, column) for digit in digits)
        sign = compared(upper, lower)
        said = Said(
            f"{title(column)}: is {upper} enough to take away {lower}?",
            {"<": "no", "=": "yes, and 0 is left", ">": "yes"}[sign],
            {"act": "compare", "numbers": [upper, lower], "sign": sign},
        )
        self.working.step(said, column, self._writes(0, column) if sign == "=" else ())
        if sign == "=":
            return
        if sign == "<":
            self._regroup(column)
        write = self._writes(self.now[column] - self.lower[column], column)
        self.working.step(self._fact(column), column, write)

    def _regroup(self, column: int) -> None:
        source = next(place for place in range(column + 1, len(self.now)) if self.now[place])
        passed = list(range(column + 1, source))
        if passed:
            digit = self.now[source]
            say = f"The {listed(passed)} are 0: go to the {listed([source])}."
            places = [NAMES[place] for place in passed]
            numbers = {"act": "pass", "places": places, "digit": digit}
            self.working.step(Said(say, some(digit, source), numbers), source)
        for place in range(source, column, -1):
            self._break(place)

    def _break(self, place: int) -> None:
        """Regroup one of a place as ten of the next smaller one."""
        below = place - 1
        self.now[place] -= 1
        self.now[below] += BASE
        left, now = self.now[place], self.now[below]
        said = Said(
            broken_ten(place, self.working.term),
            f"{some(left, place)} and {some(now, below)}",
            regrouped(NAMES[place], NAMES[below], count=1, left=left, gives=BASE, now=now),
        )
        write = [["marks", each, self._worth(self.now[each], each)] for each in (place, below)]
        self.working.step(said, below, write)

    def _fact(self, column: int) -> Said:
        upper, lower, name = self.now[column], self.lower[column], title(column)
        left, over = upper - lower, upper - BASE
        if self.way == "counting on":
            return self._counted(upper, lower, name)
        if self.way == "bridging ten" and over > 0 and lower > over:
            rest = lower - over
            return Said(
                f"{upper} {MINUS} {lower}. Take {over} to come to 10.",
                f"{upper} {MINUS} {over} = 10, 10 {MINUS} {rest} = {left}",
                bridged(upper, -over, -rest),
            )
        upper, lower, left = (self._worth(each, column) for each in (upper, lower, left))
        question = f"{name}: what is {upper} {MINUS} {lower}?"
        return Said(question, f"{left}", worked_out(SUBTRACT, [upper, lower]))

    def _counted(self, upper: int, lower: int, name: str) -> Said:
        """Count up to the upper digit, or back from it where that is no longer."""
        left = upper - lower
        if lower > left:
            numbers = range(lower + 1, upper + 1)
            return Said(
                f"{name}: count on from {lower} to {upper}.",
                f"{counted_aloud(numbers)}: {left} {'step' if left == 1 else 'steps'}",
                {**count_of(numbers, 1, lower), "steps": left},
            )
        say = f"{name}: count back {lower} from {upper}."
        if not lower:
            return Said(say, f"{upper}", stayed(upper))
        numbers = range(upper - 1, left - 1, -1)
        return Said(say, counted_aloud(numbers), count_of(numbers, -1, upper))
