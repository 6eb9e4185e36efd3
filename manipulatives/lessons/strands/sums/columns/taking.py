"""Written subtraction as worked steps, column by column from the ones.

The first question is whether the upper digit is enough. Equal digits give 0. Only when it is not
enough, one of the next place is regrouped, through any run of zeros; then it is taken away.
"""

from __future__ import annotations

from manipulatives.lessons.strands.sums.columns.working import ColumnStep, Working
from manipulatives.maths.columns.written_sum import BASE, MINUS, PARTS, Sum, digits_of, result_of
from manipulatives.words.columns import broken_ten, listed, some, title


def taking_steps(sum_: Sum, way: str, term: str, vocabulary: str) -> list[ColumnStep]:
    """Return how a number is taken away in columns, with digits or with parts.

    Args:
        sum_: the sum, with nothing written to it; its form says whether the parts are written.
        way: how a column is worked out: "counting on", "known facts" or "bridging ten".
        term: the class's word for regrouping.
        vocabulary: "us" or "uk".

    Example:
        >>> from manipulatives.maths.columns.written_sum import new_sum
        >>> for step in taking_steps(new_sum("-", [402, 178]), "known facts", "regroup", "us"):
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

    def worked(self, vocabulary: str) -> list[ColumnStep]:
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
            self.working.step(question, f"{self.result}", None, write)
            return self.working.finish(vocabulary)
        return self.working.finish(vocabulary, write=True)

    def _worth(self, digit: int, column: int) -> int:
        """What a digit is written as: with parts, what it is worth."""
        return digit * BASE**column if self.parts else digit

    def _writes(self, digit: int, column: int) -> list[list[object]]:
        return [["parts" if self.parts else "answer", column, self._worth(digit, column)]]

    def _keep(self, column: int) -> None:
        """Work out a column where nothing is taken away."""
        digit, name = self.now[column], title(column)
        if digit or any(self.now[column:]):
            answer = f"{self._worth(digit, column)}"
            write = self._writes(digit, column)
            self.working.step(f"{name}: nothing to take away.", answer, column, write)
        else:
            self.working.step(f"{name}: nothing is left.", "nothing", column)

    def _take(self, column: int) -> None:
        upper, lower = self.now[column], self.lower[column]
        name, take = title(column), self._worth(lower, column)
        question = f"{name}: is {self._worth(upper, column)} enough to take away {take}?"
        if upper == lower:
            write = self._writes(0, column)
            self.working.step(question, "yes, and 0 is left", column, write)
            return
        if upper > lower:
            self.working.step(question, "yes", column)
        else:
            self.working.step(question, "no", column)
            self._regroup(column)
        say, answer = self._fact(column)
        write = self._writes(self.now[column] - lower, column)
        self.working.step(say, answer, column, write)

    def _regroup(self, column: int) -> None:
        source = next(place for place in range(column + 1, len(self.now)) if self.now[place])
        passed = list(range(column + 1, source))
        if passed:
            say = f"The {listed(passed)} are 0: go to the {listed([source])}."
            self.working.step(say, some(self.now[source], source), source)
        for place in range(source, column, -1):
            self.now[place] -= 1
            self.now[place - 1] += BASE
            write = [
                ["marks", each, self._worth(self.now[each], each)] for each in (place, place - 1)
            ]
            say = broken_ten(place, self.working.term)
            left, more = (some(self.now[each], each) for each in (place, place - 1))
            self.working.step(say, f"{left} and {more}", place - 1, write)

    def _fact(self, column: int) -> tuple[str, str]:
        upper, lower, name = self.now[column], self.lower[column], title(column)
        left = upper - lower
        if self.way == "counting on":
            if lower > left:
                said = ", ".join(map(str, range(lower + 1, upper + 1)))
                return (
                    f"{name}: count on from {lower} to {upper}.",
                    f"{said}: {left} {'step' if left == 1 else 'steps'}",
                )
            said = ", ".join(map(str, range(upper - 1, left - 1, -1))) or f"{upper}"
            return f"{name}: count back {lower} from {upper}.", said
        over = upper - BASE
        if self.way == "bridging ten" and over > 0 and lower > over:
            rest = lower - over
            return (
                f"{upper} {MINUS} {lower}. Take {over} to come to 10.",
                f"{upper} {MINUS} {over} = 10, 10 {MINUS} {rest} = {left}",
            )
        upper, lower, left = (self._worth(each, column) for each in (upper, lower, left))
        return f"{name}: what is {upper} {MINUS} {lower}?", f"{left}"
