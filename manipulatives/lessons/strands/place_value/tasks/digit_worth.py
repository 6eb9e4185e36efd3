"""Tasks about what a digit is worth."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from manipulatives.lessons.strands.place_value.mistakes.rules import VALUE
from manipulatives.lessons.strands.place_value.pools import UNITS, digits_in_place
from manipulatives.lessons.strands.place_value.steps.one_number import mat, places_of, worth_steps
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.place_value import WORTH, fewest

# The ones are 0, the tens 1 and the hundreds 2.
FROM_THE_RIGHT = {place: at for at, place in enumerate(UNITS)}


def _items(options: Mapping[str, Any]) -> Sequence[tuple[str, int]]:
    return digits_in_place(options["to"], options["place"])


def _task(request: Request) -> Task:
    place, number = request.item
    digit = dict(places_of(number))[place]
    right = digit * WORTH[place]
    found = [(rule, rule.wrong(number, FROM_THE_RIGHT[place])) for rule in VALUE]
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
    "place_value.digit_worth": TaskGenerator(
        items=_items,
        task=_task,
        kind=lambda item: item[0],
        difficulty=lambda item: (len(str(item[1])), FROM_THE_RIGHT[item[0]]),
    ),
}
