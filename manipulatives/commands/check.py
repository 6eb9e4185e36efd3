"""The command that checks a lesson: `manipulatives check LESSON`."""

from __future__ import annotations

import argparse

from manipulatives.commands.shared import arguments as shared_arguments
from manipulatives.commands.shared import writing
from manipulatives.commands.shared.problems import one_problem

HELP = (
    "Look a lesson over: everything that is wrong with it, and what a colleague would remark. "
    "A notebook is read and not run."
)
EXAMPLE = "manipulatives check monday.toml --minutes 20"
MINUTES = 15


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
    shared_arguments.lesson_argument(parser)
    parser.add_argument(
        "--minutes",
        metavar="N",
        type=int,
        default=MINUTES,
        help=f"how long the session may be (without it, {MINUTES})",
    )


def run(given: argparse.Namespace) -> str:
    """Return the warnings about a lesson, one sentence on each line.

    Raises:
        LessonProblem: something is wrong with it; every problem is reported.
    """
    from manipulatives.lessons.advice import length_in_words, warnings_about  # noqa: PLC0415
    from manipulatives.lessons.editing import seconds_of  # noqa: PLC0415 - Jupyter's formats
    from manipulatives.shelf.check import lesson_checked  # noqa: PLC0415 - take long to load
    from manipulatives.shelf.save import others_in  # noqa: PLC0415

    source = writing.source_of(given)
    lesson, problems = lesson_checked(source)
    if problems or lesson is None:
        raise one_problem(problems)
    others = others_in(given.lesson.parent, given.lesson.stem)
    count = len(lesson.rounds)
    takes = length_in_words(sum(map(seconds_of, lesson.rounds)))
    lines = [f"{lesson.title}: {count} round{'s' * (count != 1)}, {takes}. It can be made."]
    warnings = warnings_about(lesson, others=others, minutes=given.minutes)
    lines += [f"- {each.sentence}" for each in warnings]
    return "\n".join(lines)
