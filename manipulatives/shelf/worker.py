"""The start of a process that makes lessons; it imports little else."""

from __future__ import annotations

import signal

from manipulatives.notebook.fast_import import import_nbformat_fast


def initialize() -> None:
    """Import nbformat, and ignore Ctrl+C, so that the current lesson is finished.

    The parent process cancels the others.
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    import_nbformat_fast()
