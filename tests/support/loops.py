"""Coroutines in tests, which share their threads with a browser's."""

from __future__ import annotations

import asyncio
from concurrent.futures import ThreadPoolExecutor
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Coroutine


def run(work: Coroutine) -> object:
    """Run a coroutine to its end, in a thread of its own: in this one Playwright's loop may run."""
    with ThreadPoolExecutor(1) as threads:
        return threads.submit(asyncio.run, work).result()
