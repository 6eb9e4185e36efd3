"""What a strand tells of a skill so that its tasks can be made."""

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
        skill: its skill.
        item: what it asks about: one of the items of its generator.
        turn: goes up by one through a round, from a place that the seed picks; for going round
            in a list of scenes without repeating one soon.
        chance: for whatever else is left open in this task.
        vocabulary: "us" or "uk".
        options: every option of the skill, set or usual, and the `currency`.
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


def one_kind(_: object) -> str:
    """Say that all tasks of a skill are of one kind.

    Example:
        >>> one_kind(240) == one_kind(275)
        True
    """
    return ""


def all_alike(_: object) -> int:
    """Say that no task of a skill is easier than another.

    Example:
        >>> all_alike(240) == all_alike(275)
        True
    """
    return 0


@dataclass(frozen=True)
class TaskGenerator:
    """How the tasks of one skill are made.

    Attributes:
        items: everything that tasks with these options (one value each, and the `currency`) can
            ask about, each thing once. Long families are sequences that work out an item when it
            is asked for.
        task: makes the task about one of them.
        kind: of which kind within the skill the task about an item is: no two neighbours are of
            one kind where a mixed order is wanted, and twins are of the same kind.
        ease: how hard an item is: the easier, the smaller.
        read: the item that somebody typed, such as "58 + 37"; None where numbers cannot be typed.
            It raises a LessonProblem for anything else.

    Example:
        >>> from manipulatives.lessons.tasks.make import GENERATORS
        >>> len(GENERATORS["time.read_hour"].items({"answer": "keypad"}))
        12
    """

    items: Callable[[Mapping[str, Any]], Sequence[Any]]
    task: Callable[[Request], Task]
    kind: Callable[[Any], Hashable] = one_kind
    ease: Callable[[Any], Any] = all_alike
    read: Callable[[str, Mapping[str, Any]], Any] | None = None
