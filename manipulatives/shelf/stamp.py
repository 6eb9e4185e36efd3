"""A stamp: a digest of the content of files."""

from __future__ import annotations

import hashlib
from pathlib import Path

from manipulatives.lessons.problem import LessonProblem

LARGEST = 30_000_000
"""Most bytes of a file on the shelf."""


def stamp_of(*paths: Path) -> str:
    """Return a digest of the content of files; a missing file counts as empty.

    Raises:
        LessonProblem: one is larger than a lesson may be.
        OSError: one cannot be read.

    Example:
        >>> stamp_of(Path("nowhere.toml")) == stamp_of(Path("neither.toml"))
        True
    """
    digest = hashlib.sha256()
    for path in paths:
        try:
            with path.open("rb") as file:
                content = file.read(LARGEST + 1)
        except FileNotFoundError:
            content = b""
        if len(content) > LARGEST:
            raise LessonProblem(
                f"the file has more than {LARGEST:,} bytes",
                remedy="clear its outputs in JupyterLab, or take it off the shelf",
                file=path.name,
            )
        digest.update(hashlib.sha256(content).digest())
    return digest.hexdigest()
