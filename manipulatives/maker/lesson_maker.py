"""The lesson maker: a form in which a helper puts a lesson together without programming."""

from __future__ import annotations

from pathlib import Path

import ipywidgets as w

from manipulatives.maker.form.file import FileForm
from manipulatives.maker.form.lesson import ClassForm, LessonForm
from manipulatives.maker.form.one_round import RoundForm
from manipulatives.maker.form.preview import Preview, Remarks
from manipulatives.maker.form.rounds import Catalogue, Rounds
from manipulatives.maker.notice import Notice
from manipulatives.maker.state import MakerState


class LessonMaker(w.VBox):
    """The form. Everything that is seen in it follows from its `state`.

    Args:
        folder: of the shelf: lessons are opened from it and saved into it.
        lesson: the name of the one to begin with; None for a new one.

    Example:
        >>> maker = LessonMaker(Path("notebooks"))
        >>> maker.catalogue.add.click()
        >>> len(maker.state.draft.lesson.rounds)
        1
    """

    def __init__(self, folder: Path, lesson: str | None = None) -> None:
        self.state = MakerState(folder)
        if lesson is not None:
            self.state.open(lesson)
        self.file = FileForm(self.state)
        self.lesson = LessonForm(self.state)
        self.rounds = Rounds(self.state)
        self.catalogue = Catalogue(self.state)
        self.round = RoundForm(self.state)
        self.preview = Preview(self.state)
        self.remarks = Remarks(self.state)
        self.settings = ClassForm(self.state)
        self.notice = Notice()
        self.notice.add_class("maker-message")
        self.state.on_change(self._show_message)
        sides = [
            w.VBox([self.rounds.box, self.catalogue.box]),
            w.VBox([self.round.box]),
            w.VBox([self.preview.box, self.remarks.box]),
        ]
        for side in sides:
            side.add_class("maker-side")
        columns = w.HBox(sides)
        columns.add_class("maker-columns")
        rows = [self.file.box, self.notice, self.lesson.box, columns, self.settings.box]
        super().__init__(rows)
        for name in ("kit", "kit-maker"):
            self.add_class(name)
        self.state.notify()

    def _show_message(self) -> None:
        message = self.state.message
        self.notice.show([message] if message else [], self.state.tone)


def lesson_maker(folder: str | Path = ".", *, lesson: str | None = None) -> LessonMaker:
    """Return the form for the lessons of a folder.

    Args:
        folder: where lessons are opened from and saved into; without it, the notebook's own.
        lesson: the name of the lesson to begin with, as its file is called before the dot; None
            for a new one. What is wrong with it is said in the form.

    Raises:
        NotADirectoryError: there is no such folder.

    Example:
        >>> lesson_maker("notebooks").state.minutes
        15
    """
    path = Path(folder)
    if not path.is_dir():
        raise NotADirectoryError(f"There is no folder {folder}; give one that is there.")
    return LessonMaker(path, lesson)
