"""The floors of the package, and which floors each may use, by imports or by reading files."""

from __future__ import annotations

import ast
import importlib
import re
from collections.abc import Iterator
from pathlib import Path

from support.files import PACKAGE, ROOT

# From the ground up: each floor may use itself and the floors before it.
FLOORS = (
    "data",
    "maths",
    "words",
    "lessons",
    "drawings",
    "planner",
    "widgets",
    "notebook",
    "outputs",
    "shelf",
    "maker",
    "serve",
    "commands",
)
# Floors that a floor must not use although they are below it.
APART = {
    "drawings": {"lessons"},
    "planner": {"drawings"},
    # Nothing but the command line may use the planner yet.
    **{name: {"planner"} for name in FLOORS[FLOORS.index("planner") + 1 :]},
}
MAY_USE = {
    **{name: {*FLOORS[:at]} - APART.get(name, set()) for at, name in enumerate(FLOORS)},
    # The public names come from wherever a user would look for them.
    "__init__": {*FLOORS[: FLOORS.index("serve")]},
    "cli": {*FLOORS, "__init__"},
    "__main__": {"cli"},
}
# What of the widgets the JavaScript of others may use: never the inside of one of them.
SHARED = "widgets/shared"


def floor(path: Path) -> str:
    """Return the floor of a file: maths, lessons, …, or the name of a file at the top."""
    first = path.relative_to(PACKAGE).parts[0]
    return first.removesuffix(".py")


def floor_of_import(name: str) -> str | None:
    """Return the floor that a dotted name leads to; None when it is not of the kit."""
    first, *rest = name.split(".")
    if first != "manipulatives":
        return None
    return rest[0] if rest and rest[0] in MAY_USE else "__init__"


def python_imports(path: Path) -> set[str]:
    """Return every module that a file imports anywhere in it, as absolute dotted names."""
    package = path.relative_to(ROOT).with_suffix("").parts[:-1]
    found = set()
    for part in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(part, ast.Import):
            found.update(alias.name for alias in part.names)
        elif isinstance(part, ast.ImportFrom):
            base = ".".join(package[: len(package) - part.level + 1]) if part.level else ""
            module = ".".join(name for name in (base, part.module) if name)
            found.update(f"{module}.{alias.name}" for alias in part.names)
        elif isinstance(part, ast.Call) and part.args:
            called = getattr(part.func, "attr", getattr(part.func, "id", None))
            first = part.args[0]
            if called in ("import_module", "__import__") and isinstance(first, ast.Constant):
                found.add(first.value)
    return found


def javascript_imports(path: Path) -> list[Path]:
    """Return the files that a module imports: other modules, and tables of data."""
    sources = re.findall(r'^import [^;]*? from "([^"]+)"', path.read_text("utf-8"), re.MULTILINE)
    return [(path.parent / source).resolve() for source in sources]


def part_of_widgets(path: Path) -> str | None:
    """Return the widget that a module is of, "shared" among them; None outside the widgets."""
    parts = path.relative_to(PACKAGE).parts
    return parts[1] if parts[0] == "widgets" and len(parts) > 2 else None


def files_named(path: Path) -> Iterator[Path]:
    """Yield the files and folders of the kit that a Python module names.

    Every expression that joins paths is evaluated with the names of the module, such as
    `HERE / "pages" / "shelf.css"`; what depends on a variable of a function is passed over.
    """
    module = importlib.import_module(
        ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
    )
    for part in ast.walk(ast.parse(path.read_text("utf-8"))):
        joins = isinstance(part, ast.BinOp) and isinstance(part.op, ast.Div)
        named = isinstance(part, ast.Call) and getattr(part.func, "attr", "") == "with_name"
        if not joins and not named:
            continue
        calls = [each for each in ast.walk(part) if isinstance(each, ast.Call)]
        if any(not _only_names_a_path(call) for call in calls):
            continue
        expression = compile(ast.Expression(part), str(path), "eval")
        try:
            value = eval(expression, vars(module))  # noqa: S307 - an expression of the kit's own
        except NameError:
            continue
        if isinstance(value, Path) and value.is_relative_to(PACKAGE):
            yield value


def _only_names_a_path(call: ast.Call) -> bool:
    called = call.func
    name = called.attr if isinstance(called, ast.Attribute) else getattr(called, "id", "")
    return name in {"Path", "resolve", "with_name", "with_suffix", "files"}
