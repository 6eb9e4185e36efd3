from __future__ import annotations

import os
from pathlib import Path

import pytest

from manipulatives.lessons.atomic_write import atomic_write


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def test_text_is_written_as_utf8_with_its_own_line_ends(tmp_path):
    atomic_write(tmp_path / "a.toml", "é\nb\r\n")
    assert (tmp_path / "a.toml").read_bytes() == b"\xc3\xa9\nb\r\n"
    assert names(tmp_path) == ["a.toml"]


def test_bytes_are_written_as_they_are_and_replace_what_was_there(tmp_path):
    path = tmp_path / "a.pdf"
    path.write_bytes(b"a much longer file than the new one")
    atomic_write(str(path), b"\x00\xff")
    assert path.read_bytes() == b"\x00\xff"


@pytest.mark.parametrize("fails", ["os.fsync", "pathlib.Path.replace"])
def test_when_writing_fails_the_old_file_stays_and_nothing_is_left_behind(
    tmp_path, monkeypatch, fails
):
    path = tmp_path / "a.toml"
    path.write_text("old")

    def fail(*_args):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(fails, fail)
    with pytest.raises(OSError, match="No space left"):
        atomic_write(path, "new")
    assert path.read_text() == "old"
    assert names(tmp_path) == ["a.toml"]


def test_it_is_on_the_disk_before_it_takes_the_name(tmp_path, monkeypatch):
    synced, named = set(), []
    sync, replace = os.fsync, Path.replace

    def watch_sync(descriptor):
        synced.add(os.fstat(descriptor).st_ino)
        sync(descriptor)

    def watch_replace(self, target):
        named.append(self.stat().st_ino in synced)
        return replace(self, target)

    monkeypatch.setattr("os.fsync", watch_sync)
    monkeypatch.setattr(Path, "replace", watch_replace)
    atomic_write(tmp_path / "a.toml", "new")
    assert named == [True]


def test_a_missing_folder_is_not_made(tmp_path):
    with pytest.raises(FileNotFoundError):
        atomic_write(tmp_path / "nowhere" / "a.toml", "new")
    assert names(tmp_path) == []


@pytest.mark.skipif(os.name != "posix", reason="links and modes are POSIX's")
def test_a_link_stays_a_link_and_a_mode_stays_a_mode(tmp_path):
    path, link = tmp_path / "a.toml", tmp_path / "today.toml"
    path.write_text("old")
    path.chmod(0o640)
    link.symlink_to(path)
    atomic_write(link, "new")
    assert link.is_symlink()
    assert path.read_text() == "new"
    assert path.stat().st_mode & 0o777 == 0o640


@pytest.mark.skipif(os.name != "posix", reason="modes are POSIX's")
def test_a_new_file_may_be_read_by_whom_the_user_lets(tmp_path):
    before = os.umask(0o027)
    try:
        atomic_write(tmp_path / "a.toml", "new")
    finally:
        os.umask(before)
    assert (tmp_path / "a.toml").stat().st_mode & 0o777 == 0o640
