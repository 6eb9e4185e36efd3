"""Boards: a lesson's notebook run cell by cell through Voila, some of them before they are asked.

A warm board has been run already and waits with its kernel. It holds the notebook as it was, so
it is used only while the file is, to the byte, what it was when it was warmed.
"""

from __future__ import annotations

import asyncio
import copy
import logging
import os
import subprocess
import time
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from voila.notebook_renderer import NotebookRenderer
from voila.utils import get_page_config

from manipulatives.lessons.problem import LessonProblem
from manipulatives.notebook import markdown
from manipulatives.outputs.page.page import LANGUAGES
from manipulatives.outputs.page.source import source_of
from manipulatives.serve.assets import board_script, board_style
from manipulatives.serve.cell_errors import Trouble

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Iterable

    from nbformat import NotebookNode
    from voila.app import Voila

    from manipulatives.serve.kernels import BoardKernels
    from manipulatives.shelf.items import ShelfItem

WARM = 3
"""How many boards are kept warm at most; a kernel takes some 60 MB."""

WARM_DELAY_S = 4.0
"""Seconds after a board was opened in which no other is warmed, so that it has the machine."""

CELL_TIMEOUT_S = 30
"""Seconds that one cell may take before it is stopped and the next one runs."""

# What a board needs that holds nothing but the kit's own widgets.
_ENOUGH = {"@voila-dashboards/widgets-manager8", "@jupyter-widgets/jupyterlab-manager", "anywidget"}

_log = logging.getLogger(__name__)


@dataclass(frozen=True)
class Board:
    """A notebook ready to be run as a board.

    Attributes:
        name: the lesson's name on the shelf.
        title: what the page is called.
        seed: the lesson's; the browser keeps places under title and seed.
        vocabulary: "us" or "uk"; a voice that reads aloud goes by it.
        rounds: how many rounds it has.
        notebook: the cells to run.
        folder: where it runs, below the shelf's folder, with "/" between parts; "" for the top.
        stamp: changes with every byte of the file and of the class settings beside it.
        own: whether it holds nothing but the kit's own calls.
        source: where the session files that it saves come from, as a page says it; the lesson
            maker saves none.
    """

    name: str
    title: str
    seed: int
    vocabulary: str
    rounds: int
    notebook: NotebookNode
    folder: str
    stamp: str
    own: bool
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
            own=item.own,
        )

    @property
    def lesson(self) -> str:
        """What tells this lesson from others, on a board as on a page."""
        return f"{self.title} {self.seed}"


class Words:
    """A board's text cells as HTML that can do no harm, without the title that stands on top."""

    def __init__(self) -> None:
        self._titled = False

    def __call__(self, cell: NotebookNode) -> str:
        """Return one text cell; "" when nothing is left of it."""
        text = cell.source
        if not self._titled:
            title, text = markdown.without_title(text)
            self._titled = title is not None
        return markdown.html(text, cell.get("attachments", {}))[0]


class _Renderer(NotebookRenderer):
    """Voila's renderer for a notebook that is already read."""

    def __init__(self, board: Board, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._board = board

    async def load_notebook(self, path: str) -> NotebookNode:  # noqa: ARG002 - Voila names it
        notebook = copy.deepcopy(self._board.notebook)
        _insist_on_python(notebook)
        return await self.fix_notebook(notebook)


@dataclass
class _Warm:
    stamp: str
    made: asyncio.Task[tuple[str, str]]


class Boards:
    """Runs boards and keeps some of them warm.

    Args:
        app: the server, with its kernels and settings.
        kernels: the server's kernels.
    """

    def __init__(self, app: Voila, kernels: BoardKernels) -> None:
        self._app = app
        self._kernels = kernels
        self._warm: dict[str, _Warm] = {}
        self._opened = -WARM_DELAY_S

    async def open(self, board: Board) -> AsyncIterator[str]:
        """Yield the page of a board piece by piece, from a warm kernel where there is one.

        Raises:
            LessonProblem: the notebook asks for a kernel that boards do not have.
        """
        self._opened = time.monotonic()
        ready = await self._take(board)
        if ready is not None:
            yield ready
            return
        kernel_id = await self._start(board)
        self._kernels.expect(kernel_id)
        async for piece in self._run(board, kernel_id):
            yield piece

    async def tend(self, wanted: Iterable[Board]) -> None:
        """Warm the first few of the wanted boards, one at a time; discard what has changed."""
        first = [board for board in wanted if board.own][:WARM]
        stamps = {board.name: board.stamp for board in first}
        for name, warm in list(self._warm.items()):
            if stamps.get(name) != warm.stamp or _failed(warm.made):
                await self._discard(name)
        if any(not warm.made.done() for warm in self._warm.values()):
            return
        if time.monotonic() - self._opened < WARM_DELAY_S:
            return
        for board in first:
            if board.name not in self._warm:
                made = asyncio.ensure_future(self._whole(board))
                self._warm[board.name] = _Warm(board.stamp, made)
                return

    def is_warm(self, board: Board) -> bool:
        """Whether a board would open at once."""
        warm = self._warm.get(board.name)
        return warm is not None and warm.stamp == board.stamp and warm.made.done()

    async def _take(self, board: Board) -> str | None:
        """Return the page of a warm board, which owns its kernel from then on; or None."""
        warm = self._warm.get(board.name)
        if warm is None or warm.stamp != board.stamp:
            await self._discard(board.name)
            return None
        del self._warm[board.name]
        try:
            kernel_id, page = await warm.made
        except Exception:  # noqa: BLE001 - whatever went wrong, the board is run afresh
            _log.debug("warming %s failed", board.name, exc_info=True)
            return None
        self._kernels.expect(kernel_id)
        return page if await self._kernels.lives(kernel_id) else None

    async def _whole(self, board: Board) -> tuple[str, str]:
        kernel_id = await self._start(board)
        self._kernels.kept.add(kernel_id)
        try:
            return kernel_id, "".join([piece async for piece in self._run(board, kernel_id)])
        except BaseException:
            await self._end(kernel_id)
            raise

    async def _discard(self, name: str) -> None:
        warm = self._warm.pop(name, None)
        if warm is None:
            return
        if not warm.made.done():
            warm.made.cancel()
        elif not _failed(warm.made):
            await self._end(warm.made.result()[0])

    async def _end(self, kernel_id: str) -> None:
        self._kernels.kept.discard(kernel_id)
        if kernel_id in self._kernels:
            await self._kernels.shutdown_kernel(kernel_id, now=True)

    async def _start(self, board: Board) -> str:
        _insist_on_python(board.notebook)
        apart = {}
        if board.own:
            # The folder may hold files named like modules. What the kit runs unasked imports
            # from where the kit is installed, never from there.
            apart["env"] = {**os.environ, "PYTHONSAFEPATH": "1"}
            apart["extra_arguments"] = ["--InteractiveShellApp.ignore_cwd=True"]
        return await self._kernels.start_kernel(
            kernel_name="python3",
            path=board.folder,
            # What a kernel has to say beside its cells' outputs is not for the shelf's terminal.
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            **apart,
        )

    async def _run(self, board: Board, kernel_id: str) -> AsyncIterator[str]:
        app = self._app
        config = get_page_config(
            base_url=app.base_url,
            settings=app.app.settings,
            log=app.log,
            voila_configuration=app.voila_configuration,
        )
        if board.own:
            known = config["federated_extensions"]
            config["federated_extensions"] = [one for one in known if one["name"] in _ENOUGH]
        renderer = _Renderer(
            board,
            voila_configuration=app.voila_configuration,
            traitlet_config=app.config,
            notebook_path=f"{board.name}.ipynb",
            template_paths=app.template_paths,
            config_manager=app.config_manager,
            contents_manager=app.contents_manager,
            base_url=app.base_url,
            kernel_spec_manager=app.kernel_spec_manager,
            page_config=config,
        )
        await renderer.initialize()
        renderer.resources["kit"] = {
            "board": board,
            "language": LANGUAGES[board.vocabulary],
            "trouble": Trouble(len(renderer.notebook.cells), CELL_TIMEOUT_S),
            "words": Words(),
            "style": board_style(),
            "script": board_script(),
        }
        kernel = self._kernels.get_kernel(kernel_id)
        async for piece, _ in renderer.generate_content_generator(kernel_id, kernel):
            yield piece


def _failed(made: asyncio.Task[Any]) -> bool:
    return made.done() and (made.cancelled() or made.exception() is not None)


def _insist_on_python(notebook: NotebookNode) -> None:
    """Ask for the one kernel that boards have.

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
