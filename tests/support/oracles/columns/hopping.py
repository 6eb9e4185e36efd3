"""Sums that are worked out with hops on a number line."""

from __future__ import annotations

from support.oracles.columns.base import OnSquares


class Hopping(OnSquares):
    """Follows the hops of an addition or a subtraction."""

    def begin(self):
        """The numbers but the first wait, each in its parts, the largest part first."""
        rest = list(self.numbers)
        self.here = max(rest) if self.add else rest[0]
        rest.remove(self.here)
        self.waiting = [[int(d) * 10**at for at, d in enumerate(str(n)[::-1])][::-1] for n in rest]

    def _start(self, numbers):
        count = self.numbers.count(self.here) if self.add else 0
        assert self.said == numbers == [self.here]
        assert self.chant == f"{self.here}"
        assert ("largest" in self.say) == (count == 1)
        assert ("upper" in self.say) == (count > 1)

    def _stay(self, number):
        assert number == self.here
        assert self.waiting.pop(0) == [0]
        assert (self.said, self.chant) == ([0], f"{number}")
        self.jumps.append(0)

    def _hop(self, begin, by, to):
        """Each hop uses up the largest part that waits, or brings its ones to a full ten."""
        assert (begin, begin + by) == (self.here, to)
        assert (by > 0) is self.add
        assert ("back" in self.say) == (by < 0)
        far, parts = abs(by), self.waiting[0]
        place = next(at for at, part in enumerate(parts) if part)
        if len(self.said) == 1:
            assert far == parts[place]
            if far < 10 and begin % 10:
                assert far <= (-begin if self.add else begin) % 10, "it passes a ten"
        else:
            assert self.said[1:] == [to]
            assert to % 10 == 0
            assert 0 < far < parts[place] < 10
        assert (self.said[0], self.chant) == (far, f"{to}")
        parts[place] -= far
        if not any(parts):
            self.waiting.pop(0)
        self.here = to
        self.jumps.append(far)

    def may_be_read(self):
        """Whether all hops are done."""
        return (self.here, self.waiting) == (self.result, [])
