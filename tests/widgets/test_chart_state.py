"""The browser counts as Python does."""

from __future__ import annotations

import json
import random
from pathlib import Path

import pytest

from manipulatives.maths.number.chart import (
    Chart,
    chart_facts,
    check_marks,
    marks_left,
    next_number,
    no_marks,
    tap,
    write,
)
from manipulatives.maths.number.line import marks_apart, numbers_apart, piece
from manipulatives.words.chart_hints import cell_hint, count_hint

CASES = json.loads((Path(__file__).parents[1] / "cases" / "chart.json").read_text("utf-8"))
NAMES = ("first", "last", "width", "step", "start", "direction", "hidden", "mode")
COUNT = "chart/count.js"


def settings_of(chart):
    return {name: getattr(chart, name) for name in NAMES}


def some_charts(number):
    chance = random.Random(20260914)  # noqa: S311 - only to have many
    for _ in range(number):
        first = chance.choice([0, 1, 1, chance.randrange(901)])
        last = first + chance.choice([chance.randrange(1, 30), 99, 119])
        patterns = ["none", "thirds", "cross", "patch", "counts", "all"]
        listed = sorted(chance.sample(range(first, last + 1), min(8, last - first)))
        yield (
            chance,
            Chart(
                first,
                last,
                width=chance.choice([2, 5, 7, 10, 12, 20]),
                step=chance.choice([1, 2, 3, 5, 10, 25, 200]),
                start=chance.choice([None, chance.randint(first, last)]),
                direction=chance.choice(["forward", "back"]),
                hidden=chance.choice([*patterns, listed]),
                mode=chance.choice(["count", "wipe", "write"]),
            ),
        )


def some_states(number):
    """Charts on which something was done, right or wrong."""
    for chance, chart in some_charts(number):
        done = no_marks()
        for _ in range(chance.randrange(12)):
            coming = next_number(done, chart)
            slip = chance.random() < 0.2 or coming is None
            number_ = chance.randint(chart.first, chart.last) if slip else coming
            done = tap(done, number_, chart)
        for blank in chance.sample(chart.blanks, min(len(chart.blanks), chance.randrange(6))):
            digits = chance.choice([str(blank), str(blank)[::-1], "0", str(blank + 10)])
            done = write(done, blank, digits)
        yield chance, chart, done


STATES = [(chart, done) for _, chart, done in some_states(4000)]


def test_the_browser_satisfies_the_cases(js):
    usual = settings_of(Chart())
    calls = [
        [{**no_marks(), **case["marks"]}, {**usual, **case["settings"]}] for case in CASES["facts"]
    ]
    for case, facts in zip(CASES["facts"], js(COUNT, "facts", calls), strict=True):
        assert {name: facts[name] for name in case["facts"]} == case["facts"], case["about"]
    for case in CASES["hints"]:
        done, settings = {**no_marks(), **case["marks"]}, {**usual, **case["settings"]}
        if case["number"] is None:
            assert js("chart/hints.js", "countHint", [[done, settings]]) == [case["hint"]]
        else:
            call = [case["number"], done, settings]
            assert js("chart/hints.js", "cellHint", [call]) == [case["hint"]]


def test_the_browser_knows_of_thousands_of_charts_what_python_does(js):
    calls = [[done, settings_of(chart)] for chart, done in STATES]
    assert js(COUNT, "facts", calls) == [chart_facts(done, chart) for chart, done in STATES]
    assert js("chart/hints.js", "countHint", calls) == [
        count_hint(done, chart) for chart, done in STATES
    ]


def test_the_browser_counts_and_hides_the_same_numbers(js):
    calls = [[settings_of(chart)] for chart, _ in STATES]
    assert js(COUNT, "numbers", calls) == [chart.numbers for chart, _ in STATES]
    assert js(COUNT, "blanks", calls) == [chart.blanks for chart, _ in STATES]


def test_a_tap_and_digits_do_the_same_in_both(js):
    chance = random.Random(7)  # noqa: S311 - only to have many
    taps = [(chart, done, chance.randint(chart.first, chart.last)) for chart, done in STATES]
    taps += [(chart, done, done["counted"][-1]) for chart, done in STATES if done["counted"]]
    coming = [(chart, done, next_number(done, chart)) for chart, done in STATES]
    taps += [one for one in coming if one[2] is not None]
    calls = [[done, number, settings_of(chart)] for chart, done, number in taps]
    assert js(COUNT, "tap", calls) == [tap(done, number, chart) for chart, done, number in taps]
    writes = [(done, number, chance.choice(["", "7", "35"])) for _, done, number in taps]
    assert js(COUNT, "write", [list(call) for call in writes]) == [write(*call) for call in writes]


def test_a_hint_for_a_cell_is_the_same_in_both(js):
    chance = random.Random(8)  # noqa: S311 - only to have many
    asked = [(chance.randint(chart.first, chart.last), done, chart) for chart, done in STATES]
    calls = [[number, done, settings_of(chart)] for number, done, chart in asked]
    assert js("chart/hints.js", "cellHint", calls) == [cell_hint(*one) for one in asked]


def test_what_is_left_on_other_numbers_is_the_same_in_both(js):
    other = Chart(20, 60)
    calls = [[done, settings_of(other)] for _, done in STATES]
    left = [marks_left(done, other) for _, done in STATES]
    assert js(COUNT, "marksLeft", calls) == left
    assert all(check_marks(done, other) == done for done in left)


def test_what_is_left_out_of_marks_was_not_done(js):
    call = [{"counted": [5]}, settings_of(Chart())]
    assert js(COUNT, "marksLeft", [call]) == [check_marks({"counted": [5]}, Chart())]


def test_the_browser_shows_the_same_piece_of_the_line(js):
    calls = [[settings_of(chart), done["counted"], chart.numbers[0]] for chart, done in STATES]
    pieces = [
        piece(chart.first, chart.last, chart.step, done["counted"], chart.numbers[0])
        for chart, done in STATES
    ]
    shown = js("chart/line.js", "piece", calls)
    assert [(one["low"], one["high"]) for one in shown] == pieces
    assert js("chart/line.js", "marksApart", [[one] for one in shown]) == [
        marks_apart(*ends) for ends in pieces
    ]
    steps = [chart.step for chart, _ in STATES]
    rooms = [[one, 900, 40, step] for one, step in zip(shown, steps, strict=True)]
    assert js("chart/line.js", "numbersApart", rooms) == [
        numbers_apart(*ends, 900, 40, step) for ends, step in zip(pieces, steps, strict=True)
    ]


@pytest.mark.parametrize(
    ("state", "text", "label", "case"),
    [
        ("plain", "35", "thirty-five", ({}, {})),
        ("hidden", "", "hidden", ({"hidden": [35]}, {})),
        ("at", "35", "thirty-five, counted last", ({"start": 35}, {"counted": [35]})),
        ("counted", "35", "thirty-five, counted", ({"start": 35}, {"counted": [35, 36]})),
        ("at", "35", "thirty-five, counted last", ({"hidden": [35]}, {"counted": [35]})),
        ("wiped", "", "thirty-five, wiped", ({"mode": "wipe"}, {"counted": [35]})),
        ("tapped", "35", "thirty-five, not next", ({}, {"tapped": 35})),
        ("tapped", "", "hidden, not next", ({"hidden": [35]}, {"tapped": 35})),
        ("blank", "", "blank", ({"hidden": [35], "mode": "write"}, {})),
        (
            "right",
            "35",
            "thirty-five, right",
            ({"hidden": [35], "mode": "write"}, {"written": {"35": "35"}}),
        ),
        (
            "wrong",
            "53",
            "53, not right yet",
            ({"hidden": [35], "mode": "write"}, {"written": {"35": "53"}}),
        ),
    ],
)
def test_a_cell_is_spoken_as_it_looks(look_of, state, text, label, case):
    assert look_of(35, *case) == {"state": state, "text": text, "label": label}


def test_what_is_being_written_is_not_judged_yet(look_of):
    case = {"hidden": [35], "mode": "write"}, {"written": {"35": "3"}}
    assert look_of(35, *case, open=35) == {"state": "open", "text": "3", "label": "3"}


@pytest.fixture
def look_of(tmp_path, js):
    """What a cell looks like; looks() hands back a function, which only a module can call."""
    from support.node import find_module  # noqa: PLC0415 - only here

    grid = find_module("chart/grid.js").as_uri()
    module = tmp_path / "cell.mjs"
    module.write_text(
        f'import {{ called, looks }} from "{grid}";\n'
        "export function cell(number, marks, settings, open) {\n"
        "  const look = looks(marks, settings, open)(number);\n"
        '  return { ...look, label: called(number, look, "us") };\n'
        "}\n",
        "utf-8",
    )

    def look(number, settings, done, open=None):  # noqa: A002 - the browser's word for it
        call = [number, {**no_marks(), **done}, {**settings_of(Chart()), **settings}, open]
        return js(str(module), "cell", [call])[0]

    return look
