"""Joins a widget's small ES modules into the one text that a notebook host loads.

A host imports a widget's code from a `blob:` or `data:` URL, which has no folder, so relative
imports cannot work there; and the kit is installed without Node, so there is no build step.
The assembler therefore wraps every imported module in a function of its own, in the order in
which they are needed. The price is a small grammar, refused loudly when broken:

* `import { a, b } from "./x.js";` on one line, relative, under the exported names;
* `import a from "./x.json" with { type: "json" };` on one line, relative: a table as it stands in
  its file, but for the `about` that explains it;
* `export` at the declaration of a function, constant or class;
* `export default …;` on one line, at the end of the entry module only;
* template literals and comments that do not share or span lines in surprising ways, so that
  comments and indentation can be left out of what every notebook has to carry.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from functools import cache
from pathlib import Path

from manipulatives.data import TOKENS, read_table

HERE = Path(__file__).parent
SHARED_STYLES = (TOKENS, HERE / "shared" / "shared.css")
"""The style sheets with which every style of the kit begins: its colours, and what all share."""

_IMPORT = re.compile(r'import \{ ([\w$]+(?:, [\w$]+)*) \} from "(\.{1,2}/[\w./-]+\.js)";')
_TABLE = re.compile(r'import ([\w$]+) from "(\.{1,2}/[\w./-]+\.json)" with \{ type: "json" \};')
_EXPORT = re.compile(r"export ((?:async )?function\*? |const |class )([\w$]+)")
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
    names: dict[Path, str] = {}
    parts: list[str] = []
    _add(entry.resolve(), names, parts, trail=())
    return "".join(parts)


def stylesheet(*files: Path) -> str:
    """Return the rules of several CSS files as one text, without comments and indentation."""
    text = "\n".join(file.read_text("utf-8") for file in files)
    text = re.sub(r"/\*.*?\*/", "", text, flags=re.DOTALL)
    return "\n".join(line.strip() for line in text.splitlines() if line.strip()) + "\n"


def _add(module: Path, names: dict[Path, str], parts: list[str], trail: tuple[Path, ...]) -> str:
    """Put `module` behind everything it imports; return the name that holds its exports."""
    if module in names:
        return names[module]
    if module in trail:
        circle = " -> ".join(path.name for path in (*trail, module))
        raise ModuleProblem(f"{circle}: modules import each other in a circle; move what both need")

    def bring(source: Path) -> str:
        return _add(source, names, parts, (*trail, module))

    if module.suffix == ".json":
        names[module] = f"${len(names)}"
        parts.append(f"const {names[module]} = {_table(module)};\n")
        return names[module]
    body, exports, default = _translate(module, bring)
    if not trail:
        if default is None:
            raise ModuleProblem(f"{module.name}: the entry module needs an `export default …;`")
        parts.append(f"export default (() => {{\n{body}\nreturn {default};\n}})();\n")
        return ""
    if default is not None:
        raise ModuleProblem(f"{module.name}: `export default` belongs to the entry module alone")
    names[module] = f"${len(names)}"
    inside = f"{body}\nreturn {{ {', '.join(exports)} }};"
    parts.append(f"const {names[module]} = (() => {{\n{inside}\n}})();\n")
    return names[module]


def _translate(module: Path, bring: Callable[[Path], str]) -> tuple[str, list[str], str | None]:
    """Return a module's body as the inside of a function, its exports and its default export."""
    exports: list[str] = []
    body: list[str] = []
    default = None
    for number, line in _lines(module):
        if default is not None:
            raise _broken(module, number, line, "code after the `export default`")
        if found := _IMPORT.fullmatch(line) or _TABLE.fullmatch(line):
            source = (module.parent / found[2]).resolve()
            if not source.is_file():
                raise FileNotFoundError(f"{module.name}:{number}: there is no module {found[2]}")
            names = found[1] if source.suffix == ".json" else f"{{ {found[1]} }}"
            body.append(f"const {names} = {bring(source)};")
        elif found := _DEFAULT.fullmatch(line):
            default = found[1]
        elif found := _EXPORT.match(line):
            exports.append(found[2])
            body.append(line.removeprefix("export "))
        elif re.match(r"(import|export)\b", line):
            raise _broken(module, number, line, "this form of import or export")
        else:
            body.append(line)
    return "\n".join(body), exports, default


def _table(file: Path) -> str:
    """Return what a JSON file holds as an expression in JavaScript."""
    try:
        return json.dumps(read_table(file), ensure_ascii=False, separators=(",", ":"))
    except ValueError as problem:
        raise ModuleProblem(f"{file.name}: this is not JSON: {problem}") from problem


def _lines(module: Path) -> list[tuple[int, str]]:
    """Return the numbered lines that matter, without comments, blank lines and indentation."""
    kept = []
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
        for pattern, what in _FORBIDDEN.items():
            if re.search(pattern, raw):
                raise _broken(module, number, line, what)
        kept.append((number, line))
    return kept


def _broken(module: Path, number: int, line: str, what: str) -> ModuleProblem:
    return ModuleProblem(
        f"{module.name}:{number}: the assembler does not take {what}: {line!r}; "
        "its grammar is described in DEVELOPERS.md"
    )
