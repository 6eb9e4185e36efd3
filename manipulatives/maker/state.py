"""The state of the lesson maker: the draft, the chosen round, and the message to the helper."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from manipulatives.lessons.advice import SLOT, LessonWarning, warnings_about
from manipulatives.lessons.editing import new_seed
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem, at
from manipulatives.lessons.round_tasks import tasks_for
from manipulatives.lessons.settings import ClassSettings, class_settings
from manipulatives.lessons.tasks.task import Task
from manipulatives.shelf import save as saving
from manipulatives.shelf.draft import Draft
from manipulatives.shelf.find import lesson_names
from manipulatives.shelf.replace import AnotherFile

UNTITLED = "A new lesson"


class MakerState:
    """A lesson of a folder that is being edited.

    A change that is not possible leaves everything as it was; the message says why.

    Args:
        folder: of the shelf.

    Example:
        >>> state = MakerState(Path("notebooks"))
        >>> state.change(lambda draft: draft.with_round("time.read_hour"), chosen=0)
        True
        >>> len(state.tasks)
        6
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.minutes = SLOT
        self.message, self.tone = "", "info"
        self._callbacks: list[Callable[[], None]] = []
        try:
            self.settings = class_settings(folder)
        except LessonProblem as problem:
            self.settings = ClassSettings()
            self.message, self.tone = str(problem), "error"
        self.begin()

    def begin(self) -> None:
        """Begin with an empty lesson."""
        used = len(lesson_names(self.folder))
        self._set_draft(Draft.of(Lesson(UNTITLED, seed=new_seed(f"{UNTITLED} {used}"))), None)

    def open(self, name: str) -> bool:
        """Open a lesson of the folder; return whether it could be read."""
        try:
            draft, place = saving.open_lesson(self.folder, name)
            for number, one in enumerate(draft.lesson.rounds, start=1):
                with at(f"round {number}"):
                    self._tasks_of(draft.lesson, one)
        except (LessonProblem, OSError) as problem:
            self.say(str(problem), "error")
            return False
        self._set_draft(draft, place)
        self.say(f"{draft.lesson.title} is open.")
        return True

    def change(self, how: Callable[[Draft], Draft], *, chosen: int | None = None) -> bool:
        """Change the draft; return whether that was possible.

        Args:
            how: returns another draft.
            chosen: the round that is chosen afterwards, counted from 0; None for the same one.
        """
        try:
            draft = how(self.draft)
            same = replace(draft.lesson, rounds=()) == replace(self.draft.lesson, rounds=())
            for number, one in enumerate(draft.lesson.rounds, start=1):
                if not same or one not in self.draft.lesson.rounds:
                    with at(f"round {number}"):
                        self._tasks_of(draft.lesson, one)
        except LessonProblem as problem:
            self.say(str(problem), "error")
            self.notify()
            return False
        self.draft = draft
        wanted = self.chosen if chosen is None else chosen
        self.chosen = max(0, min(wanted, len(draft.lesson.rounds) - 1))
        self.say("")
        self.notify()
        return True

    def choose(self, place: int) -> None:
        """Choose another round."""
        self.chosen = place
        self.notify()

    def save(self, name: str, outputs: list[str], *, replacing: bool = False) -> bool:
        """Save the lesson; return whether it is saved.

        Raises:
            AnotherFile: there is another lesson of that name; the helper has to be asked first.
        """
        try:
            self.place = saving.save(
                self.draft,
                self.folder,
                name,
                outputs=outputs,
                place=self.place,
                replacing=replacing,
            )
        except AnotherFile:
            raise
        except LessonProblem as problem:
            self.say(str(problem), "error")
            return False
        except OSError as problem:
            self.say(f"Nothing was written: {problem.strerror or problem}.", "error")
            return False
        except Exception as problem:  # noqa: BLE001 - the form must show why nothing happens
            self._fail(problem)
            return False
        self._read_others()
        files = ["lesson", "notebook", *outputs]
        listed = f"{', '.join(files[:-1])} and {files[-1]}"
        self.say(f"Saved as {self.place.name}: {listed}.")
        self.notify()
        return True

    def save_settings(self, settings: ClassSettings) -> None:
        """Change the class settings of the folder, in their file too."""
        try:
            self.settings = saving.write_settings(settings, self.folder)
        except OSError as problem:
            self.say(f"The settings were not written: {problem.strerror or problem}.", "error")
            return
        self.say("The class settings are saved.")
        self.notify()

    @property
    def round(self) -> Round | None:
        """The chosen round, or None when there is none."""
        rounds = self.draft.lesson.rounds
        return rounds[self.chosen] if rounds else None

    @property
    def tasks(self) -> list[Task]:
        """The tasks of the chosen round."""
        return self._tasks_of(self.draft.lesson, self.round) if self.round else []

    def warnings(self) -> list[LessonWarning]:
        """Remarks about the lesson, as a colleague might make them."""
        return warnings_about(self.draft.lesson, others=self._others, minutes=self.minutes)

    def say(self, sentence: str, tone: str = "info") -> None:
        """Show the helper another message; its tone is "info" or "error"."""
        self.message = f"{sentence[:1].upper()}{sentence[1:]}"
        self.tone = tone

    def on_change(self, callback: Callable[[], None]) -> None:
        """Call a function after every change."""
        self._callbacks.append(callback)

    def notify(self) -> None:
        """Call every function that waits for changes."""
        for callback in self._callbacks:
            try:
                callback()
            except Exception as problem:  # noqa: BLE001 - the form must show why nothing happens
                self._fail(problem)

    def _fail(self, problem: Exception) -> None:
        self.say(f"Something went wrong in the kit itself: {problem}.", "error")

    def _set_draft(self, draft: Draft, place: saving.Place | None) -> None:
        self.draft = draft
        self.place = place
        self.chosen = 0
        self._read_others()
        self.notify()

    def _read_others(self) -> None:
        """Read the other lessons of the folder; they are many, so not with every change."""
        name = self.place.name if self.place else ""
        self._others = saving.others_in(self.folder, name)

    def _tasks_of(self, lesson: Lesson, one: Round) -> list[Task]:
        return tasks_for(one, lesson, self.settings)
