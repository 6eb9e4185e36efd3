"""What the cells of a notebook are: text, plain calls of the kit, and other code."""

from __future__ import annotations

import ast
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from manipulatives.notebook.calls import PACKAGE, Call, CallReader
from manipulatives.notebook.markdown import headings
from manipulatives.widgets.round.children import MANIPULATIVES

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from nbformat import NotebookNode

MAKER = "lesson_maker"
"""The function that shows the lesson maker."""

ROUND = "play"
"""The function that makes a round."""


@dataclass(frozen=True)
class TextCell:
    """A text cell."""

    cell: int
    text: str
    pictures: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    """The cell's attachments: name, then media type, then base64."""


@dataclass(frozen=True)
class CodeCell:
    """A cell with code that is not the kit's plain calls."""

    cell: int
    source: str


Item = TextCell | Call | CodeCell


def items_of(notebook: NotebookNode) -> list[Item]:
    """Return what a notebook holds: texts, plain calls of the kit, and other code.

    Example:
        >>> from manipulatives.lessons.lesson import Lesson
        >>> from manipulatives.notebook.writing import notebook_of
        >>> items_of(notebook_of(Lesson("Monday", seed=7)))
        [TextCell(cell=1, text='# Monday', pictures={})]
    """
    reader = CallReader({ROUND, *MANIPULATIVES})
    items: list[Item] = []
    for number, cell in enumerate(notebook.cells, start=1):
        if cell.cell_type == "markdown":
            items.append(TextCell(number, cell.source, cell.get("attachments", {})))
        elif cell.cell_type == "code":
            calls = reader.read(number, cell.source)
            items += [CodeCell(number, cell.source)] if calls is None else calls
    return items


def rounds_of(items: Iterable[Item]) -> Iterator[tuple[Call, str | None]]:
    """Return the calls that make a round, each with the heading that it stands under.

    A heading belongs to the first round after it.

    Example:
        >>> from manipulatives.lessons.lesson import Lesson, Round
        >>> from manipulatives.notebook.writing import notebook_of
        >>> monday = Lesson("Monday", seed=7, rounds=(Round("time.read_hour", seed=1),))
        >>> [words for _, words in rounds_of(items_of(notebook_of(monday)))]
        ["O'clock"]
    """
    found = None
    for item in items:
        match item:
            case TextCell():
                second = [words for level, words in headings(item.text) if level == 2]  # noqa: PLR2004 - "##"
                found = second[-1] if second else found
            case Call(name="play"):
                yield item, found
                found = None


def needs_kernel(items: Iterable[Item]) -> bool:
    """Whether all that a notebook shows is the lesson maker, which works only with a kernel.

    Example:
        >>> needs_kernel([CodeCell(2, "lesson_maker()")]), needs_kernel([CodeCell(2, "print(1)")])
        (True, False)
    """
    shown = [item for item in items if not isinstance(item, TextCell)]
    sources = [item.source for item in shown if isinstance(item, CodeCell)]
    return len(sources) == len(shown) > 0 and all(map(_shows_only_the_maker, sources))


def _shows_only_the_maker(source: str) -> bool:
    """Whether a cell does nothing but import and call the lesson maker."""
    try:
        statements = ast.parse(source).body
    except (SyntaxError, ValueError, RecursionError, MemoryError):
        return False
    return all(_imports_or_calls_maker(statement) for statement in statements)


def _imports_or_calls_maker(statement: ast.stmt) -> bool:
    match statement:
        case ast.ImportFrom(module=module, names=names):
            return module == PACKAGE and all(one.name == MAKER for one in names)
        case ast.Expr(value=ast.Call(func=ast.Name(id=name))):
            return name == MAKER
    return False
