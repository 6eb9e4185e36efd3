"""The examples in the documents and docstrings are true."""

from __future__ import annotations

import doctest
import importlib
import json
import re
import shlex
import shutil

import pytest

from manipulatives.cli import COMMANDS
from manipulatives.lessons.files import read_lesson
from manipulatives.lessons.records.sessions import read_session
from manipulatives.lessons.tasks.predicates import holds
from manipulatives.lessons.tasks.task import Task
from support import guides
from support.files import PACKAGE, ROOT, files
from support.pdf import pages_of

OPTIONS = doctest.NORMALIZE_WHITESPACE | doctest.ELLIPSIS


def modules() -> list[str]:
    """Every module of the kit that shows an example."""
    return [
        ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
        for path in files(PACKAGE, "*.py")
        if ">>> " in path.read_text("utf-8")
    ]


@pytest.fixture
def shelf(tmp_path, monkeypatch):
    """A folder with the ready lessons in it, where an example may also write."""
    shutil.copytree(ROOT / "notebooks", tmp_path / "notebooks")
    monkeypatch.chdir(tmp_path)


@pytest.mark.usefixtures("shelf")
@pytest.mark.parametrize("name", modules())
def test_the_examples_of_a_module_are_true(name):
    module = importlib.import_module(name)
    failed, tried = doctest.testmod(module, optionflags=OPTIONS)
    assert not failed
    if not tried:
        pytest.skip("its examples are there to read")


@pytest.mark.usefixtures("shelf")
def test_the_examples_of_the_developers_document_are_true():
    failed, tried = doctest.testfile(
        str(ROOT / "DEVELOPERS.md"), module_relative=False, optionflags=OPTIONS
    )
    assert tried
    assert not failed


FENCES = re.DOTALL | re.MULTILINE


def block(language: str, holding: str = "") -> str:
    """The one block of a language in the developers' document that a word is found in."""
    text = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    blocks = re.findall(rf"^```{language}\n(.*?)^```", text, re.DOTALL | re.MULTILINE)
    (found,) = [one for one in blocks if holding in one]
    return found


def test_the_task_in_the_developers_document_is_one():
    data = json.loads(block("json", holding='"mistakes"'))
    task = Task.from_data(data)
    assert task.to_data() == data
    assert holds(task.goal, {"answer": task.steps[-1].answer})
    assert holds(task.mistakes[0].when, {"answer": task.mistakes[0].answer})


def test_the_session_in_the_developers_document_is_one():
    session = read_session(block("json", holding='"manipulatives session"'))
    assert session.rounds[0].tasks[0].asked["answer"] == "4:30"


def test_every_folder_that_the_developers_document_names_is_there():
    text = re.sub(r"^```.*?^```", "", (ROOT / "DEVELOPERS.md").read_text("utf-8"), flags=FENCES)
    named = set(re.findall(r"`((?:lessons|maths|outputs|widgets|drawings|data)/[\w/.]*)`", text))
    own = {name for name in named if "scales" not in name and "weight" not in name}
    assert len(own) > 15
    assert {name for name in own if not (ROOT / "manipulatives" / name).exists()} == set()


def test_the_lesson_in_the_developers_document_is_one(tmp_path):
    path = tmp_path / "lesson.toml"
    path.write_text(block("toml"), "utf-8")
    lesson = read_lesson(path)
    assert [part.seed for part in lesson.rounds] == [4711]


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md"])
def test_the_links_of_a_document_exist(name):
    text = (ROOT / name).read_text("utf-8")
    links = re.findall(r"\]\(([^)#:]+)(?:#[^)]*)?\)", text)
    assert links
    assert [link for link in links if not (ROOT / link).exists()] == []


def test_the_readme_lists_the_commands_that_there_are():
    text = (ROOT / "README.md").read_text("utf-8")
    assert set(re.findall(r"^\| `manipulatives (\w+)", text, re.MULTILINE)) == set(COMMANDS)


def test_the_readme_sets_up_an_environment_in_each_of_its_two_commands():
    text = (ROOT / "README.md").read_text("utf-8")
    commands = [line for line in text.splitlines() if line.startswith("python3 -m venv")]
    assert len(commands) == 2
    for command in commands:
        parts = shlex.split(command)
        assert parts[:4] == ["python3", "-m", "venv", ".venv"]
        assert ".venv/bin/pip" in parts


def test_the_guide_to_standards_is_what_the_catalogue_says():
    """Otherwise `python tests/support/guides.py` makes it again."""
    assert guides.STANDARDS.read_text("utf-8") == guides.standards()


@pytest.mark.parametrize("form", guides.FORMS)
def test_the_printed_examples_are_what_is_printed_now(form):
    """Otherwise `python tests/support/guides.py` makes them again."""

    def words(content):
        return [[line.text for line in page.lines] for page in pages_of(content)]

    assert words((guides.EXAMPLES / f"{form}.pdf").read_bytes()) == words(guides.FORMS[form]())
