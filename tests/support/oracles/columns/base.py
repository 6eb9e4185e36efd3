"""A written sum as it stands in squares, and how it is read in the end."""

from __future__ import annotations

from support.oracles.place_value import in_words, integers

PLACES = ("ones", "tens", "hundreds", "thousands", "ten thousands")
TERMS = {"regroup": "Regroup ", "exchange": "Exchange ", "carry": " carry ", "borrow": "Borrow "}
SIGNS = {"-": "\u2212", "+": "+"}


def amount(count, place):
    """So many things of a place, such as "1 ten"."""
    name = PLACES[place]
    return f"{count} {name[:-1] if count == 1 else name}"


class OnSquares:
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
        self.expanded = method == "expanded columns"
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
        self.place, self.was_read = 0, False
        self.begin()

    def begin(self):
        """Note what is true before the first step."""

    def follow(self, step, numbers):
        """Check one step, and note what must be written after it."""
        self.say, self.chant, self.said = step["say"], step["class"], integers(step["say"])
        assert len(self.say.split()) <= 10, self.say
        numbers = dict(numbers)
        act, self.named = numbers.pop("act"), numbers.pop("place", None)
        given = {"begin": numbers.pop("from")} if "from" in numbers else {}
        title, colon, _ = self.say.partition(": ")
        if colon and title.lower() in PLACES:
            assert title.lower() == self.named == PLACES[self.place]
        if self.named is None:
            assert step["column"] is None
        else:
            self.check_column(act, step["column"])
        getattr(self, f"_{act}")(**given, **numbers)

    def check_column(self, act, column):
        """Check the column in which a step happens."""
        assert column == PLACES.index(self.named)
        assert act == "pass" or column == self.place

    def over(self):
        """Check that the whole sum was worked out and read."""
        assert self.was_read, "the sum was not read"
        assert int("".join(str(d) for d in self.answer[::-1] if d is not None)) == self.result

    def write_result(self):
        """Write the whole answer at once."""
        for place, digit in enumerate(reversed(str(self.result))):
            self.answer[place] = int(digit)

    def check_term(self):
        """Check that the class hears its own word for regrouping."""
        assert [name for name, word in TERMS.items() if word in self.say] == [self.term]

    def check_counted(self, begin, by, to, counted):
        """Check the numbers of a count, and return them as they are said."""
        assert counted == list(range(begin + by, to + by, by))
        return ", ".join(map(str, counted))

    def check_bridge(self, begin, by, parts, ten, to):
        """Check two hops by way of a full ten."""
        first, second = parts
        assert (begin + first, ten + second, first + second) == (ten, to, by)
        assert ten % 10 == 0 != begin % 10
        assert first * by > 0 < second * by
        sign, need, rest = SIGNS["+" if by > 0 else "-"], abs(first), abs(second)
        assert need < 10
        assert self.chant == f"{begin} {sign} {need} = {ten}, {ten} {sign} {rest} = {to}"

    def may_be_read(self):
        """Whether the answer is written only when it is read."""
        return self.expanded and len([part for part in self.parts if part]) <= 1

    def _read(self, operation, numbers, number):
        assert (operation == "+") is self.add
        assert self.said == numbers == self.numbers
        assert number == self.result
        assert f" {SIGNS[operation]} " in self.say
        assert self.chant == in_words(number, self.vocabulary)
        if all(digit is None for digit in self.answer):
            assert self.may_be_read()
            self.write_result()
        self.was_read = True
