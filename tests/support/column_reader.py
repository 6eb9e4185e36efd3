# ruff: noqa: D102 - each method is named after the sentence that it understands
"""Reads worked sums as a pupil would who checks every word: an opinion apart from the kit's.

The reader knows the two numbers as they stand in squares, and works everything else out from what
is said. It uses nothing of the kit: where a step says what is not so, it raises AssertionError.
"""

from __future__ import annotations

import re

from num2words import num2words

WORDS = ("one", "ten", "hundred", "thousand", "ten thousand")
TITLES = {f"{word}s".capitalize(): place for place, word in enumerate(WORDS)}
PLACE = re.compile(r"\b(ten thousand|thousand|hundred|ten|one)s?\b")
CHAIN = re.compile(r"\d+(?: \+ \d+)*")


def in_words(number, vocabulary):
    words = num2words(number).replace(",", "")
    return words if vocabulary == "uk" else words.replace(" and ", " ")


def amount(count, place):
    return f"{count} {WORDS[place]}{'' if count == 1 else 's'}"


def parse(say):
    """Take a sentence apart: its column, its pattern, its numbers, the places it names."""
    name, colon, rest = say.partition(": ")
    if not colon or name not in TITLES:
        name, rest = None, say
    numbers = [int(number) for number in re.findall(r"\d+", rest)]
    pattern = PLACE.sub("@", CHAIN.sub("#", rest))
    places = [WORDS.index(word) for word in PLACE.findall(rest)]
    return TITLES.get(name), pattern, numbers, places


class Reader:
    """Follows the steps of one sum.

    After each step `answer`, `marks`, `parts` and `jumps` are what must be written by then.
    """

    def __init__(self, operation, numbers, method, vocabulary, term):
        self.add, self.numbers, self.method = operation == "+", numbers, method
        self.vocabulary = vocabulary
        if term in ("carry", "borrow"):
            self.term = "carry" if self.add else "borrow"
        else:
            self.term = term or {"us": "regroup", "uk": "exchange"}[vocabulary]
        self.expanded, self.line = method == "expanded columns", method == "number line jumps"
        # Squares as they stand on paper: text, so that an empty square is no 0.
        longest = max(len(str(number)) for number in numbers)
        self.squares = [
            [str(number).rjust(longest)[-1 - place] for number in numbers]
            for place in range(longest)
        ]
        width = longest + self.add
        self.answer, self.marks = [None] * width, [[] for _ in range(width)]
        self.parts, self.jumps = ([None] * width if self.expanded else []), []
        self.result = sum(numbers) if self.add else numbers[0] - numbers[1]
        self.carry = self.place = 0
        self.total, self.waiting = None, []
        self.asked = self.enough = self.here = None
        if not self.add:
            self.now = [int(square[0]) for square in self.squares]

    def follow(self, say, answer):
        """Check one step, and note what must be written after it."""
        place, pattern, numbers, places = parse(say)
        assert len(say.split()) <= 10, say
        if place is not None:
            assert place == self.place, say
        handler = HANDLERS.get((self.add, pattern))
        assert handler is not None, f"What does {say!r} mean? ({pattern})"
        handler(self, numbers, answer, places)

    def over(self):
        assert self.asked == "all", "the sum was not read"
        assert self.value() == self.result

    def value(self):
        return int("".join("" if digit is None else str(digit) for digit in self.answer[::-1]))

    # Adding in columns

    def digits(self):
        if self.place >= len(self.squares):
            return []
        return [int(square) for square in self.squares[self.place] if square != " "]

    def contribute(self, amount, answer, said=None):
        self.total += amount
        assert answer == (said or str(self.total)), (answer, said, self.total)
        self.maybe_write()

    def maybe_write(self):
        if not self.waiting and self.total < 10:
            self.write(self.total, 0)

    def write(self, digit, carry):
        self.answer[self.place] = digit
        self.place, self.carry, self.total, self.waiting = self.place + 1, carry, None, []
        if carry:
            self.marks[self.place] = [carry]

    def queue(self, digits):
        """The digits still to come, then the carry, which is marked so that it is told apart."""
        self.waiting = [(digit, False) for digit in digits]
        if self.carry:
            self.waiting.append((self.carry, True))

    def next_is(self, number, *, carried):
        assert self.waiting.pop(0) == (number, carried)

    def by_largest(self):
        digits = self.digits()
        first = max(range(len(digits)), key=lambda at: (digits[at], -at))
        return [digits[first], *digits[:first], *digits[first + 1 :]]

    def start(self, numbers, answer, kind):
        digits = self.digits()
        largest = max(digits)
        assert kind == (
            "only" if len(digits) == 1 else "largest" if digits.count(largest) == 1 else "upper"
        )
        assert numbers == [largest]
        assert answer == str(largest)
        self.total = largest
        self.queue(self.by_largest()[1:])

    def counted(self, number, answer, *, carried):
        self.next_is(number, carried=carried)
        said = [str(self.total + one + 1) for one in range(number)]
        self.contribute(number, answer, ", ".join(said) or str(self.total))

    def open_column(self, first):
        """The column begins with a question that names its first digit."""
        if self.total is None:
            digits = self.by_largest() if self.method == "bridging ten" else self.digits()
            assert first == digits[0]
            self.total = first
            self.queue(digits[1:])
        assert self.total == first

    def sum_asked(self, numbers, answer, _):
        if self.expanded:
            self.part_asked(numbers, answer)
            return
        first, number = numbers
        self.open_column(first)
        self.next_is(number, carried=False)
        if self.method == "bridging ten":
            assert first % 10 == 0 or first % 10 + number <= 10, "it passes a ten"
        self.contribute(number, answer)

    def bridged(self, numbers, answer, _):
        first, number, again, need, ten = numbers
        assert (first, first % 10 + need, ten) == (again, 10, first + need)
        self.open_column(first)
        self.next_is(number, carried=False)
        self.across(first, need, number, answer)

    def across(self, first, need, number, answer):
        assert need < number
        left, right = answer.split(", ")
        assert left == f"{first} + {need} = {first + need}"
        assert right == f"{first + need} + {number - need} = {first + number}"
        self.contribute(number, f"{self.total + number}")

    def carried_bridged(self, numbers, answer, _):
        carry, first, need = numbers
        self.open_column(first)
        self.next_is(carry, carried=True)
        assert first % 10 + need == 10
        self.across(first, need, carry, answer)

    def carried_added(self, numbers, answer, _):
        carry, first = numbers
        self.open_column(first)
        self.next_is(carry, carried=True)
        self.contribute(carry, answer)

    def only_digit(self, numbers, answer, _):
        [digit] = self.digits()
        worth = digit * 10**self.place if self.expanded else digit
        assert (numbers, answer, self.carry) == ([worth], str(worth), 0)
        if self.expanded:
            self.parts[self.place] = worth
            self.place += 1
        else:
            self.write(digit, 0)

    def only_carry(self, numbers, answer, _):
        assert self.digits() == []
        assert numbers == [self.carry]
        assert answer == str(self.carry)
        self.write(self.carry, 0)

    def full(self, given, made, places, answer, term):
        assert self.term == term
        assert not self.waiting
        assert self.total >= 10
        carry, digit = self.total // 10, self.total % 10
        assert (given, made) == (10 * carry, carry)
        assert places == [self.place, self.place + 1]
        self.carried_over(carry, digit, answer)

    def write_and_carry(self, numbers, answer, places):
        assert self.term == "carry"
        assert not self.waiting
        carry, digit = self.total // 10, self.total % 10
        assert carry
        assert (numbers, places) == ([digit, carry], [self.place + 1])
        self.carried_over(carry, digit, answer)

    def carried_over(self, carry, digit, answer):
        assert answer == f"{amount(carry, self.place + 1)} and {amount(digit, self.place)}"
        self.write(digit, carry)

    # Adding in parts

    def part_asked(self, numbers, answer):
        assert numbers == [digit * 10**self.place for digit in self.digits()]
        self.running(numbers, answer)
        self.parts[self.place] = sum(numbers)
        self.place += 1

    def running(self, numbers, answer):
        totals, so_far = [], numbers[0]
        for number in numbers[1:]:
            so_far += number
            totals.append(str(so_far))
        assert answer == ", ".join(totals)

    def parts_added(self, numbers, answer, _):
        assert numbers == [part for part in self.parts[::-1] if part is not None]
        self.running(numbers, answer)
        self.write_result()

    def write_result(self):
        for place, digit in enumerate(reversed(str(self.result))):
            self.answer[place] = int(digit)

    # Taking away

    def shown(self, digit):
        return digit * 10**self.place if self.expanded else digit

    def lower(self):
        return int(self.squares[self.place][1])

    def question(self, numbers, answer, _):
        upper, lower = self.now[self.place], self.lower()
        assert numbers == [self.shown(upper), self.shown(lower)]
        assert self.enough is None, "asked already"
        self.enough = upper >= lower
        if upper == lower:
            assert answer == "yes, and 0 is left"
            self.left(0)
        else:
            assert answer == ("yes" if self.enough else "no")

    def left(self, digit):
        row = self.parts if self.expanded else self.answer
        row[self.place] = self.shown(digit)
        self.place, self.enough = self.place + 1, None

    def past_zeros(self, numbers, answer, places):
        *passed, to = places
        assert numbers == [0]
        assert self.enough is False
        assert passed == list(range(self.place + 1, to))
        assert passed
        assert all(self.now[place] == 0 for place in passed)
        assert self.now[to] > 0
        assert answer == amount(self.now[to], to)

    def broken(self, numbers, places, answer, term):
        assert self.term == term
        assert self.enough is False, "regrouped though it was enough"
        large, small = places
        assert numbers == [1, 10]
        assert large == small + 1
        assert self.now[large] > 0
        assert self.now[self.place] < self.lower(), "once too often"
        self.now[large] -= 1
        self.now[small] += 10
        assert answer == f"{amount(self.now[large], large)} and {amount(self.now[small], small)}"
        for place in places:
            self.marks[place].append(self.now[place] * (10**place if self.expanded else 1))

    def difference(self):
        """The column is about to be worked out, and what comes out."""
        upper, lower = self.now[self.place], self.lower()
        assert self.enough is not None, "not asked whether it is enough"
        assert upper > lower
        return upper, lower, upper - lower

    def take_asked(self, numbers, answer, _):
        upper, lower, left = self.difference()
        assert numbers == [self.shown(upper), self.shown(lower)]
        assert answer == str(self.shown(left))
        if self.method == "bridging ten":
            assert upper <= 10 or lower <= upper - 10, "it passes ten"
        self.left(left)

    def back_over_ten(self, numbers, answer, _):
        upper, lower, left = self.difference()
        assert numbers == [upper, lower, upper - 10, 10]
        first, rest = answer.split(", ")
        assert first == f"{upper} \u2212 {upper - 10} = 10"
        assert rest == f"10 \u2212 {lower - (upper - 10)} = {left}"
        assert lower > upper - 10 > 0
        self.left(left)

    def count_back(self, numbers, answer, _):
        upper, lower, left = self.difference()
        assert numbers == [lower, upper]
        assert lower <= left, "counting on is shorter"
        said = [str(upper - one - 1) for one in range(lower)]
        assert answer == (", ".join(said) or str(upper))
        self.left(left)

    def count_up(self, numbers, answer, _):
        upper, lower, left = self.difference()
        assert numbers == [lower, upper]
        assert left < lower, "counting back is shorter"
        said, steps = answer.split(": ")
        assert said.split(", ") == [str(lower + one + 1) for one in range(left)]
        assert steps == f"{left} {'step' if left == 1 else 'steps'}"
        self.left(left)

    def nothing_to_take(self, _, answer, __):
        assert self.squares[self.place][1] == " "
        digit = self.now[self.place]
        assert any(self.now[self.place :]), "a 0 in front"
        assert answer == str(self.shown(digit))
        self.left(digit)

    def nothing_left(self, _, answer, __):
        assert self.squares[self.place][1] == " "
        assert not any(self.now[self.place :])
        assert answer == "nothing"
        self.place += 1

    def zeros_in_front(self, count, answer):
        front = self.answer[len(str(self.result)) :]
        written = [digit for digit in front if digit is not None]
        assert written
        assert set(written) == {0}
        assert (len(written) > 1) == (count > 1)
        assert answer == str(self.result)
        self.answer = [*self.answer[: len(str(self.result))], *[None] * len(front)]

    def parts_joined(self, numbers, answer, _):
        assert numbers == [part for part in self.parts[::-1] if part]
        assert sum(numbers) == self.result
        assert answer == str(self.result)
        self.write_result()

    # Jumping

    def line_start(self, numbers, answer, kind):
        first = max(self.numbers) if self.add else self.numbers[0]
        if self.add:
            assert kind == ("largest" if self.numbers.count(first) == 1 else "upper")
        assert numbers == [first]
        assert answer == str(first)
        self.here = first
        at = self.numbers.index(first)
        rest = [*self.numbers[:at], *self.numbers[at + 1 :]]
        self.waiting = [
            [int(digit) * 10**place for place, digit in reversed([*enumerate(str(number)[::-1])])]
            for number in rest
        ]

    def jumped(self, jump, answer, to=None):
        """Each jump uses up the largest part that waits, or brings its ones to a full ten."""
        parts = self.waiting[0]
        place = next(at for at, part in enumerate(parts) if part)
        before = self.here
        self.here += jump if self.add else -jump
        if to is None:
            assert jump == parts[place]
            if jump < 10 and before % 10:
                room = 10 - before % 10 if self.add else before % 10
                assert jump <= room, "it passes a ten"
        else:
            assert (to, to % 10) == (self.here, 0)
            assert 0 < jump < parts[place] < 10
        parts[place] -= jump
        if not any(parts):
            self.waiting.pop(0)
        assert answer == str(self.here)
        self.jumps.append(jump)

    def no_jump(self, numbers, answer, _):
        assert numbers == [0]
        assert self.waiting[0] == [0]
        self.waiting.pop(0)
        assert answer == str(self.here)
        self.jumps.append(0)

    # The end

    def read_all(self, numbers, answer, _):
        assert numbers == self.numbers
        assert answer == in_words(self.result, self.vocabulary)
        if self.line:
            assert self.here == self.result
            assert not any(map(any, self.waiting))
        if all(digit is None for digit in self.answer):
            assert self.line or (self.expanded and len([p for p in self.parts if p]) <= 1)
            self.write_result()
        self.asked = "all"


def _both(pattern, handler):
    return {(True, pattern): handler, (False, pattern): handler}


def _start(kind):
    """Starting to count in a column, or to jump on a line: both say "start at"."""
    return lambda reader, numbers, answer, _: reader.start(numbers, answer, kind)


HANDLERS = {
    (True, "start at the largest digit, #."): _start("largest"),
    (True, "start at the upper #."): _start("upper"),
    (True, "start at #."): _start("only"),
    (True, "Count on #."): lambda r, n, a, _: r.counted(n[0], a, carried=False),
    (True, "Count on the carried #."): lambda r, n, a, _: r.counted(n[0], a, carried=True),
    (True, "what is #?"): Reader.sum_asked,
    (True, "What is #?"): Reader.sum_asked,
    (True, "#. # needs # to make #."): Reader.bridged,
    (True, "add the carried #: # needs #."): Reader.carried_bridged,
    (True, "Add the carried #: # needs #."): Reader.carried_bridged,
    (True, "add the carried # to #."): Reader.carried_added,
    (True, "Add the carried # to #."): Reader.carried_added,
    (True, "only the #."): Reader.only_digit,
    (True, "only #."): Reader.only_digit,
    (True, "only the carried #."): Reader.only_carry,
    (True, "Regroup # @ as # @."): lambda r, n, a, p: r.full(*n, p, a, "regroup"),
    (True, "Exchange # @ for # @."): lambda r, n, a, p: r.full(*n, p, a, "exchange"),
    (True, "Write # and carry # @."): Reader.write_and_carry,
    (True, "Add the parts: #."): Reader.parts_added,
    (False, "is # enough to take away #?"): Reader.question,
    (False, "The @ are #: go to the @."): Reader.past_zeros,
    (False, "The @ and @ are #: go to the @."): Reader.past_zeros,
    (False, "Regroup # @ as # @."): lambda r, n, a, p: r.broken(n, p, a, "regroup"),
    (False, "Exchange # @ for # @."): lambda r, n, a, p: r.broken(n, p, a, "exchange"),
    (False, "Borrow # @: # more @."): lambda r, n, a, p: r.broken(n, p, a, "borrow"),
    (False, "what is # \u2212 #?"): Reader.take_asked,
    (False, "# \u2212 #. Take # to come to #."): Reader.back_over_ten,
    (False, "count back # from #."): Reader.count_back,
    (False, "count on from # to #."): Reader.count_up,
    (False, "nothing to take away."): Reader.nothing_to_take,
    (False, "nothing is left."): Reader.nothing_left,
    (False, "The # in front is not needed."): lambda r, _, a, __: r.zeros_in_front(1, a),
    (False, "The #s in front are not needed."): lambda r, _, a, __: r.zeros_in_front(2, a),
    (False, "Join the parts: #."): Reader.parts_joined,
    (True, "Start at the largest number, #."): lambda r, n, a, _: r.line_start(n, a, "largest"),
    (True, "Start at the upper #."): lambda r, n, a, _: r.line_start(n, a, "upper"),
    (False, "Start at #."): lambda r, n, a, _: r.line_start(n, a, "only"),
    (True, "Jump on #."): lambda r, n, a, _: r.jumped(n[0], a),
    (False, "Jump back #."): lambda r, n, a, _: r.jumped(n[0], a),
    (True, "Jump on # to #."): lambda r, n, a, _: r.jumped(n[0], a, n[1]),
    (False, "Jump back # to #."): lambda r, n, a, _: r.jumped(n[0], a, n[1]),
    **_both("Jump on #: stay there.", Reader.no_jump),
    **_both("Jump back #: stay there.", Reader.no_jump),
    (True, "Read it all: #."): Reader.read_all,
    (False, "Read it all: # \u2212 #."): Reader.read_all,
}
