"""What went wrong in a notebook's cells, as sentences for the teacher."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

LONGEST = 240
_COLOURS = re.compile(r"\x1b\[[0-9;]*m")


class Trouble:
    """Collects what a board's cells complain of, while the board is being written.

    Args:
        cells: how many cells the notebook has.
        patience: seconds after which a cell is stopped.

    Example:
        >>> trouble = Trouble(4, patience=30)
        >>> trouble.say(2, {"ename": "NameError", "evalue": "name 'ferry' is not defined"})
        "Cell 2 of 4 stopped: NameError: name 'ferry' is not defined. The other cells went on."
    """

    def __init__(self, cells: int, patience: int) -> None:
        self._cells = cells
        self._patience = patience
        self._at: set[int] = set()
        self._end = 0

    def say(self, number: int, output: Mapping[str, str]) -> str:
        """Return what an error in a cell means, in words; cells count from 1, text included."""
        self._at.add(number)
        kind = str(output.get("ename", ""))
        said = _COLOURS.sub("", str(output.get("evalue", "")))
        reason = " ".join(f"{kind}: {said}".strip(": ").split())
        cell = f"Cell {number} of {self._cells}"
        if kind == "KeyboardInterrupt":
            return (
                f"{cell} was not done after {self._patience} seconds and was stopped. "
                "The other cells went on."
            )
        if kind == "DeadKernelError":
            if self._end:
                return f"{cell} did not run, because Python has stopped."
            self._end = number
            return f"{cell} ended Python, so the cells after it did not run."
        if len(reason) > LONGEST:
            reason = f"{reason[: LONGEST - 1]}…"
        return f"{cell} stopped: {reason.rstrip('.')}. The other cells went on."

    @property
    def summary(self) -> str:
        """One sentence on all of it; "" when there was none."""
        at = sorted(self._at)
        if not at:
            return ""
        if self._end:
            return f"Cell {self._end} ended Python; what came before it works."
        if len(at) == 1:
            return f"Cell {at[0]} stopped; the reason stands in its place. The rest works."
        numbers = ", ".join(map(str, at[:-1]))
        return (
            f"Cells {numbers} and {at[-1]} stopped; the reasons stand in their places. "
            "The rest works."
        )
