"""The kernels behind boards: which Python they are, how long they stay, whether they live."""

from __future__ import annotations

import time
from datetime import UTC, datetime
from typing import Any

from jupyter_client.kernelspec import KernelSpecManager
from jupyter_server.services.kernels.kernelmanager import AsyncMappingKernelManager
from traitlets.config import Config

IDLE = 8
"""Seconds after which a kernel that nobody asks for is ready to go."""

LOOK = 2
"""Seconds between two looks for such kernels."""

GRACE = 60
"""Seconds that a board may take until it is connected, before its kernel counts as one that nobody
asks for. On a slow computer it may fall silent meanwhile for longer than `IDLE`."""

STAY = IDLE + 2 * LOOK
"""Seconds within which the kernel of a closed page is gone: the wait, a look, and its end."""

POLL = 1
"""Seconds between two questions of an open board whether its kernel lives."""


class OwnPython(KernelSpecManager):
    """Knows one kernel: the Python that serves the shelf, which has the kit installed.

    A kernel of the same name in the user's folder may belong to any other Python.
    """

    def _kernel_dirs_default(self) -> list[str]:
        return []


class BoardKernels(AsyncMappingKernelManager):
    """Kernels of boards.

    A board that is open asks for its kernel every second until it is closed. Whatever has been
    idle, unconnected and not asked for goes, unless it is kept warm for a board to come, or
    expected by one that still loads.
    """

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.kept: set[str] = set()
        """The kernels that are warm for a board to come."""
        self._expected: dict[str, float] = {}

    async def cull_kernel_if_idle(self, kernel_id: str) -> None:
        """End a kernel that has been idle too long, but for the warm and the expected ones."""
        if kernel_id in self.kept or time.monotonic() < self._expected.get(kernel_id, 0):
            return
        self._expected.pop(kernel_id, None)
        await super().cull_kernel_if_idle(kernel_id)

    def expect(self, kernel_id: str) -> None:
        """Note that a board is on its way to a browser, however slow."""
        self.kept.discard(kernel_id)
        self._expected[kernel_id] = time.monotonic() + GRACE

    async def lives(self, kernel_id: str) -> bool:
        """Whether a kernel is there and its process runs."""
        return kernel_id in self and bool(await self.get_kernel(kernel_id).is_alive())

    def touch(self, kernel_id: str) -> None:
        """Note that a board is open on a kernel."""
        self.get_kernel(kernel_id).last_activity = datetime.now(UTC)

    def notify_connect(self, kernel_id: str) -> None:
        """Note that a board is connected to its kernel."""
        self._expected.pop(kernel_id, None)
        super().notify_connect(kernel_id)


def kernel_settings() -> Config:
    """The settings that make kernels come and go as described above."""
    config = Config()
    config.MappingKernelManager.cull_idle_timeout = IDLE
    config.MappingKernelManager.cull_interval = LOOK
    # A kernel started afresh knows nothing of the board that is open; the board says so instead.
    config.KernelManager.autorestart = False
    return config
