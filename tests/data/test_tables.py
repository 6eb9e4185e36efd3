"""The tables that both languages read."""

from __future__ import annotations

import json

import pytest

from manipulatives.data import FOLDER, read_table, table
from support.files import PACKAGE, files

TABLES = sorted(path.stem for path in files(FOLDER, "*.json"))


@pytest.mark.parametrize("name", TABLES)
def test_a_table_is_read_by_both_languages(name):
    python = "".join(path.read_text("utf-8") for path in files(PACKAGE, "*.py"))
    script = "".join(path.read_text("utf-8") for path in files(PACKAGE / "widgets", "*.js"))
    assert f'table("{name}")' in python
    assert f'/data/{name}.json" with {{ type: "json" }};' in script


@pytest.mark.parametrize("name", TABLES)
def test_a_table_says_what_it_is_to_people_and_not_to_programs(name):
    assert all(json.loads((FOLDER / f"{name}.json").read_text("utf-8"))["about"])
    assert "about" not in table(name)


def test_a_file_that_is_a_list_is_read_as_it_is(tmp_path):
    file = tmp_path / "list.json"
    file.write_text("[1, 2]", "utf-8")
    assert read_table(file) == [1, 2]


def test_a_table_that_is_not_there_is_named():
    with pytest.raises(FileNotFoundError, match=r"nothing\.json"):
        table("nothing")
