"""The command that prints the cut-outs of a lesson: `manipulatives cutouts LESSON`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.commands.shared import arguments as shared_arguments
from manipulatives.commands.shared import writing

if TYPE_CHECKING:
    import argparse

HELP = "Print what a lesson needs to be cut out: coins at true size, blocks, a clock face."
EXAMPLE = "manipulatives cutouts monday.toml"


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
    shared_arguments.paper_arguments(parser)


def run(given: argparse.Namespace) -> str:
    """Write the sheet to cut out and return a sentence about it.

    Raises:
        LessonProblem: nothing can be printed of it, or it cannot be written.
    """
    from manipulatives.outputs.sheet import cutouts_of_file  # noqa: PLC0415 - paper loads much

    return writing.write_paper(given, "cutouts", cutouts_of_file)
