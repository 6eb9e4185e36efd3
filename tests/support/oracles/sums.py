"""Works out hops, blocks and judged statements again, from what is shown and the numbers of steps.

Nothing of the kit is used; answers are written out with num2words. Where a number is not so, or its
sentence says another one, it raises AssertionError.
"""

from __future__ import annotations

from support.oracles.place_value import WORTH, in_words, integers, some
from support.sentences import check_length

SIGNS = {"+": "+", "-": "\u2212"}
MOST = 400


def mat_value(blocks):
    """What the blocks of one mat are worth."""
    return sum(count * WORTH[place] for place, count in blocks.items())


def worked_out(operation, numbers):
    """What comes out of a sum or a difference."""
    first, *others = numbers
    return first + sum(others) if operation == "+" else first - sum(others)


def said_as(operation, numbers, result=None):
    """A sum, or an equation with a gap, as it is written."""
    left = f" {SIGNS[operation]} ".join("?" if n is None else f"{n}" for n in numbers)
    return left if result is None else f"{left} = {result}"


class SumOracle:
    """Follows the steps of one task; in the end `answer` is the right answer.

    `wanted` is what the plan of a story asks for, found by trying.
    """

    def __init__(self, start, vocabulary="us", method="counting on"):
        self.vocabulary, self.in_ones = vocabulary, method == "counting on"
        self.mats = [mat_value(one) for one in start.get("mat", [])]
        self.here = self.answer = self.wanted = self.whole = None
        # Where the hops have been, how far those to a number went, what the sides come to.
        self.path, self.parts, self.sides = [], [], []
        self.larger = False

    def follow(self, step):
        """Check one step."""
        check_length(step.say)
        self.step, self.said, self.before = step, integers(step.say), self.mats
        if "mat" in step.show:
            self.mats = [mat_value(one) for one in step.show["mat"]]
        numbers = dict(step.numbers)
        given = {"begin": numbers.pop("from")} if "from" in numbers else {}
        getattr(self, f"_{numbers.pop('act')}")(**given, **numbers)
        if "chart" in step.show and self.path:
            assert step.show["chart"]["counted"] == self.path
        elif "mat" in step.show and self.path:
            assert self.mats == [self.path[0], self.path[-1] - self.path[0]]

    def go(self, begin, way):
        """Hop on from where the last hop ended."""
        assert begin == self.here
        self.path = [*self.path, *way]
        self.here = self.path[-1]

    # Hops on the line

    def _start(self, numbers):
        assert self.said == numbers
        assert self.step.chant == f"{numbers[0]}"
        self.larger = "larger" in self.step.say
        [self.here] = self.path = numbers

    def _stay(self, number):
        assert number == self.here
        assert self.said == [0]
        assert self.step.chant == f"{number}"

    def _count(self, begin, by, to, counted):
        assert by in (1, -1, 10, -10)
        assert counted == list(range(begin + by, to + by, by))
        self.go(begin, counted)
        assert self.here == to
        if abs(by) == 1 and not self.in_ones:
            assert all(number % 10 for number in counted[:-1]), "it passes a ten"
        assert self.step.chant == ", ".join(map(str, counted))
        say = self.step.say
        assert ("tens" in say) == (abs(by) == 10)
        assert ("back" in say) == (by < 0)
        if " to " in say:
            assert self.said == [to]
            assert abs(by) == 1 or begin % 10 == to % 10 == 0
            self.parts.append(to - begin)
        else:
            assert self.said == [abs(to - begin)]

    def _hop(self, begin, by, to, whole=None, parts=None):
        self.go(begin, [begin + by])
        assert self.here == to
        assert not self.in_ones
        sign = SIGNS["+" if by > 0 else "-"]
        assert self.step.chant == f"{begin} {sign} {abs(by)} = {to}"
        if whole is None:
            assert to % 10 == 0 != begin % 10
            assert abs(by) < 10
            assert self.said == ([begin, by, to] if by > 0 else [-by, to])
            self.parts = [by]
            return
        [first] = self.parts
        assert first * by > 0
        assert parts == [abs(first), abs(by)]
        assert whole == sum(parts)
        assert self.said == [whole, *parts, abs(by)]
        self.parts = []

    def _far(self, begin, to, far):
        assert (begin, to) == (self.path[0], self.here)
        assert far == len(range(begin, to))
        assert self.said == [far]
        assert self.step.chant == f"{far}"
        assert ("steps" in self.step.say) == (far > 1)

    # With blocks

    def _part(self, part, place, digit):
        assert part == digit * WORTH[place]
        assert self.said == [part, digit]
        assert self.step.say.endswith(f" {self.step.chant}.")
        assert self.step.chant == some(digit, place)

    def by_place(self, place, numbers, result):
        """Check that so many of a place are put to others, or taken from them."""
        assert self.said == numbers
        assert all(some(number, place) in self.step.say for number in numbers)
        assert self.step.chant == some(result, place)
        # Blocks only change places.
        assert sum(self.mats) == sum(self.before)
        assert self.step.show["mat"][0][place] == result

    def _regroup(self, place, count, into, *, left, gives, now):
        assert (count, gives) == (10, 1)
        assert WORTH[into] == 10 * WORTH[place]
        assert sum(self.mats) == sum(self.before)
        blocks = self.step.show["mat"][0]
        assert (blocks[place], blocks[into]) == (left, now)
        assert left < 10
        assert self.said == [10, 1]
        assert all(name in self.step.say for name in (some(10, place), some(1, into)))
        first, *rest = self.step.chant.split(" and ")
        assert first == some(now, into)
        assert rest in ([some(left, place)], []) and (rest or left == 0)  # noqa: PT018 - one fact

    def _lay(self, number, so_far):
        assert sum(self.mats) == sum(self.before) + number == so_far
        assert self.said == [number]
        assert self.step.chant == f"{number}"

    # What a story says

    def _plan(self, operation, numbers, result):
        known = [number for number in (*numbers, result) if number is not None]
        # What is more here is fewer there, so the difference is said twice.
        twice = " here, so " in self.step.say
        assert self.said == [known[1]] * 2 if twice else set(self.said) == set(known)
        if "mat" in self.step.show:
            assert self.mats == [numbers[0], numbers[1] or 0]
        assert self.step.chant == said_as(operation, numbers, result)
        [self.wanted] = [
            tried
            for tried in range(MOST)
            if worked_out(operation, [tried if n is None else n for n in numbers])
            == (tried if result is None else result)
        ]

    # Sums that are worked out

    def _add(self, terms, total, *, answer=None, place=None):
        assert total == worked_out("+", terms)
        if answer is not None:
            self.end("+", terms, total, answer)
        elif place is not None:
            self.by_place(place, terms, total)
        elif len(self.parts) > 1:
            assert terms == self.parts
            assert total == self.here - self.path[0]
            assert self.said == [*terms, total]
            assert self.step.chant == f"{total}"
        elif "chart" in self.step.show:
            self.add_on_line(terms, total)
        else:
            self.side("+", terms, total)

    def _take(self, begin, take, left, *, answer=None, place=None):
        assert left == worked_out("-", [begin, take])
        if answer is not None:
            self.end("-", [begin, take], left, answer)
        elif place is not None:
            self.by_place(place, [begin, take], left)
        else:
            self.side("-", [begin, take], left)

    def add_on_line(self, terms, total):
        """Check one of the sums that doubles and three numbers are found by."""
        first, second = terms
        say = self.step.say
        named = [first] if "Double" in say else [second] if "more" in say else []
        assert self.said == [*named, *terms]
        assert self.step.chant == f"{total}"
        if self.here is None:
            self.path = [0, first] if "Double" in say else [first]
            self.here = first
        assert first == second or "double" not in say.lower()
        assert total == 10 or "for ten" not in say
        assert first >= second or "large" not in say
        self.go(first, [total])

    def side(self, operation, numbers, result):
        """Check one side of an equal sign."""
        assert self.step.say == f"{said_as(operation, numbers, result)}."
        assert self.step.chant == f"{result}"
        self.sides.append(result)
        assert self.mats == [*self.sides, 0][:2]

    # Sides of an equal sign

    def _digit(self, digit):
        assert self.said == [digit]
        assert self.step.chant == f"{digit}"
        self.sides.append(digit)

    def _compare(self, numbers, sign, answer=None):
        first, second = self.said
        assert numbers == [first, second]
        assert sign == ("<" if first < second else ">" if first > second else "=")
        if answer is None:
            assert sign == "<"
            assert "smaller" in self.step.say
            assert self.step.chant == f"{first}, then {second}"
            return
        assert numbers == self.sides == self.mats
        words = {"<": "less than", ">": "more than", "=": "as much as"}
        assert [word for word in words.values() if word in self.step.say] == [words[sign]]
        self.decide(answer, true=sign == "=")

    def _judge(self, answer):
        self.decide(answer, true=False)

    def decide(self, answer, *, true):
        """Check the judgement of a statement."""
        assert answer == ("true" if true else "false")
        assert self.step.say.endswith(f" {answer}.")
        assert answer == self.step.chant == self.step.answer
        self.answer = answer

    # The end

    def end(self, operation, numbers, result, answer):
        """Check the sum that is said in the end, and that the hops or blocks led to its answer."""
        assert self.step.say == f"{said_as(operation, numbers, result)}."
        assert answer in (*numbers, result)
        assert self.step.chant == in_words(answer, self.vocabulary)
        assert self.step.answer == f"{answer}"
        assert self.wanted in (None, answer)
        if self.larger:
            assert self.path[0] == max(numbers)
        if self.path:
            assert answer in (self.here, self.here - self.path[0])
        elif self.mats:
            assert answer in (*self.mats, sum(self.mats))
        self.answer = f"{answer}"
