"""Rules of the repository: light imports, declared dependencies, and what no file may say."""

from __future__ import annotations

import importlib
import re
import subprocess
import sys
import tomllib
from functools import cache
from importlib.metadata import packages_distributions, requires
from pathlib import Path

import anywidget
import pytest

from manipulatives.widgets.assemble import assemble
from manipulatives.widgets.manipulative import KitWidget
from support.files import PACKAGE, ROOT, files
from support.floors import floor, python_imports
from support.node import QUIET, node

# Floors that import no notebook, no arrays and no plots, so that they load quickly.
LIGHT_FLOORS = ("data", "maths", "words", "lessons", "drawings", "planner")
HEAVY = re.compile(
    r"(jupyter\w*|ipywidgets|ipykernel|IPython|anywidget|traitlets|nb\w+|voila|numpy|matplotlib)"
)

# What the kit may ask a user to install; each for one reason.
ALLOWED = {
    "anywidget",  # the widgets
    "fpdf2",  # the printed sheet
    "ipywidgets",  # what carries them in every Jupyter host
    "jupyterlab",  # where a helper edits a lesson
    "markdown-it-py",  # a lesson's text, on the page
    "matplotlib",  # figures, and letters that the kit's font lacks
    "nbclient",  # runs a notebook with cells of others
    "nbformat",  # reads and writes notebooks
    "nh3",  # text of others is never HTML
    "pypdf",  # reads what was printed back from a sheet
    "segno",  # the QR code on a sheet
    "tomli-w",  # writes lesson files
    "uharfbuzz",  # sets and measures the text of a sheet, with kerning
    "voila",  # the served board
}
# Packages whose interface uses objects of another package: importing that other one needs no
# declaration of its own.
REEXPORTED_BY = {
    "traitlets": "ipywidgets",
    "jupyter-client": "nbclient",
    "jupyter-core": "nbformat",
    "jupyter-server": "voila",
    "tornado": "jupyterlab",
}


@cache
def python_files(folder: Path) -> tuple[Path, ...]:
    return tuple(files(folder, "*.py"))


def normal(name: str) -> str:
    """A distribution's name as package tools compare it."""
    return re.sub(r"[-_.]+", "-", name).lower()


@cache
def project() -> dict:
    return tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]


def declared(lines: list[str]) -> set[str]:
    return {normal(re.match(r"[\w.-]+", line)[0]) for line in lines}


def distributions_of(folder: Path) -> dict[str, str]:
    """The outside packages that a folder's files import, each with one file that does."""
    own = {"manipulatives", "conftest", *(part.name for part in (ROOT / "tests").iterdir())}
    known = packages_distributions()
    found = {}
    for path in python_files(folder):
        for name in python_imports(path):
            top = name.split(".")[0]
            if top not in sys.stdlib_module_names and top not in own:
                for distribution in known.get(top, [top]):
                    found[normal(distribution)] = str(path.relative_to(ROOT))
    return found


def python(code: str) -> str:
    """Run code in a Python of its own and return what it prints."""
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, cwd=ROOT, check=False
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


@pytest.mark.parametrize(
    "path",
    [path for name in LIGHT_FLOORS for path in files(PACKAGE, "*.py") if floor(path) == name],
    ids=lambda path: str(path.relative_to(PACKAGE)),
)
def test_the_light_floors_import_no_notebook_and_no_arrays(path):
    heavy = {name for name in python_imports(path) if HEAVY.fullmatch(name.split(".")[0])}
    assert not heavy


def test_mathematics_needs_only_the_standard_library():
    assert distributions_of(PACKAGE / "maths") == {}


def test_the_light_floors_load_nothing_heavy_indirectly():
    names = [
        ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
        for path in python_files(PACKAGE)
        if floor(path) in LIGHT_FLOORS
    ]
    assert names
    # An empty package in place of the real one, whose __init__ imports the widgets.
    loaded = python(
        "import importlib, sys, types\n"
        "bare = types.ModuleType('manipulatives')\n"
        f"bare.__path__ = [{str(PACKAGE)!r}]\n"
        "sys.modules['manipulatives'] = bare\n"
        f"for name in {names!r}: importlib.import_module(name)\n"
        "print(*{name.split('.')[0] for name in sys.modules})"
    )
    assert [name for name in loaded.split() if HEAVY.fullmatch(name)] == []


def test_importing_the_kit_loads_neither_matplotlib_nor_pandas():
    loaded = python("import sys; from manipulatives import *; print(*sys.modules)").split()
    assert "anywidget" in loaded
    assert "manipulatives" in loaded
    assert not {"matplotlib", "pandas"} & set(loaded)


def test_only_the_sheet_imports_matplotlib():
    users = [
        path.relative_to(PACKAGE).as_posix()
        for path in python_files(PACKAGE)
        if any(
            name.split(".")[0] in ("matplotlib", "mpl_toolkits") for name in python_imports(path)
        )
    ]
    assert [path for path in users if not path.startswith("outputs/sheet")] == []


def test_the_declared_dependencies_are_the_allowed_ones():
    assert declared(project()["dependencies"]) == ALLOWED


@pytest.mark.parametrize("reexported", REEXPORTED_BY)
def test_an_undeclared_import_is_part_of_a_declared_package(reexported):
    by = REEXPORTED_BY[reexported]
    assert by in ALLOWED
    assert reexported in declared(requires(by))
    assert reexported in distributions_of(PACKAGE)


def test_everything_that_the_kit_imports_is_declared():
    used = distributions_of(PACKAGE)
    assert "anywidget" in used
    missing = {
        name: path for name, path in used.items() if name not in ALLOWED | set(REEXPORTED_BY)
    }
    assert missing == {}


def test_everything_that_the_tests_import_is_declared():
    extras = project()["optional-dependencies"]
    known = ALLOWED | set(REEXPORTED_BY) | declared(extras["test"]) | declared(extras["benchmark"])
    used = distributions_of(ROOT / "tests")
    assert "pytest" in used
    assert {name: path for name, path in used.items() if name not in known} == {}


def text_files() -> list[Path]:
    kinds = {".ttf", ".woff2", ".png", ".jpg", ".pdf"}
    return [path for path in files() if path.suffix not in kinds]


# Written in pieces, because this file is checked too.
HOSTS = [
    f"{name}.{top}"
    for name, top in (
        ("pypi", "org"),
        ("pythonhosted", "org"),
        ("npmjs", "org"),
        ("npmjs", "com"),
        ("yarnpkg", "com"),
        ("deb.debian", "org"),
        ("anaconda", "org"),
        ("jsdelivr", "net"),
        ("unpkg", "com"),
        ("cloudflare", "com"),
        ("esm", "sh"),
        ("googleapis", "com"),
        ("gstatic", "com"),
    )
]
MACHINE = re.compile(
    r"(?<![\w.:/<-])/(?:home|root|Users|work|tmp|mnt|opt|usr(?!/bin/env\b))/\w|\b[A-Z]:\\\w"
)


def test_the_check_for_machine_paths_knows_one():
    assert MACHINE.search("see /" + "home/ada/kit")
    assert MACHINE.search("C:" + "\\Users")
    assert not MACHINE.search("#!/usr/bin/env bash")


@pytest.mark.parametrize("path", text_files(), ids=lambda path: str(path.relative_to(ROOT)))
def test_no_file_names_a_registry_or_a_place_on_one_machine(path):
    text = path.read_text("utf-8")
    assert [host for host in HOSTS if host in text.lower()] == []
    found = MACHINE.search(text)
    assert found is None, text[max(0, found.start() - 40) : found.end() + 40]


def modules() -> list[Path]:
    return list(files(PACKAGE / "widgets", "*.js"))


def entries() -> list[Path]:
    """The modules that a host loads; a page's own code may begin elsewhere than in widgets/."""
    return [path for path in files(PACKAGE, "*.js") if "export default" in path.read_text("utf-8")]


def reached(path: Path, seen: set[Path]) -> set[Path]:
    if path not in seen:
        seen.add(path)
        for source in re.findall(
            r'^import .* from "(.*)";$', path.read_text("utf-8"), re.MULTILINE
        ):
            reached((path.parent / source).resolve(), seen)
    return seen


@pytest.mark.parametrize("entry", entries(), ids=lambda path: path.stem)
def test_an_entry_and_its_imports_follow_the_small_grammar(entry, tmp_path):
    whole = tmp_path / "whole.mjs"
    whole.write_text(assemble(entry), "utf-8")
    done = subprocess.run(
        [node(), QUIET, "--check", str(whole)], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr


def test_files_that_scripts_speak_of_are_there():
    named = re.compile(r"\b(?:maths|words|lessons|drawings|data)/[\w/]+\.\w+")
    spoken = {name for path in modules() for name in named.findall(path.read_text("utf-8"))}
    assert "maths/number/words.py" in spoken
    assert {name for name in spoken if not (PACKAGE / name).is_file()} == set()


def test_every_module_of_the_widgets_is_used_by_an_entry():
    used = set()
    for path in files(PACKAGE, "*.js"):
        if path in entries() or PACKAGE / "widgets" not in path.parents:
            reached(path, used)
    assert [path.name for path in modules() if path not in used] == []


def kit_widgets() -> list[type[KitWidget]]:
    for path in python_files(PACKAGE / "widgets"):
        importlib.import_module(".".join(path.relative_to(ROOT).with_suffix("").parts))
    found, waiting = [], [KitWidget]
    while waiting:
        made = waiting.pop().__subclasses__()
        found += made
        waiting += made
    return [widget for widget in found if widget.__module__.startswith("manipulatives.")]


def test_every_trait_has_a_help_text():
    hosts = set(anywidget.AnyWidget.class_traits())
    widgets = kit_widgets()
    assert "Clock" in {widget.__name__ for widget in widgets}
    silent = [
        f"{widget.__name__}.{name}"
        for widget in widgets
        for name, trait in widget.class_traits(sync=True).items()
        if name not in hosts and not name.startswith("_") and not trait.help
    ]
    assert silent == []


@pytest.mark.parametrize(
    "path", list(files(ROOT / "notebooks", "*.ipynb")), ids=lambda path: path.stem
)
def test_a_notebook_on_the_shelf_has_no_widget_state(path):
    assert "application/vnd.jupyter.widget-state+json" not in path.read_text("utf-8")


TOKENS = PACKAGE / "data" / "tokens.css"


def style_sheets() -> list[Path]:
    return [path for path in files(PACKAGE, "*.css") if path != TOKENS]


def plain_css(path: Path) -> str:
    return re.sub(r"/\*.*?\*/", "", path.read_text("utf-8"), flags=re.DOTALL)


@pytest.mark.parametrize(
    "path",
    [path for path in style_sheets() if PACKAGE / "widgets" in path.parents],
    ids=lambda path: path.stem,
)
def test_a_widgets_rules_reach_nothing_outside_its_root(path):
    folder = path.relative_to(PACKAGE / "widgets").parts[0]
    root = ".kit" if folder == "shared" else f".kit.kit-{folder}"
    before_braces = re.findall(r"([^{};]+)\{", plain_css(path))
    selectors = [
        selector.strip()
        for text in before_braces
        if not text.strip().startswith("@")
        for selector in re.split(r",(?![^(]*\))", text)
    ]
    assert selectors
    steps_of_movement = re.compile(r"from|to|[\d.]+%")
    # What stands before the root may only say what kind of page is around it.
    below_root = re.compile(r"(?:\S*\[data-kit-\S* )?" + re.escape(root) + r"(?![\w-])")
    outside = [
        selector
        for selector in selectors
        if not below_root.match(selector) and not steps_of_movement.fullmatch(selector)
    ]
    assert outside == []


@pytest.mark.parametrize("path", style_sheets(), ids=lambda path: path.stem)
def test_colours_come_from_the_tokens_and_nothing_from_the_network(path):
    text = plain_css(path)
    # Outside .kit, where the tokens are not known, a rule may repeat one word for word.
    for name, value in re.findall(r"(--[\w-]+):\s*([^;]+);", plain_css(TOKENS)):
        text = text.replace(f"var({name}, {value})", "")
    assert re.findall(r"#[0-9a-fA-F]{3,8}\b|\b(?:rgba?|hsla?|lab|lch|oklch)\(", text) == []
    assert re.findall(r"(?:url|@import)\W*(?:https?:)?//", text) == []


@pytest.mark.parametrize("path", style_sheets(), ids=lambda path: path.stem)
def test_the_one_weight_of_the_font_is_the_only_one(path):
    weights = re.findall(r"font-weight:\s*([^;]+);", plain_css(path))
    assert set(weights) <= {"400", "normal", "inherit"}
