"""The origin of a record: its id and revision, its class and lesson, the version of the kit."""

from __future__ import annotations

import hashlib
import re
import secrets
from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol, TypeVar

from manipulatives.lessons.checks import check_whole
from manipulatives.lessons.problem import LessonProblem, at, quoted

if TYPE_CHECKING:
    from collections.abc import Iterable

MOST_REVISIONS = 1_000_000
LONGEST_CLASS_ID = 40

_RECORD_ID = re.compile(r"[0-9a-f]{32}")
_LESSON_ID = re.compile(r"[0-9a-f]{16}")
_CLASS_ID = re.compile(r"[A-Za-z0-9][A-Za-z0-9-]*")
_KIT = re.compile(r"[0-9]+(\.[0-9]+)*[0-9A-Za-z.+-]*")


@dataclass(frozen=True)
class Origin:
    """The origin of a record.

    Attributes:
        id: 32 hexadecimal digits, drawn at random when the record began.
        revision: 1 or more; it goes up when the record changes.
        kit: the version of the kit that wrote it. Another version may make other tasks from
            a seed, so the tasks of a record are never made again.
        class_id: the `id` of the class settings, or None.
        lesson_id: of the lesson, as `lesson_id` makes it.

    Raises:
        LessonProblem: a field is not valid.

    Example:
        >>> Origin("0f" * 16, 3, "0.1.0", None, lesson_id("Market day", 7)).revision
        3
    """

    id: str
    revision: int
    kit: str
    class_id: str | None
    lesson_id: str

    def __post_init__(self) -> None:
        _check_pattern(_RECORD_ID, self.id, "id", "32 hexadecimal digits")
        with at("revision"):
            check_whole(self.revision, 1, MOST_REVISIONS)
        _check_pattern(_KIT, self.kit, "kit", 'a version such as "0.1.0"')
        if self.class_id is not None:
            with at("class"):
                check_class_id(self.class_id)
        _check_pattern(_LESSON_ID, self.lesson_id, "lesson", "16 hexadecimal digits")


class Recorded(Protocol):
    """A record that may have an origin; those of version 1 have none.

    Example:
        >>> from manipulatives.lessons.records.sessions import Session
        >>> record: Recorded = Session("Market clock", 4350, None)
        >>> record.origin is None
        True
    """

    @property
    def origin(self) -> Origin | None:
        """Its origin, or None."""


R = TypeVar("R", bound=Recorded)


def lesson_id(title: str, seed: int) -> str:
    """Return the id of a lesson, which depends on its title and seed only.

    Args:
        title: any text, because a notebook may have any title.
        seed: of the lesson.

    Returns:
        16 hexadecimal digits, the first of a SHA-256 digest.

    Example:
        >>> lesson_id("Market day", 7) == lesson_id("Market day", 8)
        False
    """
    text = f"{title}\n{seed}".encode(errors="backslashreplace")
    return hashlib.sha256(text).hexdigest()[:16]


def check_class_id(value: object) -> str:
    """Check the id of a class, up to 40 letters, digits and hyphens, and return it.

    Raises:
        LessonProblem: it is not valid.

    Example:
        >>> check_class_id("owls-2026")
        'owls-2026'
    """
    if (
        isinstance(value, str)
        and len(value) <= LONGEST_CLASS_ID
        and _CLASS_ID.fullmatch(value) is not None
    ):
        return value
    raise LessonProblem(
        f"{quoted(value)} is no id of a class",
        remedy=f"give 1 to {LONGEST_CLASS_ID} letters from a to z, digits and hyphens",
    )


def new_id() -> str:
    """Return a new id, different from all others.

    Returns:
        32 hexadecimal digits, drawn at random.

    Example:
        >>> len(new_id())
        32
    """
    return secrets.token_hex(16)


def without_duplicates(records: Iterable[R]) -> list[R]:
    """Return records without duplicates.

    Of several revisions of a record the last one counts. Records without an id, as in version 1 of
    the formats, are duplicates if they are equal.

    Returns:
        The records in the order of their first revision in the input.

    Example:
        >>> without_duplicates([])
        []
    """
    once: list[R] = []
    for record in records:
        place = next((place for place, one in enumerate(once) if _same(one, record)), None)
        if place is None:
            once.append(record)
        elif _revision(record) > _revision(once[place]):
            once[place] = record
    return once


def _same(one: Recorded, other: Recorded) -> bool:
    """Whether two are the same record, perhaps in different revisions."""
    if one.origin and other.origin:
        return one.origin.id == other.origin.id
    return one == other


def _revision(record: Recorded) -> int:
    return record.origin.revision if record.origin else 0


def _check_pattern(pattern: re.Pattern[str], value: object, name: str, what: str) -> None:
    with at(name):
        if not isinstance(value, str) or pattern.fullmatch(value) is None:
            raise LessonProblem(f"{quoted(value)} is not allowed", remedy=f"give {what}")
