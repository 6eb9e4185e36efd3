"""What the form says, and the form's dress, which comes along with it."""

from __future__ import annotations

from pathlib import Path

import traitlets

from manipulatives.widgets.assemble import SHARED_STYLES, assemble, stylesheet
from manipulatives.widgets.manipulative import KitWidget

HERE = Path(__file__).parent


class Notice(KitWidget):
    """Sentences of the form, one below the other; nothing is seen where there are none.

    Example:
        >>> Notice(lines=["Saved as monday."]).tone
        'said'
    """

    _esm = assemble(HERE / "notice.js")
    _css = stylesheet(*SHARED_STYLES, HERE / "maker.css")

    lines = traitlets.List(traitlets.Unicode(), help="The sentences.").tag(sync=True)
    tone = traitlets.Enum(
        ("said", "warned", "well", "wrong"),
        default_value="said",
        help="What they are: something that happened, remarks, all well, or what could not be.",
    ).tag(sync=True)

    def tell(self, lines: list[str], tone: str = "said") -> None:
        """Say other sentences."""
        with self.hold_sync():
            self.tone = tone
            self.lines = lines
