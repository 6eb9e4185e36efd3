from __future__ import annotations

import json
import subprocess

import pytest

from manipulatives.widgets.assemble import ModuleProblem, assemble, stylesheet
from support.node import node


def _write(folder, **modules):
    for name, text in modules.items():
        (folder / f"{name}.js").write_text(text, "utf-8")
    return folder / "entry.js"


def test_the_joined_text_does_what_the_modules_do(tmp_path):
    entry = _write(
        tmp_path,
        deep="/** Twice.\n * @param {number} n\n */\nexport function twice(n) { return 2 * n; }\n",
        side='import { twice } from "./deep.js";\n\nexport const SIX = twice(3);\n',
        entry=(
            'import { twice } from "./deep.js";\n'
            'import { SIX } from "./side.js";\n'
            "// a name that deep.js does not see\n"
            "const n = `${SIX} and ${twice(4)}`;\n"
            "export default { n };\n"
        ),
    )
    joined = tmp_path / "joined.mjs"
    joined.write_text(assemble(entry), "utf-8")
    code = f"import made from {joined.as_uri()!r}; console.log(made.n)"
    ran = subprocess.run(
        [node(), "--input-type=module", "-e", code], capture_output=True, text=True, check=True
    )
    assert ran.stdout == "6 and 8\n"


def test_a_module_that_two_others_import_is_carried_once(tmp_path):
    entry = _write(
        tmp_path,
        deep="export const DEPTH = 1;\n",
        one='import { DEPTH } from "./deep.js";\nexport const ONE = DEPTH;\n',
        two='import { DEPTH } from "./deep.js";\nexport const TWO = DEPTH + 1;\n',
        entry=(
            'import { ONE } from "./one.js";\nimport { TWO } from "./two.js";\n'
            "export default { ONE, TWO };\n"
        ),
    )
    assert assemble(entry).count("const DEPTH=1;") == 1


def test_a_table_is_carried_once_and_without_what_explains_it(tmp_path):
    (tmp_path / "table.json").write_text('{"about": "Numbers.", "two": [2, "\u00a2"]}', "utf-8")
    wanted = 'import T from "./table.json" with { type: "json" };\n'
    entry = _write(
        tmp_path,
        deep=f"{wanted}export const TWO = T.two;\n",
        entry=f'{wanted}import {{ TWO }} from "./deep.js";\nexport default [T, TWO];\n',
    )
    joined = tmp_path / "joined.mjs"
    joined.write_text(assemble(entry), "utf-8")
    assert joined.read_text("utf-8").count("\u00a2") == 1
    code = f"import made from {joined.as_uri()!r}; console.log(JSON.stringify(made))"
    ran = subprocess.run(
        [node(), "--input-type=module", "-e", code],
        capture_output=True,
        encoding="utf-8",
        check=True,
    )
    assert ran.stdout == '[{"two":[2,"\u00a2"]},[2,"\u00a2"]]\n'


def test_a_table_that_is_no_json_is_refused_by_its_name(tmp_path):
    (tmp_path / "table.json").write_text("{two: 2}", "utf-8")
    entry = _write(
        tmp_path,
        entry='import T from "./table.json" with { type: "json" };\nexport default T;\n',
    )
    with pytest.raises(ModuleProblem, match=r"^table\.json: this is not JSON"):
        assemble(entry)


def test_a_missing_table_is_named_with_the_line_that_wants_it(tmp_path):
    entry = _write(
        tmp_path,
        entry='import T from "./gone.json" with { type: "json" };\nexport default T;\n',
    )
    with pytest.raises(FileNotFoundError, match=r"entry\.js:1: there is no module \./gone\.json"):
        assemble(entry)


def test_exports_of_one_name_are_told_apart(tmp_path):
    entry = _write(
        tmp_path,
        one='export const SIZE = 1;\nexport const OTHER = "one";\n',
        two="export const SIZE = 2;\nexport function sized() { return SIZE; }\n",
        three='import { SIZE } from "./one.js";\nexport const THREE = 2 + SIZE;\n',
        four='import { SIZE, sized } from "./two.js";\nexport const FOUR = SIZE + sized();\n',
        entry=(
            'import { OTHER, SIZE } from "./one.js";\n'
            'import { FOUR } from "./four.js";\nimport { THREE } from "./three.js";\n'
            "export default [SIZE, OTHER, THREE, FOUR];\n"
        ),
    )
    joined = tmp_path / "joined.mjs"
    joined.write_text(assemble(entry), "utf-8")
    code = f"import made from {joined.as_uri()!r}; console.log(JSON.stringify(made))"
    ran = subprocess.run(
        [node(), "--input-type=module", "-e", code], capture_output=True, text=True, check=True
    )
    assert ran.stdout == '[1,"one",3,4]\n'


def test_an_import_of_what_is_not_exported_is_refused(tmp_path):
    entry = _write(
        tmp_path,
        deep="export const a = 1;\nconst b = a;\n",
        entry='import { b } from "./deep.js";\nexport default { b };\n',
    )
    with pytest.raises(ModuleProblem, match=r"^entry\.js:1: deep\.js exports no 'b'; it exports a"):
        assemble(entry)


def test_addresses_are_no_comments(tmp_path):
    entry = _write(tmp_path, entry='const a = "http: // x";\nexport default { a };\n')
    assert 'const a="http: // x";' in assemble(entry)


def test_ends_of_lines_that_mean_nothing_are_left_out(tmp_path):
    entry = _write(
        tmp_path, entry="const a = [\n  1,\n  2,\n];\nconst b = a\nexport default { b };\n"
    )
    assert "const a=[1,2,];\nconst b=a\n" in assemble(entry)


def test_spaces_around_punctuation_are_left_out_and_those_in_texts_are_not(tmp_path):
    lines = (
        'const say = { "a, b": \'c = { d }\', e: "it\'s => ; \\" , x" };',
        "const { e } = say, many = [1, 2].map((n) => n - -1);",
        'const apart = "p, q = r".split(/, | = /);',
        'const told = `${["s, t"].join(", ")} : ${many.map((n) => ({ n }).n)}`;',
        "const or = many.length === 2 ? { u: -1 } : null;",
        "export default { say, e, many, apart, told, or };",
    )
    entry = _write(tmp_path, entry="\n".join(lines))
    text = assemble(entry)
    assert "const{e}=say,many=[1,2].map((n)=>n - -1);" in text
    found = []
    for name, code in (("plain", "\n".join(lines)), ("joined", text)):
        module = tmp_path / f"{name}.mjs"
        module.write_text(code, "utf-8")
        command = f"import made from {module.as_uri()!r}; console.log(JSON.stringify(made))"
        ran = subprocess.run(
            [node(), "--input-type=module", "-e", command],
            capture_output=True,
            text=True,
            check=True,
        )
        found.append(json.loads(ran.stdout))
    plain, joined = found
    assert plain == joined
    assert plain["apart"] == ["p", "q", "r"]
    assert plain["told"] == "s, t : 2,3"


def test_type_casts_are_left_out(tmp_path):
    entry = _write(tmp_path, entry="const a = /** @type {number} */ (1);\nexport default { a };\n")
    assert "const a=(1);" in assemble(entry)


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ('import T from "./table.json";', "form of import"),
        ('import { two } from "./table.json" with { type: "json" };', "form of import"),
        ('import T from "./deep.js" with { type: "json" };', "form of import"),
        ('import T from "./table.json" with { type: "css" };', "form of import"),
        ('import * as all from "./deep.js";', "form of import"),
        ('import { a as b } from "./deep.js";', "form of import"),
        ('import deep from "./deep.js";', "form of import"),
        ('import { a } from "elsewhere";', "form of import"),
        ("export { a };", "form of import or export"),
        ("export let a = 1;", "form of import or export"),
        ('const later = () => import("./deep.js");', "dynamic import"),
        ("const here = import.meta.url;", "import.meta"),
        ("await 1;", "await outside"),
        ("const a = await 1;", "await outside"),
        ("const text = `two", "template literal over several lines"),
        ("/* a comment */ const a = 1;", "code behind a comment"),
        ("const a = 1; // a comment", "a comment behind code"),
    ],
)
def test_what_the_grammar_leaves_out_is_refused_with_file_and_line(tmp_path, line, why):
    entry = _write(
        tmp_path, deep="export const a = 1;\n", entry=f"// first\n{line}\nexport default {{}};\n"
    )
    with pytest.raises(ModuleProblem, match=rf"^entry\.js:2: .*{why}"):
        assemble(entry)


def test_a_circle_of_imports_is_named(tmp_path):
    entry = _write(
        tmp_path,
        a='import { b } from "./b.js";\nexport const a = b;\n',
        b='import { a } from "./a.js";\nexport const b = a;\n',
        entry='import { a } from "./a.js";\nexport default { a };\n',
    )
    with pytest.raises(ModuleProblem, match=r"a\.js -> b\.js -> a\.js"):
        assemble(entry)


def test_an_entry_without_a_default_export_is_refused(tmp_path):
    with pytest.raises(ModuleProblem, match="needs an `export default"):
        assemble(_write(tmp_path, entry="export const a = 1;\n"))


def test_a_default_export_belongs_to_the_entry_alone(tmp_path):
    entry = _write(
        tmp_path,
        deep="export const a = 1;\nexport default { a };\n",
        entry='import { a } from "./deep.js";\nexport default { a };\n',
    )
    with pytest.raises(ModuleProblem, match=r"deep\.js: .*entry module alone"):
        assemble(entry)


def test_a_missing_module_is_named_with_the_line_that_wants_it(tmp_path):
    entry = _write(tmp_path, entry='import { a } from "./gone.js";\nexport default { a };\n')
    with pytest.raises(FileNotFoundError, match=r"entry\.js:1: there is no module \./gone\.js"):
        assemble(entry)


def test_style_rules_lose_comments_and_indentation_only(tmp_path):
    file = tmp_path / "a.css"
    file.write_text("/* why\n   so */\n.kit {\n  color: red; /* loud */\n}\n", "utf-8")
    assert stylesheet(file) == ".kit {\ncolor: red;\n}\n"
