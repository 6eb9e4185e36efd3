"""The page of a lesson for pupils to work through alone, as text."""

from __future__ import annotations

import base64
import zlib

import pytest
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.notebook.writing import notebook_of
from manipulatives.outputs.page import page_of, page_of_file
from manipulatives.outputs.page.saved import saved_in
from manipulatives.widgets.assemble import assemble
from manipulatives.widgets.round.children import MANIPULATIVES
from support.files import PACKAGE

MARKET = Lesson("Market morning", seed=7, rounds=(Round("time.read_hour", seed=11, tasks=3),))
SKILLS = (
    "time.read_five_minutes",
    "money.make_amount",
    "place_value.build_number",
    "shapes.draw_shape",
    "addition.facts_20",
    "addition.two_digit",
)


def test_it_says_of_itself_whom_it_is_for():
    page = page_of(notebook_of(MARKET), audience="pupils")
    assert (
        '<html lang="en-US" data-kit-session="pupils" data-kit-lesson="Market morning 7" ' in page
    )
    board = page_of(notebook_of(MARKET))
    assert board == page_of(notebook_of(MARKET), audience="board")
    assert 'data-kit-session="page"' in board


def test_it_carries_the_same_questions_as_the_board():
    pages = [page_of(notebook_of(MARKET), audience=audience) for audience in ("board", "pupils")]
    board, pupils = (
        {kind["name"]: kind["usual"] for kind in saved_in(page)["kinds"].values()} for page in pages
    )
    assert pupils["Clock"] == board["Clock"]
    # A pupil's round has no place and no answers of its own: the page saves the work.
    shared = {"manipulative", "tasks", "setup", "timer"}
    assert shared <= set(pupils["PupilRound"]) < set(board["BoardRound"])
    assert all(pupils["PupilRound"][name] == board["BoardRound"][name] for name in shared)


def test_a_notebook_that_is_run_gets_rounds_for_pupils_too(tmp_path):
    cells = ["from manipulatives import play", 'play("time.read_hour", tasks=2, seed=7)', "7"]
    notebook = new_notebook(cells=[new_code_cell(cell) for cell in cells])
    for audience, name in (("board", "BoardRound"), ("pupils", "PupilRound")):
        page = page_of(notebook, audience=audience, folder=tmp_path)
        kinds = {kind["name"]: kind["usual"] for kind in saved_in(page)["kinds"].values()}
        assert set(kinds) == {"Clock", name}
        assert len(kinds[name]["tasks"]) == 2


def test_an_answer_cannot_be_read_in_it():
    lesson = Lesson("Shapes", seed=7, rounds=(Round("shapes.draw_shape", seed=3, tasks=4),))
    assert "a shape with" not in page_of(notebook_of(lesson), audience="pupils")


def test_it_is_made_of_a_file(tmp_path):
    path = tmp_path / "market.toml"
    write_lesson(MARKET, path)
    assert 'data-kit-session="pupils"' in page_of_file(path, audience="pupils")


def test_an_audience_that_is_not_known_is_refused():
    with pytest.raises(LessonProblem, match=r"audience.*board"):
        page_of(notebook_of(MARKET), audience="parents")


def test_with_every_manipulative_it_is_less_than_400_kb():
    rounds = [f'play("{skill}", tasks=5, seed=7)' for skill in SKILLS]
    cells = [new_markdown_cell("# Market day")]
    for number, call in enumerate(rounds, start=1):
        cells += [new_markdown_cell(f"## Part {number}"), new_code_cell(call)]
    page = page_of(new_notebook(cells=cells), audience="pupils")
    kinds = {kind["name"] for kind in saved_in(page)["kinds"].values()}
    assert kinds == {*MANIPULATIVES, "PupilRound"}
    assert len(page.encode()) < 400_000


def code_of(folder, pattern):
    """The modules of a kind without their comments, about as a page has them."""
    modules = sorted((PACKAGE / folder).glob(pattern))
    assert modules
    lines = [line.strip() for module in modules for line in module.read_text("utf-8").splitlines()]
    return "\n".join(line for line in lines if not line.startswith(("*", "/*", "//")))


def test_what_is_for_pupils_alone_adds_less_than_30_kb():
    session = code_of("outputs/page/pupils", "*.js")
    # The code of widgets is packed.
    rounds = base64.b64encode(zlib.compress(code_of("widgets/round/pupil", "**/*.js").encode(), 9))
    assert len(session.encode()) + len(rounds) < 30_000
    assert "pupils-screen" not in assemble(PACKAGE / "outputs" / "page" / "session" / "page.js")
