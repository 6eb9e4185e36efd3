"""Tasks about circles and parts of circles: their straight sides, and their names."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from typing import Any

from manipulatives.lessons.strands.shapes.mistakes.counting import COUNTING
from manipulatives.lessons.strands.shapes.paper import to_look_at
from manipulatives.lessons.strands.shapes.pools.curves import CURVES, curves
from manipulatives.lessons.strands.shapes.pools.polygons import EACH, Drawn, facts_of, spread
from manipulatives.lessons.strands.shapes.tasks.naming import name_shape, sides_of_curve
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.words import number_in_words


def curved(options: Mapping[str, Any]) -> tuple[tuple[str, Drawn], ...]:
    """Return circles and parts of circles, each with what is asked about it.

    Example:
        >>> {ask for ask, _ in curved({"ask": "any"})} == {"sides", "name"}
        True
    """
    return _curved(options["ask"])


@cache
def _curved(ask: str) -> tuple[tuple[str, Drawn], ...]:
    asks = ("sides", "name") if ask == "any" else (ask,)
    return tuple((one, shape) for one in asks for kind in CURVES for shape in _few(kind))


def _few(kind: str) -> tuple[Drawn, ...]:
    return spread(curves(kind), EACH)


def kind_of_curve(item: tuple[str, Drawn]) -> str:
    """Return what is asked about a curved shape, and which it is.

    Example:
        >>> kind_of_curve(("name", curves("circle")[0]))
        'name circle'
    """
    return f"{item[0]} {item[1].kind}"


def about_curve(request: Request) -> Task:
    """Make a task about a circle or a part of one: its straight sides, or its name."""
    item: tuple[str, Drawn] = request.item
    ask, one = item
    if ask == "name":
        return name_shape(replace(request, item=one))
    facts, prompt = facts_of(one), "How many straight sides does this shape have?"
    many = int(facts["sides"] or 0)
    words = f"{number_in_words(many)} straight {'side' if many == 1 else 'sides'}"
    step = sides_of_curve(one)
    return Task(
        skill=request.skill,
        kind=kind_of_curve(item),
        prompt=prompt,
        say=f"{prompt} Follow the edge with a finger.",
        manipulative="PolygonDrawer",
        start=to_look_at(one, request.vocabulary),
        **typed_number(many, request.vocabulary, spoken=words),
        steps=(
            Step(say="Follow the edge with a finger."),
            replace(step, chant=words, answer=f"{many}"),
        ),
        mistakes=foreseen(
            [(rule, rule.wrong(facts)) for rule in COUNTING],
            request.vocabulary,
            right=many,
            numbers=done_with("count", what="straight sides"),
        ),
    )


GENERATORS = {
    "shapes.curved": TaskGenerator(curved, about_curve, kind_of_curve),
}
