from __future__ import annotations

import datetime as dt
import json

import pytest

from manipulatives.lessons.lesson import Lesson, Round, round_seed
from manipulatives.lessons.problem import LessonProblem

FULL = Lesson(
    "Monday at the bell tower",
    seed=7,
    date=dt.date(2026, 3, 2),
    vocabulary="uk",
    currency="gbp",
    paper="a4",
    rounds=(
        Round("time.read_hour", seed=1, count_aloud=0),
        Round("time.later", seed=2, title="Ferry", tasks=3, seconds=90, options={"by": 20}),
    ),
)


def test_a_lesson_comes_back_from_json_as_it_was():
    assert Lesson.from_data(json.loads(json.dumps(FULL.to_data()))) == FULL


def test_what_is_unset_is_not_written():
    assert Lesson("Monday", seed=7, rounds=(Round("time.read_hour", seed=0),)).to_data() == {
        "title": "Monday",
        "seed": 7,
        "rounds": [{"skill": "time.read_hour", "seed": 0}],
    }


def test_a_round_without_a_seed_gets_one_from_the_lessons_seed_and_its_place():
    rounds = [{"skill": "time.read_hour"}, {"skill": "time.read_hour", "seed": 5}]
    data = {"title": "Monday", "seed": 7, "rounds": [*rounds, *rounds]}
    seeds = [one.seed for one in Lesson.from_data(data).rounds]
    assert seeds == [round_seed(7, 1), 5, round_seed(7, 3), 5]
    assert seeds == [one.seed for one in Lesson.from_data(data).rounds]


def test_seeds_of_rounds_differ_by_place_and_by_lesson():
    seeds = {round_seed(seed, place) for seed in range(100) for place in range(1, 21)}
    assert len(seeds) > 1990
    assert all(0 <= seed <= 999_999_999 for seed in seeds)


@pytest.mark.parametrize(
    ("fields", "says"),
    [
        ({"title": ""}, "title: "),
        ({"title": "a\nb"}, "title: "),
        ({"seed": -1}, "seed: -1 is not allowed; give a whole number from 0 to 999999999."),
        ({"seed": True}, "seed: True is not allowed"),
        ({"seed": 1.0}, "seed: 1.0 is not allowed"),
        ({"date": "2026-03-02"}, "date: '2026-03-02' is no date"),
        ({"date": dt.datetime(2026, 3, 2, tzinfo=dt.UTC)}, "date: "),
        ({"vocabulary": "en"}, "vocabulary: 'en' is not allowed"),
        ({"currency": "yen"}, "currency: 'yen' is not allowed"),
        ({"paper": "A4"}, "paper: 'A4' is not allowed"),
        ({"rounds": FULL.rounds * 31}, "rounds: 62 is not allowed"),
    ],
)
def test_a_lesson_that_cannot_be_is_refused(fields, says):
    with pytest.raises(LessonProblem) as caught:
        Lesson(**{"title": "Monday", "seed": 7, **fields})
    assert str(caught.value).startswith(says)


@pytest.mark.parametrize(
    ("fields", "says"),
    [
        ({"skill": "time.read_year"}, "skill: there is no skill 'time.read_year'"),
        ({"seed": 10**9}, "seed: "),
        ({"title": 5}, "title: 5 is not text"),
        ({"tasks": 0}, "tasks: 0 is not allowed; give a whole number from 1 to 40."),
        ({"tasks": 13}, "tasks: time.read_hour has only 12 different tasks"),
        (
            {"count_aloud": 101},
            "count_aloud: 101 is not allowed; give a whole number from 0 to 100.",
        ),
        ({"count_aloud": "fives"}, "count_aloud: 'fives' is not allowed"),
        ({"seconds": 5}, "seconds: 5 is not allowed; give a whole number from 10 to 3600."),
        ({"options": {"by": 5}}, "options: there is no field 'by'"),
        ({"options": {"answer": "voice"}}, "options, answer: 'voice' is not allowed"),
    ],
)
def test_a_round_that_cannot_be_is_refused(fields, says):
    with pytest.raises(LessonProblem) as caught:
        Round(**{"skill": "time.read_hour", "seed": 7, **fields})
    assert str(caught.value).startswith(says)


def test_an_option_can_make_a_request_impossible():
    Round("time.set_hands", seed=7, tasks=20)
    with pytest.raises(LessonProblem, match="only 12 different tasks"):
        Round("time.set_hands", seed=7, tasks=20, options={"step": 60})


def test_text_stays_text():
    title = "<script>alert('x')</script> & [[rounds]] \"é\" ♪"
    lesson = Lesson(title, seed=7, rounds=(Round("time.read_hour", seed=1, title=title),))
    again = Lesson.from_data(json.loads(json.dumps(lesson.to_data())))
    assert again.title == again.rounds[0].title == title
