"""A skill: one teachable thing of a strand, with its number ranges."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

Option = str | int | bool


@dataclass(frozen=True, kw_only=True)
class Skill:
    """One teachable thing.

    Attributes:
        id: strand and name, such as "time.read_hour".
        name: what a child calls it.
        title: what a teacher calls it.
        standards: which published standards it serves, as `standards.STANDARDS` names them.
        limits: its ranges with their limits, in one sentence.
        builds_on: the skills that come before it.
        manipulative: what it is taught with.
        tasks: how many tasks a round has unless it says otherwise.
        seconds: the time allowance of a round unless it says otherwise.
        words: the trade words that are met here.
        options: what a round may set, and to which values; the first one holds if it does not.
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
