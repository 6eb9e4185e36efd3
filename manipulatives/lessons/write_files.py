"""Atomic writes of several files in a folder: all of them are written, or none.

Every write has a journal, a file `.kit-write-….json` beside its targets. Its first line is the
plan, which is on the disk before anything else is written. Then the contents go to temporary files
(`.NAME.….part`), and each old file gets a backup (`.NAME.….before`, a hard link). After the line
"commit" in the journal the temporary files are renamed to their targets; if a rename fails, the
line "undo" is added and the backups are restored. A process that dies leaves its journal unlocked,
and the next process that writes or reads in the folder finishes or undoes the write, as the journal
says. Somebody may have changed a file in between: the plan holds digests of the old and the new
content, and a file with any other content stays as it is.
"""

from __future__ import annotations

import contextlib
import errno
import hashlib
import json
import os
import secrets
import shutil
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO

JOURNAL = ".kit-write-*.json"
_COMMIT, _UNDO = b"commit\n", b"undo\n"
_LARGEST_JOURNAL = 1_000_000


@dataclass(frozen=True)
class _Move:
    """One file that is replaced.

    Attributes:
        target: the file.
        temporary: the temporary file with the new content.
        backup: the backup of the old file.
        old_digest: of the old content; None for a new file.
        new_digest: of the new content.
    """

    target: Path
    temporary: Path
    backup: Path
    old_digest: str | None
    new_digest: str

    @classmethod
    def of(
        cls, folder: Path, name: str, token: str, old_digest: str | None, new_digest: str
    ) -> _Move:
        return cls(
            folder / name,
            folder / f".{name}.{token}.part",
            folder / f".{name}.{token}.before",
            old_digest,
            new_digest,
        )

    @property
    def new(self) -> bool:
        """Whether there was no such file before."""
        return self.old_digest is None

    def finish(self) -> None:
        """Rename the temporary file to its target, unless somebody has changed the target since."""
        if self.temporary.exists():
            if _digest_at(self.target) in (self.old_digest, self.new_digest):
                self.temporary.replace(self.target)
            else:
                self.temporary.unlink()

    def discard(self) -> None:
        """Delete the temporary file and the backup, and leave the target as it is."""
        self.backup.unlink(missing_ok=True)
        self.temporary.unlink(missing_ok=True)

    def undo(self) -> None:
        """Restore the old file, unless somebody has changed the target since."""
        if self.temporary.exists():
            # The target was not replaced. The temporary file is deleted last, because it shows that
            # to a second undo.
            self.discard()
        elif _digest_at(self.target) != self.new_digest:
            self.backup.unlink(missing_ok=True)
        elif self.backup.exists():
            self.backup.replace(self.target)
        elif self.new:
            self.target.unlink(missing_ok=True)


def write_files(files: Mapping[Path, bytes]) -> None:
    """Write files atomically: either all are written, or everything is as it was.

    This holds for any error, and when the process is killed at any moment: then the next write into
    the folder, or `recover`, finishes or undoes the write. Of a link its target is replaced.

    Args:
        files: the new content of each file; all in one folder, which must exist.

    Raises:
        OSError: a file cannot be written, or they are not in one folder; no file has changed.

    Example:
        >>> write_files({Path("monday.toml"): b"title = 'Monday'", Path("key.pdf"): b"%PDF"})
    """
    targets = {Path(os.path.realpath(path)): content for path, content in files.items()}
    folders = {target.parent for target in targets}
    if not folders:
        return
    if len(folders) > 1:
        raise OSError(errno.EXDEV, "the files are not in one folder", str(next(iter(files))))
    [folder] = folders
    recover(folder)
    with _naming_a_target(next(iter(targets))), _new_journal(folder) as (journal, token):
        moves = [
            _Move.of(folder, target.name, token, _digest_at(target), _digest(content))
            for target, content in targets.items()
        ]
        files_of_plan = {move.target.name: [move.old_digest, move.new_digest] for move in moves}
        plan = {"token": token, "files": files_of_plan}
        _append(journal, json.dumps(plan).encode() + b"\n")
        _sync_folder(folder)
        try:
            for move, content in zip(moves, targets.values(), strict=True):
                _prepare(move, content)
        except BaseException:
            for move in moves:
                move.discard()
            raise
        try:
            _append(journal, _COMMIT)
            for move in moves:
                move.temporary.replace(move.target)
        except BaseException:
            _append(journal, _UNDO, force=False)
            _undo(moves)
            raise
        for move in moves:
            move.backup.unlink(missing_ok=True)
        _sync_folder(folder)


def recover(folder: Path) -> None:
    """Finish or undo every write into a folder whose process has died.

    Writes of running processes are left alone, and so are files that cannot be changed here.

    Args:
        folder: it may be missing, or read-only.

    Example:
        >>> recover(Path())
    """
    with contextlib.suppress(OSError):
        for path in sorted(folder.glob(JOURNAL)):
            with contextlib.suppress(OSError):
                _recover_one(path)


@contextlib.contextmanager
def _naming_a_target(target: Path) -> Iterator[None]:
    """In an error about the journal, name a file that the user knows."""
    try:
        yield
    except OSError as error:
        if error.filename and Path(error.filename).match(JOURNAL):
            error.filename = str(target)
        raise


def _recover_one(path: Path) -> None:
    # Anything may have such a name; reading a pipe would block.
    if path.is_symlink() or not path.is_file():
        return
    with path.open("r+b") as journal:
        if not lock(journal):
            return
        plan, *words = journal.read(_LARGEST_JOURNAL).splitlines(keepends=True) or [b""]
        moves = _planned(path, plan)
        if _COMMIT not in words:
            # No target was touched yet.
            for move in moves:
                move.discard()
        elif _UNDO in words:
            _undo(moves)
        else:
            _finish(moves, journal)
        _sync_folder(path.parent)
    path.unlink(missing_ok=True)


def _finish(moves: list[_Move], journal: BinaryIO) -> None:
    try:
        for move in moves:
            move.finish()
    except OSError:
        _append(journal, _UNDO)
        _undo(moves)
    for move in moves:
        move.backup.unlink(missing_ok=True)


def _undo(moves: list[_Move]) -> None:
    for move in reversed(moves):
        move.undo()


def _planned(journal: Path, line: bytes) -> list[_Move]:
    """Return the moves of a plan; none for an incomplete plan, which has changed nothing yet."""
    try:
        plan = json.loads(line)
        token, files = plan["token"], plan["files"]
        digests = [(name, old, new) for name, (old, new) in files.items()]
    except (ValueError, TypeError, KeyError, AttributeError, RecursionError):
        return []
    # A journal may come from anyone, so it may name files of its own folder only.
    if journal.name != f".kit-write-{token}.json":
        return []
    return [
        _Move.of(journal.parent, name, token, old, new)
        for name, old, new in digests
        if name == Path(name).name and isinstance(old, str | None) and isinstance(new, str)
    ]


@contextlib.contextmanager
def _new_journal(folder: Path) -> Iterator[tuple[BinaryIO, str]]:
    """Make and lock a journal, and delete it afterwards."""
    while True:
        token = secrets.token_hex(4)
        path = folder / f".kit-write-{token}.json"
        with path.open("xb") as journal:
            # Another process in `recover` may have found it empty and deleted it.
            if not lock(journal) or not path.exists():
                continue
            try:
                yield journal, token
            finally:
                if os.name == "posix":
                    path.unlink(missing_ok=True)
        # Elsewhere an open file cannot be deleted.
        path.unlink(missing_ok=True)
        return


def _prepare(move: _Move, content: bytes) -> None:
    # The temporary file gets the permissions of a new file.
    descriptor = os.open(move.temporary, os.O_WRONLY | os.O_CREAT | os.O_EXCL | _BINARY, 0o666)
    with os.fdopen(descriptor, "wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    if not move.new:
        move.temporary.chmod(move.target.stat().st_mode & 0o7777)
        _link_or_copy(move.target, move.backup)


def _link_or_copy(target: Path, backup: Path) -> None:
    """Make a hard link to a file, or a copy where the file system has no hard links."""
    try:
        os.link(target, backup)
    except OSError:
        shutil.copy2(target, backup)


def _digest(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def _digest_at(path: Path) -> str | None:
    """Return the digest of a file; None when there is none."""
    if not path.is_file():
        return None
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def _append(journal: BinaryIO, line: bytes, *, force: bool = True) -> None:
    """Append to a journal and sync it to the disk; without `force`, ignore a failure."""
    try:
        journal.seek(0, os.SEEK_END)
        journal.write(line)
        journal.flush()
        os.fsync(journal.fileno())
    except OSError:
        if force:
            raise


_BINARY = getattr(os, "O_BINARY", 0)


def _sync_folder(folder: Path) -> None:
    """Sync the entries of a folder to the disk, where folders can be opened (not on Windows)."""
    if os.name != "posix":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def lock(file: BinaryIO) -> bool:
    """Lock a file until it is closed or the process ends; return whether it was not locked before.

    Example:
        >>> with open("monday.toml", "w+b") as file, open("monday.toml", "r+b") as again:
        ...     lock(file), lock(again)
        (True, False)
    """
    try:
        if os.name == "posix":
            import fcntl  # noqa: PLC0415 - not on Windows

            fcntl.flock(file.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)
        else:
            import msvcrt  # noqa: PLC0415 - on Windows only

            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined]
    except OSError:
        return False
    return True
