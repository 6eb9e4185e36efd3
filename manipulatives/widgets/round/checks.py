"""What the traits of a round may be: each check returns the value as kept, or says why not."""

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
from manipulatives.widgets.round.counting import counts_by

PHASES = ("ask", "work", "show", "check", "wipe")
START = {"task": 0, "step": 0, "phase": "ask"}
SETUP: dict[str, Any] = {
    "title": "",
    "skill": "",
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
    kept = []
    for number, task in enumerate(tasks, start=1):
        with at(f"task {number}"):
            kept.append(
                (task if isinstance(task, Task) else Task.from_data(task)).to_data(numbers=False)
            )
    names = list(dict.fromkeys(task["manipulative"] for task in kept))
    if len(names) > 1:
        raise LessonProblem(
            f"the tasks are asked with {' and '.join(names)}",
            remedy="put them into a round for each, for a round has one manipulative",
        )
    return kept


def check_setup(setup: object) -> dict[str, Any]:
    """Return what holds for the whole round, with what is usual for everything left out.

    Raises:
        LessonProblem: there is an unknown field, or a value that is not allowed.

    Example:
        >>> check_setup({"seconds": 180, "timer": "shown"})["vocabulary"]
        'us'
    """
    kept = {**SETUP, **check_fields(setup, allowed=SETUP, needed=())}
    for name in ("title", "skill", "key"):
        if not isinstance(kept[name], str):
            with at(name):
                raise LessonProblem(f"{quoted(kept[name])} is not text", remedy="give a text")
    with at("seed"):
        check_seed(kept["seed"])
    with at("seconds"):
        check_whole(kept["seconds"], 0, LONGEST)
    with at("together"):
        check_whole(kept["together"], 1, MOST_TOGETHER)
    with at("typed"):
        check_one_of(kept["typed"], (True, False))
    with at("wipe"):
        if kept["wipe"] is not None:
            kept["wipe"] = check_fields(kept["wipe"], allowed=("by",), needed=("by",))
            check_whole(kept["wipe"]["by"], 1, LARGEST_COUNT)
    with at("timer"):
        check_one_of(kept["timer"], TIMERS)
    with at("vocabulary"):
        check_one_of(kept["vocabulary"], VOCABULARIES)
    with at("base"):
        check_table(kept["base"])
    return kept


def check_place(
    place: object, tasks: list[dict[str, Any]], wipe: dict[str, int] | None = None
) -> dict[str, Any]:
    """Return where a round stands; when the answer is shown, all its steps are.

    Args:
        place: where it is said to stand.
        tasks: of the round, as data.
        wipe: how the class counts at its end, or None.

    Raises:
        LessonProblem: there is no such task, step or phase in the round.

    Example:
        >>> check_place({"task": 0, "step": 0, "phase": "ask"}, [])
        {'task': 0, 'step': 0, 'phase': 'ask'}
    """
    kept = check_fields(place, allowed=START, needed=START)
    with at("task"):
        check_whole(kept["task"], 0, max(0, len(tasks) - 1))
    with at("phase"):
        check_one_of(kept["phase"], PHASES if wipe else PHASES[:-1])
    if kept["phase"] == "wipe":
        steps = len(counts_by(wipe["by"]) if wipe else ())
    else:
        steps = len(tasks[kept["task"]]["steps"]) if tasks else 0
    if kept["phase"] == "check":
        kept["step"] = steps
    lowest, highest = (1, steps) if kept["phase"] == "show" else (0, steps)
    with at("step"):
        check_whole(kept["step"], lowest, 0 if kept["phase"] in ("ask", "work") else highest)
    return {name: kept[name] for name in START}


def check_timer(timer: object) -> dict[str, Any]:
    """Return the state of the timer; an empty one is filled by the browser.

    Raises:
        LessonProblem: a field is unknown, missing or not allowed.

    Example:
        >>> check_timer({})
        {}
    """
    names = ("mode", "allowed", "used", "since", "held")
    kept = check_fields(timer, allowed=names, needed=names if timer else ())
    if not kept:
        return {}
    with at("mode"):
        check_one_of(kept["mode"], TIMERS)
    with at("allowed"):
        check_whole(kept["allowed"], 0, MOST_SECONDS)
    for name in ("used", "since"):
        value = kept[name]
        fine = isinstance(value, (int, float)) and not isinstance(value, bool) and value >= 0
        if not fine and not (name == "since" and value is None):
            with at(name):
                raise LessonProblem(f"{quoted(value)} is no time", remedy="give milliseconds")
    with at("held"):
        check_one_of(kept["held"], (True, False))
    return kept


def check_answers(answers: object, tasks: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Return what was answered, at most once a task.

    Raises:
        LessonProblem: a field is unknown, missing or not allowed, or a task has two answers.

    Example:
        >>> check_answers([], [])
        []
    """
    if not isinstance(answers, (list, tuple)):
        raise LessonProblem(f"{quoted(answers)} is no list of answers", remedy="give a list")
    names = ("task", "given", "tries", "right", "rule")
    kept: list[dict[str, Any]] = []
    for number, answer in enumerate(answers, start=1):
        with at(f"answer {number}"):
            one = check_fields(answer, allowed=names, needed=names)
            with at("task"):
                free = set(range(len(tasks))) - {known["task"] for known in kept}
                check_one_of(one["task"], sorted(free))
            with at("tries"):
                check_whole(one["tries"], 1, 10_000)
            with at("right"):
                check_one_of(one["right"], (True, False))
            for name, kinds in (("given", (str, dict)), ("rule", (str,))):
                if one[name] is not None and not isinstance(one[name], kinds):
                    with at(name):
                        raise LessonProblem(f"{quoted(one[name])} is none", remedy="give a text")
            kept.append(one)
    return kept
