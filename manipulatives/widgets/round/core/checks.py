"""What the traits of every round may be: each check returns the value to hold, or raises."""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.checks import (
    check_fields,
    check_one_of,
    check_seed,
    check_table,
    check_whole,
)
from manipulatives.lessons.lesson import LARGEST_COUNT, LONGEST
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.settings import TIMERS
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.vocabulary import VOCABULARIES

SETUP: dict[str, Any] = {
    "title": "",
    "skill": "",
    "options": {},
    "seed": 0,
    "seconds": 0,
    "timer": "off",
    "vocabulary": "us",
    "together": 1,
    "typed": False,
    "wipe": None,
    "key": "",
    "base": {},
}
MOST_TOGETHER = 4
# A day: longer than any clock of a round is stretched.
MOST_SECONDS = 86_400


def check_tasks(tasks: object) -> list[dict[str, Any]]:
    """Return the tasks of a round as plain data.

    Args:
        tasks: `Task`s, or their data; all asked with the same manipulative.

    Raises:
        LessonProblem: one is no task, or they are asked with different manipulatives.

    Example:
        >>> check_tasks([])
        []
    """
    if not isinstance(tasks, (list, tuple)):
        raise LessonProblem(f"{quoted(tasks)} is no list of tasks", remedy="give a list")
    checked = []
    for number, task in enumerate(tasks, start=1):
        with at(f"task {number}"):
            checked.append(
                (task if isinstance(task, Task) else Task.from_data(task)).to_data(numbers=False)
            )
    names = list(dict.fromkeys(task["manipulative"] for task in checked))
    if len(names) > 1:
        raise LessonProblem(
            f"the tasks are asked with {' and '.join(names)}",
            remedy="put them into a round for each, for a round has one manipulative",
        )
    return checked


def check_setup(setup: object) -> dict[str, Any]:
    """Return what holds for the whole round, with what is usual for everything left out.

    Raises:
        LessonProblem: there is an unknown field, or a value that is not allowed.

    Example:
        >>> check_setup({"seconds": 180, "timer": "shown"})["vocabulary"]
        'us'
    """
    checked = {**SETUP, **check_fields(setup, allowed=SETUP, needed=())}
    for name in ("title", "skill", "key"):
        if not isinstance(checked[name], str):
            with at(name):
                raise LessonProblem(f"{quoted(checked[name])} is not text", remedy="give a text")
    with at("seed"):
        check_seed(checked["seed"])
    with at("seconds"):
        check_whole(checked["seconds"], 0, LONGEST)
    with at("together"):
        check_whole(checked["together"], 1, MOST_TOGETHER)
    with at("typed"):
        check_one_of(checked["typed"], (True, False))
    with at("wipe"):
        if checked["wipe"] is not None:
            checked["wipe"] = check_fields(checked["wipe"], allowed=("by",), needed=("by",))
            check_whole(checked["wipe"]["by"], 1, LARGEST_COUNT)
    with at("timer"):
        check_one_of(checked["timer"], TIMERS)
    with at("vocabulary"):
        check_one_of(checked["vocabulary"], VOCABULARIES)
    for name in ("options", "base"):
        with at(name):
            check_table(checked[name])
    return checked


def check_timer(timer: object) -> dict[str, Any]:
    """Return the state of the timer; an empty one is filled by the browser.

    Raises:
        LessonProblem: a field is unknown, missing or not allowed.

    Example:
        >>> check_timer({})
        {}
    """
    names = ("mode", "allowed", "used", "since", "held")
    checked = check_fields(timer, allowed=names, needed=names if timer else ())
    if not checked:
        return {}
    with at("mode"):
        check_one_of(checked["mode"], TIMERS)
    with at("allowed"):
        check_whole(checked["allowed"], 0, MOST_SECONDS)
    for name in ("used", "since"):
        value = checked[name]
        fine = isinstance(value, (int, float)) and not isinstance(value, bool) and value >= 0
        if not fine and not (name == "since" and value is None):
            with at(name):
                raise LessonProblem(f"{quoted(value)} is no time", remedy="give milliseconds")
    with at("held"):
        check_one_of(checked["held"], (True, False))
    return checked
