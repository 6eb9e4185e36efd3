"""How the blocks of a lesson are divided into stages."""

from __future__ import annotations

import pytest

ROUND = {"heading": "", "round": True, "empty": False}
TEXT = {"heading": "", "round": False, "empty": False}
NOTHING = {"heading": "", "round": False, "empty": True}


def heading(text):
    return {"heading": text, "round": False, "empty": False}


def stages(js, infos, *, staged=True):
    [made] = js("shared/stages.js", "stagesOf", [[infos, staged]])
    return made


def seen(made):
    return [(stage["heading"], stage["blocks"]) for stage in made]


def test_every_heading_begins_a_stage(js):
    infos = [heading("Hours"), ROUND, heading("Minutes"), TEXT, ROUND]
    assert seen(stages(js, infos)) == [("Hours", [0, 1]), ("Minutes", [2, 3, 4])]


def test_what_comes_before_the_first_heading_is_the_title(js):
    made = stages(js, [TEXT, NOTHING, heading("Hours"), ROUND])
    assert seen(made) == [("", [0, 1]), ("Hours", [2, 3])]
    assert [stage["title"] for stage in made] == [True, False]


def test_an_empty_title_is_no_stage(js):
    made = stages(js, [NOTHING, NOTHING, heading("Hours"), ROUND])
    assert seen(made) == [("Hours", [0, 1, 2, 3])]
    assert not made[0]["title"]


def test_a_round_before_the_first_heading_is_no_title(js):
    made = stages(js, [TEXT, ROUND, heading("Minutes"), ROUND])
    assert [stage["title"] for stage in made] == [False, False]
    assert [stage["round"] for stage in made] == [True, True]


def test_a_second_round_under_one_heading_has_a_stage_of_its_own(js):
    made = stages(js, [heading("Hours"), ROUND, TEXT, ROUND, ROUND])
    assert seen(made) == [("Hours", [0, 1, 2]), ("Hours", [3]), ("Hours", [4])]


def test_a_heading_with_its_round_in_one_block_is_one_stage(js):
    both = {"heading": "Hours", "round": True, "empty": False}
    assert seen(stages(js, [both, both])) == [("Hours", [0]), ("Hours", [1])]


def test_without_rounds_there_is_one_stage(js):
    made = stages(js, [heading("Hours"), TEXT, heading("Minutes"), TEXT], staged=False)
    assert seen(made) == [("Hours", [0, 1, 2, 3])]
    assert stages(js, [], staged=False) == []


@pytest.mark.parametrize("staged", [True, False])
def test_every_block_is_on_one_stage(js, staged):
    infos = [TEXT, NOTHING, heading("A"), ROUND, ROUND, heading("B"), heading("C"), TEXT, ROUND]
    made = stages(js, infos, staged=staged)
    assert [number for stage in made for number in stage["blocks"]] == list(range(len(infos)))
