from __future__ import annotations

import copy
import re
import subprocess
from html.parser import HTMLParser

import ipywidgets
import nbclient
import nbformat
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.settings import ClassSettings
from manipulatives.notebook.writing import notebook_of
from manipulatives.outputs.page import page_of, page_of_file
from manipulatives.outputs.page.saved import SavedWidgets, saved_in, unpacked
from manipulatives.widgets.round.children import MANIPULATIVES
from support.files import ROOT

MARKET = Lesson(
    "Market clock",
    seed=7,
    rounds=(
        Round("time.read_hour", seed=11, tasks=3),
        Round("time.later", seed=12, title="After the ferry", tasks=3, options={"by": 20}),
        Round("time.read_half", seed=13, tasks=3, seconds=90),
    ),
)
IMPORTS = "from manipulatives import Clock, play"
SLIDER = "import ipywidgets\n\nipywidgets.IntSlider()"


class Elements(HTMLParser):
    """The elements of a page, with their attributes and their text."""

    def __init__(self, page):
        super().__init__()
        self.found = []
        self.text = ""
        self.feed(page)

    def handle_starttag(self, tag, attrs):
        """Keep the element."""
        self.found.append((tag, dict(attrs)))

    def handle_data(self, data):
        """Keep what a reader sees."""
        if self.lasttag not in ("script", "style"):
            self.text += data

    def all(self, tag):
        """The attributes of every element of a kind."""
        return [attributes for name, attributes in self.found if name == tag]


def saved(page):
    """The widgets that a page carries."""
    return saved_in(page)


def state(page, name):
    """All traits of one widget of a page."""
    data = saved(page)
    model = data["models"][name]
    return {**data["kinds"][model["kind"]]["usual"], **model.get("own", {})}


def views(page):
    return re.findall(r'data-kit-view="(\w+)"', page)


def by_hand(*sources):
    """A notebook of somebody else: text where it begins with a #, code otherwise."""
    cells = [
        new_markdown_cell(source) if source.startswith("#") else new_code_cell(source)
        for source in sources
    ]
    kernel = {"name": "python3", "display_name": "Python 3", "language": "python"}
    return new_notebook(cells=cells, metadata={"kernelspec": kernel})


@pytest.fixture
def no_kernel(monkeypatch):
    """Whatever would start a kernel fails."""

    def refuse(*_given, **_named):
        pytest.fail("a kernel was to be started")

    monkeypatch.setattr(nbclient.NotebookClient, "async_execute", refuse)
    monkeypatch.setattr(nbclient.NotebookClient, "start_new_kernel", refuse)
    monkeypatch.setattr(subprocess, "Popen", refuse)


@pytest.mark.usefixtures("no_kernel")
def test_a_lesson_and_its_notebook_give_the_same_page_to_the_byte(tmp_path):
    lesson = tmp_path / "market.toml"
    notebook = tmp_path / "market.ipynb"
    write_lesson(MARKET, lesson)
    nbformat.write(notebook_of(MARKET), notebook)
    assert page_of_file(lesson) == page_of_file(notebook)


@pytest.mark.usefixtures("no_kernel")
def test_a_page_made_twice_is_the_same_to_the_byte():
    assert page_of(notebook_of(MARKET)) == page_of(notebook_of(MARKET))


@pytest.mark.usefixtures("no_kernel")
def test_what_jupyter_adds_to_a_notebook_changes_nothing():
    worked_on = copy.deepcopy(notebook_of(MARKET))
    for number, cell in enumerate(worked_on.cells):
        cell.metadata["scrolled"] = True
        if cell.cell_type == "code":
            cell.execution_count = number
            cell.outputs = [nbformat.v4.new_output("stream", text="left over")]
    worked_on.metadata["language_info"] = {"name": "python", "version": "3.12.1"}
    assert page_of(worked_on) == page_of(notebook_of(MARKET))


@pytest.mark.usefixtures("no_kernel")
def test_a_notebook_written_by_hand_needs_no_kernel_either():
    page = page_of(
        by_hand("# My clocks", IMPORTS, 'tower = Clock(time="4:35")', "tower", "Clock()")
    )
    assert views(page) == ["m1", "m2"]
    assert state(page, "m1")["dial"] == {"hour": 275, "minute": 35, "half": "am"}


@pytest.mark.usefixtures("no_kernel")
def test_one_clock_shown_twice_is_one_clock():
    page = page_of(by_hand("tower = Clock()", "tower", "tower"))
    assert views(page) == ["m1", "m1"]
    assert list(saved(page)["models"]) == ["m1"]


def test_another_seed_gives_another_page():
    other = Lesson("Market clock", seed=7, rounds=(Round("time.read_hour", seed=99, tasks=3),))
    same = Lesson("Market clock", seed=7, rounds=MARKET.rounds[:1])
    assert page_of(notebook_of(other)) != page_of(notebook_of(same))


def tasks_by_title(page):
    """What each round asks, under the heading it stands under."""
    return {
        heading: state(page, name)["tasks"]
        for heading, name in re.findall(r'<h2>(.*?)</h2></div>\n<div[^>]*view="(\w+)"', page)
    }


@given(st.permutations(range(3)), st.integers(1, 3))
@settings(max_examples=10)
def test_moving_and_deleting_rounds_changes_no_other_number(order, kept):
    notebook = copy.deepcopy(notebook_of(MARKET))
    whole = tasks_by_title(page_of(notebook))
    parts = [notebook.cells[start : start + 2] for start in (2, 4, 6)]
    notebook.cells[2:] = [cell for place in order[:kept] for cell in parts[place]]
    changed = tasks_by_title(page_of(notebook))
    titles = [
        "O&#x27;clock" if "O&#x27;clock" in whole else "O'clock",
        "After the ferry",
        "Half past",
    ]
    assert list(changed) == [titles[place] for place in order[:kept]]
    assert all(changed[title] == whole[title] for title in changed)


def test_the_code_of_a_class_is_stored_once():
    page = page_of(notebook_of(MARKET))
    kinds = saved(page)["kinds"]
    assert sorted(kind["name"] for kind in kinds.values()) == ["BoardRound", "Clock"]
    assert len(saved(page)["models"]) == 6
    # A child stands right after its parent; the numbers do not depend on the machine.
    assert views(page) == ["m1", "m3", "m5"]
    assert [state(page, name)["manipulative"] for name in ("m1", "m3", "m5")] == [
        "anywidget:m2",
        "anywidget:m4",
        "anywidget:m6",
    ]


def test_for_each_widget_only_its_own_values_are_saved():
    page = page_of(by_hand('Clock(time="4:35")', 'Clock(time="4:35")', 'Clock(time="9:00")'))
    models = saved(page)["models"]
    assert "own" not in models["m2"]
    assert list(models["m3"]["own"]) == ["dial"]


def test_true_and_one_are_not_taken_for_the_same():
    states = {
        name: {"model_module": "anywidget", "state": {"_esm": "x", "loud": loud}}
        for name, loud in (("a", True), ("b", 1), ("c", float("nan")))
    }
    saved = SavedWidgets(states)
    assert [saved.add(name) for name in "abc"] == ["m1", "m2", "m3"]
    models = unpacked(saved.script())["models"]
    assert models["m2"]["own"] == {"loud": 1}
    assert models["m3"]["own"] == {"loud": None}


def test_the_page_is_small():
    assert len(page_of(notebook_of(MARKET)).encode()) < 200_000


def test_a_page_with_all_six_manipulatives_is_small_too():
    page = page_of_file(ROOT / "notebooks" / "free-play.ipynb")
    names = {kind["name"] for kind in saved_in(page)["kinds"].values()}
    assert names >= {*MANIPULATIVES}
    assert len(page.encode()) < 300_000


def test_the_page_names_no_address_that_could_be_asked():
    page = page_of(notebook_of(MARKET))
    addresses = set(re.findall(r"""\b(?:https?|wss?|ftp)://[^\s"'`)\\<]+""", page))
    assert addresses <= {"http://www.w3.org/2000/svg", "http://www.w3.org/1999/xhtml"}


def test_the_page_says_what_a_browser_needs_to_know():
    page = page_of(notebook_of(MARKET))
    elements = Elements(page)
    assert page.startswith("<!doctype html>\n")
    assert elements.all("html")[0]["lang"] == "en-US"
    assert {"charset": "utf-8"} in elements.all("meta")
    assert any(each.get("name") == "viewport" for each in elements.all("meta"))
    assert "<title>Market clock</title>" in page
    assert elements.all("noscript")
    assert elements.text.count("Market clock") == 2  # in the tab and at the top


def test_the_page_forbids_every_request():
    (policy,) = [
        each["content"]
        for each in Elements(page_of(notebook_of(MARKET))).all("meta")
        if each.get("http-equiv") == "Content-Security-Policy"
    ]
    rules = dict(rule.strip().split(" ", 1) for rule in policy.split(";"))
    assert rules["default-src"] == "'none'"
    assert rules["connect-src"] == "'none'"
    assert re.fullmatch(r"'sha256-[\w+/=]+' blob:", rules["script-src"])
    assert not re.search(r"https?:|\*|unsafe-eval", policy)


def test_the_language_is_that_of_the_vocabulary():
    uk = ClassSettings(vocabulary="uk")
    assert Elements(page_of(notebook_of(MARKET), settings=uk)).all("html")[0]["lang"] == "en-GB"
    us = Lesson("Market clock", seed=7, rounds=MARKET.rounds, vocabulary="us")
    assert Elements(page_of(notebook_of(us), settings=uk)).all("html")[0]["lang"] == "en-US"


def test_what_a_lesson_leaves_unset_comes_from_the_class(tmp_path):
    write_lesson(MARKET, tmp_path / "market.toml")
    plain = page_of_file(tmp_path / "market.toml")
    (tmp_path / "class.toml").write_text('vocabulary = "uk"\ntimer = "hidden"\n', "utf-8")
    set_up = page_of_file(tmp_path / "market.toml")
    assert state(plain, "m1")["setup"]["vocabulary"] == "us"
    assert state(plain, "m1")["setup"]["timer"] == "off"
    assert state(set_up, "m1")["setup"]["vocabulary"] == "uk"
    assert state(set_up, "m1")["setup"]["timer"] == "hidden"


def test_what_a_call_says_counts_most():
    call = 'play("time.read_hour", vocabulary="us", timer="shown", seed=1)'
    page = page_of(by_hand(call), settings=ClassSettings(vocabulary="uk", timer="hidden"))
    assert state(page, "m1")["setup"]["vocabulary"] == "us"
    assert state(page, "m1")["setup"]["timer"] == "shown"


HOSTILE = [
    "</title><script>alert(1)</script>",
    "</script><script>alert(1)</script>",
    '<img src=x onerror="alert(1)">',
    "\"><svg onload='alert(1)'>",
    "<!--<script>",
    "{{7*7}} ${7*7} \\u003cscript>",
    "&lt;b&gt; & <b>",
    "javascript:alert(1)",
]


@pytest.mark.usefixtures("no_kernel")
@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_is_never_html(text):
    hostile = Lesson(text, seed=7, rounds=(Round("time.read_hour", seed=1, title=text, tasks=2),))
    plain = Lesson("T", seed=7, rounds=(Round("time.read_hour", seed=1, title="T", tasks=2),))
    made, usual = Elements(page_of(notebook_of(hostile))), Elements(page_of(notebook_of(plain)))
    assert [tag for tag, _ in made.found] == [tag for tag, _ in usual.found]
    assert [sorted(attrs) for _, attrs in made.found] == [sorted(attrs) for _, attrs in usual.found]
    assert made.text.count(text) == 3  # the tab, the top, the round


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_cells_stay_text(text):
    made = Elements(page_of(by_hand(f"# T\n\nfirst\n\nx {text}")))
    assert [tag for tag, _ in made.found if tag in ("script", "svg", "b")] == ["script", "script"]
    assert not any(name.startswith("on") for _, attrs in made.found for name in attrs)
    assert not made.all("img")


@pytest.mark.parametrize(
    ("source", "sentence"),
    [
        ('Clock(time="25:99")', "cell 2: Clock(…) cannot be made"),
        ('Clock(colour="red")', "cell 2: Clock(…) cannot be made"),
        ("Clock(1, 2, 3)", "cell 2: Clock(…) cannot be made"),
        ('play("time.read_hours", seed=1)', "cell 2, skill: there is no skill 'time.read_hours'"),
        ('play("time.read_hour")', "cell 2: play(…) cannot be made"),
        ('play("time.read_hour", seed=1, tasks=4000)', "cell 2, tasks: 4000 is not allowed"),
        ('play("time.read_hour", seed=1, bye=3)', "cell 2"),
    ],
)
@pytest.mark.usefixtures("no_kernel")
def test_a_call_that_cannot_be_made_is_named_by_its_cell(source, sentence):
    with pytest.raises(LessonProblem, match=re.escape(sentence)) as caught:
        page_of(by_hand("# Title", source))
    assert len(str(caught.value).splitlines()) == 1


def test_making_a_page_leaves_no_widget_behind():
    alive = ipywidgets.widgets.widget._instances  # noqa: SLF001 - the public name is deprecated
    before = set(alive)
    page_of(notebook_of(MARKET))
    with pytest.raises(LessonProblem):
        page_of(by_hand("Clock()", 'Clock(time="25:99")'))
    assert set(alive) == before


def test_a_picture_that_is_not_in_the_notebook_is_left_out_and_reported():
    reported = []
    page = page_of(by_hand("# T\n\n![the ferry](ferry.png)"), report=reported.append)
    assert "the ferry" in page
    assert not Elements(page).all("img")
    assert reported == [
        "cell 1: the picture 'ferry.png' is not in the notebook itself, so the page cannot carry it"
    ]


def test_a_page_without_a_title_bears_the_name_of_its_file(tmp_path):
    nbformat.write(by_hand("Clock()"), tmp_path / "bell-tower.ipynb")
    assert "<title>bell-tower</title>" in page_of_file(tmp_path / "bell-tower.ipynb")


def test_only_the_first_title_is_taken_to_the_top():
    page = page_of(by_hand("## Hello", "# One\n\nBetween", "# Two"))
    assert re.search(r"<header[^>]*><h1>One</h1></header>", page)
    assert page.count("<h1>One</h1>") == 1
    assert page.count("<h1>Two</h1>") == 1


# From here on a kernel runs what others have written.


def test_foreign_code_is_run_after_a_report(tmp_path):
    (tmp_path / "prices.txt").write_text("plums 57", "utf-8")
    notebook = by_hand(
        "# Mixed",
        IMPORTS,
        "hour = 4",
        'Clock(time=f"{hour}:35")',
        "## Between",
        'print(open("prices.txt").read(), end="\\n\\n")\nprint("<b>&</b>")\n"last" + " value"',
        'play("time.read_hour", tasks=2, seed=11)',
        "from IPython.display import Image, Markdown, HTML, display\nimport base64\n"
        'display(Image(data=base64.b64decode("iVBORw0KGgo="), format="png"), Markdown("*tick*"))',
        'HTML("<marquee>tock</marquee>")',
        "import sys\nprint('a warning', file=sys.stderr)",
        SLIDER,
        "ipywidgets.VBox([Clock(), ipywidgets.IntSlider()])",
    )
    reported = []
    page = page_of(notebook, folder=tmp_path, report=reported.append)
    main = page[page.index("<main") : page.index("</main>")]
    order = [
        r'view="m1"',
        "<h2>Between</h2>",
        "plums 57\n\n&lt;b&gt;&amp;&lt;/b&gt;",
        "&#x27;last value&#x27;",
        r'view="m2"',
        'src="data:image/png;base64,iVBORw0KGgo="',
        "<em>tick</em>",
        "can be seen only in the notebook",
        "moves only in the notebook",
        r'view="m4"',
    ]
    places = [main.find(part) for part in order]
    assert -1 not in places
    assert places == sorted(places)
    assert "marquee" not in main
    assert "a warning" not in main
    assert state(page, "m1")["dial"] == {"hour": 275, "minute": 35, "half": "am"}
    assert state(page, "m4")["direction"] == "column"
    assert state(page, "m4")["children"][0] == "IPY_MODEL_m5"
    assert reported == [
        "it holds code of its own (first in cell 3), so it is run now",
        "cell 9: it shows HTML of its own, which the page leaves out",
        (
            "cell 11: a widget of another library needs the notebook running, "
            "so it stays still on the page"
        ),
    ]


def test_what_was_run_gives_the_same_round_as_what_was_not():
    call = 'play("time.read_hour", tasks=2, seed=11)'
    still = page_of(by_hand("# T", IMPORTS, call))
    run = page_of(by_hand("# T", IMPORTS, "1 + 1;", call))
    assert saved(run) == saved(still)


@pytest.mark.parametrize(
    ("source", "sentence"),
    [
        ("1 / 0", "cell 3: ZeroDivisionError: division by zero; mend the cell or take it out"),
        ("raise ValueError('two\\nlines')", "cell 3: ValueError: two lines; mend"),
        ("raise KeyError", "cell 3: KeyError; mend"),
        ("1 +", "cell 3: SyntaxError: invalid syntax"),
        ("input('name?')", "cell 3: StdinNotImplementedError"),
        ("import os; os._exit(3)", "cell 3: it ended the kernel; mend"),
        ("1" + " + 1" * 20_000, "cell 3: it is nested too deeply to be run; mend"),
    ],
    ids=lambda text: text[:40],
)
def test_a_failing_cell_is_named_with_its_error(source, sentence):
    with pytest.raises(LessonProblem, match=re.escape(sentence)) as caught:
        page_of(by_hand("# Title", IMPORTS, source, "2 + 2"))
    assert len(str(caught.value).splitlines()) == 1


def test_a_cell_that_never_ends_is_given_up(monkeypatch):
    monkeypatch.setattr("manipulatives.notebook.running.CELL_TIMEOUT_S", 2)
    with pytest.raises(LessonProblem, match="cell 2: it was not done after 2 seconds"):
        page_of(by_hand("1 + 1", "while True: pass"))


def test_a_kernel_that_is_not_there_is_named():
    notebook = by_hand("1 + 1")
    notebook.metadata.kernelspec = {"name": "abacus", "display_name": "Abacus"}
    with pytest.raises(LessonProblem, match="it asks for the kernel 'abacus'"):
        page_of(notebook)


def test_outputs_that_were_saved_are_not_shown_for_the_runs():
    notebook = by_hand("import random")
    notebook.cells[0].outputs = [nbformat.v4.new_output("stream", text="left over")]
    assert "left over" not in page_of(notebook)
    assert notebook.cells[0].outputs[0].text == "left over"
