"""The command that lists what can be taught: `manipulatives skills`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.commands.shared.json_output import as_json, json_argument
from manipulatives.lessons.catalogue.listing import skill_data, skills_like, skills_text

if TYPE_CHECKING:
    import argparse

HELP = "List what can be taught: every skill with its limits and the standards it serves."
EXAMPLE = "manipulatives skills --standard 2.MD.C.7"


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument("word", metavar="WORD", nargs="?", help="only skills that it is found in")
    parser.add_argument("--strand", metavar="NAME", help="only one strand, such as time")
    parser.add_argument(
        "--standard", metavar="CODE", help="only what serves a standard, such as 2.MD.C.7"
    )
    json_argument(parser)


def run(given: argparse.Namespace) -> str:
    """Return the skills."""
    found = skills_like(strand=given.strand, standard=given.standard, word=given.word)
    return as_json(map(skill_data, found)) if given.json else skills_text(found)
