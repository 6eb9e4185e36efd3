"""What is run as a board: a notebook, and the facts about its lesson that the board needs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from manipulatives.lessons.problem import LessonProblem
from manipulatives.outputs.page.source import source_of

if TYPE_CHECKING:
    from nbformat import NotebookNode

    from manipulatives.shelf.items import ShelfItem


@dataclass(frozen=True)
class Board:
    """A notebook ready to be run as a board.

    Attributes:
        name: the lesson's name on the shelf.
        title: of the page.
        seed: the lesson's; the browser stores progress under title and seed.
        vocabulary: "us" or "uk"; it decides which voice reads aloud.
        rounds: how many rounds it has.
        notebook: the cells to run.
        folder: where it runs, below the shelf's folder, with "/" between parts; "" for the top.
        stamp: changes with every byte of the file and of the class settings beside it.
        kit_only: whether it holds nothing but the kit's own calls.
        source: where the session files that it saves come from, as `source_of` returns it; unused
            in the lesson maker.
    """

    name: str
    title: str
    seed: int
    vocabulary: str
    rounds: int
    notebook: NotebookNode
    folder: str
    stamp: str
    kit_only: bool
    source: str = "{}"

    @classmethod
    def of(cls, item: ShelfItem) -> Board:
        """Return what is run as the board of a lesson of the shelf.

        Raises:
            LessonProblem: its file cannot be read.
        """
        if item.notebook is None:
            raise LessonProblem("there is nothing in it to show", remedy="mend the file first")
        seed = int(item.lesson.seed) if item.lesson else 0
        return cls(
            name=item.name,
            title=item.title,
            seed=seed,
            source=source_of(item.title, seed, item.settings),
            vocabulary=(item.lesson and item.lesson.vocabulary) or item.settings.vocabulary,
            rounds=item.rounds,
            notebook=item.notebook,
            folder=item.folder,
            stamp=item.stamp,
            kit_only=item.kit_only,
        )

    @property
    def lesson(self) -> str:
        """The key of the lesson in the browser's storage, the same on a board and on a page."""
        return f"{self.title} {self.seed}"


def use_the_kits_python(notebook: NotebookNode) -> None:
    """Let a notebook ask for the one kernel that boards have.

    Raises:
        LessonProblem: the notebook is written in another language.
    """
    asked = notebook.metadata.get("kernelspec", {})
    language = asked.get("language") or notebook.metadata.get("language_info", {}).get("name")
    if language and str(language).lower() not in ("python", "ipython"):
        raise LessonProblem(
            f"it is written in {language}, and boards run Python only",
            remedy="open it in JupyterLab",
        )
    notebook.metadata["kernelspec"] = {
        "name": "python3",
        "display_name": "Python 3",
        "language": "python",
    }
