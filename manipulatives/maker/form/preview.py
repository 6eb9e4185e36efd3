"""The real round beside the form, as it will be taught, and what a colleague would remark."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import ipywidgets as w

from manipulatives.maker.form import fields as parts
from manipulatives.maker.notice import Notice
from manipulatives.outputs.page.saved import with_parts
from manipulatives.widgets.round import play

if TYPE_CHECKING:
    from manipulatives.lessons.lesson import Lesson, Round
    from manipulatives.lessons.settings import ClassSettings
    from manipulatives.maker.state import Table

WELL = "There is nothing to remark."

KEPT = 8
"""How many rounds are kept after they were shown: a slow browser may still be loading one."""


def played(one: Round, lesson: Lesson, settings: ClassSettings) -> Any:  # noqa: ANN401 - the round as a widget
    """Return a round of a lesson as it is taught."""
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
    # A preview keeps nothing: neither place nor answers are anybody's.
    made.setup = {**made.setup, "key": ""}
    return made


class Preview:
    """The round that is looked at, to be tried out.

    Args:
        table: what lies on the helper's table.
    """

    def __init__(self, table: Table) -> None:
        self._table = table
        self._shown: Any = None
        self._old: list[w.Widget] = []
        self.stage = w.VBox([])
        self.stage.add_class("maker-stage")
        self.empty = parts.words("Add a skill, and its round is seen here.")
        self.box = parts.panel("Preview", "preview", self.empty, self.stage)
        table.watch(self.show)

    def show(self) -> None:
        """Show the round as it is now, anew only when something in it has changed."""
        one, lesson, settings = self._table.round, self._table.draft.lesson, self._table.settings
        wanted = one and (one, lesson.vocabulary, lesson.currency, settings)
        if wanted == self._shown:
            return
        self._shown = wanted
        before = self.stage.children
        self.stage.children = [played(one, lesson, settings)] if one else []
        self.empty.layout.display = "none" if one else None
        self._old += before
        while len(self._old) > KEPT:
            for widget in with_parts([self._old.pop(0)]):
                widget.close()


class Remarks:
    """What a colleague would remark about the lesson.

    Args:
        table: what lies on the helper's table.
    """

    def __init__(self, table: Table) -> None:
        self._table = table
        self.notice = Notice()
        self.box = parts.panel("Look it over", "remarks", self.notice)
        table.watch(self.show)

    def show(self) -> None:
        """Show the remarks as they are now."""
        lines = [each.sentence for each in self._table.warnings()]
        self.notice.tell(lines or [WELL], "warned" if lines else "well")
