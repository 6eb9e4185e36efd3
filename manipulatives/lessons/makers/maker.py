"""What a strand tells of a skill so that its tasks can be made."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from manipulatives.lessons.chance import Chance
from manipulatives.lessons.task import Task


@dataclass(frozen=True)
class Request:
    """What one task is to be about.

    Attributes:
        skill: its skill.
        item: what it asks about: one of the items of its maker.
        turn: goes up by one through a round, from a place that the seed picks; for going round
            in a list of scenes without repeating one soon.
        chance: for whatever else is left open in this task.
        vocabulary: "us" or "uk".
        options: every option of the skill, set or usual.

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


@dataclass(frozen=True)
class Maker:
    """How the tasks of one skill are made.

    Attributes:
        items: everything that tasks with these options can ask about, each thing once.
        task: makes the task about one of them.

    Example:
        >>> from manipulatives.lessons.makers import MAKERS
        >>> len(MAKERS["time.read_hour"].items({"answer": "keypad"}))
        12
    """

    items: Callable[[Mapping[str, Any]], Sequence[Any]]
    task: Callable[[Request], Task]
