"""The round as Python sees it: the call that makes one, its traits, its results."""

from __future__ import annotations

import re
import sys
from dataclasses import replace

import pytest
import traitlets

from manipulatives import widgets
from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.lesson import Lesson
from manipulatives.lessons.lesson import Round as Planned
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.settings import ClassSettings, settled
from manipulatives.lessons.tasks.make import GENERATORS, make_tasks
from manipulatives.lessons.tasks.playing import is_solved
from manipulatives.lessons.tasks.task import Task
from manipulatives.outputs.page.saved import states_of, with_parts
from manipulatives.widgets.assemble import stylesheet
from manipulatives.widgets.clock.clock import Clock
from manipulatives.widgets.round import BoardRound, PupilRound, children, play
from manipulatives.widgets.round.board.own_numbers import answer
from manipulatives.widgets.round.on_page import rounds_on_page
from support.files import PACKAGE

ROUND = PACKAGE / "widgets" / "round"
ANSWER = {"task": 0, "given": "4:00", "tries": 1, "right": True, "rule": None}


@pytest.fixture(autouse=True)
def _folder(tmp_path, monkeypatch):
    """Class settings come from the working folder; let it have none."""
    monkeypatch.chdir(tmp_path)


def three(**setting):
    return play("time.read_five_minutes", tasks=3, seed=90213, **setting)


def test_a_round_has_the_tasks_that_its_seed_makes():
    made = make_tasks("time.read_five_minutes", seed=90213, count=3)
    assert three().tasks == [task.to_data(numbers=False) for task in made]
    assert three().tasks == three().tasks
    assert three().tasks != play("time.read_five_minutes", tasks=3, seed=90214).tasks


@pytest.mark.parametrize("skill", SKILLS)
def test_what_is_left_out_is_what_is_usual_for_the_skill(skill):
    made = play(skill, seed=1)
    [usual] = settled(Lesson("Monday", seed=1, rounds=(Planned(skill, 1),)), ClassSettings()).rounds
    assert len(made.tasks) == usual.tasks
    assert made.setup["seconds"] == usual.seconds
    assert made.setup["title"] == usual.title
    assert made.setup["timer"] == "off"
    assert made.setup["together"] == SKILLS[skill].together
    assert made.setup["wipe"] is None
    assert made.setup["typed"] == (GENERATORS[skill].read is not None)


def test_what_is_given_holds():
    made = three(seconds=45, title="Ferry times", vocabulary="uk", timer="hidden", answer="choice")
    setup = made.setup
    assert (setup["seconds"], setup["title"], setup["timer"]) == (45, "Ferry times", "hidden")
    assert setup["vocabulary"] == made.manipulative.vocabulary == "uk"
    assert [task["ask"]["by"] for task in made.tasks] == ["choice"] * 3


def test_a_round_says_which_it_is():
    setup = three().setup
    assert (setup["skill"], setup["seed"]) == ("time.read_five_minutes", 90213)


def test_the_count_aloud_is_any_number_to_a_hundred_and_the_calls_own_before_the_class(tmp_path):
    assert three(count_aloud=7).setup["wipe"] == {"by": 7}
    (tmp_path / "class.toml").write_text("count_aloud = 25", "utf-8")
    assert three().setup["wipe"] == {"by": 25}
    assert three(count_aloud=0).setup["wipe"] is None
    assert three(count_aloud=100).setup["wipe"] == {"by": 100}


def test_class_settings_hold_where_the_call_says_nothing(tmp_path):
    (tmp_path / "class.toml").write_text('vocabulary = "uk"\ntimer = "shown"\n', "utf-8")
    assert (three().setup["vocabulary"], three().setup["timer"]) == ("uk", "shown")
    assert three(vocabulary="us", timer="off").setup["vocabulary"] == "us"
    assert three(vocabulary="us", timer="off").setup["timer"] == "off"


@pytest.mark.parametrize(
    ("call", "said"),
    [
        ({"skill": "time.read_ours", "seed": 1}, "time.read_hour"),
        ({"skill": "time.read_hour", "seed": -1}, "999999999"),
        ({"skill": "time.read_hour", "seed": 1, "tasks": 0}, "1 to 40"),
        ({"skill": "time.read_hour", "seed": 1, "tasks": 13}, "12"),
        ({"skill": "time.read_hour", "seed": 1, "seconds": 5}, "10 to 3600"),
        ({"skill": "time.read_hour", "seed": 1, "timer": "loud"}, '"hidden"'),
        ({"skill": "time.read_hour", "seed": 1, "timer": ""}, '"hidden"'),
        ({"skill": "time.read_hour", "seed": 1, "vocabulary": "fr"}, '"uk"'),
        ({"skill": "time.read_hour", "seed": 1, "count_aloud": 101}, "0 to 100"),
        ({"skill": "time.read_hour", "seed": 1, "count_aloud": True}, "0 to 100"),
        ({"skill": "time.read_hour", "seed": 1, "answers": "choice"}, "answer"),
        ({"skill": "time.read_hour", "seed": 1, "answer": "song"}, '"keypad"'),
    ],
)
def test_what_cannot_be_is_said_with_what_can(call, said):
    with pytest.raises(LessonProblem, match=said):
        play(**call)


def test_the_manipulative_begins_as_the_first_task_does_without_its_switches():
    made = three()
    assert isinstance(made.manipulative, Clock)
    assert made.manipulative.dial == made.tasks[0]["start"]["dial"]
    assert made.manipulative.panel is False
    assert made.manipulative.movable is False


@pytest.mark.parametrize("skill", SKILLS)
def test_every_trait_that_a_step_changes_has_a_value_to_go_back_to(skill):
    made = play(skill, seed=3)
    changed = {
        name
        for own in made.tasks
        for task in (own, *own.get("twins", ()))
        for table in (task["start"], *(step["show"] for step in task["steps"]))
        for name in table
    }
    assert changed <= set(made.setup["base"])
    # Its buttons make room where the round shows the steps.
    assert made.setup["base"].get("buttons", True) is True
    # Each is a trait, and each value one that it takes.
    type(made.manipulative)(**made.setup["base"])


def test_the_key_tells_apart_what_asks_differently():
    keys = {
        made.setup["key"]
        for made in (
            three(),
            three(vocabulary="uk"),
            three(answer="choice"),
            play("time.read_five_minutes", tasks=4, seed=90213),
            play("time.read_five_minutes", tasks=3, seed=90214),
            play("time.read_quarter", tasks=3, seed=90213),
        )
    }
    assert len(keys) == 6
    assert three(title="Another title", seconds=50).setup["key"] in keys


def test_results_say_what_the_answers_amount_to():
    made = three()
    made.answers = [
        {"task": 0, "given": "2:00", "tries": 1, "right": True, "rule": None},
        {"task": 1, "given": "9:25", "tries": 3, "right": True, "rule": "next_hour"},
        {"task": 2, "given": "8:01", "tries": 2, "right": False, "rule": "next_hour"},
    ]
    assert made.results == {
        "tasks": 3,
        "answered": 3,
        "right": 2,
        "at_once": 1,
        "tries": 6,
        "rules": {"next_hour": 2},
    }
    assert three().results["answered"] == 0


@pytest.mark.parametrize(
    ("trait", "value", "said"),
    [
        ("tasks", [{"skill": "time.read_hour"}], "task 1"),
        ("tasks", [7], "task 1"),
        ("setup", {"timer": "loud"}, "timer"),
        ("setup", {"seconds": 1.5}, "seconds"),
        ("setup", {"tempo": 1}, "tempo"),
        ("setup", {"title": 7}, "title"),
        ("setup", {"seed": -1}, "seed"),
        ("setup", {"together": 5}, "together"),
        ("setup", {"together": 0}, "together"),
        ("setup", {"typed": 1}, "typed"),
        ("setup", {"wipe": {"by": 0}}, "wipe"),
        ("setup", {"wipe": {"by": 5, "to": 50}}, "wipe"),
        ("setup", {"wipe": 5}, "wipe"),
        ("place", {"task": 3, "step": 0, "phase": "ask"}, "task"),
        ("place", {"task": 0, "step": 1, "phase": "ask"}, "step"),
        ("place", {"task": 0, "step": 0, "phase": "show"}, "step"),
        ("place", {"task": 0, "step": 9, "phase": "show"}, "step"),
        ("place", {"task": 0, "step": 0, "phase": "wipe"}, "phase"),
        ("place", {"task": True, "step": 0, "phase": "ask"}, "task"),
        ("place", {"task": 0}, "missing"),
        ("timer", {"mode": "shown"}, "missing"),
        (
            "timer",
            {"mode": "shown", "allowed": 9, "used": -1, "since": None, "held": False},
            "used",
        ),
        (
            "timer",
            {"mode": "shown", "allowed": 9, "used": 0, "since": True, "held": False},
            "since",
        ),
        ("answers", [{**ANSWER, "task": 3}], "task"),
        ("answers", [ANSWER, ANSWER], "task"),
        ("answers", [{**ANSWER, "tries": 0}], "tries"),
        ("answers", [{**ANSWER, "right": 1}], "right"),
        ("answers", [{**ANSWER, "rule": 7}], "rule"),
        ("answers", [{**ANSWER, "code": "K7"}], "code"),
    ],
)
def test_a_wrong_value_is_refused_and_leaves_the_round_as_it_was(trait, value, said):
    made = three()
    before = getattr(made, trait)
    with pytest.raises(traitlets.TraitError, match=said):
        setattr(made, trait, value)
    assert getattr(made, trait) == before
    with pytest.raises(traitlets.TraitError):
        BoardRound(**{"tasks": made.tasks, trait: value})


def test_every_trait_says_what_it_is():
    own = ("manipulative", "tasks", "setup", "place", "timer", "answers")
    assert set(own) <= set(BoardRound.class_traits(sync=True))
    assert all(len(BoardRound.class_traits()[name].help) > 30 for name in own)


def test_only_a_manipulative_can_be_asked_with():
    with pytest.raises(traitlets.TraitError, match="such as a Clock"):
        BoardRound(manipulative=three())
    assert BoardRound().manipulative is None


def test_tasks_of_two_manipulatives_are_two_rounds():
    tasks = [three().tasks[0], {**three().tasks[1], "manipulative": "Abacus"}]
    with pytest.raises(traitlets.TraitError, match="a round has one manipulative"):
        BoardRound(tasks=tasks)


def test_tasks_may_be_given_as_tasks():
    made = make_tasks("time.later", seed=5, count=2)
    assert BoardRound(tasks=made).tasks == [task.to_data(numbers=False) for task in made]


def test_where_the_answer_is_shown_all_steps_are():
    made = three()
    made.place = {"task": 1, "step": 0, "phase": "check"}
    assert made.place["step"] == len(made.tasks[1]["steps"])


def test_a_round_stands_in_its_count_only_where_it_counts():
    made = three(count_aloud=5)
    made.place = {"task": 2, "step": 20, "phase": "wipe"}
    assert made.place["step"] == 20
    with pytest.raises(traitlets.TraitError, match="step"):
        made.place = {"task": 2, "step": 21, "phase": "wipe"}
    assert made.place["step"] == 20


def test_other_tasks_begin_at_their_beginning():
    made = three()
    made.place = {"task": 2, "step": 1, "phase": "show"}
    made.answers = [{**ANSWER, "task": 2}]
    made.tasks = made.tasks[:1]
    assert made.place == {"task": 0, "step": 0, "phase": "ask"}
    assert made.answers == []


def test_a_round_can_be_made_where_it_was_left():
    left = {"task": 1, "step": 2, "phase": "show"}
    assert BoardRound(tasks=three().tasks, place=left, answers=[ANSWER]).place == left


class Line:
    """What a round says to the browser, instead of a browser."""

    def __init__(self, made, monkeypatch):
        self.said = []
        monkeypatch.setattr(made, "send", self.said.append)
        self._made = made

    def typed(self, **message):
        """Send what the browser sends, and return what it is answered."""
        self.send({"kind": "typed", "id": 1, **message})
        return self.said.pop()

    def send(self, message):
        """Send anything at all."""
        self._made._handle_custom_msg(message, [])  # noqa: SLF001 - as the kernel does it


def test_numbers_that_somebody_types_come_back_as_a_task(monkeypatch):
    line = Line(three(), monkeypatch)
    found = line.typed(text=" 4:35 ", id=7)
    assert (found["kind"], found["id"]) == ("found", 7)
    task = Task.from_data(found["task"])
    assert (task.answer, task.manipulative) == ("4:35", "Clock")
    assert is_solved(task, {"answer": "4:35"})


def test_they_are_asked_as_the_round_asks(monkeypatch):
    line = Line(three(vocabulary="uk", answer="choice"), monkeypatch)
    task = line.typed(text="4:35")["task"]
    assert task["spoken"] == "twenty-five to five"
    assert task["ask"]["by"] == "choice"


@pytest.mark.parametrize("text", ["4:61", "58 + 37", "", "   ", None, 7, ["4:35"], "4" * 5000])
def test_what_cannot_be_asked_is_said_in_a_sentence(monkeypatch, text):
    found = Line(three(), monkeypatch).typed(text=text)
    assert "task" not in found
    assert found["problem"].endswith(".")
    assert len(found["problem"]) < 400


def test_a_task_of_another_manipulative_belongs_to_another_round(monkeypatch):
    [other] = make_tasks("time.read_hour", seed=1, count=1)
    made = replace(other, manipulative="Abacus")
    monkeypatch.setattr(answer, "task_for", lambda *_, **__: made)
    assert "Abacus" in Line(three(), monkeypatch).typed(text="5")["problem"]


@pytest.mark.parametrize("message", [None, 7, {}, {"kind": "other"}, [{"kind": "typed"}]])
def test_other_messages_are_not_answered(monkeypatch, message):
    line = Line(three(), monkeypatch)
    line.send(message)
    assert line.said == []


def test_outside_a_live_host_a_round_is_a_picture_of_its_first_question():
    made = three()
    data, _ = made._repr_mimebundle_()
    assert data["image/svg+xml"] == made.manipulative.still()
    assert "application/vnd.jupyter.widget-view+json" in data


def test_a_round_on_a_page_knows_that_there_is_no_python():
    made = three()
    assert made.python
    saved = states_of(with_parts([made]))
    for_board = rounds_on_page(saved, pupils=False)
    assert for_board[made.model_id]["state"] == {**saved[made.model_id]["state"], "python": False}
    child = made.manipulative.model_id
    assert for_board[child] == saved[child]


IMPORT = re.compile(r'^import .* from "(.*)";$', re.MULTILINE)


def modules_of(entry, found=()):
    """A module and all that it imports."""
    found = {*found, entry}
    for name in IMPORT.findall(entry.read_text("utf-8")):
        module = (entry.parent / name).resolve()
        if module not in found:
            found |= modules_of(module, found)
    return found


CLASS = re.compile(r"\.(?:round|is)-[\w-]+")


def classes_in(path):
    """The classes that a style sheet names in its rules."""
    return set(CLASS.findall(stylesheet(path)))


@pytest.mark.parametrize(("own", "other"), [("board", "pupil"), ("pupil", "board")])
def test_a_round_carries_no_code_and_no_style_of_the_other_kind(own, other):
    modules = modules_of(ROUND / own / f"{own}.js")
    assert not [module for module in modules if ROUND / other in module.parents]
    # Nothing is left over that no round needs.
    own_files = {*(ROUND / own).rglob("*.js"), *(ROUND / "core").rglob("*.js")}
    assert own_files <= modules
    kinds = {"board": BoardRound, "pupil": PupilRound}
    styles = {name: classes_in(ROUND / name / f"{name}.css") for name in ("core", "board", "pupil")}
    foreign = styles[other] - styles[own] - styles["core"]
    assert foreign
    assert not foreign & set(CLASS.findall(kinds[own]._css))  # noqa: SLF001 - it is what hosts are sent


def test_a_manipulative_is_found_without_being_named(tmp_path, monkeypatch):
    folder = tmp_path / "scales"
    folder.mkdir()
    (folder / "__init__.py").write_text(
        "from manipulatives.widgets.manipulative import Manipulative\n"
        "class Scales(Manipulative): pass\n"
        "__all__ = ['Scales']\n",
        "utf-8",
    )
    monkeypatch.setattr(widgets, "__path__", [*widgets.__path__, str(tmp_path)])
    monkeypatch.delitem(sys.modules, "manipulatives.widgets.scales", raising=False)
    assert set(children.found()) == {*children.MANIPULATIVES, "Scales"}
    assert list(children.MANIPULATIVES) == sorted(children.MANIPULATIVES)
    sys.modules.pop("manipulatives.widgets.scales")
