"""The addresses of the server."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from voila.static_file_handler import MultiStaticFileHandler

from manipulatives.serve.handlers.boards import AllowRun, BoardPage, MakerPage
from manipulatives.serve.handlers.files import ExtensionFiles
from manipulatives.serve.handlers.kernels import (
    IgnoreShutdown,
    KernelModel,
    KernelSocket,
    KernelState,
)
from manipulatives.serve.handlers.notebooks import OpenNotebook
from manipulatives.serve.handlers.outputs import MakeOutput, ShowOutput
from manipulatives.serve.handlers.shelf import Renumber, ShelfPage
from manipulatives.shelf.outputs import ON_THE_SHELF

if TYPE_CHECKING:
    from voila.app import Voila


def routes(app: Voila) -> list[Any]:
    """Return every address that the server answers, with its handler."""
    kernel = r"(?P<kernel_id>\w+-\w+-\w+-\w+-\w+)"
    outputs = "|".join(ON_THE_SHELF)
    labextensions = {"path": app.labextensions_path, "no_cache_paths": ["/"]}
    own = [
        (r"", ShelfPage),
        (r"board/(.+)", BoardPage),
        (r"maker", MakerPage),
        (r"maker/(.+)", MakerPage),
        (r"run/(.+)", AllowRun),
        (rf"make/({outputs})/(.+)", MakeOutput),
        (rf"made/({outputs})/(.+)", ShowOutput),
        (r"notebook/(.+)", OpenNotebook),
        (r"renumber/(.+)", Renumber),
        (rf"kernel/{kernel}", KernelState),
        (rf"api/kernels/{kernel}", KernelModel),
        (rf"api/kernels/{kernel}/channels", KernelSocket),
        (rf"voila/api/shutdown/{kernel}", IgnoreShutdown),
        (r"voila/static/(.*)", MultiStaticFileHandler, {"paths": app.static_paths}),
        (r"voila/labextensions/(.*)", ExtensionFiles, labextensions),
    ]
    return [(re.escape(app.base_url) + pattern, *rest) for pattern, *rest in own]
