"""Tasks about a ten and some ones, and about what a digit is worth."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from manipulatives.lessons.strands.counting.steps import listed
from manipulatives.lessons.strands.place_value.mistakes.rules import COMPOSING, DECOMPOSING, VALUE
from manipulatives.lessons.strands.place_value.pools import UNITS, digits_in_place
from manipulatives.lessons.strands.place_value.steps import (
    mat,
    parts,
    places_of,
    worth_of,
    worth_steps,
)
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Mistake, Numbers, Step, Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.place_names import some
from manipulatives.maths.number.place_value import WORTH as WORTH_OF
from manipulatives.maths.number.place_value import Blocks, fewest

TEN = 10
TEENS = range(11, 20)
COMPOSE, DECOMPOSE = "compose", "decompose"
PLACES = {place: at for at, place in enumerate(UNITS)}


def _teen_items(options: Mapping[str, Any]) -> Sequence[tuple[str, int]]:
    return [
        (kind, number)
        for kind in (COMPOSE, DECOMPOSE)
        for number in TEENS
        if options["which"] in ("any", kind)
    ]


def _teen(request: Request) -> Task:
    kind, number = request.item
    ones = number - TEN
    if kind == COMPOSE:
        return _typed(
            request,
            number,
            f"What is 10 + {ones}?",
            fewest(number),
            steps=_composing(number),
            mistakes=foreseen(
                [(rule, rule.wrong(number)) for rule in COMPOSING],
                request.vocabulary,
                right=number,
                numbers=done_with("write", number=number),
            ),
        )
    return _typed(
        request,
        ones,
        f"{number} is 10 and how many more?",
        fewest(number, 1),
        steps=_decomposing(number),
        mistakes=foreseen(
            [(rule, rule.wrong(number)) for rule in DECOMPOSING],
            request.vocabulary,
            right=ones,
            numbers=done_with("take ten", number=number),
        ),
    )


def _typed(
    request: Request,
    answer: int,
    prompt: str,
    blocks: Blocks,
    *,
    steps: tuple[Step, ...],
    mistakes: tuple[Mistake, ...],
) -> Task:
    return Task(
        skill=request.skill,
        kind=request.item[0],
        prompt=prompt,
        say=prompt,
        manipulative="PlaceValueBlocks",
        start={**mat(blocks), "places": 2, "digits": False, "buttons": False},
        **typed_number(answer, request.vocabulary),
        steps=steps,
        mistakes=mistakes,
    )


def _composing(number: int) -> tuple[Step, ...]:
    ones = number - TEN
    return (
        Step(say="1 ten is 10.", chant="10", numbers=worth_of("tens", 1)),
        Step(
            say=f"Count on from 10: {some(ones, 'ones')} more.",
            chant=listed(_on_from_ten(number)),
            numbers=_counted(number),
        ),
        Step(
            say=f"10 + {ones} = {number}.",
            chant=f"{number}",
            show={"digits": True},
            answer=f"{number}",
            numbers=parts(number, [TEN, ones]),
        ),
    )


def _decomposing(number: int) -> tuple[Step, ...]:
    ones = number - TEN
    return (
        Step(
            say="10 ones are 1 ten.",
            chant="1 ten",
            show=mat(fewest(number)),
            numbers={"act": "regroup", "place": "ones", "count": TEN, "into": "tens", "left": 0},
        ),
        Step(
            say=f"Count on from 10 to {number}.",
            chant=listed(_on_from_ten(number)),
            numbers=_counted(number),
        ),
        Step(
            say=f"{number} = 10 + {ones}.",
            chant=f"{ones}",
            show={"digits": True},
            answer=f"{ones}",
            numbers=parts(number, [TEN, ones]),
        ),
    )


def _on_from_ten(number: int) -> range:
    return range(TEN + 1, number + 1)


def _counted(number: int) -> Numbers:
    counted = [*_on_from_ten(number)]
    return {"act": "count", "from": TEN, "by": 1, "to": number, "counted": counted}


def _worth_items(options: Mapping[str, Any]) -> Sequence[tuple[str, int]]:
    return digits_in_place(options["to"], options["place"])


def _worth(request: Request) -> Task:
    place, number = request.item
    digit = dict(places_of(number))[place]
    right = digit * WORTH_OF[place]
    found = [(rule, rule.wrong(number, PLACES[place])) for rule in VALUE]
    prompt = f"What is the {digit} in {number} worth?"
    return Task(
        skill=request.skill,
        kind=place,
        prompt=prompt,
        say=f"{prompt} Which place does it stand in?",
        manipulative="PlaceValueBlocks",
        start={
            **mat(fewest(number)),
            "places": len(str(number)),
            "movable": False,
            "digits": False,
            "trades": "none",
            "buttons": False,
        },
        **typed_number(right, request.vocabulary),
        steps=worth_steps(number, place),
        mistakes=foreseen(
            found,
            request.vocabulary,
            right=right,
            numbers=done_with("value", number=number, place=place),
        ),
    )


GENERATORS = {
    "place_value.teens": TaskGenerator(
        items=_teen_items, task=_teen, kind=lambda item: item[0], difficulty=lambda item: item[1]
    ),
    "place_value.digit_worth": TaskGenerator(
        items=_worth_items,
        task=_worth,
        kind=lambda item: item[0],
        difficulty=lambda item: (len(str(item[1])), PLACES[item[0]]),
    ),
}
