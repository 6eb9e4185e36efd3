"""Joins a widget's small ES modules into the one text that a notebook host loads.

A host imports a widget's code from a `blob:` or `data:` URL, which has no folder, so relative
imports cannot work there; and the kit is installed without Node, so there is no build step.
The assembler therefore wraps every imported module in a function of its own, in the order in
which they are needed, and declares its exports before whoever imports them. The price is a small
grammar, refused loudly when broken:

* `import { a, b } from "./x.js";` on one line, relative, under the exported names;
* `import a from "./x.json" with { type: "json" };` on one line, relative: a table as it stands in
  its file, but for the `about` that explains it;
* `export` at the declaration of a function, constant or class;
* `export default …;` on one line, at the end of the entry module only;
* no export has the name of something that browsers have (eslint sees to it), for it would stand
  before that in every other module;
* template literals and comments that do not share or span lines in surprising ways, so that
  comments, indentation, many ends of lines and the spaces around punctuation can be left out of
  what every notebook carries.
"""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path

from manipulatives.data import TOKENS, read_table

HERE = Path(__file__).parent
SHARED_STYLES = (TOKENS, HERE / "shared" / "shared.css")
"""The style sheets with which every style of the kit begins: its colours, and what all share."""

_IMPORT = re.compile(r'import \{ ([\w$]+(?:, [\w$]+)*) \} from "(\.{1,2}/[\w./-]+\.js)";')
_TABLE = re.compile(r'import ([\w$]+) from "(\.{1,2}/[\w./-]+\.json)" with \{ type: "json" \};')
_EXPORT = re.compile(r"export ((?:async )?function\*? |const |class )([\w$]+)")
_STRING = re.compile(r"""(["'`])(?:\\.|(?!\1).)*\1""")
_TRAILING = re.compile(r"(?<!\S)//")
_CAST = re.compile(r"/\*\* @type .*?\*/ ?")
_SPACED = re.compile(r" ?(=>|[{},:;=]) ?")
_DEFAULT = re.compile(r"export default (.+);")
_FORBIDDEN = {
    r"\bimport\s*\(": "a dynamic import",
    r"\bimport\.meta\b": "import.meta",
    r"^await\b": "an await outside a function",
    r"^(const|let|var) .*=\s*await\b": "an await outside a function",
}


class ModuleProblem(SyntaxError):
    """A module uses something that the assembler's small grammar leaves out."""


@cache
def assemble(entry: Path) -> str:
    """Return the text of one ES module that does what `entry` and its imports do.

    Args:
        entry: the module with the `export default`.

    Raises:
        ModuleProblem: a module leaves the grammar, or modules import each other in a circle.
        FileNotFoundError: an imported module does not exist.

    Example:
        >>> text = assemble(Path(__file__).parent / "clock" / "clock.js")
        >>> text.count("export default")
        1
    """
    bundle = _Bundle()
    bundle.add(entry.resolve(), trail=())
    return bundle.text()


def stylesheet(*files: Path) -> str:
    """Return the rules of several CSS files as one text, without comments and indentation."""
    text = "\n".join(file.read_text("utf-8") for file in files)
    text = re.sub(r"/\*.*?\*/", "", text, flags=re.DOTALL)
    return "\n".join(line.strip() for line in text.splitlines() if line.strip()) + "\n"


class _Bundle:
    """The modules that were joined so far.

    What a module exports is declared at the top, where every later module finds it by its name. If
    an earlier module exports something of the same name, its exports are held in an object, and a
    module that imports them takes them from there.
    """

    def __init__(self) -> None:
        self._bodies: dict[Path, str] = {}
        self._exports: dict[Path, list[str]] = {}
        self._wanted: dict[Path, set[str]] = {}
        self._objects: dict[Path, str] = {}
        self._top: set[str] = set()

    def add(self, module: Path, trail: tuple[Path, ...]) -> None:
        """Put a module behind everything it imports."""
        if module in self._exports:
            return
        if module in trail:
            circle = " -> ".join(path.name for path in (*trail, module))
            raise ModuleProblem(
                f"{circle}: modules import each other in a circle; move what both need"
            )
        if module.suffix == ".json":
            self._exports[module] = []
            self._bodies[module] = f"const {self._object(module)}={_table(module)};\n"
            return
        body, exports, default = self._translate(module, (*trail, module))
        if not trail:
            if default is None:
                raise ModuleProblem(f"{module.name}: the entry module needs an `export default …;`")
            self._bodies[module] = f"export default (()=>{{\n{body}\nreturn {default};\n}})();\n"
            return
        if default is not None:
            raise ModuleProblem(
                f"{module.name}: `export default` belongs to the entry module alone"
            )
        self._exports[module] = exports
        self._bodies[module] = body
        if not self._top.isdisjoint(exports):
            self._object(module)
        self._top.update(exports)

    def text(self) -> str:
        """Return all that was added, with the exports that somebody imports."""
        parts = []
        for module, body in self._bodies.items():
            if module not in self._wanted:
                parts.append(body)
                continue
            exports = ",".join(
                name for name in self._exports[module] if name in self._wanted[module]
            )
            to = self._objects.get(module, f"{{{exports}}}")
            parts.append(f"const {to}=(()=>{{\n{body}\nreturn{{{exports}}};\n}})();\n")
        return "".join(parts)

    def _object(self, module: Path) -> str:
        return self._objects.setdefault(module, f"${len(self._objects)}")

    def _translate(
        self, module: Path, trail: tuple[Path, ...]
    ) -> tuple[str, list[str], str | None]:
        """Return a module's body as the inside of a function, its exports and its default."""
        exports: list[str] = []
        body: list[str] = []
        default = None
        for number, line in _lines(module):
            if default is not None:
                raise _broken(module, number, line, "code after the `export default`")
            if found := _IMPORT.fullmatch(line) or _TABLE.fullmatch(line):
                body += self._import(module, number, found, trail)
            elif found := _DEFAULT.fullmatch(line):
                default = found[1]
            elif found := _EXPORT.match(line):
                exports.append(found[2])
                body.append(line.removeprefix("export "))
            elif re.match(r"(import|export)\b", line):
                raise _broken(module, number, line, "this form of import or export")
            else:
                body.append(line)
        return _joined(body), exports, default

    def _import(
        self, module: Path, number: int, found: re.Match[str], trail: tuple[Path, ...]
    ) -> list[str]:
        """Return the lines that an import becomes: none, if all of it is found at the top."""
        source = (module.parent / found[2]).resolve()
        if not source.is_file():
            raise FileNotFoundError(f"{module.name}:{number}: there is no module {found[2]}")
        self.add(source, trail)
        if source.suffix == ".json":
            return [f"const {found[1]}={self._objects[source]};"]
        names = found[1].split(", ")
        for name in names:
            if name not in self._exports[source]:
                raise ModuleProblem(
                    f"{module.name}:{number}: {source.name} exports no {name!r}; "
                    f"it exports {', '.join(self._exports[source])}"
                )
        self._wanted.setdefault(source, set()).update(names)
        if source in self._objects:
            return [f"const {{{','.join(names)}}}={self._objects[source]};"]
        return []


def _joined(lines: list[str]) -> str:
    """Return lines as one text, without the white space that means nothing in JavaScript."""
    text = ""
    for line in map(_squeezed, lines):
        text += "\n" if text and text[-1] not in "{([," and line[0] not in "})]" else ""
        text += line
    return text


def _squeezed(line: str) -> str:
    """Return a line without spaces around punctuation, where it is plain which these are.

    Template literals hold code, and a slash may begin a regular expression: such lines are left
    as they are.
    """
    if "`" in line or "/" in _STRING.sub("", line):
        return line
    squeezed, end = "", 0
    for text in _STRING.finditer(line):
        squeezed += _SPACED.sub(r"\1", line[end : text.start()]) + text[0]
        end = text.end()
    return squeezed + _SPACED.sub(r"\1", line[end:])


def _table(file: Path) -> str:
    """Return what a JSON file holds as an expression in JavaScript."""
    try:
        return json.dumps(read_table(file), ensure_ascii=False, separators=(",", ":"))
    except ValueError as problem:
        raise ModuleProblem(f"{file.name}: this is not JSON: {problem}") from problem


def _lines(module: Path) -> list[tuple[int, str]]:
    """Return the numbered lines that matter, without comments, blank lines and indentation."""
    lines = []
    in_comment = False
    for number, raw in enumerate(module.read_text("utf-8").splitlines(), start=1):
        line = raw.strip()
        if in_comment or line.startswith("/*"):
            in_comment = "*/" not in line
            if not in_comment and not line.endswith("*/"):
                raise _broken(module, number, line, "code behind a comment on its line")
            continue
        if not line or line.startswith("//"):
            continue
        if len(re.findall(r"(?<!\\)`", line)) % 2:
            raise _broken(module, number, line, "a template literal over several lines")
        if _TRAILING.search(_STRING.sub("", line)):
            raise _broken(module, number, line, "a comment behind code")
        for pattern, what in _FORBIDDEN.items():
            if re.search(pattern, raw):
                raise _broken(module, number, line, what)
        lines.append((number, _CAST.sub("", line)))
    return lines


def _broken(module: Path, number: int, line: str, what: str) -> ModuleProblem:
    return ModuleProblem(
        f"{module.name}:{number}: the assembler does not take {what}: {line!r}; "
        "its grammar is described in DEVELOPERS.md"
    )
