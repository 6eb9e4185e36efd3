"""The command line: one parser for all commands, each of which has a module in `commands`."""

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
INPUT_PROBLEM = 2
INTERRUPTED = 130  # the usual exit status after Ctrl+C (128 + SIGINT)
CLOSED_PIPE = 141  # and after a closed pipe (128 + SIGPIPE)


class Command(Protocol):
    """A module of `commands`: one command.

    Attributes:
        HELP: what it does, as a sentence.
        EXAMPLE: how it is typed.
    """

    HELP: str
    EXAMPLE: str

    def arguments(self, parser: argparse.ArgumentParser) -> None:
        """Add its arguments to a parser."""

    def run(self, given: argparse.Namespace) -> str:
        """Run the command and return the text to print."""


COMMANDS: Mapping[str, Command] = {
    module.__name__.rpartition(".")[2]: module
    for module in (
        new, make, check, notebook, page, sheet, script, cutouts, skills, tasks, why, serve,
    )
}  # fmt: skip

# These do not read notebooks, so nbformat is not imported for them.
_WITHOUT_NOTEBOOKS = (skills, tasks, why)


def main(typed: Sequence[str] | None = None) -> int:
    """Run a command; return 0 when it is done and 2 for a problem with the input.

    Example:
        >>> main(["page", "nowhere.toml"])
        2
    """
    try:
        try:
            return _run(typed)
        finally:
            # Flush here, where a closed pipe is handled, and not at the end of the interpreter.
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
        # For example a file name that is too long.
        return _print_problem(" ".join(str(error).split()))
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as error:
        if "lesson" not in given or os.environ.get("MANIPULATIVES_TRACEBACKS"):
            raise
        # A file may cause an unexpected error: print one sentence, and write nothing.
        return _print_problem(unreadable(error, file=str(given.lesson)))
    return DONE


def _print_problem(problem: object) -> int:
    try:
        print(problem, file=sys.stderr)
    except UnicodeEncodeError:
        print(str(problem).encode("ascii", "backslashreplace").decode(), file=sys.stderr)
    return INPUT_PROBLEM


def _after_closed_pipe() -> int:
    """End silently, because the reader, such as `head`, has closed the pipe."""
    # Otherwise the interpreter prints an error when it flushes its buffers at the end.
    devnull = os.open(os.devnull, os.O_WRONLY)
    for stream in _streams():
        with contextlib.suppress(OSError, ValueError):  # no real file, as in a test
            os.dup2(devnull, stream.fileno())
    return CLOSED_PIPE


def _streams() -> list[TextIO]:
    """Return the output streams; a program may be started without them."""
    return [stream for stream in (sys.stdout, sys.stderr) if stream is not None]


class _Parser(argparse.ArgumentParser):
    """Prints an error as one sentence, without the usage before it."""

    def error(self, message: str) -> NoReturn:
        self.exit(INPUT_PROBLEM, f"{message}; {self.prog} --help says how it is typed.\n")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="manipulatives",
        description="Make a lesson for five- to eight-year-olds into what you teach it with.",
    )
    parser.set_defaults(
        run=lambda given: parser.format_help().rstrip(),  # noqa: ARG005 - the signature of `run`
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
