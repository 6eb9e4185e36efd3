"""The state of the server: the shelf, its boards, JupyterLab, and which code may be run."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING

from manipulatives.serve.board.board import Board
from manipulatives.shelf.item_outputs import write_output

if TYPE_CHECKING:
    from pathlib import Path

    from manipulatives.serve.board.warm import Boards
    from manipulatives.serve.lab import Lab, LabElsewhere
    from manipulatives.shelf.items import Shelf, ShelfItem


class ServerState:
    """What the handlers of the server share.

    Args:
        shelf: the lessons found.
        lab: JupyterLab, or the one that is there already.
    """

    boards: Boards

    def __init__(self, shelf: Shelf, lab: Lab | LabElsewhere) -> None:
        self.shelf = shelf
        self.lab = lab
        self._allowed: set[tuple[str, str]] = set()
        self._make_lock = asyncio.Lock()
        self._opened: list[str] = []

    def may_run(self, item: ShelfItem) -> bool:
        """Whether a notebook may be run: it is the kit's own, or the teacher has said so."""
        return item.kit_only or (item.name, item.stamp) in self._allowed

    def allow_run(self, item: ShelfItem) -> None:
        """Note that the teacher allows this notebook to be run until its file changes."""
        self._allowed.add((item.name, item.stamp))

    def note_opened(self, item: ShelfItem) -> None:
        """Note that a board was asked for: it is likely to be asked for again."""
        if item.name in self._opened:
            self._opened.remove(item.name)
        self._opened.append(item.name)

    def is_warm(self, item: ShelfItem) -> bool:
        """Whether a lesson's board would open at once."""
        return item.kit_only and self.boards.is_warm(Board.of(item))

    async def make(self, item: ShelfItem, output: str) -> Path:
        """Make an output of a lesson, one at a time, without holding up the boards.

        Raises:
            LessonProblem: it cannot be made from this lesson.
            OSError: it cannot be written.
        """
        async with self._make_lock:
            return await asyncio.to_thread(write_output, item, output)

    async def update_warm_boards(self) -> None:
        """Run the likeliest boards beforehand, as their files are now.

        Those are today's lessons, and the boards opened last.
        """
        items = await asyncio.to_thread(self.shelf.items)
        ready = [item for item in items if item.kit_only and not item.problem]
        ready.sort(key=self._sort_key)
        await self.boards.update_warm(Board.of(item) for item in ready)

    def _sort_key(self, item: ShelfItem) -> tuple[bool, int]:
        """Sort first what is likely to be asked for next."""
        opened = self._opened.index(item.name) if item.name in self._opened else -1
        return (not item.today, -opened)
