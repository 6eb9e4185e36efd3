"""Files written whole or not at all."""

from __future__ import annotations

import os
import secrets
from pathlib import Path


def write_whole(path: str | Path, content: str | bytes) -> None:
    """Write a file so that a crash half-way leaves the old one, or none, but never a part.

    The content goes to a temporary file in the same folder, is forced to the disk, and takes the
    name in one step. A link stays a link: what it points to is replaced.

    Args:
        path: the file; its folder must be there.
        content: bytes, or text that is written as UTF-8 with the line ends it has.

    Raises:
        OSError: the folder is missing, full or not to be written in; nothing is left behind.

    Example:
        >>> write_whole("monday.toml", 'title = "Monday"')
    """
    target = Path(os.path.realpath(path))
    data = content.encode() if isinstance(content, str) else content
    # The random part keeps two writers of one file apart.
    draft = target.with_name(f".{target.name}.{secrets.token_hex(4)}.part")
    descriptor = os.open(draft, os.O_WRONLY | os.O_CREAT | os.O_EXCL | _BINARY, 0o666)
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if target.exists():
            draft.chmod(target.stat().st_mode & 0o7777)
        draft.replace(target)
    except BaseException:
        draft.unlink(missing_ok=True)
        raise
    _settle(target.parent)


_BINARY = getattr(os, "O_BINARY", 0)


def _settle(folder: Path) -> None:
    """Force the new name to the disk too, where folders can be opened (not on Windows)."""
    if os.name != "posix":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)
