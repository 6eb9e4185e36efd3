"""Arguments that several commands take."""

from __future__ import annotations

import argparse
from pathlib import Path

from manipulatives.lessons.lesson import PAPERS, VERSIONS

LESSON_OR_NOTEBOOK = "a lesson file (.toml) or a notebook (.ipynb)"


def path(typed: str) -> Path:
    """Return a path; a name of bytes that are no text is refused."""
    try:
        typed.encode()
    except UnicodeEncodeError:
        raise argparse.ArgumentTypeError(f"{typed!a} cannot be shown, rename it") from None
    return Path(typed)


def lesson_argument(
    parser: argparse.ArgumentParser, name: str = "LESSON", what: str = LESSON_OR_NOTEBOOK
) -> None:
    """Add the argument for one lesson."""
    parser.add_argument("lesson", metavar=name, type=path, help=what)


def file_arguments(parser: argparse.ArgumentParser, output: str) -> None:
    """Add the arguments for a lesson and the file to write."""
    lesson_argument(parser, "LESSON_OR_NOTEBOOK")
    target_arguments(parser, output)


def target_arguments(parser: argparse.ArgumentParser, output: str) -> None:
    """Add the arguments for the file to write and for replacing others."""
    parser.add_argument(
        "-o",
        "--output",
        metavar="FILE",
        type=path,
        help=f"the {output} to write; without it, beside the lesson under the same name",
    )
    force_argument(parser)


def force_argument(parser: argparse.ArgumentParser) -> None:
    """Add the argument that allows to replace files that the kit did not make."""
    parser.add_argument(
        "--force",
        action="store_true",
        help="replace a file of that name even if the kit did not make it",
    )


def paper_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments for a lesson on paper."""
    file_arguments(parser, "PDF")
    parser.add_argument("--paper", choices=PAPERS, help="instead of what the lesson says")


def numbers_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments for other numbers than those of the lesson."""
    parser.add_argument("--seed", type=int, metavar="N", help="other tasks of the same kind")
    parser.add_argument(
        "--version", choices=VERSIONS, default=VERSIONS[0], help="other tasks, just as difficult"
    )
    parser.add_argument(
        "--code", metavar="CODE", help="the same numbers as on the sheet with this at its foot"
    )
