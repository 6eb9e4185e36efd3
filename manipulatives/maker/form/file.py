"""Opening and saving in the form; another lesson is replaced only when that is said."""

from __future__ import annotations

from typing import TYPE_CHECKING

import ipywidgets as w

from manipulatives.maker.form import fields as parts
from manipulatives.shelf.find import lesson_names
from manipulatives.shelf.outputs import OF_A_LESSON, OUTPUTS
from manipulatives.shelf.replace import AnotherFile
from manipulatives.shelf.save import name_for

if TYPE_CHECKING:
    from manipulatives.maker.state import Table

CHOOSE = "choose a lesson"


class FileForm:
    """The folder: what is opened from it and saved into it.

    Args:
        table: what lies on the helper's table.
    """

    def __init__(self, table: Table) -> None:
        self._table, self._quiet = table, parts.Quiet()
        self.lessons = parts.choice("Lessons of this folder", [(CHOOSE, "")])
        self.open = parts.button("Open", self._open, hint="Open the lesson that is chosen")
        self.new = parts.button("Begin a new one", self._new)
        self.name = parts.text("Save as")
        self.outputs = {name: parts.tick(OUTPUTS[name].word) for name in OF_A_LESSON}
        self.save = parts.button("Save", self._save, main=True)
        self.question = parts.words()
        self.yes = parts.button("Replace it", lambda: self._save(replacing=True))
        self.no = parts.button("Keep it", self._keep)
        self.asking = w.VBox([self.question, parts.row(self.yes, self.no)])
        self.asking.add_class("maker-asking")
        self.asking.layout.display = "none"
        self.box = parts.panel(
            "Open and save",
            "file",
            parts.row(self.lessons, self.open, self.new),
            parts.row(self.name, *self.outputs.values(), self.save),
            self.asking,
        )
        self._named: str | None = None
        table.watch(self.show)

    def show(self) -> None:
        """Show what there is to open, and a name for the lesson."""
        table = self._table
        names = lesson_names(table.folder)
        with self._quiet.showing():
            before = self.lessons.value
            parts.options_are(self.lessons, [(CHOOSE, ""), *((each, each) for each in names)])
            here = table.place.name if table.place else before
            self.lessons.value = here if here in names else ""
            usual = table.place.name if table.place else name_for(table.draft.lesson.title)
            # A name that somebody wrote stays.
            if self._named != usual and self.name.value in ("", self._named):
                self.name.value = usual
                self._named = usual

    def _open(self) -> None:
        name = self.lessons.value
        if not name:
            self._table.say("Choose a lesson first.", "wrong")
        else:
            self._forget()
            self._table.open(name)
        self._table.show()

    def _new(self) -> None:
        self._forget()
        self._table.begin()
        self._table.say("A new lesson is begun.")
        self._table.show()

    def _forget(self) -> None:
        """Take the name of another lesson away."""
        self.name.value, self._named = "", None
        self._ask("")

    def _save(self, *, replacing: bool = False) -> None:
        wanted = [name for name, box in self.outputs.items() if box.value]
        try:
            self._table.save(self.name.value, wanted, replacing=replacing)
        except AnotherFile as problem:
            self._ask(f"{problem.what[:1].upper()}{problem.what[1:]}. Shall it be replaced?")
            self._table.say("Nothing is saved yet.")
        else:
            self._ask("")
        self._table.show()

    def _keep(self) -> None:
        self._ask("")
        self._table.say("It is kept. Save under another name.")
        self._table.show()

    def _ask(self, question: str) -> None:
        parts.say(self.question, question)
        self.asking.layout.display = None if question else "none"
