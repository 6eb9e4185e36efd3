"""Tasks about numbers from 11 to 19 as ten and some ones."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from manipulatives.lessons.strands.place_value.mistakes.rules import COMPOSING, DECOMPOSING
from manipulatives.lessons.strands.place_value.steps.one_number import mat
from manipulatives.lessons.strands.place_value.steps.teens import (
    composing_steps,
    decomposing_steps,
)
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.place_value import fewest

TEN = 10
TEENS = range(11, 20)
COMPOSE, DECOMPOSE = "compose", "decompose"


def _items(options: Mapping[str, Any]) -> Sequence[tuple[str, int]]:
    return [
        (kind, number)
        for kind in (COMPOSE, DECOMPOSE)
        for number in TEENS
        if options["which"] in ("any", kind)
    ]


def _task(request: Request) -> Task:
    kind, number = request.item
    ones = number - TEN
    if kind == COMPOSE:
        prompt, answer, blocks = f"What is 10 + {ones}?", number, fewest(number)
        steps, rules, act = composing_steps(number), COMPOSING, "write"
    else:
        prompt, answer, blocks = f"{number} is 10 and how many more?", ones, fewest(number, 1)
        steps, rules, act = decomposing_steps(number), DECOMPOSING, "take ten"
    return Task(
        skill=request.skill,
        kind=kind,
        prompt=prompt,
        say=prompt,
        manipulative="PlaceValueBlocks",
        start={**mat(blocks), "places": 2, "digits": False, "buttons": False},
        **typed_number(answer, request.vocabulary),
        steps=steps,
        mistakes=foreseen(
            [(rule, rule.wrong(number)) for rule in rules],
            request.vocabulary,
            right=answer,
            numbers=done_with(act, number=number),
        ),
    )


GENERATORS = {
    "place_value.teens": TaskGenerator(
        items=_items, task=_task, kind=lambda item: item[0], difficulty=lambda item: item[1]
    ),
}
