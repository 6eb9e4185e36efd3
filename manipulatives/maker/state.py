"""What lies on the helper's table: the draft, the round that is looked at, and what was said."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from manipulatives.lessons.advice import SLOT, Warned, warnings_about
from manipulatives.lessons.editing import new_seed
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem, at
from manipulatives.lessons.round_tasks import tasks_for
from manipulatives.lessons.settings import ClassSettings, class_settings, settled
from manipulatives.lessons.tasks.task import Task
from manipulatives.shelf import save as saving
from manipulatives.shelf.draft import Draft
from manipulatives.shelf.find import lesson_names
from manipulatives.shelf.replace import AnotherFile

UNTITLED = "A new lesson"


class Table:
    """A lesson that is being put together in a folder.

    Every change is tried first: what cannot be is said, and leaves everything as it was.

    Args:
        folder: of the shelf.

    Example:
        >>> table = Table(Path("notebooks"))
        >>> table.change(lambda draft: draft.with_round("time.read_hour"), chosen=0)
        True
        >>> len(table.tasks)
        6
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.minutes = SLOT
        self.said, self.tone = "", "said"
        self._watchers: list[Callable[[], None]] = []
        try:
            self.settings = class_settings(folder)
        except LessonProblem as problem:
            self.settings = ClassSettings()
            self.said, self.tone = str(problem), "wrong"
        self.begin()

    def begin(self) -> None:
        """Put an empty lesson on the table."""
        used = len(lesson_names(self.folder))
        self._lay(Draft.of(Lesson(UNTITLED, seed=new_seed(f"{UNTITLED} {used}"))), None)

    def open(self, name: str) -> bool:
        """Put a lesson of the folder on the table; return whether it could be read."""
        try:
            draft, place = saving.open_lesson(self.folder, name)
            for number, one in enumerate(draft.lesson.rounds, start=1):
                with at(f"round {number}"):
                    self._made(draft.lesson, one)
        except (LessonProblem, OSError) as problem:
            self.say(str(problem), "wrong")
            return False
        self._lay(draft, place)
        self.say(f"{draft.lesson.title} is open.")
        return True

    def change(self, how: Callable[[Draft], Draft], *, chosen: int | None = None) -> bool:
        """Change the draft; return whether that could be.

        Args:
            how: returns another draft.
            chosen: the round to be looked at afterwards, counted from 0; None for the same one.
        """
        try:
            draft = how(self.draft)
            same = replace(draft.lesson, rounds=()) == replace(self.draft.lesson, rounds=())
            for number, one in enumerate(draft.lesson.rounds, start=1):
                if not same or one not in self.draft.lesson.rounds:
                    with at(f"round {number}"):
                        self._made(draft.lesson, one)
        except LessonProblem as problem:
            self.say(str(problem), "wrong")
            self.show()
            return False
        self.draft = draft
        wanted = self.chosen if chosen is None else chosen
        self.chosen = max(0, min(wanted, len(draft.lesson.rounds) - 1))
        self.say("")
        self.show()
        return True

    def choose(self, place: int) -> None:
        """Look at another round."""
        self.chosen = place
        self.show()

    def save(self, name: str, outputs: list[str], *, replacing: bool = False) -> bool:
        """Save the lesson; return whether it is saved, or else what has to be asked first.

        Raises:
            AnotherFile: there is another lesson of that name.
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
            self.say(str(problem), "wrong")
            return False
        except OSError as problem:
            self.say(f"Nothing was written: {problem.strerror or problem}.", "wrong")
            return False
        except Exception as problem:  # noqa: BLE001 - a form in which nothing happens says why
            self._fail(problem)
            return False
        self._look_around()
        files = ["lesson", "notebook", *outputs]
        told = f"{', '.join(files[:-1])} and {files[-1]}"
        self.say(f"Saved as {self.place.name}: {told}.")
        self.show()
        return True

    def settle(self, settings: ClassSettings) -> None:
        """Change the class settings of the folder, in their file too."""
        try:
            self.settings = saving.write_settings(settings, self.folder)
        except OSError as problem:
            self.say(f"The settings were not written: {problem.strerror or problem}.", "wrong")
            return
        self.say("The class settings are saved.")
        self.show()

    @property
    def round(self) -> Round | None:
        """The round that is looked at, or None where there is none."""
        rounds = self.draft.lesson.rounds
        return rounds[self.chosen] if rounds else None

    @property
    def tasks(self) -> list[Task]:
        """The tasks of the round that is looked at."""
        return self._made(self.draft.lesson, self.round) if self.round else []

    @property
    def whole(self) -> Lesson:
        """The lesson with everything that it takes from the class settings."""
        return settled(self.draft.lesson, self.settings)

    def warnings(self) -> list[Warned]:
        """What a colleague would remark about the lesson."""
        return warnings_about(self.draft.lesson, others=self._others, minutes=self.minutes)

    def say(self, sentence: str, tone: str = "said") -> None:
        """Say something to the helper; "wrong" is something that could not be."""
        self.said = f"{sentence[:1].upper()}{sentence[1:]}"
        self.tone = tone

    def watch(self, watcher: Callable[[], None]) -> None:
        """Let somebody know whenever something has changed."""
        self._watchers.append(watcher)

    def show(self) -> None:
        """Let everybody know."""
        for watcher in self._watchers:
            try:
                watcher()
            except Exception as problem:  # noqa: BLE001 - a form in which nothing happens says why
                self._fail(problem)

    def _fail(self, problem: Exception) -> None:
        self.say(f"Something went wrong in the kit itself: {problem}.", "wrong")

    def _lay(self, draft: Draft, place: saving.Place | None) -> None:
        self.draft = draft
        self.place = place
        self.chosen = 0
        self._look_around()
        self.show()

    def _look_around(self) -> None:
        """Read the other lessons of the folder; they are many, so not with every change."""
        name = self.place.name if self.place else ""
        self._others = saving.others_in(self.folder, name)

    def _made(self, lesson: Lesson, one: Round) -> list[Task]:
        return tasks_for(one, lesson, self.settings)
