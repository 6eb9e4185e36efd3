from __future__ import annotations

import ast

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.notebook.calls import WIDTH, Call, CallReader, call_text

NAMES = ("play", "Clock")

WORDS = st.text(st.characters(exclude_categories=["Cs"]), max_size=20)
PLAIN = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats(allow_nan=False, allow_infinity=False)
    | WORDS,
    lambda parts: (
        st.lists(parts, max_size=3)
        | st.tuples(parts)
        | st.tuples(parts, parts)
        | st.dictionaries(WORDS, parts, max_size=3)
    ),
    max_leaves=6,
)
KEYS = st.sampled_from(["tasks", "seconds", "seed", "by", "answer", "title"])


def read(*sources: str) -> list[list[Call] | None]:
    reader = CallReader(NAMES)
    return [reader.read(number, source) for number, source in enumerate(sources, start=1)]


@given(st.lists(PLAIN, max_size=2), st.dictionaries(KEYS, PLAIN, max_size=4))
def test_a_written_call_is_read_back_value_for_value(given_values, named):
    ((call,),) = read(call_text("play", *given_values, **named))
    assert repr((list(call.args), dict(call.kwargs))) == repr((given_values, named))


@given(st.dictionaries(KEYS, PLAIN, max_size=6))
def test_a_written_call_is_python_with_the_same_meaning(named):
    tree = ast.parse(call_text("play", **named), mode="eval")
    meant = {word.arg: ast.literal_eval(word.value) for word in tree.body.keywords}
    assert repr(meant) == repr(named)


def test_a_long_call_is_written_one_word_to_a_line():
    text = call_text("play", "time.later", title="m" * WIDTH, seed=7)
    assert text.splitlines() == [
        "play(",
        '    "time.later",',
        f'    title="{"m" * WIDTH}",',
        "    seed=7,",
        ")",
    ]


@pytest.mark.parametrize(
    "source",
    [
        "",
        "# nothing but a remark",
        "from manipulatives import Clock, play",
        "from manipulatives import *",
        'tower = Clock(time="4:35")',
        'play("time.read_hour", seed=7);',
    ],
)
def test_a_cell_that_shows_nothing_is_still_the_kits_own(source):
    assert read(source) == [[]]


@pytest.mark.parametrize(
    "source",
    [
        'play("time.read_hour", seed=7)',
        'from manipulatives import play\n\nplay("time.read_hour", seed=7)  # after lunch',
        'bell = play("time.read_hour", seed=7)\nbell',
        'Clock()\nplay("time.read_hour", seed=7)',
    ],
)
def test_a_cell_shows_its_last_value(source):
    ((call,),) = read(source)
    assert (call.name, call.args, call.kwargs) == ("play", ("time.read_hour",), {"seed": 7})


def test_a_name_from_an_earlier_cell_shows_the_same_thing_again():
    _, first, second = read("bell = Clock()", "bell", "bell")
    assert first[0] is second[0]
    assert first[0].cell == 1


def test_two_equal_calls_are_two_things():
    first, second = read("Clock()", "Clock()")
    assert first[0] is not second[0]
    assert first[0] != second[0]


@pytest.mark.parametrize(
    "source",
    [
        "1 + 1",
        "import os",
        "import manipulatives",
        "from manipulatives import Clock as Uhr",
        "from manipulatives.widgets.clock import Clock",
        "from .manipulatives import Clock",
        "from manipulatives import nothing_of_that_name",
        'open("market.txt")',
        "play",
        "bell",
        'play("time.read_hour", seed=3 + 4)',
        'play("time.read_hour", seed=seed)',
        'play(f"time.{name}", seed=7)',
        'play(*["time.read_hour"], seed=7)',
        'play("time.read_hour", **{"seed": 7})',
        'play("time.read_hour", seed=7, seed=8)',
        'play("time.read_hour", seed={7})',
        'play("time.read_hour", seed=b"7")',
        'play("time.read_hour", seed=7j)',
        'play("time.read_hour", seed=[7, {1: 2}])',
        'manipulatives.play("time.read_hour", seed=7)',
        'play("time.read_hour", seed=7).tasks',
        "play = Clock()",
        "one = two = Clock()",
        "one, two = Clock(), Clock()",
        "one: Clock = Clock()",
        "one += Clock()",
        "if True:\n    Clock()",
        "for _ in range(3): Clock()",
        "[Clock() for _ in range(3)]",
        "Clock(time=(yield))",
        "await Clock()",
        '"words"',
        "%matplotlib inline",
        "!ls",
        "Clock(",
        "Clock()\0",
        "Clock(time=" + "(" * 300 + "1" + ")" * 300 + ")",
        "Clock(time=" + "-" * 5000 + "1)",
        "del bell",
        "@Clock\ndef bell(): pass",
    ],
)
def test_any_other_cell_is_foreign_code(source):
    assert read(source) == [None]


def test_a_program_is_not_run_by_being_read(tmp_path):
    trap = tmp_path / "sprung"
    read(f"open({str(trap)!r}, 'w').close()", f"Clock(time=open({str(trap)!r}, 'w'))")
    assert not trap.exists()


@given(st.text())
def test_no_text_at_all_breaks_the_reader(source):
    (calls,) = read(source)
    assert calls is None or calls == []
