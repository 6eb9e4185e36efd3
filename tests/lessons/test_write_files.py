from __future__ import annotations

import hashlib
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from manipulatives.lessons import write_files as write_files_module
from manipulatives.lessons.write_files import recover, write_files


def test_all_files_are_written(tmp_path):
    write_files({tmp_path / "a": b"1", tmp_path / "b": b"2"})
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == {"a": b"1", "b": b"2"}


@pytest.mark.parametrize("at", [1, 2, 3])
def test_when_a_rename_fails_everything_is_as_before(tmp_path, monkeypatch, at):
    (tmp_path / "a").write_bytes(b"old")
    files = {tmp_path / "a": b"1", tmp_path / "b": b"2", tmp_path / "c": b"3"}
    true, done = Path.replace, []

    def replace(self, target):
        if self.name.endswith(".part"):
            done.append(target)
            if len(done) == at:
                raise OSError(28, "No space left on device")
        return true(self, target)

    monkeypatch.setattr(Path, "replace", replace)
    with pytest.raises(OSError, match="No space"):
        write_files(files)
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == {"a": b"old"}


def test_files_of_two_folders_are_refused_and_a_missing_folder_is_not_made(tmp_path):
    with pytest.raises(OSError, match="not in one folder"):
        write_files({tmp_path / "a": b"1", tmp_path / "no" / "b": b"2"})
    with pytest.raises(FileNotFoundError):
        write_files({tmp_path / "no" / "b": b"2"})
    assert list(tmp_path.iterdir()) == []


OLD = {"a": b"old a", "b": b"old b"}
NEW = {"a": b"new a", "b": b"new b", "c": b"new c"}
# Every call that changes something on the disk is counted; the process dies right before the nth.
DIES = """
import os, sys, pathlib
from manipulatives.lessons.write_files import recover, write_files
left = int(sys.argv[2])
def dying(call):
    def instead(*given, **named):
        global left
        left -= 1
        if left < 0:
            os._exit(9)
        return call(*given, **named)
    return instead
for module, name in ((os, "fsync"), (os, "link"), (os, "open"), (pathlib.Path, "replace"),
                     (pathlib.Path, "unlink"), (pathlib.Path, "open"), (pathlib.Path, "chmod")):
    setattr(module, name, dying(getattr(module, name)))
folder = pathlib.Path(sys.argv[1])
"""
WRITES = DIES + 'write_files({folder / name: f"new {name}".encode() for name in "abc"})'
RECOVERS = DIES + "recover(folder)"


def content(folder):
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def with_old_files(folder):
    folder.mkdir()
    for name, old in OLD.items():
        (folder / name).write_bytes(old)
    return folder


def until_it_dies(code, folder, calls):
    """Run code in a process that is killed after so many calls; return whether it was."""
    done = subprocess.run([sys.executable, "-c", code, str(folder), str(calls)], check=False)
    assert done.returncode in (0, 9)
    return done.returncode == 9


def test_a_write_that_is_killed_at_any_moment_is_finished_or_undone_by_the_next_one(tmp_path):
    outcomes, died = [], True
    while died:
        folder = with_old_files(tmp_path / str(len(outcomes)))
        died = until_it_dies(WRITES, folder, len(outcomes))
        recover(folder)
        assert content(folder) in (OLD, NEW)
        outcomes.append(content(folder) == NEW)
    # Undone up to some moment, finished from there on; and there were many moments.
    assert outcomes == sorted(outcomes)
    assert outcomes.count(False) > 10
    assert outcomes.count(True) > 5


@pytest.mark.parametrize("calls", [10, 15, 20, 25])
def test_a_recovery_that_is_killed_at_any_moment_is_taken_up_by_the_next_one(tmp_path, calls):
    again, died = 0, True
    while died:
        folder = with_old_files(tmp_path / str(again))
        assert until_it_dies(WRITES, folder, calls)
        died = until_it_dies(RECOVERS, folder, again)
        recover(folder)
        assert content(folder) in (OLD, NEW)
        again += 1
    assert again > 3


def plan(of="0123abcd", **files):
    """The first line of a journal: for each file, what was there before and what it is to hold."""
    digests = {
        name: [None if one is None else hashlib.sha256(one).hexdigest() for one in contents]
        for name, contents in files.items()
    }
    return json.dumps({"token": of, "files": digests}).encode() + b"\n"


def test_what_another_process_is_writing_is_left_alone(tmp_path):
    journal = tmp_path / ".kit-write-0123abcd.json"
    draft = tmp_path / ".a.0123abcd.part"
    draft.write_bytes(b"half")
    with journal.open("xb") as file:
        file.write(plan(a=(None, b"whole")))
        file.flush()
        assert write_files_module.lock(file)
        recover(tmp_path)
        assert draft.exists()
        assert journal.exists()
    recover(tmp_path)
    assert content(tmp_path) == {}


@pytest.mark.parametrize(
    "journal",
    [
        b"",
        b"nonsense\n",
        b"[1]\n",
        b'{"token": "0123abcd"}\n',
        b'{"token": "0123abcd", "files": [1]}\n',
        b'{"token": "0123abcd", "files": {"mine": true}}\ncommit\n',
        b'{"token": "0123abcd", "files": {"mine": [null, 7]}}\ncommit\nundo\n',
        plan(**{"../other": (b"stays", b"new"), "sub/x": (None, b"new")}) + b"commit\n",
        plan(of="else", mine=(b"stays", b"new")) + b"commit\n",
        plan(mine=(None, b"new")),
        plan(mine=(None, b"new")) + b"commit\n",
        plan(mine=(None, b"new")) + b"commit\nundo\n",
        plan(mine=(None, b"stays")),
        b'{"token": "0123abcd", "files": {"mi',
        b"[" * 100_000,
    ],
)
def test_a_journal_from_elsewhere_can_do_no_harm(tmp_path, journal):
    folder = tmp_path / "shelf"
    folder.mkdir()
    (tmp_path / "other").write_bytes(b"stays")
    (tmp_path / ".other.0123abcd.part").write_bytes(b"stays")
    (folder / "mine").write_bytes(b"stays")
    (folder / ".kit-write-0123abcd.json").write_bytes(journal)
    recover(folder)
    assert content(folder) == {"mine": b"stays"}
    assert (tmp_path / "other").read_bytes() == b"stays"
    assert (tmp_path / ".other.0123abcd.part").exists()


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no such pipes")
def test_what_only_has_the_name_of_a_journal_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / ".kit-write-0123abcd.json")
    (tmp_path / ".kit-write-0123abce.json").mkdir()
    write_files({tmp_path / "a": b"1"})
    assert (tmp_path / "a").read_bytes() == b"1"


def test_changes_made_after_the_process_died_stay(tmp_path):
    """Every step at which a process may die, and then a file that is changed by hand."""
    kept, died = 0, True
    while died:
        folder = with_old_files(tmp_path / str(kept))
        died = until_it_dies(WRITES, folder, kept)
        (folder / "a").write_bytes(b"by hand")
        (folder / "c").write_bytes(b"by hand, too")
        recover(folder)
        now = content(folder)
        assert (now.pop("a"), now.pop("c")) == (b"by hand", b"by hand, too")
        assert now in ({"b": OLD["b"]}, {"b": NEW["b"]})
        kept += 1
    assert kept > 20


def test_without_hard_links_the_backup_is_a_copy(tmp_path, monkeypatch):
    def refuse(*_):
        raise OSError(1, "Operation not permitted")

    monkeypatch.setattr("os.link", refuse)
    (tmp_path / "a").write_bytes(b"old")
    write_files({tmp_path / "a": b"1", tmp_path / "b": b"2"})
    assert content(tmp_path) == {"a": b"1", "b": b"2"}
