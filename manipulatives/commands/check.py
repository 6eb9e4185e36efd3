"""The command that looks a lesson over: `manipulatives check LESSON`."""

from __future__ import annotations

import argparse

from manipulatives.commands import writing
from manipulatives.commands.make import several

HELP = (
    "Look a lesson over: everything that is wrong with it, and what a colleague would remark. "
    "A notebook is read and not run."
)
EXAMPLE = "manipulatives check monday.toml --minutes 20"
MINUTES = 15


def arguments(parser: argparse.ArgumentParser) -> None:
    """Tell a parser what the command takes."""
    writing.lesson_argument(parser)
    parser.add_argument(
        "--minutes",
        metavar="N",
        type=int,
        default=MINUTES,
        help=f"how long the session may be (without it, {MINUTES})",
    )


def run(given: argparse.Namespace) -> str:
    """Return what a colleague would remark, a sentence a line.

    Raises:
        LessonProblem: something is wrong with it; every problem is told.
    """
    from manipulatives.lessons.advice import length_in_words, warnings_about  # noqa: PLC0415
    from manipulatives.lessons.editing import seconds_of  # noqa: PLC0415 - Jupyter's formats
    from manipulatives.shelf.check import lesson_checked  # noqa: PLC0415 - take long to load
    from manipulatives.shelf.save import others_in  # noqa: PLC0415

    source = writing.source_of(given)
    lesson, problems = lesson_checked(source)
    if problems or lesson is None:
        raise several(problems)
    others = others_in(given.lesson.parent, given.lesson.stem)
    count = len(lesson.rounds)
    takes = length_in_words(sum(map(seconds_of, lesson.rounds)))
    lines = [f"{lesson.title}: {count} round{'s' * (count != 1)}, {takes}. It can be made."]
    remarks = warnings_about(lesson, others=others, minutes=given.minutes)
    lines += [f"- {each.sentence}" for each in remarks]
    return "\n".join(lines)
