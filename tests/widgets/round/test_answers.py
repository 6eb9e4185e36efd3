"""What is said to an answer in a round, and what is written down of it."""

from __future__ import annotations

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.lessons.tasks.playing import facts_of, is_solved, mistake_made

JUDGE = "round/core/state/judge.js"
ANSWERS = "round/board/state/answers.js"
KEYPAD = "round/core/keypad.js"
MOST_WORDS = 10
READ = make_tasks("time.read_five_minutes", seed=90213, count=40)
TYPED = [
    task
    for skill in SKILLS.values()
    for seed in (5, 6)
    for task in make_tasks(skill.id, seed=seed, count=skill.tasks, twins=0)
    if "form" in task.ask
]
SET = make_tasks("time.set_hands", seed=12, count=40, options={"step": 5})


def judged(js, *calls):
    return js(JUDGE, "judge", [[task.to_data(), facts, text] for task, facts, text in calls])


def noted(js, answers, task, **verdict):
    usual = {"counts": True, "right": False, "rule": None, "given": "4:35", "say": ""}
    [kept] = js(ANSWERS, "noted", [[answers, task, {**usual, **verdict}]])
    return kept


def test_every_right_answer_is_right_and_said(js):
    for task, verdict in zip(
        TYPED, judged(js, *((task, {}, task.answer) for task in TYPED)), strict=True
    ):
        assert verdict["right"]
        assert verdict["given"] == task.answer
        assert verdict["say"] == f"Yes, {task.spoken}".rstrip(".") + "."


def test_every_foreseen_mistake_is_answered_with_its_sentence(js):
    calls = [
        (task, {}, mistake.answer) for task in TYPED for mistake in task.mistakes if mistake.answer
    ]
    assert len(calls) > 200
    for (task, _, text), verdict in zip(calls, judged(js, *calls), strict=True):
        expected = mistake_made(task, {"answer": text})
        assert not verdict["right"]
        assert (verdict["rule"], verdict["say"]) == (expected.rule, expected.pupil)


def test_hands_are_judged_by_where_they_stand_as_python_judges_them(js):
    dials = [
        {"hour": hour, "minute": minute, "half": "am"}
        for hour in range(0, 720, 10)
        for minute in range(0, 60, 5)
    ]
    calls = [(task, facts_of("Clock", {"dial": dial}), "") for task in SET[:2] for dial in dials]
    rules = set()
    for (task, facts, _), verdict in zip(calls, judged(js, *calls), strict=True):
        mistake = mistake_made(task, facts)
        assert verdict["right"] == is_solved(task, facts)
        assert verdict["rule"] == (mistake and mistake.rule)
        assert verdict["counts"]
        assert verdict["given"]["hour_hand"] == facts["hour_hand"]
        rules.add(verdict["rule"])
    assert rules > {None, "static_hour_hand", "set_swapped"}


def test_an_answer_that_nobody_foresaw_is_told_a_next_step(js):
    task = next(task for task in READ if not mistake_made(task, {"answer": "11:11"}))
    [verdict] = judged(js, (task, {}, "11:11"))
    assert verdict["rule"] is None
    assert verdict["say"].startswith("Not yet.")
    assert "step" in verdict["say"]


@pytest.mark.parametrize(
    ("form", "text"),
    [("time", ""), ("time", "4"), ("time", "4:75"), ("time", ":"), ("number", ""), ("sum", "3+")],
)
def test_what_is_no_answer_is_no_try(js, form, text):
    ask = {"by": "keypad", "form": form}
    [verdict] = js(JUDGE, "judge", [[{**READ[0].to_data(), "ask": ask}, {}, text]])
    assert not verdict["counts"]
    assert noted(js, [], 0, **verdict) == []


def test_nothing_chosen_is_no_try(js):
    [task] = make_tasks("time.read_half", seed=1, count=1, options={"answer": "choice"})
    [verdict] = judged(js, (task, {}, ""))
    assert not verdict["counts"]


def test_every_sentence_of_the_round_has_at_most_ten_words(js):
    said = [
        verdict["say"]
        for verdict in judged(js, (READ[0], {}, ""), (READ[0], {}, "4:75"), (READ[0], {}, "1:01"))
    ]
    number = {**READ[0].to_data(), "ask": {"by": "keypad", "form": "number"}}
    total = {**READ[0].to_data(), "ask": {"by": "keypad", "form": "sum"}}
    choice = {**READ[0].to_data(), "ask": {"by": "choice", "choices": []}}
    calls = [[number, {}, ":"], [total, {}, "3+"], [choice, {}, ""]]
    said += [verdict["say"] for verdict in js(JUDGE, "judge", calls)]
    said += [verdict["say"] for verdict in judged(js, *((task, {}, task.answer) for task in TYPED))]
    assert len(set(said)) > 40
    assert {sentence for sentence in said if len(sentence.split()) > MOST_WORDS} == set()


def test_tries_are_counted_and_the_last_answer_kept(js):
    first = noted(js, [], 2, given="5:35", rule="next_hour")
    assert first == [{"task": 2, "given": "5:35", "tries": 1, "right": False, "rule": "next_hour"}]
    second = noted(js, first, 2, given="4:35", right=True)
    assert second == [{"task": 2, "given": "4:35", "tries": 2, "right": True, "rule": "next_hour"}]
    # Nothing that was written down is changed: others may still hold it.
    assert first[0]["tries"] == 1


def test_answers_stand_in_the_order_of_the_tasks(js):
    kept = []
    for task in (3, 0, 1):
        kept = noted(js, kept, task)
    assert [answer["task"] for answer in kept] == [0, 1, 3]


@pytest.mark.parametrize(
    ("form", "keys", "line"),
    [
        ("time", ["4", ":", "3", "5"], "4:35"),
        ("time", ["1", "2", ":", "0", "0", "7"], "12:00"),
        ("time", ["4", "back", "back", "5"], "5"),
        ("number", ["4", ":", "2"], "42"),
        ("number", ["1", "2", "3", "4", "5", "6"], "12345"),
        ("sum", ["3", "0", "0", "+", "4", "0", ":", "+", "5"], "300+40+5"),
    ],
)
def test_keys_write_on_the_line(js, form, keys, line):
    text = ""
    for key in keys:
        [text] = js(KEYPAD, "pressed", [[form, text, key]])
    assert text == line


def test_a_keyboard_writes_nothing_that_the_keypad_could_not(js):
    given = ["4:35pm", "four 35", " 4.35 ", "<b>4", "b", "."]
    assert js(KEYPAD, "cleaned", [["time", text] for text in given]) == [
        "4:35", "35", "435", "4", "", "",
    ]  # fmt: skip
    assert js(KEYPAD, "cleaned", [["sum", "300 + 40 + 5"]]) == ["300+40+5"]


def test_only_a_voice_on_the_device_reads_aloud(js):
    def voice(lang, local):
        return {"lang": lang, "localService": local}

    far, us, gb, french = (
        voice("en-US", local=False),
        voice("en_US", local=True),
        voice("en-GB", local=True),
        voice("fr-FR", local=True),
    )
    calls = [
        [[far], "us"],
        [[], "us"],
        [[french], "uk"],
        [[far, gb], "us"],
        [[far, us, gb], "uk"],
        [[gb, us], "us"],
    ]
    assert js("shared/voice.js", "localVoice", calls) == [None, None, None, gb, gb, us]
