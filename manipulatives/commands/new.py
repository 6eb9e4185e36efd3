"""The command that writes a new lesson file: `manipulatives new SKILL_OR_STRAND…`."""

from __future__ import annotations

import argparse
from pathlib import Path

from manipulatives.commands.shared import arguments as shared_arguments
from manipulatives.commands.shared import writing
from manipulatives.lessons.catalogue.skills import SKILLS, skill_called
from manipulatives.lessons.editing import changed, seconds_of, seed_by_chance, with_round
from manipulatives.lessons.files import lesson_text
from manipulatives.lessons.lesson import Lesson
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.chance import Chance

HELP = (
    "Begin a lesson: one round for each skill that is named. A strand stands for one of its "
    "skills. The file is then changed with a text editor, or in the lesson maker on the shelf."
)
EXAMPLE = "manipulatives new counting time.read_half --title Friday --minutes 10"
SHORTEST = 10


def arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command."""
    parser.add_argument(
        "skills",
        metavar="SKILL_OR_STRAND",
        nargs="+",
        help="as `manipulatives skills` lists them, such as time.read_half or counting",
    )
    parser.add_argument("--title", metavar="TEXT", help="what the lesson is called")
    parser.add_argument("--date", metavar="DATE", help="the school day, like 2026-03-02")
    parser.add_argument(
        "--minutes", metavar="N", type=int, help="share out so many minutes among the rounds"
    )
    parser.add_argument("--seed", metavar="N", type=int, help="decides the numbers; else by chance")
    parser.add_argument(
        "-o",
        "--output",
        metavar="FILE",
        type=shared_arguments.path,
        help="the lesson file to write; without it, named after the title, in this folder",
    )
    parser.add_argument("--force", action="store_true", help="replace a file of that name")


def run(given: argparse.Namespace) -> str:
    """Write the lesson file and return a sentence about it.

    Raises:
        LessonProblem: there is no such skill or strand, or there is a file of that name already.
    """
    from manipulatives.shelf.find import source_file  # noqa: PLC0415 - notebooks take long to load
    from manipulatives.shelf.replace import REMEDY_FORCE, is_there  # noqa: PLC0415
    from manipulatives.shelf.save import name_for  # noqa: PLC0415

    seed = seed_by_chance() if given.seed is None else given.seed
    lesson = new_lesson(
        given.skills, seed=seed, title=given.title, date=given.date, minutes=given.minutes
    )
    target: Path = given.output or Path(f"{name_for(lesson.title)}.toml")
    writing.check_target(target, ".toml")
    notebook = source_file(target)
    if notebook != target:
        # A lesson file beside a notebook is never read.
        raise LessonProblem(
            f"its notebook {notebook} is there, so that is the lesson",
            remedy="give another name with -o",
            file=str(target),
        )
    if not given.force and is_there(target):
        raise LessonProblem(
            "there is a file of that name already", remedy=REMEDY_FORCE, file=str(target)
        )
    writing.write(target, lesson_text(lesson))
    rounds = ", ".join(one.skill for one in lesson.rounds)
    return f"The lesson is written: {target} ({rounds})."


def new_lesson(
    names: list[str],
    *,
    seed: int,
    title: str | None = None,
    date: str | None = None,
    minutes: int | None = None,
) -> Lesson:
    """Return a lesson with one round for each skill or strand.

    Args:
        names: skills, or strands, of each of which the seed chooses a skill.
        seed: decides the numbers.
        title: of the lesson; None for one made of its strands.
        date: the school day, like "2026-03-02", or None.
        minutes: divided among the rounds in proportion to their default times; None for the
            defaults.

    Raises:
        LessonProblem: there is no such skill or strand, or a value is not allowed.

    Example:
        >>> [one.skill for one in new_lesson(["time.read_half"], seed=7).rounds]
        ['time.read_half']
    """
    skills: list[str] = []
    for place, name in enumerate(names):
        strand = name.strip().lower().replace(" ", "_")
        of_strand = [one.id for one in SKILLS.values() if one.strand == strand]
        left = [one for one in of_strand if one not in skills] or of_strand
        choice = Chance(f"{seed} strand {place}")
        skills.append(choice.choose(left) if left else skill_called(name).id)
    strands = dict.fromkeys(SKILLS[one].strand.replace("_", " ") for one in skills)
    usual = " and ".join(strands).capitalize()
    data = {"title": title or usual, "seed": seed, **({"date": date} if date else {})}
    lesson = Lesson.from_data(data)
    for skill in skills:
        lesson = with_round(lesson, skill)
    return lesson if minutes is None else _in_minutes(lesson, minutes)


def _in_minutes(lesson: Lesson, minutes: int) -> Lesson:
    """Return the lesson in this many minutes, with each round in proportion, in steps of 10 s."""
    total = sum(map(seconds_of, lesson.rounds))
    for place, one in enumerate(lesson.rounds):
        seconds = seconds_of(one) * minutes * 60 // total // SHORTEST * SHORTEST
        lesson = changed(lesson, place, seconds=max(SHORTEST, seconds))
    return lesson
