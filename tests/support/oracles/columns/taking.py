"""Subtractions in columns, with digits or with what they are worth."""

from __future__ import annotations

from support.oracles.columns.base import PLACES, OnSquares, amount


class Taking(OnSquares):
    """Follows the steps of a subtraction in columns."""

    def begin(self):
        """The upper digits stand as they are printed, and none has been compared."""
        self.now, self.enough = [int(square[0]) for square in self.squares], None

    def check_column(self, act, column):
        """Check the column in which a step happens: regrouping, the one that gains."""
        if act == "regroup":
            assert column == PLACES.index(self.named) - 1
        else:
            super().check_column(act, column)

    def shown(self, digit):
        """A digit as it is written in the column."""
        return digit * 10**self.place if self.expanded else digit

    def lower(self):
        """The lower digit of the column."""
        return int(self.squares[self.place][1])

    def difference(self):
        """The digits of the column that is about to be worked out, and what comes out."""
        assert self.enough is not None, "not compared yet"
        upper, lower = self.now[self.place], self.lower()
        assert upper > lower
        return upper, lower, upper - lower

    def leave(self, digit):
        """Write what is left in a column, and go to the next."""
        row = self.parts if self.expanded else self.answer
        row[self.place] = self.shown(digit)
        self.place, self.enough = self.place + 1, None

    def _compare(self, numbers, sign):
        upper, lower = self.now[self.place], self.lower()
        assert self.said == numbers == [self.shown(upper), self.shown(lower)]
        assert self.enough is None, "compared already"
        self.enough = upper >= lower
        assert sign == ("=" if upper == lower else ">" if self.enough else "<")
        assert self.chant == {"=": "yes, and 0 is left", ">": "yes", "<": "no"}[sign]
        if sign == "=":
            self.leave(0)

    def _pass(self, places, digit):
        to = PLACES.index(self.named)
        assert self.said == [0]
        assert self.enough is False
        assert [PLACES.index(place) for place in places] == list(range(self.place + 1, to))
        assert places
        assert all(place in self.say for place in [*places, self.named])
        assert not any(self.now[self.place + 1 : to])
        assert digit == self.now[to] > 0
        assert self.chant == amount(digit, to)

    def _regroup(self, count, into, left, gives, now):
        self.check_term()
        large, small = PLACES.index(self.named), PLACES.index(into)
        assert all(PLACES[place][:-1] in self.say for place in (large, small))
        assert self.enough is False, "regrouped though it was enough"
        assert large == small + 1
        assert self.now[large] > 0
        assert self.now[self.place] < self.lower(), "once too often"
        self.now[large] -= 1
        self.now[small] += 10
        assert (count, left, gives, now) == (1, self.now[large], 10, self.now[small])
        assert self.said == [1, 10]
        assert self.chant == f"{amount(left, large)} and {amount(now, small)}"
        for place in (large, small):
            self.marks[place].append(self.now[place] * (10**place if self.expanded else 1))

    def _take(self, begin, take, left):
        upper, lower, rest = self.difference()
        assert [begin, take, left] == [self.shown(number) for number in (upper, lower, rest)]
        assert (self.said, self.chant) == ([begin, take], f"{left}")
        if self.method == "bridging ten":
            assert upper <= 10 or lower <= upper - 10, "it passes ten"
        self.leave(rest)

    def _bridge(self, begin, by, parts, ten, to):
        self.check_bridge(begin, by, parts, ten, to)
        upper, lower, left = self.difference()
        assert (begin, by, ten, to) == (upper, -lower, 10, left)
        assert self.said == [upper, lower, -parts[0], 10]
        self.leave(left)

    def _stay(self, number):
        upper, lower, left = self.difference()
        assert (number, lower, left) == (upper, 0, upper)
        assert (self.said, self.chant) == ([0, upper], f"{upper}")
        self.leave(left)

    def _count(self, begin, by, to, counted, steps=None):
        listed = self.check_counted(begin, by, to, counted)
        upper, lower, left = self.difference()
        assert self.said == [lower, upper]
        assert ("back" in self.say) == (by < 0)
        if by < 0:
            assert (begin, by, to, steps) == (upper, -1, left, None)
            assert lower <= left, "counting on is shorter"
            assert self.chant == listed
        else:
            assert (begin, by, to, steps) == (lower, 1, upper, left)
            assert left < lower, "counting back is shorter"
            assert self.chant == f"{listed}: {left} {'step' if left == 1 else 'steps'}"
        self.leave(left)

    def _digit(self, digit, worth=None):
        assert self.squares[self.place][1] == " "
        assert digit == self.now[self.place]
        assert any(self.now[self.place :]), "a 0 in front"
        shown = self.shown(digit)
        assert worth == (shown if self.expanded else None)
        assert (self.said, self.chant) == ([], f"{shown}")
        self.leave(digit)

    def _empty(self):
        assert self.squares[self.place][1] == " "
        assert not any(self.now[self.place :])
        assert (self.said, self.chant) == ([], "nothing")
        self.place += 1

    def _drop(self, zeros, number):
        length = len(str(self.result))
        front = [digit for digit in self.answer[length:] if digit is not None]
        assert front == [0] * zeros != []
        assert (number, self.chant) == (self.result, f"{number}")
        assert ("0s" in self.say) == (zeros > 1)
        self.answer[length:] = [None] * (len(self.answer) - length)

    def _add(self, terms, total):
        # Parts that are nothing are not joined.
        assert self.said == terms == [part for part in self.parts[::-1] if part]
        assert total == sum(terms) == self.result
        assert self.chant == f"{total}"
        self.write_result()
