"""Tasks about how many there are: counting ones that lie on a mat, and laying them out."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from manipulatives.lessons.strands.counting.mistakes.counts import MISCOUNTS
from manipulatives.lessons.strands.counting.steps import count_of, listed
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.predicates import Predicate
from manipulatives.lessons.tasks.task import Mistake, Step, Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.place_value import fewest
from manipulatives.maths.number.words import number_in_words

# Traits of a mat for ones only.
ONES = {"places": 1, "digits": False, "trades": "none"}


def _items(options: Mapping[str, Any]) -> Sequence[int]:
    return range(1, options["to"] + 1)


def _how_many(request: Request) -> Task:
    many = request.item
    return Task(
        skill=request.skill,
        kind="count",
        prompt="How many ones are there?",
        say="Touch each one as you count. How many are there?",
        manipulative="PlaceValueBlocks",
        start={"mat": [fewest(many, 1)], "movable": False, "buttons": False, **ONES},
        **typed_number(many, request.vocabulary),
        steps=(
            Step(
                say="Count one by one.",
                chant=listed(range(1, many + 1)),
                numbers=count_of(range(1, many + 1), 1, begin=0),
            ),
            replace(_last_said(many), answer=f"{many}"),
        ),
        mistakes=_miscounts(request),
    )


def _count_out(request: Request) -> Task:
    many = request.item
    prompt = f"Put out {many} one{'' if many == 1 else 's'}."
    return Task(
        skill=request.skill,
        kind="count out",
        prompt=prompt,
        say=f"{prompt} Count as you go.",
        manipulative="PlaceValueBlocks",
        start={"mat": [fewest(0)], "buttons": False, **ONES},
        ask={"by": "manipulative"},
        goal=["=", "number", many],
        answer=f"{many}",
        spoken=number_in_words(many, request.vocabulary),
        steps=(
            Step(
                say="Put out one by one and count.",
                chant=listed(range(1, many + 1)),
                show={"mat": [fewest(many, 1)]},
                numbers=count_of(range(1, many + 1), 1, begin=0),
            ),
            _last_said(many),
        ),
        mistakes=_miscounts(request, when=lambda number: ["=", "number", number]),
    )


def _last_said(many: int) -> Step:
    say = f"{many} was said last: there {'is' if many == 1 else 'are'} {many}."
    numbers = {"act": "total", "many": many}
    return Step(say=say, chant=f"{many}", show={"digits": True}, numbers=numbers)


def _miscounts(
    request: Request, when: Callable[[int], Predicate] | None = None
) -> tuple[Mistake, ...]:
    found = [(rule, rule.wrong(request.item)) for rule in MISCOUNTS]
    numbers = done_with("count", many=request.item)
    return foreseen(found, request.vocabulary, right=request.item, when=when, numbers=numbers)


GENERATORS = {
    "counting.how_many": TaskGenerator(items=_items, task=_how_many, difficulty=lambda many: many),
    "counting.count_out": TaskGenerator(
        items=_items, task=_count_out, difficulty=lambda many: many
    ),
}
