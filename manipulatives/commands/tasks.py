"""The command that shows tasks of a skill: `manipulatives tasks SKILL`."""

from __future__ import annotations

import argparse
from typing import Any

from manipulatives.commands.shared.json_output import as_json, json_argument
from manipulatives.lessons.catalogue.listing import read_option, tasks_like, tasks_text
from manipulatives.maths.vocabulary import VOCABULARIES

HELP = "Look at tasks of a skill, with answers, worked steps and what may go wrong."
EXAMPLE = "manipulatives tasks time.read_hour --seed 7 --count 3"


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
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
    json_argument(parser)


def run(given: argparse.Namespace) -> str:
    """Return the tasks.

    Raises:
        LessonProblem: there is no such skill or option, or there are too few different tasks.
    """
    made = tasks_like(
        given.skill,
        seed=given.seed,
        count=given.count,
        vocabulary=given.vocabulary,
        options=dict(given.set),
    )
    return as_json(task.to_data() for task in made) if given.json else tasks_text(made)


def _option(typed: str) -> tuple[str, Any]:
    try:
        return read_option(typed)
    except ValueError as problem:
        raise argparse.ArgumentTypeError(str(problem).rstrip(".")) from None
