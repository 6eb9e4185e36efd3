"""One file written whole or not at all."""

from __future__ import annotations

from pathlib import Path

from manipulatives.lessons.write_files import write_files


def atomic_write(path: str | Path, content: str | bytes) -> None:
    """Write a file so that a crash half-way leaves the old one, or none, but never a part.

    A link stays a link: what it points to is replaced.

    Args:
        path: the file; its folder must be there.
        content: bytes, or text that is written as UTF-8 with the line ends it has.

    Raises:
        OSError: the folder is missing, full or not to be written in; nothing is left behind.

    Example:
        >>> atomic_write("monday.toml", 'title = "Monday"')
    """
    write_files({Path(path): content.encode() if isinstance(content, str) else content})
