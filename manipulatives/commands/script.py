"""The command that prints the script of a lesson: `manipulatives script LESSON`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.commands.shared import arguments as shared_arguments
from manipulatives.commands.shared import writing

if TYPE_CHECKING:
    import argparse

HELP = "Print a page for whoever stands in: what to say, what the class answers, the answers."
EXAMPLE = "manipulatives script monday.toml"


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
    shared_arguments.paper_arguments(parser)
    shared_arguments.numbers_arguments(parser)


def run(given: argparse.Namespace) -> str:
    """Write the script and return a sentence about it.

    Raises:
        LessonProblem: nothing can be printed of it, or it cannot be written.
    """
    from manipulatives.outputs.sheet import script_of_file  # noqa: PLC0415 - paper loads much

    numbers = {"seed": given.seed, "version": given.version, "code": given.code}
    return writing.write_paper(given, "script", script_of_file, **numbers)
