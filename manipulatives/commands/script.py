"""The command that prints what to say: `manipulatives script LESSON`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.commands import writing

if TYPE_CHECKING:
    import argparse

HELP = "Print a page for whoever stands in: what to say, what the class answers, the answers."
EXAMPLE = "manipulatives script monday.toml"


def arguments(parser: argparse.ArgumentParser) -> None:
    """Tell a parser what the command takes."""
    writing.paper_arguments(parser)
    writing.numbers_arguments(parser)


def run(given: argparse.Namespace) -> str:
    """Write the script and say so.

    Raises:
        LessonProblem: nothing can be printed of it, or it cannot be written.
    """
    from manipulatives.outputs.sheet import script_of_file  # noqa: PLC0415 - paper loads much

    numbers = {"seed": given.seed, "version": given.version, "code": given.code}
    return writing.write_paper(given, "script", script_of_file, **numbers)
