"""Errors about lessons: one sentence for the person who wrote the lesson."""

from __future__ import annotations

import unicodedata
from contextlib import contextmanager
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

LONGEST_QUOTE = 80

# Unicode categories: control characters, invisible and direction marks, surrogates, line ends.
_HIDDEN = {"Cc", "Cf", "Cs", "Zl", "Zp"}


class LessonProblem(ValueError):
    """An error in a lesson, as one sentence: where, what is wrong, and what to do.

    Text from files and of their names is escaped where it cannot be seen: see `visible`.

    Attributes:
        what: what is wrong, with what was given and what is allowed.
        remedy: what to do about it.
        place: where in the file, from the outside in: "[[rounds]] 2, tasks" or "line 14".
        file: the file, or "" when the lesson came from none.

    Example:
        >>> print(LessonProblem("there is no title", remedy="add one", file="monday.toml"))
        monday.toml: there is no title; add one.
    """

    def __init__(self, what: str, *, remedy: str, place: str = "", file: str = "") -> None:
        self.what, self.remedy = visible(what), visible(remedy)
        self.place, self.file = visible(place), visible(file)
        where = ", ".join(part for part in (self.file, self.place) if part)
        super().__init__(f"{where}{': ' if where else ''}{self.what}; {self.remedy}.")

    def __reduce__(self) -> tuple[object, ...]:
        """Make it picklable, which keyword arguments would prevent."""
        return _problem, (self.what, self.remedy, self.place, self.file)


def _problem(what: str, remedy: str, place: str, file: str) -> LessonProblem:
    return LessonProblem(what, remedy=remedy, place=place, file=file)


class at:  # noqa: N801 - it reads as a word in "with at(…):"
    """Add a place to every problem that is raised inside the block.

    Raises:
        LessonProblem: the problem from inside, with this place before its own.

    Example:
        >>> with at("[[rounds]] 2"), at("tasks"):
        ...     raise LessonProblem("0 is not allowed", remedy="give 1 or more")
        Traceback (most recent call last):
        manipulatives.lessons.problem.LessonProblem: [[rounds]] 2, tasks: 0 is not allowed; ...
    """

    # Every task passes dozens of these, and a class is twice as fast as a generator.
    __slots__ = ("_place",)

    def __init__(self, place: str) -> None:
        self._place = place

    def __enter__(self) -> None:
        pass

    def __exit__(self, kind: object, problem: BaseException | None, trace: object) -> None:
        if isinstance(problem, LessonProblem):
            inner = f"{self._place}, {problem.place}" if problem.place else self._place
            raise LessonProblem(
                problem.what, remedy=problem.remedy, place=inner, file=problem.file
            ) from None


@contextmanager
def in_file(file: str) -> Iterator[None]:
    """Add a file to every problem that is raised inside the block.

    Raises:
        LessonProblem: the problem from inside, with the file's name.

    Example:
        >>> with in_file("monday.toml"):
        ...     raise LessonProblem("there is no title", remedy="add one")
        Traceback (most recent call last):
        manipulatives.lessons.problem.LessonProblem: monday.toml: there is no title; add one.
    """
    try:
        yield
    except LessonProblem as problem:
        raise LessonProblem(
            problem.what, remedy=problem.remedy, place=problem.place, file=file
        ) from None


def quoted(value: object) -> str:
    r"""Return the repr of a value for a sentence: short, on one line, with invisible marks escaped.

    Example:
        >>> quoted("on Monday"), quoted(7), quoted("left\u202eright")
        ("'on Monday'", '7', "'left\\u202eright'")
    """
    try:
        text = repr(value)
    except Exception:  # noqa: BLE001 - an integer of too many digits, or an object whose repr fails
        return f"a value of the kind {type(value).__name__} that is too long to show"
    return shown(text)


def visible(text: str) -> str:
    r"""Return text with invisible characters and direction marks escaped.

    Example:
        >>> visible("café \u202e")
        'café \\u202e'
    """
    if text.isprintable():
        return text
    return "".join(
        _escaped(letter) if unicodedata.category(letter) in _HIDDEN else letter for letter in text
    )


def shown(text: str, *, longest: int = LONGEST_QUOTE) -> str:
    r"""Return text for a sentence: short, with everything visible.

    Example:
        >>> shown("café\n"), len(shown("x" * 1000))
        ('café\\n', 80)
    """
    visible = "".join(letter if letter.isprintable() else _escaped(letter) for letter in text)
    return visible if len(visible) <= longest else f"{visible[: longest - 1]}…"


def _escaped(letter: str) -> str:
    return letter.encode("unicode_escape").decode("ascii")


def unreadable(error: Exception, *, file: str = "") -> LessonProblem:
    """Return the problem that a file cannot be read because of an unexpected error.

    Example:
        >>> print(unreadable(RecursionError("maximum depth")))
        it cannot be read (RecursionError: maximum depth); mend the file, or make it anew.
    """
    message = f"{type(error).__name__}: {error}" if str(error) else type(error).__name__
    return LessonProblem(
        f"it cannot be read ({shown(message)})", remedy="mend the file, or make it anew", file=file
    )
