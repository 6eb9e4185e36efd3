"""The messages of the form; the style sheet of the whole form comes with them."""

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
        'info'
    """

    _esm = assemble(HERE / "notice.js")
    _css = stylesheet(*SHARED_STYLES, HERE / "maker.css")

    lines = traitlets.List(traitlets.Unicode(), help="The sentences.").tag(sync=True)
    tone = traitlets.Enum(
        ("info", "warning", "good", "error"),
        default_value="info",
        help="What they are: what happened, remarks, no remarks, or what was not possible.",
    ).tag(sync=True)

    def show(self, lines: list[str], tone: str = "info") -> None:
        """Show other sentences."""
        with self.hold_sync():
            self.tone = tone
            self.lines = lines
