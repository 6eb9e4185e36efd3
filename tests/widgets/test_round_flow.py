"""Where presses lead in a round, as the browser works it out."""

from __future__ import annotations

import json
from pathlib import Path

from manipulatives.lessons.makers import make_tasks
from manipulatives.lessons.playing import facts_of
from manipulatives.lessons.predicates import holds
from manipulatives.lessons.skills import SKILLS

FLOW = "round/flow.js"
CASES = json.loads((Path(__file__).parents[1] / "cases" / "round_flow.json").read_text("utf-8"))
TASKS = [{"steps": [{}] * count} for count in CASES["steps"]]


def place(task, step, phase):
    return {"task": task, "step": step, "phase": phase}


def test_a_press_leads_where_the_cases_say(js):
    calls = [[at, TASKS, now] for at, now, _, _ in CASES["after"]]
    assert js(FLOW, "after", calls) == [to for _, _, to, _ in CASES["after"]]


def test_the_words_on_the_button_name_where_it_leads(js):
    calls = [[at, to] for at, _, to, _ in CASES["after"]]
    assert js(FLOW, "turn", calls) == [turn for _, _, _, turn in CASES["after"]]


def test_without_a_trail_back_leads_to_what_stands_before(js):
    made = js(FLOW, "goBack", [[{"place": at, "trail": []}, TASKS] for at, _ in CASES["before"]])
    assert [way and way["place"] for way in made] == [to for _, to in CASES["before"]]


def test_a_place_from_elsewhere_is_brought_into_the_round(js):
    made = js(FLOW, "placeIn", [[given, TASKS] for given, _ in CASES["elsewhere"]])
    assert made == [kept for _, kept in CASES["elsewhere"]]


def test_the_steps_of_every_skill_end_in_its_goal_in_the_browser_too(js):
    base = {"panel": False, "buttons": True}
    tasks = [task for skill in SKILLS for task in make_tasks(skill, seed=31, count=6)]
    data = [task.to_data() for task in tasks]
    calls = [[task, base, place(0, len(task["steps"]), "check")] for task in data]
    for task, traits in zip(tasks, js(FLOW, "traitsAt", calls), strict=True):
        written = [step.answer for step in task.steps if step.answer]
        assert holds(task.goal, facts_of(task.manipulative, traits, [None, *written][-1]))
        assert traits["panel"] is False
        # Nothing to press stands beside what is only shown.
        assert traits["buttons"] is False


def test_going_back_to_the_question_leaves_nothing_of_the_steps(js):
    [task] = [task.to_data() for task in make_tasks("time.read_five_minutes", seed=2, count=1)]
    base = {"arc": False, "sector": False, "minute_numbers": False}
    at = [place(0, 0, "ask"), place(0, 1, "show"), place(0, 2, "show"), place(0, 0, "work")]
    asked, *shown, again = js(FLOW, "traitsAt", [[task, base, one] for one in at])
    assert asked == again
    assert all(one != asked for one in shown)
    [names] = js(FLOW, "traitNames", [[[task], base]])
    assert set(names) == set(asked) | {name for step in task["steps"] for name in step["show"]}
