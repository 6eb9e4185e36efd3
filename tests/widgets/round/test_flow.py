"""Where presses lead in a round, as the browser works it out."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.lessons.tasks.playing import facts_of
from manipulatives.lessons.tasks.predicates import holds
from manipulatives.widgets.round.board.count_aloud.counts import counts_by

FLOW = "round/board/state/flow.js"
TASK = "round/core/state/task.js"
COUNTS = "round/board/count_aloud/counts.js"
CASES = json.loads((Path(__file__).parents[2] / "cases" / "round_flow.json").read_text("utf-8"))
TASKS = [{"steps": [{}] * count} for count in CASES["steps"]]
COURSE = {"tasks": TASKS, "together": 1, "count": CASES["count"]}


def place(task, step, phase):
    return {"task": task, "step": step, "phase": phase}


@pytest.mark.parametrize(
    ("name", "course"),
    [
        ("after", COURSE),
        ("uncounted", {**COURSE, "count": 0}),
        ("together", {**COURSE, "together": 2}),
    ],
)
def test_a_press_leads_where_the_cases_say_and_its_words_name_it(js, name, course):
    cases = CASES[name]
    assert js(FLOW, "after", [[at, course, now] for at, now, _, _ in cases]) == [
        to for _, _, to, _ in cases
    ]
    assert js(FLOW, "turn", [[at, to] for at, _, to, _ in cases]) == [turn for *_, turn in cases]


def test_an_extra_question_is_walked_through_and_left_at_its_end(js):
    cases = CASES["extra"]
    calls = [[at, steps, solved] for at, steps, solved, _, _ in cases]
    assert js(FLOW, "afterExtra", calls) == [to for *_, to, _ in cases]
    assert js(FLOW, "turn", [[at, to] for at, _, _, to, _ in cases]) == [turn for *_, turn in cases]
    assert js(FLOW, "afterExtra", CASES["extraEnd"]) == [None] * len(CASES["extraEnd"])


def test_an_extra_question_leads_back_to_where_the_round_was_left(js):
    shown, extra = place(1, 2, "show"), {**place(1, 1, "show"), "extra": 0}
    routes = [
        {"place": extra, "trail": [place(0, 0, "ask"), shown, extra, extra]},
        {"place": extra, "trail": [extra]},
        {"place": shown, "trail": [extra]},
    ]
    assert js(FLOW, "goHome", [[route] for route in routes]) == [
        {"place": shown, "trail": [place(0, 0, "ask")]},
        {"place": place(1, 0, "ask"), "trail": []},
        routes[2],
    ]


def test_without_a_trail_back_leads_to_what_stands_before(js):
    made = js(FLOW, "goBack", [[{"place": at, "trail": []}, COURSE] for at, _ in CASES["before"]])
    assert [route and route["place"] for route in made] == [to for _, to in CASES["before"]]


def test_a_place_from_elsewhere_is_brought_into_the_round(js):
    made = js(FLOW, "placeIn", [[given, COURSE] for given, _ in CASES["elsewhere"]])
    assert made == [kept for _, kept in CASES["elsewhere"]]


def test_where_nobody_counts_there_is_no_wiping(js):
    [kept] = js(FLOW, "placeIn", [[place(2, 1, "wipe"), {**COURSE, "count": 0}]])
    assert kept == place(2, 3, "check")


@pytest.mark.parametrize("together", [1, 2, 3, 4])
def test_every_task_stands_in_one_group_and_groups_are_in_order(js, together):
    tasks = [{}] * 10
    course = {"tasks": tasks, "together": together}
    groups = js("round/board/state/group.js", "groupOf", [[task, course] for task in range(10)])
    assert all(task in group for task, group in enumerate(groups))
    distinct = sorted({tuple(group) for group in groups})
    assert [task for group in distinct for task in group] == list(range(10))
    assert {len(group) for group in distinct[:-1]} == {together}


def test_the_count_aloud_is_the_same_in_both_languages_and_as_the_cases_say(js):
    assert [counts_by(by) for by, _ in CASES["counts"]] == [counts for _, counts in CASES["counts"]]
    steps = range(1, 101)
    assert js(COUNTS, "countsBy", [[by] for by in steps]) == [counts_by(by) for by in steps]
    assert js(COUNTS, "countsBy", [[0], [None], [-5], [2.5], ["5"]]) == [[]] * 5


def test_the_steps_of_every_skill_end_in_its_goal_in_the_browser_too(js):
    base = {"panel": False, "buttons": True}
    tasks = [
        task
        for skill in SKILLS.values()
        for task in make_tasks(skill.id, seed=31, count=skill.tasks, twins=0)
    ]
    data = [task.to_data() for task in tasks]
    calls = [[task, base, place(0, len(task["steps"]), "check")] for task in data]
    for task, traits in zip(tasks, js(TASK, "traitsAt", calls), strict=True):
        written = [step.answer for step in task.steps if step.answer]
        assert holds(task.goal, facts_of(task.manipulative, traits, [None, *written][-1]))
        assert traits["panel"] is False
        # Nothing to press stands beside what is only shown.
        assert traits["buttons"] is False


def test_going_back_to_the_question_leaves_nothing_of_the_steps(js):
    [task] = [task.to_data() for task in make_tasks("time.read_five_minutes", seed=2, count=1)]
    base = {"arc": False, "sector": False, "minute_numbers": False}
    at = [place(0, 0, "ask"), place(0, 1, "show"), place(0, 2, "show"), place(0, 0, "work")]
    asked, *shown, again = js(TASK, "traitsAt", [[task, base, one] for one in at])
    assert asked == again
    assert all(one != asked for one in shown)
    [names] = js(TASK, "traitNames", [[[task], base]])
    assert set(names) == set(asked) | {name for step in task["steps"] for name in step["show"]}
