"""The command that opens the shelf: `manipulatives serve [FOLDER]`."""

from __future__ import annotations

import errno
import sys
import threading
import webbrowser
from pathlib import Path
from typing import TYPE_CHECKING

from manipulatives.lessons.problem import LessonProblem

if TYPE_CHECKING:
    import argparse

    from manipulatives.shelf.items import Shelf

HELP = (
    "Open the shelf of a folder: every lesson as board, page, sheet and key. "
    "It is for this machine only, and Ctrl+C closes it."
)
EXAMPLE = "manipulatives serve lessons"
PORT = 8817
"""The default port. It is always the same, because browsers store data by address and port."""

FIRST_FREE, LAST = 1024, 65535
"""The ports that a program can use without special rights."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument(
        "folder",
        metavar="FOLDER",
        type=Path,
        nargs="?",
        default=Path(),
        help="where the lessons are (without it, this folder)",
    )
    parser.add_argument(
        "--port",
        metavar="N",
        type=int,
        default=PORT,
        help=f"where to listen, on this machine only (without it, {PORT}; 0 for any that is free)",
    )
    parser.add_argument(
        "--no-browser",
        dest="browser",
        action="store_false",
        help="only say the address, without opening it in a browser",
    )
    hosted = parser.add_argument_group("for a hosted trial, where a proxy decides who may come in")
    hosted.add_argument(
        "--base", metavar="PATH", default="/", help="where the shelf's addresses begin"
    )
    hosted.add_argument(
        "--lab", metavar="ADDRESS", default="", help="where the folder is in a JupyterLab"
    )


def run(given: argparse.Namespace) -> str:
    """Serve the shelf until it is closed.

    Raises:
        LessonProblem: there is no such folder, or the port is taken.
    """
    return serve(
        given.folder, port=given.port, browser=given.browser, base=given.base, lab=given.lab
    )


def serve(
    folder: str | Path = ".",
    *,
    port: int = PORT,
    browser: bool = True,
    base: str = "/",
    lab: str = "",
) -> str:
    """Serve the shelf of a folder on this machine until Ctrl+C.

    Args:
        folder: where the lessons are.
        port: where to listen, on this machine only; 0 for any port that is free.
        browser: whether to open it in a browser.
        base: the path of its addresses behind a proxy, which then decides about access.
        lab: the folder's address in a running JupyterLab; "" to start one when it is needed.

    Raises:
        LessonProblem: there is no such folder, or the port is taken.

    Example:
        >>> serve("nowhere")
        Traceback (most recent call last):
        manipulatives.lessons.problem.LessonProblem: nowhere: there is no such folder; ...
    """
    shelf = _shelf(Path(folder))
    if not 0 <= port <= LAST:
        raise _port_problem(f"there is no port {port}")
    # Voila takes a second to load, so other commands do not import it.
    from manipulatives.serve.app import ShelfApp  # noqa: PLC0415
    from manipulatives.serve.lab import Lab, LabElsewhere  # noqa: PLC0415
    from manipulatives.serve.server_state import ServerState  # noqa: PLC0415

    def on_listening(address: str) -> None:
        _print(f"The shelf of {shelf.folder.name or shelf.folder} is open at {address}")
        _print("Press Ctrl+C to close it.")
        if browser:
            _open(address)

    state = ServerState(shelf, LabElsewhere(lab) if lab else Lab(shelf.folder))
    try:
        app = ShelfApp.instance(
            state=state, port=port, base=_base_path(base), on_listening=on_listening
        )
    except OSError as error:
        raise _port_problem(_reason(error, port), port) from None
    app.initialize()
    app.start()
    return "The shelf is closed."


def _print(sentence: str) -> None:
    sys.stdout.write(f"{sentence}\n")
    sys.stdout.flush()


def _open(address: str) -> None:
    """Open the browser in a thread, because some calls return only when the browser closes."""
    threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()


def _base_path(base: str) -> str:
    inside = base.strip("/")
    return f"/{inside}/" if inside else "/"


def _shelf(folder: Path) -> Shelf:
    from manipulatives.shelf.items import Shelf  # noqa: PLC0415 - it reads notebooks

    try:
        shelf = Shelf(folder)
        next(shelf.folder.iterdir(), None)
    except FileNotFoundError:
        what, remedy = "there is no such folder", "give one that is there"
    except NotADirectoryError:
        what, remedy = "that is no folder", "give the folder that it is in"
    except OSError as error:
        what, remedy = f"the folder cannot be read ({error.strerror})", "give another"
    else:
        return shelf
    raise LessonProblem(what, remedy=remedy, file=str(folder))


def _port_problem(what: str, port: int = 0) -> LessonProblem:
    other = port + 1 if FIRST_FREE <= port < LAST else PORT
    return LessonProblem(what, remedy=f"give another, such as --port {other}")


def _reason(error: OSError, port: int) -> str:
    if error.errno == errno.EADDRINUSE:
        return f"port {port} is taken, perhaps by a shelf that is already open"
    if error.errno == errno.EACCES:
        return f"port {port} is not for everyone"
    return f"port {port} cannot be had ({error.strerror})"
