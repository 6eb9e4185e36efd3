"""The facts that goals and mistakes are evaluated on, for whichever manipulative.

Whoever adds a manipulative adds one file to the folder `lessons/facts/`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from importlib import import_module
from pkgutil import iter_modules
from typing import Any

from manipulatives.lessons import facts
from manipulatives.lessons.tasks.predicates import Fact

Traits = Mapping[str, Any]


@cache
def facts_by_manipulative() -> dict[str, Callable[[Traits], dict[str, Any]]]:
    """Return what computes the facts of each manipulative, found in the folder `lessons/facts`.

    Example:
        >>> facts_by_manipulative()["Clock"].__module__
        'manipulatives.lessons.facts.clock'
    """
    names = sorted(one.name for one in iter_modules(facts.__path__))
    modules = [import_module(f"{facts.__name__}.{name}") for name in names]
    return {module.MANIPULATIVE: module.facts for module in modules}


def facts_of(manipulative: str, traits: Traits, answer: str | None = None) -> dict[str, Fact]:
    """Return the facts of a manipulative, and what was answered.

    Args:
        manipulative: such as "Clock".
        traits: its state.
        answer: what the pupil has answered, tidied (`answers.tidy`); None until then.

    Raises:
        KeyError: there is no such manipulative, or a trait without a default value is missing.
        ValueError: the value of a trait is not allowed.

    Example:
        >>> facts_of("Clock", {"dial": {"hour": 275, "minute": 35, "half": "am"}})["meant"]
        275
        >>> facts_of("PlaceValueBlocks", {"mat": [{"tens": 2, "ones": 15}]})["number"]
        35
    """
    return {**facts_by_manipulative()[manipulative](traits), "answer": answer}
