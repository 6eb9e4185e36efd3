"""A line that says how far something long has come."""

from __future__ import annotations

import sys
import time
from typing import TYPE_CHECKING, Self

if TYPE_CHECKING:
    from typing import TextIO

SHOW_AFTER_S = 1.0
"""Seconds after which it is shown; what is done sooner needs none."""

WIDTH = 24


class Progress:
    """A progress bar for a terminal; a file gets nothing of it.

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
        self._begun = time.monotonic()
        self._shown = False

    def __enter__(self) -> Self:
        """Begin."""
        return self

    def __exit__(self, *_: object) -> None:
        """Take the line away, so that what is said next begins on a line of its own."""
        if self._shown:
            self._stream.write(f"\r{' ' * (WIDTH + 60)}\r")
            self._stream.flush()

    def step(self) -> None:
        """Say that one more is done."""
        self._done += 1
        past = time.monotonic() - self._begun
        if past < SHOW_AFTER_S or not self._stream.isatty():
            return
        self._shown = True
        self._stream.write(f"\r{self.line(past)}")
        self._stream.flush()

    def line(self, past: float) -> str:
        """Return the line after so many seconds.

        Example:
            >>> progress = Progress(4, "lessons")
            >>> progress.step()
            >>> progress.line(10.0)
            '[######                  ] 1 of 4 lessons, about 30 s left'
        """
        full = WIDTH * self._done // self._total
        bar = f"[{'#' * full}{' ' * (WIDTH - full)}]"
        left = past / self._done * (self._total - self._done)
        return f"{bar} {self._done} of {self._total} {self._what}, about {left:.0f} s left"
