"""What a page says when something is refused or fails."""

from __future__ import annotations

import errno
import re
from pathlib import Path

SENTENCES = {
    400: "The shelf did not understand that.",
    403: "That was refused. Go back to the shelf and try again.",
    404: "There is nothing of that name on the shelf.",
    405: "That cannot be done here. Go back to the shelf.",
}
LOCKED = "The shelf is locked. Open it with the whole address that the terminal shows."
UNKNOWN_FAULT = "Something went wrong in the kit itself."


def write_error_sentence(problem: OSError) -> str:
    """Return why a file could not be written, as a sentence for the teacher.

    Example:
        >>> write_error_sentence(PermissionError(13, "Permission denied", "bell.html"))
        'bell.html cannot be written: the folder or the file is read-only.'
    """
    name = Path(problem.filename).name if problem.filename else "The file"
    # A file has a temporary name while it is being written.
    name = re.sub(r"^\.(.+)\.[0-9a-f]+\.part$", r"\1", name)
    if isinstance(problem, PermissionError) or problem.errno == errno.EROFS:
        return f"{name} cannot be written: the folder or the file is read-only."
    if problem.errno == errno.ENOSPC:
        return f"{name} cannot be written: the disk is full."
    return f"{name} cannot be written ({problem.strerror or problem})."
