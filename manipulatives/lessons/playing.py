"""Playing a task without a browser: its worked steps, its goal and its mistakes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from manipulatives.lessons.predicates import Fact, holds
from manipulatives.maths.times import dial_facts

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from manipulatives.lessons.task import Mistake, Task

# What is true of a manipulative with these traits.
FACTS: dict[str, Callable[[Mapping[str, Any]], dict[str, Any]]] = {
    "Clock": lambda traits: dial_facts(traits["dial"]),
}


def facts_of(
    manipulative: str, traits: Mapping[str, Any], answer: str | None = None
) -> dict[str, Fact]:
    """Return the facts that goals and mistakes are evaluated on.

    Args:
        manipulative: such as "Clock".
        traits: its state.
        answer: what the pupil has answered, made tidy; None until then.

    Raises:
        KeyError: there is no such manipulative, or a trait is missing.

    Example:
        >>> facts_of("Clock", {"dial": {"hour": 275, "minute": 35, "half": "am"}})["meant"]
        275
    """
    return {**FACTS[manipulative](traits), "answer": answer}


def play_steps(task: Task) -> dict[str, Fact]:
    """Return the facts at the end of the worked steps, played from the start.

    Example:
        >>> from manipulatives.lessons.makers import make_tasks
        >>> [task] = make_tasks("time.set_hands", seed=90213, count=1)
        >>> holds(task.goal, play_steps(task))
        True
    """
    traits, answer = dict(task.start), None
    for step in task.steps:
        traits |= step.show
        answer = step.answer or answer
    return facts_of(task.manipulative, traits, answer)


def is_solved(task: Task, facts: Mapping[str, Fact]) -> bool:
    """Return whether the goal of a task is met.

    Example:
        >>> from manipulatives.lessons.makers import make_tasks
        >>> [task] = make_tasks("time.read_hour", seed=90213, count=1)
        >>> is_solved(task, {"answer": task.answer})
        True
    """
    return holds(task.goal, facts)


def mistake_made(task: Task, facts: Mapping[str, Fact]) -> Mistake | None:
    """Return the first foreseen mistake that is true, or None when there is none or it is solved.

    Example:
        >>> from manipulatives.lessons.makers import make_tasks
        >>> [task] = make_tasks("time.read_hour", seed=90213, count=1)
        >>> mistake_made(task, {"answer": task.answer})
    """
    if is_solved(task, facts):
        return None
    return next((mistake for mistake in task.mistakes if holds(mistake.when, facts)), None)
