"""Tasks of equations in which a number is missing: addends, parts and wholes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any

from manipulatives.lessons.strands.stories.mistakes import MISSING_NUMBERS
from manipulatives.lessons.strands.sums.line import Hop, counting_on, counting_up, line
from manipulatives.lessons.strands.sums.tasks import answer_step, found_by, hop_steps, typed_task
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.pools import Joined, Labelled
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.columns.written_sum import ADD, MINUS, SUBTRACT

TEN, TWENTY, HUNDRED = 10, 20, 100
GAP = "?"
Item = tuple[str, int, int]
"""Which number is missing, "first" or "second", and both numbers of the sum."""


def _written(operation: str, item: Item, *, answer_first: bool) -> str:
    which, first, second = item
    shown = [f"{first}", f"{second}"]
    shown[which == "second"] = GAP
    result = first + second if operation == ADD else first - second
    left = f" {operation} ".join(shown)
    return f"{result} = {left}" if answer_first else f"{left} = {result}"


def _task(request: Request, operation: str, hops: Sequence[Hop], start: dict[str, Any]) -> Task:
    which, first, second = request.item
    result = first + second if operation == ADD else first - second
    answer, known = (first, second) if which == "first" else (second, first)
    answer_first = request.options.get("answer_first", False)
    prompt = _written(operation, request.item, answer_first=answer_first)
    shown = (result, known) if answer_first else (known, result)
    return typed_task(
        request,
        kind=f"{which} missing",
        prompt=prompt,
        say=f"Which number is missing? {prompt.replace('-', MINUS)}.",
        answer=answer,
        manipulative="CountingChart",
        start=start,
        steps=hop_steps(hops, answer_step(operation, (first, second), answer, request.vocabulary)),
        found=found_by(MISSING_NUMBERS, (*shown, answer), "answer", shown=[*shown], right=answer),
    )


def _missing_addend(request: Request) -> Task:
    which, first, second = request.item
    known = second if which == "first" else first
    hops = counting_up(known, first + second, request.method)
    return _task(request, ADD, hops, line(request.options["to"], known))


def _missing_part(request: Request) -> Task:
    which, first, second = request.item
    result = first - second
    if which == "second":
        hops = counting_up(result, first, request.method)
        start = line(request.options["to"], first, back=True)
    else:
        start = line(request.options["to"], result)
        # What is left and what went make up the whole.
        hops = counting_on(max(result, second), min(result, second), request.method)
        plan = {"act": "plan", "operation": ADD, "numbers": [result, second], "result": None}
        say = f"{result} and {second} make the first number."
        hops.insert(0, Hop(say, f"{result} + {second}", (), plan))
    return _task(request, SUBTRACT, hops, start)


def _labelled(unknown: str, pairs: Sequence[tuple[int, int]]) -> Sequence[Item]:
    labels = ("second", "first") if unknown == "any" else (unknown,)
    return Joined([Labelled(label, pairs) for label in labels])


@cache
def _pairs_to(most: int) -> tuple[tuple[int, int], ...]:
    return tuple((a, b) for a in range(1, most) for b in range(1, most - a + 1))


@cache
def _wholes_to(most: int) -> tuple[tuple[int, int], ...]:
    return tuple((whole, part) for whole in range(2, most + 1) for part in range(1, whole))


@cache
def _bonds_of(whole: int) -> tuple[tuple[int, int], ...]:
    step = TEN if whole == HUNDRED else 1
    return tuple((a, whole - a) for a in range(step, whole, step))


@cache
def _missing_addends(to: int, unknown: str) -> Sequence[Item]:
    return _labelled(unknown, _pairs_to(to))


@cache
def _missing_parts(to: int, unknown: str) -> Sequence[Item]:
    return _labelled(unknown, _wholes_to(to))


@cache
def _bonds(to: int, unknown: str) -> Sequence[Item]:
    return _labelled(unknown, _bonds_of(to))


def _kind(item: Item) -> str:
    return item[0]


def _addend_difficulty(item: Item) -> tuple[int, bool]:
    which, first, second = item
    return first + second, which == "first"


def _part_difficulty(item: Item) -> tuple[int, bool]:
    which, whole, _ = item
    return whole, which == "first"


def _to_and_unknown(options: Mapping[str, Any]) -> tuple[int, str]:
    return options["to"], options["unknown"]


MAKE_TEN = TaskGenerator(
    items=lambda options: _bonds(*_to_and_unknown(options)),
    task=_missing_addend,
    kind=_kind,
    difficulty=_addend_difficulty,
)
MISSING_ADDEND = TaskGenerator(
    items=lambda options: _missing_addends(*_to_and_unknown(options)),
    task=_missing_addend,
    kind=_kind,
    difficulty=_addend_difficulty,
)
MISSING_PART = TaskGenerator(
    items=lambda options: _missing_parts(*_to_and_unknown(options)),
    task=_missing_part,
    kind=_kind,
    difficulty=_part_difficulty,
)
