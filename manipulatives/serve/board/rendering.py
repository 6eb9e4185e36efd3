"""A board as HTML: Voila runs its cells one by one and puts them into the kit's template."""

from __future__ import annotations

import copy
from typing import TYPE_CHECKING, Any

from voila.notebook_renderer import NotebookRenderer
from voila.utils import get_page_config

from manipulatives.notebook import markdown
from manipulatives.outputs.page.page import LANGUAGES
from manipulatives.serve.assets import board_script, board_style
from manipulatives.serve.board.board import use_the_kits_python
from manipulatives.serve.board.cell_errors import CellErrors

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from nbformat import NotebookNode
    from voila.app import Voila

    from manipulatives.serve.board.board import Board
    from manipulatives.serve.kernels import BoardKernels

CELL_TIMEOUT_S = 30
"""Seconds that one cell may take before it is stopped and the next one runs."""

# What a board needs that holds nothing but the kit's own widgets.
_OWN_EXTENSIONS = {
    "@voila-dashboards/widgets-manager8",
    "@jupyter-widgets/jupyterlab-manager",
    "anywidget",
}


async def render(
    app: Voila, board: Board, kernels: BoardKernels, kernel_id: str
) -> AsyncIterator[str]:
    """Run the cells of a board in a kernel and yield its page piece by piece.

    Args:
        app: the server, with its settings and templates.
        board: what is run.
        kernels: the server's kernels.
        kernel_id: of the kernel that the board is run in, and that its page is connected to.
    """
    config = get_page_config(
        base_url=app.base_url,
        settings=app.app.settings,
        log=app.log,
        voila_configuration=app.voila_configuration,
    )
    if board.kit_only:
        installed = config["federated_extensions"]
        config["federated_extensions"] = [
            extension for extension in installed if extension["name"] in _OWN_EXTENSIONS
        ]
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
        "cell_errors": CellErrors(len(renderer.notebook.cells), timeout_s=CELL_TIMEOUT_S),
        "text_of": TextCells(),
        "style": board_style(),
        "script": board_script(),
    }
    kernel = kernels.get_kernel(kernel_id)
    async for piece, _ in renderer.generate_content_generator(kernel_id, kernel):
        yield piece


class TextCells:
    """A board's text cells as HTML that can do no harm, without the title that stands on top."""

    def __init__(self) -> None:
        self._title_found = False

    def __call__(self, cell: NotebookNode) -> str:
        """Return one text cell; "" when nothing is left of it."""
        text = cell.source
        if not self._title_found:
            title, text = markdown.without_title(text)
            self._title_found = title is not None
        return markdown.html(text, cell.get("attachments", {}))[0]


class _Renderer(NotebookRenderer):
    """Voila's renderer, for a notebook that is read already."""

    def __init__(self, board: Board, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._board = board

    async def load_notebook(self, path: str) -> NotebookNode:  # noqa: ARG002 - Voila names it
        notebook = copy.deepcopy(self._board.notebook)
        use_the_kits_python(notebook)
        return await self.fix_notebook(notebook)
