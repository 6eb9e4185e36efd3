"""The examples in the docstrings of maths, words and lessons are true."""

from __future__ import annotations

import doctest
import importlib
import inspect
import pkgutil

import pytest

import manipulatives.lessons
import manipulatives.maths
import manipulatives.words

MODULES = [
    module.name
    for package in (manipulatives.maths, manipulatives.words, manipulatives.lessons)
    for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}.")
]
# What only its own package uses has examples where they help.
INNER = ("manipulatives.lessons.strands.", "manipulatives.lessons.why.")
OUTER = ("reading", "command")
SHOWN = [
    name
    for name in MODULES
    if name.startswith("manipulatives.lessons.")
    if not name.startswith(INNER) or name.rpartition(".")[2] in OUTER
    if name != "manipulatives.lessons.commands"
]
# A long result may be cut with dots.
FLAGS = doctest.ELLIPSIS | doctest.NORMALIZE_WHITESPACE


@pytest.mark.parametrize("name", MODULES)
def test_the_examples_of_a_module_are_true(name, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
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
