"""Several files written together: all of them, or none."""

from __future__ import annotations

import os
import secrets
from collections.abc import Mapping
from pathlib import Path


def write_together(files: Mapping[Path, bytes]) -> None:
    """Write files so that either all are there, whole, or everything is as it was.

    All contents go to temporary files beside their targets and are forced to the disk; then each
    takes its name in one step. What was there before is kept until the last one has its name.

    Args:
        files: what each file is to hold; their folders must be there.

    Raises:
        OSError: one cannot be written; none has changed.

    Example:
        >>> write_together({Path("monday.toml"): b"title = 'Monday'", Path("key.pdf"): b"%PDF"})
    """
    mark = secrets.token_hex(4)
    drafts: list[tuple[Path, Path]] = []
    kept: list[tuple[Path, Path | None]] = []
    try:
        for path, content in files.items():
            target = Path(os.path.realpath(path))
            draft = target.with_name(f".{target.name}.{mark}.part")
            drafts.append((draft, target))
            with draft.open("xb") as file:
                file.write(content)
                file.flush()
                os.fsync(file.fileno())
        for draft, target in drafts:
            before = target.with_name(f".{target.name}.{mark}.before") if target.exists() else None
            if before is not None:
                draft.chmod(target.stat().st_mode & 0o7777)
                target.replace(before)
            kept.append((target, before))
            draft.replace(target)
    except BaseException:
        for target, before in reversed(kept):
            if before is None:
                target.unlink(missing_ok=True)
            else:
                before.replace(target)
        for draft, _ in drafts:
            draft.unlink(missing_ok=True)
        raise
    for _, before in kept:
        if before is not None:
            before.unlink(missing_ok=True)
