"""The command that prints the sheet of a lesson: `manipulatives sheet LESSON`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.commands.shared import arguments as shared_arguments
from manipulatives.commands.shared import writing
from manipulatives.lessons.lesson import VERSIONS

if TYPE_CHECKING:
    import argparse

HELP = "Print a lesson as practice on paper, or with --key as the same sheet answered."
EXAMPLE = "manipulatives sheet monday.toml -o monday.pdf --large-print"
OUTPUT_OF = {"pupil": "sheet", "key": "key", "steps": "steps"}


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
    shared_arguments.paper_arguments(parser)
    shared_arguments.numbers_arguments(parser)
    parser.add_argument(
        "--form",
        choices=tuple(OUTPUT_OF),
        default="pupil",
        help="for pupils, answered, or answered with the worked steps",
    )
    parser.add_argument(
        "--key", dest="form", action="store_const", const="key", help="the same as --form key"
    )
    parser.add_argument("--large-print", action="store_true", help="everything larger")
    parser.add_argument(
        "--address", default="", metavar="URL", help="where the page is, for a QR code"
    )


def run(given: argparse.Namespace) -> str:
    """Write the sheet or the key and return a sentence about it.

    Raises:
        LessonProblem: nothing can be printed of it, or it cannot be written.
    """
    from manipulatives.outputs.sheet import sheet_of_file  # noqa: PLC0415 - paper loads much

    return writing.write_paper(
        given,
        OUTPUT_OF[given.form],
        sheet_of_file,
        mark="" if given.version == VERSIONS[0] else f"-{given.version}",
        kind=given.form,
        large_print=given.large_print,
        seed=given.seed,
        version=given.version,
        code=given.code,
        address=given.address,
    )
