"""Additions in columns, with digits or with what they are worth."""

from __future__ import annotations

from support.oracles.columns.base import PLACES, OnSquares, amount


class Adding(OnSquares):
    """Follows the steps of an addition in columns."""

    def begin(self):
        """Nothing is carried and no column has been begun."""
        self.carry, self.total, self.waiting = 0, None, []

    def digits(self):
        """The digits of the column, the upper one first."""
        if self.place >= len(self.squares):
            return []
        return [int(square) for square in self.squares[self.place] if square != " "]

    def in_order(self):
        """The digits as they are added: the largest first, but where facts are known."""
        digits = self.digits()
        if self.method == "known facts":
            return digits
        first = max(range(len(digits)), key=lambda at: (digits[at], -at))
        return [digits[first], *digits[:first], *digits[first + 1 :]]

    def open_column(self, first):
        """Begin a column with its first digit; the others and the carry wait."""
        if self.total is None:
            self.total, *others = self.in_order()
            self.waiting = [(digit, False) for digit in others]
            if self.carry:
                self.waiting.append((self.carry, True))
        assert self.total == first

    def contribute(self, number, *, carried):
        """Add what comes next; a column below ten is done when nothing waits."""
        assert self.waiting.pop(0) == (number, carried)
        assert ("carried" in self.say) == carried
        self.total += number
        if not self.waiting and self.total < 10:
            self.write(self.total, 0)

    def write(self, digit, carry):
        """Write a digit of the answer, mark what is carried, and go to the next column."""
        self.answer[self.place] = digit
        self.place, self.carry, self.total, self.waiting = self.place + 1, carry, None, []
        if carry:
            self.marks[self.place] = [carry]

    def _start(self, numbers):
        digits = self.digits()
        first = max(digits)
        assert self.said == numbers == [first]
        assert self.chant == f"{first}"
        assert ("largest" in self.say) == (len(digits) > 1 and digits.count(first) == 1)
        assert ("upper" in self.say) == (digits.count(first) > 1)
        self.open_column(first)

    def _stay(self, number):
        assert (self.said, self.chant) == ([0], f"{number}")
        assert number == self.total
        self.contribute(0, carried=False)

    def _count(self, begin, by, to, counted, *, carried=False):
        assert (begin, by) == (self.total, 1)
        assert self.chant == self.check_counted(begin, by, to, counted)
        assert self.said == [len(counted)]
        self.contribute(len(counted), carried=carried)

    def _add(self, terms, total, *, carried=False):
        assert total == sum(terms)
        if self.expanded:
            self.add_parts(terms)
            return
        first, number = terms
        assert self.said == (terms[::-1] if carried else terms)
        assert self.chant == f"{total}"
        self.open_column(first)
        if self.method == "bridging ten":
            assert first % 10 == 0 or first % 10 + number <= 10, "it passes a ten"
        self.contribute(number, carried=carried)

    def add_parts(self, terms):
        """Add what the digits of a place are worth, or in the end all parts."""
        totals = [f"{sum(terms[: count + 1])}" for count in range(1, len(terms))]
        assert self.said == terms
        assert self.chant == ", ".join(totals)
        if self.named:
            assert terms == [digit * 10**self.place for digit in self.digits()]
            self.parts[self.place] = sum(terms)
            self.place += 1
        else:
            assert terms == [part for part in self.parts[::-1] if part is not None]
            self.write_result()

    def _bridge(self, begin, by, parts, ten, to, *, carried=False):
        self.check_bridge(begin, by, parts, ten, to)
        assert by > 0
        self.open_column(begin)
        need = parts[0]
        assert self.said == ([by, begin, need] if carried else [begin, by, begin, need, ten])
        self.contribute(by, carried=carried)

    def _digit(self, digit, worth=None, *, carried=False):
        shown = digit * 10**self.place if self.expanded else digit
        assert worth == (shown if self.expanded else None)
        assert (self.said, self.chant) == ([shown], f"{shown}")
        assert ("carried" in self.say) == carried
        assert self.digits() == ([] if carried else [digit])
        assert self.carry == (digit if carried else 0)
        if self.expanded:
            self.parts[self.place] = shown
            self.place += 1
        else:
            self.write(digit, 0)

    def _regroup(self, count, into, left, gives):
        self.check_term()
        one, other = PLACES.index(self.named), PLACES.index(into)
        assert all(PLACES[place][:-1] in self.say for place in (one, other)[self.term == "carry" :])
        assert not self.waiting
        carry, digit = self.total // 10, self.total % 10
        assert carry > 0
        assert (count, left, gives, other) == (10 * carry, digit, carry, one + 1)
        assert self.said == ([digit, carry] if self.term == "carry" else [count, carry])
        assert self.chant == f"{amount(carry, other)} and {amount(digit, one)}"
        self.write(digit, carry)
