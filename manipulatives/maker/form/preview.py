"""The chosen round beside the form, as it will be taught; and remarks about the lesson."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import ipywidgets as w

from manipulatives.maker.form import fields
from manipulatives.maker.notice import Notice
from manipulatives.outputs.page.saved import with_parts
from manipulatives.widgets.round import play

if TYPE_CHECKING:
    from manipulatives.lessons.lesson import Lesson, Round
    from manipulatives.lessons.settings import ClassSettings
    from manipulatives.maker.state import MakerState

NO_REMARKS = "There is nothing to remark."

MOST_OLD_PREVIEWS = 8
"""How many earlier previews stay open, because a slow browser may still be loading one."""


def round_widget(one: Round, lesson: Lesson, settings: ClassSettings) -> Any:  # noqa: ANN401 - the widget
    """Return a round of a lesson as a widget, as it is taught."""
    made = play(
        one.skill,
        tasks=one.tasks,
        seconds=one.seconds,
        seed=one.seed,
        title=one.title,
        vocabulary=lesson.vocabulary or settings.vocabulary,
        currency=lesson.currency or settings.currency,
        method=settings.method,
        timer=settings.timer,
        count_aloud=settings.count_aloud if one.count_aloud is None else one.count_aloud,
        instead=one.instead,
        **one.options,
    )
    # A preview saves neither place nor answers.
    made.setup = {**made.setup, "key": ""}
    return made


class Preview:
    """The chosen round, to be tried out.

    Args:
        state: of the lesson maker.
    """

    def __init__(self, state: MakerState) -> None:
        self._state = state
        self._shown: Any = None
        self._old: list[w.Widget] = []
        self.stage = w.VBox([])
        self.stage.add_class("maker-stage")
        self.empty = fields.words("Add a skill, and its round is seen here.")
        self.box = fields.panel("Preview", "preview", self.empty, self.stage)
        state.on_change(self.show)

    def show(self) -> None:
        """Show the current round; make its widget again only when something in it changed."""
        one, lesson, settings = self._state.round, self._state.draft.lesson, self._state.settings
        wanted = one and (one, lesson.vocabulary, lesson.currency, settings)
        if wanted == self._shown:
            return
        self._shown = wanted
        before = self.stage.children
        self.stage.children = [round_widget(one, lesson, settings)] if one else []
        self.empty.layout.display = "none" if one else None
        self._old += before
        while len(self._old) > MOST_OLD_PREVIEWS:
            for widget in with_parts([self._old.pop(0)]):
                widget.close()


class Remarks:
    """Remarks about the lesson, as a colleague might make them.

    Args:
        state: of the lesson maker.
    """

    def __init__(self, state: MakerState) -> None:
        self._state = state
        self.notice = Notice()
        self.box = fields.panel("Look it over", "remarks", self.notice)
        state.on_change(self.show)

    def show(self) -> None:
        """Show the remarks as they are now."""
        lines = [each.sentence for each in self._state.warnings()]
        self.notice.show(lines or [NO_REMARKS], "warning" if lines else "good")
