"""A progress bar for long work."""

from __future__ import annotations

import sys
import time
from typing import TYPE_CHECKING, Self

if TYPE_CHECKING:
    from typing import TextIO

SHOW_DELAY_S = 1.0
"""Delay before it is shown, in seconds; shorter work needs none."""

WIDTH = 24


class Progress:
    """A progress bar on a terminal; nothing is written to a file.

    Args:
        total: how many there are.
        what: what they are, such as "lessons".
        stream: where it is shown; None for the standard error.

    Example:
        >>> with Progress(2, "lessons") as progress:
        ...     progress.step()
        ...     progress.step()
    """

    def __init__(self, total: int, what: str, stream: TextIO | None = None) -> None:
        self._stream = stream or sys.stderr
        self._total, self._what = total, what
        self._done = 0
        self._started = time.monotonic()
        self._shown = False

    def __enter__(self) -> Self:
        """Begin."""
        return self

    def __exit__(self, *_: object) -> None:
        """Clear the line, so that later output begins on a line of its own."""
        if self._shown:
            self._stream.write(f"\r{' ' * (WIDTH + 60)}\r")
            self._stream.flush()

    def step(self) -> None:
        """Count one more as done."""
        self._done += 1
        elapsed = time.monotonic() - self._started
        if elapsed < SHOW_DELAY_S or not self._stream.isatty():
            return
        self._shown = True
        self._stream.write(f"\r{self.line(elapsed)}")
        self._stream.flush()

    def line(self, elapsed: float) -> str:
        """Return the line after this many seconds.

        Example:
            >>> progress = Progress(4, "lessons")
            >>> progress.step()
            >>> progress.line(10.0)
            '[######                  ] 1 of 4 lessons, about 30 s left'
        """
        full = WIDTH * self._done // self._total
        bar = f"[{'#' * full}{' ' * (WIDTH - full)}]"
        left = elapsed / self._done * (self._total - self._done)
        return f"{bar} {self._done} of {self._total} {self._what}, about {left:.0f} s left"
