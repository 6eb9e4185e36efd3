from __future__ import annotations

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS, check_options, options_at, skill_called
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.make import GENERATORS, check_count

TIME = [
    "read_hour",
    "read_half",
    "read_quarter",
    "read_five_minutes",
    "set_hands",
    "later",
    "earlier",
]


def test_the_time_strand_has_its_skills_in_the_order_of_learning():
    """Hour, half hour, quarter hour, five minutes: Boulton-Lewis, Wilss and Mutch, 1997."""
    time = [skill.id for skill in SKILLS.values() if skill.strand == "time"]
    assert time == [f"time.{name}" for name in TIME]


@pytest.mark.parametrize("skill", SKILLS.values(), ids=SKILLS)
def test_a_skill_says_all_that_a_round_needs(skill):
    assert SKILLS[skill.id] is skill
    assert skill.name
    assert skill.title
    assert len(skill.name.split()) <= 10
    assert skill.standards
    assert all(one.startswith(("CCSS ", "England Y")) for one in skill.standards)
    assert skill.manipulative[0].isupper()
    assert 60 <= skill.seconds <= 600
    assert all(len(set(values)) == len(values) >= 2 for values in skill.options.values())
    assert check_count(skill.id, skill.tasks) == skill.tasks


def test_of_a_list_each_task_takes_the_value_in_its_place():
    given = check_options("time.later", {"by": [5, 20, 35], "order": "any"})
    assert [options_at("time.later", given, place)["by"] for place in range(5)] == [
        5,
        20,
        35,
        35,
        35,
    ]
    for wrong in ([], [5, 7]):
        with pytest.raises(LessonProblem, match=r"^by: "):
            check_options("time.later", {"by": wrong})
    with pytest.raises(LessonProblem, match=r"^order: "):
        check_options("time.later", {"order": ["any"]})


def test_every_skill_has_a_maker_and_a_name_of_its_own():
    assert set(GENERATORS) == set(SKILLS)
    assert len({skill.name for skill in SKILLS.values()}) == len(SKILLS)


def test_the_catalogue_cannot_be_changed():
    with pytest.raises(TypeError):
        SKILLS["time.read_hour"] = None
    with pytest.raises(TypeError):
        SKILLS["time.read_hour"].options["answer"] = ("voice",)


def test_an_unset_option_holds_its_first_value():
    assert options_at("time.set_hands", {"step": 60}, 0) == {
        "given": "digits", "hands": "free", "step": 60,
    }  # fmt: skip
    assert check_options("time.set_hands", {"step": 60}) == {"step": 60}


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("time.read_huor", "(did you mean 'time.read_hour'?); choose from time.read_hour, "),
        ("money.count", "(did you mean 'money.count_like'?); choose from money.name_coins, "),
        ("weights.compare", "choose a skill of counting, place_value, addition, subtraction, "),
        ("", "there is no skill ''"),
        (7, "there is no skill 7"),
        (None, "there is no skill None"),
        (["time.read_hour"], "there is no skill ['time.read_hour']"),
    ],
)
def test_the_error_about_an_unknown_skill_lists_the_known_ones(name, says):
    with pytest.raises(LessonProblem) as caught:
        skill_called(name)
    assert says in str(caught.value)


@pytest.mark.parametrize(
    ("options", "says"),
    [
        ({"by": 7}, "by: 7 is not allowed; choose 5 or 10 or 15"),
        ({"by": 5.0}, "by: 5.0 is not allowed"),
        ({"by": True}, "by: True is not allowed"),
        ({"by": "5"}, "by: '5' is not allowed"),
        ({"answer": "keybad"}, '(did you mean \'keypad\'?); choose "keypad" or "hands".'),
        ({"bye": 5}, "there is no field 'bye' (did you mean 'by'?); use only by, answer, order."),
        ([], "[] is no table of fields"),
    ],
)
def test_an_unknown_option_or_value_is_refused_with_what_is_allowed(options, says):
    with pytest.raises(LessonProblem) as caught:
        check_options("time.later", options)
    assert says in str(caught.value)
