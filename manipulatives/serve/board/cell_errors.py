"""The errors of a notebook's cells, as sentences for the teacher."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

MAX_REASON_LENGTH = 240
"""Characters of a cell's error that are shown."""

_COLOUR_CODES = re.compile(r"\x1b\[[0-9;]*m")


class CellErrors:
    """Collects the errors of a board's cells while the board is being rendered.

    Args:
        cells: how many cells the notebook has.
        timeout_s: seconds after which a cell is stopped.

    Example:
        >>> errors = CellErrors(4, timeout_s=30)
        >>> errors.sentence(2, {"ename": "NameError", "evalue": "name 'ferry' is not defined"})
        "Cell 2 of 4 stopped: NameError: name 'ferry' is not defined. The other cells went on."
    """

    def __init__(self, cells: int, *, timeout_s: int) -> None:
        self._cells = cells
        self._timeout_s = timeout_s
        self._failed: set[int] = set()
        self._ended_python_at = 0

    def sentence(self, number: int, output: Mapping[str, str]) -> str:
        """Return an error of a cell in words; cells are counted from 1, with the text cells."""
        self._failed.add(number)
        kind = str(output.get("ename", ""))
        said = _COLOUR_CODES.sub("", str(output.get("evalue", "")))
        reason = " ".join(f"{kind}: {said}".strip(": ").split())
        cell = f"Cell {number} of {self._cells}"
        if kind == "KeyboardInterrupt":
            return (
                f"{cell} was not done after {self._timeout_s} seconds and was stopped. "
                "The other cells went on."
            )
        if kind == "DeadKernelError":
            if self._ended_python_at:
                return f"{cell} did not run, because Python has stopped."
            self._ended_python_at = number
            return f"{cell} ended Python, so the cells after it did not run."
        if len(reason) > MAX_REASON_LENGTH:
            reason = f"{reason[: MAX_REASON_LENGTH - 1]}…"
        return f"{cell} stopped: {reason.rstrip('.')}. The other cells went on."

    @property
    def summary(self) -> str:
        """Return one sentence about all errors, "" for none."""
        failed = sorted(self._failed)
        if not failed:
            return ""
        if self._ended_python_at:
            return f"Cell {self._ended_python_at} ended Python; what came before it works."
        if len(failed) == 1:
            return f"Cell {failed[0]} stopped; the reason stands in its place. The rest works."
        numbers = ", ".join(map(str, failed[:-1]))
        return (
            f"Cells {numbers} and {failed[-1]} stopped; the reasons stand in their places. "
            "The rest works."
        )
