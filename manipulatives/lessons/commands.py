"""The commands for a quick look: skills, tasks, and what wrong answers may mean."""

from __future__ import annotations

import argparse
import json
from typing import Any

from manipulatives.lessons.catalogue.listing import (
    read_option,
    skill_data,
    skills_like,
    skills_text,
    tasks_like,
    tasks_text,
)
from manipulatives.lessons.why.command import as_text, report
from manipulatives.maths.vocabulary import VOCABULARIES


def skills(given: argparse.Namespace) -> str:
    """List skills."""
    found = skills_like(strand=given.strand, standard=given.standard, word=given.word)
    return _json(map(skill_data, found)) if given.json else skills_text(found)


def skills_arguments(parser: argparse.ArgumentParser) -> None:
    """Tell a parser what the list of skills takes."""
    parser.add_argument("word", metavar="WORD", nargs="?", help="only skills that it is found in")
    parser.add_argument("--strand", metavar="NAME", help="only one strand, such as time")
    parser.add_argument(
        "--standard", metavar="CODE", help="only what serves a standard, such as 2.MD.C.7"
    )
    _json_argument(parser)


def tasks(given: argparse.Namespace) -> str:
    """Show tasks of a skill."""
    made = tasks_like(
        given.skill,
        seed=given.seed,
        count=given.count,
        vocabulary=given.vocabulary,
        options=dict(given.set),
    )
    return _json(task.to_data() for task in made) if given.json else tasks_text(made)


def tasks_arguments(parser: argparse.ArgumentParser) -> None:
    """Tell a parser what the look at tasks takes."""
    parser.add_argument("skill", metavar="SKILL", help="as `manipulatives skills` lists it")
    parser.add_argument("--seed", type=int, metavar="N", default=1, help="which tasks")
    parser.add_argument("--count", type=int, metavar="N", default=5, help="how many")
    parser.add_argument("--vocabulary", choices=VOCABULARIES, default=VOCABULARIES[0])
    parser.add_argument(
        "--set",
        type=_option,
        metavar="OPTION=VALUE",
        action="append",
        default=[],
        help="what the skill lets a round set; one value for each task with commas between",
    )
    _json_argument(parser)


def explain(given: argparse.Namespace) -> str:
    """Say what wrong answers may mean."""
    found = report(given.sums)
    return _json(found) if given.json else as_text(found)


def explain_arguments(parser: argparse.ArgumentParser) -> None:
    """Tell a parser what the explanation takes."""
    parser.add_argument(
        "sums", metavar="SUM", nargs="+", help='an answered sum in quotation marks: "63 - 29 = 46"'
    )
    _json_argument(parser)


def _json_argument(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--json", action="store_true", help="as data for another program")


def _json(data: Any) -> str:  # noqa: ANN401 - whatever JSON can hold
    plain = data if isinstance(data, dict) else list(data)
    return json.dumps(plain, ensure_ascii=False, indent=2)


def _option(typed: str) -> tuple[str, Any]:
    try:
        return read_option(typed)
    except ValueError as problem:
        raise argparse.ArgumentTypeError(str(problem).rstrip(".")) from None
