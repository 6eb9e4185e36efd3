"""Opening and saving in the form; another lesson is replaced only when that is confirmed."""

from __future__ import annotations

from typing import TYPE_CHECKING

import ipywidgets as w

from manipulatives.maker.form import fields
from manipulatives.shelf.find import lesson_names
from manipulatives.shelf.outputs import OF_A_LESSON, OUTPUTS
from manipulatives.shelf.replace import AnotherFile
from manipulatives.shelf.save import name_for

if TYPE_CHECKING:
    from manipulatives.maker.state import MakerState

CHOOSE = "choose a lesson"


class FileForm:
    """The folder: what is opened from it and saved into it.

    Args:
        state: of the lesson maker.
    """

    def __init__(self, state: MakerState) -> None:
        self._state, self._observer = state, fields.PausableObserver()
        self.lessons = fields.choice("Lessons of this folder", [(CHOOSE, "")])
        self.open = fields.button("Open", self._open, hint="Open the lesson that is chosen")
        self.new = fields.button("Begin a new one", self._new)
        self.name = fields.text("Save as")
        self.outputs = {name: fields.tick(OUTPUTS[name].word) for name in OF_A_LESSON}
        self.save = fields.button("Save", self._save, main=True)
        self.question = fields.words()
        self.replace = fields.button("Replace it", lambda: self._save(replacing=True))
        self.cancel = fields.button("Keep it", self._cancel)
        self.asking = w.VBox([self.question, fields.row(self.replace, self.cancel)])
        self.asking.add_class("maker-asking")
        self.asking.layout.display = "none"
        self.box = fields.panel(
            "Open and save",
            "file",
            fields.row(self.lessons, self.open, self.new),
            fields.row(self.name, *self.outputs.values(), self.save),
            self.asking,
        )
        self._suggested: str | None = None
        state.on_change(self.show)

    def show(self) -> None:
        """Show what there is to open, and a name for the lesson."""
        state = self._state
        names = lesson_names(state.folder)
        with self._observer.paused():
            before = self.lessons.value
            fields.set_options(self.lessons, [(CHOOSE, ""), *((each, each) for each in names)])
            here = state.place.name if state.place else before
            self.lessons.value = here if here in names else ""
            usual = state.place.name if state.place else name_for(state.draft.lesson.title)
            # A name that somebody typed stays.
            if self._suggested != usual and self.name.value in ("", self._suggested):
                self.name.value = usual
                self._suggested = usual

    def _open(self) -> None:
        name = self.lessons.value
        if not name:
            self._state.say("Choose a lesson first.", "error")
        else:
            self._clear_name()
            self._state.open(name)
        self._state.notify()

    def _new(self) -> None:
        self._clear_name()
        self._state.begin()
        self._state.say("A new lesson is begun.")
        self._state.notify()

    def _clear_name(self) -> None:
        """Remove the name of another lesson."""
        self.name.value, self._suggested = "", None
        self._ask("")

    def _save(self, *, replacing: bool = False) -> None:
        wanted = [name for name, box in self.outputs.items() if box.value]
        try:
            self._state.save(self.name.value, wanted, replacing=replacing)
        except AnotherFile as problem:
            self._ask(f"{problem.what[:1].upper()}{problem.what[1:]}. Shall it be replaced?")
            self._state.say("Nothing is saved yet.")
        else:
            self._ask("")
        self._state.notify()

    def _cancel(self) -> None:
        self._ask("")
        self._state.say("It is kept. Save under another name.")
        self._state.notify()

    def _ask(self, question: str) -> None:
        fields.set_text(self.question, question)
        self.asking.layout.display = None if question else "none"
