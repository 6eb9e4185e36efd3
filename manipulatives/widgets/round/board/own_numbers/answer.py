"""A question with numbers of the teacher's own, which the browser asks Python to make."""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.problem import LessonProblem, quoted
from manipulatives.lessons.tasks.task import Task

LONGEST = 60


def can_be_typed(skill: str) -> bool:
    """Return whether a skill asks about numbers that somebody types.

    Example:
        >>> can_be_typed("time.read_five_minutes")
        True
    """
    from manipulatives.lessons.tasks.make import GENERATORS  # noqa: PLC0415 - see task_for

    return GENERATORS[skill].read is not None


def task_for(skill: str, text: str, **settings: Any) -> Task:
    """Return the task that somebody typed.

    Args:
        skill: as the catalogue names it.
        text: the numbers, in the way the skill asks them, such as "58 + 37".
        settings: of the round: vocabulary, currency, method and options, as `make_typed` takes
            them.

    Raises:
        LessonProblem: numbers cannot be typed for the skill, or it cannot ask about these.

    Example:
        >>> task_for("time.read_five_minutes", "4:35").answer
        '4:35'
    """
    # The makers of all strands are loaded when somebody types, not with every widget.
    from manipulatives.lessons.tasks.make import make_typed  # noqa: PLC0415

    return make_typed(skill, text, **settings)


def answer_to(
    message: object, skill: str, settings: dict[str, Any], manipulative: str
) -> dict[str, Any]:
    """Return what the browser is answered: the task as data, or why there is none.

    Args:
        message: what came from the browser, which may be anything.
        skill: what the round is about.
        settings: how it asks.
        manipulative: what it is asked with: the task has to be, too.

    Example:
        >>> answer_to({"id": 1, "text": "4:61"}, "time.read_five_minutes", {}, "Clock")["id"]
        1
    """
    known = message if isinstance(message, dict) else {}
    text = known.get("text")
    found = {"kind": "found", "id": known.get("id")}
    try:
        if not isinstance(text, str) or not text.strip() or len(text) > LONGEST:
            raise LessonProblem(f"{quoted(text)} is nothing to work out", remedy="type numbers")  # noqa: TRY301 - handled below like all others
        task = task_for(skill, text.strip(), **settings)
        if task.manipulative != manipulative:
            raise LessonProblem(  # noqa: TRY301 - handled below like all others
                f"{text} is asked with a {task.manipulative}, and this round has a {manipulative}",
                remedy="type it in another round",
            )
    except LessonProblem as problem:
        return {**found, "problem": str(problem)}
    return {**found, "task": task.to_data(numbers=False)}
