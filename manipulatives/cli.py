"""The command line: joins the commands, each of which has a file in `commands`."""

from __future__ import annotations

import argparse
import contextlib
import os
import sys
from typing import TYPE_CHECKING, NoReturn, Protocol, TextIO

from manipulatives.commands import (
    check,
    cutouts,
    make,
    new,
    notebook,
    page,
    script,
    serve,
    sheet,
    skills,
    tasks,
    why,
)
from manipulatives.lessons.problem import LessonProblem, unreadable
from manipulatives.notebook.fast_import import import_nbformat_fast

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

DONE = 0
AT_FAULT = 2
INTERRUPTED = 130  # what a shell says of a program that Ctrl+C has ended
CLOSED_PIPE = 141  # and of one whose reader has left


class Command(Protocol):
    """A module of `commands`: one command.

    Attributes:
        HELP: what it does, as a sentence.
        EXAMPLE: how it is typed.
    """

    HELP: str
    EXAMPLE: str

    def arguments(self, parser: argparse.ArgumentParser) -> None:
        """Tell a parser what it takes."""

    def run(self, given: argparse.Namespace) -> str:
        """Do it, and return what is to be printed."""


COMMANDS: Mapping[str, Command] = {
    module.__name__.rpartition(".")[2]: module
    for module in (
        new, make, check, notebook, page, sheet, script, cutouts, skills, tasks, why, serve,
    )
}  # fmt: skip

# These load nothing that reads notebooks, and need not wait for it.
_WITHOUT_NOTEBOOKS = (skills, tasks, why)


def main(typed: Sequence[str] | None = None) -> int:
    """Do what was typed; return 0 when it is done and 2 when the input is at fault.

    Example:
        >>> main(["page", "nowhere.toml"])
        2
    """
    try:
        try:
            return _run(typed)
        finally:
            # What is still in a buffer would otherwise fail when the interpreter ends.
            for stream in _streams():
                stream.flush()
    except BrokenPipeError:
        return _after_closed_pipe()


def _run(typed: Sequence[str] | None) -> int:
    given = _parser().parse_args(typed)
    try:
        if given.loads_notebooks:
            import_nbformat_fast()
        print(given.run(given))
    except BrokenPipeError:
        raise
    except LessonProblem as problem:
        return _print_problem(problem)
    except OSError as error:
        # A name that is too long for any disk, for one.
        return _print_problem(" ".join(str(error).split()))
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as error:
        if "lesson" not in given or os.environ.get("MANIPULATIVES_TRACEBACKS"):
            raise
        # A file may hold what nobody foresaw: one sentence, and nothing is written.
        return _print_problem(unreadable(error, file=str(given.lesson)))
    return DONE


def _print_problem(problem: object) -> int:
    try:
        print(problem, file=sys.stderr)
    except UnicodeEncodeError:
        print(str(problem).encode("ascii", "backslashreplace").decode(), file=sys.stderr)
    return AT_FAULT


def _after_closed_pipe() -> int:
    """Leave quietly: whoever read what was printed, such as `head`, has enough."""
    # The interpreter would complain again when it empties its own buffers at the end.
    nowhere = os.open(os.devnull, os.O_WRONLY)
    for stream in _streams():
        with contextlib.suppress(OSError, ValueError):  # it is no file, as in a test
            os.dup2(nowhere, stream.fileno())
    return CLOSED_PIPE


def _streams() -> list[TextIO]:
    """Return where is printed; a program may be started without it."""
    return [stream for stream in (sys.stdout, sys.stderr) if stream is not None]


class _Parser(argparse.ArgumentParser):
    """Says what is wrong in one sentence, without the whole usage before it."""

    def error(self, message: str) -> NoReturn:
        self.exit(AT_FAULT, f"{message}; {self.prog} --help says how it is typed.\n")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="manipulatives",
        description="Make a lesson for five- to eight-year-olds into what you teach it with.",
    )
    parser.set_defaults(
        run=lambda given: parser.format_help().rstrip(),  # noqa: ARG005 - as all run
        loads_notebooks=False,
    )
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")
    for name, command in COMMANDS.items():
        one = commands.add_parser(
            name,
            help=command.HELP.split(". ")[0].rstrip("."),
            description=command.HELP,
            epilog=f"Example: {command.EXAMPLE}",
        )
        command.arguments(one)
        one.set_defaults(run=command.run, loads_notebooks=command not in _WITHOUT_NOTEBOOKS)
    return parser
