"""The command that explains wrong answers: `manipulatives why SUM…`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.commands.shared.json_output import as_json, json_argument
from manipulatives.lessons.why.report import as_text, report

if TYPE_CHECKING:
    import argparse

HELP = "Say what wrong answers may mean, and which sum to give next to find out more."
EXAMPLE = 'manipulatives why "63 - 29 = 46" "50 - 18 = 48"'


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument(
        "sums", metavar="SUM", nargs="+", help='an answered sum in quotation marks: "63 - 29 = 46"'
    )
    json_argument(parser)


def run(given: argparse.Namespace) -> str:
    """Return what the answers may mean.

    Raises:
        LessonProblem: one of them is no answered sum.
    """
    found = report(given.sums)
    return as_json(found) if given.json else as_text(found)
