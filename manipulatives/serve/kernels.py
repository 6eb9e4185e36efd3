"""The kernels behind boards: which Python they are, and when they are ended."""

from __future__ import annotations

import os
import subprocess
import time
from datetime import UTC, datetime
from typing import Any

from jupyter_client.kernelspec import KernelSpecManager
from jupyter_server.services.kernels.kernelmanager import AsyncMappingKernelManager
from traitlets.config import Config

IDLE_TIMEOUT_S = 8
"""Seconds after which an unused kernel may be ended."""

CULL_INTERVAL_S = 2
"""Seconds between two searches for such kernels."""

CONNECT_TIMEOUT_S = 60
"""Seconds that a board may take until it is connected, before its kernel counts as
unused. On a slow computer it may be silent meanwhile for longer than `IDLE_TIMEOUT_S`."""

CLOSED_PAGE_TIMEOUT_S = IDLE_TIMEOUT_S + 2 * CULL_INTERVAL_S
"""Seconds within which the kernel of a closed page has ended: it is idle, found, and ended."""


class OwnPython(KernelSpecManager):
    """Knows one kernel: the Python that serves the shelf, which has the kit installed.

    A kernel of the same name in the user's folder may belong to any other Python.
    """

    def _kernel_dirs_default(self) -> list[str]:
        return []


class BoardKernels(AsyncMappingKernelManager):
    """Kernels of boards.

    A board that is open asks for its kernel every second until it is closed. A kernel that is idle,
    unconnected and not asked for is ended, unless it is warm or a board that is still loading will
    connect to it.
    """

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.warm: set[str] = set()
        """The kernels of boards that were run in advance."""
        self._connect_until: dict[str, float] = {}

    async def start(self, folder: str, *, kit_only: bool) -> str:
        """Start a kernel for a board and return its id.

        Args:
            folder: where it runs, below the shelf's folder.
            kit_only: whether it runs nothing but the kit's own calls.
        """
        apart = {}
        if kit_only:
            # The folder may hold files with names of modules, which must not be imported when the
            # kit runs a board in advance.
            apart["env"] = {**os.environ, "PYTHONSAFEPATH": "1"}
            apart["extra_arguments"] = ["--InteractiveShellApp.ignore_cwd=True"]
        return await self.start_kernel(
            kernel_name="python3",
            path=folder,
            # Keep the other output of a kernel out of the terminal of the shelf.
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            **apart,
        )

    async def cull_kernel_if_idle(self, kernel_id: str) -> None:
        """End a kernel that has been idle too long, but for the warm and the expected ones."""
        if kernel_id in self.warm or time.monotonic() < self._connect_until.get(kernel_id, 0):
            return
        self._connect_until.pop(kernel_id, None)
        await super().cull_kernel_if_idle(kernel_id)

    def expect_connection(self, kernel_id: str) -> None:
        """Note that a board on this kernel is on its way to a browser, however slow."""
        self.warm.discard(kernel_id)
        self._connect_until[kernel_id] = time.monotonic() + CONNECT_TIMEOUT_S

    async def is_running(self, kernel_id: str) -> bool:
        """Whether a kernel is there and its process runs."""
        return kernel_id in self and bool(await self.get_kernel(kernel_id).is_alive())

    def note_use(self, kernel_id: str) -> None:
        """Note that a board is open on a kernel."""
        self.get_kernel(kernel_id).last_activity = datetime.now(UTC)

    def notify_connect(self, kernel_id: str) -> None:
        """Note that a board is connected to its kernel."""
        self._connect_until.pop(kernel_id, None)
        super().notify_connect(kernel_id)


def kernel_settings() -> Config:
    """The settings that make kernels come and go as described above."""
    config = Config()
    config.MappingKernelManager.cull_idle_timeout = IDLE_TIMEOUT_S
    config.MappingKernelManager.cull_interval = CULL_INTERVAL_S
    # A restarted kernel would have no state for the open board, which reports the end instead.
    config.KernelManager.autorestart = False
    return config
