"""What the strand of a skill gives so that tasks of the skill can be made."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.money.coins import Currency


@dataclass(frozen=True)
class Request:
    """What one task is to be about.

    Attributes:
        skill: the id of its skill.
        item: what it asks about: one of the items of its generator.
        turn: goes up by one from task to task, beginning with a number that the seed picks; an
            index for a list of scenes, so that neighbours have different ones.
        chance: random choices for whatever else is left open in this task.
        vocabulary: "us" or "uk".
        options: every option of the skill with its value, and the `currency`.
        currency: whose coins there are, such as "usd".
        method: how the class works written sums, one of `strands.sums.columns.methods.METHODS`.

    Example:
        >>> Request("time.read_hour", 240, 0, Chance(7), "us", {"answer": "keypad"}).item
        240
    """

    skill: str
    item: Any
    turn: int
    chance: Chance
    vocabulary: str
    options: Mapping[str, Any]
    currency: str | Currency = "usd"
    method: str = "counting on"


def same_kind(_: object) -> str:
    """Return the same for every item: all tasks of a skill are of one kind.

    Example:
        >>> same_kind(240) == same_kind(275)
        True
    """
    return ""


def same_difficulty(_: object) -> int:
    """Return the same for every item: no task of a skill is easier than another.

    Example:
        >>> same_difficulty(240) == same_difficulty(275)
        True
    """
    return 0


@dataclass(frozen=True)
class TaskGenerator:
    """How the tasks of one skill are made.

    Attributes:
        items: returns everything that tasks with these options (one value each, and the
            `currency`) can ask about, each item once. A long sequence computes an item when it is
            indexed.
        task: makes the task about one of them.
        kind: returns the kind of an item within the skill. Neighbours are of different kinds where
            a mixed order is wanted, and twins are of the same kind.
        difficulty: returns something that sorts items from easy to difficult.
        read: returns the item that a teacher typed, such as "58 + 37", and raises a LessonProblem
            for anything else; None where numbers cannot be typed.

    Example:
        >>> from manipulatives.lessons.tasks.make import GENERATORS
        >>> len(GENERATORS["time.read_hour"].items({"answer": "keypad"}))
        12
    """

    items: Callable[[Mapping[str, Any]], Sequence[Any]]
    task: Callable[[Request], Task]
    kind: Callable[[Any], Hashable] = same_kind
    difficulty: Callable[[Any], Any] = same_difficulty
    read: Callable[[str, Mapping[str, Any]], Any] | None = None
