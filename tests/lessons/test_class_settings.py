from __future__ import annotations

import datetime as dt
from dataclasses import replace

import pytest

from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.settings import ClassSettings, class_settings, settled


def test_a_folder_without_class_toml_has_the_usual_settings(tmp_path):
    assert class_settings(tmp_path) == ClassSettings(
        vocabulary="us",
        currency="usd",
        paper="letter",
        method="counting on",
        timer="off",
        count_aloud=0,
    )


def test_class_toml_sets_what_it_names(tmp_path):
    (tmp_path / "class.toml").write_text('vocabulary = "uk"\ncurrency = "gbp"\ncount_aloud = 5\n')
    expected = ClassSettings(vocabulary="uk", currency="gbp", count_aloud=5)
    assert class_settings(str(tmp_path)) == expected


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ('vocabulary = "en"', 'vocabulary: \'en\' is not allowed; choose "us" or "uk".'),
        ('papre = "a4"', "there is no field 'papre' (did you mean 'paper'?); use only vocab"),
        ("count_aloud = true", "count_aloud: True is not allowed; give a whole number from 0"),
        (
            "count_aloud = 101",
            "count_aloud: 101 is not allowed; give a whole number from 0 to 100.",
        ),
        ('timer = "loud"', "timer: 'loud' is not allowed"),
        ('vocabulary = "us', "at its end: the file is no TOML"),
    ],
)
def test_a_bad_class_toml_is_refused_with_file_place_and_remedy(tmp_path, text, says):
    path = tmp_path / "class.toml"
    path.write_text(text)
    with pytest.raises(LessonProblem) as caught:
        class_settings(tmp_path)
    assert str(caught.value).startswith(str(path))
    assert says in str(caught.value)


def test_what_a_lesson_leaves_unset_comes_from_the_class():
    lesson = Lesson("Monday", seed=7, paper="letter", date=dt.date(2026, 3, 2))
    done = settled(lesson, ClassSettings(vocabulary="uk", currency="gbp", paper="a4"))
    assert (done.vocabulary, done.currency, done.paper) == ("uk", "gbp", "letter")
    assert (done.title, done.seed, done.date) == ("Monday", 7, dt.date(2026, 3, 2))


def test_what_a_round_leaves_unset_comes_from_its_skill():
    rounds = (
        Round("time.read_hour", seed=1),
        Round("time.later", seed=2, title="At the ferry", tasks=3, seconds=90, options={"by": 20}),
    )
    one, two = settled(Lesson("Monday", seed=7, rounds=rounds), ClassSettings()).rounds
    usual = {"title": "O'clock", "tasks": 6, "seconds": 120, "count_aloud": 0}
    assert one == Round("time.read_hour", seed=1, **usual)
    assert two == replace(rounds[1], count_aloud=0)


def test_a_round_counts_aloud_as_the_class_does_unless_it_says_otherwise():
    rounds = tuple(Round("time.read_hour", seed=1, count_aloud=by) for by in (None, 0, 100))
    done = settled(Lesson("Monday", seed=7, rounds=rounds), ClassSettings(count_aloud=25)).rounds
    assert [one.count_aloud for one in done] == [25, 0, 100]


def test_a_settled_lesson_has_nothing_left_to_settle():
    lesson = Lesson("Monday", seed=7, rounds=(Round("time.read_hour", seed=1),))
    once = settled(lesson, ClassSettings(vocabulary="uk"))
    assert settled(once, ClassSettings(vocabulary="us")) == once
