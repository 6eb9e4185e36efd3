from __future__ import annotations

import os

import pytest

from manipulatives.lessons.whole import write_whole


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def test_text_is_written_as_utf8_with_its_own_line_ends(tmp_path):
    write_whole(tmp_path / "a.toml", "é\nb\r\n")
    assert (tmp_path / "a.toml").read_bytes() == b"\xc3\xa9\nb\r\n"
    assert names(tmp_path) == ["a.toml"]


def test_bytes_are_written_as_they_are_and_replace_what_was_there(tmp_path):
    path = tmp_path / "a.pdf"
    path.write_bytes(b"a much longer file than the new one")
    write_whole(str(path), b"\x00\xff")
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
        write_whole(path, "new")
    assert path.read_text() == "old"
    assert names(tmp_path) == ["a.toml"]


def test_it_is_on_the_disk_before_it_takes_the_name(tmp_path, monkeypatch):
    order = []
    sync, path = os.fsync, tmp_path / "a.toml"

    def watch(descriptor):
        order.append(path.exists())
        sync(descriptor)

    monkeypatch.setattr("os.fsync", watch)
    write_whole(path, "new")
    assert order[0] is False
    assert order[1:] in ([], [True])


def test_a_missing_folder_is_not_made(tmp_path):
    with pytest.raises(FileNotFoundError):
        write_whole(tmp_path / "nowhere" / "a.toml", "new")
    assert names(tmp_path) == []


@pytest.mark.skipif(os.name != "posix", reason="links and modes are POSIX's")
def test_a_link_stays_a_link_and_a_mode_stays_a_mode(tmp_path):
    path, link = tmp_path / "a.toml", tmp_path / "today.toml"
    path.write_text("old")
    path.chmod(0o640)
    link.symlink_to(path)
    write_whole(link, "new")
    assert link.is_symlink()
    assert path.read_text() == "new"
    assert path.stat().st_mode & 0o777 == 0o640


@pytest.mark.skipif(os.name != "posix", reason="modes are POSIX's")
def test_a_new_file_may_be_read_by_whom_the_user_lets(tmp_path):
    before = os.umask(0o027)
    try:
        write_whole(tmp_path / "a.toml", "new")
    finally:
        os.umask(before)
    assert (tmp_path / "a.toml").stat().st_mode & 0o777 == 0o640
