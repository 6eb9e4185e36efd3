"""What the handlers work with: the shelf, its boards, JupyterLab, and what was agreed to."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING

from manipulatives.serve.boards import Board
from manipulatives.shelf.made import make

if TYPE_CHECKING:
    from pathlib import Path

    from manipulatives.serve.boards import Boards
    from manipulatives.serve.lab import Lab, LabElsewhere
    from manipulatives.shelf.items import Shelf, ShelfItem


class ServerState:
    """Everything that is open while the server runs.

    Args:
        shelf: the lessons found.
        lab: JupyterLab, or the one that is there already.
    """

    boards: Boards

    def __init__(self, shelf: Shelf, lab: Lab | LabElsewhere) -> None:
        self.shelf = shelf
        self.lab = lab
        self._agreed: set[tuple[str, str]] = set()
        self._making = asyncio.Lock()
        self._opened: list[str] = []

    def may_run(self, item: ShelfItem) -> bool:
        """Whether a notebook may be run: it is the kit's own, or the teacher has said so."""
        return item.own or (item.name, item.stamp) in self._agreed

    def agree(self, item: ShelfItem) -> None:
        """Note that the teacher wants this notebook run, as it is now and until it changes."""
        self._agreed.add((item.name, item.stamp))

    def opened(self, item: ShelfItem) -> None:
        """Note that a board was asked for, as it may be again."""
        if item.name in self._opened:
            self._opened.remove(item.name)
        self._opened.append(item.name)

    def is_warm(self, item: ShelfItem) -> bool:
        """Whether a lesson's board would open at once."""
        return item.own and self.boards.is_warm(Board.of(item))

    async def make(self, item: ShelfItem, output: str) -> Path:
        """Make an output of a lesson, one at a time, without holding up the boards.

        Raises:
            LessonProblem: it cannot be made from this lesson.
            OSError: it cannot be written.
        """
        async with self._making:
            return await asyncio.to_thread(make, item, output)

    async def tend(self) -> None:
        """Keep the likeliest boards warm, as their files are now: today's, and those used last."""
        items = await asyncio.to_thread(self.shelf.items)
        ready = [item for item in items if item.own and not item.problem]
        ready.sort(key=self._how_soon)
        await self.boards.tend(Board.of(item) for item in ready)

    def _how_soon(self, item: ShelfItem) -> tuple[bool, int]:
        """Return a key that puts first what is likely to be asked for next."""
        opened = self._opened.index(item.name) if item.name in self._opened else -1
        return (not item.today, -opened)
