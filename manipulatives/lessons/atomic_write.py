"""Writing one file atomically."""

from __future__ import annotations

from pathlib import Path

from manipulatives.lessons.write_files import write_files


def atomic_write(path: str | Path, content: str | bytes) -> None:
    """Write a file atomically: a crash half-way leaves the old file, or none, but never a part.

    Of a link its target is replaced.

    Args:
        path: the file; its folder must be there.
        content: bytes, or text that is written as UTF-8 with the line ends it has.

    Raises:
        OSError: the folder is missing, full or not writable; nothing is left behind.

    Example:
        >>> atomic_write("monday.toml", 'title = "Monday"')
    """
    write_files({Path(path): content.encode() if isinstance(content, str) else content})
