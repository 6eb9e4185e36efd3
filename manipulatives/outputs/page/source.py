"""Where the files that a page or a board saves come from: the text of `data-kit-source`."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from manipulatives.data.kit import kit_version
from manipulatives.lessons.records.origin import lesson_id

if TYPE_CHECKING:
    from manipulatives.lessons.settings import ClassSettings


def source_of(title: str, seed: int, settings: ClassSettings) -> str:
    """Return the kit's version and the ids of class and lesson as JSON.

    Args:
        title: of the lesson.
        seed: of the lesson.
        settings: of the class.

    Example:
        >>> from manipulatives.lessons.settings import ClassSettings
        >>> import json
        >>> json.loads(source_of("Market day", 7, ClassSettings(id="owls")))["class"]
        'owls'
    """
    return json.dumps(
        {"kit": kit_version(), "class": settings.id, "lesson": lesson_id(title, seed)}
    )
