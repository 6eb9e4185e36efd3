"""A rule that leads to a wrong answer, with what is said about it to pupil and teacher.

What a wrong answer suggests is a possibility, not a diagnosis: one item is weak evidence.
"""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any, Generic, TypeVar

from manipulatives.maths.vocabulary import VOCABULARIES, check_vocabulary

Wrong = TypeVar("Wrong", bound=Callable[..., object])


@dataclass(frozen=True)
class Rule(Generic[Wrong]):
    """What a pupil may have done, and what to say about it.

    Attributes:
        id: the name that records store; it never changes.
        wrong: the function that gives what comes out, or None where the error does not show.
        may_have: what the pupil may have done, to go on from "May have …".
        us: what the pupil can do next, in one kind sentence of at most ten words, in the "us"
            vocabulary.
        uk: the same in "uk", where it differs.
        does: what is done, as data; together with what it is done to, the numbers of a mistake.

    Example:
        >>> from manipulatives.lessons.strands.rules import RULES
        >>> rule = RULES["hour_only"]
        >>> rule.id, rule.wrong(275)
        ('hour_only', 240)
    """

    id: str
    wrong: Wrong
    may_have: str
    us: str
    uk: str = ""
    does: Mapping[str, Any] = field(default_factory=dict, hash=False)

    def for_pupil(self, vocabulary: str = "us") -> str:
        """Return what the pupil can do next, in one kind sentence of at most ten words.

        Raises:
            ValueError: it is no vocabulary of the kit.

        Example:
            >>> from manipulatives.lessons.strands.rules import RULES
            >>> RULES["hour_only"].for_pupil()
            'Your hour is right; now count the minutes.'
        """
        return self.uk or self.us if check_vocabulary(vocabulary) == VOCABULARIES[1] else self.us

    @property
    def for_teacher(self) -> str:
        """What the answer may mean: a possibility, not a verdict.

        Example:
            >>> from manipulatives.lessons.strands.rules import RULES
            >>> RULES["hour_only"].for_teacher
            'May have read the hour and left out the minutes.'
        """
        return may_have(self)


def rules_in(folder: Path, *procedures: Wrong, **named: Wrong) -> tuple[Rule[Wrong], ...]:
    """Return rules with the sentences that the `mistakes.toml` of a strand has for them.

    Args:
        folder: of the strand.
        procedures: functions that are named like their rules.
        named: other functions, each by the id of its rule.

    Raises:
        KeyError: the strand has no sentences for a rule.

    Example:
        >>> from manipulatives.lessons.strands import FOLDER
        >>> def one_missed(number): return number - 1
        >>> [rule] = rules_in(FOLDER / "counting", one_missed)
        >>> rule.wrong(14), rule.for_pupil()
        (13, 'Touch each one as you count.')
    """
    by_id = {procedure.__name__: procedure for procedure in procedures} | named
    return tuple(rule_in(folder, name, wrong) for name, wrong in by_id.items())


def rule_in(folder: Path, name: str, wrong: Wrong) -> Rule[Wrong]:
    """Return one rule, like `rules_in`.

    Args:
        folder: of the strand.
        name: the id of the rule.
        wrong: the function that gives what comes out.

    Raises:
        KeyError: the strand has no sentences for the rule.

    Example:
        >>> from manipulatives.lessons.strands import FOLDER
        >>> rule_in(FOLDER / "counting", "one_missed", len).for_teacher
        'May have passed over one.'
    """
    return Rule(name, wrong, **_sentences(folder / "mistakes.toml")[name])


@cache
def _sentences(path: Path) -> dict[str, dict[str, Any]]:
    return tomllib.loads(path.read_text("utf-8"))


def may_have(*rules: Rule[Any]) -> str:
    """Return what an answer may mean to which several rules lead, for the teacher.

    Example:
        >>> from manipulatives.lessons.strands.rules import RULES
        >>> may_have(RULES["went_earlier"], RULES["nearest_hour"])
        'May have moved the hands back instead of on, or taken the hour nearest to the short hand.'
    """
    return f"May have {', or '.join(rule.may_have for rule in rules)}."
