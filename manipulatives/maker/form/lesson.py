"""The lesson as a whole in the form, from its title to its paper; and the class settings."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

import ipywidgets as w

from manipulatives.lessons.lesson import CURRENCIES, LARGEST_COUNT, PAPERS
from manipulatives.lessons.settings import TIMERS
from manipulatives.lessons.strands.sums.columns.methods import METHODS
from manipulatives.maker.form import fields
from manipulatives.maths.vocabulary import VOCABULARIES

if TYPE_CHECKING:
    from manipulatives.maker.state import MakerState

LONGEST_SESSION = 120
WORDS = {"us": "American", "uk": "British"}
PAPER = {"letter": "Letter", "a4": "A4"}
NAMES = {"vocabulary": "Words", "currency": "Coins", "paper": "Paper"}
VALUES = {"vocabulary": VOCABULARIES, "currency": CURRENCIES, "paper": PAPERS}


def name_of(value: str) -> str:
    """Return what a value is called.

    Example:
        >>> name_of("us"), name_of("usd"), name_of("a4")
        ('American', 'USD', 'A4')
    """
    return WORDS.get(value) or PAPER.get(value) or (value.upper() if value in CURRENCIES else value)


class LessonForm:
    """The fields for the lesson as a whole.

    Args:
        state: of the lesson maker.
    """

    def __init__(self, state: MakerState) -> None:
        self._state, self._observer = state, fields.PausableObserver()
        self.title = fields.text("Title of the lesson")
        self.date = w.DatePicker(description="Date", style=fields.OWN_WIDTH)
        self.minutes = fields.number("Minutes of the session", 1, LONGEST_SESSION)
        self.settings = {name: fields.choice(NAMES[name], [("", "")]) for name in NAMES}
        self.box = fields.panel(
            "Lesson",
            "lesson",
            fields.row(self.title, self.date, self.minutes, *self.settings.values()),
        )
        self._observer.observe(self.title, lambda title: self._set(title=title.strip()))
        self._observer.observe(self.date, lambda date: self._set(date=date))
        self._observer.observe(self.minutes, self._set_minutes)
        for name, each in self.settings.items():
            self._observer.observe(
                each, lambda value, name=name: self._set(**{name: value or None})
            )
        state.on_change(self.show)

    def show(self) -> None:
        """Show the lesson as it is now."""
        lesson, settings = self._state.draft.lesson, self._state.settings
        with self._observer.paused():
            self.title.value = lesson.title
            self.date.value = lesson.date
            self.minutes.value = self._state.minutes
            for name, each in self.settings.items():
                usual = f"as the class ({name_of(getattr(settings, name))})"
                known = [(name_of(value), value) for value in VALUES[name]]
                fields.set_options(each, [(usual, ""), *known])
                each.value = getattr(lesson, name) or ""

    def _set(self, **what: Any) -> None:
        self._state.change(lambda draft: draft.changed(replace(draft.lesson, **what)))

    def _set_minutes(self, minutes: int) -> None:
        self._state.minutes = minutes
        self._state.notify()


class ClassForm:
    """The class settings of the folder.

    Args:
        state: of the lesson maker.
    """

    def __init__(self, state: MakerState) -> None:
        self._state = state
        values = {**VALUES, "method": METHODS, "timer": TIMERS}
        names = {**NAMES, "method": "Written sums by", "timer": "Timer"}
        self.choices = {
            name: fields.choice(names[name], [(name_of(value), value) for value in values[name]])
            for name in names
        }
        self.count = fields.number("Count aloud in (0: no)", 0, LARGEST_COUNT)
        self.save = fields.button("Save the class settings", self._save)
        about = "They hold for every lesson of this folder that says nothing else."
        self.box = fields.panel(
            "Class settings",
            "class",
            fields.words(about),
            fields.row(*self.choices.values(), self.count),
            fields.row(self.save),
        )
        self._known: object = None
        state.on_change(self.show)

    def show(self) -> None:
        """Show the settings when those in the file have changed."""
        settings = self._state.settings
        if settings == self._known:
            return
        self._known = settings
        for name, each in self.choices.items():
            each.value = getattr(settings, name)
        self.count.value = settings.count_aloud

    def _save(self) -> None:
        chosen = {name: each.value for name, each in self.choices.items()}
        state = self._state
        state.save_settings(replace(state.settings, count_aloud=self.count.value, **chosen))
