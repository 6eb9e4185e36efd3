"""The list of a lesson's rounds: one is chosen, and each can be dragged to another place."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import traitlets

from manipulatives.widgets.assemble import assemble
from manipulatives.widgets.manipulative import KitWidget

HERE = Path(__file__).parent


class Rows(KitWidget):
    """Lines of text, one below the other, numbered as they stand.

    Its style sheet comes with that of the form (`notice.py`).

    Args:
        on_move: is called with the place a line was dragged from and the place it was dragged to.

    Example:
        >>> rows = Rows(label="Rounds", rows=["Coins", "Clock"], chosen=1)
        >>> rows.rows[rows.chosen]
        'Clock'
    """

    _esm = assemble(HERE / "rows.js")

    label = traitlets.Unicode(help="What the list is called.").tag(sync=True)
    rows = traitlets.List(traitlets.Unicode(), help="The lines.").tag(sync=True)
    chosen = traitlets.Int(
        0, help="Which line is chosen, counted from 0; of no meaning where there is none."
    ).tag(sync=True)

    def __init__(self, on_move: Callable[[int, int], None] | None = None, **traits: Any) -> None:
        super().__init__(**traits)
        self._on_move = on_move
        self.on_msg(self._on_message)

    def _on_message(self, _widget: object, message: object, _buffers: object) -> None:
        """Move a line; the message of a browser may be anything."""
        match message:
            case {"move": [int(place), int(to)]} if self._on_move is not None:
                last = len(self.rows) - 1
                if place != to and 0 <= place <= last and 0 <= to <= last:
                    self._on_move(place, to)
