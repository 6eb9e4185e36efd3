"""The examples in all docstrings are true; in lessons everything public has one."""

from __future__ import annotations

import doctest
import importlib
import inspect
import pkgutil
import shutil
from pathlib import Path

import pytest

import manipulatives

NOTEBOOKS = Path(__file__).parent.parent / "notebooks"
MODULES = [
    module.name
    for module in pkgutil.walk_packages(manipulatives.__path__, f"{manipulatives.__name__}.")
    if not module.name.endswith("__main__")
]
# What only its own package uses has examples where they help.
INNER = ("manipulatives.lessons.strands.", "manipulatives.lessons.why.")
OUTER = ("reading", "command")
SHOWN = [
    name
    for name in MODULES
    if name.startswith("manipulatives.lessons.")
    if not name.startswith(INNER) or name.rpartition(".")[2] in OUTER
]
# A long result may be cut with dots.
FLAGS = doctest.ELLIPSIS | doctest.NORMALIZE_WHITESPACE


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """A folder with the notebooks, which some examples read, and beside which some write."""
    folder = tmp_path_factory.mktemp("examples")
    shutil.copytree(NOTEBOOKS, folder / NOTEBOOKS.name)
    return folder


@pytest.mark.parametrize("name", MODULES)
def test_the_examples_of_a_module_are_true(name, folder, monkeypatch):
    monkeypatch.chdir(folder)
    results = doctest.testmod(importlib.import_module(name), optionflags=FLAGS)
    assert results.failed == 0


@pytest.mark.parametrize("name", SHOWN)
def test_everything_public_has_an_example(name):
    module = importlib.import_module(name)
    for label, thing in vars(module).items():
        if label.startswith("_") or getattr(thing, "__module__", None) != name:
            continue
        if inspect.isclass(thing) or inspect.isfunction(thing):
            assert ">>>" in (thing.__doc__ or ""), f"{name}.{label}"
