"""How a process begins in which lessons are made; nothing else is loaded before it."""

from __future__ import annotations

import signal

from manipulatives.notebook.fast_import import import_nbformat_fast


def begin() -> None:
    """Load what reads notebooks, and finish what was begun when Ctrl+C is pressed.

    Whoever started the process stops the rest.
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    import_nbformat_fast()
