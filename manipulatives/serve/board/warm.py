"""Boards, some of which are run in advance.

A warm board has been run already, and its kernel waits. It holds the notebook as it was, so
it is used only while the file is, to the byte, what it was when it was warmed.
"""

from __future__ import annotations

import asyncio
import logging
import time
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from manipulatives.serve.board.board import use_the_kits_python
from manipulatives.serve.board.rendering import render

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Iterable

    from voila.app import Voila

    from manipulatives.serve.board.board import Board
    from manipulatives.serve.kernels import BoardKernels

MOST_WARM = 3
"""How many boards are warm at most; a kernel takes some 60 MB."""

WARM_DELAY_S = 4.0
"""Seconds after a board was opened in which no other is warmed, so that it has the machine."""

_log = logging.getLogger(__name__)


@dataclass
class _WarmBoard:
    """A board that is being run or has been.

    Attributes:
        stamp: of the file that it was run from.
        run: ends with the id of its kernel and its page.
    """

    stamp: str
    run: asyncio.Task[tuple[str, str]]


class Boards:
    """Runs boards, some of them before they are asked for.

    Args:
        app: the server, with its kernels and settings.
        kernels: the server's kernels.
    """

    def __init__(self, app: Voila, kernels: BoardKernels) -> None:
        self._app = app
        self._kernels = kernels
        self._warm: dict[str, _WarmBoard] = {}
        self._opened = -WARM_DELAY_S

    async def open(self, board: Board) -> AsyncIterator[str]:
        """Yield the page of a board piece by piece, from a warm kernel where there is one.

        Raises:
            LessonProblem: the notebook asks for a kernel that boards do not have.
        """
        self._opened = time.monotonic()
        ready = await self._take_warm(board)
        if ready is not None:
            yield ready
            return
        kernel_id = await self._start(board)
        self._kernels.expect_connection(kernel_id)
        async for piece in render(self._app, board, self._kernels, kernel_id):
            yield piece

    async def update_warm(self, wanted: Iterable[Board]) -> None:
        """Warm the first few of the wanted boards, one at a time; discard what has changed."""
        first = [board for board in wanted if board.kit_only][:MOST_WARM]
        stamps = {board.name: board.stamp for board in first}
        for name, warm in list(self._warm.items()):
            if stamps.get(name) != warm.stamp or _failed(warm.run):
                await self._discard(name)
        if any(not warm.run.done() for warm in self._warm.values()):
            return
        if time.monotonic() - self._opened < WARM_DELAY_S:
            return
        for board in first:
            if board.name not in self._warm:
                run = asyncio.ensure_future(self._run_warm(board))
                self._warm[board.name] = _WarmBoard(board.stamp, run)
                return

    def is_warm(self, board: Board) -> bool:
        """Whether a board would open at once."""
        warm = self._warm.get(board.name)
        return warm is not None and warm.stamp == board.stamp and warm.run.done()

    async def _take_warm(self, board: Board) -> str | None:
        """Return the page of a warm board, which owns its kernel from then on; or None."""
        warm = self._warm.get(board.name)
        if warm is None or warm.stamp != board.stamp:
            await self._discard(board.name)
            return None
        del self._warm[board.name]
        try:
            kernel_id, page = await warm.run
        except Exception:  # noqa: BLE001 - after any error the board is run again
            _log.debug("warming %s failed", board.name, exc_info=True)
            return None
        self._kernels.expect_connection(kernel_id)
        return page if await self._kernels.is_running(kernel_id) else None

    async def _run_warm(self, board: Board) -> tuple[str, str]:
        kernel_id = await self._start(board)
        self._kernels.warm.add(kernel_id)
        try:
            pieces = render(self._app, board, self._kernels, kernel_id)
            return kernel_id, "".join([piece async for piece in pieces])
        except BaseException:
            await self._end(kernel_id)
            raise

    async def _discard(self, name: str) -> None:
        warm = self._warm.pop(name, None)
        if warm is None:
            return
        if not warm.run.done():
            warm.run.cancel()
        elif not _failed(warm.run):
            await self._end(warm.run.result()[0])

    async def _end(self, kernel_id: str) -> None:
        self._kernels.warm.discard(kernel_id)
        if kernel_id in self._kernels:
            await self._kernels.shutdown_kernel(kernel_id, now=True)

    async def _start(self, board: Board) -> str:
        use_the_kits_python(board.notebook)
        return await self._kernels.start(board.folder, kit_only=board.kit_only)


def _failed(run: asyncio.Task[Any]) -> bool:
    return run.done() and (run.cancelled() or run.exception() is not None)
