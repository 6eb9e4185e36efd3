from __future__ import annotations

from pathlib import Path

import pytest

from manipulatives.maker.together import write_together


def test_all_files_are_written(tmp_path):
    write_together({tmp_path / "a": b"1", tmp_path / "b": b"2"})
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == {"a": b"1", "b": b"2"}


@pytest.mark.parametrize("at", [1, 2, 3])
def test_when_one_cannot_take_its_name_everything_is_as_it_was(tmp_path, monkeypatch, at):
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
        write_together(files)
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == {"a": b"old"}


def test_a_missing_folder_leaves_nothing_behind(tmp_path):
    with pytest.raises(FileNotFoundError):
        write_together({tmp_path / "a": b"1", tmp_path / "no" / "b": b"2"})
    assert list(tmp_path.iterdir()) == []
