"""Long sequences that compute an item when it is indexed; no two of their items are the same."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Hashable, Iterable, Sequence
from itertools import accumulate
from typing import Any, TypeVar, overload

Item = TypeVar("Item")
State = Hashable
Moves = Iterable[tuple[int, State]]
"""The digits that may be written next, each with the state after it."""


class Lazy(Sequence[Item]):
    """A sequence that computes an item when it is indexed; subclasses define `_at`.

    Example:
        >>> class Squares(Lazy[int]):
        ...     def __len__(self): return 1_000_000
        ...     def _at(self, index): return index * index
        >>> Squares()[999], Squares()[:3]
        (998001, [0, 1, 4])
    """

    def _at(self, index: int) -> Item:
        raise NotImplementedError

    @overload
    def __getitem__(self, index: int) -> Item: ...
    @overload
    def __getitem__(self, index: slice) -> list[Item]: ...
    def __getitem__(self, index: int | slice) -> Item | list[Item]:
        """Return one item, or a list of those of a slice."""
        if isinstance(index, slice):
            return [self._at(place) for place in range(*index.indices(len(self)))]
        place = index + len(self) if index < 0 else index
        if not 0 <= place < len(self):
            raise IndexError(f"There are {len(self)} items, so none at {index}.")
        return self._at(place)


class Joined(Lazy[Item]):
    """Several sequences, one after the other.

    Example:
        >>> joined = Joined([range(3), range(10, 15)])
        >>> len(joined), joined[4], 12 in joined
        (8, 11, True)
    """

    def __init__(self, parts: Iterable[Sequence[Item]]) -> None:
        self._parts = [part for part in parts if len(part)]
        self._ends = list(accumulate(map(len, self._parts)))

    def __len__(self) -> int:
        return self._ends[-1] if self._ends else 0

    def __contains__(self, item: object) -> bool:
        return any(item in part for part in self._parts)

    def _at(self, index: int) -> Item:
        part = bisect_right(self._ends, index)
        return self._parts[part][index - (self._ends[part - 1] if part else 0)]


class Labelled(Lazy[tuple[Any, ...]]):
    """The tuples of a sequence, each with the same label in front.

    Example:
        >>> Labelled("result", [(8, 5), (7, 6)])[1]
        ('result', 7, 6)
    """

    def __init__(self, label: str, items: Sequence[tuple[Any, ...]]) -> None:
        self._label, self._items = label, items

    def __len__(self) -> int:
        return len(self._items)

    def __contains__(self, item: object) -> bool:
        return isinstance(item, tuple) and item[:1] == (self._label,) and item[1:] in self._items

    def _at(self, index: int) -> tuple[Any, ...]:
        return (self._label, *self._items[index])


class Walks(Lazy[Item]):
    """All rows of digits that a state machine accepts, by index.

    Each digit that is written changes the state, and the state says which digits may come next.
    For each state the number of rows from there to the end is counted once, so an index leads to
    its row without going through the others.

    Args:
        squares: a function for each place of the row: from a state to the digits that may be
            written there, each with the state after it.
        begin: the state before the first digit.
        is_end: returns whether a row may end in a state.
        made: returns the item for a row of digits.

    Example:
        >>> def rising(last): return [(digit, digit) for digit in range(last + 1, 10)]
        >>> rows = Walks([rising, rising], 0, lambda _: True, tuple)
        >>> len(rows), rows[0], rows[35]
        (36, (1, 2), (8, 9))
    """

    def __init__(
        self,
        squares: Sequence[Callable[[Any], Moves]],
        begin: State,
        is_end: Callable[[Any], bool],
        made: Callable[[Sequence[int]], Item],
    ) -> None:
        self._squares, self._begin = squares, begin
        self._is_end, self._made = is_end, made
        # For each place and state: the digits that lead to an end, the states after them, and
        # how many rows begin with each digit or one before it.
        self._tables: list[dict[State, tuple[list[int], list[State], list[int]]]] = [
            {} for _ in squares
        ]
        self._length = self._count(0, begin)

    def __len__(self) -> int:
        return self._length

    def _count(self, square: int, state: State) -> int:
        if square == len(self._squares):
            return int(self._is_end(state))
        table = self._tables[square]
        if state not in table:
            ways = [
                (digit, after, count)
                for digit, after in self._squares[square](state)
                if (count := self._count(square + 1, after))
            ]
            table[state] = (
                [digit for digit, _, _ in ways],
                [after for _, after, _ in ways],
                list(accumulate(count for _, _, count in ways)),
            )
        ends = table[state][2]
        return ends[-1] if ends else 0

    def _at(self, index: int) -> Item:
        state, row = self._begin, []
        for table in self._tables:
            digits, after, ends = table[state]
            place = bisect_right(ends, index)
            if place:
                index -= ends[place - 1]
            row.append(digits[place])
            state = after[place]
        return self._made(row)
