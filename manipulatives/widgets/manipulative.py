"""What every widget of the kit has in common."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import anywidget

from manipulatives.widgets.assemble import assemble, stylesheet

HERE = Path(__file__).parent


class KitWidget(anywidget.AnyWidget):
    """A widget whose JavaScript and CSS stand in a folder beside this file.

    A subclass names the folder: `class Clock(Manipulative, folder="clock")` loads
    `clock/clock.js` with all that it imports, and the kit's own CSS before `clock/clock.css`.
    """

    def __init_subclass__(cls, folder: str | None = None, **kwargs: Any) -> None:
        """Assemble the front end once, when the class is made."""
        if folder is not None:
            cls._esm = assemble(HERE / folder / f"{folder}.js")
            cls._css = stylesheet(
                HERE / "shared" / "tokens.css",
                HERE / "shared" / "shared.css",
                HERE / folder / f"{folder}.css",
            )
        super().__init_subclass__(**kwargs)


class Manipulative(KitWidget):
    """Something a child moves, whose state can be read as plain facts."""

    @property
    def facts(self) -> dict[str, int | str | bool | None]:
        """What is true of the state just now; goals and mistakes are predicates on these."""
        raise NotImplementedError(f"{type(self).__name__} does not say its facts")

    def still(self) -> str | None:
        """Return a picture of the state as SVG text, for readers without a live host."""
        return None

    def _repr_mimebundle_(self, **kwargs: Any) -> tuple[dict[str, Any], dict[str, Any]] | None:
        made = super()._repr_mimebundle_(**kwargs)
        picture = self.still()
        if made is None or picture is None:
            return made
        data, metadata = made
        return {**data, "image/svg+xml": picture}, metadata
