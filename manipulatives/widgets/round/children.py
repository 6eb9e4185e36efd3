"""Which widget a task means when it names its manipulative."""

from __future__ import annotations

import pkgutil
from importlib import import_module
from typing import TYPE_CHECKING

from manipulatives import widgets
from manipulatives.lessons.checks import nearest
from manipulatives.lessons.problem import LessonProblem, quoted
from manipulatives.widgets.manipulative import Manipulative

if TYPE_CHECKING:
    from collections.abc import Mapping


def found() -> dict[str, type[Manipulative]]:
    """Return every manipulative that a folder beside this one exports, by its name.

    A folder of a manipulative has its class in `__all__`; nothing else needs to name it.

    Example:
        >>> "Clock" in found()
        True
    """
    folders = [found.name for found in pkgutil.iter_modules(widgets.__path__) if found.ispkg]
    own = __package__.rpartition(".")[2]
    packages = [import_module(f"{widgets.__name__}.{name}") for name in folders if name != own]
    exported = [
        getattr(package, name) for package in packages for name in getattr(package, "__all__", ())
    ]
    kinds = [each for each in exported if isinstance(each, type) and issubclass(each, Manipulative)]
    return {kind.__name__: kind for kind in sorted(kinds, key=lambda kind: kind.__name__)}


MANIPULATIVES: Mapping[str, type[Manipulative]] = found()


def manipulative_called(name: str) -> type[Manipulative]:
    """Return the class of a manipulative.

    Raises:
        LessonProblem: the kit has none of that name.

    Example:
        >>> manipulative_called("Clock").__name__
        'Clock'
    """
    if name in MANIPULATIVES:
        return MANIPULATIVES[name]
    raise LessonProblem(
        f"there is no manipulative {quoted(name)}{nearest(name, list(MANIPULATIVES))}",
        remedy=f"choose one of {', '.join(MANIPULATIVES)}",
    )
