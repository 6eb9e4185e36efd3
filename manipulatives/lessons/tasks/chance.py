"""Random choices from a seed: the same on every machine and with every version of Python."""

from __future__ import annotations

import random
from itertools import islice
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

T = TypeVar("T")


class Chance:
    """Random choices; the same seed always gives the same ones.

    Python promises to keep the sequence of `random()` for a seed, and of no other method; so
    everything here is made from that one (Python library reference, *random*, "Notes on
    reproducibility"). The choices are even as far as anyone can see: `random()` has 2**53 values,
    so for n up to a million no one of n is favoured by more than one part in 2**33.

    Args:
        seed: a whole number from 0, or a text.

    Example:
        >>> Chance(90213).below(144) == Chance(90213).below(144)
        True
    """

    def __init__(self, seed: int | str) -> None:
        self._source = random.Random()  # noqa: S311 - tasks, not secrets
        self._source.seed(seed, version=2)

    def random(self) -> float:
        """Return a number from 0 up to but not including 1.

        Example:
            >>> 0 <= Chance(1).random() < 1
            True
        """
        return self._source.random()

    def below(self, n: int) -> int:
        """Return one of 0 … n - 1, each as likely as the others.

        Raises:
            ValueError: n is less than 1.

        Example:
            >>> Chance(1).below(1)
            0
        """
        if n < 1:
            raise ValueError(f"There is no whole number from 0 that is below {n}; give 1 or more.")
        return int(self.random() * n)

    def choose(self, seq: Sequence[T]) -> T:
        """Return one item, each as likely as the others.

        Raises:
            ValueError: there is none.

        Example:
            >>> Chance(1).choose(["bell tower"])
            'bell tower'
        """
        return seq[self.below(len(seq))]

    def sample(self, seq: Sequence[T], k: int) -> list[T]:
        """Return k items from different places, every order as likely as the others.

        The first items do not depend on k: asking for more only adds to the end.

        Raises:
            ValueError: there are fewer than k.

        Example:
            >>> Chance(1).sample(range(144), 3) == Chance(1).sample(range(144), 5)[:3]
            True
        """
        if not 0 <= k <= len(seq):
            raise ValueError(f"{k} items cannot be picked from {len(seq)} without repeating one.")
        return list(islice(self.draws(seq), k))

    def draws(self, seq: Sequence[T]) -> Iterator[T]:
        """Yield all items, one at a time; every order is as likely as the others.

        The sequence may be long: an item is looked up only when it is yielded.

        Example:
            >>> draws = Chance(1).draws(range(144))
            >>> [next(draws), next(draws)] == Chance(1).sample(range(144), 2)
            True
        """
        # A shuffle from the front (Fisher and Yates) that stores only the places that were swapped.
        moved: dict[int, int] = {}
        for front in range(len(seq)):
            place = front + self.below(len(seq) - front)
            yield seq[moved.get(place, place)]
            moved[place] = moved.get(front, front)

    def shuffled(self, seq: Sequence[T]) -> list[T]:
        """Return all items in another order, every order as likely as the others.

        Example:
            >>> sorted(Chance(1).shuffled([3, 1, 2]))
            [1, 2, 3]
        """
        return self.sample(seq, len(seq))
