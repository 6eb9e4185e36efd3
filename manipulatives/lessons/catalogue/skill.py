"""A skill: one teachable thing of a strand, with its number ranges."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType
from typing import Any

Option = str | int | bool


@dataclass(frozen=True, kw_only=True)
class Skill:
    """One teachable thing.

    Attributes:
        id: strand and name, such as "time.read_hour".
        name: what a child calls it.
        title: what a teacher calls it.
        standards: ids of the published standards that it teaches, from `standards.STANDARDS`.
        limits: its ranges of numbers, in one sentence.
        builds_on: ids of the skills that come before it.
        manipulative: what it is taught with.
        tasks: how many tasks a round has by default.
        seconds: the time allowance of a round by default.
        words: the trade words that are used in it.
        options: what a round may set, and to which values; the first value is the default.
        together: how many tasks are asked at once on a board, side by side.

    Example:
        >>> from manipulatives.lessons.catalogue.skills import SKILLS
        >>> SKILLS["time.read_hour"].manipulative
        'Clock'
    """

    id: str
    name: str
    title: str
    standards: tuple[str, ...]
    limits: str
    builds_on: tuple[str, ...] = ()
    manipulative: str
    tasks: int
    seconds: int
    words: tuple[str, ...] = ()
    options: Mapping[str, tuple[Option, ...]] = field(default_factory=dict)
    together: int = 1

    def __post_init__(self) -> None:
        object.__setattr__(self, "options", MappingProxyType(dict(self.options)))

    @property
    def strand(self) -> str:
        """The strand it belongs to, such as "time".

        Example:
            >>> from manipulatives.lessons.catalogue.skills import SKILLS
            >>> SKILLS["time.later"].strand
            'time'
        """
        return self.id.partition(".")[0]


def skills_in(path: Path) -> list[Skill]:
    """Return the skills of a strand's `skills.toml`, in its order.

    Args:
        path: a TOML file of the kit with a table for each skill, named after its id.

    Example:
        >>> from manipulatives.lessons import strands
        >>> folder = Path(strands.__file__).parent
        >>> skills_in(folder / "time" / "skills.toml")[0].title
        'Read to the hour'
    """
    tables = tomllib.loads(path.read_text("utf-8"))
    return [Skill(id=name, **_frozen(table)) for name, table in tables.items()]


def _frozen(table: dict[str, Any]) -> dict[str, Any]:
    """Return the fields of a skill with tuples for lists."""
    return {
        name: _frozen(value)
        if isinstance(value, dict)
        else tuple(value)
        if isinstance(value, list)
        else value
        for name, value in table.items()
    }
