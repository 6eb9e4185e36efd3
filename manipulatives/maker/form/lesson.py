"""The lesson as a whole in the form, from its title to its paper; and the class settings."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

import ipywidgets as w

from manipulatives.lessons.lesson import CURRENCIES, LARGEST_COUNT, PAPERS
from manipulatives.lessons.settings import TIMERS
from manipulatives.lessons.strands.sums.columns.methods import METHODS
from manipulatives.maker.form import fields as parts
from manipulatives.maths.vocabulary import VOCABULARIES

if TYPE_CHECKING:
    from manipulatives.maker.state import Table

LONGEST_SESSION = 120
WORDS = {"us": "American", "uk": "British"}
PAPER = {"letter": "Letter", "a4": "A4"}
NAMES = {"vocabulary": "Words", "currency": "Coins", "paper": "Paper"}
VALUES = {"vocabulary": VOCABULARIES, "currency": CURRENCIES, "paper": PAPERS}


def said(value: str) -> str:
    """Return what a value is called.

    Example:
        >>> said("us"), said("usd"), said("a4")
        ('American', 'USD', 'A4')
    """
    return WORDS.get(value) or PAPER.get(value) or (value.upper() if value in CURRENCIES else value)


class LessonForm:
    """What holds for the whole lesson.

    Args:
        table: what lies on the helper's table.
    """

    def __init__(self, table: Table) -> None:
        self._table, self._quiet = table, parts.Quiet()
        self.title = parts.text("Title of the lesson")
        self.date = w.DatePicker(description="Date", style=parts.OWN_WIDTH)
        self.minutes = parts.number("Minutes of the session", 1, LONGEST_SESSION)
        self.settings = {name: parts.choice(NAMES[name], [("", "")]) for name in NAMES}
        self.box = parts.panel(
            "Lesson",
            "lesson",
            parts.row(self.title, self.date, self.minutes, *self.settings.values()),
        )
        self._quiet.on(self.title, lambda title: self._set(title=title.strip()))
        self._quiet.on(self.date, lambda date: self._set(date=date))
        self._quiet.on(self.minutes, self._slot)
        for name, each in self.settings.items():
            self._quiet.on(each, lambda value, name=name: self._set(**{name: value or None}))
        table.watch(self.show)

    def show(self) -> None:
        """Show the lesson as it is now."""
        lesson, settings = self._table.draft.lesson, self._table.settings
        with self._quiet.showing():
            self.title.value = lesson.title
            self.date.value = lesson.date
            self.minutes.value = self._table.minutes
            for name, each in self.settings.items():
                usual = f"as the class ({said(getattr(settings, name))})"
                known = [(said(value), value) for value in VALUES[name]]
                parts.options_are(each, [(usual, ""), *known])
                each.value = getattr(lesson, name) or ""

    def _set(self, **what: Any) -> None:
        self._table.change(lambda draft: draft.changed(replace(draft.lesson, **what)))

    def _slot(self, minutes: int) -> None:
        self._table.minutes = minutes
        self._table.show()


class ClassForm:
    """The class settings of the folder.

    Args:
        table: what lies on the helper's table.
    """

    def __init__(self, table: Table) -> None:
        self._table = table
        values = {**VALUES, "method": METHODS, "timer": TIMERS}
        names = {**NAMES, "method": "Written sums by", "timer": "Timer"}
        self.choices = {
            name: parts.choice(names[name], [(said(value), value) for value in values[name]])
            for name in names
        }
        self.count = parts.number("Count aloud in (0: no)", 0, LARGEST_COUNT)
        self.save = parts.button("Save the class settings", self._save)
        about = "They hold for every lesson of this folder that says nothing else."
        self.box = parts.panel(
            "Class settings",
            "class",
            parts.words(about),
            parts.row(*self.choices.values(), self.count),
            parts.row(self.save),
        )
        self._known: object = None
        table.watch(self.show)

    def show(self) -> None:
        """Show the settings as they are in the file, unless they are just being changed here."""
        settings = self._table.settings
        if settings == self._known:
            return
        self._known = settings
        for name, each in self.choices.items():
            each.value = getattr(settings, name)
        self.count.value = settings.count_aloud

    def _save(self) -> None:
        chosen = {name: each.value for name, each in self.choices.items()}
        table = self._table
        table.settle(replace(table.settings, count_aloud=self.count.value, **chosen))
