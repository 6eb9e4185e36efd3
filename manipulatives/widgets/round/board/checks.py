"""What the traits of a round at a board may be: each check returns the value to hold, or raises."""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.checks import check_fields, check_one_of, check_whole
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.widgets.round.board.count_aloud.counts import counts_by

PHASES = ("ask", "work", "show", "check", "wipe")
START = {"task": 0, "step": 0, "phase": "ask"}


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
    checked = check_fields(place, allowed=START, needed=START)
    with at("task"):
        check_whole(checked["task"], 0, max(0, len(tasks) - 1))
    with at("phase"):
        check_one_of(checked["phase"], PHASES if wipe else PHASES[:-1])
    if checked["phase"] == "wipe":
        steps = len(counts_by(wipe["by"]) if wipe else ())
    else:
        steps = len(tasks[checked["task"]]["steps"]) if tasks else 0
    if checked["phase"] == "check":
        checked["step"] = steps
    lowest, highest = (1, steps) if checked["phase"] == "show" else (0, steps)
    with at("step"):
        check_whole(checked["step"], lowest, 0 if checked["phase"] in ("ask", "work") else highest)
    return {name: checked[name] for name in START}


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
    checked: list[dict[str, Any]] = []
    for number, answer in enumerate(answers, start=1):
        with at(f"answer {number}"):
            one = check_fields(answer, allowed=names, needed=names)
            with at("task"):
                free = set(range(len(tasks))) - {known["task"] for known in checked}
                check_one_of(one["task"], sorted(free))
            with at("tries"):
                check_whole(one["tries"], 1, 10_000)
            with at("right"):
                check_one_of(one["right"], (True, False))
            for name, kinds in (("given", (str, dict)), ("rule", (str,))):
                if one[name] is not None and not isinstance(one[name], kinds):
                    with at(name):
                        raise LessonProblem(f"{quoted(one[name])} is none", remedy="give a text")
            checked.append(one)
    return checked
