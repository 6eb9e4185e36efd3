"""Plain calls such as `play("time.read_hour", seed=7)`: written, and read without being run.

A call takes literals only, so what a notebook made by the kit shows can be known from its text.
What a cell with any other code shows can only be known by running it.
"""

from __future__ import annotations

import ast
import json
import warnings
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

PACKAGE = "manipulatives"
WIDTH = 100
"""Characters of a line that a notebook shows without scrolling sideways."""


@dataclass(frozen=True, eq=False)
class Call:
    """One plain call of the kit, and the cell that holds it.

    Two equal calls are two things on the page, so calls are compared by identity.
    """

    cell: int
    """The number of the cell, counted from 1 with the text cells."""
    name: str
    args: tuple[Any, ...] = ()
    kwargs: Mapping[str, Any] = field(default_factory=dict)


class CallReader:
    """Reads the code cells of one notebook in order; names assigned in one are known in the next.

    Args:
        names: what may be called: "play" and the manipulatives.

    Example:
        >>> reader = CallReader({"Clock"})
        >>> reader.read(2, 'tower = Clock(time="4:35")')
        []
        >>> [call.kwargs for call in reader.read(3, "tower")]
        [{'time': '4:35'}]
        >>> reader.read(4, "tower.time") is None
        True
    """

    def __init__(self, names: Iterable[str]) -> None:
        self._names = frozenset(names)
        self._assigned: dict[str, Call] = {}

    def read(self, cell: int, source: str) -> list[Call] | None:
        """Return the calls whose widgets a cell shows, or None when it holds other code."""
        statements = _statements(source)
        if statements is None:
            return None
        shown: Call | None = None
        for statement in statements:
            shown = None
            match statement:
                case ast.ImportFrom() if self._is_own(statement):
                    pass
                case ast.Assign(targets=[ast.Name(id=name)]) if name not in self._names:
                    call = self._call(cell, statement.value)
                    if call is None:
                        return None
                    self._assigned[name] = call
                case ast.Expr(value=ast.Name(id=name)) if name in self._assigned:
                    shown = self._assigned[name]
                case ast.Expr(value=value):
                    shown = self._call(cell, value)
                    if shown is None:
                        return None
                case _:
                    return None
        # A notebook shows the last value of a cell, unless a semicolon says not to.
        return [] if shown is None or source.rstrip().endswith(";") else [shown]

    def _is_own(self, statement: ast.ImportFrom) -> bool:
        return (
            statement.module == PACKAGE
            and not statement.level
            and all(
                alias.asname is None and (alias.name == "*" or alias.name in self._names)
                for alias in statement.names
            )
        )

    def _call(self, cell: int, node: ast.expr) -> Call | None:
        match node:
            case ast.Call(func=ast.Name(id=name)) if name in self._names:
                try:
                    args = tuple(_literal(argument) for argument in node.args)
                    kwargs = {str(word.arg): _literal(word.value) for word in node.keywords}
                except ValueError:
                    return None
                if len(kwargs) < len(node.keywords) or any(not word.arg for word in node.keywords):
                    return None
                return Call(cell, name, args, kwargs)
        return None


def call_text(name: str, *args: Any, **kwargs: Any) -> str:
    """Return a call as Python text; when it is too long for a line, one argument to a line.

    Example:
        >>> call_text("play", "time.read_hour", tasks=5, seed=7)
        'play("time.read_hour", tasks=5, seed=7)'
    """
    arguments = [_literal_text(value) for value in args]
    arguments += [f"{key}={_literal_text(value)}" for key, value in kwargs.items()]
    line = f"{name}({', '.join(arguments)})"
    if len(line) <= WIDTH and "\n" not in line:
        return line
    return f"{name}(\n" + "".join(f"    {argument},\n" for argument in arguments) + ")"


def _statements(source: str) -> list[ast.stmt] | None:
    """Return the statements of a cell, or None when it is not plain Python (such as a magic)."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            return ast.parse(source).body
        # A broken or malicious cell may be nested too deeply or hold null characters.
        except (SyntaxError, ValueError, RecursionError, MemoryError):
            return None


def _literal(node: ast.expr) -> object:
    """Return the plain value of an argument; ValueError when it is anything but a literal."""
    try:
        value = ast.literal_eval(node)
    except (TypeError, SyntaxError, RecursionError, MemoryError) as error:
        raise ValueError("not a literal") from error
    if not _is_plain(value):
        raise ValueError("not plain data")
    return value


def _is_plain(value: object) -> bool:
    if isinstance(value, list | tuple):
        return all(_is_plain(part) for part in value)
    if isinstance(value, dict):
        return all(isinstance(key, str) and _is_plain(part) for key, part in value.items())
    return value is None or isinstance(value, str | int | float | bool)


def _literal_text(value: object) -> str:
    """Return a plain value as Python text, with the double quotes that people type."""
    match value:
        case str():
            return json.dumps(value, ensure_ascii=False)
        case list():
            return f"[{', '.join(map(_literal_text, value))}]"
        case tuple():
            return f"({', '.join(map(_literal_text, value))}{',' * (len(value) == 1)})"
        case dict():
            pairs = (f"{_literal_text(key)}: {_literal_text(part)}" for key, part in value.items())
            return f"{{{', '.join(pairs)}}}"
    return repr(value)
