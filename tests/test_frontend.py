"""The tests that are written in JavaScript."""

from __future__ import annotations

import subprocess

import pytest

from support.files import ROOT, files
from support.node import QUIET, node


@pytest.mark.parametrize(
    "path",
    list(files(ROOT / "tests", "*.test.mjs")),
    ids=lambda path: path.relative_to(ROOT / "tests").as_posix(),
)
def test_a_javascript_test_passes_in_node(path):
    done = subprocess.run(
        [node(), QUIET, "--test", str(path)],
        capture_output=True,
        encoding="utf-8",
        timeout=300,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
