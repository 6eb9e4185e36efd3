"""What a round for a board and a round for a pupil have in common as widgets."""

from __future__ import annotations

from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import anywidget
import traitlets

from manipulatives.lessons.problem import LessonProblem
from manipulatives.widgets.assemble import SHARED_STYLES, assemble, stylesheet
from manipulatives.widgets.manipulative import KitWidget, Manipulative
from manipulatives.widgets.round.core.checks import check_setup, check_tasks, check_timer

if TYPE_CHECKING:
    from collections.abc import Iterator

    from traitlets.utils.bunch import Bunch

ROUND = Path(__file__).parents[1]


@contextmanager
def problems_as_trait_errors() -> Iterator[None]:
    """Raise a TraitError in the words of the check that refused a value."""
    try:
        yield
    except LessonProblem as problem:
        raise traitlets.TraitError(str(problem)) from problem


class _Child(anywidget.WidgetTrait):
    """A reference to a manipulative of the kit."""

    def __init__(self) -> None:
        # It takes no help text as other traits do.
        super().__init__()
        self.help = "The manipulative that every task of the round is asked with, or None."

    def validate(self, obj: object, value: object) -> object:
        """Take a manipulative or nothing."""
        if value is not None and not isinstance(value, Manipulative):
            raise traitlets.TraitError(
                f"A round is asked with a manipulative such as a Clock, not {value!r}."
            )
        return super().validate(obj, value)


class RoundWidget(KitWidget):
    """Several questions of one skill, with a manipulative and a time allowance.

    A subclass names its folder: `class BoardRound(RoundWidget, folder="board")` loads
    `round/board/board.js` with all that it imports, and the CSS of all rounds before
    `round/board/board.css`.

    Raises:
        traitlets.TraitError: a trait is given what it cannot be.
    """

    manipulative = _Child().tag(sync=True)
    tasks = traitlets.List(
        help="The tasks as plain data, in order; `Task` says what each field is.",
    ).tag(sync=True)
    setup = traitlets.Dict(
        help="What holds for the whole round: `title`, `skill`, the `options` set for "
        "it, `seed`, `seconds` allowed (0 for no timer), `timer` shown, hidden or off, "
        "`vocabulary` us or uk, how many tasks are asked "
        "`together` (1 to 4), whether somebody's own numbers may be `typed`, `wipe`, the "
        "count-aloud at its end, as {'by': 5}, or None, `key` under which a page saves where it "
        "is (empty: nowhere), and `base`, the traits of the manipulative that each task starts "
        "over.",
    ).tag(sync=True)
    timer = traitlets.Dict(
        help="The timer: `mode` shown, hidden or off, seconds `allowed` with all that was added, "
        "milliseconds `used` before it was started last, `since` when it runs (milliseconds "
        "since 1970, or None), and whether it is `held`, paused by hand. Empty until a browser "
        "shows the round.",
    ).tag(sync=True)

    def __init_subclass__(cls, folder: str | None = None, **kwargs: Any) -> None:
        """Assemble the front end once, when the class is made."""
        if folder is not None:
            cls._esm = assemble(ROUND / folder / f"{folder}.js")
            cls._css = stylesheet(
                *SHARED_STYLES, ROUND / "core" / "core.css", ROUND / folder / f"{folder}.css"
            )
        super().__init_subclass__(**kwargs)

    def _repr_mimebundle_(self, **kwargs: Any) -> tuple[dict[str, Any], dict[str, Any]] | None:
        """Carry a still picture of the manipulative, for readers without a live host."""
        made = super()._repr_mimebundle_(**kwargs)
        picture = self.manipulative.still() if self.manipulative else None
        if made is None or picture is None:
            return made
        data, metadata = made
        return {**data, "image/svg+xml": picture}, metadata

    @traitlets.default("setup")
    def _usual(self) -> dict[str, Any]:
        return check_setup({})

    @traitlets.validate("tasks")
    def _check_tasks(self, proposal: Bunch) -> list[dict[str, Any]]:
        with problems_as_trait_errors():
            return check_tasks(proposal["value"])

    @traitlets.validate("setup")
    def _check_setup(self, proposal: Bunch) -> dict[str, Any]:
        with problems_as_trait_errors():
            return check_setup(proposal["value"])

    @traitlets.validate("timer")
    def _check_timer(self, proposal: Bunch) -> dict[str, Any]:
        with problems_as_trait_errors():
            return check_timer(proposal["value"])
