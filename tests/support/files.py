"""The files of the project, without what tools leave beside them."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "manipulatives"
LEFT = {"__pycache__", "node_modules", "build", "dist", "venv"}


def files(folder: Path = ROOT, pattern: str = "*") -> Iterator[Path]:
    """Every file below a folder that belongs to the project, in order."""
    for path in sorted(folder.iterdir()):
        if path.is_dir():
            # Hidden folders are the tools' own, but for the one that says how CI runs.
            if (path.name.startswith(".") and path.name != ".ci") or path.name in LEFT:
                continue
            if not path.name.endswith(".egg-info"):
                yield from files(path, pattern)
        elif path.match(pattern):
            yield path
