"""The command that prints what is cut out: `manipulatives cutouts LESSON`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.commands import writing

if TYPE_CHECKING:
    import argparse

HELP = "Print what a lesson needs to be cut out: coins at true size, blocks, a clock face."
EXAMPLE = "manipulatives cutouts monday.toml"


def arguments(parser: argparse.ArgumentParser) -> None:
    """Tell a parser what the command takes."""
    writing.paper_arguments(parser)


def run(given: argparse.Namespace) -> str:
    """Write the sheet to cut out and say so.

    Raises:
        LessonProblem: nothing can be printed of it, or it cannot be written.
    """
    from manipulatives.outputs.sheet import cutouts_of_file  # noqa: PLC0415 - paper loads much

    return writing.write_paper(given, "cutouts", cutouts_of_file)
