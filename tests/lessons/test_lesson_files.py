from __future__ import annotations

import datetime as dt
import tomllib

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.files import read_lesson, write_lesson
from manipulatives.lessons.lesson import CURRENCIES, PAPERS, Lesson, Round, round_seed
from manipulatives.lessons.problem import LessonProblem

MONDAY = """\
title = "Monday at the bell tower"
seed = 7
date = 2026-03-02
vocabulary = "uk"

[[rounds]]
skill = "time.read_hour"

[[rounds]]
skill = "time.later"
seed = 90213
tasks = 3
options = { by = 20 }
"""


@pytest.fixture
def path(tmp_path):
    return tmp_path / "monday.toml"


def test_a_file_is_read_as_a_lesson(path):
    path.write_text(MONDAY)
    assert read_lesson(path) == Lesson(
        "Monday at the bell tower",
        seed=7,
        date=dt.date(2026, 3, 2),
        vocabulary="uk",
        rounds=(
            Round("time.read_hour", seed=round_seed(7, 1)),
            Round("time.later", seed=90213, tasks=3, options={"by": 20}),
        ),
    )


def test_a_date_may_be_written_as_text(path):
    path.write_text(MONDAY.replace("2026-03-02", '"2026-03-02"'))
    assert read_lesson(path).date == dt.date(2026, 3, 2)


def test_a_byte_order_mark_and_the_line_ends_of_another_system_do_no_harm(path):
    path.write_bytes(b"\xef\xbb\xbf" + MONDAY.replace("\n", "\r\n").encode())
    assert read_lesson(path).title == "Monday at the bell tower"


def test_a_saved_lesson_names_the_seed_of_every_round(path):
    path.write_text(MONDAY)
    write_lesson(read_lesson(path), path)
    written = tomllib.loads(path.read_text())
    assert [one["seed"] for one in written["rounds"]] == [round_seed(7, 1), 90213]
    assert written["date"] == dt.date(2026, 3, 2)
    assert "[[rounds]]" in path.read_text()


def test_moving_a_round_of_a_saved_lesson_changes_no_seed(path):
    path.write_text(MONDAY)
    write_lesson(read_lesson(path), path)
    head, one, two = path.read_text().split("[[rounds]]")
    path.write_text("[[rounds]]".join([head, two + "\n", one]))
    assert [one.seed for one in read_lesson(path).rounds] == [90213, round_seed(7, 1)]


SHOWN = st.characters(exclude_categories=("C", "Z"), exclude_characters="\u2028\u2029")
TITLES = st.text(SHOWN, min_size=1, max_size=40)
SEEDS = st.integers(0, 999_999_999)


@st.composite
def rounds(draw):
    skill = draw(st.sampled_from(list(SKILLS)))
    options = {}
    for name, values in SKILLS[skill].options.items():
        if draw(st.booleans()):
            one = st.sampled_from(values)
            options[name] = draw(one | st.lists(one, min_size=1, max_size=4))
    try:
        return Round(
            skill,
            seed=draw(SEEDS),
            title=draw(st.none() | TITLES),
            tasks=draw(st.none() | st.integers(1, 12)),
            seconds=draw(st.none() | st.integers(10, 3600)),
            count_aloud=draw(st.none() | st.integers(0, 100)),
            options=options,
        )
    except LessonProblem:
        # There are not so many different tasks with these options.
        assume(False)
        raise


@given(
    st.builds(
        Lesson,
        title=TITLES,
        seed=SEEDS,
        rounds=st.lists(rounds(), max_size=6).map(tuple),
        date=st.none() | st.dates(),
        vocabulary=st.none() | st.sampled_from(["us", "uk"]),
        currency=st.none() | st.sampled_from(CURRENCIES),
        paper=st.none() | st.sampled_from(PAPERS),
    )
)
def test_any_lesson_comes_back_from_its_file_as_it_was(tmp_path_factory, lesson):
    path = tmp_path_factory.mktemp("lesson") / "any.toml"
    write_lesson(lesson, path)
    assert read_lesson(path) == lesson


HEAD = 'title = "Monday"\nseed = 7\n'
ROUND = '[[rounds]]\nskill = "time.read_hour"\n'
BAD = {
    "no title": ("seed = 7\n", "", "the field 'title' is missing; add it"),
    "no seed": ('title = "Monday"\n', "", "the field 'seed' is missing; add it"),
    "nothing": ("", "", "the field 'title' is missing"),
    "unknown field": (
        HEAD + "tilte = 1\n",
        "",
        "no field 'tilte' (did you mean 'title'?); use only",
    ),
    "empty title": ('title = ""\nseed = 7\n', "title", "write 1 to 80 letters"),
    "title of two lines": ('title = "a\\nb"\nseed = 7\n', "title", "write one plain line"),
    "title with a bell": ('title = "a\\u0007"\nseed = 7\n', "title", "write one plain line"),
    "title that turns round": ('title = "a\\u202eb"\nseed = 7\n', "title", "write one plain line"),
    "title too long": (f'title = "{"a" * 81}"\nseed = 7\n', "title", "write 1 to 80 letters"),
    "title no text": ("title = 5\nseed = 7\n", "title", "5 is not text"),
    "seed as text": (
        'title = "a"\nseed = "7"\n',
        "seed",
        "'7' is not allowed; give a whole number",
    ),
    "seed below 0": ('title = "a"\nseed = -7\n', "seed", "give a whole number from 0"),
    "seed not finite": ('title = "a"\nseed = nan\n', "seed", "nan is not allowed"),
    "date with a time": (HEAD + "date = 2026-03-02T10:00:00\n", "date", "write it like 2026-03-02"),
    "date in words": (HEAD + 'date = "Monday"\n', "date", "'Monday' is no date"),
    "date as number": (HEAD + "date = 20260302\n", "date", "20260302 is no date"),
    "vocabulary": (HEAD + 'vocabulary = "en"\n', "vocabulary", 'choose "us" or "uk"'),
    "currency": (HEAD + "currency = 1\n", "currency", "1 is not allowed"),
    "paper": (HEAD + 'paper = "a5"\n', "paper", 'choose "letter" or "a4"'),
    "rounds no list": (HEAD + "rounds = 5\n", "rounds", "begin every round with [[rounds]]"),
    "one table": (HEAD + '[rounds]\nskill = "time.read_hour"\n', "rounds", "[[rounds]]"),
    "list of numbers": (HEAD + "rounds = [1]\n", "[[rounds]] 1", "1 is no table of fields"),
    "too many rounds": (HEAD + ROUND * 61, "rounds", "give a whole number from 0 to 60"),
    "no skill": (HEAD + "[[rounds]]\ntasks = 5\n", "[[rounds]] 1", "the field 'skill' is missing"),
    "unknown skill": (
        HEAD + ROUND + '[[rounds]]\nskill = "time.read_huor"\n',
        "[[rounds]] 2, skill",
        "there is no skill 'time.read_huor' (did you mean 'time.read_hour'?)",
    ),
    "unknown field of a round": (
        HEAD + ROUND + "taks = 5\n",
        "[[rounds]] 1",
        "there is no field 'taks' (did you mean 'tasks'?)",
    ),
    "no task": (HEAD + ROUND + "tasks = 0\n", "[[rounds]] 1, tasks", "from 1 to 40"),
    "half a task": (HEAD + ROUND + "tasks = 2.5\n", "[[rounds]] 1, tasks", "2.5 is not allowed"),
    "true tasks": (HEAD + ROUND + "tasks = true\n", "[[rounds]] 1, tasks", "True is not allowed"),
    "more than there are": (
        HEAD + ROUND + "tasks = 13\n",
        "[[rounds]] 1, tasks",
        "time.read_hour has only 12 different tasks with these options, not 13; ask for 12",
    ),
    "no time": (HEAD + ROUND + "seconds = 0\n", "[[rounds]] 1, seconds", "from 10 to 3600"),
    "title of a round": (HEAD + ROUND + "title = []\n", "[[rounds]] 1, title", "[] is not text"),
    "seed of a round": (HEAD + ROUND + "seed = -1\n", "[[rounds]] 1, seed", "-1 is not allowed"),
    "unknown option": (
        HEAD + ROUND + "options = { by = 5 }\n",
        "[[rounds]] 1, options",
        "there is no field 'by'; use only answer",
    ),
    "value of an option": (
        HEAD + ROUND + 'options = { answer = "voice" }\n',
        "[[rounds]] 1, options, answer",
        "'voice' is not allowed (did you mean 'choice'?); choose \"keypad\" or \"choice\"",
    ),
    "options no table": (HEAD + ROUND + "options = 5\n", "[[rounds]] 1, options", "no table"),
    "no TOML": (HEAD + "date 2026\n", "line 3", "the file is no TOML"),
    "open text": ('title = "Monday\nseed = 7\n', "line 1", "the file is no TOML"),
    "ends too soon": (HEAD + "rounds = [", "at its end", "the file is no TOML"),
    "field twice": (HEAD + "seed = 8\n", "line 3", "the file is no TOML"),
    "too deep": (HEAD + "rounds = " + "[" * 5000, "", "nested too deep; write them flatter"),
    "number too long": (HEAD + "date = " + "9" * 5000, "", "the file is no TOML"),
    "too large": (HEAD + "#" * 1_000_001, "", "more than 1,000,000 bytes; give a smaller file"),
}


@pytest.mark.parametrize(("text", "place", "says"), BAD.values(), ids=BAD)
def test_a_bad_file_gets_one_sentence_with_file_place_and_remedy(path, text, place, says):
    path.write_text(text)
    with pytest.raises(LessonProblem) as caught:
        read_lesson(path)
    problem, sentence = caught.value, str(caught.value)
    assert (problem.file, problem.place) == (str(path), place)
    assert sentence.startswith(f"{path}, {place}: " if place else f"{path}: ")
    assert says in sentence
    assert sentence.endswith(f"; {problem.remedy}.")
    assert sentence.isprintable()
    assert ". " not in sentence
    assert len(sentence) < len(str(path)) + 300
    assert list(path.parent.iterdir()) == [path]
    assert path.read_text() == text


def test_a_file_that_is_not_utf8_is_refused_with_the_line(path):
    path.write_bytes(b'seed = 7\ntitle = "caf\xe9"\n')
    with pytest.raises(LessonProblem, match="line 2: the file is not UTF-8 text; save it as UTF-8"):
        read_lesson(path)


def test_a_missing_file_and_a_folder_are_refused(path):
    with pytest.raises(LessonProblem, match=r"cannot be opened .*; check its name and folder"):
        read_lesson(path)
    with pytest.raises(LessonProblem, match="cannot be opened"):
        read_lesson(path.parent)


@given(st.binary(max_size=200))
def test_whatever_a_file_holds_the_worst_is_a_problem(tmp_path_factory, raw):
    path = tmp_path_factory.mktemp("any") / "any.toml"
    path.write_bytes(raw)
    with pytest.raises(LessonProblem):
        read_lesson(path)


def test_a_lesson_that_cannot_be_written_leaves_what_was_there(path, monkeypatch):
    path.write_text(MONDAY)

    def fail(*_args):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", fail)
    with pytest.raises(OSError, match="No space"):
        write_lesson(Lesson("Tuesday", seed=8), path)
    assert path.read_text() == MONDAY
    assert list(path.parent.iterdir()) == [path]
