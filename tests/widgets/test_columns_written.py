"""What is written on the column board, in the browser's language, held against Python."""

from __future__ import annotations

import json
import random

import pytest

from manipulatives.lessons.strands.sums.columns.methods import FORM_OF, METHODS, worked_steps
from manipulatives.maths.columns.blocks import blocks_of
from manipulatives.maths.columns.facts import jumped_to, marks_needed, sum_facts
from manipulatives.maths.columns.written_sum import (
    answer_of,
    check_sum,
    new_sum,
    result_of,
    start_of,
    written,
)
from support.files import ROOT

CASES = json.loads((ROOT / "tests" / "cases" / "columns.json").read_text("utf-8"))
MODULE = "columns/written.js"


def scribbled(random_):
    """A sum with anything written to it, right or wrong."""
    operation, form = random_.choice("+-"), random_.choice(["columns", "parts", "line"])
    many = random_.randint(2, 4) if operation == "+" else 2
    numbers = [random_.randint(0, 10 ** random_.randint(1, 4) - 1) for _ in range(many)]
    if operation == "-":
        numbers.sort(reverse=True)
    sum_ = new_sum(operation, numbers, form)
    width = len(sum_["answer"])
    if random_.random() < 0.3:
        right = [int(digit) for digit in reversed(str(result_of(sum_)))]
        sum_["answer"] = [*right, *[None] * (width - len(right))]
    else:
        sum_["answer"] = [random_.choice([None, random_.randint(0, 9)]) for _ in range(width)]
    if random_.random() < 0.3:
        sum_["marks"] = [[] if mark is None else [mark] for mark in marks_needed(sum_)]
    else:
        sum_["marks"] = [
            [random_.randint(0, 19) for _ in range(random_.randint(0, 2))] for _ in range(width)
        ]
    if form == "parts":
        sum_["parts"] = [
            random_.choice([None, random_.randint(0, 36) * 10**place, random_.randint(0, 99999)])
            for place in range(width)
        ]
    if form == "line":
        far = sum(numbers) - start_of(sum_)
        while far and random_.random() < 0.7 and len(sum_["jumps"]) < 20:
            sum_["jumps"].append(random_.randint(0, far))
            far -= sum_["jumps"][-1]
    return check_sum(sum_)


@pytest.fixture(scope="module")
def sums():
    random_ = random.Random(4711)  # noqa: S311 - no secret
    return [scribbled(random_) for _ in range(6000)]


@pytest.mark.parametrize(
    ("name", "python"),
    [
        ("facts", sum_facts),
        ("blocksOf", blocks_of),
        ("answerOf", answer_of),
        ("resultOf", result_of),
        ("startOf", start_of),
        ("jumpedTo", jumped_to),
        ("marksNeeded", marks_needed),
    ],
)
def test_python_and_javascript_agree_on_thousands_of_sums(js, sums, name, python):
    given = [sum_ for sum_ in sums if name != "jumpedTo" or sum_["form"] == "line"]
    for sum_, theirs in zip(given, js(MODULE, name, [[sum_] for sum_ in given]), strict=True):
        assert theirs == python(sum_), sum_


def test_the_shared_cases_hold_in_both_languages(js):
    given = [[case["sum"]] for case in CASES["sums"]]
    facts, blocks = js(MODULE, "facts", given), js(MODULE, "blocksOf", given)
    for case, known, rows in zip(CASES["sums"], facts, blocks, strict=True):
        assert known == sum_facts(case["sum"])
        assert {name: known[name] for name in case["facts"]} == case["facts"]
        assert rows == blocks_of(check_sum(case["sum"])) == case["blocks"]


def test_played_steps_write_the_same_in_both_languages(js):
    random_ = random.Random(90)  # noqa: S311 - no secret
    calls, ours = [], []
    for at in range(1500):
        method = METHODS[at % 5]
        numbers = [random_.randint(0, 10 ** random_.randint(1, 4) - 1) for _ in range(2)]
        operation = "+-"[at % 2]
        if operation == "-":
            numbers.sort(reverse=True)
        fresh = new_sum(operation, numbers, FORM_OF[method])
        steps = worked_steps(operation, numbers, method)
        played = steps[: random_.randint(0, len(steps))]
        calls.append([fresh, played])
        ours.append(written(fresh, [write for step in played for write in step["write"]]))
    assert js(MODULE, "written", calls) == ours


def test_a_sum_made_blank_is_a_new_one(js, sums):
    blank = js(MODULE, "blank", [[sum_] for sum_ in sums])
    assert blank == [new_sum(s["operation"], s["numbers"], s["form"]) for s in sums]


@pytest.mark.parametrize("case", CASES["keys"], ids=lambda case: case["says"])
def test_keys_write_into_squares(js, case):
    sum_ = check_sum(case["sum"])
    for key in case["keys"]:
        [sum_] = js(MODULE, "typed", [[sum_, case["row"], case["column"], key]])
    assert sum_[case["row"]][case["column"]] == case["there"]
    check_sum(sum_)


def test_whatever_keys_are_pressed_it_stays_a_sum(js, sums):
    random_ = random.Random(3)  # noqa: S311 - no secret
    calls = []
    for sum_ in sums:
        rows = ["answer", "marks", *(["parts"] if sum_["form"] == "parts" else [])]
        column = random_.randrange(len(sum_["answer"]))
        key = random_.choice([*"0123456789", "back"])
        calls.append([sum_, random_.choice(rows), column, key])
    for call, after in zip(calls, js(MODULE, "typed", calls), strict=True):
        assert check_sum(after) == after
        changed = [name for name in after if after[name] != call[0][name]]
        assert changed in ([], [call[1]])


def test_a_row_of_the_number_line_ends_where_its_jumps_end(js):
    for jumps in ([30, 3, 5], [1000, 200, 4], [0], [7]):
        [places] = js("columns/line.js", "ends", [[jumps]])
        assert places[0] == 0
        assert places == sorted(places)
        assert places[-1] == pytest.approx(1 if any(jumps) else 0)


def test_no_two_ones_lie_in_one_spot(js):
    spots = js("columns/strip.js", "spot", [[0, index] for index in range(40)])
    assert len({(spot["x"], spot["y"]) for spot in spots}) == 40
    [broad] = js("columns/strip.js", "breadth", [[0, 40]])
    assert max(spot["x"] for spot in spots) + 1 == pytest.approx(broad)


LOOK = {"headings": True, "marks": True, "below": False, "open": True}


@pytest.mark.parametrize(
    ("sum_", "look", "rows"),
    [
        (("+", [47, 38]), {}, ["marks", "number", "number", "answer"]),
        (("+", [47, 38]), {"below": True}, ["number", "number", "answer", "marks"]),
        (("-", [83, 47]), {"below": True}, ["marks", "number", "number", "answer"]),
        (("+", [47, 38]), {"marks": False}, ["number", "number", "answer"]),
        (("+", [47, 38], "parts"), {}, ["number", "number", "parts", "answer"]),
        (("-", [83, 47], "parts"), {}, ["marks", "number", "number", "parts", "answer"]),
        (("+", [4, 3, 8], "line"), {}, ["number", "number", "number", "answer"]),
    ],
)
def test_the_rows_of_a_sheet(js, sum_, look, rows):
    [lines] = js("columns/grid.js", "linesOf", [[new_sum(*sum_), {**LOOK, **look}]])
    assert [line["kind"] for line in lines] == rows
