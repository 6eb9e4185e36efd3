"""Running a notebook with other code than the kit's, the only way to know what it shows."""

from __future__ import annotations

import ast
import copy
import re
import subprocess
from typing import TYPE_CHECKING

from jupyter_client.kernelspec import NoSuchKernel
from nbclient import NotebookClient
from nbclient.exceptions import CellExecutionError, CellTimeoutError, DeadKernelError

from manipulatives.lessons.problem import LessonProblem, at, quoted

if TYPE_CHECKING:
    from pathlib import Path

    from nbformat import NotebookNode

CELL_TIMEOUT_S = 120
"""Seconds that one cell may take."""

_COLOUR_CODES = re.compile(r"\x1b\[[0-9;]*m")


def run(notebook: NotebookNode, folder: Path) -> NotebookNode:
    """Return the notebook with what its cells show and the state of all its widgets.

    Args:
        notebook: stays as it is; a copy is run.
        folder: where it runs, for the files that its code reads.

    Raises:
        LessonProblem: a cell fails, takes too long or is nested too deeply, or there is no kernel
            to run it.

    Example:
        >>> from nbformat.v4 import new_code_cell, new_notebook
        >>> mine = new_notebook(cells=[new_code_cell("print('Ferry at 4:35')")])
        >>> run(mine, Path()).cells[0].outputs[0].text  # doctest: +SKIP
        'Ferry at 4:35'
    """
    made = copy.deepcopy(notebook)
    made.metadata.pop("widgets", None)
    _check_depth(made)
    running = 0

    def note(cell: NotebookNode, cell_index: int) -> None:  # noqa: ARG001 - nbclient passes both by name
        nonlocal running
        running = cell_index + 1

    client = NotebookClient(
        made,
        timeout=CELL_TIMEOUT_S,
        store_widget_state=True,
        coalesce_streams=True,
        on_cell_start=note,
        resources={"metadata": {"path": str(folder)}},
    )
    try:
        # The messages of a starting kernel are of no use to a teacher.
        client.execute(stderr=subprocess.DEVNULL)
    except NoSuchKernel as error:
        raise LessonProblem(
            f"it asks for the kernel {quoted(error.name)}, which is not installed here",
            remedy="open it in JupyterLab and choose Python 3",
        ) from error
    except (CellExecutionError, CellTimeoutError, DeadKernelError) as error:
        with at(f"cell {running}"):
            raise LessonProblem(
                _reason(error), remedy="mend the cell or take it out, then try again"
            ) from error
    return made


def _check_depth(notebook: NotebookNode) -> None:
    """Refuse code that is nested too deeply for Python: a kernel never answers to it.

    Raises:
        LessonProblem: there is such a cell.
    """
    for number, cell in enumerate(notebook.cells, start=1):
        if cell.cell_type != "code":
            continue
        try:
            compile(cell.source, f"cell {number}", "exec", ast.PyCF_ALLOW_TOP_LEVEL_AWAIT)
        except (RecursionError, MemoryError) as error:
            with at(f"cell {number}"):
                raise LessonProblem(
                    "it is nested too deeply to be run", remedy="mend the cell or take it out"
                ) from error
        except (SyntaxError, ValueError):
            continue  # the kernel says what is wrong, or reads it as a magic


def _reason(error: CellExecutionError | CellTimeoutError | DeadKernelError) -> str:
    match error:
        case CellExecutionError():
            said = _COLOUR_CODES.sub("", f"{error.ename}: {error.evalue}").strip(": ")
            return " ".join(said.split())
        case CellTimeoutError():
            return f"it was not done after {CELL_TIMEOUT_S} seconds"
    return "it ended the kernel"
