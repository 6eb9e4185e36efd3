"""Imports run one way, downwards: in Python, in JavaScript, and in the files that are read."""

from __future__ import annotations

import pytest

from support.files import PACKAGE, files
from support.floors import (
    FLOORS,
    MAY_USE,
    files_named,
    floor,
    floor_of_import,
    javascript_imports,
    part_of_widgets,
    python_imports,
)


def name_of(path):
    return str(path.relative_to(PACKAGE))


PYTHON = list(files(PACKAGE, "*.py"))
JAVASCRIPT = list(files(PACKAGE, "*.js"))
# The strip of blocks beside a written sum is made of the blocks' own modules.
MAY_BORROW = {"columns": {"blocks"}}


def test_every_folder_of_the_package_is_a_floor():
    found = {path.name for path in PACKAGE.iterdir() if path.is_dir() and path.name[0] != "_"}
    assert found <= {*FLOORS}


@pytest.mark.parametrize("path", PYTHON, ids=name_of)
def test_a_module_imports_only_from_the_floors_below_it(path):
    here = floor(path)
    assert here in MAY_USE, f"{here} is no floor of the house"
    for name in python_imports(path):
        there = floor_of_import(name)
        assert there in (None, here) or there in MAY_USE[here], f"{here} must not import {name}"


@pytest.mark.parametrize("path", JAVASCRIPT, ids=name_of)
def test_a_script_imports_only_from_the_floors_below_it(path):
    here = floor(path)
    for source in javascript_imports(path):
        there = floor(source)
        assert there == here or there in MAY_USE[here], f"{here} must not import {source.name}"


@pytest.mark.parametrize("path", JAVASCRIPT, ids=name_of)
def test_the_inside_of_a_widget_is_its_own(path):
    """Widgets share what stands in `shared`; a page and a round look into no manipulative."""
    here = part_of_widgets(path)
    for source in javascript_imports(path):
        there = part_of_widgets(source)
        allowed = {None, here, "shared", *MAY_BORROW.get(here, ())}
        assert there in allowed, f"{name_of(path)} must not import {name_of(source)}"


@pytest.mark.parametrize("path", PYTHON, ids=name_of)
def test_a_module_reads_files_only_from_the_floors_below_it(path):
    here = floor(path)
    for named in files_named(path):
        there = floor(named)
        assert there == here or there in MAY_USE[here], f"{here} must not read {name_of(named)}"


def test_a_drawing_that_opens_a_style_sheet_of_a_widget_would_be_seen(monkeypatch):
    drawing = PACKAGE / "drawings" / "clock.py"
    monkeypatch.setattr(
        type(drawing),
        "read_text",
        lambda *_: 'Path(__file__).parents[1] / "widgets" / "shared" / "shared.css"',
    )
    monkeypatch.setattr("manipulatives.drawings.clock.Path", type(drawing), raising=False)
    monkeypatch.setattr("manipulatives.drawings.clock.__file__", str(drawing))
    assert {floor(named) for named in files_named(drawing)} == {"widgets"}
