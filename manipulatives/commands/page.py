"""The command that makes a lesson into one web page: `manipulatives page LESSON`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.commands.shared import arguments as shared_arguments
from manipulatives.commands.shared import writing

if TYPE_CHECKING:
    import argparse

HELP = (
    "Make a lesson into one web page that needs no network. It opens in any browser, "
    "from a disk or a stick. A notebook with code of its own is run first."
)
EXAMPLE = "manipulatives page monday.toml -o monday.html"
OUTPUT_FOR = {"board": "page", "pupils": "pupils"}


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
    shared_arguments.file_arguments(parser, "page")
    parser.add_argument(
        "--for",
        dest="audience",
        choices=tuple(OUTPUT_FOR),
        default="board",
        help="to teach from, or for a pupil to work through alone",
    )


def run(given: argparse.Namespace) -> str:
    """Write the page and report so.

    Raises:
        LessonProblem: no page can be made of it, or it cannot be written.
    """
    # Pages import much that other commands do not need.
    from manipulatives.outputs.page import page_of_file  # noqa: PLC0415
    from manipulatives.shelf.outputs import OUTPUTS  # noqa: PLC0415

    source = writing.source_of(given)
    target = writing.target_of(given, OUTPUTS[OUTPUT_FOR[given.audience]])

    def report(sentence: str) -> None:
        writing.print_notice(f"{source}: {sentence}.")

    page = page_of_file(source, report=report, audience=given.audience)
    writing.write(target, page)
    return f"The page is written: {target} ({len(page.encode()) / 1000:.0f} kB)."
